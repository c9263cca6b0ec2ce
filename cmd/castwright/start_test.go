//go:build window && linux

package main_test

import (
	"bufio"
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
	"time"
)

// BenchmarkStart is a start of the released program, from the call to the first
// picture of the demo job, beside that of an empty window of the same toolkit:
//
//	go test -tags window -run - -bench Start -benchtime 10x ./cmd/castwright
//
// It gives the processor time that the program had used until then, of all its
// threads, and the shortest time by the clock, which says most on a busy machine.
func BenchmarkStart(b *testing.B) {
	for _, p := range []struct{ name, path string }{{"castwright", "."}, {"empty window", "./testdata/empty"}} {
		b.Run(p.name, func(b *testing.B) {
			exe := filepath.Join(b.TempDir(), "start")
			out, err := exec.Command("go", "build", "-tags", "migrated_fynedo,no_animations", "-o", exe, p.path).CombinedOutput()
			if err != nil {
				b.Fatalf("%v\n%s", err, out)
			}
			d := startDisplay(b, screenW, screenH)
			home := b.TempDir()
			if err := os.MkdirAll(filepath.Join(home, ".cache", "fyne"), 0o700); err != nil {
				b.Fatal(err)
			}
			env := []string{"DISPLAY=" + d.name, "HOME=" + home, "XDG_RUNTIME_DIR=" + home, "LANG=en_US.UTF-8"}
			startOnce(b, exe, env) // fills the file cache
			var used, shortest time.Duration
			n := 0
			for b.Loop() {
				wall, cpu := startOnce(b, exe, env)
				if used += cpu; n == 0 || wall < shortest {
					shortest = wall
				}
				n++
			}
			b.ReportMetric(float64(used.Milliseconds())/float64(n), "cpu-ms/start")
			b.ReportMetric(float64(shortest.Milliseconds()), "shortest-ms")
		})
	}
}

// startOnce starts a program, waits for its first picture and ends it.
func startOnce(b *testing.B, exe string, env []string) (wall, cpu time.Duration) {
	b.Helper()
	cmd := exec.Command(exe)
	cmd.Env = env
	out, err := cmd.StdoutPipe()
	if err != nil {
		b.Fatal(err)
	}
	began := time.Now()
	if err := cmd.Start(); err != nil {
		b.Fatal(err)
	}
	for lines := bufio.NewScanner(out); lines.Scan() && lines.Text() != "READY"; {
	}
	wall, cpu = time.Since(began), processorTime(b, cmd.Process.Pid)
	cmd.Process.Kill()
	cmd.Wait()
	return wall, cpu
}

// processorTime is what a running process has used, of all its threads: fields 14
// and 15 of /proc/PID/stat, in hundredths of a second (proc_pid_stat(5)).
func processorTime(b *testing.B, pid int) time.Duration {
	b.Helper()
	text, err := os.ReadFile("/proc/" + strconv.Itoa(pid) + "/stat")
	if err != nil {
		b.Fatal(err)
	}
	fields := bytes.Fields(text[bytes.LastIndexByte(text, ')')+1:]) // from the third on
	sum := 0
	for _, f := range fields[11:13] {
		n, err := strconv.Atoi(string(f))
		if err != nil {
			b.Fatal(err)
		}
		sum += n
	}
	return time.Duration(sum) * 10 * time.Millisecond
}

package keep_test

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/castwright/model/store/keep"
)

// TestMain lets the test binary play a window that is killed: see killedWindow.
func TestMain(m *testing.M) {
	if path := os.Getenv("KEEP_TEST_WINDOW"); path != "" {
		window(path)
	}
	os.Exit(m.Run())
}

// content is a whole state of a job: edit n, repeated so that a torn write
// shows.
func content(n int) []byte { return bytes.Repeat(fmt.Appendf(nil, "edit %d\n", n), 400) }

// window edits without end: each edit goes to the slot, and every third one is
// saved.
func window(path string) {
	s, err := keep.Take(path, filepath.Dir(path))
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	for n := 1; ; n++ {
		if err := s.Write(content(n)); err != nil {
			os.Exit(1)
		}
		if n == 1 {
			fmt.Println("ready")
		}
		if n%3 == 0 {
			if err := s.Save(plainWrite(content(n))); err != nil {
				os.Exit(1)
			}
		}
	}
}

// plainWrite stands for store.Save's atomic write.
func plainWrite(data []byte) func(string) error {
	return func(path string) error {
		if err := os.WriteFile(path+".tmp", data, 0o644); err != nil {
			return err
		}
		return os.Rename(path+".tmp", path)
	}
}

// edit reads back which edit a state is, and fails on a torn one.
func edit(t *testing.T, data []byte) int {
	t.Helper()
	var n int
	if _, err := fmt.Sscanf(string(data), "edit %d", &n); err != nil || !bytes.Equal(data, content(n)) {
		t.Fatalf("a torn state: %d bytes, starting %.20q", len(data), data)
	}
	return n
}

// A window killed at any moment loses at most the edit in hand: file or slot
// holds a whole state, and what is newer than the file is offered.
func TestKilledWindowLosesNothing(t *testing.T) {
	times := 200
	if testing.Short() {
		times = 8
	}
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	rng := rand.New(rand.NewPCG(1, 1))
	for i := range times {
		path := filepath.Join(t.TempDir(), "bench.json")
		if err := os.WriteFile(path, content(0), 0o644); err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command(self)
		cmd.Env = append(os.Environ(), "KEEP_TEST_WINDOW="+path)
		out, err := cmd.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		if _, err := out.Read(make([]byte, 6)); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(rng.IntN(20_000)) * time.Microsecond)
		cmd.Process.Kill()
		cmd.Wait()

		file, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		saved, newest := edit(t, file), 0
		orphans := keep.Orphans(path, "")
		for _, o := range orphans {
			newest = max(newest, edit(t, o.Data))
		}
		if saved == 0 && newest == 0 {
			t.Fatalf("round %d: the window had made an edit and nothing of it is left", i)
		}
		for _, o := range orphans {
			if err := o.Discard(); err != nil {
				t.Fatal(err)
			}
		}
		if left := keep.Orphans(path, ""); len(left) != 0 {
			t.Fatalf("%d orphans left after discarding", len(left))
		}
	}
}

func TestTwoWindowsOnOneFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "bench.json")
	write(t, path, content(0))
	a, b := take(t, path), take(t, path)
	if a.Shared || !b.Shared {
		t.Errorf("shared is %v and %v, want false for the first window and true for the second", a.Shared, b.Shared)
	}
	must(t, a.Write(content(1)))
	must(t, b.Write(content(2)))
	if got := keep.Orphans(path, ""); len(got) != 0 {
		t.Errorf("%d slots of living windows were offered", len(got))
	}
	must(t, a.Save(plainWrite(content(1))))
	if err := b.Save(plainWrite(content(2))); !errors.Is(err, keep.ErrChanged) {
		t.Fatalf("the second window's save gave %v, want ErrChanged", err)
	}
	data, err := os.ReadFile(path)
	must(t, err)
	if edit(t, data) != 1 {
		t.Error("the second window overwrote the first one's work")
	}
	must(t, b.Release()) // ends without saving: its work is offered
	orphans := keep.Orphans(path, "")
	if len(orphans) != 1 || edit(t, orphans[0].Data) != 2 {
		t.Fatalf("orphans %d, want the second window's work", len(orphans))
	}
	must(t, a.Release())
}

func TestOverwriteWhenTold(t *testing.T) {
	path := filepath.Join(t.TempDir(), "bench.json")
	write(t, path, content(0))
	s := take(t, path)
	write(t, path, content(7)) // something else
	if err := s.Save(plainWrite(content(1))); !errors.Is(err, keep.ErrChanged) {
		t.Fatalf("save gave %v, want ErrChanged", err)
	}
	must(t, s.Overwrite())
	must(t, s.Save(plainWrite(content(1))))
}

func TestCleanEndLeavesNothing(t *testing.T) {
	dir := t.TempDir()
	s, err := keep.Take("", filepath.Join(dir, "new"))
	must(t, err)
	must(t, s.Write(content(1)))
	must(t, s.Clear())
	must(t, s.Release())
	files, err := os.ReadDir(filepath.Join(dir, "new"))
	must(t, err)
	for _, f := range files {
		t.Errorf("%s is left", f.Name())
	}
}

// Where no copy can be kept the maker is told why, and the save still fails
// without harm.
func TestNoRoom(t *testing.T) {
	_, err := keep.Take(filepath.Join(t.TempDir(), "no such folder", "bench.json"), "")
	if err == nil || !strings.Contains(err.Error(), "keeping a copy") {
		t.Errorf("error %v, want one that says what could not be done", err)
	}
}

// Where nothing can be written beside the job's file, its work is kept in the folder
// for unsaved jobs, and offered for that file alone.
func TestWriteProtected(t *testing.T) {
	dir := t.TempDir()
	path, other, folder := filepath.Join(dir, "bench.json"), filepath.Join(t.TempDir(), "bench.json"), filepath.Join(dir, "unsaved")
	write(t, path, content(0))
	// A folder in the lock's place refuses it, as a write-protected stick does; that
	// the right to write is missing can't be tested by a user who has every right.
	must(t, os.Mkdir(filepath.Join(dir, ".bench.json.slot-1.lock"), 0o755))
	s, err := keep.Take(path, folder)
	must(t, err)
	second, err := keep.Take(path, folder)
	must(t, err)
	if s.Shared || !second.Shared {
		t.Errorf("shared is %v and %v, want false for the first window and true for the second", s.Shared, second.Shared)
	}
	must(t, second.Release())
	must(t, s.Write(content(3)))
	must(t, s.Release())
	lost := keep.Orphans(path, folder)
	if len(lost) != 1 || lost[0].Job != path || edit(t, lost[0].Data) != 3 {
		t.Fatalf("lost work %+v, want edit 3 of %s", lost, path)
	}
	for name, of := range map[string]string{"a job of the same name elsewhere": other, "a job without a file": ""} {
		if got := keep.Orphans(of, folder); len(got) != 0 {
			t.Errorf("%s is offered %d lots of lost work", name, len(got))
		}
	}
	must(t, lost[0].Discard())
	if got := keep.Orphans(path, folder); len(got) != 0 {
		t.Errorf("%d orphans left after discarding", len(got))
	}
}

func take(t *testing.T, path string) *keep.Slot {
	t.Helper()
	s, err := keep.Take(path, "")
	must(t, err)
	return s
}

func write(t *testing.T, path string, data []byte) {
	t.Helper()
	must(t, os.WriteFile(path, data, 0o644))
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

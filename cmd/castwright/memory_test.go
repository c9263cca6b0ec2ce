//go:build window && linux

package main_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"
	"time"
)

// mostMemory is what the window may hold at any time, and mostGrowth by how much
// doing the same again may add to it, in megabytes: targets of our own.
const (
	mostMemory = 400
	mostGrowth = 40
)

// TestMemory works the real window for a long time and looks at what it holds:
// two thousand steps of a drag, a hundred changes of the option and a hundred of
// the theme, each of them twice. The second time round nothing may be kept that
// the first time did not.
func TestMemory(t *testing.T) {
	if testing.Short() {
		t.Skip("takes minutes")
	}
	const w, h = 1280, 800
	d := startDisplay(t, w, h)
	home := t.TempDir()
	dir := filepath.Join(home, ".config", "castwright")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	settings := fmt.Sprintf(`{"theme": "light", "width": %d, "height": %d}`, w, h)
	if err := os.WriteFile(filepath.Join(dir, "settings.json"), []byte(settings), 0o644); err != nil {
		t.Fatal(err)
	}
	r := start(t, d, home)
	m := newMaker(t, r, d.hand(t))
	r.wait("the demo is open", func(s state) bool { return s.WidthMM > 0 })
	began := r.memory()

	drag := func() {
		s := r.wait("the drawing stands", func(s state) bool { return !s.Busy })
		c := s.Board.place(0, 0) // the front left corner
		m.move(at{c.X + 6, c.Y})
		m.move(c)
		m.down()
		const steps, turn = 2000, 200
		for i := 0; i < steps; i += turn {
			var words []string
			for k := i; k < i+turn; k++ {
				sin, cos := math.Sincos(float64(k) / 17)
				p := at{c.X - 40 + 40*cos + float64(k%7), c.Y + 30*sin}
				words = append(append(words, "mousemove"), p.words()...)
				words = append(words, "sleep", "0.018")
			}
			m.do(words...)
		}
		m.key("Escape")
		m.up()
	}
	again := func(key string, times int) func() {
		return func() {
			for range times {
				m.key(key)
			}
		}
	}
	for _, act := range []struct {
		name string
		do   func()
	}{
		{"2,000 steps of a drag", drag},
		{"100 changes of the option", func() { options(m) }},
		{"100 changes of the theme", again("ctrl+l", 100)},
	} {
		before := r.memory()
		act.do()
		first := r.memory()
		act.do()
		time.Sleep(time.Second)
		second := r.memory()
		t.Logf("%s: %d MB before, %d MB after, %d MB after as many again", act.name, before.now, first.now, second.now)
		if grown := second.now - first.now; grown > mostGrowth {
			t.Errorf("%s: as many again add %d MB to %d MB", act.name, grown, first.now)
		}
	}
	end := r.memory()
	t.Logf("%d MB at the start, at most %d MB", began.now, end.most)
	if end.most > mostMemory {
		t.Errorf("the window held %d MB, more than %d", end.most, mostMemory)
	}
}

// options goes to and fro between two options.
func options(m *maker) {
	for range 50 {
		m.key("ctrl+Next", "ctrl+Prior")
	}
}

// memory is what a process holds of the machine's memory, in megabytes, now and
// at most so far: VmRSS and VmHWM of /proc/PID/status (proc_pid_status(5)).
type memory struct{ now, most int }

func (r *running) memory() (out memory) {
	r.t.Helper()
	text, err := os.ReadFile("/proc/" + strconv.Itoa(r.cmd.Process.Pid) + "/status")
	if err != nil {
		r.t.Fatal(err)
	}
	for line := range bytes.Lines(text) {
		f := bytes.Fields(line)
		if len(f) < 2 {
			continue
		}
		n, _ := strconv.Atoi(string(f[1]))
		switch string(f[0]) {
		case "VmRSS:":
			out.now = n / 1024
		case "VmHWM:":
			out.most = n / 1024
		}
	}
	if out.now == 0 || out.most == 0 {
		r.t.Fatalf("no memory in\n%s", text)
	}
	return out
}

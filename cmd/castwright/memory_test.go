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

	"example.org/castwright/assets"
	"example.org/castwright/model/design"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
)

// mostMemory is what the window may hold, mostPictures while it takes pictures, and
// mostGrowth by how much doing the same again may add, in megabytes: targets of our own.
const (
	mostMemory   = 400
	mostPictures = 550
	mostGrowth   = 40
)

// TestMemory works the real window for a long time and looks at what it holds:
// a thousand steps of a drag, a hundred changes of the option and fifty of the
// theme, a turn through the pages with pictures, each of them twice. The second
// time round nothing may be kept that the first time did not.
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
	r := start(t, d, home, roomJob(t, home))
	m := newMaker(t, r, d.hand(t))
	r.wait("the demo is open", func(s state) bool { return s.Path != "" && s.WidthMM > 0 })
	began := r.memory()

	drag := func() {
		s := r.wait("the drawing stands", func(s state) bool { return !s.Busy })
		c := s.Board.place(0, 0) // the front left corner
		m.move(at{c.X + 6, c.Y})
		m.move(c)
		m.down()
		const steps, turn = 1000, 200
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
	themes := func() {
		for range 50 {
			m.key("ctrl+l")
		}
		caughtUp(m)
	}
	for _, act := range []struct {
		name string
		do   func()
		most int // at any time so far
	}{
		{"1,000 steps of a drag", drag, mostMemory},
		{"100 changes of the option", func() { options(m) }, mostMemory},
		{"50 changes of the theme", themes, mostMemory},
		{"a turn through the pictures", func() { pictures(m) }, mostPictures},
	} {
		before := r.memory()
		act.do()
		first := r.memory()
		act.do()
		time.Sleep(time.Second)
		second := r.memory()
		t.Logf("%s: %d MB before, %d MB after, %d MB after as many again, at most %d MB", act.name, before.now, first.now, second.now, second.most)
		if grown := second.now - first.now; grown > mostGrowth {
			t.Errorf("%s: as many again add %d MB to %d MB", act.name, grown, first.now)
		}
		if second.most > act.most {
			t.Errorf("%s: the window held %d MB, more than %d", act.name, second.most, act.most)
		}
	}
	end := r.memory()
	t.Logf("%d MB at the start, %d at the end, at most %d MB", began.now, end.now, end.most)
	if end.now > mostMemory {
		t.Errorf("the window still holds %d MB, more than %d", end.now, mostMemory)
	}
}

// options goes to and fro between two options.
func options(m *maker) {
	for range 50 {
		m.key("ctrl+Next", "ctrl+Prior")
	}
}

// roomJob writes the demo with a photograph of its room, and gives its path.
func roomJob(t *testing.T, dir string) string {
	job, err := store.Decode(assets.Demos()[0].Data)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, "demo.json")
	data := photograph(t, filepath.Join(dir, "from-the-camera.jpg"))
	name, sum, err := store.KeepPhoto(path, data, ".jpg")
	if err != nil {
		t.Fatal(err)
	}
	job.Room = design.Room{Photo: name, SHA256: sum, Width: 1500 * mm, Depth: 550 * mm}
	for i, p := range topInPhoto {
		job.Room.Corners[i] = design.Spot{X: share(p.X / photoW), Y: share(p.Y / photoH)}
	}
	if err := store.Save(path, job); err != nil {
		t.Fatal(err)
	}
	return path
}

func share(x float64) units.Share { return units.Share(math.Round(x * float64(units.Whole))) }

// caughtUp waits until the window has done all that it was told to, which takes longer
// than to tell it, by a page that is opened and left.
func caughtUp(m *maker) {
	m.key("ctrl+k")
	for range 10 {
		if m.tried(func() bool { s, err := m.state(); return err == nil && s.Compare != nil }) {
			break
		}
	}
	m.press("Escape", "all is done", func(s state) bool { return s.Compare == nil })
}

// pictures goes through the pages with pictures and waits on each until they are as
// clear as they become: two options side by side, the client's room, one from the front.
func pictures(m *maker) {
	at := m.press("ctrl+k", "two are compared", func(s state) bool { return s.Compare != nil && s.Compare.Grade >= 0 })
	if !at.Compare.Picture {
		m.key("p")
	}
	m.wait("both are clear", func(s state) bool { return s.Compare.Picture && s.Compare.Grade == 2 && s.Works == 0 })
	m.press("Escape", "the drawing again", func(s state) bool { return s.Compare == nil })
	m.press("ctrl+F12", "the room", func(s state) bool { return s.Room != nil && len(s.Room.Corners) == 4 })
	m.press("ctrl+Return", "the top is set in", func(s state) bool { return s.Room.Result == "Clear" && s.Works == 0 })
	m.press("Escape", "the corners again", func(s state) bool { return s.Room.Result == "" })
	m.press("Escape", "the drawing again", func(s state) bool { return s.Room == nil })
	m.press("alt+F12", "it is clear from the front", func(s state) bool { return seen("front")(s) && s.Works == 0 })
	m.press("Escape", "the drawing again", func(s state) bool { return s.Seen == "" && s.Works == 0 })
	time.Sleep(2 * time.Second) // what they took is given back a second later
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

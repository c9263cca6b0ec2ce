//go:build window

package main_test

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"
)

// patience is how long a test waits for something that takes a moment: long
// enough for a busy machine, and no part of any result.
const patience = 20 * time.Second

// built is the program under test, built once, without the tag that a release
// has, so that the toolkit reports every call from a wrong goroutine.
var built = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "castwright-window")
	if err != nil {
		return "", err
	}
	exe := filepath.Join(dir, "castwright")
	out, err := exec.Command("go", "build", "-o", exe, ".").CombinedOutput()
	if err != nil {
		return "", fmt.Errorf("building the window: %w\n%s", err, out)
	}
	return exe, nil
})

func TestMain(m *testing.M) {
	code := m.Run()
	if exe, err := built(); err == nil {
		os.RemoveAll(filepath.Dir(exe))
	}
	os.Exit(code)
}

// running is the program at work on a display.
type running struct {
	t    testing.TB
	cmd  *exec.Cmd
	dump string // file in which the program writes its state after each change
	said *record
	done chan struct{}
}

// record keeps what the program prints.
type record struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (r *record) Write(p []byte) (int, error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.text.Write(p)
}

func (r *record) String() string {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.text.String()
}

// start starts the program on a job's file, or on none, with a home of its own,
// and waits until its first window stands.
func start(t testing.TB, d display, home string, args ...string) *running {
	t.Helper()
	exe, err := built()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Join(home, ".cache"), 0o700); err != nil {
		t.Fatal(err)
	}
	r := &running{t: t, dump: filepath.Join(t.TempDir(), "state.json"), said: &record{}, done: make(chan struct{})}
	r.cmd = exec.Command(exe, append([]string{"-dump", r.dump}, args...)...)
	r.cmd.Dir = home
	r.cmd.Env = []string{
		"DISPLAY=" + d.name, "HOME=" + home, "XDG_CONFIG_HOME=" + filepath.Join(home, ".config"),
		"XDG_RUNTIME_DIR=" + home, "LANG=en_US.UTF-8", "PATH=" + os.Getenv("PATH"),
	}
	r.cmd.Stderr = r.said
	stdout, err := r.cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := r.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	ready := make(chan struct{})
	go func() {
		seen := false
		lines := bufio.NewScanner(io.TeeReader(stdout, r.said))
		for lines.Scan() {
			if !seen && strings.Contains(lines.Text(), "READY") {
				seen = true
				close(ready)
			}
		}
		r.cmd.Wait()
		close(r.done)
	}()
	t.Cleanup(func() {
		r.cmd.Process.Kill()
		<-r.done
		r.checkSaid()
	})
	select {
	case <-ready:
	case <-r.done:
		t.Fatalf("the program ended before its window stood:\n%s", r.said)
	case <-time.After(patience):
		t.Fatalf("no window after %v:\n%s", patience, r.said)
	}
	return r
}

// checkSaid fails the test when the program printed that something went wrong.
func (r *running) checkSaid() {
	r.t.Helper()
	for _, bad := range []string{"Error in Fyne call thread", "panic", "fatal error", "DATA RACE"} {
		if strings.Contains(r.said.String(), bad) {
			r.t.Errorf("the program said %q:\n%s", bad, r.said)
			return
		}
	}
}

// ended waits until the program has ended by itself, well.
func (r *running) ended() {
	r.t.Helper()
	select {
	case <-r.done:
		if code := r.cmd.ProcessState.ExitCode(); code != 0 {
			r.t.Errorf("the program ended with code %d:\n%s", code, r.said)
		}
	case <-time.After(patience):
		r.t.Fatalf("the program has not ended after %v", patience)
	}
}

// alive reports whether the program still runs.
func (r *running) alive() bool {
	select {
	case <-r.done:
		return false
	default:
		return r.cmd.Process.Signal(syscall.Signal(0)) == nil
	}
}

// state is what the program writes about itself after each change.
type state struct {
	Option    string   `json:"option"`
	Path      string   `json:"path"`
	Dirty     bool     `json:"dirty"`
	WidthMM   float64  `json:"width_mm"`
	DepthMM   float64  `json:"depth_mm"`
	WeightKG  float64  `json:"weight_kg"`
	Selection []string `json:"selection"`
	Hint      string   `json:"hint"`
	Busy      bool     `json:"busy"`  // a dialog is open
	Works     int      `json:"works"` // pictures and other long works that go on
	Seen      string   `json:"seen"`  // the view of the picture
	Tool      string   `json:"tool"`
	Saved     string   `json:"saved"`  // whether the job is saved, in words
	Undo      string   `json:"undo"`   // what undo would take back
	Typing    *typing  `json:"typing"` // a number being typed on the drawing
	Board     board    `json:"board"`
	Labels    []spot   `json:"labels"`   // of measures that can be clicked
	Handles   []spot   `json:"handles"`  // on the drawing
	Links     []spot   `json:"links"`    // the chains of relations, on the drawing
	Controls  []spot   `json:"controls"` // of the card that is open, else of the window
	Compare   *compare `json:"compare"`  // two side by side
	Room      *inRoom  `json:"room"`     // the client's room, while it is shown
}

// inRoom is the client's room.
type inRoom struct {
	Corners []spot  `json:"corners"`
	Work    string  `json:"work"`   // what is being worked at
	Result  string  `json:"result"` // the picture that is seen
	Wrong   string  `json:"wrong"`  // with the corners
	Photo   string  `json:"photo"`
	Held    bool    `json:"held"` // a corner is held
	Wipe    float64 `json:"wipe"`
}

// typing is a number being typed on the drawing.
type typing struct {
	Name string `json:"name"` // of the measure
	Text string `json:"text"`
	Bad  bool   `json:"bad"`
}

// spot is the middle of something that can be clicked, with what it says.
type spot struct {
	Says  string  `json:"says"`
	Value string  `json:"value"` // of an entry
	X     float64 `json:"x"`
	Y     float64 `json:"y"`
}

// spotOf is the first spot that says something that begins so.
func spotOf(spots []spot, says string) (at, bool) {
	for _, s := range spots {
		if strings.HasPrefix(s.Says, says) {
			return at{s.X, s.Y}, true
		}
	}
	return at{}, false
}

// board is where the drawing lies in the window, in pixels, and how the design
// lies on it.
type board struct {
	X       float64 `json:"x"`
	Y       float64 `json:"y"`
	W       float64 `json:"w"`
	H       float64 `json:"h"`
	Scale   float64 `json:"scale"`    // pixels to the millimetre
	OriginX float64 `json:"origin_x"` // the design's (0, 0) in the window
	OriginY float64 `json:"origin_y"`
}

// place is where a point of the design, in millimetres, lies on the screen.
func (b board) place(xMM, yMM float64) at {
	return at{b.OriginX + xMM*b.Scale, b.OriginY - yMM*b.Scale}
}

// state reads what the program last wrote about itself.
func (r *running) state() (state, error) {
	text, err := os.ReadFile(r.dump)
	if err != nil {
		return state{}, err
	}
	var s state
	if err := json.Unmarshal(text, &s); err != nil {
		return state{}, fmt.Errorf("reading the program's state: %w\n%s", err, text)
	}
	return s, nil
}

// wait waits until the program's state is as wanted and gives it. The words say
// what is waited for.
func (r *running) wait(words string, wanted func(state) bool) state {
	r.t.Helper()
	var last state
	var err error
	ok := r.tried(func() bool {
		last, err = r.state()
		return err == nil && wanted(last)
	})
	if !ok {
		last.Controls = nil // too many to read
		r.t.Fatalf("not seen in %v: %s. Last state: %+v typing %+v %v\n%s", patience, words, last, last.Typing, err, r.said)
	}
	return last
}

// point moves the pointer to a place and waits until the hint line says what a
// press there does: the window takes a press where it last saw the pointer.
func (r *running) point(h hand, p at, hint string) {
	r.t.Helper()
	h.move(p)
	r.wait("the hint says "+hint, func(s state) bool { return strings.HasPrefix(s.Hint, hint) })
}

// until waits until something is so. The words say what is waited for.
func (r *running) until(words string, so func() bool) {
	r.t.Helper()
	if !r.tried(so) {
		r.t.Fatalf("not seen in %v: %s\n%s", patience, words, r.said)
	}
}

// tried asks again and again, as long as there is patience and the program runs.
func (r *running) tried(so func() bool) bool {
	for end := time.Now().Add(patience); time.Now().Before(end) && r.alive(); time.Sleep(50 * time.Millisecond) {
		if so() {
			return true
		}
	}
	return so()
}

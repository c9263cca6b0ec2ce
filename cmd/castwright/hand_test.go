//go:build window

package main_test

import (
	"fmt"
	"math"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"
)

// hand works mouse and keys of a display, each act a command of its own with a
// person's pause after it: the toolkit takes the pointer's place from the frame
// before, so acts in one burst land in the wrong place.
type hand struct {
	t       testing.TB
	display display
	pause   time.Duration
}

func (d display) hand(t testing.TB) hand { return hand{t, d, 60 * time.Millisecond} }

// do runs one command of the mouse or the keys and gives what it printed.
func (h hand) do(words ...string) string {
	h.t.Helper()
	cmd := exec.Command("xdotool", words...)
	cmd.Env = append(os.Environ(), "DISPLAY="+h.display.name)
	out, err := cmd.CombinedOutput()
	if err != nil {
		h.t.Fatalf("xdotool %s: %v\n%s", strings.Join(words, " "), err, out)
	}
	time.Sleep(h.pause)
	return string(out)
}

// at is a place on the screen in pixels.
type at struct{ X, Y float64 }

func (p at) words() []string {
	return []string{fmt.Sprint(int(math.Round(p.X))), fmt.Sprint(int(math.Round(p.Y)))}
}

func (h hand) move(p at) { h.t.Helper(); h.do(append([]string{"mousemove"}, p.words()...)...) }

func (h hand) down() { h.t.Helper(); h.do("mousedown", "1") }

func (h hand) up() { h.t.Helper(); h.do("mouseup", "1") }

// click moves to a place, lets the window see the pointer there, and clicks.
func (h hand) click(p at) {
	h.t.Helper()
	h.move(p)
	h.down()
	h.up()
}

// drag pulls from one place to another in steps, as a hand would.
func (h hand) drag(from, to at) {
	h.t.Helper()
	h.move(from)
	h.down()
	const steps = 6
	for i := 1; i <= steps; i++ {
		f := float64(i) / steps
		h.move(at{from.X + f*(to.X-from.X), from.Y + f*(to.Y-from.Y)})
	}
	h.up()
}

// key presses keys, such as "ctrl+s" or "Return", one after the other.
func (h hand) key(names ...string) {
	h.t.Helper()
	for _, n := range names {
		h.do("key", n) // without clearing modifiers, which would let go of the mouse too
	}
}

// write types a text into whatever has the keyboard.
func (h hand) write(text string) { h.t.Helper(); h.do("type", "--delay", "30", text) }

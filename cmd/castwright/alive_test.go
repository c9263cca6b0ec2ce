//go:build window

package main_test

import (
	"image"
	"testing"
	"time"
)

// TestSeenAfterAWhile leaves the window alone for as long as the toolkit needs to
// forget what does not change, while a caret blinks; then it changes the option,
// which must be seen all over the window.
func TestSeenAfterAWhile(t *testing.T) {
	if testing.Short() {
		t.Skip("waits for half a minute")
	}
	d := startDisplay(t, screenW, screenH)
	h := d.hand(t)
	home := t.TempDir()
	path := writeJob(t, home)
	r := start(t, d, home, path)
	first := r.wait("the job is open", func(s state) bool { return s.Path == path })
	h.key("ctrl+shift+s")
	r.wait("the dialog asks where to", func(s state) bool { return s.Busy })
	h.key("Escape")
	r.wait("the dialog is gone", func(s state) bool { return !s.Busy })
	time.Sleep(25 * time.Second) // twice the life of the toolkit's caches
	before := d.shoot(t, "alive-1-left-alone")
	h.key("ctrl+Next")
	r.wait("option B", func(s state) bool { return s.Option == "B" })
	after := d.shootStill(t, "alive-2-option-b")
	b := first.Board
	drawing := image.Rect(int(b.X), int(b.Y), int(b.X+b.W), int(b.Y+b.H))
	for name, part := range map[string]image.Rectangle{"panel": b.panel(), "drawing": drawing} {
		if share := changed(before, after, part); share < 0.002 {
			t.Errorf("%.2f %% of the %s has changed with the option", 100*share, name)
		}
	}
}

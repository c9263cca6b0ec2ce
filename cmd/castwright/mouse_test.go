//go:build window

package main_test

import (
	"math"
	"testing"
	"time"
)

// TestQuickHand makes moves, presses and releases within one frame, as a slow
// frame has them: each must land where the pointer was when it was made.
func TestQuickHand(t *testing.T) {
	d := startDisplay(t, screenW, screenH)
	h := d.hand(t)
	home := t.TempDir()
	r := start(t, d, home, writeJob(t, home))
	first := r.wait("the job is open", func(s state) bool { return s.Path != "" })
	burst := func(acts ...any) {
		t.Helper()
		var words []string
		for _, a := range acts {
			switch a := a.(type) {
			case string:
				words = append(words, a, "1")
			case at:
				words = append(append(words, "mousemove"), a.words()...)
			}
		}
		h.do(words...)
	}
	ground, corner := first.Board.place(-100, 300), first.Board.place(1200, 0)

	h.move(ground)
	burst(corner, "mousedown", "mouseup")
	r.wait("the corner is selected by a click right after the move", func(s state) bool {
		return len(s.Selection) == 1 && s.Selection[0] == "corner 1"
	})
	h.move(ground)
	time.Sleep(500 * time.Millisecond) // no double click
	burst("mousedown", "mouseup", corner)
	r.wait("nothing is selected by a click right before the move", func(s state) bool { return len(s.Selection) == 0 })

	// Keys that are struck in the same frame come after the click that they are for.
	time.Sleep(500 * time.Millisecond)
	edge := first.Board.place(1200, 250)
	h.move(ground)
	h.do(append(append([]string{"mousemove"}, edge.words()...), "mousedown", "1", "mouseup", "1",
		"key", "1", "key", "2", "key", "1", "key", "0", "key", "Return")...)
	r.wait("the number typed right after a click is for what was clicked", func(s state) bool { return near(s.WidthMM, 1210) })
	h.key("ctrl+z", "Escape")
	r.wait("the width is as before", func(s state) bool { return near(s.WidthMM, 1200) })

	// A drag that ends within a frame, and goes on moving after the release.
	time.Sleep(500 * time.Millisecond)
	out := first.Board.place(1300, -60)
	h.move(corner)
	h.down()
	h.move(at{corner.X + 6, corner.Y + 4})
	burst(out, "mouseup", ground)
	r.wait("the corner lies where the button was let go: 1300 x 660 mm", func(s state) bool {
		return s.Dirty && math.Abs(s.WidthMM-1300) <= 6 && math.Abs(s.DepthMM-660) <= 6
	})
}

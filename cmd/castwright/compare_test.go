//go:build window

package main_test

import (
	"math"
	"testing"
)

// compare is what the window says of two side by side.
type compare struct {
	A       string  `json:"a"`
	B       string  `json:"b"`
	Picture bool    `json:"picture"`
	Over    bool    `json:"over"`
	Wipe    float64 `json:"wipe"`
	Scale   string  `json:"scale"`
	Work    string  `json:"work"`
	Grade   int     `json:"grade"`
	PerMM   float64 `json:"per_mm"`
	Changes int     `json:"changes"`
	Picked  int     `json:"picked"`
}

// TestSideBySide lays two options beside each other by keys and mouse: the wheel and
// the drag move both, the wipe follows mouse and arrows, pictures come while the window
// goes on listening, and Esc leads back with nothing changed.
func TestSideBySide(t *testing.T) {
	d := startDisplay(t, screenW, screenH)
	h := d.hand(t)
	home := t.TempDir()
	path := writeJob(t, home)
	r := start(t, d, home, path)
	r.wait("the job is open", func(s state) bool { return s.Path == path })

	comparing := func(words string, wanted func(compare) bool) compare {
		t.Helper()
		return *r.wait(words, func(s state) bool { return s.Compare != nil && wanted(*s.Compare) }).Compare
	}
	h.key("ctrl+k")
	open := comparing("two are compared", func(c compare) bool { return c.A == "A" && c.B == "B" && c.Grade >= 0 })
	if open.Changes == 0 || open.Picture || open.Over {
		t.Errorf("just opened: %+v", open)
	}
	d.shootStill(t, "compare-1-drawings")

	// The wheel over the right side, then the whole again.
	right := at{960, 300}
	h.move(right)
	h.do("click", "4")
	comparing("the wheel brings both nearer", func(c compare) bool { return c.PerMM > 1.05*open.PerMM })
	h.key("f")
	comparing("F shows the whole", func(c compare) bool { return near(c.PerMM, open.PerMM) })

	// Over each other: the line follows the mouse and the arrow keys.
	h.key("o")
	comparing("they lie over each other", func(c compare) bool { return c.Over && c.Grade >= 0 })
	before := d.shootStill(t, "compare-2-over")
	h.drag(at{screenW / 2, 280}, at{screenW/2 + 200, 285})
	// The sides are 16 points from the window's left and right.
	want := 0.5 + 200.0/(screenW-32)
	dragged := comparing("the line follows the mouse by 200 points", func(c compare) bool { return math.Abs(c.Wipe-want) <= 0.01 })
	after := d.shootStill(t, "compare-3-wiped")
	if changed(before, after, before.Bounds()) < 0.001 {
		t.Error("the wipe is not seen")
	}
	h.key("Left")
	comparing("an arrow moves the line", func(c compare) bool { return math.Abs(c.Wipe-dragged.Wipe+0.02) < 1e-6 })

	// Pictures: while they are taken the window goes on listening.
	h.key("p")
	comparing("pictures are taken", func(c compare) bool { return c.Picture && c.Work != "" })
	h.key("Right")
	comparing("meanwhile the line moves", func(c compare) bool { return math.Abs(c.Wipe-dragged.Wipe) < 1e-6 })
	comparing("a first look of both is there", func(c compare) bool { return c.Grade >= 0 })
	d.shoot(t, "compare-4-pictures")
	h.key("ctrl+alt+q")
	comparing("it is stopped", func(c compare) bool { return len(c.Work) > 7 && c.Work[:7] == "Stopped" })

	h.key("Escape")
	back := r.wait("Esc leads back", func(s state) bool { return s.Compare == nil })
	if back.Dirty {
		t.Error("looking has changed the job")
	}
}

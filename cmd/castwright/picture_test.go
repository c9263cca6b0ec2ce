//go:build window

package main_test

import (
	"strings"
	"testing"
)

// seen reports whether the picture on the screen is of a view.
func seen(view string) func(state) bool {
	return func(s state) bool { return strings.HasPrefix(s.Seen, view) }
}

// TestPicture walks round the top by keys and by mouse, looks at a place from near and
// goes back, and leaves: each way out by Esc.
func TestPicture(t *testing.T) {
	d := startDisplay(t, screenW, screenH)
	m := newMaker(t, start(t, d, t.TempDir()), d.hand(t))
	m.press("alt+F12", "the picture from the front", seen("front"))
	m.press("Right", "a step to the right", seen("round 21 34"))
	m.press("Up", "a step higher", seen("round 21 38"))
	// The wall is on the left, so the front is seen from 15 degrees to the right.
	m.count("drag to the left")
	m.drag(at{700, 600}, at{600, 600})
	round := m.wait("the eye has gone round by the drag", func(s state) bool { return seen("round")(s) && !seen("round 21 38")(s) }).Seen
	m.key("1")
	m.wait("from the front again", seen("front"))
	m.count("click a place of the top")
	m.click(at{300, 430})
	near := m.wait("near to", seen("near")).Seen
	d.shootStill(t, "picture-near")
	m.press("Left", "round the place", func(s state) bool { return seen("near")(s) && s.Seen != near })
	m.press("Escape", "the whole top", seen("front"))
	m.press("2", "from above", seen("above"))
	m.press("Escape", "the drawing, and nothing goes on", func(s state) bool { return s.Seen == "" && s.Board.W > 0 && s.Works == 0 })
	t.Log(round, near)
}

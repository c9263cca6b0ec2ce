package ui

import (
	"fmt"
	"image"
	"testing"

	"example.org/castwright/ui/keys"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
)

// leastTarget is the least side of what is clicked or touched, in points: WCAG 2.2,
// success criterion 2.5.8 (24 by 24 CSS pixels).
const leastTarget = 24

// found is a control in sight.
type found struct {
	o    fyne.CanvasObject
	at   fyne.Position
	says string // in the hint line, under the mouse
}

func (f found) String() string { return fmt.Sprintf("%T at %v saying %q", f.o, f.at, f.says) }

// controlsIn are the controls in sight below an object, in their order: what takes
// a click and is not disabled.
func (w *window) controlsIn(root fyne.CanvasObject) (out []found) {
	heard := ""
	w.frame.OnSay = func(text string) {
		if text != "" {
			heard = text
		}
	}
	w.board.OnHint(w.frame.OnSay) // the zoom buttons speak there
	defer func() { w.frame.OnSay = w.say; w.board.OnHint(w.hint.base) }()
	var walk func(o fyne.CanvasObject, from fyne.Position)
	walk = func(o fyne.CanvasObject, from fyne.Position) {
		if o == nil || !o.Visible() {
			return
		}
		at := from.Add(o.Position())
		_, taps := o.(fyne.Tappable)
		_, focuses := o.(fyne.Focusable)
		d, off := o.(fyne.Disableable)
		switch {
		case o == fyne.CanvasObject(w.board):
		case off && d.Disabled():
			return
		case taps && focuses:
			heard = ""
			if h, ok := o.(desktop.Hoverable); ok {
				h.MouseIn(&desktop.MouseEvent{})
				h.MouseOut()
			}
			out = append(out, found{o, at, heard})
			return
		case taps:
			out = append(out, found{o, at, "–"})
		}
		if s, ok := o.(*container.Scroll); ok {
			walk(s.Content, at)
			return
		}
		for _, c := range children(o) {
			walk(c, at)
		}
	}
	walk(root, fyne.Position{})
	return out
}

// TestControlsCanBeReached: every control of the window and of the cards that its
// actions open is at least 24 points wide and high, has a name in the hint line,
// is reached by Tab, and shows that it has the keyboard.
func TestControlsCanBeReached(t *testing.T) {
	w := newRig(t)
	look := func(where string, root fyne.CanvasObject) {
		all := w.controlsIn(root)
		if len(all) == 0 {
			return
		}
		seen := map[fyne.CanvasObject]bool{}
		for _, f := range all {
			if seen[f.o] {
				continue
			}
			seen[f.o] = true
			if s := f.o.Size(); s.Width < leastTarget-0.5 || s.Height < leastTarget-0.5 {
				t.Errorf("%s: %v is %v, want %d at least", where, f, s, leastTarget)
			}
			words, _ := f.o.(interface{ AccessibilityLabel() string })
			if f.says == "" && (words == nil || words.AccessibilityLabel() == "") {
				t.Errorf("%s: %v says nothing of itself", where, f)
			}
		}
		reached := w.byTab()
		if len(reached) == 0 {
			t.Errorf("%s: Tab reaches nothing; %T has the keyboard", where, w.win.Canvas().Focused())
			return
		}
		for _, f := range all {
			if _, focuses := f.o.(fyne.Focusable); focuses && !reached[f.o] {
				t.Errorf("%s: Tab does not reach %v", where, f)
			}
		}
	}
	look("window", w.win.Content())
	for id := range w.bindings() {
		if id == keys.Quit || id == keys.FullScreen || id == keys.Theme || id == keys.Units {
			continue
		}
		w.keys.Run(id)
		for _, o := range w.win.Canvas().Overlays().List() {
			look("card of "+string(id), o)
		}
		for w.win.Canvas().Overlays().Top() != nil {
			w.press(fyne.KeyEscape)
		}
		if w.covered() {
			look("page of "+string(id), w.win.Content())
		}
		if w.covered() {
			w.backOut()
		}
	}
}

// byTab is what Tab reaches, from whatever has the keyboard.
func (w *window) byTab() map[fyne.CanvasObject]bool {
	c := w.win.Canvas()
	out := map[fyne.CanvasObject]bool{}
	for range 400 {
		c.FocusNext()
		o, ok := c.Focused().(fyne.CanvasObject)
		if !ok || out[o] {
			break
		}
		out[o] = true
	}
	return out
}

// TestFocusIsSeen: what Tab reaches in the window looks different with the keyboard.
func TestFocusIsSeen(t *testing.T) {
	w := newRig(t)
	c := w.win.Canvas()
	c.Unfocus()
	plain := c.Capture()
	first, same := fyne.CanvasObject(nil), 0
	for range 200 {
		c.FocusNext()
		o, ok := c.Focused().(fyne.CanvasObject)
		if !ok || o == first {
			break
		}
		if first == nil {
			first = o
		}
		if !o.Visible() {
			continue
		}
		at, size := fyne.CurrentApp().Driver().AbsolutePositionForObject(o), o.Size()
		area := image.Rect(int(at.X)-2, int(at.Y)-2, int(at.X+size.Width)+2, int(at.Y+size.Height)+2)
		if now := c.Capture(); sameIn(plain, now, area) {
			t.Errorf("%T at %v looks the same with the keyboard", o, at)
			same++
		}
		if same > 5 {
			break
		}
	}
	if first == nil {
		t.Error("Tab reaches nothing")
	}
}

func sameIn(a, b image.Image, r image.Rectangle) bool {
	r = r.Intersect(a.Bounds())
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			if a.At(x, y) != b.At(x, y) {
				return false
			}
		}
	}
	return true
}

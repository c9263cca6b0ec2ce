package ui

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/tool"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
)

// said is every hint that was met, with where it was met first.
type said map[string]string

func (s said) hear(where, text string) {
	if _, known := s[text]; !known {
		s[text] = where
	}
}

// hover hears what every control below o says of itself.
func (s said) hover(w *window, where string, o fyne.CanvasObject) {
	w.frame.OnSay = func(text string) { s.hear(where, text) }
	defer func() { w.frame.OnSay = w.say }()
	var walk func(fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		if h, ok := o.(desktop.Hoverable); ok && o != fyne.CanvasObject(w.board) {
			h.MouseIn(&desktop.MouseEvent{})
			h.MouseOut()
		}
		for _, child := range children(o) {
			walk(child)
		}
	}
	walk(o)
}

// children are what lies in an object, in sight or not.
func children(o fyne.CanvasObject) []fyne.CanvasObject {
	switch k := o.(type) {
	case *fyne.Container:
		return k.Objects
	case fyne.Widget:
		return test.WidgetRenderer(k).Objects()
	}
	return nil
}

// play moves a hand at random over a design, as TestRandomHands of package tool
// does, and hears what it says at each step.
func (s said) play(u units.System, d design.Design, seed uint64) {
	rnd := rand.New(rand.NewPCG(4, seed))
	in := session.New(design.Job{Units: u, Options: []design.Option{{Name: "A", Design: d}}}, "")
	h := tool.New(in)
	box := edit.Bounds(d.Outline)
	x, y := 0.0, 0.0
	mods := tool.Mod(0)
	at := func() tool.Pointer {
		return tool.Pointer{At: geom.Vec{X: x, Y: y}, PerMM: 0.7, Mod: mods}
	}
	tools := []tool.Tool{tool.Select, tool.Pan, tool.Outline, tool.River, tool.Region, tool.Glass, tool.Support,
		tool.Freehand, tool.Brush, tool.Eraser, tool.Bank, tool.Flood}
	text := []string{"", "0", "12", "-40", "3/4", "1e9", "900 - 7*3", "45", "x", "48 1/4 in"}
	for range 300 {
		x, y = box.Min.X-50+rnd.Float64()*(box.W()+100), box.Min.Y-50+rnd.Float64()*(box.H()+100)
		if o := h.Overlay(); len(o.Handles) > 0 && rnd.IntN(3) > 0 {
			p := o.Handles[rnd.IntN(len(o.Handles))].At
			x, y = p.X, p.Y
		}
		mods = tool.Mod(rnd.IntN(8) & rnd.IntN(8))
		switch rnd.IntN(9) {
		case 0, 1:
			h.Move(at())
		case 2:
			h.Down(at())
			s.hear("board", h.Hint())
			x, y = x+200*rnd.NormFloat64(), y+80*rnd.NormFloat64()
			h.Move(at())
		case 3:
			h.Up(at())
		case 4:
			h.Key(tool.Key(rnd.IntN(11)), 0)
		case 5:
			h.SetTool(tools[rnd.IntN(len(tools))])
		case 6:
			for _, r := range text[rnd.IntN(len(text))] {
				h.Rune(r)
			}
			s.hear("board", h.Hint())
			h.Key([]tool.Key{tool.KeyTab, tool.KeyEnter}[rnd.IntN(2)], 0)
		case 7:
			var all []tool.Put
			for i := range d.Sinks {
				all = append(all, tool.Put{Sink: &d.Sinks[i]})
			}
			for i := range d.Taps {
				all = append(all, tool.Put{Taps: &d.Taps[i]})
			}
			for i := range d.Channels {
				all = append(all, tool.Put{Channel: &d.Channels[i]})
			}
			if len(all) > 0 {
				h.Put(all[rnd.IntN(len(all))])
			}
		case 8:
			if n := len(d.Outline.Nodes); n > 0 {
				in.Select(session.Pick{Node: rnd.IntN(n), Edge: rnd.IntN(2) == 0})
			}
		}
		s.hear("board", h.Hint())
	}
}

// TestHintsAreWhole holds every hint that can be met to two lines of body text at
// the smallest size of the window that is promised, in both systems of units.
func TestHintsAreWhole(t *testing.T) {
	w := newRig(t)
	all := said{}
	for seed := range uint64(4) {
		for _, o := range w.session.Job().Options {
			all.play(units.System(seed%2), o.Design, seed)
		}
	}
	for _, a := range keys.Table {
		all.hear("action "+string(a.ID), a.Does)
	}
	for _, u := range []units.System{units.Imperial, units.Metric} {
		w.do(w.session.DoJob(edit.SetUnits(u)))
		d := w.session.Design()
		var picks []session.Pick
		picks = append(picks, session.Pick{Node: -1}, session.Pick{Node: 0}, session.Pick{Node: 0, Edge: true})
		for _, id := range edit.Parts(d) {
			picks = append(picks, session.Pick{Part: id, Node: -1})
		}
		for _, p := range picks {
			w.session.Select(p)
			all.hover(w, "window", w.win.Content())
		}
		for id := range w.bindings() {
			if id == keys.Quit || id == keys.FullScreen {
				continue
			}
			w.keys.Run(id)
			for _, o := range w.win.Canvas().Overlays().List() {
				all.hover(w, string(id), o)
			}
			for w.win.Canvas().Overlays().Top() != nil {
				w.press(fyne.KeyEscape)
			}
			if w.covered() {
				w.backOut()
			}
		}
	}
	if len(all) < 300 {
		t.Errorf("only %d hints were met", len(all))
	}
	width := w.hint.text.Size().Width
	if width < startW/2 {
		t.Fatalf("the hint line has only %g points", width)
	}
	var long []string
	for text := range all {
		if _, way, _ := w.hint.text.Set(text, width); way > 0 {
			long = append(long, text)
		}
	}
	slices.Sort(long)
	for _, text := range long {
		lines, _, whole := w.hint.text.Set(text, width)
		t.Errorf("%s: %d characters take %d small lines, whole %v: %q", all[text], len(text), len(lines), whole, text)
	}
	t.Logf("%d hints, %g points wide", len(all), width)

	// Beside the longest state a hint may have to be small, but it is whole.
	w.hint.saved("! Changes not saved, and no copy can be kept: open /home/maker/jobs/wash-counter.json: no space left on device")
	w.win.Content().Refresh()
	if lines, _, whole := w.hint.state.Set(w.hint.state.Text(), w.hint.state.Size().Width); !whole {
		t.Errorf("the state is cut: %q", lines)
	}
	for text := range all {
		if lines, _, whole := w.hint.text.Set(text, w.hint.text.Size().Width); !whole {
			t.Errorf("beside a long state a hint is cut: %q", lines)
		}
	}
}

// TestRefusalsAreToldOverAControl: what is in the way of a key is told though the
// mouse rests on something that tells of itself.
func TestRefusalsAreToldOverAControl(t *testing.T) {
	w := newRig(t)
	w.session.Select(session.Pick{Part: w.session.Design().Sinks[0].ID, Node: -1})
	w.keys.Run(keys.Lock)
	for _, id := range []keys.ID{keys.Remove, keys.MirrorPart} {
		w.frame.Say("Something about a control.")
		w.keys.Run(id)
		if got := w.hint.text.Text(); !strings.Contains(got, "locked") {
			t.Errorf("%s of a locked sink: %q", id, got)
		}
	}
}

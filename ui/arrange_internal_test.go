package ui

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
)

const mm = units.Millimetre

// row is a top of 1200 by 500 mm with three holes, of which the middle one stays in
// line with the left one.
func row(w *window) design.Design {
	d := session.Plain(units.Metric)
	d.Outline = edit.Rectangle(1200*mm, 500*mm)
	d.Holes = nil
	for i, x := range []units.Length{300, 500, 900} {
		d.Holes = append(d.Holes, design.Hole{ID: design.ID("hole-" + string(rune('1'+i))),
			At: design.Point{X: x * mm, Y: (100 + 50*units.Length(i)) * mm}, Diameter: 40 * mm})
	}
	d.Holes[1].At.Y = d.Holes[0].At.Y
	d.Relations = []design.Relation{{Kind: design.RelationPart, Part: "hole-2", Other: "hole-1", Axis: design.AxisY}}
	j := session.Blank(units.Metric)
	j.Options[0].Design = d
	w.session.Load(j, "")
	return d
}

// What is done to several parts is one step with a name, and undo gives back the
// design as it was.
func TestSeveralPartsAreOneStep(t *testing.T) {
	for _, c := range []struct {
		name string
		do   func(*window)
		undo string
	}{
		{"moved by arrow keys", func(w *window) { w.press(fyne.KeyRight); w.press(fyne.KeyRight); w.board.Settle() }, "Undo move 3 parts"},
		{"removed by the key", func(w *window) { w.press(fyne.KeyDelete) }, "Undo remove 3 parts"},
		{"removed from the menu", func(w *window) { w.keys.Run(keys.Remove) }, "Undo remove 3 parts"},
		{"removed in the panel", func(w *window) { w.panel.Remove() }, "Undo remove 3 parts"},
		{"duplicated", func(w *window) { w.keys.Run(keys.Duplicate) }, "Undo duplicate 3 parts"},
		{"mirrored", func(w *window) { w.keys.Run(keys.MirrorPart) }, "Undo mirror 3 parts"},
		{"aligned", func(w *window) { w.keys.Run(keys.AlignLeft) }, "Undo align left edges"},
		{"spaced", func(w *window) { w.keys.Run(keys.SpreadAcross) }, "Undo space parts evenly"},
		{"cut", func(w *window) { w.keys.Run(keys.Cut) }, "Undo remove 3 parts"},
		{"locked", func(w *window) { w.keys.Run(keys.Lock) }, "Undo lock 3 parts"},
		{"hidden", func(w *window) { w.keys.Run(keys.Hide) }, "Undo hide 3 parts"},
		{"no longer held", func(w *window) { w.keys.Run(keys.CutKept) }, "Undo cut relations"},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := newRig(t)
			row(w)
			before := w.session.Option()
			w.keys.Run(keys.SelectAll)
			c.do(w)
			if got := w.keys.Name(keys.Undo); got != c.undo {
				t.Errorf("undo is called %q, want %q", got, c.undo)
			}
			w.keys.Run(keys.Undo)
			after := w.session.Option()
			if w.session.UndoName() != "" || !slices.Equal(before.Design.Holes, after.Design.Holes) ||
				!slices.Equal(before.Design.Relations, after.Design.Relations) || len(after.Handling) != 0 {
				t.Errorf("one undo leaves %v, %v, %v and %q", after.Design.Holes, after.Design.Relations, after.Handling, w.session.UndoName())
			}
		})
	}
}

// Relations within a group go along, and one across its border is kept by what is
// outside following, or ends where what is held was moved.
func TestRelationsOfAGroup(t *testing.T) {
	for _, c := range []struct {
		name   string
		moved  []design.ID
		keeps  bool
		second design.Point // where hole 2 is then
	}{
		{"both", []design.ID{"hole-1", "hole-2"}, true, design.Point{X: 500 * mm, Y: 110 * mm}},
		{"what it is held to", []design.ID{"hole-1", "hole-3"}, true, design.Point{X: 500 * mm, Y: 110 * mm}},
		{"what is held", []design.ID{"hole-2", "hole-3"}, false, design.Point{X: 500 * mm, Y: 110 * mm}},
	} {
		w := newRig(t)
		row(w)
		w.session.SelectParts(c.moved)
		w.press(fyne.KeyUp)
		w.board.Settle()
		d := w.session.Design()
		if d.Holes[1].At != c.second || (len(d.Relations) == 1) != c.keeps {
			t.Errorf("%s: hole 2 is at %v with %d relations", c.name, d.Holes[1].At, len(d.Relations))
		}
	}
	// A duplicate of the pair has a relation of its own, to its own copy.
	w := newRig(t)
	row(w)
	w.session.SelectParts([]design.ID{"hole-1", "hole-2"})
	w.keys.Run(keys.Duplicate)
	d := w.session.Design()
	if len(d.Relations) != 2 || d.Relations[1].Part != "hole-5" || d.Relations[1].Other != "hole-4" {
		t.Errorf("after duplicating: %v", d.Relations)
	}
}

// Parts go by the system's clipboard: within an option beside the old ones, into
// another option and another window where they were.
func TestClipboard(t *testing.T) {
	w := newRig(t)
	d := row(w)
	w.session.SelectParts([]design.ID{"hole-1", "hole-2"})
	w.keys.Run(keys.Copy)
	text := w.app.Clipboard().Content()
	if !strings.Contains(text, "hole-1") {
		t.Fatalf("the clipboard holds %q", text)
	}
	w.keys.Run(keys.Paste)
	if got := w.session.Design().Holes; len(got) != 5 || got[3].At != d.Holes[0].At.Add(design.Point{X: 40 * mm, Y: -40 * mm}) {
		t.Errorf("pasted beside: %v", got)
	}
	if got := w.session.SelectedParts(); !slices.Equal(got, []design.ID{"hole-4", "hole-5"}) {
		t.Errorf("after pasting, selected are %v", got)
	}
	if got := w.session.UndoName(); got != "Paste 2 parts" {
		t.Errorf("undo would take back %q", got)
	}

	other := newRig(t)
	other.app.Clipboard().SetContent(text) // the system's, whoever has the text from whom
	j := session.Blank(units.Imperial)
	j.Options[0].Design.Holes = nil
	other.session.Load(j, "")
	other.keys.Run(keys.Paste)
	got := other.session.Design()
	if len(got.Holes) != 2 || got.Holes[0].At != d.Holes[0].At || len(got.Relations) != 1 {
		t.Errorf("in another window: %v, %v", got.Holes, got.Relations)
	}
	other.keys.Run(keys.Paste) // and again, beside
	if got := other.session.Design(); len(got.Holes) != 4 || got.Holes[2].At == got.Holes[0].At {
		t.Errorf("pasted twice: %v", got.Holes)
	}
}

// What parts were cut from is free: they come back to their place. Off the top they
// come to its middle.
func TestPastePlaces(t *testing.T) {
	w := newRig(t)
	d := row(w)
	w.session.SelectParts([]design.ID{"hole-3"})
	w.keys.Run(keys.Cut)
	if n := len(w.session.Design().Holes); n != 2 {
		t.Fatalf("cut leaves %d holes", n)
	}
	w.keys.Run(keys.Paste)
	if got := w.session.Design().Holes; len(got) != 3 || got[2].At != d.Holes[2].At {
		t.Errorf("cut and pasted: %v", got)
	}
	w.session.SelectParts([]design.ID{"hole-3"})
	w.keys.Run(keys.Copy)
	if err := w.session.Do(edit.Resize(600*mm, 500*mm)); err != nil {
		t.Fatal(err)
	}
	w.clip.pasted = map[string]int{}
	w.keys.Run(keys.Paste)
	if got := w.session.Design().Holes; len(got) != 4 || got[3].At != (design.Point{X: 300 * mm, Y: 250 * mm}) {
		t.Errorf("off the top: %v", got)
	}
}

// A text that is of something else is refused in the hint line, one that is broken
// in a dialog; neither changes anything.
func TestPasteRefuses(t *testing.T) {
	for _, text := range []string{"", "650 - 2*18", `{"format":"castwright-job"}`, "\x00\xff", strings.Repeat("a", 1<<20)} {
		w := newRig(t)
		row(w)
		w.app.Clipboard().SetContent(text)
		w.keys.Run(keys.Paste)
		if w.frame.Busy() || w.session.UndoName() != "" {
			t.Errorf("%.20q: a dialog is open %v, undo %q", text, w.frame.Busy(), w.session.UndoName())
		}
		if got := w.hint.text.Text(); !strings.Contains(got, "no copied parts on the clipboard") {
			t.Errorf("%.20q: the hint is %q", text, got)
		}
	}
	w := newRig(t)
	row(w)
	w.keys.Run(keys.SelectAll)
	w.keys.Run(keys.Copy)
	whole := w.app.Clipboard().Content()
	w.app.Clipboard().SetContent(whole[:len(whole)/2])
	w.keys.Run(keys.Paste)
	if !w.frame.Busy() || w.session.UndoName() != "" {
		t.Errorf("half a text: a dialog is open %v, undo %q", w.frame.Busy(), w.session.UndoName())
	}
}

// What can't be done now says why, by its key and in the menu.
func TestActionsSayWhatIsInTheWay(t *testing.T) {
	w := newRig(t)
	row(w)
	for _, c := range []struct {
		id   keys.ID
		why  string
		pick []design.ID
	}{
		{keys.AlignLeft, "two parts or more", []design.ID{"hole-1"}},
		{keys.SpreadDeep, "three parts or more", []design.ID{"hole-1", "hole-2"}},
		{keys.Lock, "no part is selected", nil},
		{keys.ShowHidden, "no part is hidden", nil},
		{keys.UnlockAll, "no part is locked", nil},
		{keys.CutKept, "nothing holds", []design.ID{"hole-3"}},
		{keys.KeepTo, "several parts", []design.ID{"hole-1", "hole-2"}},
		{keys.Remove, "nothing is selected", nil},
	} {
		w.session.SelectParts(c.pick)
		if w.keys.Enabled(c.id) {
			t.Errorf("%s may be done on %v", c.id, c.pick)
		}
		w.keys.Run(c.id)
		if got := w.hint.text.Text(); !strings.Contains(got, c.why) {
			t.Errorf("%s on %v: the hint is %q", c.id, c.pick, got)
		}
	}
	w.session.SelectParts([]design.ID{"hole-1"})
	w.keys.Run(keys.Lock)
	for _, id := range []keys.ID{keys.Remove, keys.Cut, keys.MirrorPart, keys.Turn} {
		if why := w.keys.Why(id); !strings.Contains(why, "is locked") {
			t.Errorf("%s on a locked part: %q", id, why)
		}
	}
	if got := w.keys.Name(keys.Lock); got != "Unlock" {
		t.Errorf("on a locked part the lock is called %q", got)
	}
	w.keys.Run(keys.Lock)
	if len(w.session.LockedParts()) != 0 {
		t.Error("the key does not unlock")
	}
}

// Whatever way a part is moved off what it keeps to, the hint line says so; what is
// cut on purpose, and undo, say nothing.
func TestEndedRelationsAreTold(t *testing.T) {
	for _, c := range []struct {
		name string
		pick []design.ID
		do   func(*window)
		told bool
	}{
		{"nudged", []design.ID{"hole-2"}, func(w *window) { w.press(fyne.KeyUp) }, true},
		{"nudged and back", []design.ID{"hole-2"}, func(w *window) { w.press(fyne.KeyUp); w.press(fyne.KeyDown) }, false},
		{"nudged along", []design.ID{"hole-2"}, func(w *window) { w.press(fyne.KeyRight) }, false},
		{"aligned", []design.ID{"hole-2", "hole-3"}, func(w *window) { w.keys.Run(keys.AlignBack) }, true},
		{"placed in the panel", []design.ID{"hole-2"}, func(w *window) {
			w.do(w.session.Do(edit.MovePart("hole-2", design.Point{Y: 5 * mm})))
		}, true},
		{"cut", []design.ID{"hole-2"}, func(w *window) { w.keys.Run(keys.CutKept) }, false},
		{"removed", []design.ID{"hole-2"}, func(w *window) { w.keys.Run(keys.Remove) }, false},
		{"undone", []design.ID{"hole-2"}, func(w *window) {
			w.do(w.session.Do(edit.KeepDistance("hole-3", design.SideLeft)))
			w.keys.Run(keys.Undo)
		}, false},
		{"another option", nil, func(w *window) { w.keys.Run(keys.OptionNew) }, false},
	} {
		w := newRig(t)
		row(w)
		w.session.SelectParts(c.pick)
		c.do(w)
		got := w.hint.text.Text()
		if told := strings.Contains(got, "No longer kept: drain hole 2 stays in line with the drain hole 1"); told != c.told {
			t.Errorf("%s: told %v; the hint is %q", c.name, told, got)
		}
	}
}

package panel

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
)

// three is a rig on a top with a sink, its tap holes and a hole that stays in line
// with the sink.
func three(t *testing.T) *rig {
	j := session.Blank(units.Metric)
	mm := units.Millimetre
	d := &j.Options[0].Design
	d.Outline = edit.Rectangle(1200*mm, 500*mm)
	d.Sinks = []design.Sink{{ID: "sink-1", At: design.Point{X: 500 * mm, Y: 230 * mm},
		Shape: design.Shape{Kind: design.ShapeEllipse, Width: 430 * mm, Depth: 330 * mm}}}
	d.Taps = []design.TapSet{{ID: "taps-1", Pattern: design.TapThree8, Sink: "sink-1", SetBack: 50 * mm, Diameter: 35 * mm}}
	d.Holes = []design.Hole{{ID: "hole-1", At: design.Point{X: 900 * mm, Y: 230 * mm}, Diameter: 50 * mm}}
	d.Relations = []design.Relation{{Kind: design.RelationPart, Part: "hole-1", Other: "sink-1", Axis: design.AxisY}}
	return newRig(t, session.New(j, ""))
}

// says are what the controls of the panel say.
func (r *rig) says() []control.Spot { return control.Spots(r.p.Object, fyne.Position{}) }

// spot is the control that says something.
func (r *rig) spot(words string) control.Spot {
	r.t.Helper()
	for _, s := range r.says() {
		if strings.Contains(s.Says, words) {
			return s
		}
	}
	r.t.Fatalf("nothing in the panel says %q", words)
	return control.Spot{}
}

// The list names every part with its size; clicks and keys select.
func TestListOfParts(t *testing.T) {
	r := three(t)
	if r.p.ListOpen() {
		t.Fatal("the list is open at the start")
	}
	r.p.ToggleList()
	l := r.p.list
	var got []string
	for _, row := range l.rows {
		got = append(got, row.name.Text()+" "+row.size.Text())
	}
	want := []string{"Top 1200 × 500 mm", "Sink 430 × 330 mm", "Taps 3 × Ø 35 mm", "Drain hole Ø 50 mm"}
	if !slices.Equal(got, want) {
		t.Errorf("the list is %q, want %q", got, want)
	}
	selected := func(what string, ids ...design.ID) {
		t.Helper()
		if got := r.s.SelectedParts(); !slices.Equal(got, ids) {
			t.Errorf("%s: selected %v, want %v", what, got, ids)
		}
		for i, row := range l.rows[1:] {
			if row.tile.On() != slices.Contains(ids, l.ids[i]) {
				t.Errorf("%s: %s shows as selected: %v", what, l.ids[i], row.tile.On())
			}
		}
	}
	l.rows[1].tile.Tapped(nil)
	selected("a click", "sink-1")
	click := func(row int, held fyne.KeyModifier) {
		tile := l.rows[row].tile
		tile.MouseDown(&desktop.MouseEvent{Button: desktop.MouseButtonPrimary, Modifier: held})
		tile.MouseUp(nil)
		tile.Tapped(nil)
	}
	click(3, fyne.KeyModifierControl)
	selected("with Ctrl another", "sink-1", "hole-1")
	click(1, fyne.KeyModifierControl)
	selected("with Ctrl the first again", "hole-1")
	click(3, fyne.KeyModifierShift)
	selected("with Shift from the first to the third", "sink-1", "taps-1", "hole-1")

	c := r.p.frame.Window.Canvas()
	c.Focus(l.rows[0].tile)
	press := func(name fyne.KeyName) { c.Focused().TypedKey(&fyne.KeyEvent{Name: name}) }
	press(fyne.KeyDown)
	press(fyne.KeyDown)
	press(fyne.KeyReturn)
	selected("by the arrow keys and Enter", "taps-1")
	press(fyne.KeyDown)
	press(fyne.KeySpace)
	selected("with Space another", "taps-1", "hole-1")
	press(fyne.KeyHome)
	press(fyne.KeyReturn)
	if got := r.s.Selection(); len(got) != 1 || got[0] != (session.Pick{Node: -1}) {
		t.Errorf("the top's line selects %v", got)
	}
	// A part that goes leaves the list, and the keyboard stays in it.
	press(fyne.KeyEnd)
	if err := r.s.Do(edit.RemovePart("hole-1")); err != nil {
		t.Fatal(err)
	}
	if len(l.rows) != 3 || c.Focused() != fyne.Focusable(l.rows[2].tile) {
		t.Errorf("with a part gone the list has %d lines, the keyboard is with %v", len(l.rows), c.Focused())
	}
}

// Hidden parts are told with the list open or closed, and come back by one button;
// no number changes.
func TestHiddenPartsAreTold(t *testing.T) {
	r := three(t)
	weight := r.p.numbers.rows[0].value.Text()
	r.s.SelectParts([]design.ID{"sink-1", "hole-1"})
	r.p.ToggleHidden()
	if !r.p.list.hidden.Visible() || r.p.list.gone.Text() != "2 parts hidden: still cast and counted" {
		t.Errorf("the line is seen %v and says %q", r.p.list.hidden.Visible(), r.p.list.gone.Text())
	}
	if len(r.s.Selection()) != 0 {
		t.Errorf("what is hidden stays selected: %v", r.s.Selection())
	}
	if got := r.p.numbers.rows[0].value.Text(); got != weight {
		t.Errorf("with parts hidden the top weighs %s instead of %s", got, weight)
	}
	if got := r.p.list.count.Text(); !strings.Contains(got, "2 hidden") {
		t.Errorf("the list's head says %q", got)
	}
	r.p.ShowAll()
	if r.p.list.hidden.Visible() || len(r.s.Option().HiddenParts()) != 0 {
		t.Error("Show all leaves some hidden")
	}
}

// What holds a part stands in its panel with a button that cuts it, as large as what
// is touched must be.
func TestTiesAreShownAndCut(t *testing.T) {
	r := three(t)
	r.s.SelectParts([]design.ID{"hole-1"})
	cut := r.spot("Cuts this: drain hole stays in line with the sink")
	if cut.Size.Width < 24 || cut.Size.Height < 24 {
		t.Errorf("the button is %v large", cut.Size)
	}
	r.s.SelectParts([]design.ID{"sink-1"})
	r.spot("Cuts this: drain hole stays in line with the sink") // it holds the hole
	r.spot("Cuts this: taps stay with the centreline of the sink")
	if err := r.s.Do(r.p.tied[0].cut()); err != nil {
		t.Fatal(err)
	}
	if len(r.p.tied) != 1 || r.s.UndoName() != "Free tap holes" {
		t.Errorf("after the cut: %v, undo %q", r.p.tied, r.s.UndoName())
	}
	r.s.Undo()
	if len(r.p.tied) != 2 {
		t.Errorf("undo brings back %v", r.p.tied)
	}
}

// A locked part says so, shows its fields to be read only, and is not removed.
func TestLockedPartInThePanel(t *testing.T) {
	r := three(t)
	r.s.SelectParts([]design.ID{"hole-1"})
	r.p.ToggleLock()
	for _, row := range r.p.rows {
		if row.reading == nil {
			t.Errorf("%s of a locked part can be changed", row.f.label)
		}
	}
	if got := r.text("Diameter"); got != "50 mm" {
		t.Errorf("the diameter reads %q", got)
	}
	r.spot("Lets the locked parts go")
	if !r.p.remove.Disabled() || !strings.Contains(r.p.remove.Face().Hint, "unlock") {
		t.Errorf("the bin is off %v and says %q", r.p.remove.Disabled(), r.p.remove.Face().Hint)
	}
	r.p.ToggleLock()
	if r.row("Diameter").entry == nil || r.p.remove.Disabled() {
		t.Error("an unlocked part can't be changed")
	}
	// Several, of which one is locked: the panel says so at once.
	r.s.SelectParts([]design.ID{"sink-1", "hole-1"})
	if err := r.s.DoJob(edit.LockParts(r.s.Option().Name, []design.ID{"sink-1"}, true)); err != nil {
		t.Fatal(err)
	}
	r.spot("Lets the locked parts go")
}

// With much to show the panel keeps its sections in sight, one below the other.
func TestSectionsDoNotOverlap(t *testing.T) {
	r := demo(t)
	r.p.ToggleList()
	ids := edit.Parts(r.s.Design())
	if err := r.s.DoJob(edit.HideParts(r.s.Option().Name, ids[:1], true)); err != nil {
		t.Fatal(err)
	}
	r.s.SelectParts(ids[1:2])
	for _, h := range []float32{560, 640, 1300} {
		r.p.Object.Resize(fyne.NewSize(Width, h))
		bottom := float32(0)
		for i, o := range r.p.column.Objects {
			if !o.Visible() {
				continue
			}
			if o.Position().Y < bottom-0.5 {
				t.Errorf("at %v section %d begins at %v above %v", h, i, o.Position().Y, bottom)
			}
			bottom = o.Position().Y + o.Size().Height
		}
		if bottom > h {
			t.Errorf("at %v the panel ends at %v", h, bottom)
		}
	}
	for _, s := range r.says() {
		if s.Size.Height < 24 {
			t.Errorf("%q is only %v high", s.Says, s.Size.Height)
		}
	}
}

// Several parts are set among each other from the panel; what takes three is off for
// two, and all is off for locked ones.
func TestArrangingInThePanel(t *testing.T) {
	r := three(t)
	var ran []keys.ID
	r.p.OnRun = func(id keys.ID) { ran = append(ran, id) }
	off := func() (n int) {
		for _, s := range r.says() {
			if strings.HasPrefix(s.Says, "Not now") {
				n++
			}
			if s.At.X+s.Size.Width > Width {
				t.Errorf("%q ends at %v, beyond the panel", s.Says, s.At.X+s.Size.Width)
			}
		}
		return n
	}
	for _, c := range []struct {
		ids    []design.ID
		locked bool
		off    int
	}{
		{[]design.ID{"sink-1"}, false, 0}, {[]design.ID{"sink-1", "hole-1"}, false, 2},
		{[]design.ID{"sink-1", "taps-1", "hole-1"}, false, 0}, {[]design.ID{"sink-1", "hole-1"}, true, 10},
	} {
		if c.locked {
			r.s.SelectParts(c.ids[:1])
			r.p.ToggleLock()
		}
		r.s.SelectParts(c.ids)
		if n := off(); n != c.off {
			t.Errorf("with %v, locked %v, %d are off, want %d", c.ids, c.locked, n, c.off)
		}
	}
	r.s.SelectParts([]design.ID{"hole-1", "taps-1"})
	for _, o := range r.p.fields.Objects {
		if box, ok := o.(*fyne.Container); ok {
			for _, b := range box.Objects {
				if b, ok := b.(*control.Button); ok {
					b.Tapped(nil)
				}
			}
		}
	}
	if len(ran) != 8 || ran[0] != keys.AlignLeft {
		t.Errorf("the buttons run %v", ran)
	}
}

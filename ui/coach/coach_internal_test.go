package coach

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/session"
)

// rig is a coach of two steps and a last one, over a drawing of 800 x 500 points.
type rig struct {
	*Coach
	s     *session.Session
	rests bool
	kept  []string
	at    fyne.Position
}

func newRig(t *testing.T) *rig {
	t.Helper()
	test.NewTempApp(t)
	w := test.NewTempWindow(t, nil)
	r := &rig{s: session.New(session.Blank(units.Metric), ""), rests: true, at: fyne.NewPos(400, 300)}
	here := func() (Place, bool) { return Place{r.at, Above, fyne.NewSize(800, 500)}, true }
	steps := []Step{
		{ID: "size", Lines: []string{"Drag an edge."}, Where: here,
			Done: Changed(func(d design.Design) design.Outline { return d.Outline })},
		{ID: "finish", Lines: []string{"Choose a finish.", "Here."}, Where: here,
			Done: Changed(func(d design.Design) design.Finish { return d.Finish })},
		{ID: "last", Lines: []string{"Well done."}, Where: here, After: []string{"size", "finish"}},
	}
	r.Coach = New(r.s, control.NewFrame(w), steps, nil, func() bool { return r.rests },
		func(learned []string) { r.kept = slices.Clone(learned) })
	w.SetPadded(false)
	w.SetContent(r.Object)
	w.Resize(fyne.NewSize(800, 500))
	return r
}

func (r *rig) shown() (out []string) {
	for i, n := range r.notes {
		if n.Visible() {
			out = append(out, r.steps[i].ID)
		}
	}
	return out
}

func (r *rig) want(t *testing.T, words string, want ...string) {
	t.Helper()
	if got := r.shown(); !slices.Equal(got, want) {
		t.Errorf("%s: the notes are %v, want %v", words, got, want)
	}
}

// TestNotesGoAsTheyAreDone follows a first job.
func TestNotesGoAsTheyAreDone(t *testing.T) {
	r := newRig(t)
	r.want(t, "before the start")
	r.Start()
	r.want(t, "at the start", "size", "finish")
	r.rests = false
	r.place()
	r.want(t, "in a drag")
	if err := r.s.Do(edit.Resize(1300*units.Millimetre, 500*units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	r.rests = true
	r.Look() // as the drawing says when the hand lets go
	r.want(t, "resized", "finish")
	f := r.s.Design().Finish
	f.Polish = 4
	if err := r.s.Do(edit.SetFinish(f)); err != nil {
		t.Fatal(err)
	}
	r.want(t, "with a finish", "last")
	r.notes[2].shut.OnTapped()
	r.want(t, "put away")
	if !slices.Equal(r.kept, []string{"size", "finish", "last"}) || r.Teaching() {
		t.Errorf("kept %v, still teaching %v", r.kept, r.Teaching())
	}
	r.Start()
	r.want(t, "at the next job")
	r.Again()
	r.want(t, "brought back", "size", "finish")
	r.s.Load(session.Blank(units.Metric), "")
	r.want(t, "with another job")
}

// TestNotesStayInTheDrawing: a note lies within the drawing, its tail points to its
// place, and one whose place is out of sight is away.
func TestNotesStayInTheDrawing(t *testing.T) {
	r := newRig(t)
	r.Start()
	n := r.notes[0]
	for _, x := range []float32{0, 3, 400, 797, 800} {
		r.at = fyne.NewPos(x, 300)
		r.place()
		p, s := n.Position(), n.Size()
		if !n.Visible() || p.X < 0 || p.X+s.Width > 800 || p.Y < 0 || p.Y+s.Height > 300 {
			t.Errorf("for %v the note lies at %v, %v", r.at, p, s)
		}
		if tip := p.X + n.tip; x > 30 && x < 770 && tip != x {
			t.Errorf("for %v the tail points to %v", r.at, tip)
		}
	}
	for _, at := range []fyne.Position{{X: -5, Y: 100}, {X: 400, Y: 510}, {X: 400, Y: 20}} {
		r.at = at
		if r.place(); n.Visible() {
			t.Errorf("the note for %v is shown at %v", at, n.Position())
		}
	}
}

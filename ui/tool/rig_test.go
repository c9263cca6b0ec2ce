package tool_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/tool"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

const mm = units.Millimetre

// rig is a hand on a job of one design, at one point to the millimetre, so that
// the metric grid has steps of 5 mm.
type rig struct {
	*testing.T
	s     *session.Session
	h     *tool.Hand
	start design.Design
	perMM float64
	mod   tool.Mod
}

func newRig(t *testing.T, sys units.System, d design.Design) *rig {
	t.Helper()
	s := session.New(design.Job{Units: sys, Options: []design.Option{{Name: "A", Design: d}}}, "")
	return &rig{T: t, s: s, h: tool.New(s), start: d, perMM: 1}
}

// plain is a top of 1200 x 500 mm with a round under-mounted sink of 300 mm off
// its middle.
func plain() design.Design {
	return design.Design{
		Outline:   edit.Rectangle(1200*mm, 500*mm),
		Thickness: 40 * mm,
		Sinks: []design.Sink{{
			ID: "sink-1", At: at(400, 250),
			Shape: design.Shape{Kind: design.ShapeCircle, Width: 300 * mm},
		}},
	}
}

func at(x, y float64) design.Point {
	return design.Point{X: units.FromMM(x), Y: units.FromMM(y)}
}

func (r *rig) p(x, y float64) tool.Pointer {
	return tool.Pointer{At: geom.Vec{X: x, Y: y}, PerMM: r.perMM, Mod: r.mod}
}

func (r *rig) move(x, y float64) { r.h.Move(r.p(x, y)) }
func (r *rig) down(x, y float64) { r.h.Move(r.p(x, y)); r.h.Down(r.p(x, y)) }
func (r *rig) up(x, y float64)   { r.h.Up(r.p(x, y)) }

func (r *rig) click(x, y float64) { r.down(x, y); r.up(x, y) }

func (r *rig) double(x, y float64) {
	r.click(x, y)
	p := r.p(x, y)
	p.Double = true
	r.h.Down(p)
	r.h.Up(p)
}

// drag presses, moves in three steps and lets go.
func (r *rig) drag(x0, y0, x1, y1 float64) {
	r.down(x0, y0)
	r.move(x0+(x1-x0)/3, y0+(y1-y0)/3)
	r.move(x1, y1)
	r.up(x1, y1)
}

func (r *rig) keys(ks ...tool.Key) {
	for _, k := range ks {
		r.h.Key(k, r.mod)
	}
}

func (r *rig) type_(text string) {
	for _, c := range text {
		r.h.Rune(c)
	}
}

// want compares the design in hand with the start changed by edits in code.
func (r *rig) want(edits ...edit.Edit) {
	r.Helper()
	want := r.start
	for _, e := range edits {
		var err error
		if want, err = e.Apply(want); err != nil {
			r.Fatalf("%s: %v", e.Name, err)
		}
	}
	if diff := cmp.Diff(want, r.s.Design()); diff != "" {
		r.Errorf("the design differs from the one made in code (-want +got):\n%s", diff)
	}
}

// wantOneStep checks that one undo gives back the start.
func (r *rig) wantOneStep(name string) {
	r.Helper()
	if got := r.s.UndoName(); got != name {
		r.Errorf("undo would take back %q, want %q", got, name)
	}
	r.s.Undo()
	if diff := cmp.Diff(r.start, r.s.Design()); diff != "" {
		r.Errorf("one undo does not give back the start (-want +got):\n%s", diff)
	}
	if got := r.s.UndoName(); got != "" {
		r.Errorf("a second step %q is left to undo", got)
	}
	r.s.Redo()
}

// wantNoTrace checks that nothing has changed and nothing can be undone or
// done again.
func (r *rig) wantNoTrace() {
	r.Helper()
	r.want()
	if r.s.UndoName() != "" || r.s.RedoName() != "" {
		r.Errorf("history holds undo %q, redo %q; want none", r.s.UndoName(), r.s.RedoName())
	}
}

func (r *rig) wantSelected(picks ...session.Pick) {
	r.Helper()
	if diff := cmp.Diff(picks, r.s.Selection(), cmpopts.EquateEmpty()); diff != "" {
		r.Errorf("selection (-want +got):\n%s", diff)
	}
}

func vec(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }

package tool_test

import (
	"math"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/tool"
)

// TestEdgeThroughOnePoint bends the front of a top 1200 mm wide through a point
// 100 mm before its middle: the arc's radius is (h^2 + (c/2)^2) / 2h for a chord c
// and a rise h (Euclid, Elements, III.35), 1850 mm.
func TestEdgeThroughOnePoint(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.s.Select(session.Pick{Node: 0, Edge: true})
	r.h.SetTool(tool.Through)
	r.click(600, -100)
	r.keys(tool.KeyEnter)
	r.want(edit.PullEdgeThrough(0, at(600, -100)))
	e := r.s.Design().Outline.Nodes[0].Edge
	const chord, rise = 1200.0, 100.0
	if want := units.FromMM(rise); e.Curve != design.CurveArc || e.Rise != want {
		t.Errorf("the edge is %v with a rise of %v, want an arc of %v", e.Curve, e.Rise, want)
	}
	arc, ok := geom.ArcByRise(geom.Vec{}, geom.Vec{X: chord}, e.Rise.MM()).(geom.Arc)
	if want := (rise*rise + chord*chord/4) / (2 * rise); !ok || math.Abs(arc.Radius-want) > 1e-6 {
		t.Errorf("its radius is %g, want %g", arc.Radius, want)
	}
	r.wantOneStep("Bend edge")
	r.wantSelected(session.Pick{Node: 0, Edge: true})
	if r.h.Tool() != tool.Select {
		t.Errorf("the tool is %v afterwards", r.h.Tool())
	}
}

// TestEdgeThroughPoints draws the back edge, found beside the first click, through
// three points that are set from its end to its start, the last by a double click.
func TestEdgeThroughPoints(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.h.SetTool(tool.Through)
	if h := r.h.Hint(); !strings.HasPrefix(h, "Click a point") {
		t.Errorf("the hint begins %q", h)
	}
	// The back edge runs from right to left; these come from the left.
	r.click(250, 540)
	r.click(600, 470)
	if h := r.h.Hint(); !strings.Contains(h, "ends the curve") {
		t.Errorf("with two points the hint is %q", h)
	}
	o := r.h.Overlay()
	if len(o.Ghost) != 1 || len(o.Selected) == 0 {
		t.Fatalf("%d ghosts and %d lines show what is drawn", len(o.Ghost), len(o.Selected))
	}
	for _, p := range [][2]float64{{250, 540}, {600, 470}} {
		if _, d, _ := geom.NearestOnLine(vec(p[0], p[1]), o.Ghost[0].Points); d > 1 {
			t.Errorf("the curve shown passes %v at %g mm", p, d)
		}
	}
	r.double(900, 530)
	r.want(edit.SplineThrough(2, []design.Point{at(900, 530), at(600, 470), at(250, 540)}))
	r.wantOneStep("Draw edge through points")
	if n := len(r.s.Design().Outline.Nodes); n != 7 {
		t.Errorf("the outline has %d corners, want 7", n)
	}
	// A node of it goes by Delete, and one comes by a double click.
	r.s.Select(session.Pick{Node: 4})
	r.keys(tool.KeyDelete)
	if n := len(r.s.Design().Outline.Nodes); n != 6 {
		t.Errorf("after Delete the outline has %d corners, want 6", n)
	}
	mid, _ := edit.OnEdge(r.s.Design(), 2, 0.5)
	r.double(mid.X.MM(), mid.Y.MM())
	if n := len(r.s.Design().Outline.Nodes); n != 7 {
		t.Errorf("after a double click the outline has %d corners, want 7", n)
	}
}

// TestEdgeThroughTypedPlaces sets the points by their distances from the left and
// the front, in inches.
func TestEdgeThroughTypedPlaces(t *testing.T) {
	d := plain()
	d.Outline = edit.Rectangle(60*units.Inch, 22*units.Inch)
	r := newRig(t, units.Imperial, d)
	r.s.Select(session.Pick{Node: 0, Edge: true})
	r.h.SetTool(tool.Through)
	for _, p := range [][2]string{{"15", "-1 1/2"}, {"45", "1"}} {
		r.type_(p[0])
		r.keys(tool.KeyTab)
		r.type_(p[1])
		r.keys(tool.KeyEnter)
	}
	r.keys(tool.KeyEnter)
	in := units.Inch
	r.want(edit.SplineThrough(0, []design.Point{{X: 15 * in, Y: -in * 3 / 2}, {X: 45 * in, Y: in}}))
}

// TestEdgeThroughBacksOut leaves no trace, step by step, and says what is wrong.
func TestEdgeThroughBacksOut(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.s.Select(session.Pick{Node: 0, Edge: true})
	r.h.SetTool(tool.Through)
	r.keys(tool.KeyEnter)
	if h := r.h.Hint(); !strings.Contains(h, "one point") {
		t.Errorf("without a point the hint is %q", h)
	}
	r.click(300, -40)
	r.click(700, -60)
	r.keys(tool.KeyBackspace)
	r.click(1200, 0) // the edge's own end
	r.keys(tool.KeyEnter)
	if h := r.h.Hint(); !strings.Contains(h, "leave it out") {
		t.Errorf("with a point on the edge's end the hint is %q", h)
	}
	r.keys(tool.KeyEscape, tool.KeyEscape)
	if r.h.Tool() != tool.Select {
		t.Errorf("two Esc leave the tool %v", r.h.Tool())
	}
	r.wantNoTrace()
	// Without a top there is no edge.
	r = newRig(t, units.Metric, design.Design{})
	r.h.SetTool(tool.Through)
	if h := r.h.Hint(); !strings.Contains(h, "no edge") {
		t.Errorf("without a top the hint is %q", h)
	}
	r.click(10, 10)
	r.keys(tool.KeyEnter, tool.KeyEscape, tool.KeyEscape)
	r.wantNoTrace()
}

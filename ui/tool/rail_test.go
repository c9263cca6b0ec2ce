package tool_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/tool"
)

// A typed rail is exact, to the nanometre, for every shape along its axes: the
// sink's centre lies the rail and half of its cut-out from the edge. A flattened
// curve alone would be off by up to the tolerance of 0.01 mm. The cut-out of an
// under-mount is the bowl grown by a rim that shows or less what the concrete
// overhangs.
func TestTypedRailsAreExact(t *testing.T) {
	const width, depth = 420.0, 300.0
	for _, tt := range []struct {
		name         string
		shape        design.Shape
		turn         units.Angle
		reveal       design.Reveal
		halfX, halfY float64
	}{
		{"rectangle", design.Shape{Kind: design.ShapeRectangle, CornerRadius: 30 * mm}, 0, design.Reveal{}, 210, 150},
		{"ellipse", design.Shape{Kind: design.ShapeEllipse}, 0, design.Reveal{}, 210, 150},
		{"ellipse turned", design.Shape{Kind: design.ShapeEllipse}, 90 * units.Degree, design.Reveal{}, 150, 210},
		{"circle, rim shows", design.Shape{Kind: design.ShapeCircle}, 0,
			design.Reveal{Kind: design.RevealRimShows, Size: 3 * mm}, 213, 213},
		{"D, concrete overhangs", design.Shape{Kind: design.ShapeD, Bow: 80 * mm, CornerRadius: 20 * mm}, 0,
			design.Reveal{Kind: design.RevealOverhang, Size: 3 * mm}, 207, 147},
		{"D turned", design.Shape{Kind: design.ShapeD, Bow: 80 * mm}, 180 * units.Degree, design.Reveal{}, 210, 150},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := plain()
			k := &d.Sinks[0]
			k.At, k.Shape, k.Rotation, k.Reveal = at(600, 250), tt.shape, tt.turn, tt.reveal
			k.Shape.Width, k.Shape.Depth = units.FromMM(width), units.FromMM(depth)
			r := newRig(t, units.Metric, d)
			r.click(600, 250)
			for _, typed := range []struct{ field, text string }{
				{"To the left", "77.7"}, {"Rail in front", "1 1/2\""},
			} {
				if !r.h.TakeField(typed.field) {
					t.Fatalf("%q can't be typed", typed.field)
				}
				r.type_(typed.text)
				r.keys(tool.KeyEnter)
			}
			if got, want := r.s.Design().Sinks[0].At, at(77.7+tt.halfX, 38.1+tt.halfY); got != want {
				t.Errorf("the sink lies at %v, want %v", got, want)
			}
		})
	}
}

// TestDepthOfASlantedEdge: the depth behind a slanted front ends where the top
// does. The front rises by 200 mm over 1000 mm, so the line square to it from its
// middle, (500, 100), reaches the back 500 mm up after 400 / cos(atan(0.2)) mm.
func TestDepthOfASlantedEdge(t *testing.T) {
	d := plain()
	d.Sinks = nil
	d.Outline = design.Outline{Nodes: []design.Node{{At: at(0, 0)}, {At: at(1000, 200)}, {At: at(1000, 500)}, {At: at(0, 500)}}}
	r := newRig(t, units.Metric, d)
	r.s.Select(session.Pick{Node: 0, Edge: true})
	want := 400 / math.Cos(math.Atan(0.2))
	seen := false
	for _, dim := range r.h.Overlay().Dims {
		for _, p := range []geom.Vec{dim.From, dim.To} {
			if p.X < -0.01 || p.X > 1000.01 || p.Y < -0.01 || p.Y > 500.01 {
				t.Errorf("%s from %v to %v runs beyond the top", dim.Text, dim.From, dim.To)
			}
		}
		seen = seen || math.Abs(dim.From.Dist(dim.To)-want) < 0.01
	}
	if !seen {
		t.Errorf("no dimension is %g long", want)
	}
	// Typed, it is what the top measures there afterwards.
	r.type_("300")
	r.keys(tool.KeyEnter)
	r.want(edit.MoveEdge(0, at((want-300)*math.Sin(-math.Atan(0.2)), (want-300)*math.Cos(math.Atan(0.2)))))
}

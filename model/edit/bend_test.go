package edit_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"pgregory.net/rapid"
)

func rectangle() design.Design {
	return design.Design{Outline: edit.Rectangle(mm(1500), mm(560)), Thickness: mm(40)}
}

func TestPullEdgeThrough(t *testing.T) {
	d := rectangle()
	// Through the crown, the rise is how far the edge is pulled.
	for _, c := range []struct {
		p    design.Point
		rise float64
	}{
		{at(750, -60), 60}, {at(750, 40), -40}, {at(750, -750), 750}, {at(750, 0), 0}, {at(300, 0), 0},
		// A quarter circle over the chord: its crown is r (1 - cos 45 degrees)
		// = c (sqrt 2 - 1)/2 out, and its circle has its centre c/2 in.
		{at(750-750*math.Sqrt2*math.Sin(math.Pi/8), 750-750*math.Sqrt2*math.Cos(math.Pi/8)), 750 * (math.Sqrt2 - 1)},
	} {
		got := apply(t, d, edit.PullEdgeThrough(0, c.p)).Outline.Nodes[0].Edge
		near(t, "rise", got.Rise.MM(), c.rise, 2e-6)
		if (got.Curve == design.CurveStraight) != (c.rise == 0) {
			t.Errorf("through %v the edge is of kind %d", c.p, got.Curve)
		}
	}
	for _, p := range []design.Point{at(0, 0), at(1500, 0), at(-100, 0), at(1e5, -1e-4)} {
		if _, err := edit.PullEdgeThrough(0, p).Apply(d); err == nil {
			t.Errorf("an arc passes %v", p)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		p := at(rapid.Float64Range(-300, 1800).Draw(t, "x"), rapid.Float64Range(-1500, 1500).Draw(t, "y"))
		out, err := edit.PullEdgeThrough(0, p).Apply(d)
		if err != nil {
			t.Skip(err)
		}
		n := out.Outline.Nodes
		if math.Abs(n[0].Edge.Rise.MM()) > 20_000 {
			t.Skip("the arc is all but a straight line the other way round")
		}
		c := curvesOf(n)[0]
		off := math.Inf(1)
		v := geom.Vec{X: p.X.MM(), Y: p.Y.MM()}
		if arc, ok := c.(geom.Arc); ok {
			off = math.Abs(v.Dist(arc.Centre) - arc.Radius)
		} else {
			off = math.Abs(v.Y)
		}
		near(t, "off the arc", off, 0, 0.001)
	})
}

// The chain passes its points, runs on smoothly in direction and bend, and a
// straight way gives a straight line.
func TestSplineThrough(t *testing.T) {
	d := rectangle()
	d.Outline.Nodes[0].Edge.Profile = design.Profile{Kind: design.ProfileEased, Size: mm(3)}
	through := []design.Point{at(300, -40), at(700, 30), at(1200, -60)}
	n := apply(t, d, edit.SplineThrough(0, through)).Outline.Nodes
	if len(n) != 7 {
		t.Fatalf("%d corners, want 7", len(n))
	}
	curves := curvesOf(n)
	for k, p := range through {
		if n[k+1].At != p || n[k+1].Edge.Profile != d.Outline.Nodes[0].Edge.Profile {
			t.Errorf("corner %d is %+v", k+2, n[k+1])
		}
		before, after := curves[k], curves[k+1]
		u, v := geom.Tangent(before, 1), geom.Tangent(after, 0)
		near(t, "turn at the point", u.Cross(v), 0, 1e-6)
		near(t, "step of the curvature", before.Curvature(1)-after.Curvature(0), 0, 1e-7)
	}
	near(t, "curvature at the start", curves[0].Curvature(0), 0, 1e-8)
	near(t, "curvature at the end", curves[3].Curvature(1), 0, 1e-8)
	straight := apply(t, d, edit.SplineThrough(0, []design.Point{at(500, 0), at(900, 0)}))
	near(t, "area of a straight chain", area(straight.Outline.Nodes), 1500*560, 0.01)
	for _, bad := range [][]design.Point{nil, {at(0, 0)}, {at(5, 5), at(5, 5)}, {{X: units.MaxLength + 1}},
		make([]design.Point, 501)} {
		if _, err := edit.SplineThrough(0, bad).Apply(d); err == nil {
			t.Errorf("through %d points", len(bad))
		}
	}
}

func TestJoinEdges(t *testing.T) {
	d := rectangle()
	// Two halves of a line, of an arc and of a spline become what they were.
	for _, e := range []edit.Edit{edit.BendEdge(0, 0), edit.BendEdge(0, mm(80)),
		edit.SetSpline(0, at(300, -100), at(1100, 90))} {
		whole := apply(t, d, e)
		joined := apply(t, apply(t, whole, edit.InsertNode(0, at(600, 0))), edit.JoinEdges(0))
		if len(joined.Outline.Nodes) != 4 {
			t.Fatalf("%d corners", len(joined.Outline.Nodes))
		}
		near(t, "area", area(joined.Outline.Nodes), area(whole.Outline.Nodes), 0.01)
	}
	// Two edges that meet at a corner become one smooth edge through it.
	joined := apply(t, d, edit.JoinEdges(3)).Outline.Nodes
	if len(joined) != 3 || joined[2].Edge.Curve != design.CurveSpline {
		t.Fatalf("joined %+v", joined)
	}
	c := curvesOf(joined)[2]
	nearest := math.Inf(1)
	for i := range 2001 {
		nearest = math.Min(nearest, c.At(float64(i)/2000).Norm())
	}
	near(t, "way past the corner at the origin", nearest, 0, 1)
	if from := geom.Tangent(c, 0); from.Dist(geom.Vec{Y: -1}) > 1e-6 {
		t.Errorf("leaves along %v, want straight down", from)
	}
	if to := geom.Tangent(c, 1); to.Dist(geom.Vec{X: 1}) > 1e-6 {
		t.Errorf("arrives along %v, want to the right", to)
	}
	two := design.Design{Outline: edit.Round(mm(900))}
	for range 2 {
		two = apply(t, two, edit.JoinEdges(0))
	}
	if _, err := edit.JoinEdges(0).Apply(two); err == nil {
		t.Error("an outline of one edge")
	}
	triangle := design.Design{Outline: design.Outline{Nodes: []design.Node{{At: at(0, 0)}, {At: at(500, 0)},
		{At: at(1000, 0)}, {At: at(500, 400)}}}}
	if got := apply(t, triangle, edit.JoinEdges(0)).Outline.Nodes; len(got) != 3 ||
		got[0].Edge.Curve != design.CurveStraight {
		t.Errorf("a line in two became %+v", got)
	}
}

func TestSmoothCorner(t *testing.T) {
	d := apply(t, rectangle(), edit.InsertNode(0, at(700, 0)))
	d = apply(t, d, edit.MoveNode(1, at(700, -80)))
	d = apply(t, d, edit.SetCorner(1, design.Corner{Kind: design.CornerRounded, Size: mm(20)}))
	n := apply(t, d, edit.SmoothCorner(1)).Outline.Nodes
	c := curvesOf(n)
	u, v := geom.Tangent(c[0], 1), geom.Tangent(c[1], 0)
	near(t, "bend at the corner", u.Cross(v), 0, 1e-6)
	near(t, "turn back at the corner", u.Dot(v), 1, 1e-6)
	if n[1].At != at(700, -80) || n[1].Corner != (design.Corner{}) {
		t.Errorf("the corner is %+v", n[1])
	}
	flat := design.Design{Outline: design.Outline{Nodes: []design.Node{{At: at(0, 0)}, {At: at(500, 0)}}}}
	if _, err := edit.SmoothCorner(0).Apply(flat); err == nil {
		t.Error("a corner was smoothed whose edges lead back")
	}
}

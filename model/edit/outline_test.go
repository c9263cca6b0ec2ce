package edit_test

import (
	"math"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestMoveNodeTakesItsHandlesAlong(t *testing.T) {
	d := design.Design{Outline: edit.Oval(mm(800), mm(600))}
	moved := apply(t, d, edit.MoveNode(2, d.Outline.Nodes[2].At.Add(at(30, -20))))
	for i, n := range moved.Outline.Nodes {
		want := d.Outline.Nodes[i]
		switch i {
		case 1:
			want.Edge.C2 = want.Edge.C2.Add(at(30, -20))
		case 2:
			want.At, want.Edge.C1 = want.At.Add(at(30, -20)), want.Edge.C1.Add(at(30, -20))
		}
		if diff := cmp.Diff(want, n); diff != "" {
			t.Errorf("corner %d (-want +got):\n%s", i, diff)
		}
	}
}

func TestMoveEdge(t *testing.T) {
	d := design.Design{Outline: edit.Rectangle(mm(1000), mm(500))}
	moved := apply(t, d, edit.MoveEdge(3, at(-100, 0))) // the left side, over the end of the chain
	near(t, "area", area(moved.Outline.Nodes), 1100*500, 1e-6)
	if moved.Outline.Nodes[0].At != at(-100, 0) || moved.Outline.Nodes[3].At != at(-100, 500) {
		t.Errorf("ends at %v and %v", moved.Outline.Nodes[0].At, moved.Outline.Nodes[3].At)
	}
}

// drawEdge draws a chain of three corners whose first edge is of any kind and
// runs on steadily from a to b, whichever way these lie, so that no other part
// of it comes near.
func drawEdge(t *rapid.T) []design.Node {
	a := geom.Vec{X: rapid.Float64Range(-2000, 2000).Draw(t, "x"), Y: rapid.Float64Range(-2000, 2000).Draw(t, "y")}
	length := rapid.Float64Range(50, 3000).Draw(t, "length")
	along := geom.Vec{X: length}.Turn(rapid.Float64Range(0, 2*math.Pi).Draw(t, "direction"))
	p := func(x, y float64) design.Point {
		return toPoint(a.Add(along.Mul(x)).Add(along.Left().Mul(y)))
	}
	nodes := []design.Node{{At: p(0, 0)}, {At: p(1, 0)}, {At: p(0.5, 3)}}
	nodes[0].Edge.Curve = design.CurveKind(rapid.IntRange(0, 2).Draw(t, "curve"))
	switch nodes[0].Edge.Curve {
	case design.CurveArc:
		// A rise of some nanometres would put the centre so far away that the
		// reckoning itself had no nanometres left.
		nodes[0].Edge.Rise = mm(rapid.Float64Range(0.01, 2000).Draw(t, "rise"))
		if rapid.Bool().Draw(t, "inward") {
			nodes[0].Edge.Rise *= -1
		}
	case design.CurveSpline:
		nodes[0].Edge.C1 = p(rapid.Float64Range(0.05, 0.6).Draw(t, "c1 x"), rapid.Float64Range(-1, 1).Draw(t, "c1 y"))
		nodes[0].Edge.C2 = p(rapid.Float64Range(0.4, 0.95).Draw(t, "c2 x"), rapid.Float64Range(-1, 1).Draw(t, "c2 y"))
	}
	return nodes
}

// Splitting an edge leaves its curve where it was, and taking the new corner
// out again gives the edge back.
func TestInsertAndRemoveNodeKeepTheCurve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := design.Design{Outline: design.Outline{Nodes: drawEdge(t)}}
		whole := curvesOf(d.Outline.Nodes)[0]
		split := rapid.Float64Range(0.1, 0.9).Draw(t, "split")
		two, err := edit.InsertNode(0, toPoint(whole.At(split))).Apply(d)
		if err != nil {
			t.Fatal(err)
		}
		if len(two.Outline.Nodes) != 4 || two.Outline.Nodes[2] != d.Outline.Nodes[1] {
			t.Fatalf("corners %v", two.Outline.Nodes)
		}
		parts := curvesOf(two.Outline.Nodes)[:2]
		for i := range 41 {
			u := float64(i) / 40
			left := distance(whole, parts[0].At(u), u*split)
			right := distance(whole, parts[1].At(u), split+u*(1-split))
			if left > 5e-6 || right > 5e-6 { // a few nanometres of rounding
				t.Fatalf("at %g the parts lie %g and %g mm off the edge", u, left, right)
			}
		}
		one, err := edit.RemoveNode(1).Apply(two)
		if err != nil {
			t.Fatal(err)
		}
		again := curvesOf(one.Outline.Nodes)[0]
		for i := range 41 {
			u := float64(i) / 40
			if off := again.At(u).Dist(whole.At(u)); off > 1e-3 {
				t.Fatalf("after taking the corner out the edge is %g mm off at %g", off, u)
			}
		}
	})
}

func toPoint(v geom.Vec) design.Point { return at(v.X, v.Y) }

// distance is how far p lies from a curve near the parameter t.
func distance(c geom.Curve, p geom.Vec, t float64) float64 {
	best := c.At(t).Dist(p)
	for w := 1e-3; w > 1e-13; w /= 2 {
		for _, u := range [...]float64{t - w, t + w} {
			if d := c.At(u).Dist(p); d < best {
				best, t = d, u
			}
		}
	}
	return best
}

func TestRemoveNode(t *testing.T) {
	t.Run("an L becomes five-cornered", func(t *testing.T) {
		d := design.Design{Outline: edit.LShape(mm(1600), mm(520), mm(560), mm(1200), 0)}
		out := apply(t, d, edit.RemoveNode(2))
		near(t, "area", area(out.Outline.Nodes), 1600*520+560*680+1040*680/2, 1e-6)
	})
	t.Run("a circle of quarters becomes one of three arcs", func(t *testing.T) {
		out := apply(t, design.Design{Outline: edit.Round(mm(900))}, edit.RemoveNode(1))
		near(t, "area", area(out.Outline.Nodes), math.Pi*450*450, 1)
	})
	t.Run("the first corner", func(t *testing.T) {
		d := design.Design{Outline: edit.BowedFront(mm(1000), mm(500), mm(50))}
		out := apply(t, d, edit.RemoveNode(0))
		if n := len(out.Outline.Nodes); n != 3 || out.Outline.Nodes[2].Edge.Curve != design.CurveStraight {
			t.Errorf("%d corners, last edge %v", n, out.Outline.Nodes[2].Edge)
		}
	})
	t.Run("never without area", func(t *testing.T) {
		d := design.Design{Outline: edit.Rectangle(mm(1000), mm(500))}
		d = apply(t, d, edit.RemoveNode(0))
		if _, err := edit.RemoveNode(0).Apply(d); err == nil || !strings.Contains(err.Error(), "area") {
			t.Errorf("error %v, want one about the area", err)
		}
	})
}

func TestSetEdgeCurve(t *testing.T) {
	bowed := design.Design{Outline: edit.BowedFront(mm(1500), mm(560), mm(120))}
	whole := area(bowed.Outline.Nodes)
	spline := apply(t, bowed, edit.SetEdgeCurve(0, design.CurveSpline))
	near(t, "area as a spline", area(spline.Outline.Nodes), whole, 1e-4*whole)
	back := apply(t, spline, edit.SetEdgeCurve(0, design.CurveArc))
	near(t, "rise as an arc again", back.Outline.Nodes[0].Edge.Rise.MM(), 120, 1e-5)
	flat := apply(t, back, edit.SetEdgeCurve(0, design.CurveStraight))
	near(t, "area when straight", area(flat.Outline.Nodes), 1500*440, 1e-6)
	bent := apply(t, flat, edit.SetEdgeCurve(0, design.CurveArc))
	near(t, "rise of a new arc", bent.Outline.Nodes[0].Edge.Rise.MM(), 150, 1e-6)
	if e := apply(t, bent, edit.BendEdge(0, 0)).Outline.Nodes[0].Edge; e.Curve != design.CurveStraight {
		t.Errorf("bent by nothing the edge is %v", e)
	}
}

func TestSetSeenProfiles(t *testing.T) {
	d := design.Design{Outline: edit.LShape(mm(1600), mm(520), mm(560), mm(1200), 0)}
	half := design.Profile{Kind: design.ProfileHalfRound}
	for i, n := range apply(t, d, edit.SetSeenProfiles(half)).Outline.Nodes {
		if (n.Edge.Profile == half) != (n.Edge.Side == design.SideSeen) {
			t.Errorf("edge %d: side %v has profile %v", i, n.Edge.Side, n.Edge.Profile)
		}
	}
}

func TestSetAllCorners(t *testing.T) {
	c := design.Corner{Kind: design.CornerRounded, Size: mm(25)}
	d := apply(t, design.Design{Outline: edit.Rectangle(mm(900), mm(500))}, edit.SetAllCorners(c))
	for i, n := range d.Outline.Nodes {
		if n.Corner != c {
			t.Errorf("corner %d is %v", i, n.Corner)
		}
	}
}

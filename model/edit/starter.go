package edit

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
)

// The starters give outlines whose bounds have their left front corner at the
// origin. Sizes are overall; none is checked, as any outline may be drawn and
// explained.

// Rectangle is a top of width by depth with its back against a wall.
func Rectangle(width, depth units.Length) design.Outline {
	return chainOf(
		seenEdge(0, 0), seenEdge(width, 0),
		wallEdge(width, depth), seenEdge(0, depth),
	)
}

// LShape is a top along the back wall, width by depth, with a return along the
// left wall that is returnWidth wide and reaches returnDepth from the back
// wall in all. The inside corner is rounded by insideRadius, 0 leaves it
// square.
func LShape(width, depth, returnWidth, returnDepth, insideRadius units.Length) design.Outline {
	inside := seenEdge(returnWidth, returnDepth-depth)
	inside.Corner = roundedBy(insideRadius)
	return chainOf(
		seenEdge(0, 0), seenEdge(returnWidth, 0), inside, seenEdge(width, returnDepth-depth),
		wallEdge(width, returnDepth), wallEdge(0, returnDepth),
	)
}

// UShape is a top along the back wall, width by depth, with two returns along
// the side walls, left and right wide, that reach returnDepth from the back
// wall in all. Both inside corners are rounded by insideRadius.
func UShape(width, depth, left, right, returnDepth, insideRadius units.Length) design.Outline {
	front := returnDepth - depth
	insideLeft, insideRight := seenEdge(left, front), seenEdge(width-right, front)
	insideLeft.Corner, insideRight.Corner = roundedBy(insideRadius), roundedBy(insideRadius)
	return chainOf(
		seenEdge(0, 0), seenEdge(left, 0), insideLeft,
		insideRight, seenEdge(width-right, 0), wallEdge(width, 0),
		wallEdge(width, returnDepth), wallEdge(0, returnDepth),
	)
}

// BowedFront is a top of width by depth whose front bows out by rise; depth is
// overall, at the middle of the bow.
func BowedFront(width, depth, rise units.Length) design.Outline {
	front := seenEdge(0, rise)
	if rise != 0 {
		front.Edge.Curve, front.Edge.Rise = design.CurveArc, rise
	}
	return chainOf(front, seenEdge(width, rise), wallEdge(width, depth), seenEdge(0, depth))
}

// Round is a free-standing disc: four quarter arcs.
func Round(diameter units.Length) design.Outline {
	r := diameter / 2
	// The rise of a quarter arc is r (1 - cos 45 degrees).
	rise := units.FromMM(r.MM() * (1 - math.Sqrt2/2))
	o := chainOf(seenEdge(r, 0), seenEdge(diameter, r), seenEdge(r, diameter), seenEdge(0, r))
	for i := range o.Nodes {
		o.Nodes[i].Edge.Curve, o.Nodes[i].Edge.Rise = design.CurveArc, rise
	}
	return o
}

// ovalHandle is the length of a control handle of a unit circle's eighth, so
// chosen that the cubic holds the very area of its sector. With the sine s and
// cosine c of 45 degrees the area of the cubic's sector is
//
//	(12 k (1 - c) + 10 s - 3 k k s) / 20
//
// (Green's theorem on the Bernstein form); set equal to pi/8 and solved for k.
var ovalHandle = func() float64 {
	s, c := math.Sincos(math.Pi / 4)
	b := 12 * (1 - c)
	return (b - math.Sqrt(b*b-120*s*(math.Pi/4-s))) / (6 * s)
}()

// Oval is a free-standing ellipse with the axes width and depth, as eight
// cubic spans: its area is the ellipse's own, and no point strays from the
// ellipse by more than 5e-6 of the longer half axis.
func Oval(width, depth units.Length) design.Outline {
	const spans = 8
	a, b := width.MM()/2, depth.MM()/2
	on := func(x, y float64) design.Point {
		return design.Point{X: units.FromMM(a + a*x), Y: units.FromMM(b + b*y)}
	}
	nodes := make([]design.Node, spans)
	for i := range nodes {
		s1, c1 := math.Sincos(2*math.Pi*float64(i)/spans - math.Pi/2)
		s2, c2 := math.Sincos(2*math.Pi*float64(i+1)/spans - math.Pi/2)
		nodes[i].At = on(c1, s1)
		nodes[i].Edge = design.Edge{Curve: design.CurveSpline,
			C1: on(c1-ovalHandle*s1, s1+ovalHandle*c1),
			C2: on(c2+ovalHandle*s2, s2-ovalHandle*c2)}
	}
	return design.Outline{Nodes: nodes}
}

func chainOf(nodes ...design.Node) design.Outline { return design.Outline{Nodes: nodes} }

func seenEdge(x, y units.Length) design.Node {
	return design.Node{At: design.Point{X: x, Y: y}}
}

func wallEdge(x, y units.Length) design.Node {
	n := seenEdge(x, y)
	n.Edge.Side = design.SideWall
	return n
}

func roundedBy(radius units.Length) design.Corner {
	if radius == 0 {
		return design.Corner{}
	}
	return design.Corner{Kind: design.CornerRounded, Size: radius}
}

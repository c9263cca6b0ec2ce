package edit

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// span is one edge of a chain in millimetres: a line, an arc or a cubic.
type span struct {
	kind   design.CurveKind
	a, b   geom.Vec
	rise   float64  // of an arc, positive to the right of a to b
	c1, c2 geom.Vec // of a spline
}

func vec(p design.Point) geom.Vec { return geom.Vec{X: p.X.MM(), Y: p.Y.MM()} }

func point(v geom.Vec) design.Point {
	return design.Point{X: units.FromMM(v.X), Y: units.FromMM(v.Y)}
}

// spanOf is the edge that leaves node i of a closed chain. Arcs that have no
// chord or no rise are lines.
func spanOf(nodes []design.Node, i int) span {
	n, next := nodes[i], nodes[(i+1)%len(nodes)]
	s := span{kind: n.Edge.Curve, a: vec(n.At), b: vec(next.At)}
	switch s.kind {
	case design.CurveArc:
		s.rise = n.Edge.Rise.MM()
		if n.Edge.Rise == 0 || n.At == next.At {
			s.kind, s.rise = design.CurveStraight, 0
		}
	case design.CurveSpline:
		s.c1, s.c2 = vec(n.Edge.C1), vec(n.Edge.C2)
	default:
		s.kind = design.CurveStraight
	}
	return s
}

// curve is the span as exact geometry.
func (s span) curve() geom.Curve {
	switch s.kind {
	case design.CurveArc:
		return geom.ArcByRise(s.a, s.b, s.rise)
	case design.CurveSpline:
		return geom.Cubic{P0: s.a, P1: s.c1, P2: s.c2, P3: s.b}
	}
	return geom.Line{A: s.a, B: s.b}
}

// arc is the circle of an arc span. A rise of a nanometre gives an arc yet.
func (s span) arc() geom.Arc {
	a, _ := geom.ArcByRise(s.a, s.b, s.rise).(geom.Arc)
	return a
}

// sagitta is the rise of an arc of radius r that sweeps the angle: positive
// for a counter-clockwise sweep, which bows to the right of its chord.
func sagitta(r, sweep float64) float64 {
	half := math.Sin(sweep / 4)
	return math.Copysign(2*r*half*half, sweep)
}

// split parts the span at t. Arcs keep their circle and cubics their curve.
func (s span) split(t float64) (left, right span) {
	left, right = s, s
	m := s.curve().At(t)
	left.b, right.a = m, m
	switch s.kind {
	case design.CurveArc:
		arc := s.arc()
		left.rise = sagitta(arc.Radius, t*arc.Sweep)
		right.rise = sagitta(arc.Radius, (1-t)*arc.Sweep)
	case design.CurveSpline:
		l, _ := s.curve().Sub(0, t).(geom.Cubic)
		r, _ := s.curve().Sub(t, 1).(geom.Cubic)
		left.c1, left.c2, right.c1, right.c2 = l.P1, l.P2, r.P1, r.P2
	}
	return left, right
}

// nearest is the parameter of the point of the span nearest to p: exact for
// lines and arcs, for a cubic the best of a dense walk, refined by thirds.
func (s span) nearest(p geom.Vec) float64 {
	switch s.kind {
	case design.CurveArc:
		return nearestOnArc(s.arc(), p)
	case design.CurveSpline:
		return nearestOnCubic(s.curve(), p)
	}
	ab := s.b.Sub(s.a)
	if ab.Dot(ab) == 0 {
		return 0
	}
	return math.Max(0, math.Min(1, p.Sub(s.a).Dot(ab)/ab.Dot(ab)))
}

func nearestOnArc(arc geom.Arc, p geom.Vec) float64 {
	v := p.Sub(arc.Centre)
	turned := math.Mod(math.Atan2(v.Y, v.X)-arc.Start, 2*math.Pi)
	// Of the three turns that mean this direction, one may lie on the arc.
	for _, add := range [...]float64{0, 2 * math.Pi, -2 * math.Pi} {
		if t := (turned + add) / arc.Sweep; t >= 0 && t <= 1 {
			return t
		}
	}
	if p.Dist(arc.At(0)) <= p.Dist(arc.At(1)) {
		return 0
	}
	return 1
}

func nearestOnCubic(c geom.Curve, p geom.Vec) float64 {
	const steps = 256
	best, dist := 0.0, math.Inf(1)
	for i := 0; i <= steps; i++ {
		t := float64(i) / steps
		if d := c.At(t).Dist(p); d < dist {
			best, dist = t, d
		}
	}
	lo, hi := math.Max(0, best-1.0/steps), math.Min(1, best+1.0/steps)
	for range 60 {
		l, r := lo+(hi-lo)/3, hi-(hi-lo)/3
		if c.At(l).Dist(p) <= c.At(r).Dist(p) {
			hi = r
		} else {
			lo = l
		}
	}
	return (lo + hi) / 2
}

// edge writes the span's curve into an edge and keeps the rest of it.
func (s span) edge(e design.Edge) design.Edge {
	e.Curve, e.Rise, e.C1, e.C2 = s.kind, 0, design.Point{}, design.Point{}
	switch s.kind {
	case design.CurveArc:
		e.Rise = units.FromMM(s.rise)
	case design.CurveSpline:
		e.C1, e.C2 = point(s.c1), point(s.c2)
	}
	return e
}

// Bounds is the box about an outline's exact curves, corners uncut: what [Resize]
// takes for its width and depth. Millimetres; empty without nodes.
func Bounds(o design.Outline) geom.Box { return boundsOf(o.Nodes) }

// boundsOf is the box of a closed chain's edges, corners untreated.
func boundsOf(nodes []design.Node) geom.Box {
	box := geom.EmptyBox()
	for i := range nodes {
		s := spanOf(nodes, i)
		box = box.Include(s.a).Include(s.b)
		switch s.kind {
		case design.CurveArc:
			box = s.crowned(box)
		case design.CurveSpline:
			box = box.Union(s.curve().Bounds())
		}
	}
	return box
}

// crowned is a box grown to hold an arc whose ends it holds. The reckoning
// starts from the crown, not the centre, so that a flat arc whose centre lies
// millions of metres away keeps its nanometres: in a direction n the arc
// reaches r (1 - cos x) beyond the crown when n lies at the angle x, within
// half the sweep, from the direction u of the crown; and 1 - cos x is
// |u - n|^2 / 2.
func (s span) crowned(box geom.Box) geom.Box {
	arc := s.arc()
	right := s.b.Sub(s.a).Unit().Left().Mul(-1)
	crown := s.a.Lerp(s.b, 0.5).Add(right.Mul(s.rise))
	u := right.Mul(math.Copysign(1, s.rise))
	for _, n := range [...]geom.Vec{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}} {
		off := u.Sub(n).Norm()
		if 2*math.Asin(math.Min(1, off/2)) < math.Abs(arc.Sweep)/2 {
			box = box.Include(reach(box, n, crown.Dot(n)+arc.Radius*off*off/2))
		}
	}
	return box
}

// reach is a point of the box, or straight out of it along n, at the distance
// d along n.
func reach(box geom.Box, n geom.Vec, d float64) geom.Vec {
	p := box.Min
	if n.X != 0 {
		p.X = n.X * d
	} else {
		p.Y = n.Y * d
	}
	return p
}

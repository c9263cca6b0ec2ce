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
		if s.rise == 0 || s.a == s.b {
			s.kind, s.rise = design.CurveStraight, 0
		}
	case design.CurveSpline:
		s.c1, s.c2 = vec(n.Edge.C1), vec(n.Edge.C2)
	default:
		s.kind = design.CurveStraight
	}
	return s
}

// arc gives an arc's centre, radius, the angle at which it starts and the
// signed angle that it sweeps, counter-clockwise positive.
//
// With half chord h and rise s the quarter of the sweep has the tangent s/h,
// and the radius is (h*h + s*s) / 2s.
func (s span) arc() (centre geom.Vec, r, start, sweep float64) {
	chord := s.b.Sub(s.a)
	h := chord.Norm() / 2
	sweep = 4 * math.Atan(s.rise/h)
	r = math.Abs((h*h + s.rise*s.rise) / (2 * s.rise))
	right := chord.Unit().Left().Mul(-1)
	crown := s.a.Lerp(s.b, 0.5).Add(right.Mul(s.rise))
	centre = crown.Sub(right.Mul(math.Copysign(r, s.rise)))
	from := s.a.Sub(centre)
	return centre, r, math.Atan2(from.Y, from.X), sweep
}

// at is the point at parameter t, from 0 at a to 1 at b.
func (s span) at(t float64) geom.Vec {
	switch s.kind {
	case design.CurveArc:
		centre, r, start, sweep := s.arc()
		sin, cos := math.Sincos(start + t*sweep)
		return centre.Add(geom.Vec{X: r * cos, Y: r * sin})
	case design.CurveSpline:
		l, _ := s.split(t)
		return l.b
	}
	return s.a.Lerp(s.b, t)
}

// split parts the span at t. Arcs keep their circle; a cubic is split by
// de Casteljau's construction, so both parts are the curve itself.
func (s span) split(t float64) (left, right span) {
	left, right = s, s
	switch s.kind {
	case design.CurveArc:
		_, r, _, sweep := s.arc()
		m := s.at(t)
		left.b, right.a = m, m
		left.rise = sagitta(r, t*sweep)
		right.rise = sagitta(r, (1-t)*sweep)
	case design.CurveSpline:
		ab, bc, cd := s.a.Lerp(s.c1, t), s.c1.Lerp(s.c2, t), s.c2.Lerp(s.b, t)
		abc, bcd := ab.Lerp(bc, t), bc.Lerp(cd, t)
		m := abc.Lerp(bcd, t)
		left.b, left.c1, left.c2 = m, ab, abc
		right.a, right.c1, right.c2 = m, bcd, cd
	default:
		m := s.a.Lerp(s.b, t)
		left.b, right.a = m, m
	}
	return left, right
}

// sagitta is the rise of an arc of radius r that sweeps the angle: positive
// for a counter-clockwise sweep, which bows to the right of its chord.
func sagitta(r, sweep float64) float64 {
	half := math.Sin(sweep / 4)
	return math.Copysign(2*r*half*half, sweep)
}

// bounds widens box by the span's exact extent.
func (s span) bounds(box *extent) {
	box.add(s.a)
	box.add(s.b)
	switch s.kind {
	case design.CurveArc:
		centre, r, start, sweep := s.arc()
		for _, angle := range [...]float64{0, math.Pi / 2, math.Pi, -math.Pi / 2} {
			turned := math.Mod(angle-start, 2*math.Pi)
			if sweep > 0 && turned < 0 {
				turned += 2 * math.Pi
			}
			if sweep < 0 && turned > 0 {
				turned -= 2 * math.Pi
			}
			if math.Abs(turned) < math.Abs(sweep) {
				sin, cos := math.Sincos(angle)
				box.add(centre.Add(geom.Vec{X: r * math.Round(cos), Y: r * math.Round(sin)}))
			}
		}
	case design.CurveSpline:
		for _, t := range extremes(s.a.X, s.c1.X, s.c2.X, s.b.X) {
			box.add(geom.Vec{X: s.at(t).X, Y: s.a.Y})
		}
		for _, t := range extremes(s.a.Y, s.c1.Y, s.c2.Y, s.b.Y) {
			box.add(geom.Vec{X: s.a.X, Y: s.at(t).Y})
		}
	}
}

// extremes are the parameters within (0, 1) where one coordinate of a cubic
// turns: the roots of its derivative, a quadratic.
func extremes(p0, p1, p2, p3 float64) []float64 {
	a := p3 - 3*p2 + 3*p1 - p0
	b := 2 * (p2 - 2*p1 + p0)
	c := p1 - p0
	var out []float64
	keep := func(t float64) {
		if t > 0 && t < 1 {
			out = append(out, t)
		}
	}
	scale := math.Abs(p0) + math.Abs(p1) + math.Abs(p2) + math.Abs(p3)
	if math.Abs(a) <= 1e-12*scale {
		if b != 0 {
			keep(-c / b)
		}
		return out
	}
	disc := b*b - 4*a*c
	if disc < 0 {
		return nil
	}
	// The larger root by adding, the other by the product of both.
	q := -(b + math.Copysign(math.Sqrt(disc), b)) / 2
	keep(q / a)
	if q != 0 {
		keep(c / q)
	}
	return out
}

// nearest is the parameter of the point of the span nearest to p: exact for
// lines and arcs, for a cubic the best of a dense walk, refined by thirds.
func (s span) nearest(p geom.Vec) float64 {
	switch s.kind {
	case design.CurveArc:
		centre, _, start, sweep := s.arc()
		v := p.Sub(centre)
		turned := math.Mod(math.Atan2(v.Y, v.X)-start, 2*math.Pi)
		// Of the three turns that mean this direction, one may lie on the arc.
		for _, add := range [...]float64{0, 2 * math.Pi, -2 * math.Pi} {
			if t := (turned + add) / sweep; t >= 0 && t <= 1 {
				return t
			}
		}
		if p.Dist(s.a) <= p.Dist(s.b) {
			return 0
		}
		return 1
	case design.CurveSpline:
		const steps = 256
		best, dist := 0.0, math.Inf(1)
		for i := 0; i <= steps; i++ {
			t := float64(i) / steps
			if d := s.at(t).Dist(p); d < dist {
				best, dist = t, d
			}
		}
		lo, hi := math.Max(0, best-1.0/steps), math.Min(1, best+1.0/steps)
		for range 60 {
			l, r := lo+(hi-lo)/3, hi-(hi-lo)/3
			if s.at(l).Dist(p) <= s.at(r).Dist(p) {
				hi = r
			} else {
				lo = l
			}
		}
		return (lo + hi) / 2
	}
	ab := s.b.Sub(s.a)
	if ab.Dot(ab) == 0 {
		return 0
	}
	return math.Max(0, math.Min(1, p.Sub(s.a).Dot(ab)/ab.Dot(ab)))
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

// extent is a box that grows with the points put into it.
type extent struct {
	min, max geom.Vec
	some     bool
}

func (e *extent) add(p geom.Vec) {
	if !e.some {
		e.min, e.max, e.some = p, p, true
		return
	}
	e.min = geom.Vec{X: math.Min(e.min.X, p.X), Y: math.Min(e.min.Y, p.Y)}
	e.max = geom.Vec{X: math.Max(e.max.X, p.X), Y: math.Max(e.max.Y, p.Y)}
}

// extentOf is the exact extent of a closed chain's edges, corners untreated.
func extentOf(nodes []design.Node) extent {
	var e extent
	for i := range nodes {
		spanOf(nodes, i).bounds(&e)
	}
	return e
}

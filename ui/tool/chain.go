package tool

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

func vec(p design.Point) geom.Vec { return geom.Vec{X: p.X.MM(), Y: p.Y.MM()} }

func point(v geom.Vec) design.Point {
	return design.Point{X: units.FromMM(v.X), Y: units.FromMM(v.Y)}
}

// wrap is i brought into 0 to n-1.
func wrap(i, n int) int { return ((i % n) + n) % n }

// edgeEnds are the two corners of the edge that leaves node i.
func edgeEnds(nodes []design.Node, i int) (a, b geom.Vec) {
	return vec(nodes[i].At), vec(nodes[wrap(i+1, len(nodes))].At)
}

// outward is the unit normal to the right of the way from a to b: out of a
// counter-clockwise chain.
func outward(a, b geom.Vec) geom.Vec { return b.Sub(a).Unit().Left().Mul(-1) }

// edgeMiddle is the middle of the edge that leaves node i, on its curve.
func edgeMiddle(nodes []design.Node, i int) geom.Vec {
	a, b := edgeEnds(nodes, i)
	e := nodes[i].Edge
	switch e.Curve {
	case design.CurveArc:
		return a.Lerp(b, 0.5).Add(outward(a, b).Mul(e.Rise.MM()))
	case design.CurveSpline:
		return a.Add(b).Mul(1.0 / 8).Add(vec(e.C1).Add(vec(e.C2)).Mul(3.0 / 8))
	}
	return a.Lerp(b, 0.5)
}

// heading is the direction in which the edge that leaves node i sets out, and
// the one in which it arrives, as unit vectors.
func heading(nodes []design.Node, i int) (out, in geom.Vec) {
	a, b := edgeEnds(nodes, i)
	chord := b.Sub(a)
	e := nodes[i].Edge
	switch e.Curve {
	case design.CurveArc:
		half := chord.Norm() / 2
		if half == 0 {
			return geom.Vec{}, geom.Vec{}
		}
		// Half the angle of the arc: tan(t/4) = rise / (chord/2) for the whole
		// angle t, so the tangent at an end is turned from the chord by t/2.
		turn := 2 * math.Atan(e.Rise.MM()/half)
		return chord.Unit().Turn(-turn), chord.Unit().Turn(turn)
	case design.CurveSpline:
		out, in = vec(e.C1).Sub(a), b.Sub(vec(e.C2))
		if out.Norm() == 0 {
			out = vec(e.C2).Sub(a)
		}
		if in.Norm() == 0 {
			in = b.Sub(vec(e.C1))
		}
		if out.Norm() == 0 || in.Norm() == 0 {
			return chord.Unit(), chord.Unit()
		}
		return out.Unit(), in.Unit()
	}
	return chord.Unit(), chord.Unit()
}

// bisector is the unit vector that halves the corner at node i, on the side on
// which its two edges enclose less than half a turn, and the sine of half of the
// angle between them. ok is false where the edges go straight on.
func bisector(nodes []design.Node, i int) (dir geom.Vec, sin float64, ok bool) {
	n := len(nodes)
	if n < 2 {
		return geom.Vec{}, 0, false
	}
	out, _ := heading(nodes, i)
	_, in := heading(nodes, wrap(i-1, n))
	back := in.Mul(-1)
	sum := out.Add(back)
	if sum.Norm() < 1e-6 {
		return geom.Vec{}, 0, false
	}
	half := math.Acos(math.Max(-1, math.Min(1, out.Dot(back)))) / 2
	if half < 1e-6 {
		return geom.Vec{}, 0, false
	}
	return sum.Unit(), math.Sin(half), true
}

// distance is how far p lies from a polyline, and the nearest place on it.
func distance(p geom.Vec, pts []geom.Vec, closed bool) (float64, geom.Vec) {
	best, at := math.Inf(1), geom.Vec{}
	n := len(pts)
	if n == 1 {
		return p.Dist(pts[0]), pts[0]
	}
	last := n - 1
	if closed {
		last = n
	}
	for i := range last {
		q := nearest(p, pts[i], pts[(i+1)%n])
		if d := p.Dist(q); d < best {
			best, at = d, q
		}
	}
	return best, at
}

// nearest is the place on the segment from a to b that is nearest to p.
func nearest(p, a, b geom.Vec) geom.Vec {
	ab := b.Sub(a)
	l2 := ab.Dot(ab)
	if l2 == 0 {
		return a
	}
	return a.Lerp(b, math.Max(0, math.Min(1, p.Sub(a).Dot(ab)/l2)))
}

// inside reports whether p lies in a region of outer loops and islands.
func inside(p geom.Vec, loops []geom.Loop) bool {
	w := 0
	for _, l := range loops {
		w += l.Winding(p)
	}
	return w != 0
}

// area is the area of a region of outer loops and islands.
func area(loops []geom.Loop) float64 {
	sum := 0.0
	for _, l := range loops {
		sum += l.Area()
	}
	return math.Abs(sum)
}

// rim is how far p lies from the rim of a region.
func rim(p geom.Vec, loops []geom.Loop) float64 {
	best := math.Inf(1)
	for _, l := range loops {
		if d, _ := distance(p, l, true); d < best {
			best = d
		}
	}
	return best
}

// cast is how far along the unit vector u from p the loops are first met, beyond
// a nanometre; +Inf when they are not.
func cast(p, u geom.Vec, loops ...geom.Loop) float64 {
	best := math.Inf(1)
	for _, l := range loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			if t, ok := meets(p, u, a, b); ok && t > 1e-6 && t < best {
				best = t
			}
		}
	}
	return best
}

// castLast is like cast, but gives the last meeting; -Inf for none.
func castLast(p, u geom.Vec, loop geom.Loop) float64 {
	best := math.Inf(-1)
	for i, a := range loop {
		if t, ok := meets(p, u, a, loop[(i+1)%len(loop)]); ok && t > best {
			best = t
		}
	}
	return best
}

// meets is how far along u from p the segment from a to b is met.
func meets(p, u, a, b geom.Vec) (float64, bool) {
	ca, cb := u.Cross(a.Sub(p)), u.Cross(b.Sub(p))
	if (ca <= 0) == (cb <= 0) {
		return 0, false
	}
	ta, tb := u.Dot(a.Sub(p)), u.Dot(b.Sub(p))
	return ta + (tb-ta)*ca/(ca-cb), true
}

// farthest is the middle of the part of the loops that lies farthest along the
// unit vector u.
func farthest(u geom.Vec, loops []geom.Loop) (geom.Vec, bool) {
	best := math.Inf(-1)
	for _, l := range loops {
		for _, p := range l {
			best = math.Max(best, p.Dot(u))
		}
	}
	if math.IsInf(best, -1) {
		return geom.Vec{}, false
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, l := range loops {
		for _, p := range l {
			if p.Dot(u) > best-1e-3 {
				c := u.Cross(p)
				lo, hi = math.Min(lo, c), math.Max(hi, c)
			}
		}
	}
	return u.Mul(best).Add(u.Left().Mul((lo + hi) / 2)), true
}

package template

import (
	"math"

	"example.org/castwright/model/geom"
)

// maxDegree bounds a spline's degree.
const maxDegree = 11

// nurbs is a rational B-spline curve: control points with weights, in
// homogeneous coordinates.
type nurbs struct {
	degree int
	knots  []float64
	ctrl   [][3]float64 // x w, y w, w
}

// spline reads a SPLINE entity: by control points, or by fit points alone.
func (e entity) spline() ([]span, error) {
	var knots, weights []float64
	points := map[int][]geom.Vec{} // by the code of their x: control, fit, start and end direction
	for _, p := range e.groups {
		switch p.code {
		case 40, 41, 10, 20, 11, 21, 12, 22, 13, 23:
		default:
			continue
		}
		v, err := p.float()
		if err != nil {
			return nil, err
		}
		switch p.code {
		case 40:
			knots = append(knots, v)
		case 41:
			weights = append(weights, v)
		case 10, 11, 12, 13:
			points[p.code] = append(points[p.code], geom.Vec{X: v})
		default:
			if l := points[p.code-10]; len(l) > 0 {
				l[len(l)-1].Y = v
			}
		}
	}
	ctrl := points[10]
	if len(ctrl) == 0 {
		return throughPoints(points[11], points[12], points[13], e.flag(70)&1 != 0), nil
	}
	n := nurbs{degree: e.flag(71), knots: knots}
	for i, p := range ctrl {
		w := 1.0
		if len(weights) == len(ctrl) {
			w = weights[i]
		}
		if w <= 0 {
			return nil, fail(e.line, "SPLINE has weight %g: weights must be above 0", w)
		}
		n.ctrl = append(n.ctrl, [3]float64{p.X * w, p.Y * w, w})
	}
	switch {
	case n.degree < 1 || n.degree > maxDegree:
		return nil, fail(e.line, "SPLINE of degree %d: 1 to %d are read", n.degree, maxDegree)
	case len(ctrl) <= n.degree:
		return nil, fail(e.line, "SPLINE of degree %d needs %d control points and has %d", n.degree, n.degree+1, len(ctrl))
	case len(knots) != len(ctrl)+n.degree+1:
		return nil, fail(e.line, "SPLINE with %d control points needs %d knots and has %d", len(ctrl), len(ctrl)+n.degree+1, len(knots))
	}
	for i := 1; i < len(knots); i++ {
		if knots[i] < knots[i-1] {
			return nil, fail(e.line, "SPLINE's knots run backward at the %dth", i+1)
		}
	}
	return n.spans(), nil
}

// at is the curve and its derivative at u within knot span k, by de Boor.
func (n nurbs) at(u float64, k int) (geom.Vec, geom.Vec) {
	p := n.degree
	var d [maxDegree + 1][3]float64
	copy(d[:p+1], n.ctrl[k-p:k+1])
	var slope [3]float64
	for r := 1; r <= p; r++ {
		if r == p {
			h := n.knots[k+1] - n.knots[k]
			for c := range 3 {
				slope[c] = float64(p) * (d[p][c] - d[p-1][c]) / h
			}
		}
		for j := p; j >= r; j-- {
			lo, hi := n.knots[j+k-p], n.knots[j+1+k-r]
			a := 0.0
			if hi > lo {
				a = (u - lo) / (hi - lo)
			}
			for c := range 3 {
				d[j][c] = (1-a)*d[j-1][c] + a*d[j][c]
			}
		}
	}
	x, y, w := d[p][0]/d[p][2], d[p][1]/d[p][2], d[p][2]
	return geom.Vec{X: x, Y: y}, geom.Vec{X: (slope[0] - x*slope[2]) / w, Y: (slope[1] - y*slope[2]) / w}
}

// spans is the curve in cubics. A plain cubic knot span is exact; others are
// halved until the cubic through ends and slopes strays by less than 1e-6 of
// the curve's size.
func (n nurbs) spans() []span {
	box := geom.EmptyBox()
	for _, c := range n.ctrl {
		box = box.Include(geom.Vec{X: c[0] / c[2], Y: c[1] / c[2]})
	}
	tol := 1e-6 * (box.W() + box.H())
	var out []span
	for k := n.degree; k < len(n.ctrl); k++ {
		if n.knots[k+1] > n.knots[k] {
			out = n.piece(n.knots[k], n.knots[k+1], k, tol, 8, out)
		}
	}
	return out
}

func (n nurbs) piece(u0, u1 float64, k int, tol float64, depth int, out []span) []span {
	p, dp := n.at(u0, k)
	q, dq := n.at(u1, k)
	h := (u1 - u0) / 3
	s := span{kind: cubic, a: p, b: q, c1: p.Add(dp.Mul(h)), c2: q.Sub(dq.Mul(h))}
	err := 0.0
	for _, t := range [...]float64{0.25, 0.5, 0.75} {
		x, _ := n.at(u0+(u1-u0)*t, k)
		err = math.Max(err, x.Dist(s.at(t)))
	}
	if err <= tol || depth == 0 {
		return append(out, s)
	}
	mid := (u0 + u1) / 2
	return n.piece(mid, u1, k, tol, depth-1, n.piece(u0, mid, k, tol, depth-1, out))
}

// throughPoints is the cubic spline with continuous second derivatives through
// fit points, over the lengths of the chords. At its ends it takes the direction
// that the file gives, else that of the five-point rule, with unit speed (L.
// Piegl and W. Tiller, "The NURBS Book", 2nd ed. 1997, sections 9.2.2 and
// 9.3.1). One that is closed and does not repeat its first point runs smoothly
// through it.
func throughPoints(fit, first, last []geom.Vec, closed bool) []span {
	var p []geom.Vec
	for _, q := range fit {
		if n := len(p); n == 0 || p[n-1].Dist(q) > 1e-9 {
			p = append(p, q)
		}
	}
	n := len(p)
	if n < 2 {
		return nil
	}
	if closed && n > 2 && p[0].Dist(p[n-1]) > 1e-9 {
		return periodic(p)
	}
	from, to := p[1].Sub(p[0]), p[n-1].Sub(p[n-2])
	if n > 2 {
		from = endSlope(p[0], p[1], p[2])
		to = endSlope(p[n-1], p[n-2], p[n-3]).Mul(-1)
	}
	if len(first) == 1 && first[0].Norm() > 0 {
		from = first[0]
	}
	if len(last) == 1 && last[0].Norm() > 0 {
		to = last[0]
	}
	return clamped(p, from.Unit(), to.Unit())
}

// endSlope is the direction in which a curve leaves the first of three points:
// equations 9.29 to 9.33 of the book for an end, where the chords that are
// missing go on as the last ones change. On a straight line it is the mean.
func endSlope(p, q, r geom.Vec) geom.Vec {
	q1, q2 := q.Sub(p), r.Sub(q)
	q0 := q1.Mul(2).Sub(q2)
	before := q0.Mul(2).Sub(q1)
	u, v := math.Abs(before.Cross(q0)), math.Abs(q1.Cross(q2))
	a := 0.5
	if u+v > 0 {
		a = u / (u + v)
	}
	return q0.Mul(1 - a).Add(q1.Mul(a))
}

// clamped is the cubic spline through points over the lengths of the chords with
// these derivatives at its ends.
func clamped(p []geom.Vec, from, to geom.Vec) []span {
	n := len(p)
	h := make([]float64, n-1)
	for i := range h {
		h[i] = p[i].Dist(p[i+1])
	}
	// The slopes at the points by the tridiagonal system of the second
	// derivative, after Thomas.
	slope, c := make([]geom.Vec, n), make([]float64, n)
	slope[0], slope[n-1] = from, to
	for i := 1; i+1 < n; i++ {
		rhs := p[i].Sub(p[i-1]).Mul(3 * h[i] / h[i-1]).Add(p[i+1].Sub(p[i]).Mul(3 * h[i-1] / h[i]))
		pivot := 2*(h[i-1]+h[i]) - h[i]*c[i-1]
		c[i] = h[i-1] / pivot
		slope[i] = rhs.Sub(slope[i-1].Mul(h[i])).Mul(1 / pivot)
	}
	for i := n - 2; i > 0; i-- {
		slope[i] = slope[i].Sub(slope[i+1].Mul(c[i]))
	}
	out := make([]span, n-1)
	for i := range out {
		out[i] = span{kind: cubic, a: p[i], b: p[i+1],
			c1: p[i].Add(slope[i].Mul(h[i] / 3)), c2: p[i+1].Sub(slope[i+1].Mul(h[i] / 3))}
	}
	return out
}

// unroll is how far a closed spline is run round at both ends, so that the ends
// don't tell: what an end does fades by about 0.27 from point to point.
const unroll = 24

// periodic is the closed cubic spline through points.
func periodic(p []geom.Vec) []span {
	n := len(p)
	long := make([]geom.Vec, 0, n+2*unroll+1)
	for i := -unroll; i <= n+unroll; i++ {
		long = append(long, p[((i%n)+n)%n])
	}
	m := len(long)
	spans := clamped(long, long[1].Sub(long[0]).Unit(), long[m-1].Sub(long[m-2]).Unit())
	return spans[unroll : unroll+n]
}

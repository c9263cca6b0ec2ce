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
	var ctrl, fit []geom.Vec
	for _, p := range e.groups {
		switch p.code {
		case 40, 41, 10, 20, 11, 21:
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
		case 10:
			ctrl = append(ctrl, geom.Vec{X: v})
		case 20:
			if n := len(ctrl); n > 0 {
				ctrl[n-1].Y = v
			}
		case 11:
			fit = append(fit, geom.Vec{X: v})
		case 21:
			if n := len(fit); n > 0 {
				fit[n-1].Y = v
			}
		}
	}
	if len(ctrl) == 0 {
		return throughPoints(fit), nil
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

// throughPoints joins fit points by a cubic through each point with the slope
// of its neighbours' chord; files that give fit points alone do not say more.
func throughPoints(p []geom.Vec) []span {
	var out []span
	for i := 0; i+1 < len(p); i++ {
		before, after := p[max(0, i-1)], p[min(len(p)-1, i+2)]
		out = append(out, span{
			kind: cubic, a: p[i], b: p[i+1],
			c1: p[i].Add(p[i+1].Sub(before).Mul(1.0 / 6)),
			c2: p[i+1].Sub(after.Sub(p[i]).Mul(1.0 / 6)),
		})
	}
	return out
}

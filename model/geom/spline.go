package geom

import (
	"math"
)

// Natural is a natural cubic spline through points over ascending parameters:
// its second derivative vanishes at both ends.
type Natural struct {
	s []float64
	p []Vec
	m []Vec // second derivatives at the points
}

// NewNatural fits the spline; s must ascend strictly and match p. Two points
// give the straight line.
func NewNatural(s []float64, p []Vec) Natural {
	n := len(p)
	m := make([]Vec, n)
	// The tridiagonal system of the continuous first derivative, by Thomas.
	c := make([]float64, n)
	for i := 1; i+1 < n; i++ {
		h0, h1 := s[i]-s[i-1], s[i+1]-s[i]
		d := p[i+1].Sub(p[i]).Mul(6 / h1).Sub(p[i].Sub(p[i-1]).Mul(6 / h0))
		pivot := 2*(h0+h1) - h0*c[i-1]
		c[i] = h1 / pivot
		m[i] = d.Sub(m[i-1].Mul(h0)).Mul(1 / pivot)
	}
	for i := n - 2; i > 0; i-- {
		m[i] = m[i].Sub(m[i+1].Mul(c[i]))
	}
	return Natural{s, p, m}
}

// span is the index of the span that holds s.
func span(knots []float64, s float64) int {
	lo, hi := 0, len(knots)-2
	for lo < hi {
		mid := (lo + hi + 1) / 2
		if knots[mid] <= s {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	return lo
}

// At gives the point and the first two derivatives at s.
func (n Natural) At(s float64) (p, d1, d2 Vec) {
	i := span(n.s, s)
	h := n.s[i+1] - n.s[i]
	a, b := (n.s[i+1]-s)/h, (s-n.s[i])/h
	m0, m1 := n.m[i], n.m[i+1]
	p = n.p[i].Mul(a).Add(n.p[i+1].Mul(b)).
		Add(m0.Mul((a*a*a - a) * h * h / 6)).Add(m1.Mul((b*b*b - b) * h * h / 6))
	d1 = n.p[i+1].Sub(n.p[i]).Mul(1 / h).
		Sub(m0.Mul((3*a*a - 1) * h / 6)).Add(m1.Mul((3*b*b - 1) * h / 6))
	d2 = m0.Mul(a).Add(m1.Mul(b))
	return p, d1, d2
}

// Monotone is the monotone piecewise cubic interpolant of F. N. Fritsch and
// J. Butland, "A method for constructing local monotone piecewise cubic
// interpolants", SIAM J. Sci. Stat. Comput. 5 (1984): at an inner knot the slope
// is the weighted harmonic mean of the neighbouring slopes, or zero where they
// differ in sign; at the ends a three-point formula that keeps the shape.
type Monotone struct{ s, y, d []float64 }

// NewMonotone fits the interpolant; s must ascend strictly and match y.
func NewMonotone(s, y []float64) Monotone {
	n := len(y)
	d := make([]float64, n)
	h := make([]float64, n-1)
	m := make([]float64, n-1)
	for i := range h {
		h[i] = s[i+1] - s[i]
		m[i] = (y[i+1] - y[i]) / h[i]
	}
	if n == 2 {
		d[0], d[1] = m[0], m[0]
		return Monotone{s, y, d}
	}
	for i := 1; i+1 < n; i++ {
		if m[i-1]*m[i] <= 0 {
			continue
		}
		w1, w2 := 2*h[i]+h[i-1], h[i]+2*h[i-1]
		d[i] = (w1 + w2) / (w1/m[i-1] + w2/m[i])
	}
	d[0] = monotoneEnd(h[0], h[1], m[0], m[1])
	d[n-1] = monotoneEnd(h[n-2], h[n-3], m[n-2], m[n-3])
	return Monotone{s, y, d}
}

// monotoneEnd is the one-sided slope at an end, limited so that the shape holds.
func monotoneEnd(h0, h1, m0, m1 float64) float64 {
	d := ((2*h0+h1)*m0 - h0*m1) / (h0 + h1)
	switch {
	case d*m0 <= 0:
		return 0
	case m0*m1 <= 0 && math.Abs(d) > 3*math.Abs(m0):
		return 3 * m0
	}
	return d
}

// At gives the value and its derivative at s.
func (f Monotone) At(s float64) (y, dy float64) {
	i := span(f.s, s)
	h := f.s[i+1] - f.s[i]
	t := (s - f.s[i]) / h
	y0, y1, d0, d1 := f.y[i], f.y[i+1], f.d[i]*h, f.d[i+1]*h
	c2 := 3*(y1-y0) - 2*d0 - d1
	c3 := 2*(y0-y1) + d0 + d1
	return y0 + t*(d0+t*(c2+t*c3)), (d0 + t*(2*c2+t*3*c3)) / h
}

// second is the second derivative at s, from the right at a knot.
func (f Monotone) second(s float64) float64 {
	i := span(f.s, s)
	h := f.s[i+1] - f.s[i]
	t := (s - f.s[i]) / h
	y0, y1, d0, d1 := f.y[i], f.y[i+1], f.d[i]*h, f.d[i+1]*h
	return (2*(3*(y1-y0)-2*d0-d1) + 6*t*(2*(y0-y1)+d0+d1)) / (h * h)
}

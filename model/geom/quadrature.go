package geom

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// gauss16 is the Gauss-Legendre rule of sixteen points on [0, 1].
var gauss16 = func() (g struct{ x, w [16]float64 }) {
	quad.Legendre{}.FixedLocations(g.x[:], g.w[:], 0, 1)
	return g
}()

// speedIntegral is the length of c by sixteen Gauss points on each of n equal
// parts.
func speedIntegral(c Curve, n int) float64 {
	sum, h := 0.0, 1/float64(n)
	for i := range n {
		for k, x := range gauss16.x {
			sum += gauss16.w[k] * c.Deriv((float64(i)+x)*h).Norm()
		}
	}
	return sum * h
}

// bulgeBy3 is the signed area between c from t0 to t1 and its chord by three
// Gauss points: the integral of (p - p0) x dp over two, to the right positive.
func bulgeBy3(c Curve, t0, t1 float64) float64 {
	p0 := c.At(t0)
	h := (t1 - t0) / 2
	m := (t0 + t1) / 2
	off := h * math.Sqrt(0.6)
	f := func(t float64) float64 { return c.At(t).Sub(p0).Cross(c.Deriv(t)) }
	return h * (5*f(m-off) + 8*f(m) + 5*f(m+off)) / 18
}

package geom

import "math"

// Cubic is a Bézier span of third degree with its four control points.
type Cubic struct{ P0, P1, P2, P3 Vec }

// At is the point at t, by de Casteljau's scheme.
func (c Cubic) At(t float64) Vec {
	if t == 1 {
		return c.P3
	}
	a, b, d := c.P0.Lerp(c.P1, t), c.P1.Lerp(c.P2, t), c.P2.Lerp(c.P3, t)
	a, b = a.Lerp(b, t), b.Lerp(d, t)
	return a.Lerp(b, t)
}

// Deriv is the derivative at t.
func (c Cubic) Deriv(t float64) Vec {
	a, b, d := c.P1.Sub(c.P0), c.P2.Sub(c.P1), c.P3.Sub(c.P2)
	return a.Lerp(b, t).Lerp(b.Lerp(d, t), t).Mul(3)
}

func (c Cubic) second(t float64) Vec {
	a := c.P0.Sub(c.P1).Add(c.P2.Sub(c.P1))
	b := c.P1.Sub(c.P2).Add(c.P3.Sub(c.P2))
	return a.Lerp(b, t).Mul(6)
}

// Curvature is the signed curvature at t.
func (c Cubic) Curvature(t float64) float64 { return curvature(c.Deriv(t), c.second(t)) }

// Length is the arc length by Gauss-Legendre quadrature.
func (c Cubic) Length() float64 { return speedIntegral(c, 8) }

// Bounds is the smallest box.
func (c Cubic) Bounds() Box {
	b := EmptyBox().Include(c.P0).Include(c.P3)
	if b.Contains(c.P1) && b.Contains(c.P2) {
		return b
	}
	// Roots of the derivative, a quadratic in each coordinate.
	for _, q := range [2][4]float64{{c.P0.X, c.P1.X, c.P2.X, c.P3.X}, {c.P0.Y, c.P1.Y, c.P2.Y, c.P3.Y}} {
		d0, d1, d2 := q[1]-q[0], q[2]-q[1], q[3]-q[2]
		for _, t := range quadratic(d0-2*d1+d2, 2*(d1-d0), d0) {
			if t > 0 && t < 1 {
				b = b.Include(c.At(t))
			}
		}
	}
	return b
}

// Sub is the part from t0 to t1, a cubic again (blossoming).
func (c Cubic) Sub(t0, t1 float64) Curve {
	p0, p3 := c.At(t0), c.At(t1)
	d := (t1 - t0) / 3
	return Cubic{p0, p0.Add(c.Deriv(t0).Mul(d)), p3.Sub(c.Deriv(t1).Mul(d)), p3}
}

// Reversed runs the other way.
func (c Cubic) Reversed() Curve { return Cubic{c.P3, c.P2, c.P1, c.P0} }

// Moved is the cubic turned about the origin and moved.
func (c Cubic) Moved(rad float64, d Vec) Curve {
	return Cubic{c.P0.Turn(rad).Add(d), c.P1.Turn(rad).Add(d), c.P2.Turn(rad).Add(d), c.P3.Turn(rad).Add(d)}
}

// bulge integrates (p - p0) x dp / 2; the integrand is of fifth degree, so that
// three Gauss points are exact.
func (c Cubic) bulge(t0, t1 float64) float64 {
	return bulgeBy3(c, t0, t1)
}

// quadratic gives the real roots of a t² + b t + c.
func quadratic(a, b, c float64) []float64 {
	if a == 0 {
		if b == 0 {
			return nil
		}
		return []float64{-c / b}
	}
	disc := b*b - 4*a*c
	if disc < 0 {
		return nil
	}
	q := -(b + math.Copysign(math.Sqrt(disc), b)) / 2
	if q == 0 {
		return []float64{0}
	}
	return []float64{q / a, c / q}
}

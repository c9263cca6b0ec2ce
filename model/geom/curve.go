package geom

// Curve is an exact plane curve, run from t = 0 to t = 1. Its kinds are [Line],
// [Arc], [Cubic], [EllipseArc] and [Parallel]. Curves are values.
type Curve interface {
	// At is the point at t.
	At(t float64) Vec
	// Deriv is the derivative of At by t, in millimetres.
	Deriv(t float64) Vec
	// Curvature is the signed curvature at t, in 1/mm, positive where the
	// curve turns left; 0 where the derivative vanishes.
	Curvature(t float64) float64
	// Length is the length of the whole curve.
	Length() float64
	// Bounds is a box that holds the curve; it need not be the smallest one.
	Bounds() Box
	// Sub is the part from t0 to t1, run from t = 0 to t = 1.
	Sub(t0, t1 float64) Curve
	// Reversed is the curve run the other way.
	Reversed() Curve
	// Moved is the curve turned about the origin by rad and then moved by d.
	Moved(rad float64, d Vec) Curve
	// bulge is the signed area between the part from t0 to t1 and its chord,
	// positive when the part lies to the right of its chord, as an edge that
	// bows outward does on a counter-clockwise loop.
	bulge(t0, t1 float64) float64
}

// Tangent is the unit direction of travel of c at t. Where the derivative
// vanishes, it is the direction toward (or, at the end, from) a nearby point.
func Tangent(c Curve, t float64) Vec {
	if d := c.Deriv(t); d.Norm() > 1e-9 {
		return d.Unit()
	}
	const step = 1e-3
	if t+step <= 1 {
		return c.At(t + step).Sub(c.At(t)).Unit()
	}
	return c.At(t).Sub(c.At(t - step)).Unit()
}

// Normal is the unit normal of c at t, to the left of the direction of travel.
func Normal(c Curve, t float64) Vec { return Tangent(c, t).Left() }

// curvature is the signed curvature from the first two derivatives.
func curvature(d1, d2 Vec) float64 {
	n := d1.Norm()
	if n < 1e-9 {
		return 0
	}
	return d1.Cross(d2) / (n * n * n)
}

// Partial is the length of c from 0 to t.
func Partial(c Curve, t float64) float64 {
	if t <= 0 {
		return 0
	}
	return c.Sub(0, t).Length()
}

// AtLength is the parameter at which the length of c from its start is s,
// clamped to [0, 1].
func AtLength(c Curve, s float64) float64 {
	total := c.Length()
	switch {
	case !(s > 0) || total == 0:
		return 0
	case s >= total:
		return 1
	}
	switch c.(type) {
	case Line, Arc:
		return s / total
	}
	lo, hi, t := 0.0, 1.0, s/total
	for range 60 {
		f := Partial(c, t) - s
		if f > 0 {
			hi = t
		} else {
			lo = t
		}
		v := c.Deriv(t).Norm()
		next := t - f/v
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		if next == t || hi-lo < 1e-15 {
			break
		}
		t = next
	}
	return t
}

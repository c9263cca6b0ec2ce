package geom

// Parallel is the curve at the distance D to the left of Base (to the right
// when negative). Where D exceeds the radius of curvature it has cusps.
type Parallel struct {
	Base Curve
	D    float64
}

// At is the point at t.
func (p Parallel) At(t float64) Vec { return p.Base.At(t).Add(Normal(p.Base, t).Mul(p.D)) }

// Deriv is the base's derivative times 1 - D curvature.
func (p Parallel) Deriv(t float64) Vec {
	return p.Base.Deriv(t).Mul(1 - p.D*p.Base.Curvature(t))
}

// Curvature is the base's, scaled.
func (p Parallel) Curvature(t float64) float64 {
	k := p.Base.Curvature(t)
	if f := 1 - p.D*k; f != 0 {
		return k / f
	}
	return 0
}

// Length is the arc length by Gauss-Legendre quadrature.
func (p Parallel) Length() float64 { return speedIntegral(p, 16) }

// Bounds is the base's box, grown.
func (p Parallel) Bounds() Box {
	d := p.D
	if d < 0 {
		d = -d
	}
	return p.Base.Bounds().Grow(d)
}

// Sub is the part from t0 to t1.
func (p Parallel) Sub(t0, t1 float64) Curve { return Parallel{p.Base.Sub(t0, t1), p.D} }

// Reversed runs the other way.
func (p Parallel) Reversed() Curve { return Parallel{p.Base.Reversed(), -p.D} }

// Moved is the curve turned about the origin and moved.
func (p Parallel) Moved(rad float64, d Vec) Curve { return Parallel{p.Base.Moved(rad, d), p.D} }

func (p Parallel) bulge(t0, t1 float64) float64 {
	mid := (t0 + t1) / 2
	// Halves keep the rule's error far below rounding for any flattening step.
	tri := p.At(mid).Sub(p.At(t0)).Cross(p.At(t1).Sub(p.At(t0))) / 2
	return bulgeBy3(p, t0, mid) + bulgeBy3(p, mid, t1) + tri
}

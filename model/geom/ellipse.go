package geom

import "math"

// EllipseArc is an arc of the ellipse with semi-axes A (along the direction
// Rot) and B, from the eccentric angle Start through Sweep, in radians,
// counter-clockwise positive.
type EllipseArc struct {
	Centre       Vec
	A, B         float64
	Rot          float64
	Start, Sweep float64
}

// At is the point at t.
func (e EllipseArc) At(t float64) Vec {
	s, c := math.Sincos(e.Start + t*e.Sweep)
	return e.Centre.Add(Vec{e.A * c, e.B * s}.Turn(e.Rot))
}

// Deriv is the derivative at t.
func (e EllipseArc) Deriv(t float64) Vec {
	s, c := math.Sincos(e.Start + t*e.Sweep)
	return Vec{-e.A * s, e.B * c}.Turn(e.Rot).Mul(e.Sweep)
}

// Curvature is a b / (a² sin² + b² cos²)^(3/2), negative for a clockwise arc.
func (e EllipseArc) Curvature(t float64) float64 {
	s, c := math.Sincos(e.Start + t*e.Sweep)
	q := math.Hypot(e.A*s, e.B*c)
	if q == 0 {
		return 0
	}
	return math.Copysign(e.A*e.B/(q*q*q), e.Sweep)
}

// Length is the elliptic integral by Gauss-Legendre quadrature.
func (e EllipseArc) Length() float64 {
	if e.A == e.B {
		return e.A * math.Abs(e.Sweep)
	}
	return speedIntegral(e, 1+int(math.Abs(e.Sweep)/(math.Pi/8)))
}

// Bounds is the smallest box.
func (e EllipseArc) Bounds() Box {
	b := EmptyBox().Include(e.At(0)).Include(e.At(1))
	if math.Abs(e.Sweep) > 1e6 {
		return b.Include(e.Centre).Grow(math.Hypot(e.A, e.B))
	}
	s, c := math.Sincos(e.Rot)
	// x is greatest where tan u = -B/A tan rot, y where tan u = B/A cot rot.
	for _, u0 := range [2]float64{math.Atan2(-e.B*s, e.A*c), math.Atan2(e.B*c, e.A*s)} {
		lo, hi := e.Start, e.Start+e.Sweep
		if lo > hi {
			lo, hi = hi, lo
		}
		for u := u0 + math.Pi*math.Ceil((lo-u0)/math.Pi); u <= hi; u += math.Pi {
			b = b.Include(e.At((u - e.Start) / e.Sweep))
		}
	}
	return b
}

// Sub is the part from t0 to t1.
func (e EllipseArc) Sub(t0, t1 float64) Curve {
	e.Start, e.Sweep = e.Start+t0*e.Sweep, (t1-t0)*e.Sweep
	return e
}

// Reversed runs the other way.
func (e EllipseArc) Reversed() Curve {
	e.Start, e.Sweep = e.Start+e.Sweep, -e.Sweep
	return e
}

// Moved is the arc turned about the origin and moved.
func (e EllipseArc) Moved(rad float64, d Vec) Curve {
	e.Centre, e.Rot = e.Centre.Turn(rad).Add(d), e.Rot+rad
	return e
}

func (e EllipseArc) bulge(t0, t1 float64) float64 {
	return e.A * e.B * segment((t1-t0)*e.Sweep)
}

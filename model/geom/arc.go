package geom

import "math"

// Arc is a circular arc: the points of the circle from the angle Start through
// Sweep, both in radians, counter-clockwise positive.
type Arc struct {
	Centre       Vec
	Radius       float64
	Start, Sweep float64
}

// ArcByRise is the arc from a to b whose middle stands off the chord by rise to
// the right of the direction of travel (to the left when negative). A rise of
// zero, and points that coincide, give the chord. The half angle at the centre
// is 2 atan(2 rise / chord): see the circular segment in any mensuration
// handbook.
func ArcByRise(a, b Vec, rise float64) Curve {
	chord := a.Dist(b)
	// Beyond this the arc is straight within a nanometre and its centre lost.
	if math.Abs(rise) < 1e-9 || chord < 1e-9 {
		return Line{a, b}
	}
	half := 2 * math.Atan(2*rise/chord)
	r := (chord*chord/4 + rise*rise) / (2 * math.Abs(rise))
	right := b.Sub(a).Unit().Left().Mul(-1)
	toCentre := rise - math.Copysign(r, rise)
	c := a.Lerp(b, 0.5).Add(right.Mul(toCentre))
	from := a.Sub(c)
	return Arc{Centre: c, Radius: r, Start: math.Atan2(from.Y, from.X), Sweep: 2 * half}
}

// Circle is the full circle, run counter-clockwise from its rightmost point.
func Circle(centre Vec, radius float64) Arc {
	return Arc{Centre: centre, Radius: radius, Sweep: 2 * math.Pi}
}

// At is the point at t.
func (a Arc) At(t float64) Vec {
	s, c := math.Sincos(a.Start + t*a.Sweep)
	return Vec{a.Centre.X + a.Radius*c, a.Centre.Y + a.Radius*s}
}

// Deriv is the derivative at t.
func (a Arc) Deriv(t float64) Vec {
	s, c := math.Sincos(a.Start + t*a.Sweep)
	return Vec{-s, c}.Mul(a.Radius * a.Sweep)
}

// Curvature is one over the radius, negative for a clockwise arc.
func (a Arc) Curvature(float64) float64 {
	if a.Radius == 0 {
		return 0
	}
	return math.Copysign(1/a.Radius, a.Sweep)
}

// Length is the radius times the sweep.
func (a Arc) Length() float64 { return a.Radius * math.Abs(a.Sweep) }

// Bounds is the smallest box.
func (a Arc) Bounds() Box {
	return EllipseArc{a.Centre, a.Radius, a.Radius, 0, a.Start, a.Sweep}.Bounds()
}

// Sub is the part from t0 to t1.
func (a Arc) Sub(t0, t1 float64) Curve {
	return Arc{a.Centre, a.Radius, a.Start + t0*a.Sweep, (t1 - t0) * a.Sweep}
}

// Reversed runs the other way.
func (a Arc) Reversed() Curve {
	return Arc{a.Centre, a.Radius, a.Start + a.Sweep, -a.Sweep}
}

// Moved is the arc turned about the origin and moved.
func (a Arc) Moved(rad float64, d Vec) Curve {
	return Arc{a.Centre.Turn(rad).Add(d), a.Radius, a.Start + rad, a.Sweep}
}

// nearest is the parameter of the arc's point nearest to p, and its distance.
func (a Arc) nearest(p Vec) (t, dist float64) {
	d := p.Sub(a.Centre)
	way := math.Mod((math.Atan2(d.Y, d.X)-a.Start)*math.Copysign(1, a.Sweep), 2*math.Pi)
	if way < 0 {
		way += 2 * math.Pi
	}
	if way <= math.Abs(a.Sweep) {
		return way / math.Abs(a.Sweep), math.Abs(d.Norm() - a.Radius)
	}
	from, to := a.At(0).Dist(p), a.At(1).Dist(p)
	if from <= to {
		return 0, from
	}
	return 1, to
}

func (a Arc) bulge(t0, t1 float64) float64 {
	return a.Radius * a.Radius * segment((t1-t0)*a.Sweep)
}

// segment is (x - sin x)/2, the area of a unit circle's segment of angle x,
// without loss of digits for small angles.
func segment(x float64) float64 {
	if math.Abs(x) > 0.5 {
		return (x - math.Sin(x)) / 2
	}
	// The Taylor series of x - sin x; at 0.5 the first term left out is 4e-19.
	term, sum := x*x*x/6, 0.0
	for k := 5.0; k <= 19; k += 2 {
		sum += term
		term *= -x * x / ((k - 1) * k)
	}
	return sum / 2
}

package geom

// Line is the straight curve from A to B.
type Line struct{ A, B Vec }

// At is the point t of the way from A to B.
func (l Line) At(t float64) Vec {
	if t == 1 {
		return l.B
	}
	return l.A.Lerp(l.B, t)
}

// Deriv is the vector from A to B.
func (l Line) Deriv(float64) Vec { return l.B.Sub(l.A) }

// Curvature is 0.
func (l Line) Curvature(float64) float64 { return 0 }

// Length is the distance from A to B.
func (l Line) Length() float64 { return l.A.Dist(l.B) }

// Bounds is the smallest box.
func (l Line) Bounds() Box { return EmptyBox().Include(l.A).Include(l.B) }

// Sub is the part from t0 to t1.
func (l Line) Sub(t0, t1 float64) Curve { return Line{l.At(t0), l.At(t1)} }

// Reversed runs from B to A.
func (l Line) Reversed() Curve { return Line{l.B, l.A} }

// Moved is the line turned about the origin and moved.
func (l Line) Moved(rad float64, d Vec) Curve {
	return Line{l.A.Turn(rad).Add(d), l.B.Turn(rad).Add(d)}
}

func (l Line) bulge(t0, t1 float64) float64 { return 0 }

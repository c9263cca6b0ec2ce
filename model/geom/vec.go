package geom

import "math"

// Vec is a point or vector in the plane, in millimetres.
type Vec struct{ X, Y float64 }

// Add is a + b.
func (a Vec) Add(b Vec) Vec { return Vec{a.X + b.X, a.Y + b.Y} }

// Sub is a - b.
func (a Vec) Sub(b Vec) Vec { return Vec{a.X - b.X, a.Y - b.Y} }

// Mul is a scaled by f.
func (a Vec) Mul(f float64) Vec { return Vec{a.X * f, a.Y * f} }

// Dot is the inner product.
func (a Vec) Dot(b Vec) float64 { return float64(a.X*b.X) + float64(a.Y*b.Y) }

// Cross is the z part of the outer product. The products are rounded before
// they are subtracted (no fused multiply-add), so that dependent vectors give
// exactly 0 on every platform.
func (a Vec) Cross(b Vec) float64 { return float64(a.X*b.Y) - float64(a.Y*b.X) }

// Norm is the length of a.
func (a Vec) Norm() float64 { return math.Hypot(a.X, a.Y) }

// Unit is a scaled to length 1; the zero vector stays zero.
func (a Vec) Unit() Vec {
	n := a.Norm()
	if n == 0 {
		return Vec{}
	}
	return Vec{a.X / n, a.Y / n}
}

// Left is a turned by 90 degrees counter-clockwise.
func (a Vec) Left() Vec { return Vec{-a.Y, a.X} }

// Turn is a turned counter-clockwise by rad.
func (a Vec) Turn(rad float64) Vec {
	s, c := math.Sincos(rad)
	return Vec{float64(a.X*c) - float64(a.Y*s), float64(a.X*s) + float64(a.Y*c)}
}

// Lerp is the point t of the way from a to b.
func (a Vec) Lerp(b Vec, t float64) Vec { return a.Add(b.Sub(a).Mul(t)) }

// Dist is the distance between two points.
func (a Vec) Dist(b Vec) float64 { return a.Sub(b).Norm() }

// Finite reports whether neither part is NaN or infinite.
func (a Vec) Finite() bool {
	return !math.IsNaN(a.X-a.X) && !math.IsNaN(a.Y-a.Y)
}

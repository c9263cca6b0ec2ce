package picture

import "math"

// v3 is a point, direction or colour.
type v3 struct{ X, Y, Z float64 }

func (a v3) add(b v3) v3              { return v3{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }
func (a v3) sub(b v3) v3              { return v3{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }
func (a v3) mul(f float64) v3         { return v3{a.X * f, a.Y * f, a.Z * f} }
func (a v3) times(b v3) v3            { return v3{a.X * b.X, a.Y * b.Y, a.Z * b.Z} }
func (a v3) dot(b v3) float64         { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }
func (a v3) norm() float64            { return math.Sqrt(a.dot(a)) }
func (a v3) along(d v3, t float64) v3 { return v3{a.X + d.X*t, a.Y + d.Y*t, a.Z + d.Z*t} }
func (a v3) most() float64            { return max(a.X, max(a.Y, a.Z)) }

func (a v3) cross(b v3) v3 {
	return v3{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

func (a v3) unit() v3 {
	n := a.norm()
	if n == 0 {
		return v3{Z: 1}
	}
	return a.mul(1 / n)
}

func (a v3) mix(b v3, t float64) v3 { return a.mul(1 - t).add(b.mul(t)) }

// luma is the relative luminance (IEC 61966-2-1 primaries).
func (a v3) luma() float64 { return 0.2126*a.X + 0.7152*a.Y + 0.0722*a.Z }

// mirrored is direction d (toward the surface) reflected about normal n.
func (d v3) mirrored(n v3) v3 { return d.sub(n.mul(2 * d.dot(n))) }

// frame gives two unit vectors that make a right-handed frame with n (Duff and
// others, Building an Orthonormal Basis, Revisited, 2017).
func frame(n v3) (u, v v3) {
	s := math.Copysign(1, n.Z)
	a := -1 / (s + n.Z)
	b := n.X * n.Y * a
	return v3{1 + s*n.X*n.X*a, s * b, -s * n.X}, v3{b, s + n.Y*n.Y*a, -n.Y}
}

// ray is a half line; d has length 1.
type ray struct{ o, d v3 }

func (r ray) at(t float64) v3 { return r.o.along(r.d, t) }

package picture

import (
	"errors"
	"math"
)

// camera turns pixels into rays. A place of the picture is in pixels from its
// upper left corner, x to the right and y down; the middle of a pixel lies at
// halves.
type camera struct {
	eye v3
	fwd v3 // the way a plan looks
	// base is the direction through the upper left corner, dx and dy what a
	// pixel to the right and one down add to it; in a plan, the same of places.
	base, dx, dy v3
	rows         [3]v3 // of the inverse: a direction to homogeneous pixels
	w, h         int
	k            float64 // width of a pixel at distance 1; in a plan, in mm
	plan         bool
}

// planCamera looks straight down with k millimetres to the pixel; eye is above
// the middle of the picture.
func planCamera(eye v3, k float64, w, h int) camera {
	return camera{eye: eye, fwd: v3{Z: -1}, w: w, h: h, k: k, plan: true,
		base: v3{eye.X - float64(w)/2*k, eye.Y + float64(h)/2*k, eye.Z}, dx: v3{X: k}, dy: v3{Y: -k}}
}

// eyeCamera looks from eye along fwd, upright; k is the width of a pixel at
// distance 1.
func eyeCamera(eye, fwd v3, k float64, w, h int) camera {
	right := fwd.cross(v3{Z: 1}).unit()
	down := fwd.cross(right)
	c := camera{eye: eye, w: w, h: h, k: k, dx: right.mul(k), dy: down.mul(k)}
	c.base = fwd.along(c.dx, -float64(w)/2).along(c.dy, -float64(h)/2)
	c.rows = [3]v3{right.mul(1 / k), down.mul(1 / k), fwd}
	c.rows[0] = c.rows[0].along(fwd, float64(w)/2)
	c.rows[1] = c.rows[1].along(fwd, float64(h)/2)
	return c
}

// ray is the ray through a place of the picture.
func (c *camera) ray(x, y float64) ray {
	q := c.base.along(c.dx, x).along(c.dy, y)
	if c.plan {
		return ray{q, c.fwd}
	}
	return ray{c.eye, q.unit()}
}

// footprint is how wide a pixel is, in mm, at distance t.
func (c *camera) footprint(t float64) float64 {
	if c.plan {
		return c.k
	}
	return c.k * t
}

// project finds the pixel at which a point is seen.
func (c *camera) project(p v3) (x, y float64, ok bool) {
	if c.plan {
		q := p.sub(c.base)
		return q.X / c.k, -q.Y / c.k, true
	}
	q := p.sub(c.eye)
	z := q.dot(c.rows[2])
	if z <= 1e-3 {
		return 0, 0, false
	}
	return q.dot(c.rows[0]) / z, q.dot(c.rows[1]) / z, true
}

// Projection is a camera by its 3 x 4 matrix P. A place (X, Y, Z) of the design
// in millimetres, Z = 0 the underside of the top, is seen at the pixel
// (u/w, v/w) with (u, v, w) = P (X, Y, Z, 1): x to the right and y down from the
// picture's upper left corner, the middle of a pixel at halves (Hartley and
// Zisserman, Multiple View Geometry, 6.1). Any scale of P, either sign and any
// principal point will do, also one off the picture.
type Projection [3][4]float64

// Pinhole is the projection of a camera at eye, millimetres, whose picture has
// its principal point at (cx, cy) and the focal length f, all pixels. The rows
// of turn are unit vectors in the design's axes: the camera's right, its down
// and the way it looks.
func Pinhole(eye [3]float64, turn [3][3]float64, f, cx, cy float64) Projection {
	var p Projection
	for k := range 3 {
		p[0][k] = f*turn[0][k] + cx*turn[2][k]
		p[1][k] = f*turn[1][k] + cy*turn[2][k]
		p[2][k] = turn[2][k]
	}
	for i := range 3 {
		for k := range 3 {
			p[i][3] -= p[i][k] * eye[k]
		}
	}
	return p
}

// check refuses a matrix that is the projection of no camera.
func (p *Projection) check() error {
	r := p.left()
	n := 1.0
	for i := range 3 {
		for k := range 4 {
			if x := p[i][k]; math.IsNaN(x) || math.IsInf(x, 0) {
				return errors.New("the camera's projection holds a value that is no number: mark the corners anew")
			}
		}
		n *= r[i].norm()
	}
	// The volume that the three rows span, as a share of a box of their lengths.
	if !(math.Abs(r[0].cross(r[1]).dot(r[2])) > 1e-12*n) || n == 0 {
		return errors.New("the camera's projection is flat: mark corners that do not lie on one line")
	}
	return nil
}

// left is the rows of the matrix's left 3 x 3.
func (p *Projection) left() (r [3]v3) {
	for i := range 3 {
		r[i] = v3{p[i][0], p[i][1], p[i][2]}
	}
	return r
}

// camera is the camera of a picture of w x h pixels.
func (p *Projection) camera(w, h int) camera {
	r := p.left()
	det := r[0].cross(r[1]).dot(r[2])
	// In front of the eye w is positive when the determinant is.
	s := math.Copysign(1/r[2].norm(), det)
	for i := range r {
		r[i] = r[i].mul(s)
	}
	det = r[0].cross(r[1]).dot(r[2])
	last := v3{p[0][3] * s, p[1][3] * s, p[2][3] * s}
	// The inverse's columns.
	a, b, c := r[1].cross(r[2]).mul(1/det), r[2].cross(r[0]).mul(1/det), r[0].cross(r[1]).mul(1/det)
	cam := camera{w: w, h: h, rows: r, dx: a, dy: b, base: c}
	cam.eye = a.mul(-last.X).add(b.mul(-last.Y)).add(c.mul(-last.Z))
	mid := cam.base.along(a, float64(w)/2).along(b, float64(h)/2)
	cam.k = math.Sqrt(a.norm()*b.norm()) / mid.norm()
	return cam
}

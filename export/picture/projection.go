package picture

import "math"

// Projection is the camera of a view of this set from an eye, so any but straight
// down, for a picture of w x h pixels: one to look through ([View.Camera]).
func (s *Set) Projection(v View, w, h int) Projection {
	c := s.camera(v, w, h)
	var p Projection
	for i, row := range c.rows {
		p[i] = [4]float64{row.X, row.Y, row.Z, -row.dot(c.eye)}
	}
	return p
}

// Window is the camera whose pixel (x, y) lies at (scale x + dx, scale y + dy): the
// same eye, a part of what it sees or more, at another size.
func (p Projection) Window(scale, dx, dy float64) Projection {
	for k := range 4 {
		p[0][k] = scale*p[0][k] + dx*p[2][k]
		p[1][k] = scale*p[1][k] + dy*p[2][k]
	}
	return p
}

// At is the pixel at which a place of the design is seen, mm; false behind the eye.
func (p Projection) At(x, y, z float64) (px, py float64, ok bool) {
	row := func(i int) float64 { return p[i][0]*x + p[i][1]*y + p[i][2]*z + p[i][3] }
	w := row(2)
	if !(math.Abs(w) > 1e-9) {
		return 0, 0, false
	}
	return row(0) / w, row(1) / w, w > 0
}

// Face is the height of the set's face above its underside, mm.
func (s *Set) Face() float64 { return s.body.t }

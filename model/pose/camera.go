package pose

import (
	"errors"
	"fmt"
	"math"

	"example.org/castwright/model/geom"
)

// Camera is what took the photograph.
type Camera struct {
	// P takes places of the rectangle's axes, mm, to homogeneous pixels. In the
	// rectangle's plane it hits the marked corners exactly.
	P [3][4]float64
	// Focal is the focal length in pixels.
	Focal float64
	// Eye is where the camera stands, in the rectangle's axes.
	Eye [3]float64
	// Miss is how far the marked corners lie from those of a rectangle of this
	// size that such a camera sees: the root mean square, in pixels.
	Miss float64
	// Strain is how far such corners and such a focal length are from what is
	// expected, in standard deviations: above 5 the size is likely not that of what
	// was marked.
	Strain float64
	// Doubt is how unsure the focal length is, as the standard deviation of its
	// logarithm: 0.1 is 10 %.
	Doubt float64
}

// Photo is what is known of a photograph.
type Photo struct {
	W, H int // pixels, as it is seen
	// Focal35 is the focal length in terms of 35 mm film, mm (EXIF 2.3, tag
	// 0xA405); 0 when it is not said.
	Focal35 float64
}

// What is held against the corners where they say little of the focal length,
// such as when the camera looked straight down: the focal length that the file
// says, or that of a telephone's main camera (24 to 28 mm in terms of film; common
// practice, no source), each with its doubt.
const (
	usualFocal35  = 26.0
	usualDoubt    = 0.30
	saidDoubt     = 0.04
	filmDiagonal  = 43.27 // of 24 x 36 mm
	markingFactor = 1.0 / 2500
)

// markingNoise is how exactly a corner is marked, in pixels: 2 in a photograph of
// 4000 x 3000.
func (p Photo) markingNoise() float64 {
	return max(0.3, math.Hypot(float64(p.W), float64(p.H))*markingFactor)
}

// guess is the focal length that is expected, in pixels, and its doubt.
func (p Photo) guess() (focal, doubt float64) {
	diagonal := math.Hypot(float64(p.W), float64(p.H))
	if p.Focal35 >= 8 && p.Focal35 <= 1200 {
		return p.Focal35 / filmDiagonal * diagonal, saidDoubt
	}
	return usualFocal35 / filmDiagonal * diagonal, usualDoubt
}

// Find is the camera that sees a rectangle of w x d millimetres with its corners
// where they were marked. Pixels are taken to be square, the principal point in
// the photograph's middle and the lens free of distortion. The focal length is
// the likeliest one for corners that are marked with some error and a camera of
// the usual kind, so that a view straight down has one too.
func Find(c Corners, w, d float64, photo Photo) (Camera, error) {
	if err := c.Check(photo.W, photo.H); err != nil {
		return Camera{}, err
	}
	if !(w >= LeastSize.MM() && w <= MostSize.MM() && d >= LeastSize.MM() && d <= MostSize.MM()) {
		return Camera{}, fmt.Errorf("what is marked can't be %g × %g mm: give 50 mm to 20 m", w, d)
	}
	flat := []geom.Vec{{X: 0, Y: 0}, {X: w, Y: 0}, {X: w, Y: -d}, {X: 0, Y: -d}}
	h, err := Homograph(flat, c[:])
	if err != nil {
		return Camera{}, err
	}
	if h.weight(flat[0]) < 0 { // seen places have a positive weight
		for i := range h {
			for j := range h[i] {
				h[i][j] = -h[i][j]
			}
		}
	}
	f := fit{flat: flat, corners: c, noise: photo.markingNoise(),
		mid: geom.Vec{X: float64(photo.W) / 2, Y: float64(photo.H) / 2}}
	guess, doubt := photo.guess()
	f.logF, f.doubt = math.Log(guess), doubt
	best, ok := f.best(h, guess)
	if !ok {
		return Camera{}, errors.New("no camera sees these corners so: mark them again, and check the size")
	}
	out := Camera{Focal: math.Exp(best.logF), Miss: f.miss(best), Strain: math.Sqrt(sumOf(f.residuals(best))), Doubt: f.doubtOf(best)}
	fitted := f.matrix(best)
	// The plane as it was marked, at the scale of the fitted camera in its middle.
	centre := geom.Vec{X: w / 2, Y: -d / 2}
	k := (fitted[2][0]*centre.X + fitted[2][1]*centre.Y + fitted[2][3]) / h.weight(centre)
	for i := range 3 {
		out.P[i] = [4]float64{h[i][0] * k, h[i][1] * k, fitted[i][2], h[i][2] * k}
	}
	for i := range 3 { // -R' t
		for j := range 3 {
			out.Eye[i] -= best.turn[j][i] * best.at[j]
		}
	}
	if !(out.Eye[2] > 0) {
		return Camera{}, errors.New("no camera above the top sees these corners so: mark them again")
	}
	return out, nil
}

// FocalOf is the focal length in pixels that the homography of a plane says, by
// the directions of its two axes being at right angles and of one length (Hartley
// and Zisserman, 8.8; Zhang, equations 3 and 4), with the principal point at mid.
// It is the least-squares answer of the two; ok is false where they have none,
// such as straight in front.
func FocalOf(h Homography, mid geom.Vec) (focal float64, ok bool) {
	var a, b [3]float64
	for i := range 3 {
		a[i], b[i] = h[i][0], h[i][1]
	}
	a[0], a[1] = a[0]-mid.X*a[2], a[1]-mid.Y*a[2]
	b[0], b[1] = b[0]-mid.X*b[2], b[1]-mid.Y*b[2]
	// p/f² + q = 0, twice. Halved, the second is the first for axes turned by 45°.
	p1, q1 := a[0]*b[0]+a[1]*b[1], a[2]*b[2]
	p2, q2 := (a[0]*a[0]+a[1]*a[1]-b[0]*b[0]-b[1]*b[1])/2, (a[2]*a[2]-b[2]*b[2])/2
	u := -(p1*q1 + p2*q2) / (p1*p1 + p2*p2)
	f := 1 / math.Sqrt(u)
	return f, u > 0 && !math.IsInf(f, 0) && !math.IsNaN(f)
}

// Project is the pixel at which a place is seen, if it lies before the camera.
func (c Camera) Project(p [3]float64) (geom.Vec, bool) { return project(c.P, p) }

func project(m [3][4]float64, p [3]float64) (geom.Vec, bool) {
	var q [3]float64
	for i := range 3 {
		q[i] = m[i][0]*p[0] + m[i][1]*p[1] + m[i][2]*p[2] + m[i][3]
	}
	out := geom.Vec{X: q[0] / q[2], Y: q[1] / q[2]}
	return out, q[2] > 1e-9 && out.Finite()
}

// OnPlane is the place of the rectangle's plane, raised by z millimetres, that is
// seen at a pixel.
func (c Camera) OnPlane(pixel geom.Vec, z float64) (geom.Vec, bool) {
	var h Homography
	for i := range 3 {
		h[i] = [3]float64{c.P[i][0], c.P[i][1], c.P[i][3] + z*c.P[i][2]}
	}
	back, ok := h.inverse()
	if !ok {
		return geom.Vec{}, false
	}
	p, ok := back.At(pixel)
	return p, ok && h.weight(p) > 0
}

// Place is where a design stands: the back left corner of its extent at (X, Y) of
// the rectangle's axes, turned counter-clockwise about it, with its face Rise
// above the rectangle.
type Place struct {
	X, Y, Turn, Rise float64 // mm and radians
}

// Placed is the projection of the places of a design whose extent is box and
// whose face lies at the height top, in the design's own axes.
func (c Camera) Placed(at Place, box geom.Box, top float64) [3][4]float64 {
	sin, cos := math.Sincos(at.Turn)
	from := geom.Vec{X: box.Min.X, Y: box.Max.Y}
	// Columns of the design's axes in the rectangle's, and of its origin.
	columns := [4][3]float64{{cos, sin, 0}, {-sin, cos, 0}, {0, 0, 1},
		{at.X - cos*from.X + sin*from.Y, at.Y - sin*from.X - cos*from.Y, at.Rise - top}}
	var out [3][4]float64
	for i := range 3 {
		for j, col := range columns {
			for k := range 3 {
				out[i][j] += c.P[i][k] * col[k]
			}
		}
		out[i][3] += c.P[i][3]
	}
	return out
}

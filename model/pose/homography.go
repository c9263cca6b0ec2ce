package pose

import (
	"errors"
	"math"

	"example.org/castwright/model/geom"
	"gonum.org/v1/gonum/mat"
)

// Homography maps a plane to another one: (u, v, w) = H (x, y, 1), and the place
// is (u/w, v/w).
type Homography [3][3]float64

var errFlat = errors.New("the places do not span a plane: at least three of them lie on one line")

// Homograph is the homography that takes each place of from to the one of to:
// exactly for four, in the sense of least squares for more (Hartley and
// Zisserman, algorithm 4.2). It refuses places that do not determine it.
func Homograph(from, to []geom.Vec) (Homography, error) {
	n := len(from)
	if n != len(to) || n < 4 {
		return Homography{}, errors.New("a homography needs four places and as many pictures of them")
	}
	a, na, ok := normalised(from)
	b, nb, fine := normalised(to)
	if !ok || !fine {
		return Homography{}, errFlat
	}
	// With four places the ninth row is 0, so that all singular vectors are had.
	m := mat.NewDense(max(9, 2*n), 9, nil)
	for i := range n {
		p, q := a[i], b[i]
		m.SetRow(2*i, []float64{0, 0, 0, -p.X, -p.Y, -1, q.Y * p.X, q.Y * p.Y, q.Y})
		m.SetRow(2*i+1, []float64{p.X, p.Y, 1, 0, 0, 0, -q.X * p.X, -q.X * p.Y, -q.X})
	}
	var svd mat.SVD
	if !svd.Factorize(m, mat.SVDFullV) {
		return Homography{}, errFlat
	}
	// A second null vector means that another homography does the same.
	s := svd.Values(nil)
	if !(s[7] > 1e-9*s[0]) {
		return Homography{}, errFlat
	}
	var v mat.Dense
	svd.VTo(&v)
	var h Homography
	for i := range 9 {
		h[i/3][i%3] = v.At(i, 8)
	}
	// Three places on one line give a matrix that crushes the plane to a line.
	if h = h.scaled(); !(math.Abs(h.det()) > 1e-9) {
		return Homography{}, errFlat
	}
	back, ok := nb.inverse()
	if h = back.times(h).times(na).scaled(); !ok || !h.finite() {
		return Homography{}, errFlat
	}
	return h, nil
}

// normalised moves places so that they lie about the origin at a mean distance
// of the root of 2 (Hartley and Zisserman, 4.4.4), with the similarity that does
// so.
func normalised(p []geom.Vec) ([]geom.Vec, Homography, bool) {
	var mid geom.Vec
	for _, q := range p {
		mid = mid.Add(q.Mul(1 / float64(len(p))))
	}
	mean := 0.0
	for _, q := range p {
		mean += q.Dist(mid) / float64(len(p))
	}
	if !(mean > 0) || math.IsInf(mean, 0) {
		return nil, Homography{}, false
	}
	k := math.Sqrt2 / mean
	out := make([]geom.Vec, len(p))
	for i, q := range p {
		out[i] = q.Sub(mid).Mul(k)
	}
	return out, Homography{{k, 0, -k * mid.X}, {0, k, -k * mid.Y}, {0, 0, 1}}, true
}

// At is the picture of a place; ok is false on the line that is seen nowhere.
func (h Homography) At(p geom.Vec) (q geom.Vec, ok bool) {
	w := h[2][0]*p.X + h[2][1]*p.Y + h[2][2]
	q = geom.Vec{
		X: (h[0][0]*p.X + h[0][1]*p.Y + h[0][2]) / w,
		Y: (h[1][0]*p.X + h[1][1]*p.Y + h[1][2]) / w,
	}
	return q, w != 0 && q.Finite()
}

// weight is w of a place: it has one sign on the side of the plane that is seen.
func (h Homography) weight(p geom.Vec) float64 { return h[2][0]*p.X + h[2][1]*p.Y + h[2][2] }

// Inverse takes pictures back to places.
func (h Homography) Inverse() (Homography, bool) { return h.inverse() }

func (h Homography) inverse() (out Homography, ok bool) {
	for i := range 3 {
		for j := range 3 {
			a, b := (j+1)%3, (j+2)%3
			c, d := (i+1)%3, (i+2)%3
			out[i][j] = h[a][c]*h[b][d] - h[a][d]*h[b][c]
		}
	}
	det := h.det()
	for i := range 3 {
		for j := range 3 {
			out[i][j] /= det
		}
	}
	return out, det != 0 && out.finite()
}

func (h Homography) det() float64 {
	return h[0][0]*(h[1][1]*h[2][2]-h[1][2]*h[2][1]) - h[0][1]*(h[1][0]*h[2][2]-h[1][2]*h[2][0]) +
		h[0][2]*(h[1][0]*h[2][1]-h[1][1]*h[2][0])
}

func (h Homography) times(o Homography) (out Homography) {
	for i := range 3 {
		for j := range 3 {
			for k := range 3 {
				out[i][j] += h[i][k] * o[k][j]
			}
		}
	}
	return out
}

// scaled makes the largest member about 1, whatever it stood for.
func (h Homography) scaled() Homography {
	most := 0.0
	for _, r := range h {
		for _, x := range r {
			most = max(most, math.Abs(x))
		}
	}
	for i := range h {
		for j := range h[i] {
			h[i][j] /= most
		}
	}
	return h
}

func (h Homography) finite() bool {
	for _, r := range h {
		for _, x := range r {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				return false
			}
		}
	}
	return true
}

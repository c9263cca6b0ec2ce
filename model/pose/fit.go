package pose

import (
	"math"

	"example.org/castwright/model/geom"
	"gonum.org/v1/gonum/mat"
)

// fit searches the focal length, turn and place of a camera that make the sum of
// squares least: how far the corners are missed, in terms of how exactly they are
// marked, and how far the focal length's logarithm is from the one expected, in
// terms of its doubt.
type fit struct {
	flat        []geom.Vec // corners of the rectangle, mm
	corners     Corners
	mid         geom.Vec
	noise       float64 // pixels
	logF, doubt float64
}

// state is a camera: q = turn p + at.
type state struct {
	logF float64
	turn [3][3]float64
	at   [3]float64
}

// unknowns are the logarithm of the focal length, a turn about three axes and a
// shift; the rest are two for each corner and the focal length's.
const (
	unknowns  = 7
	residuals = 9
)

// best starts from the focal length that the corners say and from the expected
// one, and takes the better end.
func (f *fit) best(h Homography, guess float64) (state, bool) {
	starts := []float64{guess, guess / 1.6, guess * 1.6}
	if said, ok := FocalOf(h, f.mid); ok && said > guess/8 && said < guess*8 {
		starts = append(starts, said)
	}
	var out state
	least, found := math.Inf(1), false
	for _, focal := range starts {
		s, ok := f.start(h, focal)
		if !ok {
			continue
		}
		s, sum := f.descend(s)
		if sum < least {
			out, least, found = s, sum, true
		}
	}
	return out, found
}

// start is the camera of a homography for a focal length (Zhang, 3.1).
func (f *fit) start(h Homography, focal float64) (state, bool) {
	var col [3][3]float64
	for j := range 3 {
		col[j] = [3]float64{(h[0][j] - f.mid.X*h[2][j]) / focal, (h[1][j] - f.mid.Y*h[2][j]) / focal, h[2][j]}
	}
	k := 2 / (norm(col[0]) + norm(col[1]))
	if math.IsInf(k, 0) || math.IsNaN(k) {
		return state{}, false
	}
	a, b := unit(col[0]), unit(col[1])
	// Turned by the same angle until they are at right angles.
	p, q := unit(add(a, b, 1)), unit(add(a, b, -1))
	a, b = scale(add(p, q, 1), math.Sqrt2/2), scale(add(p, q, -1), math.Sqrt2/2)
	c := cross(a, b)
	s := state{logF: math.Log(focal), at: scale(col[2], k)}
	for i := range 3 {
		s.turn[i] = [3]float64{a[i], b[i], c[i]}
	}
	return s, true
}

// matrix is the projection of a camera.
func (f *fit) matrix(s state) (p [3][4]float64) {
	focal := math.Exp(s.logF)
	for j := range 4 {
		col := s.at
		if j < 3 {
			col = [3]float64{s.turn[0][j], s.turn[1][j], s.turn[2][j]}
		}
		p[0][j] = focal*col[0] + f.mid.X*col[2]
		p[1][j] = focal*col[1] + f.mid.Y*col[2]
		p[2][j] = col[2]
	}
	return p
}

func (f *fit) residuals(s state) (out [residuals]float64) {
	m := f.matrix(s)
	for i, p := range f.flat {
		q, ok := project(m, [3]float64{p.X, p.Y, 0})
		if !ok {
			q = geom.Vec{X: 1e9, Y: 1e9}
		}
		d := q.Sub(f.corners[i]).Mul(1 / f.noise)
		out[2*i], out[2*i+1] = d.X, d.Y
	}
	out[8] = (s.logF - f.logF) / f.doubt
	return out
}

func sumOf(r [residuals]float64) (sum float64) {
	for _, x := range r {
		sum += x * x
	}
	return sum
}

// miss is the root mean square distance of the corners, in pixels.
func (f *fit) miss(s state) float64 {
	r := f.residuals(s)
	r[8] = 0
	return math.Sqrt(sumOf(r)/4) * f.noise
}

// step is a camera after a small change of its unknowns.
func (s state) step(d []float64, far float64) state {
	s.logF += d[0]
	s.turn = turned([3]float64{d[1], d[2], d[3]}, s.turn)
	for i := range 3 {
		s.at[i] += d[4+i] * far
	}
	return s
}

// slopes is the matrix of the residuals' derivatives, by central differences.
func (f *fit) slopes(s state) *mat.Dense {
	const h = 1e-6
	j := mat.NewDense(residuals, unknowns, nil)
	far := norm(s.at)
	for k := range unknowns {
		d := make([]float64, unknowns)
		d[k] = h
		up := f.residuals(s.step(d, far))
		d[k] = -h
		down := f.residuals(s.step(d, far))
		for i := range residuals {
			j.Set(i, k, (up[i]-down[i])/(2*h))
		}
	}
	return j
}

// descend is the method of Levenberg and Marquardt (Hartley and Zisserman,
// appendix 6.2).
func (f *fit) descend(s state) (state, float64) {
	r := f.residuals(s)
	sum, damping := sumOf(r), 1e-3
	for range 60 {
		j := f.slopes(s)
		var n, g mat.Dense
		n.Mul(j.T(), j)
		g.Mul(j.T(), mat.NewDense(residuals, 1, r[:]))
		better := false
		for range 12 {
			a := mat.DenseCopyOf(&n)
			for k := range unknowns {
				a.Set(k, k, n.At(k, k)*(1+damping)+1e-12)
			}
			var d mat.Dense
			if err := d.Solve(a, &g); err == nil {
				step := make([]float64, unknowns)
				for k := range unknowns {
					step[k] = -d.At(k, 0)
				}
				next := s.step(step, norm(s.at))
				nr := f.residuals(next)
				if t := sumOf(nr); t < sum {
					better = sum-t > 1e-12*(1+sum)
					s, r, sum, damping = next, nr, t, max(damping/9, 1e-12)
					break
				}
			}
			damping *= 7
		}
		if !better {
			break
		}
	}
	return s, sum
}

// doubtOf is the standard deviation of the focal length's logarithm, from the
// inverse of the normal matrix.
func (f *fit) doubtOf(s state) float64 {
	j := f.slopes(s)
	var n, inv mat.Dense
	n.Mul(j.T(), j)
	if err := inv.Inverse(&n); err != nil || !(inv.At(0, 0) > 0) {
		return f.doubt
	}
	return min(f.doubt, math.Sqrt(inv.At(0, 0)))
}

// turned turns the rows' columns by the rotation vector v (Rodrigues).
func turned(v [3]float64, m [3][3]float64) [3][3]float64 {
	angle := norm(v)
	if angle < 1e-15 {
		return m
	}
	k := scale(v, 1/angle)
	sin, cos := math.Sincos(angle)
	var out [3][3]float64
	for j := range 3 {
		c := [3]float64{m[0][j], m[1][j], m[2][j]}
		kc, dot := cross(k, c), k[0]*c[0]+k[1]*c[1]+k[2]*c[2]
		for i := range 3 {
			out[i][j] = c[i]*cos + kc[i]*sin + k[i]*dot*(1-cos)
		}
	}
	return out
}

func norm(a [3]float64) float64 { return math.Sqrt(a[0]*a[0] + a[1]*a[1] + a[2]*a[2]) }

func scale(a [3]float64, k float64) [3]float64 { return [3]float64{a[0] * k, a[1] * k, a[2] * k} }

func unit(a [3]float64) [3]float64 { return scale(a, 1/norm(a)) }

func add(a, b [3]float64, k float64) [3]float64 {
	return [3]float64{a[0] + k*b[0], a[1] + k*b[1], a[2] + k*b[2]}
}

func cross(a, b [3]float64) [3]float64 {
	return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

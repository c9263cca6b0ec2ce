package stroke

import (
	"errors"
	"math"

	"example.org/castwright/model/geom"
	"gonum.org/v1/gonum/interp"
	"gonum.org/v1/gonum/mat"
)

// maxNodes bounds the nodes of a fit; a stroke that needs more is too wild for
// a river.
const maxNodes = 40

// Fit is a stroke as a spline.
type Fit struct {
	Nodes []geom.Vec
	// Off is how far, in millimetres, spline and stroke are apart at most,
	// measured from sample points of each to the other.
	Off float64
}

// Errors of Nodes.
var (
	ErrShort = errors.New("the stroke is too short: draw at least as long as the river is wide")
	ErrWild  = errors.New("the stroke turns too often for one river: draw it in parts, or allow a larger tolerance")
)

// Nodes fits a stroke with few nodes so that the natural cubic spline through
// them, over cumulative chord length as a design draws it, stays within
// tolerance millimetres of the stroke. Nodes are added where the spline is
// furthest off, their places found by least squares, and those that turn out
// not to be needed are taken away again.
func Nodes(points []geom.Vec, tolerance float64) (Fit, error) {
	return NodesWith(maxTrials, points, tolerance)
}

// NodesWith is [Nodes] with another bound on the fits that are tried to do with
// fewer nodes, some 0.2 ms each; with none of them it is quick and wasteful.
func NodesWith(trials int, points []geom.Vec, tolerance float64) (Fit, error) {
	points = clean(points)
	if len(points) < 2 || !(tolerance > 0) {
		return Fit{}, ErrShort
	}
	line := newPolyline(points)
	if line.length() < 2*tolerance {
		return Fit{}, ErrShort
	}
	f := fitter{line: line, p: line.resample(samples), tolerance: tolerance, most: trials, trials: new(int)}
	knots := []float64{0, 1}
	best, where := f.fit(knots)
	best.Off = f.off(best.Nodes, tolerance)
	for best.Off > tolerance {
		if len(knots) >= maxNodes {
			return best, ErrWild
		}
		knots = f.split(knots, where)
		best, where = f.fit(knots)
		best.Off = f.off(best.Nodes, tolerance)
	}
	for i := 1; i < len(knots)-1 && *f.trials < f.most; {
		fewer := append(append([]float64(nil), knots[:i]...), knots[i+1:]...)
		fit := f.settle(fewer)
		// Far off at the samples, it is not worth measuring.
		if fit.Off > 1.5*tolerance {
			i++
			continue
		}
		if fit.Off = f.off(fit.Nodes, tolerance); fit.Off <= tolerance {
			best, knots, i = fit, fewer, 1
			continue
		}
		i++
	}
	return best, nil
}

// fitter holds what stays the same while knots change. Knots are shares of the
// stroke's length.
type fitter struct {
	line      polyline
	p         []geom.Vec // samples of the stroke, evenly spaced
	tolerance float64
	most      int  // of trials
	trials    *int // fits tried to do with fewer nodes
}

// maxTrials bounds how long fewer nodes are looked for, some 60 ms: the hand
// waits. Strokes of up to about eight nodes need fewer trials.
const maxTrials = 250

// split adds a knot in the middle of the span that holds the worst place, or
// of the longest span when that one is already short.
func (f fitter) split(knots []float64, where float64) []float64 {
	worst := 0
	for i := 0; i+1 < len(knots); i++ {
		if knots[i] <= where && where <= knots[i+1] {
			worst = i
			break
		}
	}
	if (knots[worst+1]-knots[worst])*float64(samples) < 6 {
		for i := 0; i+1 < len(knots); i++ {
			if knots[i+1]-knots[i] > knots[worst+1]-knots[worst] {
				worst = i
			}
		}
	}
	out := append([]float64(nil), knots[:worst+1]...)
	out = append(out, (knots[worst]+knots[worst+1])/2)
	return append(out, knots[worst+1:]...)
}

// settle tries to make these knots do by moving each inner one to and fro.
func (f fitter) settle(knots []float64) Fit {
	fit, _ := f.fit(knots)
	for step := 0.25; step > 0.1 && fit.Off > 0.97*f.tolerance && fit.Off < 3*f.tolerance; step /= 2 {
		for i := 1; i < len(knots)-1; i++ {
			for _, side := range [...]float64{-1, 1} {
				gap := knots[i+1] - knots[i]
				if side < 0 {
					gap = knots[i] - knots[i-1]
				}
				if *f.trials++; *f.trials > f.most {
					return fit
				}
				old := knots[i]
				knots[i] += side * step * gap
				if try, _ := f.fit(knots); try.Off < fit.Off {
					fit = try
				} else {
					knots[i] = old
				}
			}
		}
	}
	return fit
}

// fit places nodes at the knots by least squares and measures the spline that
// a design would draw through them at the samples alone: quick, and near to
// what [fitter.off] finds. Where is the share of the stroke's length at which
// it is furthest off.
func (f fitter) fit(knots []float64) (best Fit, where float64) {
	u := append([]float64(nil), knots...)
	t := make([]float64, len(f.p)) // parameter of each sample
	for i := range t {
		t[i] = float64(i) / float64(len(t)-1)
	}
	best.Off = math.Inf(1)
	for range 3 {
		nodes := f.leastSquares(u, t)
		if nodes == nil {
			break
		}
		s, ok := newSpline(nodes)
		if !ok {
			break
		}
		u = s.u
		f.reproject(s, t)
		f.reproject(s, t)
		worst, at := 0.0, 0.0
		for i, p := range f.p {
			if d := p.Dist(s.at(t[i])); d > worst {
				worst, at = d, float64(i)/float64(len(t)-1)
			}
		}
		if worst < best.Off {
			best, where = Fit{nodes, worst}, at
		}
	}
	return best, where
}

// leastSquares finds the nodes whose natural spline over knots u passes
// nearest to the samples at parameters t; the ends are kept.
func (f fitter) leastSquares(u, t []float64) []geom.Vec {
	k, n := len(u), len(f.p)
	first, last := f.p[0], f.p[n-1]
	if k == 2 {
		return []geom.Vec{first, last}
	}
	basis := mat.NewDense(n, k, nil)
	var c interp.NaturalCubic
	unit := make([]float64, k)
	for j := range k {
		unit[j] = 1
		if !increasing(u) || c.Fit(u, unit) != nil {
			return nil
		}
		for i := range n {
			basis.Set(i, j, c.Predict(t[i]))
		}
		unit[j] = 0
	}
	rhs := mat.NewDense(n, 2, nil)
	for i, p := range f.p {
		a, b := basis.At(i, 0), basis.At(i, k-1)
		rhs.Set(i, 0, p.X-a*first.X-b*last.X)
		rhs.Set(i, 1, p.Y-a*first.Y-b*last.Y)
	}
	var x mat.Dense
	if x.Solve(basis.Slice(0, n, 1, k-1), rhs) != nil {
		return nil
	}
	out := []geom.Vec{first}
	for j := range k - 2 {
		out = append(out, geom.Vec{X: x.At(j, 0), Y: x.At(j, 1)})
	}
	return append(out, last)
}

func increasing(u []float64) bool {
	for i := 1; i < len(u); i++ {
		if !(u[i] > u[i-1]) {
			return false
		}
	}
	return true
}

// off measures both ways: the points of the stroke to the spline and points of
// the spline to the stroke, each near its own place along the way. Beyond enough
// it may be more than it says.
func (f fitter) off(nodes []geom.Vec, enough float64) float64 {
	s, ok := newSpline(nodes)
	if !ok {
		return math.Inf(1)
	}
	drawn := make([]geom.Vec, 3*samples)
	for i := range drawn {
		drawn[i] = s.at(float64(i) / float64(len(drawn)-1))
	}
	curve := newPolyline(drawn)
	there := f.line.apart(curve, enough)
	if there > enough {
		return there
	}
	return math.Max(there, curve.apart(f.line, enough))
}

// reproject moves each parameter toward the spline's nearest point (one Gauss
// step), keeping their order.
func (f fitter) reproject(s spline, t []float64) {
	for i := 1; i+1 < len(t); i++ {
		p, d := s.at(t[i]), s.slope(t[i])
		if n := d.Dot(d); n > 0 {
			t[i] += math.Max(-0.02, math.Min(0.02, f.p[i].Sub(p).Dot(d)/n))
		}
		t[i] = math.Max(t[i-1], math.Min(1, t[i]))
	}
}

// spline is the centreline that a design draws through nodes, over chord
// length scaled to [0, 1].
type spline struct {
	u    []float64
	x, y interp.NaturalCubic
}

func newSpline(nodes []geom.Vec) (s spline, ok bool) {
	if len(nodes) < 2 {
		return s, false
	}
	s.u = make([]float64, len(nodes))
	xs, ys := make([]float64, len(nodes)), make([]float64, len(nodes))
	for i, p := range nodes {
		xs[i], ys[i] = p.X, p.Y
		if i > 0 {
			s.u[i] = s.u[i-1] + p.Dist(nodes[i-1])
		}
	}
	total := s.u[len(s.u)-1]
	if total == 0 { // a closed stroke's ends alone
		return s, false
	}
	for i := range s.u {
		s.u[i] /= total
	}
	if !increasing(s.u) {
		return s, false
	}
	return s, s.x.Fit(s.u, xs) == nil && s.y.Fit(s.u, ys) == nil
}

func (s *spline) at(t float64) geom.Vec { return geom.Vec{X: s.x.Predict(t), Y: s.y.Predict(t)} }

func (s *spline) slope(t float64) geom.Vec {
	return geom.Vec{X: s.x.PredictDerivative(t), Y: s.y.PredictDerivative(t)}
}

package stroke_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/stroke"
	"gonum.org/v1/gonum/interp"
)

// hand draws a smooth random curve with a hand's jitter: a walk whose direction
// swings, sampled like a pointer.
func hand(rng *rand.Rand, length, jitter float64) []geom.Vec {
	var p []geom.Vec
	at, heading := geom.Vec{}, rng.Float64()*2*math.Pi
	a1, a2 := rng.NormFloat64()*0.8, rng.NormFloat64()*0.4
	f1, f2 := 1+2*rng.Float64(), 2+3*rng.Float64()
	n := 150 + rng.IntN(200)
	for i := range n {
		t := float64(i) / float64(n-1)
		dir := heading + a1*math.Sin(2*math.Pi*f1*t/2) + a2*math.Sin(2*math.Pi*f2*t/2)
		at = at.Add(geom.Vec{X: length / float64(n)}.Turn(dir))
		p = append(p, at.Add(geom.Vec{X: rng.NormFloat64() * jitter, Y: rng.NormFloat64() * jitter}))
	}
	return p
}

// through is the spline as package slab draws a river: natural cubic over
// cumulative chord length.
func through(t *testing.T, nodes []geom.Vec, n int) []geom.Vec {
	t.Helper()
	u, xs, ys := make([]float64, len(nodes)), make([]float64, len(nodes)), make([]float64, len(nodes))
	for i, p := range nodes {
		xs[i], ys[i] = p.X, p.Y
		if i > 0 {
			u[i] = u[i-1] + p.Dist(nodes[i-1])
		}
	}
	var x, y interp.NaturalCubic
	if err := x.Fit(u, xs); err != nil {
		t.Fatal(err)
	}
	if err := y.Fit(u, ys); err != nil {
		t.Fatal(err)
	}
	out := make([]geom.Vec, n)
	for i := range out {
		s := u[len(u)-1] * float64(i) / float64(n-1)
		out[i] = geom.Vec{X: x.Predict(s), Y: y.Predict(s)}
	}
	return out
}

func toLine(p geom.Vec, line []geom.Vec) float64 {
	best := math.Inf(1)
	for i := 1; i < len(line); i++ {
		d := line[i].Sub(line[i-1])
		t := math.Max(0, math.Min(1, p.Sub(line[i-1]).Dot(d)/math.Max(1e-300, d.Dot(d))))
		best = math.Min(best, p.Dist(line[i-1].Add(d.Mul(t))))
	}
	return best
}

// The spline stays within its tolerance of every point of the stroke, checked
// with a spline of its own at ten times the density.
func TestFitStaysWithinTolerance(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	nodes := 0
	for i := range 60 {
		tolerance := 4 + 6*rng.Float64()
		points := hand(rng, 800+800*rng.Float64(), 0.25*tolerance/3)
		fit, err := stroke.Nodes(points, tolerance)
		if err != nil {
			t.Fatalf("case %d: %v", i, err)
		}
		nodes += len(fit.Nodes)
		line := through(t, fit.Nodes, 4000)
		for _, p := range points {
			if d := toLine(p, line); d > tolerance*1.02 {
				t.Errorf("case %d: a point of the stroke lies %.2f mm off, tolerance %.2f", i, d, tolerance)
				break
			}
		}
	}
	t.Logf("%.1f nodes in the mean", float64(nodes)/60)
}

// A stroke made from a spline of k nodes must not need many more.
func TestFitNeedsFewNodes(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 2))
	made, got := 0, 0
	for range 40 {
		k := 3 + rng.IntN(4)
		nodes := make([]geom.Vec, k)
		for j := range nodes {
			nodes[j] = geom.Vec{X: 300 * float64(j), Y: 120 * rng.NormFloat64()}
		}
		points := through(t, nodes, 300)
		for j := range points {
			points[j] = points[j].Add(geom.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64()})
		}
		fit, err := stroke.Nodes(points, 5)
		if err != nil {
			t.Fatal(err)
		}
		made, got = made+k, got+len(fit.Nodes)
	}
	t.Logf("strokes made from %d nodes were fitted with %d", made, got)
	if got > made*13/10 {
		t.Errorf("%d nodes fitted, made from %d", got, made)
	}
}

func TestFitRefuses(t *testing.T) {
	nan := math.NaN()
	for _, p := range [][]geom.Vec{
		nil, {{X: 1, Y: 1}}, {{X: 1, Y: 1}, {X: 1, Y: 1}}, {{X: nan, Y: 0}, {X: 0, Y: nan}, {X: math.Inf(1)}},
	} {
		if _, err := stroke.Nodes(p, 5); err == nil {
			t.Errorf("%v was fitted", p)
		}
	}
	if _, err := stroke.Nodes([]geom.Vec{{}, {X: 100}}, nan); err == nil {
		t.Error("a tolerance of NaN was taken")
	}
}

func BenchmarkNodes(b *testing.B) {
	points := hand(rand.New(rand.NewPCG(3, 3)), 1400, 0.5)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := stroke.Nodes(points, 6); err != nil {
			b.Fatal(err)
		}
	}
}

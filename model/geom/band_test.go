package geom_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/model/geom"
)

func unionArea(loops []geom.Loop) float64 {
	a := 0.0
	for _, l := range geom.Union(loops...) {
		a += l.Area()
	}
	return a
}

// A channel of width w about a straight line of length L with round ends:
// A = w L + pi w²/4; the handbook's w = 0.5, L = 40, in inches.
func TestBandHandbook(t *testing.T) {
	const inch = 25.4
	b, ok := geom.NewBand([]geom.Vec{{X: 3, Y: 4}, geom.Vec{X: 3, Y: 4}.Add(geom.Vec{X: 40 * inch}.Turn(0.4))}, []float64{inch / 2, inch / 2})
	if !ok {
		t.Fatal("no band")
	}
	round := geom.BandEnd{Round: true}
	near(t, "area", unionArea(b.Flatten(0.01).Loops(round, round))/inch/inch, 20.196350, 5e-7)
	near(t, "flat", unionArea(b.Flatten(0.01).Loops(geom.BandEnd{}, geom.BandEnd{}))/inch/inch, 20, 1e-7)
	near(t, "longer", unionArea(b.Flatten(0.01).Loops(geom.BandEnd{}, geom.BandEnd{Extend: 2 * inch}))/inch/inch, 21, 1e-7)
	near(t, "length", b.Length()/inch, 40, 1e-9)
}

// By Pappus, a band of constant width about any curve that it does not fold over
// has the area width times length; with a width that varies, the integral of the
// width along the curve.
func TestBandArea(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	for i := range 60 {
		n := 2 + r.IntN(5)
		var p []geom.Vec
		var w, even []float64
		for k := range n {
			p = append(p, geom.Vec{X: 150 * (float64(k) + 0.6*r.Float64()), Y: 120 * r.Float64()})
			w = append(w, 5+25*r.Float64())
			even = append(even, 18)
		}
		name := fmt.Sprint("river ", i)
		b, _ := geom.NewBand(p, even)
		if _, folded := b.Fold(); folded {
			continue
		}
		flat := b.Flatten(0.01)
		near(t, name+" even", unionArea(flat.Loops(geom.BandEnd{}, geom.BandEnd{})), 18*b.Length(), 1e-3)
		b, _ = geom.NewBand(p, w)
		s := make([]float64, n)
		for k := 1; k < n; k++ {
			s[k] = s[k-1] + p[k].Dist(p[k-1])
		}
		line, width := geom.NewNatural(s, p), geom.NewMonotone(s, w)
		sum := 0.0
		const steps = 4000
		for k := range steps * (n - 1) {
			span := k / steps
			h := (s[span+1] - s[span]) / steps
			x := s[span] + (float64(k%steps)+0.5)*h
			_, d, _ := line.At(x)
			v, _ := width.At(x)
			sum += v * d.Norm() * h
		}
		loops := b.Flatten(0.01).Loops(geom.BandEnd{}, geom.BandEnd{})
		near(t, name+" varied", unionArea(loops), sum, 1e-2)
		for _, l := range loops {
			if l.Area() <= 0 {
				t.Errorf("%s: a loop of area %g", name, l.Area())
			}
		}
		if c := b.Flatten(0.01).Centreline(); c[0] != p[0] || c[len(c)-1].Dist(p[n-1]) > 1e-9 {
			t.Errorf("%s: centreline from %v to %v", name, c[0], c[len(c)-1])
		}
	}
}

// A river that folds over itself is the union of its cross lines all the same.
func TestBandFolded(t *testing.T) {
	p := []geom.Vec{{}, {X: 60, Y: 80}, {X: 90}, {X: 200, Y: 30}}
	w := []float64{70, 90, 80, 60}
	b, _ := geom.NewBand(p, w)
	if _, folded := b.Fold(); !folded {
		t.Fatal("it does not fold")
	}
	fence := geom.NewFence(geom.Union(b.Flatten(0.01).Loops(geom.BandEnd{}, geom.BandEnd{})...)...)
	s := []float64{0, 100, 100 + p[2].Dist(p[1]), 0}
	s[3] = s[2] + p[3].Dist(p[2])
	line, width := geom.NewNatural(s, p), geom.NewMonotone(s, w)
	r := rand.New(rand.NewPCG(5, 1))
	for range 3000 { // every point of a cross line lies in it
		x := s[3] * r.Float64()
		q, d, _ := line.At(x)
		v, _ := width.At(x)
		at := q.Add(d.Unit().Left().Mul(v * (r.Float64() - 0.5) * 0.999))
		if _, dist := fence.Nearest(at); !fence.Contains(at) && dist > 0.02 {
			t.Fatalf("%v on the cross line at %g lies %g outside", at, x, dist)
		}
	}
	// And nothing lies in it that is on no cross line, within what a fine raster of
	// them can tell.
	box := fence.Bounds()
	for range 1000 {
		at := geom.Vec{X: box.Min.X + box.W()*r.Float64(), Y: box.Min.Y + box.H()*r.Float64()}
		if !fence.Contains(at) {
			continue
		}
		least := math.Inf(1)
		for k := range 4000 {
			x := s[3] * float64(k) / 3999
			q, d, _ := line.At(x)
			v, _ := width.At(x)
			n := d.Unit().Left().Mul(v / 2)
			least = math.Min(least, geom.NearestOnSegment(at, q.Add(n), q.Sub(n)).Dist(at))
		}
		if least > 0.2 {
			t.Fatalf("%v is %g from the nearest cross line", at, least)
		}
	}
}

func TestBandRefuses(t *testing.T) {
	if _, ok := geom.NewBand([]geom.Vec{{}, {}}, []float64{1, 1}); ok {
		t.Error("two equal points made a band")
	}
	if _, ok := geom.NewBand([]geom.Vec{{}}, []float64{1}); ok {
		t.Error("one point made a band")
	}
}

package slab

import (
	"math"
	"testing"
)

// The rule that a part of the height takes, on the square of a quarter circle's
// inset: over the whole of it the integral is r³ (5/3 - pi/2), elementary
// calculus.
func TestQuadrature(t *testing.T) {
	const thick = 38.0
	for _, r := range []float64{2, 10, 19, 38} {
		p := span{lo: thick - r, hi: thick}
		p.setOrder(thick, r)
		if p.order != 5 {
			t.Errorf("radius %g: order %d, want 5", r, p.order)
		}
		got := 0.0
		for i := range p.order {
			z, w := p.node(i, thick)
			h := z - (thick - r)
			d := r - math.Sqrt(r*r-h*h)
			got += w * d * d
		}
		want := r * r * r * (5./3 - math.Pi/2)
		if off := math.Abs(got/want - 1); off > 1.2e-5 {
			t.Errorf("radius %g: %g, want %g, off by %.2g", r, got, want, off)
		}
	}
	// A bevel's square is a polynomial: three points are exact.
	p := span{lo: 30, hi: thick}
	p.setOrder(thick, math.Inf(1))
	got := 0.0
	for i := range p.order {
		z, w := p.node(i, thick)
		got += w * (z - 30) * (z - 30)
	}
	if want := 8. * 8 * 8 / 3; p.order != 3 || math.Abs(got-want) > 1e-10 {
		t.Errorf("bevel: %g by %d points, want %g", got, p.order, want)
	}
}

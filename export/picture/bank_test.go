package picture

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
)

// Below a bank on the key light's side lies a shadow, and the bank itself is dark:
// what is seen straight down beside each of two banks, by the quick look of resin
// and by the path tracer. Within 1 mm the meniscus bends the view.
func TestBankShades(t *testing.T) {
	s := filled(16, design.Colour{R: 225, G: 240, B: 240})
	g := s.room()
	c := &s.body.channels[0]
	sum, n := 0.0, 0.0
	down := v3{Z: -1}
	for _, x := range []float64{51.5, 53, 56, 60, 68, 300, 532, 540, 544, 547, 548.5} {
		h, ok := g.hit(ray{v3{x, 300, 500}, down})
		if !ok || h.m != matResin {
			t.Fatalf("material %d at %g", h.m, x)
		}
		rnd := source{seed: 5}
		d, _ := g.gather(h.p, h.n, 0, 400, &rnd)
		l := c.look(g, h.p, down, h.n, 2)
		got := l.albedo.times(d).Y + l.f*g.rig.studio(v3{Z: 1}).Y
		want := 0.0
		const paths = 4000
		for k := range paths {
			rnd := source{seed: hash4(uint32(x), uint32(k), 7, 7)}
			want += g.traced(ray{v3{x, 300, 500}, down}, 2, true, &rnd).Y / paths
		}
		t.Logf("%.1f: %.3f, traced %.3f", x, got, want)
		sum, n = sum+(got/want-1)*(got/want-1), n+1
	}
	off := math.Sqrt(sum / n)
	t.Logf("off by %.3f", off)
	if off > 0.15 {
		t.Errorf("the light beside banks is off by %.2f of itself", off)
	}
}

package picture

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
)

// steadyLight is the light of a picture of w x h pixels as the quick method has
// it, filtered and refined.
func steadyLight(t *testing.T, s *scene, c *camera, q Quality) *layer {
	t.Helper()
	e := q.effort(c.w, c.h)
	p := &pool{ctx: t.Context(), workers: 2}
	l, err := s.trace(p, c, e.step, e.samples, 0)
	if err == nil {
		err = l.filtered(p)
	}
	if err == nil {
		err = s.refined(p, l, c, e.samples, 0)
	}
	if err == nil {
		err = l.filteredFine(s, p)
	}
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// The shadow on the floor before a cabinet, from under its toe-kick outward, on
// lines side by side: the light of a picture of 1600 pixels against the path
// tracer's, by the floor's plain reflectance.
func TestFloorShadow(t *testing.T) {
	d := design.Design{Thickness: mm(40), Outline: edit.LShape(mm(2400), mm(620), mm(620), mm(1600), mm(60)),
		Finish: design.Finish{Colour: design.Colour{R: 120, G: 118, B: 116}, Polish: 2}}
	s := built(d, SetOptions{Draft: true})
	g := s.room()
	c := s.camera(View{Kind: Quarter}, 1600, 900)
	l := steadyLight(t, g, &c, Good)
	sum, n := 0.0, 0.0
	for i := range 24 {
		for _, out := range []float64{25, 35, 50, 90, 150} {
			// The cabinet stands back by 70 mm from the front edge at y = 980.
			p := v3{900 + 50*float64(i), 980 + 70 - out, s.body.t - floorBelow}
			x, y, _ := c.project(p)
			h, ok := g.hit(c.ray(x, y))
			if !ok || h.m != matFloor || h.p.sub(p).norm() > 1 {
				continue // hidden
			}
			got, _, ok := l.at(g, x, y, h.p, h.n, matFloor, c.footprint(h.t))
			if !ok {
				t.Errorf("no light at %.0f mm before the toe-kick", out)
				continue
			}
			const paths = 1200
			want := 0.0
			for k := range paths {
				rnd := source{seed: hash4(uint32(i), uint32(out), uint32(k), 3), pixel: hash4(uint32(i), uint32(out), 1, 2) | 1, path: uint32(k)}
				want += g.traced(c.ray(x, y), c.k, false, &rnd).Y / paths
			}
			want /= plainColour(matFloor).Y
			sum, n = sum+(got.Y/want-1)*(got.Y/want-1), n+1
		}
	}
	off := math.Sqrt(sum / n)
	t.Logf("%.0f places, off by %.3f of the light", n, off)
	if n < 100 || off > 0.045 {
		t.Errorf("the light of %.0f places is off by %.3f of itself", n, off)
	}
}

package slab_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
)

// A cut-out so near to the front that its arris meets the edge's in a ridge: the
// section's area has a kink at the height where the two meet. The two strips
// share a bar as long as the cut-out with a circle's segment at its ends.
func TestRidge(t *testing.T) {
	const w, h, thick, rail, sw, sh = 1200., 560., 38., 20., 500., 300.
	for _, c := range []struct{ front, arris design.Profile }{
		{profile(design.ProfileRounded, 15), profile(design.ProfileRounded, 12)},
		{profile(design.ProfileBevelled, 15), profile(design.ProfileBevelled, 12)},
		{profile(design.ProfileHalfRound, 0), profile(design.ProfileBevelled, 14)},
		{profile(design.ProfileRounded, 12), profile(design.ProfileRounded, 14)},
	} {
		area := func(z float64) float64 {
			d, a := slab.Inset(c.front, thick, z), slab.Inset(c.arris, thick, z)
			cut := sw*sh + 2*(sw+sh)*a + math.Pi*a*a
			both := 0.0
			if o := d - (rail - a); o > 0 {
				both = sw*o + a*a*math.Acos((a-o)/a) - (a-o)*math.Sqrt(2*a*o-o*o)
			}
			return w*(h-d) - cut + both
		}
		d := top(thick, design.Profile{}, rectangle(w, h))
		d.Outline.Nodes[0].Edge.Profile = c.front
		d.Sinks = []design.Sink{{ID: "s", At: pt(600, rail+sh/2), Shape: sinkShape(design.ShapeRectangle, sw, sh), Profile: c.arris}}
		want := 0.0
		const n = 400_000
		for i := range n { // midpoints of the root of the depth
			u := math.Sqrt(thick) * (float64(i) + 0.5) / n
			want += area(thick-u*u) * 2 * u * math.Sqrt(thick) / n
		}
		same(t, "ridge", slab.Resolve(d).Measure(0).ConcreteVolume, want, 3e-7)
	}
}

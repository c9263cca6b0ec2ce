package picture

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
)

// The share of a bed's area that is glass, and of a fill's volume, are the
// design's, counted at random places.
func TestGlassCovers(t *testing.T) {
	for _, c := range []struct{ grain, cover float64 }{{6, 25}, {9, 45}, {14, 60}, {25, 45}} {
		d := design.Design{Thickness: mm(40), Outline: edit.Rectangle(mm(900), mm(600))}
		d.Glass = []design.GlassBed{{ID: "g", Region: design.Region{Outer: edit.Rectangle(mm(900), mm(600)).Nodes}, Grain: mm(c.grain), Coverage: share(c.cover), Depth: mm(10), Colour: design.Colour{R: 120, G: 170, B: 210}}}
		b := &built(d, SetOptions{Draft: true}).concrete.beds[0]
		in, n := 0.0, 20000.0
		for i := range int(n) {
			p := v3{100 + 700*fract(float64(i)*r2x), 100 + 400*fract(float64(i)*r2y), 40}
			if _, ok := b.at(p); ok {
				in++
			}
		}
		near(t, "covered", in/n, c.cover/100, 0.03)
	}
	for _, c := range []struct{ grain, share, depth float64 }{{3, 6, 12}, {5, 12, 16}, {8, 20, 25}} {
		g := newScatter(design.GlassFill{Grain: mm(c.grain), Share: share(c.share)}, c.depth)
		in, n := 0.0, 0.0
		for i := range 60000 {
			p := v3{300 * fract(float64(i)*r2x), 300 * fract(float64(i)*r2y), 10 * draw(uint32(i), 3)}
			n++
			if g.inside(p) {
				in++
			}
		}
		near(t, "share of the volume", in/n, c.share/100, 0.2*c.share/100)
	}
}

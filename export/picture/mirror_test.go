package picture

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
)

// A face of the finest polish mirrors the beaker's foot sharply and its rim with a
// blur: across the image of its rim and of its sides, the picture against the path
// tracer.
func TestMirrorBlurs(t *testing.T) {
	d := design.Design{Thickness: mm(40), Outline: edit.Rectangle(mm(1200), mm(600)),
		Finish: design.Finish{Colour: design.Colour{R: 60, G: 60, B: 60}, Polish: 4}}
	s := built(d, SetOptions{Draft: true})
	g := s.room()
	spot, ok := s.beakerSpot()
	if !ok {
		t.Fatal("no beaker")
	}
	c := s.camera(View{Kind: Quarter}, 960, 540)
	l := steadyLight(t, g, &c, Good)
	k := &shot{s: g, c: c, l: l, cover: g.mesh.cover(&c), mirrors: 8}
	sum, n := 0.0, 0.0
	look := func(p v3, dx, dy float64) {
		x, y, _ := c.project(p)
		for i := -4; i <= 4; i++ {
			px, py := math.Floor(x+dx*float64(i)*1.5)+0.5, math.Floor(y+dy*float64(i)*1.5)+0.5
			got := k.pixel(px, py, &source{seed: 3})
			if got.m != matConcrete {
				t.Fatalf("material %d at %g, %g", got.m, px, py)
			}
			want := 0.0
			const paths = 1500
			for j := range paths {
				rnd := source{seed: hash4(uint32(px), uint32(py), uint32(j), 9), pixel: hash4(uint32(px), uint32(py), 1, 9) | 1, path: uint32(j)}
				want += g.traced(c.ray(px, py), c.k, false, &rnd).Y / paths
			}
			sum, n = sum+(got.c.Y/want-1)*(got.c.Y/want-1), n+1
		}
	}
	// The image of a place lies as far below the face as it lies above.
	at := func(across, height float64) v3 { return v3{spot.X + across, spot.Y - 40, s.body.t - height} }
	look(at(0, 108), 0, 1)
	look(at(-15, 108), 0, 1)
	look(at(39, 60), 1, 0)
	off := math.Sqrt(sum / n)
	t.Logf("%.0f pixels, off by %.4f", n, off)
	if off > 0.045 {
		t.Errorf("%.0f pixels are off by %.3f of themselves", n, off)
	}
}

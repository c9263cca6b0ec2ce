package draw_test

import (
	"image"
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/units"
)

// Photographs of any shape keep it and stay on the page, and pictures beside each other
// are of one height and do not overlap.
func TestPicturesOfASheet(t *testing.T) {
	d := counter()
	r := derive(d)
	for _, sys := range []units.System{units.Metric, units.Imperial} {
		for _, photo := range []image.Rectangle{image.Rect(0, 0, 400, 300), image.Rect(0, 0, 300, 500), image.Rect(0, 0, 900, 200), image.Rect(0, 0, 100, 1500)} {
			for _, both := range []bool{false, true} {
				job := design.Job{Units: sys}
				o := draw.ApprovalOptions{Room: image.NewGray(photo)}
				option := design.Option{Name: "A", Design: d}
				if both {
					w, share := draw.PictureShape(job, option, r, o)
					o.Picture = image.NewGray(image.Rect(0, 0, int(math.Round(10*w)), int(math.Round(10*w*share))))
				}
				page := draw.Approval(job, option, r, o)[0]
				right, high := 0.0, 0.0
				n := 0
				for _, it := range page.Items {
					p, ok := it.(scene.Picture)
					if !ok {
						continue
					}
					n++
					b := p.Image.Bounds()
					if k := p.Box.W() / p.Box.H() * float64(b.Dy()) / float64(b.Dx()); math.Abs(k-1) > 0.01 {
						t.Errorf("%v, both %v: a picture is %.3f times too wide", photo, both, k)
					}
					if p.Box.Min.X < right || p.Box.Min.X < 10 || p.Box.Max.X > page.W-10 || p.Box.Max.Y > 0.7*page.H {
						t.Errorf("%v, both %v: a picture lies at %v", photo, both, p.Box)
					}
					if high > 0 && math.Abs(p.Box.H()-high) > 0.1 {
						t.Errorf("%v: pictures are %g and %g mm high", photo, high, p.Box.H())
					}
					right, high = p.Box.Max.X, p.Box.H()
				}
				if want := map[bool]int{false: 1, true: 2}[both]; n != want {
					t.Errorf("%v: %d pictures, want %d", photo, n, want)
				}
			}
		}
	}
}

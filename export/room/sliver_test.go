package room_test

import (
	"image"
	"testing"

	"example.org/castwright/export/room"
	"example.org/castwright/model/design"
)

// The present top, of a red that nothing else has, does not look out beside a new one
// of its size whose edges and corners are rounded; where the new one is much smaller
// it stays, for nobody knows what is behind it.
func TestNoSliverOfThePresentTop(t *testing.T) {
	red := design.Colour{R: 200, G: 40, B: 30}
	photo := small.take(t, plain(oldW, oldD, oldT, red))
	count := func(img *image.NRGBA) (n int) {
		for i := 0; i < len(img.Pix); i += 4 {
			if int(img.Pix[i]) > 2*int(img.Pix[i+1]) && img.Pix[i] > 60 {
				n++
			}
		}
		return n
	}
	was := count(&image.NRGBA{Pix: photo.Pix, Stride: photo.Stride, Rect: photo.Rect})
	if was < 10_000 {
		t.Fatalf("only %d pixels of the present top are red", was)
	}
	d := plain(oldW, oldD, oldT, design.Colour{R: 150, G: 150, B: 150})
	for i := range d.Outline.Nodes {
		d.Outline.Nodes[i].Corner = design.Corner{Kind: design.CornerRounded, Size: mm(20)}
		if d.Outline.Nodes[i].Edge.Side == design.SideSeen {
			d.Outline.Nodes[i].Edge.Profile = design.Profile{Kind: design.ProfileRounded, Size: mm(10)}
		}
	}
	order := room.Order{Photo: photo, Corners: small.corners(), W: oldW, D: oldD}
	if n := count(compose(t, d, order).Image); n > was/2000 {
		t.Errorf("%d pixels of the present top look out, of %d", n, was)
	}
	half := compose(t, plain(oldW/2, oldD, oldT, design.Colour{R: 150, G: 150, B: 150}), order)
	if n := count(half.Image); n < was/3 {
		t.Errorf("of a top twice as wide only %d of %d pixels stay", n, was)
	}
}

package raster

import (
	"image"
	"sync"
	"sync/atomic"

	"example.org/castwright/model/scene"
)

// painters are kept between pictures, for their buffers.
var painters = sync.Pool{New: func() any { return new(painter) }}

// small is the number of pixels up to which one goroutine paints alone.
const small = 120_000

// bands is how many bands a larger picture is painted in.
const bands = 4

// Draw paints a page on dst, one pixel to the page unit, its top left corner at
// dst's. A ground with alpha 0 leaves what dst holds.
func Draw(dst *image.RGBA, p scene.Page) {
	w, h := dst.Rect.Dx(), dst.Rect.Dy()
	if w < 1 || h < 1 {
		return
	}
	if w*h <= small || h < 2 {
		drawBand(dst.Pix, dst.Stride, w, 0, h, h, p)
		return
	}
	// Two goroutines take one band after the other, so that neither waits long
	// for the other; who paints which makes no difference.
	rows := (h + bands - 1) / bands
	var next atomic.Int32
	work := func() {
		for {
			top := (int(next.Add(1)) - 1) * rows
			if top >= h {
				return
			}
			drawBand(dst.Pix[top*dst.Stride:], dst.Stride, w, top, min(rows, h-top), h, p)
		}
	}
	var wait sync.WaitGroup
	wait.Go(work)
	work()
	wait.Wait()
}

// drawBand paints the h rows from top on, of a page that is whole rows high, on
// the first rows of pix.
func drawBand(pix []uint8, stride, w, top, h, whole int, p scene.Page) {
	t := painters.Get().(*painter)
	defer painters.Put(t)
	t.on(pix, stride, w, h, top, whole, p)
	if p.Ground.A > 0 {
		ground := tintOf(p.Ground)
		first := pix[:4*w]
		layColour(first, ground, 0xffff)
		for y := 1; y < h; y++ {
			row := pix[y*stride : y*stride+4*w]
			if ground.a == 0xff {
				copy(row, first)
			} else {
				layColour(row, ground, 0xffff)
			}
		}
	}
	for _, item := range p.Items {
		t.item(item)
	}
	t.pix = nil
}

// Image paints a page on a picture of its own. A page that is smaller than a
// pixel or larger than [MaxSide] gives an empty picture.
func Image(p scene.Page) *image.RGBA {
	w, h, err := size(p.W, p.H)
	if err != nil {
		return image.NewRGBA(image.Rectangle{})
	}
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	Draw(img, p)
	return img
}

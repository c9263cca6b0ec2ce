package raster

import (
	"image"
	"image/draw"
	"math"

	"example.org/castwright/model/scene"
	xdraw "golang.org/x/image/draw"
)

// picture lays an image on its box, scaled to whole pixels. A box that is not
// finite, or so far off or large that scaling to it would take for ever, is left
// out.
func (t *painter) picture(p scene.Picture) {
	const far = 4 * MaxSide
	b := p.Box
	if p.Image == nil || b.Empty() || !b.Min.Finite() || !b.Max.Finite() ||
		b.Min.X < -far || b.Min.Y < -far || b.Max.X > far || b.Max.Y > far {
		return
	}
	at := image.Rect(int(math.Round(b.Min.X)), int(math.Round(b.Min.Y)), int(math.Round(b.Max.X)), int(math.Round(b.Max.Y)))
	band := &image.RGBA{Pix: t.pix, Stride: t.stride, Rect: image.Rect(0, t.top, t.w, t.top+t.h)}
	if at.Empty() || at.Intersect(band.Rect).Empty() {
		return
	}
	if at.Size() == p.Image.Bounds().Size() {
		draw.Draw(band, at, p.Image, p.Image.Bounds().Min, draw.Over)
		return
	}
	xdraw.CatmullRom.Scale(band, at, p.Image, p.Image.Bounds(), draw.Over, nil)
}

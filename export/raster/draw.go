package raster

import (
	"image"
	"image/color"
	"image/draw"

	"example.org/castwright/model/scene"
)

// Draw paints a page on dst, one pixel to the page unit, its top left corner at
// dst's. A ground with alpha 0 leaves what dst holds.
func Draw(dst *image.RGBA, p scene.Page) {
	if p.Ground.A > 0 {
		draw.Draw(dst, dst.Bounds(), image.NewUniform(color.NRGBA{p.Ground.R, p.Ground.G, p.Ground.B, p.Ground.A}), image.Point{}, draw.Over)
	}
}

// Image paints a page on a picture of its own. A page beyond the limits of
// [PNG] gives an empty picture.
func Image(p scene.Page) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, int(p.W), int(p.H)))
	Draw(img, p)
	return img
}

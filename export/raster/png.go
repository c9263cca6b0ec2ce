package raster

import (
	"image/png"
	"io"

	"example.org/castwright/model/scene"
)

// Options of a PNG.
type Options struct {
	// DotsPerMetre is the size that the picture says it has when printed; 0
	// takes the page's own, if it has one.
	DotsPerMetre float64
}

// PNG writes a page as a PNG, one pixel to the page unit.
func PNG(w io.Writer, p scene.Page, o Options) error {
	return png.Encode(w, Image(p))
}

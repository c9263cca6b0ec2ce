package room

import (
	"image"
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/pose"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// OrderOf is what a job's room says of a top in its photograph, which may have been
// scaled. focal35 is of [pose.Photo].
func OrderOf(r design.Room, photo *image.RGBA, focal35 float64, s slab.Solid) Order {
	w, h := photo.Rect.Dx(), photo.Rect.Dy()
	o := Order{Photo: photo, Focal35: focal35, Corners: Marks(r.Corners, w, h), W: r.Width.MM(), D: r.Depth.MM(),
		Paper: r.Marks == design.MarkedSheet}
	o.Place = pose.Place{X: r.At.X.MM(), Y: r.At.Y.MM(), Turn: r.Turn.Radians()}
	switch {
	case o.Paper:
		o.Place.Rise = 0 // the new face lies where the paper does, unless the old top is told
		if r.Old > 0 {
			o.Place.Rise = s.Thickness - r.Old.MM()
		}
	default:
		o.Place.Rise = Standing(s, o.W, o.D, false, r.Old.MM()).Rise
	}
	o.Light = Light{Brighter: r.Lit.Brighter.Fraction(), Warmer: r.Lit.Warmer.Fraction(), From: Side(r.Lit.From)}
	return o
}

// Marks are the corners of a room in a picture of w x h pixels.
func Marks(spots [4]design.Spot, w, h int) (c pose.Corners) {
	for i, s := range spots {
		c[i] = Pixel(s, w, h)
	}
	return c
}

// Pixel is where a place of a picture of w x h pixels lies.
func Pixel(s design.Spot, w, h int) geom.Vec {
	return geom.Vec{X: s.X.Fraction() * float64(w), Y: s.Y.Fraction() * float64(h)}
}

// SpotAt is the place of a picture of w x h pixels at p, or the nearest one of the
// picture.
func SpotAt(p geom.Vec, w, h int) design.Spot {
	share := func(x float64, n int) units.Share {
		return units.Share(math.Round(clamp(x/float64(n), 0, 1) * float64(units.Whole)))
	}
	return design.Spot{X: share(p.X, w), Y: share(p.Y, h)}
}

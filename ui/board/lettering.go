package board

import (
	"image"

	"example.org/castwright/model/geom"
	"fyne.io/fyne/v2"
	"github.com/golang/freetype/truetype"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/math/fixed"
)

// lettering writes text on a picture in the theme's font: changing text in
// widgets would keep a texture for every number that was ever shown.
type lettering struct {
	name string
	font *truetype.Font
	px   float64
	face font.Face
	up   float64 // of capitals above the baseline, px
}

// set makes the face for a font and size in pixels, when they have changed.
func (l *lettering) set(res fyne.Resource, px float64) {
	if l.face != nil && l.name == res.Name() && l.px == px {
		return
	}
	if l.font == nil || l.name != res.Name() {
		f, err := truetype.Parse(res.Content())
		if err != nil {
			// A theme's font in a form that can't be read here: the Go font can.
			f, _ = truetype.Parse(goregular.TTF)
		}
		l.font, l.name = f, res.Name()
	}
	l.px = px
	l.face = truetype.NewFace(l.font, &truetype.Options{Size: px, DPI: 72, Hinting: font.HintingFull})
	bounds, _, ok := l.face.GlyphBounds('H')
	l.up = px * 0.7
	if ok {
		l.up = float64(-bounds.Min.Y) / 64
	}
}

// width is how long a text is in pixels.
func (l *lettering) width(s string) float64 {
	return float64(font.MeasureString(l.face, s)) / 64
}

// write writes a text with the left end of its baseline at a place.
func (l *lettering) write(img *image.RGBA, at geom.Vec, s string, c tint) {
	d := font.Drawer{
		Dst:  img,
		Src:  image.NewUniform(tintColour(c)),
		Face: l.face,
		Dot:  fixed.P(int(at.X+0.5), int(at.Y+0.5)),
	}
	d.DrawString(s)
}

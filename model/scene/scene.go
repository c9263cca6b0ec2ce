// Package scene describes pictures: a [Page] of fills, strokes and texts in
// page units. Screen, PNG and every later export draw the same page, so all
// pictures agree.
package scene

import (
	"image"

	"example.org/castwright/model/geom"
)

// Colour is sRGB with straight alpha.
type Colour struct{ R, G, B, A uint8 }

// Page is one picture. Coordinates are page units (pixels on screen and in a
// PNG, millimetres on paper), x to the right, y DOWN, origin at the top left.
type Page struct {
	W, H   float64
	PerMM  float64  // page units in one millimetre of the top; 0 when not to scale
	Print  float64  // page units in one millimetre of paper; 0 when not meant for paper
	Origin geom.Vec // where the design's (0,0) lies on the page
	Ground Colour
	Items  []Item
}

// Item is a [Fill], [Stroke], [Text] or [Picture].
type Item interface{ item() }

// Fill is a filled region, by the non-zero rule; with a Clip, the part of it
// that lies within the clip's region.
type Fill struct {
	Loops []geom.Loop
	Clip  []geom.Loop // nil for none
	Paint Paint
}

// Paint is what a region is filled with: a plain colour, or a texture over it.
type Paint struct {
	Colour  Colour
	Texture Texture // nil for plain
}

// Texture gives the colour at a place of the design, in millimetres, for a
// pixel about footprint millimetres wide.
type Texture interface {
	At(x, y, footprint float64) Colour
}

// Rows is a [Texture] that can give many places at once, as a painter wants
// them.
type Rows interface {
	Texture
	// Row writes len(dst)/4 colours, red, green, blue and alpha, the first three
	// multiplied by alpha, for pixels step millimetres wide: the middle of the
	// first at (x, y), each next one step to the right.
	Row(dst []uint8, x, y, step float64)
	// Opaque reports whether alpha is whole everywhere.
	Opaque() bool
}

// Stroke is a line of constant width.
type Stroke struct {
	Lines  [][]geom.Vec
	Closed bool
	Width  float64 // page units
	Dash   []float64
	Colour Colour
}

// Anchor says which point of a text At is.
type Anchor uint8

// The anchors, horizontal; texts hang vertically centred on At.
const (
	AnchorMiddle Anchor = iota
	AnchorStart
	AnchorEnd
)

// Text is one line of text.
type Text struct {
	At     geom.Vec
	Anchor Anchor
	Size   float64 // page units, of the em
	Angle  float64 // radians, clockwise on the page
	Bold   bool
	Colour Colour
	Text   string
}

// Picture is an image that fills a box of the page.
type Picture struct {
	Box   geom.Box // page units
	Image image.Image
}

func (Fill) item()    {}
func (Stroke) item()  {}
func (Text) item()    {}
func (Picture) item() {}

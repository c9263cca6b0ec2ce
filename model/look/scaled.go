package look

import (
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
)

// Scaled is a material shown at a scale of its own, as a swatch: its origin lies
// at a place of the design, and factor of its millimetres lie on one of the
// design's.
type Scaled struct {
	Of     scene.Rows
	Origin geom.Vec
	Factor float64
}

// Opaque reports whether the material is.
func (s Scaled) Opaque() bool { return s.Of.Opaque() }

// At is the colour at a place of the design.
func (s Scaled) At(x, y, footprint float64) scene.Colour {
	return s.Of.At((x-s.Origin.X)*s.Factor, (y-s.Origin.Y)*s.Factor, footprint*s.Factor)
}

// Row writes the colours of a row of pixels.
func (s Scaled) Row(dst []uint8, x, y, step float64) {
	s.Of.Row(dst, (x-s.Origin.X)*s.Factor, (y-s.Origin.Y)*s.Factor, step*s.Factor)
}

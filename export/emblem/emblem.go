// Package emblem draws the program's icon: a cast top seen from above, with a bowl
// and a river of resin that leaves by two edges.
package emblem

import (
	"bytes"
	"image"
	"image/png"

	"github.com/fogleman/gg"
)

// The sizes in pixels that an emblem has.
const (
	Least = 16
	Most  = 1024
)

// grid is the side of the square on which the emblem is laid out.
const grid = 64

// Image is the emblem, px pixels square; beyond Least and Most it has the nearer of
// the two. The corners are clear.
func Image(px int) image.Image {
	px = max(Least, min(px, Most))
	c := gg.NewContext(px, px)
	scale := float64(px) / grid
	c.Scale(scale, scale) // lines keep their width in pixels

	// The bench that the top lies on, and the top's shadow.
	c.DrawRoundedRectangle(2, 2, 60, 60, 13)
	c.SetHexColor("#3f4447")
	c.Fill()
	c.DrawRoundedRectangle(9, 17, 48, 36, 5)
	c.SetHexColor("#2a2e30")
	c.Fill()

	// The top, its eased edge and the river in it.
	slab := func(inset float64) {
		c.DrawRoundedRectangle(8+inset, 13+inset, 48-2*inset, 36-2*inset, 5-inset)
	}
	slab(0)
	c.SetHexColor("#e7e3da")
	c.Fill()
	slab(1)
	c.SetHexColor("#cfcac0")
	c.Fill()
	slab(0)
	c.Clip()
	c.MoveTo(12, 10)
	c.CubicTo(15, 22, 24, 26, 17, 36)
	c.CubicTo(14, 41, 15, 45, 17, 52)
	c.SetLineCapButt()
	c.SetLineWidth(7 * scale)
	c.SetHexColor("#1f6f78")
	c.StrokePreserve()
	c.SetLineWidth(2.6 * scale)
	c.SetHexColor("#3fa3a8")
	c.Stroke()
	c.ResetClip()

	// The bowl and its drain.
	c.DrawEllipse(39, 31.5, 11.5, 9.5)
	c.SetHexColor("#8d887e")
	c.Fill()
	c.DrawEllipse(39, 32.3, 10.3, 8.4)
	c.SetHexColor("#f6f5f1")
	c.Fill()
	c.DrawCircle(39, 32.5, 1.7)
	c.SetHexColor("#6a7073")
	c.Fill()
	return c.Image()
}

// PNG is the emblem as a file.
func PNG(px int) ([]byte, error) {
	var out bytes.Buffer
	if err := png.Encode(&out, Image(px)); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

package look

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
)

// Light is the direction in plan from which the key light comes, a unit vector.
var Light = geom.Vec{X: -0.6, Y: 0.8}

// lightZ is how much of the key light comes from above: its direction in space
// is (lightXY Light, lightZ), of length 1, about 50 degrees high.
const (
	lightZ  = 0.766
	lightXY = 0.643
)

// rgb is a colour in linear light.
type rgb struct{ r, g, b float32 }

func (c rgb) mul(f float32) rgb { return rgb{c.r * f, c.g * f, c.b * f} }

func (c rgb) times(d rgb) rgb { return rgb{c.r * d.r, c.g * d.g, c.b * d.b} }

func (c rgb) mix(d rgb, t float32) rgb {
	return rgb{c.r + (d.r-c.r)*t, c.g + (d.g-c.g)*t, c.b + (d.b-c.b)*t}
}

// luma is the relative luminance.
func (c rgb) luma() float32 { return 0.2126*c.r + 0.7152*c.g + 0.0722*c.b }

// linear is the transfer function of sRGB (IEC 61966-2-1) for each byte.
var linear = func() (t [256]float32) {
	for i := range t {
		x := float64(i) / 255
		if x <= 0.04045 {
			t[i] = float32(x / 12.92)
		} else {
			t[i] = float32(math.Pow((x+0.055)/1.055, 2.4))
		}
	}
	return t
}()

// encoded is the inverse: sRGB bytes by linear light in steps of 1/4095.
var encoded = func() (t [4096]uint8) {
	for i := range t {
		x := float64(i) / 4095
		if x <= 0.0031308 {
			x *= 12.92
		} else {
			x = 1.055*math.Pow(x, 1/2.4) - 0.055
		}
		t[i] = uint8(math.Round(x * 255))
	}
	return t
}()

func encode(x float32) uint8 {
	switch {
	case !(x > 0):
		return 0
	case x >= 1:
		return 255
	}
	return encoded[int(x*4095+0.5)]
}

func fromDesign(c design.Colour) rgb { return rgb{linear[c.R], linear[c.G], linear[c.B]} }

// srgb is an opaque colour.
func (c rgb) srgb() scene.Colour {
	return scene.Colour{R: encode(c.r), G: encode(c.g), B: encode(c.b), A: 0xff}
}

func clamp01(x float32) float32 { return max(0, min(1, x)) }

// smooth runs from 0 at 0 to 1 at 1 with level ends.
func smooth(x float32) float32 {
	x = clamp01(x)
	return x * x * (3 - 2*x)
}

package picture

import (
	"math"

	"example.org/castwright/model/design"
)

// linearOf is a colour of the design in linear light (IEC 61966-2-1).
func linearOf(c design.Colour) v3 { return v3{decoded(c.R), decoded(c.G), decoded(c.B)} }

func decoded(b uint8) float64 {
	x := float64(b) / 255
	if x <= 0.04045 {
		return x / 12.92
	}
	return math.Pow((x+0.055)/1.055, 2.4)
}

// encoded is the transfer function of sRGB (IEC 61966-2-1), from linear light to
// 0..1.
func encoded(x float64) float64 {
	switch {
	case !(x > 0):
		return 0
	case x >= 1:
		return 1
	case x <= 0.0031308:
		return 12.92 * x
	}
	return 1.055*math.Pow(x, 1/2.4) - 0.055
}

// transfer is encoded in 4096 steps that crowd toward black.
var transfer = func() (t [4097]float32) {
	for i := range t {
		x := float64(i) / 4096
		t[i] = float32(255 * encoded(x*x))
	}
	return t
}()

// shoulder is where the tone curve leaves the straight line.
const shoulder = 0.70

// toned bends light above the shoulder so that bright places keep their shape;
// the largest channel sets the bend, so that hues hold, with a slight loss of
// saturation toward white.
func toned(c v3) v3 {
	m := c.most()
	if m <= shoulder {
		return c
	}
	x := (m - shoulder) / (1 - shoulder)
	to := shoulder + (1-shoulder)*(1-math.Exp(-x))
	c = c.mul(to / m)
	white := min(1, 0.25*x) * (to - shoulder)
	return c.mix(v3{to, to, to}, white)
}

// crisp is the share of an S curve in the tone: it moves no value by more than
// 3 steps of 255.
const crisp = 0.12

// putPixel writes a colour as sRGB with a hashed dither of one step, so that even
// walls show no bands.
func putPixel(dst []uint8, c v3, x, y int) {
	c = toned(c)
	h := hash4(uint32(x), uint32(y), 0xd17e, 5)
	for k, v := range [3]float64{c.X, c.Y, c.Z} {
		d := float32(h>>(8*k)&0xff)/256 - 0.5
		at := math.Sqrt(max(0, min(1, v))) * 4096
		i := min(int(at), 4095)
		e := transfer[i] + (transfer[i+1]-transfer[i])*float32(at-float64(i))
		e += crisp * e * (255 - e) * (2*e - 255) / (255 * 255)
		dst[k] = uint8(max(0, min(255, e+0.5+0.9*d)))
	}
	dst[3] = 0xff
}

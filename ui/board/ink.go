package board

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// ink is the colours of what is shown over the top. The top itself may be of
// any colour, so each line has a casing that stands off from it.
type ink struct {
	accent tint // what is selected or in hand; deep enough for white text
	light  tint // casings and the bodies of handles
	dark   tint // lines and rims
	chip   tint // the ground of a label
	onChip tint // text on a label, whatever its ground
	faint  tint // what a press would take
	swath  tint // what a brush has swept over
	veil   tint // inside a frame that selects
	bad    tint // the ground of a number that can't be used, or far under its limit
	low    tint // the ground of a measure under its limit
}

// newInk mixes the colours for the theme in use.
func newInk() ink {
	accent := deepen(theme.Color(theme.ColorNamePrimary))
	return ink{
		accent: mix(accent, 0xff),
		light:  tintOf(0xff, 0xff, 0xff, 0xf0),
		dark:   tintOf(0x16, 0x1a, 0x1d, 0xff),
		chip:   tintOf(0x16, 0x1a, 0x1d, 0xe6),
		onChip: tintOf(0xff, 0xff, 0xff, 0xff),
		faint:  mix(accent, 0xa8),
		swath:  mix(accent, 0x70),
		veil:   mix(accent, 0x24),
		bad:    tintOf(0xb3, 0x1b, 0x1b, 0xff),
		low:    tintOf(0x8a, 0x55, 0x00, 0xff),
	}
}

// whiteOn is the luminance of the lightest ground on which white text has the
// contrast of 4.5 to 1 that WCAG 2.2 asks for: 1.05 / 4.5 - 0.05.
const whiteOn = 0.183

// deepen darkens a colour until white text can be read on it.
func deepen(c color.Color) color.Color {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	for luminance(n) > whiteOn {
		n.R, n.G, n.B = n.R-n.R/16, n.G-n.G/16, n.B-n.B/16
	}
	return n
}

// tintOf premultiplies a colour.
func tintOf(r, g, b, a uint32) tint { return tint{r * a / 0xff, g * a / 0xff, b * a / 0xff, a} }

// mix is a theme's colour with another alpha.
func mix(c color.Color, alpha uint32) tint {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	return tintOf(uint32(n.R), uint32(n.G), uint32(n.B), alpha)
}

// luminance is the relative luminance of WCAG 2.2.
func luminance(c color.Color) float64 {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	linear := func(v uint8) float64 {
		x := float64(v) / 0xff
		if x <= 0.04045 {
			return x / 12.92
		}
		return math.Pow((x+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(n.R) + 0.7152*linear(n.G) + 0.0722*linear(n.B)
}

// textSize is the size of labels in points.
func textSize() float64 {
	size := theme.TextSize()
	if !(size >= 6) {
		return 13
	}
	return math.Min(float64(size), 28)
}

// textFont is the theme's font.
func textFont() fyne.Resource { return theme.Font(fyne.TextStyle{}) }

// dark reports whether the theme in use is a dark one, by its ground: a theme
// may force either, whatever the system's is.
func dark() bool { return luminance(theme.Color(theme.ColorNameBackground)) < whiteOn }

// tintColour is a tint as the standard library takes it.
func tintColour(c tint) color.RGBA { return color.RGBA{uint8(c.r), uint8(c.g), uint8(c.b), uint8(c.a)} }

package board

import (
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2/test"

	look "example.org/castwright/ui/theme"
)

// TestInkContrast holds what is drawn over the top to WCAG 2.2 in both themes: text
// on the grounds of its labels to 4.5 to 1 (1.4.3), the body of a handle to its rim,
// and each line to its casing, to 3 to 1 (1.4.11), so that they are seen on a top of
// any colour. A label's ground that lets the top through is taken over white, the
// worst for light text.
func TestInkContrast(t *testing.T) {
	a := test.NewTempApp(t)
	over := func(c tint, ground float64) color.NRGBA {
		mix := func(v uint32) uint8 { return uint8(math.Round(float64(v) + ground*float64(0xff-c.a)/0xff)) }
		return color.NRGBA{mix(c.r), mix(c.g), mix(c.b), 0xff}
	}
	contrast := func(p, q color.NRGBA) float64 {
		x, y := luminance(p), luminance(q)
		return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
	}
	for _, choice := range []look.Choice{look.Light, look.Dark} {
		a.Settings().SetTheme(look.New(choice))
		k := newInk()
		for _, p := range []struct {
			name      string
			top, on   tint
			least, at float64 // ground below both
		}{
			{"text on a label", k.onChip, k.chip, 4.5, 0xff},
			{"text on the label in hand", k.onChip, k.accent, 4.5, 0xff},
			{"text on a number that can't be used", k.onChip, k.bad, 4.5, 0xff},
			{"text on a measure under its limit", k.onChip, k.low, 4.5, 0xff},
			{"a handle's rim on its body", k.dark, k.light, 3, 0},
			{"what is in hand on its casing", k.accent, k.light, 3, 0},
			{"a line on its casing", k.dark, k.light, 3, 0xff},
		} {
			ground := over(p.on, p.at)
			if got := contrast(over(p.top, 0), ground); got < p.least {
				t.Errorf("%s: %s has a contrast of %.2f, want %g", choice, p.name, got, p.least)
			}
		}
	}
}

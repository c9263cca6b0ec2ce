package panel

import (
	"testing"

	"example.org/castwright/model/units"
)

// What somebody typed is shown as it is; what follows from something else, such as a
// place on a spline, is shown to the maker's rounding, and said exactly in the hint.
func TestLengthText(t *testing.T) {
	const mm, in = units.Millimetre, units.Inch
	for _, tt := range []struct {
		l           units.Length
		sys         units.System
		text, exact string
	}{
		{648 * mm, units.Metric, "648 mm", ""},
		{12*mm + 345*units.Micrometre, units.Metric, "12.345 mm", ""},
		{in / 8, units.Metric, "3.175 mm", ""},
		{-8_498_552, units.Metric, "-8.5 mm", "-8.498552 mm"},
		{433_012_702, units.Metric, "433 mm", "433.012702 mm"},
		{-8_498_552, units.Imperial, `-0.335"`, `-0.33458866"`},
		{12*in + 3*in/10, units.Imperial, `12.3"`, ""},
		{in * 3 / 10, units.Imperial, `0.3"`, ""},
		{433_012_702, units.Imperial, `17 1/16"`, `17.04774417"`},
		{1580 * mm, units.Imperial, `62 3/16"`, "1580 mm"},
		{123_457, units.Imperial, `0.005"`, `0.0048605"`},
		{12, units.Imperial, `0.00000047"`, ""},
		{0, units.Imperial, `0"`, ""},
	} {
		if text, exact := lengthText(tt.l, tt.sys); text != tt.text || exact != tt.exact {
			t.Errorf("%d nm: %q, %q; want %q, %q", tt.l, text, exact, tt.text, tt.exact)
		}
	}
}

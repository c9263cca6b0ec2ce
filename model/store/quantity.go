package store

import (
	"fmt"
	"regexp"
	"strconv"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
	"github.com/shopspring/decimal"
)

// Decimal places of the exact quantities, and bounds of those that have no
// bound of their own.
const (
	lengthPlaces = 6 // nanometres, in mm
	anglePlaces  = 6 // micro-degrees, in degrees
	sharePlaces  = 4 // parts per million, in per cent
	maxAngle     = 360_000 * int64(units.Degree)
	maxShare     = 1000 * int64(units.Whole)
)

// priceDecimals is how finely a price may be written.
const priceDecimals = 6

var priceForm = regexp.MustCompile(fmt.Sprintf(`^-?[0-9]{1,12}(\.[0-9]{1,%d})?$`, priceDecimals))

func parsePrice(s string) (decimal.Decimal, bool) {
	if !priceForm.MatchString(s) {
		return decimal.Decimal{}, false
	}
	d, err := decimal.NewFromString(s)
	if err != nil {
		return decimal.Decimal{}, false
	}
	if d.IsZero() {
		return decimal.Decimal{}, true // one zero, so that equal jobs are equal
	}
	return d, true
}

// priceText writes a price with two decimals, or more where it has more.
func priceText(p decimal.Decimal) string {
	if e := p.Exponent(); e > 20 || e < -1000 {
		return "too many digits" // refused when read; writing it out might never end
	}
	places := int32(2)
	for places < -p.Exponent() && !p.Equal(p.Truncate(places)) {
		places++
	}
	return p.StringFixed(places)
}

// colourText writes a colour as #rrggbb.
func colourText(c design.Colour) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

func parseColour(s string) (design.Colour, bool) {
	if len(s) != 7 || s[0] != '#' {
		return design.Colour{}, false
	}
	n, err := strconv.ParseUint(s[1:], 16, 32)
	if err != nil {
		return design.Colour{}, false
	}
	return design.Colour{R: uint8(n >> 16), G: uint8(n >> 8), B: uint8(n)}, true
}

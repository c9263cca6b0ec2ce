package report

import (
	"strconv"
	"strings"

	"example.org/castwright/model/takeoff"
	"example.org/castwright/model/units"
	"github.com/shopspring/decimal"
)

// amount writes a value of a figure in the maker's units.
func amount(x float64, f takeoff.Figure, sys units.System) string {
	switch f.Unit {
	case "mm":
		return units.Format(units.FromMM(x), sys)
	case "mm2":
		return units.FormatArea(x, sys)
	case "mm3":
		return units.FormatVolume(x/1e6, sys)
	case "kg":
		return units.FormatMass(x, sys)
	case "L":
		if f.Key == "mix_volume_l" || f.Key == "glass_displaces_l" {
			return units.FormatBulk(x, sys)
		}
		return units.FormatVolume(x, sys)
	}
	return counted(x, f.Unit)
}

// counted writes a number of a unit as it is; bags and pours are counted in words
// of their own.
func counted(x float64, unit string) string {
	text := strconv.FormatFloat(x, 'f', -1, 64) + " " + unit
	if x != 1 && (unit == "bag" || unit == "pour") {
		text += "s"
	}
	return text
}

// rangeOf writes the range of a figure, "" when it is exact or shows as one value.
func rangeOf(f takeoff.Figure, sys units.System) string {
	low, high := amount(f.Low, f, sys), amount(f.High, f, sys)
	if low == high {
		return ""
	}
	return low + " to " + high
}

// reading writes a value of a warning in the maker's units, not to be broken over
// two lines.
func reading(x float64, unit string, sys units.System) string {
	return unbroken(quantity(x, unit, sys))
}

func quantity(x float64, unit string, sys units.System) string {
	switch unit {
	case "mm":
		return units.Format(units.FromMM(x), sys)
	case "kg":
		return units.FormatMass(x, sys)
	case "MPa":
		return units.FormatStress(x, sys)
	}
	return strings.TrimSpace(strconv.FormatFloat(x, 'g', 3, 64) + " " + unit)
}

// money writes an amount of money with its decimals, two at least.
func money(currency string, d decimal.Decimal) string {
	text := d.String()
	if d.Exponent() >= -2 {
		text = d.StringFixed(2)
	}
	return strings.TrimSpace(plain(currency) + " " + text)
}

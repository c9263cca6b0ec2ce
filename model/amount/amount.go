// Package amount writes quantities as people read them: in the maker's units,
// bags and pours counted, money with its cents. Window, sheets and command line
// say the same value in the same words.
package amount

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/castwright/model/takeoff"
	"example.org/castwright/model/units"
	"github.com/shopspring/decimal"
)

// Figure writes a figure's value in the maker's units.
func Figure(f takeoff.Figure, sys units.System) string { return figure(f, f.Value, sys) }

// Range writes how far a figure may be off, "" when it is exact or shows as one
// value.
func Range(f takeoff.Figure, sys units.System) string {
	low, high := figure(f, f.Low, sys), figure(f, f.High, sys)
	if low == high {
		return ""
	}
	return low + " to " + high
}

func figure(f takeoff.Figure, x float64, sys units.System) string {
	if f.Unit == "L" && (f.Key == "mix_volume_l" || f.Key == "glass_displaces_l") {
		return units.FormatBulk(x, sys)
	}
	return Of(x, f.Unit, sys)
}

// Of writes x, a value in one of the units of the report ("mm", "mm2", "mm3",
// "kg", "L", "MPa", "bag", "pour" or any other), in the maker's units.
func Of(x float64, unit string, sys units.System) string {
	switch unit {
	case "mm":
		return units.Format(units.FromMM(x), sys)
	case "mm2":
		return units.FormatArea(x, sys)
	case "mm3":
		return units.FormatVolume(x/1e6, sys)
	case "kg":
		return units.FormatMass(x, sys)
	case "L":
		return units.FormatVolume(x, sys)
	case "MPa":
		return units.FormatStress(x, sys)
	case "bag", "pour":
		return Count(int(math.Round(x)), unit)
	case "count":
		return strconv.FormatFloat(x, 'f', 0, 64)
	}
	return strings.TrimSpace(strconv.FormatFloat(x, 'g', 3, 64) + " " + unit)
}

// Count writes a number of things: "1 bag", "4 bags".
func Count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// Money writes an amount of money: whole cents, or finer when the price is.
func Money(currency string, d decimal.Decimal) string {
	text := d.StringFixed(2)
	if d.Exponent() < -2 {
		text = d.String()
	}
	if currency == "" {
		return text
	}
	// A sign stands before the number, a word such as EUR apart from it.
	if r := []rune(currency); len(r) == 1 {
		return currency + text
	}
	return currency + " " + text
}

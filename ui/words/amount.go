package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/castwright/model/takeoff"
	"example.org/castwright/model/units"
	"github.com/shopspring/decimal"
)

// Figure is a figure's value in the maker's units.
func Figure(f takeoff.Figure, sys units.System) string { return figure(f, f.Value, sys) }

// Range is how far a figure may be off, "" when it is exact or shows as one
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
	return Amount(x, f.Unit, sys)
}

// Amount is a value of a unit of the report in the maker's units.
func Amount(x float64, unit string, sys units.System) string {
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
	case "bag", "pour":
		return Count(int(math.Round(x)), unit)
	}
	return strings.TrimSpace(strconv.FormatFloat(x, 'g', 3, 64) + " " + unit)
}

// Count is a number of things.
func Count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// Size is a width and a depth in one: "1550 x 560 mm", `61" x 22"`.
func Size(width, depth float64, sys units.System) string {
	w, d := Amount(width, "mm", sys), Amount(depth, "mm", sys)
	if sys == units.Metric {
		w = strings.TrimSuffix(w, " mm")
	}
	return w + " × " + d
}

// Money is an amount of money: whole cents, or finer when the price is.
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

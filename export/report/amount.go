package report

import (
	"strconv"

	"example.org/castwright/model/takeoff"
	"example.org/castwright/model/units"
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
	text := strconv.FormatFloat(x, 'f', -1, 64) + " " + f.Unit
	if x != 1 {
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

// reading writes a value of a warning in the maker's units.
func reading(x float64, unit string, sys units.System) string {
	switch unit {
	case "mm":
		return units.Format(units.FromMM(x), sys)
	case "kg":
		return units.FormatMass(x, sys)
	case "":
		return strconv.FormatFloat(x, 'g', 3, 64)
	}
	return strconv.FormatFloat(x, 'g', 4, 64) + " " + unit
}

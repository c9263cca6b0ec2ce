package units

import (
	"math"
	"strconv"
)

// Exact sizes of the customary units: NIST SP 811 (2008), App. B.8; NIST
// Handbook 44, App. C.
const (
	PoundKG         = 0.45359237                  // kg in an avoirdupois pound
	SquareFootMM2   = 304.8 * 304.8               // mm2 in a square foot
	CubicFootL      = 28.316846592                // litres in a cubic foot
	GallonL         = 3.785411784                 // litres in a US gallon
	QuartL          = GallonL / 4                 // litres in a US liquid quart
	FluidOunceL     = GallonL / 128               // litres in a US fluid ounce
	PoundPerCubicFt = PoundKG / CubicFootL * 1000 // kg/m3 in a pound per cubic foot
	PoundPerGallon  = PoundKG / GallonL * 1000    // kg/m3 in a pound per US gallon
)

// PSI is a pound-force per square inch in MPa, rounded: NIST SP 811, App. B.8.
const PSI = 0.006894757293168

// unknown stands for a number that can't be shown.
const unknown = "–"

// FormatMass writes kilograms as kg or pounds.
func FormatMass(kg float64, sys System) string {
	if sys == Imperial {
		return amount(kg/PoundKG, "lb")
	}
	return amount(kg, "kg")
}

// FormatVolume writes litres of a liquid: millilitres and litres, or US fluid
// ounces, quarts, and gallons with quarts.
func FormatVolume(litres float64, sys System) string {
	size := math.Abs(litres)
	switch {
	case sys != Imperial && size < 1 && size > 0:
		return amount(litres*1000, "mL")
	case sys != Imperial:
		return amount(litres, "L")
	case math.Round(size/QuartL*100) < 100:
		return amount(litres/FluidOunceL, "fl oz")
	case math.Round(size/QuartL*100) < 400:
		return amount(litres/QuartL, "qt")
	case size >= 1e6*GallonL || litres != litres:
		return amount(litres/GallonL, "gal")
	}
	tenths := math.RoundToEven(size / QuartL * 10)
	gallons := math.Floor(tenths / 40)
	text := strconv.FormatFloat(math.Copysign(gallons, litres), 'f', 0, 64) + " gal"
	if quarts := tenths - 40*gallons; quarts > 0 {
		text += " " + trim(strconv.FormatFloat(quarts/10, 'f', 1, 64)) + " qt"
	}
	return text
}

// FormatBulk writes litres of concrete or mix: litres or cubic feet.
func FormatBulk(litres float64, sys System) string {
	if sys == Imperial {
		return amount(litres/CubicFootL, "ft³")
	}
	return amount(litres, "L")
}

// FormatArea writes square millimetres as square metres or square feet.
func FormatArea(mm2 float64, sys System) string {
	if sys == Imperial {
		return amount(mm2/SquareFootMM2, "ft²")
	}
	return amount(mm2/1e6, "m²")
}

// FormatStress writes megapascals as MPa or psi.
func FormatStress(mpa float64, sys System) string {
	if sys == Imperial {
		return amount(mpa/PSI, "psi")
	}
	return amount(mpa, "MPa")
}

// amount writes a number with three significant figures or one decimal, at most
// three decimals, and its unit.
func amount(x float64, unit string) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return unknown
	}
	decimals := 3
	switch size := math.Abs(x); {
	case size >= 1000:
		decimals = 0
	case size >= 10:
		decimals = 1
	case size >= 1:
		decimals = 2
	}
	text := strconv.FormatFloat(x, 'f', decimals, 64)
	if zero, _ := strconv.ParseFloat(text, 64); zero == 0 {
		text = "0"
	}
	return text + " " + unit
}

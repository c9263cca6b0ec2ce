package units_test

import (
	"math"
	"testing"

	"example.org/castwright/model/units"
)

// Factors and worked values of NIST SP 811 (2008), App. B.8, and NIST Handbook
// 44, App. C.
func TestConversions(t *testing.T) {
	tests := []struct {
		source    string
		got, want float64
		tol       float64
	}{
		{"SP 811: inch = 25.4 mm exactly", units.Inch.MM(), 25.4, 0},
		{"SP 811: foot = 0.3048 m exactly", units.Foot.MM(), 304.8, 0},
		{"62.5 in = 1587.5 mm", (62*units.Inch + units.Inch/2).MM(), 1587.5, 0},
		{"SP 811: square foot = 0.09290304 m2", units.SquareFootMM2 / 1e6, 0.09290304, 1e-15},
		{"1320 in2 = 9.1667 ft2", 1320 * 25.4 * 25.4 / units.SquareFootMM2, 9.1667, 5e-5},
		{"SP 811: cubic foot = 28.316846592 L", units.CubicFootL, 28.316846592, 0},
		{"1980 in3 = 1.145833 ft3", 1980 * 0.016387064 / units.CubicFootL, 1.145833, 5e-7},
		{"HB 44: gallon = 231 in3", units.GallonL, 231 * 0.016387064, 1e-15},
		{"cubic foot = 7.480519481 gal", units.CubicFootL / units.GallonL, 7.480519481, 5e-10},
		{"5 gal = 18.92705892 L", 5 * units.GallonL, 18.92705892, 1e-14},
		{"HB 44: quart = 0.946352946 L", units.QuartL, 0.946352946, 1e-15},
		{"HB 44: fluid ounce = 29.5735295625 mL", units.FluidOunceL * 1000, 29.5735295625, 1e-13},
		{"142.431 lb = 64.606 kg", 142.431 * units.PoundKG, 64.606, 5e-4},
		{"SP 811: lb/ft3 = 16.01846337396 kg/m3", units.PoundPerCubicFt, 16.01846337396, 5e-12},
		{"145 lb/ft3 = 2322.677 kg/m3", 145 * units.PoundPerCubicFt, 2322.677, 5e-4},
		{"4000 psi = 27.579 MPa", 4000 * units.PSI, 27.579, 5e-4},
		{"SP 811: lb/gal = 119.8264273 kg/m3", units.PoundPerGallon, 119.8264273, 5e-8},
	}
	for _, tt := range tests {
		if math.Abs(tt.got-tt.want) > tt.tol {
			t.Errorf("%s: got %.13g, want %.13g", tt.source, tt.got, tt.want)
		}
	}
}

func TestFormatAmounts(t *testing.T) {
	const metric, imperial = units.Metric, units.Imperial
	tests := []struct {
		got, want string
	}{
		{units.FormatMass(66.756, metric), "66.8 kg"},
		{units.FormatMass(64.606, imperial), "142.4 lb"},
		{units.FormatMass(0.1365, metric), "0.137 kg"},
		{units.FormatMass(1234.5, metric), "1234 kg"},
		{units.FormatMass(math.NaN(), metric), "–"},
		{units.FormatMass(math.Inf(-1), imperial), "–"},
		{units.FormatMass(math.Copysign(0, -1), imperial), "0 lb"},
		{units.FormatMass(-0.0001, metric), "0 kg"},
		{units.FormatVolume(0, metric), "0 L"},
		{units.FormatVolume(0.12411, metric), "124.1 mL"},
		{units.FormatVolume(0.12411, imperial), "4.20 fl oz"}, // 7.573631 in3 = 4.1966 fl oz
		{units.FormatVolume(7.348, metric), "7.35 L"},
		{units.FormatVolume(7.348, imperial), "1 gal 3.8 qt"}, // 16.2 lb of water = 1.941 gal
		{units.FormatVolume(2, imperial), "2.11 qt"},
		{units.FormatVolume(units.GallonL, imperial), "1 gal"},
		{units.FormatVolume(3.785, imperial), "1 gal"},
		{units.FormatVolume(4*units.GallonL-0.001, imperial), "4 gal"},
		{units.FormatVolume(-5*units.GallonL, imperial), "-5 gal"},
		{units.FormatVolume(math.Inf(1), imperial), "–"},
		{units.FormatVolume(math.NaN(), imperial), "–"},
		{units.FormatBulk(27.8152, imperial), "0.982 ft³"},
		{units.FormatBulk(27.8152, metric), "27.8 L"},
		{units.FormatArea(851611.2, metric), "0.852 m²"},
		{units.FormatArea(851611.2, imperial), "9.17 ft²"},
		{units.FormatStress(1.3082, imperial), "189.7 psi"}, // 0.6 x 5 x the root of 4000 psi
		{units.FormatStress(1.3082, metric), "1.31 MPa"},
		{units.FormatAngle(22*units.Degree + units.Degree/2), "22.5°"},
		{units.FormatAngle(-units.Degree), "-1°"},
		{units.FormatShare(55 * units.Percent), "55 %"},
		{units.FormatShare(units.Whole), "100 %"},
		{units.FormatShare(1), "0.0001 %"},
	}
	for i, tt := range tests {
		if tt.got != tt.want {
			t.Errorf("row %d: got %q, want %q", i, tt.got, tt.want)
		}
	}
}

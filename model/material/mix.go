package material

import "example.org/castwright/model/design"

// Stock densities in kg/m3.
const (
	// CuredDensity is that of normal concrete: 150 lb/ft3 is 2403 kg/m3, the upper
	// end of the usual 145 to 150 lb/ft3 (ACI 318-19 R19.2, from memory). It stands
	// on the safe side of what a mortar bag's own mass and yield give.
	CuredDensity = 2400
	// FreshDensity adds the 1 kN/m3 (102 kg/m3) that EN 1991-1-1:2002, Table A.1,
	// adds for unhardened concrete (from memory), rounded.
	FreshDensity = 2500
	// WaterDensity is that of mixing and bowl water.
	WaterDensity = 1000
)

// RapidMortar is a rapid-setting mortar in 25 kg bags: 4.7 to 5.2 L of water and
// about 14 L of yield to a bag, worked for 10 to 20 minutes, stripped after 1 to
// 3 hours; common practice, no source. The least working time and the longest
// wait are taken.
//
// A bag's own figures give (25 + 4.9) kg / 14 L = 2136 kg/m3 ([BagDensity]), which
// is lighter than [CuredDensity]. Amounts are reckoned with the bag's yield,
// weights with the densities, so that neither the order nor the lift comes out
// short; the take-off gives the lighter weight as the low end of its range. When
// the product's data sheet is in hand its densities are to be typed in.
func RapidMortar() design.Mix {
	return design.Mix{
		Name: "Rapid-setting mortar, 25 kg bag", BagMass: 25, BagYield: 14, BagWater: 4.9,
		FreshDensity: FreshDensity, CuredDensity: CuredDensity, Waste: 0.10,
		Rapid: true, StripHours: 3, WorkingMinutes: 10,
	}
}

// OrdinaryMix is a plain concrete mix in 25 kg bags: 2.6 L of water and 11.5 L of
// yield to a bag, stripped after 3 to 7 days; common practice, no source. Its own
// figures give (25 + 2.6) kg / 11.5 L = 2400 kg/m3.
func OrdinaryMix() design.Mix {
	return design.Mix{
		Name: "Ordinary concrete mix, 25 kg bag", BagMass: 25, BagYield: 11.5, BagWater: 2.6,
		FreshDensity: FreshDensity, CuredDensity: CuredDensity, Waste: 0.10,
		StripHours: 7 * 24, WorkingMinutes: 60,
	}
}

// BagDensity is the density in kg/m3 of fresh mix that a bag's own figures give:
// mass of mix and water over yield (ASTM C138). It is 0 without a yield.
func BagDensity(m design.Mix) float64 {
	if !(m.BagYield > 0) {
		return 0
	}
	return (m.BagMass + m.BagWater*WaterDensity/1000) / m.BagYield * 1000
}

// StrengthClass is a class of rapid-hardening packaged mix by its least
// compressive strength in MPa.
type StrengthClass struct {
	Name                          string
	ThreeHours, OneDay, SevenDays float64
}

// StrengthSource is where the classes stand.
var StrengthSource = Source{"ASTM C928 Table 1", Published}

// StrengthClasses is the classes, weakest first.
var StrengthClasses = []StrengthClass{
	{"R1", 3.5, 14, 28},
	{"R2", 7, 21, 28},
	{"R3", 21, 35, 35},
}

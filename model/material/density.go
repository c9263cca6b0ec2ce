package material

import "example.org/castwright/model/units"

// Density is the range of a stuff's density in kg/m3 that a source gives.
type Density struct {
	Name      string
	Low, High float64
	Source    Source
}

// kilonewton is the mass in kg of 1 kN: standard gravity 9.80665 m/s2 (NIST SP
// 811, App. B.8).
const kilonewton = 1000 / 9.80665

// Densities is what published sources give for the stuffs of the trade, to judge
// a data sheet by.
var Densities = []Density{
	{"Normal concrete", 135 * units.PoundPerCubicFt, 160 * units.PoundPerCubicFt,
		Source{"ACI 318-19 chapter 2", Memory}},
	{"Plain concrete, for loads", 24 * kilonewton, 24 * kilonewton,
		Source{"EN 1991-1-1:2002 Table A.1", Memory}},
	{"Reinforced or fresh concrete, for loads", 25 * kilonewton, 25 * kilonewton,
		Source{"EN 1991-1-1:2002 Table A.1", Published}},
	{"Cement mortar, for loads", 19 * kilonewton, 23 * kilonewton,
		Source{"EN 1991-1-1:2002 Table A.1", Memory}},
	{"Concrete with glass fibre", 120 * units.PoundPerCubicFt, 140 * units.PoundPerCubicFt,
		Source{"PCI MNL-128", Memory}},
	{"Float glass", GlassDensity, GlassDensity, Source{"EN 572-1", Published}},
	{"Crushed glass, loose", 1120, 1120, Source{"FHWA-RD-97-148", Memory}},
	{"Crushed glass, compacted", 1800, 1900, Source{"FHWA-RD-97-148", Memory}},
	{"Cured unfilled epoxy", 1150, 1200, Source{"Lee and Neville, Handbook of Epoxy Resins", Memory}},
	{"Water", WaterDensity, WaterDensity, Source{"CRC Handbook", Memory}},
}

package takeoff

import "example.org/castwright/model/material"

// Doubt is how far an input of the take-off may be off.
type Doubt struct {
	What   string // the input and its range, in words
	Source material.Source
	// low and high are factors, or amounts in mm where the input is a depth.
	low, high float64
}

var practice = material.Source{Status: material.Practice}

// The doubts of the inputs. Areas and volumes of the drawing itself are taken as
// exact: curves are flattened to 0.01 mm.
var (
	doubtScreed = Doubt{"thickness as screeded, 1 mm either way", practice, -1, 1}
	doubtGrind  = Doubt{"depth that grinding takes, 0.5 mm either way", practice, -0.5, 0.5}
	doubtYield  = Doubt{"yield of a bag, 5 % either way", practice, 0.95, 1.05}
	doubtWater  = Doubt{"water to a bag, 4.7 to 5.2 L where 4.9 L is stated", practice,
		4.7 / 4.9, 5.2 / 4.9}
	doubtDensity = Doubt{"density of concrete, from what the bag's own mass, water and yield give " +
		"to 2447 kg/m3 (24 kN/m3) where 2400 is stated",
		material.Source{Work: "EN 1991-1-1:2002 Table A.1", Status: material.Memory}, 1, 2447.3 / 2400}
	doubtCoverage = Doubt{"share of a bed that is glass, a tenth of it either way", practice, 0.9, 1.1}
	doubtGlass    = Doubt{"density of glass, 2500 to 2530 kg/m3",
		material.Source{Work: "EN 572-1; tables of soda-lime glass", Status: material.Published},
		1, 2530.0 / 2500}
	doubtChannel = Doubt{"depth of a channel, 0.5 mm either way", practice, -0.5, 0.5}
	doubtResin   = Doubt{"density of resin, 1050 to 1160 kg/m3 where 1100 is stated",
		material.Source{Work: "Lee and Neville, Handbook of Epoxy Resins", Status: material.Memory},
		1050.0 / 1100, 1160.0 / 1100}
	doubtFall = Doubt{"top coat where a channel runs out over an edge, up to 30 % more", practice, 1, 1.3}
	doubtBowl = Doubt{"water in a bowl, 1/2 (paraboloid) to all (straight sides) of its area " +
		"times its depth, 2/3 taken (half ellipsoid)",
		material.Source{Work: "volumes of solids, any handbook of mensuration", Status: material.Published},
		0.5, 1}
)

// Doubts is every input whose range the figures carry.
func Doubts() []Doubt {
	return []Doubt{doubtScreed, doubtGrind, doubtYield, doubtWater, doubtDensity, doubtCoverage,
		doubtGlass, doubtChannel, doubtResin, doubtFall, doubtBowl}
}

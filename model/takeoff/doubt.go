package takeoff

import "example.org/castwright/model/material"

// doubt is how far an input may be off.
type doubt struct {
	what      string
	low, high float64 // as a factor, or in mm where what says so
	source    material.Source
}

var practice = material.Source{Status: material.Practice}

// The doubts of the inputs. Areas and volumes of the drawing itself are taken as
// exact: curves are flattened to 0.01 mm.
var (
	doubtScreed = doubt{"thickness as screeded, mm", -1, 1, practice}
	doubtGrind  = doubt{"depth that grinding takes, mm", -0.5, 0.5, practice}
	doubtYield  = doubt{"yield of a bag", 0.95, 1.05, practice}
	doubtWater  = doubt{"water to a bag: 4.7 to 5.2 L for 4.9 L", 4.7 / 4.9, 5.2 / 4.9, practice}
	// The low end of a density is what the bag's own mass, water and yield give,
	// where that is less.
	doubtDensity = doubt{"density of concrete: 24 kN/m3 is 2447 for 2400 kg/m3", 1, 2447.3 / 2400,
		material.Source{Work: "EN 1991-1-1:2002 Table A.1", Status: material.Memory}}
	doubtCoverage = doubt{"share of a bed that is glass", 0.9, 1.1, practice}
	doubtGlass    = doubt{"density of glass: 2500 to 2530 kg/m3", 1, 1.012,
		material.Source{Work: "EN 572-1; tables of soda-lime glass", Status: material.Published}}
	doubtChannel = doubt{"depth of a channel, mm", -0.5, 0.5, practice}
	doubtResin   = doubt{"density of resin: 1050 to 1160 for 1100 kg/m3", 1050.0 / 1100, 1160.0 / 1100,
		material.Source{Work: "Lee and Neville, Handbook of Epoxy Resins", Status: material.Memory}}
	// A flood coat that runs over an open end needs 20 to 30 % more.
	doubtFall = doubt{"top coat where a channel runs out over an edge", 1, 1.3, practice}
	// The water in a bowl as a share of its area times its depth: a paraboloid 1/2,
	// a half ellipsoid 2/3, straight sides 1.
	doubtBowl = doubt{"fullness of a bowl", 0.5, 1,
		material.Source{Work: "volumes of solids, any handbook of mensuration", Status: material.Published}}
)

package material

import "example.org/castwright/model/design"

// ResinDensity is that of mixed casting resin in kg/m3: 1.16 for the resin and
// 0.95 to 1.0 for the hardener at 2:1 gives 1.10 (Lee and Neville, Handbook of
// Epoxy Resins, from memory).
const ResinDensity = 1100

// Resins by the depth that one pour may have; depths and ratios are common
// practice, no source. The product's data sheet rules.
func Resins() []design.Resin {
	return []design.Resin{CoatingResin(), MediumResin(), DeepResin()}
}

// CoatingResin is for coats and shallow fills: 1/8 in a pour.
func CoatingResin() design.Resin {
	return design.Resin{Name: "Coating resin, 1:1", PartsA: 1, PartsB: 1,
		Density: ResinDensity, MaxPour: 3.175, Waste: 0.10}
}

// MediumResin is for channels: 1/2 in a pour.
func MediumResin() design.Resin {
	return design.Resin{Name: "Casting resin, 2:1", PartsA: 2, PartsB: 1,
		Density: ResinDensity, MaxPour: 12.7, Waste: 0.10}
}

// DeepResin is for deep channels: 1 in a pour, the lesser of the 1 to 2 in that
// the trade gives.
func DeepResin() design.Resin {
	return design.Resin{Name: "Deep-pour resin, 2:1", PartsA: 2, PartsB: 1,
		Density: ResinDensity, MaxPour: 25.4, Waste: 0.10}
}

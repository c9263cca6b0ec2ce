package material

import "example.org/castwright/model/design"

// GlassDensity is that of solid soda-lime glass in kg/m3: EN 572-1.
const GlassDensity = 2500

// SodaLimeGlass is crushed window or container glass.
func SodaLimeGlass() design.GlassStock {
	return design.GlassStock{Name: "Crushed soda-lime glass", Density: GlassDensity, Waste: 0.10}
}

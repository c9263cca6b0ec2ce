package material

import "example.org/castwright/model/design"

// assumed marks the name of what a job does not state.
const assumed = " (assumed: the job states none)"

// Completed is the materials to reckon with. What a job says nothing of is taken as
// [Defaults] has it, under a name that says so, and so are densities that are
// missing: a top without a density would weigh nothing and frighten nobody. Other
// figures stay as they are; prices are never made up.
func Completed(m design.Materials) design.Materials {
	if m.Mix.Nothing() {
		own := RapidMortar()
		own.Name, own.BagPrice = own.Name+assumed, m.Mix.BagPrice
		m.Mix = own
	}
	if m.Resin.Nothing() {
		own := MediumResin()
		own.Name, own.LitrePrice = own.Name+assumed, m.Resin.LitrePrice
		m.Resin = own
	}
	for _, d := range [...]struct {
		of      *float64
		density float64
	}{
		{&m.Mix.FreshDensity, FreshDensity}, {&m.Mix.CuredDensity, CuredDensity},
		{&m.Resin.Density, ResinDensity}, {&m.Glass.Density, GlassDensity},
	} {
		if !(*d.of > 0) {
			*d.of = d.density
		}
	}
	return m
}

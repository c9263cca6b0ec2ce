package takeoff

import (
	"fmt"
	"math"
)

// glass reckons the beds. Glass is laid as deep as the bed is cast; grinding
// takes the top of it away with the face.
func (r *reckoning) glass(t *Takeoff) {
	var area float64
	var terms []string
	var moment [3]float64
	for i, b := range r.s.Beds {
		if i >= len(r.ms.Beds) {
			break
		}
		a, depth := positive(r.ms.Beds[i].Area), positive(b.Depth)
		cover := positive(b.Coverage)
		left := math.Max(0, depth-r.grind)
		area += a
		cast := doubtCoverage.off(cover)
		cast.high = math.Max(cover, math.Min(1, cast.high))
		r.bedCast = r.bedCast.plus(cast.scaled(a * depth))
		r.bedLeft = r.bedLeft.plus(cast.scaled(a * left))
		at := r.ms.Beds[i].Centroid
		for k, x := range [3]float64{at.X, at.Y, r.s.Thickness - left/2} {
			moment[k] += a * left * cover * finite(x)
		}
		terms = append(terms, fmt.Sprintf("%s m2 x %s mm x %s", num(a/1e6, 6), num(depth, 3),
			percent(cover)))
	}
	if r.bedLeft.value > 0 {
		for k := range moment {
			r.bedCentre[k] = moment[k] / r.bedLeft.value
		}
	}
	rho := doubtGlass.off(r.m.Glass.Density)
	sum := "no glass beds"
	if len(terms) > 0 {
		sum = joinSum(terms)
	}
	t.GlassArea = figure("glass_area_mm2", "Glass beds, area", "mm2", exact(area),
		"plan area of the beds on the top, less openings and channels", "the drawing")
	mass := r.bedCast.times(rho).scaled(1 / mm3PerM3)
	t.GlassMass0 = figure("glass_mass_kg", "Glass in the beds", "kg", mass,
		fmt.Sprintf("%s = %s L of glass x %s kg/m3 = %s kg", sum, litres(r.bedCast.value),
			num(rho.value, 0), num(mass.value, 3)),
		"EN 572-1 for the density; "+doubtCoverage.Source.String()+" for the coverage's range")
	t.Displaced = figure("glass_displaces_l", "Mix that the glass displaces", "L",
		r.bedCast.scaled(1/mm3PerLitre),
		fmt.Sprintf("%s = %s L of solid glass", sum, litres(r.bedCast.value)), "geometry")
}

// glassToBuy reckons the glass of beds and resin with waste.
func (r *reckoning) glassToBuy(t *Takeoff) {
	rho := doubtGlass.off(r.m.Glass.Density)
	fill := r.fillGlass.times(rho).scaled(1 / mm3PerM3)
	t.GlassFill = figure("glass_in_resin_kg", "Glass in the resin", "kg", fill,
		fmt.Sprintf("%s L of glass in the channels x %s kg/m3 = %s kg", litres(r.fillGlass.value),
			num(rho.value, 0), num(fill.value, 3)), "EN 572-1 for the density")
	waste := 1 + r.m.Glass.Waste
	buy := span{t.GlassMass0.Value, t.GlassMass0.Low, t.GlassMass0.High}.plus(fill).scaled(waste)
	t.GlassMass = figure("glass_buy_kg", "Glass to buy", "kg", buy,
		fmt.Sprintf("(%s + %s) kg x (1 + %s) = %s kg", num(t.GlassMass0.Value, 3),
			num(fill.value, 3), percent(r.m.Glass.Waste), num(buy.value, 3)),
		"waste as set in the materials")
}

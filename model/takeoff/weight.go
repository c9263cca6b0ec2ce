package takeoff

import (
	"fmt"
	"math"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/material"
	"example.org/castwright/model/slab"
)

const sourceDensity = "density as set in the materials; its range by the bag's own mass and yield, and "

// weights reckons what the piece weighs dry, wet in the form, and in use.
func (r *reckoning) weights(t *Takeoff) {
	concrete := r.concrete.minus(r.bedLeft).times(r.cured).scaled(1 / mm3PerM3)
	t.WeightConcrete = figure("weight_concrete_kg", "Weight of the concrete", "kg", concrete,
		fmt.Sprintf("(%s L - %s L of glass) x %s kg/m3 = %s kg", litres(r.concrete.value),
			litres(r.bedLeft.value), num(r.cured.value, 1), num(concrete.value, 3)),
		sourceDensity+doubtDensity.Source.String())

	rho := doubtGlass.off(r.m.Glass.Density)
	glass := r.bedLeft.plus(r.fillGlass).times(rho).scaled(1 / mm3PerM3)
	resin := span{t.ResinMass.Value, t.ResinMass.Low, t.ResinMass.High}
	dry := concrete.plus(glass).plus(resin)
	t.WeightDry = figure("weight_kg", "Weight, dry", "kg", dry,
		fmt.Sprintf("%s kg of concrete + %s kg of glass + %s kg of resin = %s kg",
			num(concrete.value, 3), num(glass.value, 3), num(resin.value, 3), num(dry.value, 3)),
		sourceDensity+doubtDensity.Source.String())

	mortar := r.concrete.plus(r.ground).minus(r.bedCast)
	wet := mortar.times(r.fresh).plus(r.bedCast.times(rho)).scaled(1 / mm3PerM3)
	t.WeightWet = figure("weight_wet_kg", "Weight in the form", "kg", wet,
		fmt.Sprintf("%s L of mix x %s kg/m3 + %s kg of glass = %s kg; resin is not in yet",
			litres(mortar.value), num(r.fresh.value, 1), num(t.GlassMass0.Value, 3),
			num(wet.value, 3)), sourceDensity+doubtDensity.Source.String())

	bowls, water, terms := r.bowls()
	full := dry.plus(exact(bowls)).plus(water)
	how := fmt.Sprintf("%s kg dry; no bowl", num(dry.value, 3))
	if len(terms) > 0 {
		how = fmt.Sprintf("%s kg dry + %s kg of bowls + %s kg of water (%s) = %s kg",
			num(dry.value, 3), num(bowls, 3), num(water.value, 3), strings.Join(terms, "; "),
			num(full.value, 3))
	}
	t.WeightFull = figure("weight_full_kg", "Weight with full sink", "kg", full, how,
		"a rounded bowl holds two thirds of its area times its depth, as a half ellipsoid does; "+
			"range by "+doubtBowl.Source.String())
}

// bowlFullness is the water of a rounded bowl as a share of its area times its
// depth: that of a half ellipsoid.
const bowlFullness = 2.0 / 3

// bowls is the mass of all basins and of the water that fills them, in kg, with
// how each one's water was reckoned.
func (r *reckoning) bowls() (mass float64, water span, terms []string) {
	for _, k := range r.d.Sinks {
		mass += positive(k.BowlMass)
		area, depth := bowlArea(k, r.s), positive(k.BowlDepth.MM())
		prism := area * depth / mm3PerM3 * material.WaterDensity
		water = water.plus(span{prism * bowlFullness, prism * doubtBowl.low, prism * doubtBowl.high})
		terms = append(terms, fmt.Sprintf("%s m2 x %s mm deep x 2/3", num(area/1e6, 6), num(depth, 3)))
	}
	return mass, water, terms
}

// bowlArea is the area in mm2 of a sink's shape: its bowl's outline or, for one
// that is dropped in, its cut-out, because its outline is the rim.
func bowlArea(k design.Sink, s slab.Solid) float64 {
	if k.Mount == design.MountOver {
		for _, o := range s.Openings {
			if o.Part == k.ID && o.Kind == slab.OpeningSink {
				return positive(o.Loop.Area())
			}
		}
		return 0
	}
	for _, b := range s.Bowls {
		if b.Part == k.ID {
			return positive(b.Loop.Area())
		}
	}
	return 0
}

// centre reckons the centre of gravity of the finished piece: concrete, glass beds,
// the channels' fill and top coat, each at its own centroid, weighed by mass.
func (r *reckoning) centre(t *Takeoff) {
	parts := []part{
		r.concretePart(),
		{"glass in beds", r.bedLeft.value * r.m.Glass.Density, r.bedCentre},
		r.fill,
		r.coats,
	}
	for k, f := range []struct {
		f          *Figure
		key, label string
	}{
		{&t.CentreX, "centre_x_mm", "Centre of gravity, x"},
		{&t.CentreY, "centre_y_mm", "Centre of gravity, y"},
		{&t.CentreZ, "centre_z_mm", "Centre of gravity, z"},
	} {
		x, how := balance(parts, k)
		*f.f = figure(f.key, f.label, "mm", exact(x), how,
			"statics; x and y as drawn, z from the underside")
	}
}

// part is a part of the piece that has a mass, in kg times 1e9, and a centroid.
type part struct {
	name string
	mass float64
	at   [3]float64
}

// join adds a mass at a place: the part is then where both balance.
func (p *part) join(mass float64, at [3]float64) {
	if !(mass > 0) {
		return
	}
	p.mass += mass
	for k := range p.at {
		p.at[k] += (finite(at[k]) - p.at[k]) * mass / p.mass
	}
}

// concretePart is the concrete that the glass beds leave.
func (r *reckoning) concretePart() part {
	left := r.concrete.value - r.bedLeft.value
	p := part{"concrete", math.Max(0, left) * r.cured.value, r.ms.ConcreteCentroid}
	if left > 0 {
		for k := range p.at {
			p.at[k] = (r.concrete.value*r.ms.ConcreteCentroid[k] - r.bedLeft.value*r.bedCentre[k]) / left
		}
	}
	return p
}

// balance is the mean of the parts' places along one axis, weighed by mass, and
// how it comes about.
func balance(parts []part, axis int) (float64, string) {
	var mass, moment float64
	var terms []string
	for _, p := range parts {
		x := finite(p.at[axis])
		mass += p.mass
		moment += p.mass * x
		if p.mass > 0 {
			terms = append(terms, fmt.Sprintf("%s kg of %s at %s mm", num(p.mass/mm3PerM3, 3), p.name,
				num(x, 2)))
		}
	}
	if !(mass > 0) {
		return 0, "the piece has no mass"
	}
	x := moment / mass
	return x, fmt.Sprintf("(%s) / %s kg = %s mm", joinSum(terms), num(mass/mm3PerM3, 3), num(x, 2))
}

package design

import (
	"math"

	"github.com/shopspring/decimal"
)

// maxWaste is the most that is added for spill and bucket: as much again.
const maxWaste = 1.0

// Validate lists every figure of the materials that is out of its range, with its
// place in the file. A figure of 0 is one that is not stated.
func (m Materials) Validate() []Fault {
	c := &checker{}
	for _, q := range [...]struct {
		field, name string
		value       float64
	}{
		{"mix.bag_mass_kg", "the bag's mass", m.Mix.BagMass},
		{"mix.bag_yield_l", "the bag's yield", m.Mix.BagYield},
		{"mix.bag_water_l", "the bag's water", m.Mix.BagWater},
		{"mix.fresh_density_kg_per_m3", "the fresh density", m.Mix.FreshDensity},
		{"mix.cured_density_kg_per_m3", "the cured density", m.Mix.CuredDensity},
		{"mix.strip_hours", "the time to strip", m.Mix.StripHours},
		{"mix.working_minutes", "the working time", m.Mix.WorkingMinutes},
		{"resin.parts_a_by_volume", "the resin's part A", m.Resin.PartsA},
		{"resin.parts_b_by_volume", "the resin's part B", m.Resin.PartsB},
		{"resin.density_kg_per_m3", "the resin's density", m.Resin.Density},
		{"resin.max_pour_mm", "the deepest pour", m.Resin.MaxPour},
		{"glass.density_kg_per_m3", "the glass's density", m.Glass.Density},
	} {
		if math.IsNaN(q.value) || q.value < 0 || q.value > MaxQuantity {
			c.add(RuleRange, "materials."+q.field, "%s is %g: give a number from the product's data sheet", q.name, q.value)
		}
	}
	for _, w := range [...]struct {
		field, name string
		share       float64
	}{
		{"mix.waste_percent", "the mix's waste", m.Mix.Waste},
		{"resin.waste_percent", "the resin's waste", m.Resin.Waste},
		{"glass.waste_percent", "the glass's waste", m.Glass.Waste},
	} {
		if !(w.share >= 0 && w.share <= maxWaste) {
			c.add(RuleRange, "materials."+w.field, "%s is %g %%: give from 0 to %g %%", w.name, w.share*100, maxWaste*100)
		}
	}
	for _, p := range [...]struct {
		field, name string
		price       decimal.Decimal
	}{
		{"mix.price_per_bag", "the price of a bag", m.Mix.BagPrice},
		{"resin.price_per_l", "the price of a litre of resin", m.Resin.LitrePrice},
		{"glass.price_per_kg", "the price of a kilogram of glass", m.Glass.KgPrice},
	} {
		if p.price.IsNegative() {
			c.add(RuleRange, "materials."+p.field, "%s is %s: give what is paid for it, or 0", p.name, p.price)
		}
	}
	return c.faults
}

// Stated reports whether the figures of a mix that every amount rests on are there.
func (m Mix) Stated() bool { return m.BagYield > 0 && m.CuredDensity > 0 && m.FreshDensity > 0 }

// Nothing reports whether a mix has no figure at all: the job says nothing of it.
func (m Mix) Nothing() bool {
	return m.BagMass == 0 && m.BagYield == 0 && m.BagWater == 0 && m.FreshDensity == 0 && m.CuredDensity == 0
}

// Nothing reports whether a resin has no figure at all.
func (r Resin) Nothing() bool {
	return r.PartsA == 0 && r.PartsB == 0 && r.Density == 0 && r.MaxPour == 0
}

package report_test

import (
	"math"
	"testing"

	"github.com/shopspring/decimal"

	"example.org/castwright/model/design"
	"example.org/castwright/model/material"
	"example.org/castwright/model/report"
	"example.org/castwright/model/units"
)

// plate is a plain top of 1 m x 0.5 m x 40 mm.
func plate() design.Design {
	const w, d, t = units.Metre, units.Metre / 2, 40 * units.Millimetre
	return design.Design{Thickness: t, Outline: design.Outline{Nodes: []design.Node{
		{}, {At: design.Point{X: w}}, {At: design.Point{X: w, Y: d}}, {At: design.Point{Y: d}}}},
		Finish: design.Finish{Colour: design.Colour{R: 180, G: 180, B: 180}, Polish: 1}}
}

// A job that states no materials is not weightless: 1 m x 0.5 m x 40 mm are 20 L,
// 48 kg at 2400 kg/m3, the figure of material.CuredDensity.
func TestNoMaterialsAreNotWeightless(t *testing.T) {
	r := report.Derive(plate(), design.Materials{}, design.Site{})
	if got := r.Takeoff.WeightDry.Value; math.Abs(got-48) > 1e-6 {
		t.Errorf("weight %g kg, want 48", got)
	}
	if got := r.Takeoff.Bags.Value; got != 2 { // 22 L + 10 % or a quarter bag, at 14 L
		t.Errorf("%g bags, want 2", got)
	}
	if len(r.Faults) > 0 {
		t.Errorf("faults %v", r.Faults)
	}
}

// What no bag, bottle or bill can say is a fault, with its place in the file.
func TestMaterialsOutOfRange(t *testing.T) {
	for _, c := range []struct {
		field string
		set   func(*design.Materials)
	}{
		{"materials.mix.bag_yield_l", func(m *design.Materials) { m.Mix.BagYield = -14 }},
		{"materials.mix.waste_percent", func(m *design.Materials) { m.Mix.Waste = -0.1 }},
		{"materials.mix.price_per_bag", func(m *design.Materials) { m.Mix.BagPrice = decimal.NewFromInt(-1) }},
		{"materials.resin.parts_b_by_volume", func(m *design.Materials) { m.Resin.PartsB = math.Inf(-1) }},
		{"materials.glass.density_kg_per_m3", func(m *design.Materials) { m.Glass.Density = math.NaN() }},
	} {
		m := material.Defaults()
		c.set(&m)
		r := report.Derive(plate(), m, design.Site{})
		if len(r.Faults) != 1 || r.Faults[0].Field != c.field {
			t.Errorf("%s: faults %v", c.field, r.Faults)
		}
	}
}

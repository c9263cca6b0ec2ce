// Package takeoff reckons amounts from a measured slab and the materials in
// use: mix, water, bags, resin, glass, weights and cost. Every amount is a
// [Figure] that can say how it was reckoned and how far it may be off.
//
// The range of a figure takes every input at its worst at once; how far each
// input may be off, and who says so, stands in doubt.go.
package takeoff

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
	"github.com/shopspring/decimal"
)

// Figure is one number that someone sees: its value, unit, range and history.
// Value, Low and High are always finite.
type Figure struct {
	Key       string  // stable, as in the JSON report: "weight_kg"
	Label     string  // plain words: "Weight, dry"
	Value     float64 // in Unit
	Unit      string  // "mm", "mm2", "mm3", "kg", "L", "bag", "pour"
	Low, High float64 // range that the inputs' doubt gives; both Value when exact
	How       string  // the formula with its numbers
	Source    string  // who says so
}

// Cost is one line of what the materials cost.
type Cost struct {
	Label  string
	Amount float64 // of Unit, as bought
	Unit   string
	Price  decimal.Decimal // of one Unit
	Total  decimal.Decimal // rounded to cents, half to even
}

// Takeoff is the amounts of one top.
type Takeoff struct {
	WeightDry      Figure // concrete, glass and resin
	WeightConcrete Figure
	WeightWet      Figure // in the form, before grinding
	WeightFull     Figure // with bowls and their water
	CentreX        Figure // of gravity of the finished piece, mm
	CentreY        Figure
	CentreZ        Figure // above the underside

	FormDepth   Figure // finished thickness + grind, mm
	MixVolume   Figure // L of fresh mix with waste
	Bags        Figure // whole bags
	Water       Figure // L for those bags
	GlassArea   Figure // mm2 of beds
	GlassMass   Figure // kg to buy for beds and resin, with waste
	GlassMass0  Figure // kg, in beds, as laid in the form
	GlassFill   Figure // kg, in the channels' resin
	Displaced   Figure // L of mix that the beds' glass takes the place of
	ResinVolume Figure // mm3 of channels to fill, glass in it taken off
	ResinMix    Figure // L to mix with waste and top coats
	ResinA      Figure // L
	ResinB      Figure // L
	ResinMass   Figure // kg, in place, top coats too
	TopCoat     Figure // L
	Pours       Figure // number of pours by the largest depth

	Dams []Dam

	Costs []Cost
	Total decimal.Decimal
}

// Figures is every figure, in the order of a report.
func (t Takeoff) Figures() []Figure {
	return []Figure{
		t.WeightDry, t.WeightConcrete, t.WeightWet, t.WeightFull,
		t.CentreX, t.CentreY, t.CentreZ,
		t.FormDepth, t.MixVolume, t.Bags, t.Water,
		t.GlassArea, t.GlassMass0, t.Displaced, t.GlassFill, t.GlassMass,
		t.ResinVolume, t.TopCoat, t.ResinMix, t.ResinA, t.ResinB, t.ResinMass, t.Pours,
	}
}

// Dam is a border that stops resin at an open end.
type Dam struct {
	Channel design.ID
	End     slab.OpenEnd
	Length  float64 // mm, with a hand's width each side
	Height  float64 // mm
}

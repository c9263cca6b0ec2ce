// Package takeoff reckons amounts from a measured slab and the materials in
// use: mix, water, bags, resin, glass, weights and cost. Every amount is a
// [Figure] that can say how it was reckoned and how far it may be off.
package takeoff

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
	"github.com/shopspring/decimal"
)

// Figure is one number that someone sees: its value, unit, range and history.
type Figure struct {
	Key       string  // stable, as in the JSON report: "weight_kg"
	Label     string  // plain words: "Weight, dry"
	Value     float64 // in Unit
	Unit      string  // "mm", "mm2", "mm3", "kg", "L", "bag", "pour", ...
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
	Total  decimal.Decimal
}

// Takeoff is the amounts of one top.
type Takeoff struct {
	WeightDry      Figure // concrete, glass and resin
	WeightConcrete Figure
	WeightWet      Figure // in the form, before grinding
	WeightFull     Figure // with bowls and their water
	CentreX        Figure // of gravity of the finished piece, mm
	CentreY        Figure
	CentreZ        Figure

	FormDepth   Figure // finished thickness + grind, mm
	MixVolume   Figure // L of fresh mix with waste
	Bags        Figure // whole bags
	Water       Figure // L for those bags
	GlassArea   Figure // mm2
	GlassMass   Figure // kg, in beds, with waste
	GlassMass0  Figure // kg, in beds, as it lies
	Displaced   Figure // L of mix that the glass takes the place of
	ResinVolume Figure // mm3 of channels to fill, glass in it taken off
	ResinMix    Figure // L to mix with waste and top coats
	ResinA      Figure // L
	ResinB      Figure // L
	ResinMass   Figure // kg, in place
	TopCoat     Figure // L
	Pours       Figure // number of pours by the largest depth

	Dams []Dam

	Costs []Cost
	Total decimal.Decimal
}

// Dam is a border that stops resin at an open end.
type Dam struct {
	Channel design.ID
	End     slab.OpenEnd
	Length  float64 // mm, with a hand's width each side
	Height  float64 // mm
}

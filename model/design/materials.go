package design

import "github.com/shopspring/decimal"

// Materials is what the maker uses on this job, as bought, with prices. The
// figures are the product's own data sheet's; package material has the
// defaults with their sources.
type Materials struct {
	Currency string // as printed, such as "$" or "EUR"
	Mix      Mix
	Resin    Resin
	Glass    GlassStock
}

// Mix is a bagged mix.
type Mix struct {
	Name           string
	BagMass        float64 // kg of dry mix in a bag
	BagYield       float64 // litres of fresh mix from a bag
	BagWater       float64 // litres of water to a bag
	FreshDensity   float64 // kg/m3 in the form
	CuredDensity   float64 // kg/m3 when dry
	Waste          float64 // share added for spill and bucket, 0.10 is a tenth
	BagPrice       decimal.Decimal
	Rapid          bool // sets within the hour
	StripHours     float64
	WorkingMinutes float64
}

// Resin is a two-part casting resin.
type Resin struct {
	Name       string
	PartsA     float64 // by volume, with PartsB
	PartsB     float64
	Density    float64 // kg/m3 mixed
	MaxPour    float64 // mm, the largest depth of one pour
	Waste      float64
	LitrePrice decimal.Decimal
}

// GlassStock is glass as bought.
type GlassStock struct {
	Name    string
	Density float64 // kg/m3, solid
	Waste   float64
	KgPrice decimal.Decimal
}

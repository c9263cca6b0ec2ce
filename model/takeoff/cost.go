package takeoff

import (
	"math"

	"github.com/shopspring/decimal"
)

// maxExponent bounds the exponent of a price that is reckoned with: multiplying
// out a larger one could take for ever. The reader and the edits allow far less.
const maxExponent = 20

// costs reckons what the materials cost: each line rounded to cents once, half
// to even, and the total of the lines.
func (r *reckoning) costs(t *Takeoff) {
	t.Total = decimal.Zero
	add := func(label string, amount float64, unit string, price decimal.Decimal) {
		if amount <= 0 {
			return
		}
		if e := price.Exponent(); e < -maxExponent || e > maxExponent {
			price = decimal.Zero
		}
		amount = math.RoundToEven(amount*1000) / 1000 // to the gram or millilitre
		c := Cost{Label: label, Amount: amount, Unit: unit, Price: price}
		c.Total = decimal.NewFromFloat(amount).Mul(price).RoundBank(2)
		t.Costs = append(t.Costs, c)
		t.Total = t.Total.Add(c.Total)
	}
	add(named(r.m.Mix.Name, "Mix"), t.Bags.Value, "bag", r.m.Mix.BagPrice)
	add(named(r.m.Resin.Name, "Resin"), t.ResinMix.Value, "L", r.m.Resin.LitrePrice)
	add(named(r.m.Glass.Name, "Glass"), t.GlassMass.Value, "kg", r.m.Glass.KgPrice)
}

func named(name, otherwise string) string {
	if name == "" {
		return otherwise
	}
	return name
}

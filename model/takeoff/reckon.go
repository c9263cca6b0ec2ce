package takeoff

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/material"
	"example.org/castwright/model/slab"
)

// Reckon takes off the amounts of a top: d as resolved in s and measured in ms,
// of the materials m. It is pure and never fails: what can't be reckoned, because
// a figure of the materials is missing or no amount, is 0 and its How says so.
func Reckon(d design.Design, m design.Materials, s slab.Solid, ms slab.Measures) Takeoff {
	r := newReckoning(d, m, s, ms)
	var t Takeoff
	r.glass(&t)
	r.resin(&t)
	r.mix(&t)
	r.weights(&t)
	r.centre(&t)
	t.Dams = dams(s)
	r.costs(&t)
	return t
}

// reckoning is the inputs, cleaned of what is no amount, and what one step hands
// to the next. Lengths are mm, masses kg, densities kg/m3.
type reckoning struct {
	d  design.Design
	m  design.Materials
	s  slab.Solid
	ms slab.Measures

	grind    float64
	concrete span // mm3 of the finished solid, beds counted as concrete
	ground   span // mm3 that grinding takes
	cured    span
	fresh    span

	bedCast   span // mm3 of glass in beds as laid
	bedLeft   span // mm3 of it that grinding leaves
	bedCentre [3]float64
	fillResin span // mm3 of resin in channels
	fillGlass span // mm3 of glass in that resin
	coat      span // mm3 of top coat in place
	fill      part // of the channels, resin and glass together
	coats     part
}

func newReckoning(d design.Design, m design.Materials, s slab.Solid, ms slab.Measures) *reckoning {
	clean(&m)
	r := &reckoning{d: d, m: m, s: s, ms: ms, grind: positive(d.Finish.Grind.MM())}
	screed := exact(1)
	if t := positive(s.Thickness); t > 0 {
		screed = doubtScreed.around(t).scaled(1 / t)
	}
	r.concrete = screed.scaled(positive(ms.ConcreteVolume))
	r.ground = exact(positive(ms.GrindVolume))
	if r.grind > 0 {
		r.ground = doubtGrind.around(r.grind).scaled(r.ground.value / r.grind)
	}
	r.cured = density(m.Mix, m.Mix.CuredDensity)
	r.fresh = density(m.Mix, m.Mix.FreshDensity)
	return r
}

// density is a density of concrete with its range.
func density(m design.Mix, rho float64) span {
	s := doubtDensity.off(rho)
	if own := finite(material.BagDensity(m)); own > 0 && own < s.low {
		s.low = own
	}
	return s
}

// clean makes 0 of every figure that is no amount.
func clean(m *design.Materials) {
	for _, x := range []*float64{
		&m.Mix.BagMass, &m.Mix.BagYield, &m.Mix.BagWater, &m.Mix.FreshDensity,
		&m.Mix.CuredDensity, &m.Mix.Waste,
		&m.Resin.PartsA, &m.Resin.PartsB, &m.Resin.Density, &m.Resin.MaxPour, &m.Resin.Waste,
		&m.Glass.Density, &m.Glass.Waste,
	} {
		*x = positive(*x)
	}
}

package takeoff

import (
	"fmt"
	"math"
)

// leastWaste is the least that is mixed beyond need, as a share of a bag: common
// practice, no source.
const leastWaste = 0.25

// mix reckons what is mixed: the solid and what grinding takes, less the glass in
// it, with waste, in whole bags with their water.
func (r *reckoning) mix(t *Takeoff) {
	m := r.m.Mix
	depth := r.s.Thickness + r.grind
	t.FormDepth = figure("form_depth_mm", "Form, inside depth", "mm", exact(depth),
		fmt.Sprintf("%s mm finished + %s mm ground away = %s mm", num(r.s.Thickness, 4),
			num(r.grind, 4), num(depth, 4)), "the drawing")

	need := r.concrete.plus(r.ground).minus(r.bedCast).scaled(1 / mm3PerLitre)
	spare := func(litres float64) float64 {
		if litres <= 0 {
			return 0
		}
		return math.Max(litres*m.Waste, m.BagYield*leastWaste)
	}
	mix := span{need.value + spare(need.value), need.low + spare(need.low), need.high + spare(need.high)}
	why := fmt.Sprintf("waste %s", percent(m.Waste))
	if spare(need.value) > need.value*m.Waste {
		why = fmt.Sprintf("waste a quarter of a bag, more than %s", percent(m.Waste))
	}
	t.MixVolume = figure("mix_volume_l", "Mix", "L", mix,
		fmt.Sprintf("%s L of concrete + %s L ground away - %s L of glass = %s L; + %s L %s = %s L",
			litres(r.concrete.value), litres(r.ground.value), litres(r.bedCast.value),
			num(need.value, 3), num(spare(need.value), 3), why, num(mix.value, 3)),
		"volume by sections; waste by "+practice.String())

	if m.BagYield <= 0 {
		const missing = "a bag has no yield: type it in from its data sheet"
		t.Bags = figure("bags", "Bags of mix", "bag", span{}, missing, "the bag's data sheet")
		t.Water = figure("water_l", "Mixing water", "L", span{}, missing, "the bag's data sheet")
		return
	}
	bags := span{wholes(mix.value / m.BagYield), wholes(mix.low / (m.BagYield * doubtYield.high)),
		wholes(mix.high / (m.BagYield * doubtYield.low))}
	t.Bags = figure("bags", "Bags of mix", "bag", bags,
		fmt.Sprintf("%s L / %s L a bag = %s, rounded up to %s", num(mix.value, 3),
			num(m.BagYield, 3), num(mix.value/m.BagYield, 3), num(bags.value, 0)),
		"yield by the bag's data sheet; its range by "+doubtYield.Source.String())
	water := doubtWater.off(bags.value * m.BagWater)
	t.Water = figure("water_l", "Mixing water", "L", water,
		fmt.Sprintf("%s bags x %s L = %s L", num(bags.value, 0), num(m.BagWater, 3),
			num(water.value, 3)), "the bag's data sheet; its range by "+doubtWater.Source.String())
}

package takeoff

import (
	"fmt"
	"math"
	"strings"

	"example.org/castwright/model/slab"
)

// resin reckons the channels that are filled: the resin in them and over them,
// its two parts, and the pours.
func (r *reckoning) resin(t *Takeoff) {
	var fills, coats []string
	r.fill.name, r.coats.name = "fill in channels", "top coat"
	coatNeed := span{}
	for i, c := range r.s.Recesses {
		if i >= len(r.ms.Channels) || !c.Fill.Resin {
			continue
		}
		volume, area := positive(r.ms.Channels[i].Volume), positive(r.ms.Channels[i].Area)
		depth := positive(c.Depth)
		share := 0.0
		if c.Fill.Glass != nil {
			share = math.Min(1, positive(c.Fill.Glass.Share.Fraction()))
		}
		space := exact(volume)
		if depth > 0 {
			space = doubtChannel.around(depth).scaled(volume / depth)
		}
		r.fillResin = r.fillResin.plus(space.scaled(1 - share))
		r.fillGlass = r.fillGlass.plus(space.scaled(share))
		r.fill.join(volume*(r.m.Resin.Density*(1-share)+r.m.Glass.Density*share), r.ms.Channels[i].Centroid)
		fill := litres(volume) + " L"
		if share > 0 {
			fill += " x (1 - " + percent(share) + ")"
		}
		fills = append(fills, fill)
		if coat := positive(c.Fill.TopCoat.MM()); coat > 0 {
			v := exact(area * coat)
			r.coat = r.coat.plus(v)
			at := r.ms.Channels[i].AreaCentroid
			r.coats.join(v.value*r.m.Resin.Density, [3]float64{at.X, at.Y, r.s.Thickness + coat/2})
			if len(c.Open) > 0 {
				v = doubtFall.off(v.value)
			}
			coatNeed = coatNeed.plus(v)
			coats = append(coats, fmt.Sprintf("%s m2 x %s mm", num(area/1e6, 6), num(coat, 3)))
		}
	}
	r.glassToBuy(t)
	r.resinFigures(t, fills, coats, coatNeed)
	t.Pours = r.pours()
}

func (r *reckoning) resinFigures(t *Takeoff, fills, coats []string, coatNeed span) {
	m := r.m.Resin
	t.ResinVolume = figure("resin_fill_mm3", "Resin in the channels", "mm3", r.fillResin,
		joinOr(fills, "no channel is filled with resin")+equals(fills, litres(r.fillResin.value)+" L"),
		"geometry; range by the channels' depth, "+doubtChannel.Source.String())
	t.TopCoat = figure("top_coat_l", "Top coat", "L", coatNeed.scaled(1/mm3PerLitre),
		joinOr(coats, "no top coat")+equals(coats, litres(coatNeed.value)+" L"),
		"geometry; more where it falls over an edge, "+doubtFall.Source.String())

	need := r.fillResin.plus(coatNeed).scaled(1 / mm3PerLitre)
	mix := need.scaled(1 + m.Waste)
	t.ResinMix = figure("resin_mix_l", "Resin to mix", "L", mix,
		fmt.Sprintf("(%s + %s) L x (1 + %s) = %s L", litres(r.fillResin.value),
			litres(coatNeed.value), percent(m.Waste), num(mix.value, 3)),
		"waste as set in the materials")
	parts := m.PartsA + m.PartsB
	for _, p := range []struct {
		f           *Figure
		key, letter string
		parts       float64
	}{{&t.ResinA, "resin_a_l", "A", m.PartsA}, {&t.ResinB, "resin_b_l", "B", m.PartsB}} {
		label := "Resin, part " + p.letter
		source := "the resin's data sheet; by volume: by mass the ratio is another, " +
			"the volume ratio times the densities' ratio"
		if parts <= 0 {
			*p.f = figure(p.key, label, "L", span{}, "the resin has no mixing ratio: "+
				"type it in from its data sheet", source)
			continue
		}
		v := mix.scaled(p.parts / parts)
		*p.f = figure(p.key, label, "L", v, fmt.Sprintf("%s L x %s / (%s + %s) = %s L",
			num(mix.value, 3), num(p.parts, 3), num(m.PartsA, 3), num(m.PartsB, 3),
			num(v.value, 3)), source)
	}
	place := r.fillResin.plus(r.coat)
	rho := doubtResin.off(m.Density)
	mass := place.times(rho).scaled(1 / mm3PerM3)
	t.ResinMass = figure("resin_mass_kg", "Resin in place", "kg", mass,
		fmt.Sprintf("%s L x %s kg/m3 = %s kg", litres(place.value), num(rho.value, 0),
			num(mass.value, 3)), "the resin's data sheet; range by "+doubtResin.Source.String())
}

// pours is the number of pours of the channel that needs the most: its depth over
// the largest depth of a pour, and one more for a top coat.
func (r *reckoning) pours() Figure {
	const key, label, source = "pours", "Resin pours", "largest pour by the resin's data sheet"
	most, how := 0.0, "no channel is filled with resin"
	for i, c := range r.s.Recesses {
		if i >= len(r.ms.Channels) || !c.Fill.Resin || !(c.Depth > 0) {
			continue
		}
		if r.m.Resin.MaxPour <= 0 {
			return figure(key, label, "pour", span{},
				"the resin has no largest pour: type it in from its data sheet", source)
		}
		n := wholes(c.Depth / r.m.Resin.MaxPour)
		text := fmt.Sprintf("%s mm / %s mm a pour, rounded up = %s", num(c.Depth, 3),
			num(r.m.Resin.MaxPour, 3), num(n, 0))
		if c.Fill.TopCoat > 0 {
			n++
			text += ", and one for the top coat"
		}
		if n > most {
			most, how = n, text
		}
	}
	return figure(key, label, "pour", exact(finite(most)), how, source)
}

// Allowances of a dam, common practice, no source.
const (
	damLap  = 100 // mm beyond the gap at each end, a hand's width
	damRise = 10  // mm above the resin
)

// dams lists the borders that stop resin where channels run out.
func dams(s slab.Solid) []Dam {
	var out []Dam
	for _, c := range s.Recesses {
		if !c.Fill.Resin {
			continue
		}
		for _, e := range c.Open {
			out = append(out, Dam{Channel: c.Part, End: e,
				Length: positive(e.Width) + 2*damLap,
				Height: positive(c.Depth) + positive(c.Fill.TopCoat.MM()) + damRise})
		}
	}
	return out
}

// wholes rounds up, leaving a hair's breadth of arithmetic aside.
func wholes(x float64) float64 { return math.Ceil(x - 1e-9) }

func joinSum(terms []string) string { return strings.Join(terms, " + ") }

func joinOr(terms []string, none string) string {
	if len(terms) == 0 {
		return none
	}
	return joinSum(terms)
}

func equals(terms []string, total string) string {
	if len(terms) == 0 {
		return ""
	}
	return " = " + total
}

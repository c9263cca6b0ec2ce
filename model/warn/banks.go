package warn

import "example.org/castwright/model/design"

// banks measures the concrete between a channel and what it passes: the edge of
// the top where it does not run out, cut-outs and holes.
func (c *check) banks() {
	for _, ch := range c.channels {
		for _, r := range ch.rims {
			if r.pts.Area() < 0 {
				continue // an island
			}
			for _, n := range c.outline.narrows(r, c.s.Thickness, c.s.Thickness/4) {
				if n.d < touching {
					continue // here it leaves the top
				}
				c.say(limitChannelEdge, n.d, c.s.Thickness, Warning{Part: ch.Part, At: n.middle(),
					Title: "Channel runs close to the edge",
					Advice: "Leave at least a slab thickness between its bank and the edge, or let it run out over " +
						"the edge: a thin lip chips."})
			}
		}
		c.banksOfOpenings(ch)
	}
}

func (c *check) banksOfOpenings(ch channel) {
	said := map[design.ID]bool{}
	for _, o := range c.openings {
		if o.side == without || said[o.Part] {
			continue
		}
		best := none(c.s.Thickness)
		for _, r := range ch.rims {
			if p, ok := r.closest(o.chain, best.d); ok {
				best = p
			}
		}
		meets := best.d < touching
		if !meets && ch.contains(o.Centre) {
			best.at, best.to, meets = o.Centre, o.Centre, true
		}
		w := Warning{Part: ch.Part, At: best.middle()}
		switch {
		case meets:
			w.Title = "Channel runs into a cut-out or hole"
			w.Advice = "Move it clear, or plan a dam round the opening before resin is poured."
			c.state(limitChannelMeets, w)
		default:
			w.Title = "Channel runs close to a cut-out or hole"
			w.Advice = "Leave at least a slab thickness between its bank and the opening."
			if !c.say(limitChannelCutout, best.d, c.s.Thickness, w) {
				continue
			}
		}
		said[o.Part] = true
	}
}

package warn

import "example.org/castwright/model/geom"

// railRise parts two narrow places of one rail: between them it must widen by
// so many millimetres, half of what parts the two figures of a rail.
const railRise = 0.5 * inch

// rails measures the concrete between a sink's cut-out and the edge of the top,
// each narrow place on its own.
func (c *check) rails() {
	for _, o := range c.openings {
		if o.round() || o.side != within {
			continue
		}
		for _, n := range c.outline.narrows(o.chain, limitRail.Steps[0].Value, railRise) {
			c.say(limitRail, n.d, 1, Warning{Part: o.Part, At: n.middle(),
				Title: "Rail " + c.where(o, n.middle()) + " the sink is narrow",
				Advice: "Move the sink or choose a smaller one; where the rail must stay, put a bar in it and " +
					"ease the knock-out out without a blow."})
		}
	}
}

// where says on which side of a sink, seen from its front, a place lies.
func (c *check) where(o opening, p geom.Vec) string {
	for _, b := range c.s.Bowls {
		if b.Part != o.Part {
			continue
		}
		switch t := p.Sub(o.Centre).Unit().Dot(b.Back); {
		case t > 0.7:
			return "behind"
		case t < -0.7:
			return "in front of"
		}
	}
	return "beside"
}

// bridges measures the concrete between two sink cut-outs.
func (c *check) bridges(meetings []meeting) {
	for _, m := range meetings {
		if m.overlap || m.a.round() || m.b.round() {
			continue
		}
		c.say(limitBridge, m.d, 1, Warning{Part: m.a.Part, At: m.middle(),
			Title:  "Strip between two cut-outs is narrow",
			Advice: "Move the sinks apart or make them one cut-out; where the strip must stay, put a bar in it."})
	}
}

package warn

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
)

// closeCall is the narrowest place of one part against one kind of neighbour.
type closeCall struct {
	part  design.ID
	limit Limit
	pair
}

// holes measures the concrete that is left round each hole. A set of holes is
// judged by its worst one.
func (c *check) holes() {
	meetings := c.meetings(max(limitBridge.Steps[0].Value, c.s.Thickness) + near)
	c.overlaps(meetings)
	c.bridges(meetings)
	var calls []closeCall
	call := func(part design.ID, l Limit, p pair) {
		for i := range calls {
			if calls[i].part == part && calls[i].limit.Code == l.Code {
				if p.d < calls[i].d {
					calls[i].pair = p
				}
				return
			}
		}
		calls = append(calls, closeCall{part, l, p})
	}
	for _, o := range c.openings {
		if !o.round() || o.side != within {
			continue
		}
		if o.thin {
			call(o.Part, limitHoleEdge, o.edge)
		}
	}
	for _, m := range meetings {
		switch {
		case m.overlap:
		case m.a.round() && m.b.round():
			call(m.a.Part, limitHoleHole, m.pair)
		case m.a.round():
			call(m.a.Part, limitHoleCutout, m.pair)
		case m.b.round():
			call(m.b.Part, limitHoleCutout, m.pair)
		}
	}
	for _, k := range calls {
		w := Warning{Part: k.part, At: k.middle()}
		switch k.limit.Code {
		case HoleNearEdge:
			w.Title = "Hole is close to the edge"
			w.Advice = "Leave at least a slab thickness of concrete between the hole and the edge, or the strip " +
				"beside it may break out."
		case HoleNearCutout:
			w.Title = "Hole is close to a cut-out"
			w.Advice = "Leave at least a slab thickness of concrete between the hole and the cut-out."
		default:
			w.Title = "Two holes are close together"
			w.Advice = "Leave at least a slab thickness of concrete between the holes."
		}
		c.say(k.limit, k.d, c.s.Thickness, w)
	}
	c.clearOfBowls()
}

// clearOfBowls looks whether what goes through a hole clears the bowls. Drains
// are meant to lie under a bowl.
func (c *check) clearOfBowls() {
	for _, b := range c.s.Bowls {
		bowl := newChain(b.Loop)
		if bowl == nil {
			continue
		}
		worst := map[design.ID]pair{}
		var parts []design.ID
		for _, o := range c.openings {
			if !o.round() || o.Kind == slab.OpeningVesselDrain || o.side == without || c.isDrain(o) {
				continue
			}
			p, ok := bowl.closest(o.chain, limitHoleBowl.Steps[0].Value)
			if bowl.contains(o.Centre) {
				p, ok = pair{at: o.Centre, to: o.Centre}, true
			}
			if !ok || c.cutoutNearer(b.Part, o, p.d) {
				continue
			}
			old, seen := worst[o.Part]
			if !seen {
				parts = append(parts, o.Part)
			}
			if !seen || p.d < old.d {
				worst[o.Part] = p
			}
		}
		for _, part := range parts {
			p := worst[part]
			step, broken := limitHoleBowl.judge(p.d, 1, near)
			w := Warning{Part: part, At: p.middle(), Title: "Hole is close to a bowl",
				Advice: "Move the hole or the sink, so that the tap's nut and a spanner clear the bowl below the top."}
			if p.d < touching {
				step, broken = limitHoleBowl.Steps[1], true
				w.Title = "Hole lies over a bowl"
				w.Advice = "Move the hole or the sink: what goes through the hole would meet the bowl or its rim."
			}
			if broken {
				c.warn(limitHoleBowl, step, p.d, w)
			}
		}
	}
}

// cutoutNearer reports whether a hole lies as near to the sink's cut-out as to
// its bowl: then the distance to the cut-out says all.
func (c *check) cutoutNearer(sink design.ID, hole opening, d float64) bool {
	for _, o := range c.openings {
		if o.round() || o.Part != sink {
			continue
		}
		if o.contains(hole.Centre) {
			return true
		}
		if _, nearer := o.closest(hole.chain, d+near); nearer {
			return true
		}
	}
	return false
}

// isDrain reports whether an opening is a plain hole for a drain.
func (c *check) isDrain(o opening) bool {
	for _, h := range c.d.Holes {
		if h.ID == o.Part {
			return h.Kind == design.HoleDrain
		}
	}
	return false
}

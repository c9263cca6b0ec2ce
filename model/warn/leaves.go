package warn

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// leaves looks for openings and channels that leave the top.
func (c *check) leaves() {
	type key struct {
		part design.ID
		code Code
	}
	said := map[key]bool{}
	for _, o := range c.openings {
		thing := "Hole"
		if !o.round() {
			thing = "Sink cut-out"
		}
		l, w := limitCutoutLeaves, Warning{Part: o.Part, At: o.Centre}
		switch o.side {
		case across:
			w.At = o.edge.at
			w.Title = thing + " runs over the edge of the top"
			w.Advice = "Move it inward or make it smaller, or change the outline if a notch is meant."
		case without:
			l = limitCutoutOutside
			w.Title = thing + " lies outside the top"
			w.Advice = "Move it onto the top or take it away."
		default:
			continue
		}
		if k := (key{o.Part, l.Code}); !said[k] {
			said[k] = true
			c.state(l, w)
		}
	}
	for _, ch := range c.channels {
		c.channelLeaves(ch)
	}
}

// overlaps looks for openings that run into each other.
func (c *check) overlaps(meetings []meeting) {
	said := map[[2]design.ID]bool{}
	for _, m := range meetings {
		k := [2]design.ID{m.a.Part, m.b.Part}
		if !m.overlap || said[k] {
			continue
		}
		said[k] = true
		w := Warning{Part: m.a.Part, At: m.middle()}
		switch {
		case m.a.round() == m.b.round():
			w.Title = "Two cut-outs run into each other"
			if m.a.round() {
				w.Title = "Two holes run into each other"
			}
			w.Advice = "Move them apart, or draw them as one."
			c.state(limitOverlap, w)
		default:
			if m.b.round() {
				w.Part = m.b.Part
			}
			w.Title = "Hole lies in a cut-out"
			w.Advice = "Move the hole or the sink, so that the hole has concrete all round."
			c.state(limitHoleIn, w)
		}
	}
}

// channelLeaves looks for a channel that runs over the edge though its end is
// drawn closed, or that misses the top. A region drawn over the edge is taken
// as meant.
func (c *check) channelLeaves(ch channel) {
	missed := len(ch.rims) > 0
	for _, r := range ch.rims {
		p, _ := c.outline.closest(r, near)
		missed = missed && c.outline.sideOf(r, p.d) == without && !r.contains(c.outline.pts[0])
	}
	if missed {
		c.state(limitChannelLeaves, Warning{Part: ch.Part, At: ch.rims[0].pts[0],
			Title: "Channel lies outside the top", Advice: "Move it onto the top or take it away."})
		return
	}
	for _, end := range ch.Open {
		if c.closedEnd(ch.Part, end.At) {
			c.state(limitChannelLeaves, Warning{Part: ch.Part, At: end.At,
				Title: "Channel with a closed end runs over the edge",
				Advice: "Pull the end back onto the top, or make it an open end so that the resin runs out to " +
					"the edge as meant."})
		}
	}
}

// closedEnd reports whether the river end nearest to p is a closed one. A
// channel with regions has no say.
func (c *check) closedEnd(part design.ID, p geom.Vec) bool {
	best, closed := math.Inf(1), false
	for _, ch := range c.d.Channels {
		if ch.ID != part || len(ch.Regions) > 0 {
			continue
		}
		for _, r := range ch.Rivers {
			if len(r.Nodes) == 0 {
				continue
			}
			for _, end := range [...]struct {
				node design.RiverNode
				kind design.RiverEnd
			}{{r.Nodes[0], r.Start}, {r.Nodes[len(r.Nodes)-1], r.End}} {
				at := geom.Vec{X: end.node.At.X.MM(), Y: end.node.At.Y.MM()}
				if d := at.Dist(p); d < best {
					best, closed = d, end.kind != design.EndOpen
				}
			}
		}
	}
	return closed
}

package warn

import "example.org/castwright/model/geom"

// glass compares glass with the grind that opens the face, and glass in resin
// with the depth of its channel.
func (c *check) glass() {
	grind := c.d.Finish.Grind.MM()
	for i, b := range c.s.Beds {
		at := c.middle()
		switch {
		case i < len(c.ms.Beds) && c.ms.Beds[i].Area > 0:
			at = c.ms.Beds[i].Centroid
		case len(b.Loops) > 0:
			at = b.Loops[0].Centroid()
		}
		thin := b.Grain
		if b.Depth > 0 {
			thin = min(thin, b.Depth)
		}
		if !(grind > 0) || !(thin > 0) {
			continue
		}
		c.thin(thin, grind, Warning{Part: b.Part, At: at})
	}
	for _, ch := range c.channels {
		at, ok := c.inChannel(ch)
		if !ok || !ch.Fill.Resin || ch.Fill.Glass == nil || !(ch.Depth > 0) {
			continue
		}
		c.say(limitGlassThick, ch.Fill.Glass.Grain.MM(), ch.Depth, Warning{Part: ch.Part, At: at,
			Title: "Glass is larger than its channel is deep",
			Advice: "Use smaller glass or a deeper channel: pieces would stand out of the resin and have to be " +
				"ground down."})
	}
}

// thin warns of glass of which the grind leaves little or nothing.
func (c *check) thin(glass, grind float64, w Warning) {
	gone := limitGlass.Steps[1]
	if glass <= grind*gone.Value+near {
		w.Title = "The grind takes all the glass away"
		w.Advice = "Use larger glass in a deeper layer, or grind less: form depth and glass must both allow for " +
			"the grind."
		c.warn(limitGlass, Step{gone.Severity, grind * gone.Value}, glass, w)
		return
	}
	w.Title = "The grind takes much of the glass away"
	w.Advice = "Use larger glass in a deeper layer, or grind less: pieces ground past their middle come loose."
	c.say(limitGlass, glass, grind, w)
}

// middle is a place on the top for what concerns all of it: the centroid of the
// outline or, where that lies off the top, the outline's nearest point to it.
func (c *check) middle() geom.Vec {
	p := c.outline.pts.Centroid()
	if c.outline.contains(p) || !p.Finite() {
		return p
	}
	b := c.outline.bounds()
	near, _ := c.outline.fromSegment(p, p, (b.x1-b.x0)+(b.y1-b.y0))
	return near.to
}

package warn

import "example.org/castwright/model/geom"

// cover measures the concrete that is left under each channel.
func (c *check) cover() {
	for _, ch := range c.channels {
		at, ok := c.inChannel(ch)
		if !ok || !(ch.Depth > 0) {
			continue
		}
		left := c.s.Thickness - ch.Depth
		w := Warning{Part: ch.Part, At: at, Title: "Concrete under the channel is thin",
			Advice: "Make the channel shallower or the top thicker: a slab cracks along a deep channel."}
		if !c.say(limitCoverShare, left, c.s.Thickness, w) {
			c.say(limitCover, left, 1, w)
		}
	}
}

// inChannel is a place on the top within a channel, to point at: the middle of
// its first centreline if that will do.
func (c *check) inChannel(ch channel) (geom.Vec, bool) {
	try := func(p geom.Vec) bool { return p.Finite() && ch.contains(p) && c.outline.contains(p) }
	for _, line := range ch.Centrelines {
		if n := len(line); n > 0 {
			for _, k := range [...]int{n / 2, n / 4, 3 * n / 4} {
				if try(line[k]) {
					return line[k], true
				}
			}
		}
	}
	for _, r := range ch.rims {
		if p := r.pts.Centroid(); try(p) {
			return p, true
		}
	}
	for _, r := range ch.rims {
		for _, p := range r.pts {
			if c.outline.contains(p) {
				return p, true
			}
		}
	}
	return geom.Vec{}, false
}

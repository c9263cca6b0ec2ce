package warn

import (
	"fmt"
	"math"
)

// pours notes each channel that the resin can't fill in one pour.
func (c *check) pours() {
	most := c.m.Resin.MaxPour
	if !(most > 0) {
		return
	}
	for _, ch := range c.channels {
		at, ok := c.inChannel(ch)
		if !ok || !ch.Fill.Resin {
			continue
		}
		n := math.Ceil((ch.Depth - near) / most)
		c.say(limitPour, ch.Depth, most, Warning{Part: ch.Part, At: at,
			Title: "Channel is deeper than one pour of resin",
			Advice: fmt.Sprintf("Fill it in %.0f pours, each when the resin's sheet allows the next: poured too "+
				"deep it boils, yellows and cracks.", n)})
	}
}

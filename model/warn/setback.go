package warn

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// setback compares the tap line of each set that keeps to a sink with where
// tap lines usually lie.
func (c *check) setback() {
	for _, t := range c.d.Taps {
		at, ok := c.tapsAt(t.ID)
		if t.Sink == "" || !ok {
			continue
		}
		back := t.SetBack.MM()
		near := c.say(limitSetback, back, 1, Warning{Part: t.ID, At: at,
			Title:  "Tap line is close to the back edge",
			Advice: "Check that the tap's body, handles and a backsplash find room behind the holes."})
		if !near {
			c.say(limitSetbackFar, back, 1, Warning{Part: t.ID, At: at,
				Title:  "Tap line is far from the back edge",
				Advice: "Check that the spout still reaches the bowl as meant and that the holes clear it."})
		}
	}
}

// tapsAt is the middle of the holes of a tap set.
func (c *check) tapsAt(id design.ID) (geom.Vec, bool) {
	var sum geom.Vec
	n := 0.0
	for _, o := range c.openings {
		if o.Kind == slab.OpeningTap && o.Part == id {
			sum, n = sum.Add(o.Centre), n+1
		}
	}
	if n == 0 {
		return geom.Vec{}, false
	}
	return sum.Mul(1 / n), true
}

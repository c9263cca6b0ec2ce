package warn

import (
	"math"
	"slices"

	"example.org/castwright/model/geom"
)

// carryFlat reckons what the top would bear if two people held it flat by its
// ends: a simple beam under its own weight, M(x) = W x (L - x) / 2L, across the
// concrete that is left at its middle and in five places along each sink. Loads
// are as they are; a jolt adds to them.
func (c *check) carryFlat() {
	kg := c.t.WeightDry.Value
	p := caliper(hull(c.outline.pts))
	if !(kg > 0) || !(p.width > 0) || !(p.length > 0) {
		return
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, q := range c.outline.pts {
		lo, hi = min(lo, q.Dot(p.along)), max(hi, q.Dot(p.along))
	}
	stress, at := 0.0, c.middle()
	section := func(x float64) {
		width, middle := c.section(p.along, x)
		if !(width > 0) {
			return
		}
		m := kg * gravity * (x - lo) * (hi - x) / (2 * (hi - lo))
		if s := 6 * m / (width * c.s.Thickness * c.s.Thickness); s > stress {
			stress, at = s, middle
		}
	}
	section((lo + hi) / 2)
	for _, o := range c.openings {
		if o.round() || o.side != within {
			continue
		}
		from, to := math.Inf(1), math.Inf(-1)
		for _, q := range o.pts {
			from, to = min(from, q.Dot(p.along)), max(to, q.Dot(p.along))
		}
		for _, share := range [...]float64{0.02, 0.25, 0.5, 0.75, 0.98} {
			section(from + share*(to-from))
		}
	}
	c.say(limitCarry, stress, math.Sqrt(assumedFc)*psi, Warning{At: at, Unit: "MPa",
		Title: "Carried flat, the top could crack",
		Advice: "Carry and turn it on edge, with a stiff board strapped along it where it is weak; never lift " +
			"it flat by its ends."})
}

// section is how much concrete a line square to the direction u meets at
// distance x along it, in mm, and the middle of the widest stretch.
func (c *check) section(u geom.Vec, x float64) (float64, geom.Vec) {
	b := c.outline.bounds()
	mid := geom.Vec{X: (b.x0 + b.x1) / 2, Y: (b.y0 + b.y1) / 2}
	far := math.Hypot(b.x1-b.x0, b.y1-b.y0) + 1
	at := mid.Add(u.Mul(x - mid.Dot(u)))
	from, to := at.Sub(u.Left().Mul(far)), at.Add(u.Left().Mul(far))
	ts := c.outline.crossings(from, to, nil)
	for _, o := range c.openings {
		if o.side != without {
			ts = o.crossings(from, to, ts)
		}
	}
	slices.Sort(ts)
	width, widest, middle := 0.0, 0.0, at
	for k := 1; k < len(ts); k++ {
		p := from.Lerp(to, (ts[k-1]+ts[k])/2)
		d := (ts[k] - ts[k-1]) * 2 * far
		if d < near || !c.solid(p) {
			continue
		}
		width += d
		if d > widest {
			widest, middle = d, p
		}
	}
	return width, middle
}

// solid reports whether p lies in the outline and in no opening.
func (c *check) solid(p geom.Vec) bool {
	return c.outline.contains(p) &&
		!slices.ContainsFunc(c.openings, func(o opening) bool { return o.contains(p) })
}

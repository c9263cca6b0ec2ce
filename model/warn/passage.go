package warn

import "math"

// passage looks whether the finished piece gets to its place. A piece is
// carried on edge: its smallest width stands up, its length lies along the way.
// Only what is known of the site is judged.
func (c *check) passage() {
	p := caliper(hull(c.outline.pts))
	if !(p.width > 0) {
		return
	}
	c.door(p)
	if stair := c.site.StairWidth.MM(); stair > 0 {
		c.say(limitStair, p.width, stair, Warning{At: c.middle(),
			Title:  "The piece passes the stair only on edge",
			Advice: "Carry it on edge, and check headroom and rails along the whole way."})
	}
	c.turn(p)
}

// door: on edge the piece must pass under the lintel, flat it must pass between
// the posts.
func (c *check) door(p piece) {
	high, wide := c.site.DoorHeight.MM(), c.site.DoorWidth.MM()
	most := max(high, wide)
	if !(most > 0) {
		return
	}
	w := Warning{At: c.middle(), Title: "The piece does not pass the door",
		Advice: "Cast it in two pieces, or find another way in: even on edge it is too large."}
	if high <= 0 || wide <= 0 {
		// Half of the door is unknown, so that the other way may still do.
		if p.width > most+near {
			w.Title = "The piece may not pass the door"
			w.Advice = "Measure the door both ways: the piece is larger than the size that is known."
			c.warn(limitDoor, Step{Caution, most}, p.width, w)
		}
		return
	}
	c.say(limitDoor, p.width, most, w)
}

// turn: a piece longer than the turn is clear must swing round it on edge.
func (c *check) turn(p piece) {
	clear, passage := c.site.StairTurn.MM(), c.site.StairWidth.MM()
	if !(clear > 0) || p.length <= clear+near {
		return
	}
	w := Warning{At: c.middle(), Title: "The piece is longer than the turn",
		Advice: "Try it first with a board of the same length, or stand the piece on end at the turn; else " +
			"cast it in two pieces."}
	steps := limitTurn.Steps
	switch longest := longestRound(passage, clear, c.s.Thickness); {
	case !(passage > 0):
		c.warn(limitTurn, Step{steps[1].Severity, clear}, p.length, w)
	case p.length > longest+near:
		w.Title = "The piece does not swing round the turn"
		c.warn(limitTurn, Step{steps[2].Severity, longest}, p.length, w)
	default:
		c.warn(limitTurn, Step{steps[0].Severity, clear}, p.length, w)
	}
}

// longestRound is the longest rectangle, thick mm across, that can be carried
// level round the right angle between passages a and b mm wide: the least over
// the angle t of
//
//	a / sin t + b / cos t - thick / (sin t cos t)
//
// For nothing thick it is (a^(2/3) + b^(2/3))^(3/2), the ladder problem.
func longestRound(a, b, thick float64) float64 {
	if !(a > thick) || !(b > thick) {
		return 0
	}
	length := func(t float64) float64 {
		s, c := math.Sincos(t)
		return a/s + b/c - thick/(s*c)
	}
	lo, hi := 1e-3, math.Pi/2-1e-3
	for range 60 {
		third := (hi - lo) / 3
		if length(lo+third) < length(hi-third) {
			hi -= third
		} else {
			lo += third
		}
	}
	return length((lo + hi) / 2)
}

package warn

// supports looks at what carries the top: whether anything does, whether the
// top balances on it, and how far it overhangs and spans.
func (c *check) supports() {
	if len(c.s.Bearings) == 0 {
		c.state(limitSupports, Warning{At: c.middle(), Title: "No supports drawn",
			Advice: "Draw the cabinet sides, rails, wall ledgers or brackets that the top rests on, so that " +
				"overhangs and spans can be checked."})
		return
	}
	b := newBearings(c, c.strip().allowedSpan().severe)
	if b == nil {
		w := Warning{At: c.middle(), Title: "No support lies under the top",
			Advice: "Move the supports under the top or draw those that carry it, so that overhangs and " +
				"spans can be checked."}
		c.warn(limitSupports, Step{Severity: Caution}, 0, w)
		return
	}
	c.balance(b)
	c.carrying(b)
}

package warn

// openEnds notes each place where resin would run off the top.
func (c *check) openEnds() {
	for _, ch := range c.channels {
		if !ch.Fill.Resin {
			continue
		}
		for _, end := range ch.Open {
			c.warn(limitOpenEnd, Step{Severity: Note}, end.Width, Warning{Part: ch.Part, At: end.At,
				Title: "Open channel end needs a dam",
				Advice: "Tape and seal a dam across it, a hand's width past both banks, before any resin is " +
					"poured."})
		}
	}
}

package warn

// span warns of the worst unsupported span, measured and judged as carry.go and
// strip.go say.
func (c *check) span(b *bearings, w worst) {
	s, step, by, broken := w.judge()
	if !broken {
		return
	}
	if s.round {
		s.hang, s.length = b.widen(s.hang, s.length, c.strip().spans)
		step, by, _ = s.judge(s.length)
	}
	by.Code = SpanLong
	it := Warning{At: s.at,
		Title: "Unsupported span is long",
		Advice: "Put a rail, gable or bracket under the middle of the span, or cast the top thicker and with " +
			"steel in it."}
	if step.Severity == Note {
		it.Title = "Span needs steel or fibre"
		it.Advice = "Put steel or fibre in it near the underside, or a rail under its middle: plain concrete " +
			"this thick is not counted on to bear a person over it."
	}
	c.warn(by, step, s.length, it)
}

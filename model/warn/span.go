package warn

// span warns of the worst unsupported span, measured and judged as carry.go and
// strip.go say.
func (c *check) span(w worst) {
	step, by, broken := w.judge()
	if !broken {
		return
	}
	by.Code = SpanLong
	c.warn(by, step, w.length, Warning{At: w.at.at,
		Title: "Unsupported span is long",
		Advice: "Put a rail, gable or bracket under the middle of the span, or cast the top thicker and with " +
			"steel in it."})
}

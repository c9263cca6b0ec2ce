package warn

// overhang warns of the worst overhang past the bearings, measured and judged
// as carry.go and strip.go say.
func (c *check) overhang(w worst) {
	s, step, by, broken := w.judge()
	if !broken {
		return
	}
	by.Code = OverhangLong
	it := Warning{At: s.root.Lerp(s.at, 0.5),
		Title: "Overhang past the bearing is long",
		Advice: "Put a bracket, rail or leg under the free edge, or shorten the overhang: it can break when " +
			"someone leans, sits or climbs on it."}
	if step.Severity == Note {
		it.Title = "Overhang needs steel or fibre"
		it.Advice = "Put steel or fibre in it near the face, or carry its free edge: plain concrete this " +
			"thick is not counted on to bear a person so far out."
	}
	c.warn(by, step, s.length, it)
}

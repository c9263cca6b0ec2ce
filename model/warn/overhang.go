package warn

// overhang warns of the worst overhang past the bearings, measured and judged
// as carry.go and strip.go say.
func (c *check) overhang(w worst) {
	s, step, by, broken := w.judge()
	if !broken {
		return
	}
	by.Code = OverhangLong
	c.warn(by, step, s.length, Warning{At: s.root.Lerp(s.at, 0.5),
		Title: "Overhang past the bearing is long",
		Advice: "Put a bracket, rail or leg under the free edge, or shorten the overhang: it can break when " +
			"someone leans, sits or climbs on it."})
}

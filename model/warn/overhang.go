package warn

// overhang warns of the worst overhang past the bearings, measured and judged
// as carry.go and strip.go say.
func (c *check) overhang(w worst) {
	step, by, broken := w.judge()
	if !broken {
		return
	}
	by.Code = OverhangLong
	c.warn(by, step, w.length, Warning{At: w.at.from.Lerp(w.at.at, 0.5),
		Title: "Overhang past the bearing is long",
		Advice: "Put a bracket, rail or leg under the free edge, or shorten the overhang: it can break when " +
			"someone leans, sits or climbs on it."})
}

package warn

// thickness looks whether the slab is thick enough to hold together, and to
// hold steel.
func (c *check) thickness() {
	w := Warning{At: c.middle(), Title: "The top is thin",
		Advice: "Use a mix with fibre through it and keep the spans short, or make the top thicker."}
	thin := c.say(limitThin, c.s.Thickness, 1, w)
	if thin && c.found[len(c.found)-1].Severity > Note {
		return // steel is out of the question
	}
	c.say(limitSteel, c.s.Thickness, 1, Warning{At: c.middle(),
		Title: "No room for steel bars with full cover",
		Advice: "Reinforce with fibre, or with thin mesh in the middle of the slab; a bar near the face shows " +
			"as a line and may rust."})
}

package warn

// stated looks whether the job states the mix that every amount rests on.
func (c *check) stated() {
	if !(c.t.MixVolume.Value > 0) || c.m.Mix.Stated() {
		return
	}
	w := Warning{At: c.middle(), Title: "The mix is not stated",
		Advice: "Type in the bag's yield and the densities from its data sheet: until then weights are those of " +
			"ordinary concrete, and bags those of a common rapid-setting mortar."}
	if !c.m.Mix.Nothing() && !(c.m.Mix.BagYield > 0) {
		w.Title = "A bag of mix has no yield"
		w.Advice = "Type in how much a bag yields, from its data sheet: until then bags, water and their cost can't be reckoned."
	}
	c.state(limitStated, w)
}

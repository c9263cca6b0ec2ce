package warn

import "example.org/castwright/model/geom"

// balance looks whether the centre of gravity lies over the bearings.
func (c *check) balance(b *bearings) {
	at := geom.Vec{X: c.t.CentreX.Value, Y: c.t.CentreY.Value}
	if !at.Finite() || !(c.t.WeightDry.Value > 0) {
		return
	}
	far, _ := outside(at, b.hull)
	c.say(limitBalance, far, 1, Warning{At: at, Title: "The top tips off its bearings",
		Advice: "Carry it on the far side as well, or fix it down as a licensed person directs: its " +
			"centre of gravity lies beyond the outermost bearing."})
}

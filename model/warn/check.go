package warn

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/takeoff"
)

// Check compares a top with the limits and gives its warnings, worst first.
// s, ms and t are the solid, measures and take-off of d; lengths in s and ms
// are millimetres. It never fails: a design that is too broken for a rule gets
// no warning from it, because its faults say what is wrong.
func Check(d design.Design, m design.Materials, site design.Site,
	s slab.Solid, ms slab.Measures, t takeoff.Takeoff) []Warning {
	return nil
}

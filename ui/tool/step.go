package tool

import (
	"math"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// The grid steps, finest first: round figures of each system.
var (
	metricSteps = []units.Length{
		units.Millimetre, 2 * units.Millimetre, 5 * units.Millimetre, 10 * units.Millimetre,
		20 * units.Millimetre, 50 * units.Millimetre, 100 * units.Millimetre, 500 * units.Millimetre,
		units.Metre,
	}
	inchSteps = []units.Length{
		units.Inch / 16, units.Inch / 8, units.Inch / 4, units.Inch / 2, units.Inch,
		3 * units.Inch, units.Foot, 3 * units.Foot,
	}
)

// minStepPoints is the least width of a grid step on the picture: finer than
// this a hand can't choose between two steps.
const minStepPoints = 3.4

// Step is the grid step at a zoom: the finest round figure of the maker's
// system that a hand can still aim at.
func Step(sys units.System, perMM float64) units.Length {
	steps := metricSteps
	if sys == units.Imperial {
		steps = inchSteps
	}
	for _, s := range steps {
		if s.MM()*perMM >= minStepPoints {
			return s
		}
	}
	return steps[len(steps)-1]
}

// Rounding says which step the snap rounds to: [ByZoom], or a place in
// [FixedSteps], counted from 1.
type Rounding uint8

// ByZoom is the step that [Step] gives at each zoom.
const ByZoom Rounding = 0

// FixedSteps are the steps that a maker can choose, finest first. Both systems
// have as many, so that a choice survives a change of units.
func FixedSteps(sys units.System) []units.Length {
	if sys == units.Imperial {
		return []units.Length{units.Inch / 16, units.Inch / 8, units.Inch / 4, units.Inch / 2, units.Inch}
	}
	return []units.Length{units.Millimetre, 2 * units.Millimetre, 5 * units.Millimetre,
		10 * units.Millimetre, 50 * units.Millimetre}
}

// Known reports whether r is a choice that there is.
func (r Rounding) Known() bool { return int(r) <= len(FixedSteps(units.Metric)) }

// Step is the step in a system at a zoom.
func (r Rounding) Step(sys units.System, perMM float64) units.Length {
	if fixed := FixedSteps(sys); r != ByZoom && int(r) <= len(fixed) {
		return fixed[r-1]
	}
	return Step(sys, perMM)
}

// onGrid is x moved to the nearest multiple of the step, exact to the nanometre.
func onGrid(x float64, step units.Length) float64 {
	n := math.RoundToEven(x / step.MM())
	return n * float64(step) / float64(units.Millimetre)
}

// gridPoint is p with both coordinates on the grid.
func gridPoint(p geom.Vec, step units.Length) geom.Vec {
	return geom.Vec{X: onGrid(p.X, step), Y: onGrid(p.Y, step)}
}

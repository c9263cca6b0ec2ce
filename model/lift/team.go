package lift

import "example.org/castwright/model/units"

// TeamSource is where the team factors stand; they are from memory.
const TeamSource = "UK HSE L23, team handling (from memory)"

// SlabTask is the lift of one person at a slab, in the US form: held 15 in before
// the ankles, hands at 30 in, raised 10 in, once in a while, with a poor grip.
// The posture is common practice, no source.
var SlabTask = Task{Horizontal: 15, Vertical: 30, Distance: 10, PerMinute: 0.2, Hours: 1,
	Grip: GripPoor}

// SlabLimit is the recommended weight limit in kilograms of one person at a
// slab: 30.6 lb by the US form, in which the manual's examples are printed. The
// metric form gives 2 % less.
func SlabLimit() float64 { return US.Limit(SlabTask) * units.PoundKG }

// TeamFactor is the share of their summed limits that a team of people may lift
// together: two thirds for two, a half for three and more, by HSE L23.
func TeamFactor(people int) float64 {
	switch {
	case people < 1:
		return 0
	case people == 1:
		return 1
	case people == 2:
		return 2.0 / 3
	}
	return 0.5
}

// TeamLimit is what a team may lift when each of them may lift person, in the
// same unit.
func TeamLimit(person float64, people int) float64 {
	return person * float64(max(0, people)) * TeamFactor(people)
}

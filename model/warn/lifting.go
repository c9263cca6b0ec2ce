package warn

import (
	"fmt"
	"math"

	"example.org/castwright/model/lift"
)

// maxTeam is the largest team that is advised: more find no place about a top.
const maxTeam = 4

// lifting compares each person's share of the finished piece with what the
// NIOSH equation recommends for a slab, and the whole with what a team may lift
// together. When nobody said how many help, it judges for two.
func (c *check) lifting() {
	kg := c.t.WeightDry.Value
	if !(kg > 0) {
		return
	}
	one := lift.SlabLimit()
	people, known := c.site.Helpers, c.site.Helpers > 0
	if !known {
		people = 2
	}
	w := Warning{At: c.middle(), Unit: "kg", Title: "Too heavy for one person", Advice: advice(int(math.Ceil(kg / one)))}
	if people > 1 {
		w.Title = "Too much for each of " + count(people)
	}
	share := kg / float64(people)
	if c.say(limitLift, share, one, w) {
		return
	}
	// Each share is within the limit: does the team as a whole lift it, and if
	// nobody said how many, is it more than one may lift?
	w.Title, w.Advice = "Heavy for "+count(people), advice(people+1)
	if c.say(limitTeam, kg, lift.TeamLimit(one, people), w) || known {
		return
	}
	w.Title, w.Advice = "Too heavy for one person", advice(2)
	if step, broken := limitLift.judge(kg, one, 0); broken {
		c.warn(limitLift, Step{Note, step.Value}, kg, w)
	}
}

// advice says how many people, or what else.
func advice(team int) string {
	if team > maxTeam {
		return "Slide, tilt and roll it rather than lift it, on edge: with a trolley, straps, a hoist and more hands, or " +
			"cast it in pieces. The limit is what nearly everybody can lift without harm, and most tops exceed it; " +
			"the rules for lifting where you work decide."
	}
	return fmt.Sprintf("Lift it with %s at the least, on edge and with straps, or with a hoist or trolley; "+
		"the rules for lifting where you work decide.", count(team))
}

func count(people int) string {
	words := [...]string{"nobody", "one person", "two people", "three people", "four people",
		"five people", "six people"}
	if people >= 0 && people < len(words) {
		return words[people]
	}
	return fmt.Sprintf("%d people", people)
}

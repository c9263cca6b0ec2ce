package picture

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
)

// A river that runs from the wall over the front is looked at where it falls, not
// half way between its ends; one that leaves at the wall alone is no place to look.
func TestFrontSpot(t *testing.T) {
	for _, c := range []struct {
		from, to float64 // heights of the river's ends
		want     float64 // of the place, NaN for the front's left third
	}{{640, -40, 0}, {300, -40, 0}, {640, 300, math.NaN()}} {
		d := design.Design{Thickness: mm(40), Outline: edit.Rectangle(mm(1600), mm(600))}
		r := design.River{Start: design.EndOpen, End: design.EndOpen, Nodes: []design.RiverNode{node(400, c.from, 90), node(400, c.to, 90)}}
		if c.from < 600 {
			r.Start = design.EndRound
		}
		if c.to > 0 {
			r.End = design.EndRound
		}
		d.Channels = []design.Channel{{ID: "c", Depth: mm(12), Fill: design.Fill{Resin: true},
			Rivers: []design.River{r}}}
		got := built(d, SetOptions{}).frontSpot()
		if math.IsNaN(c.want) {
			near(t, "left third of the front", got.X, 560, 1)
			near(t, "its front", got.Y, 20, 6)
			continue
		}
		near(t, "middle of the mouth", got.X, 400, 3)
		near(t, "height of the mouth", got.Y, c.want, 1.5)
	}
}

// Runs down an edge follow on where the outline closes: on both sides of its start
// the film is the same.
func TestRunsClose(t *testing.T) {
	const thick = 45.0
	most := 0.0
	for _, way := range []float64{3211, 3217, 2800, 4005} {
		c := channel{runs: runsOf(way, thick)}
		for down := 0.0; down < 50; down += 0.5 {
			for d := -6.0; d < 3; d += 1.5 {
				a, b := c.running(0, down, d, thick), c.running(way, down, d, thick)
				most = max(most, a)
				near(t, "thickness where the outline closes", a, b, 1e-9)
			}
		}
	}
	if most < 0.05 {
		t.Errorf("no run is near any start: the thickest is %g", most)
	}
}

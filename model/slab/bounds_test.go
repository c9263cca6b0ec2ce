package slab_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// TestBounds: the box of a top is that of its own curves. Closed forms: a bow's
// depth is its ends' and its rise, an oval's its axes, a rounded corner changes
// nothing.
func TestBounds(t *testing.T) {
	const in = units.Inch
	round := edit.Rectangle(40*in, 20*in)
	for i := range round.Nodes {
		round.Nodes[i].Corner = design.Corner{Kind: design.CornerRounded, Size: 3 * in}
	}
	for name, c := range map[string]struct {
		o    design.Outline
		w, h float64
	}{
		"bowed":   {edit.BowedFront(61*in, 45*in/2, 7*in/2), 61 * 25.4, 22.5 * 25.4},
		"oval":    {edit.Oval(900*units.Millimetre, 433*units.Millimetre), 900, 433},
		"rounded": {round, 40 * 25.4, 20 * 25.4},
	} {
		b := slab.Resolve(design.Design{Outline: c.o, Thickness: 40 * units.Millimetre}).Measure(0).Bounds
		if math.Abs(b.W()-c.w) > 1e-6 || math.Abs(b.H()-c.h) > 1e-6 {
			t.Errorf("%s: %.9g by %.9g mm, want %.9g by %.9g", name, b.W(), b.H(), c.w, c.h)
		}
	}
}

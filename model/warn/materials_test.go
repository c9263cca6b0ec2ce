package warn_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/material"
	"example.org/castwright/model/warn"
)

// A mix without a figure, without a yield, and one as it is sold.
func TestMixMissing(t *testing.T) {
	for _, c := range []struct {
		name  string
		mix   design.Mix
		title string
	}{
		{"nothing stated", design.Mix{Name: "Some bag"}, "The mix is not stated"},
		{"no yield", design.Mix{BagMass: 25, BagWater: 4.9, CuredDensity: 2400, FreshDensity: 2500}, "A bag of mix has no yield"},
		{"no density", design.Mix{BagMass: 25, BagWater: 4.9, BagYield: 14}, "The mix is not stated"},
		{"stated", material.RapidMortar(), ""},
	} {
		top := newTop(40, geom.Loop{{}, {X: 900}, {X: 900, Y: 500}, {Y: 500}})
		top.materials.Mix, top.takeoff.MixVolume.Value = c.mix, 18
		title := ""
		for _, w := range only(top.check(), warn.MixMissing) {
			title = w.Title
		}
		if title != c.title {
			t.Errorf("%s: %q, want %q", c.name, title, c.title)
		}
	}
}

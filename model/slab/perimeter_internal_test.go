package slab

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
)

// The rims of two overlapping discs, one across the outline, along exact curves and
// along flattened ones: by the lens of two circles (any mensuration handbook).
func TestRimsFlattenedAgree(t *testing.T) {
	mm := func(x float64) units.Length { return units.FromMM(x) }
	d := design.Design{Thickness: mm(40), Outline: design.Outline{Nodes: []design.Node{
		{}, {At: design.Point{X: mm(900)}}, {At: design.Point{X: mm(900), Y: mm(500)}}, {At: design.Point{Y: mm(500)}}}}}
	for _, x := range []float64{300, 400, 900} {
		d.Holes = append(d.Holes, design.Hole{At: design.Point{X: mm(x), Y: mm(250)}, Diameter: mm(160)})
	}
	s := Resolve(d)
	const r = 80.0
	// Two discs 100 apart: each loses the arc within the other; half of the third is on the top.
	want := 2*r*(2*math.Pi-2*math.Acos(50/r)) + math.Pi*r
	if got := s.cutoutPerimeter(); math.Abs(got-want) > 1e-6*want {
		t.Errorf("exact %.6f, want %.6f", got, want)
	}
	if got := s.flatPerimeter(); math.Abs(got-want) > 1e-3*want {
		t.Errorf("flattened %.6f, want %.6f", got, want)
	}
}

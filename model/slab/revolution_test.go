package slab_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
)

// Bodies of revolution by the second theorem of Pappus and Guldin: volume is the
// area of the section times the way of its centroid. What a quarter circle of
// radius r leaves of its square has the area (1 - pi/4) r² and its centroid
// r (10 - 3 pi) / (12 - 3 pi) from either side of the square (CRC Standard
// Mathematical Tables; any mensuration handbook).
func cornerLoss(r float64) (area, centroid float64) {
	return (1 - math.Pi/4) * r * r, r * (10 - 3*math.Pi) / (12 - 3*math.Pi)
}

func TestRevolution(t *testing.T) {
	const thickness = 38.0
	quarter := func(r float64) func(radius, side float64) float64 {
		return func(radius, side float64) float64 {
			a, c := cornerLoss(r)
			return 2 * math.Pi * (radius + side*c) * a
		}
	}
	for _, c := range []struct {
		name string
		p    design.Profile
		loss func(radius, side float64) float64 // side: 1 for a hole, -1 for a disc
	}{
		{"square", profile(design.ProfileSquare, 5), func(_, _ float64) float64 { return 0 }},
		{"rough", profile(design.ProfileRough, 12), func(_, _ float64) float64 { return 0 }},
		{"eased", profile(design.ProfileEased, 2), quarter(2)},
		{"rounded", profile(design.ProfileRounded, 10), quarter(10)},
		{"rounded, all of the edge", profile(design.ProfileRounded, thickness), quarter(thickness)},
		{"half round by size", profile(design.ProfileHalfRound, 15), quarter(15)},
		{"half round by thickness", profile(design.ProfileHalfRound, 0), quarter(thickness / 2)},
		{"full round", profile(design.ProfileFullRound, 0), func(radius, side float64) float64 {
			return 2 * quarter(thickness/2)(radius, side)
		}},
		{"bevelled", profile(design.ProfileBevelled, 8), func(radius, side float64) float64 {
			return 2 * math.Pi * (radius + side*8./3) * 8 * 8 / 2
		}},
	} {
		const radius, hole = 300, 120
		d := top(thickness, c.p, roundTop(20, -40, radius))
		disc := math.Pi * radius * radius * thickness
		m := slab.Resolve(d).Measure(0)
		same(t, c.name+" disc", m.ConcreteVolume, disc-c.loss(radius, -1), 1e-9)
		same(t, c.name+" plan", m.PlanArea, math.Pi*radius*radius, 1e-10)
		same(t, c.name+" perimeter", m.OutlinePerimeter, 2*math.Pi*radius, 1e-12)
		same(t, c.name+" centroid x", m.ConcreteCentroid[0], 20, 1e-9)
		same(t, c.name+" centroid y", m.ConcreteCentroid[1], -40, 1e-9)

		d = top(thickness, profile(design.ProfileSquare, 0), roundTop(20, -40, radius))
		d.Sinks = []design.Sink{{ID: "s", At: pt(10, -60), Shape: sinkShape(design.ShapeCircle, 2*hole, 0), Profile: c.p}}
		m = slab.Resolve(d).Measure(0)
		same(t, c.name+" hole", m.ConcreteVolume, disc-math.Pi*hole*hole*thickness-c.loss(hole, 1), 1e-9)
		same(t, c.name+" hole perimeter", m.CutoutPerimeter, 2*math.Pi*hole, 1e-12)
		same(t, c.name+" net area", m.NetArea, math.Pi*(radius*radius-hole*hole), 1e-10)
	}
}

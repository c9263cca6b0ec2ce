package slab_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// counter is a top with everything on it: an L with a rounded inside corner and a
// spline front, a D-shaped under-mount, taps, a branching river that leaves by
// one edge, and a glass bed.
func counter() design.Design {
	n := nodes(0, 0, 1000, 0, 1600, 0, 1600, 560, 620, 560, 620, 1100, 0, 1100)
	n[0].Edge = design.Edge{Curve: design.CurveSpline, C1: pt(300, -60), C2: pt(700, 60)}
	n[1].Edge = design.Edge{Curve: design.CurveSpline, C1: pt(1200, -40), C2: pt(1400, -40)}
	for i := range n {
		n[i].Edge.Profile = profile(design.ProfileRounded, 6)
	}
	n[0].Corner = design.Corner{Kind: design.CornerRounded, Size: mm(25)}
	n[2].Corner = design.Corner{Kind: design.CornerRounded, Size: mm(40)}
	n[4].Corner = design.Corner{Kind: design.CornerRounded, Size: mm(30)}
	for _, i := range []int{3, 6} {
		n[i].Edge.Side = design.SideWall
		n[i].Edge.Profile = design.Profile{}
	}
	n[2].Edge.Profile = profile(design.ProfileHalfRound, 0)
	d := design.Design{Outline: design.Outline{Nodes: n}, Thickness: mm(38)}
	d.Sinks = []design.Sink{{ID: "sink", At: pt(1150, 290), Rotation: 5 * units.Degree,
		Shape:   design.Shape{Kind: design.ShapeD, Width: mm(500), Depth: mm(380), Bow: mm(60), CornerRadius: mm(50)},
		Reveal:  design.Reveal{Kind: design.RevealOverhang, Size: mm(3)},
		Profile: profile(design.ProfileEased, 3), BowlDepth: mm(150), BowlMass: 12}}
	d.Taps = []design.TapSet{{ID: "taps", Pattern: design.TapThree8, Diameter: mm(35), Sink: "sink", SetBack: mm(60)}}
	d.Holes = []design.Hole{{ID: "soap", At: pt(820, 480), Diameter: mm(32)}}
	river := func(s, e design.RiverEnd, xyw ...float64) design.River {
		v := design.River{Start: s, End: e}
		for i := 0; i < len(xyw); i += 3 {
			v.Nodes = append(v.Nodes, design.RiverNode{At: pt(xyw[i], xyw[i+1]), Width: mm(xyw[i+2])})
		}
		return v
	}
	d.Channels = []design.Channel{{ID: "river", Depth: mm(10), Fill: design.Fill{Resin: true}, Rivers: []design.River{
		river(design.EndRound, design.EndOpen, 300, 950, 40, 340, 700, 55, 250, 450, 60, 380, 200, 45, 300, 60, 70),
		river(design.EndRound, design.EndRound, 250, 450, 40, 450, 380, 25, 600, 420, 20, 760, 300, 12),
	}}}
	d.Glass = []design.GlassBed{{ID: "drift", Grain: mm(6), Coverage: 50 * units.Percent, Depth: mm(6),
		Region: design.Region{Outer: nodes(20, 1000, 20, 600, 120, 620, 160, 900, 150, 1060)}}}
	d.Supports = []design.Support{{ID: "wall", Line: []design.Point{pt(1600, 540), pt(0, 540)}, Width: mm(40)}}
	return d
}

// wavy is a top of n straight edges whose front swings; rough is how far its
// vertices jump in and out, in millimetres.
func wavy(n int, rough float64) design.Design {
	var xy []float64
	for i := range n {
		a := 2 * math.Pi * float64(i) / float64(n)
		s, c := math.Sincos(a)
		r := 500 + 40*math.Sin(7*a) + rough*math.Sin(float64(n)*1.9*a)
		xy = append(xy, r*c, 0.6*r*s)
	}
	return top(38, profile(design.ProfileRounded, 6), nodes(xy...))
}

func BenchmarkResolve(b *testing.B) {
	d := counter()
	b.ReportAllocs()
	for b.Loop() {
		slab.Resolve(d)
	}
}

func BenchmarkMeasure(b *testing.B) {
	s := slab.Resolve(counter())
	b.ReportAllocs()
	for b.Loop() {
		s.Measure(1.5)
	}
}

func BenchmarkVertices(b *testing.B) {
	for _, rough := range []float64{0, 0.3, 3} {
		for _, n := range []int{200, 2000, 20000} {
			d := wavy(n, rough)
			b.Run(fmt.Sprintf("rough=%g/n=%d", rough, n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					slab.Resolve(d).Measure(1.5)
				}
			})
		}
	}
}

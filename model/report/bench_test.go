package report_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/castwright/assets"
	"example.org/castwright/model/design"
	"example.org/castwright/model/material"
	"example.org/castwright/model/report"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
)

// BenchmarkDerive times a whole report: the demo's options, and the first of
// them with its outline in many straight edges.
func BenchmarkDerive(b *testing.B) {
	j, err := store.Decode(assets.Demos()[0].Data)
	if err != nil {
		b.Fatal(err)
	}
	tops := map[string]design.Design{}
	names := []string{}
	for _, o := range j.Options {
		names = append(names, "demo "+o.Name)
		tops[names[len(names)-1]] = o.Design
	}
	for _, n := range []int{200, 2000, 20000} {
		d := j.Options[0].Design
		d.Outline = manySided(n)
		names = append(names, fmt.Sprintf("n=%d", n))
		tops[names[len(names)-1]] = d
	}
	for _, name := range names {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				report.Derive(tops[name], material.Defaults(), j.Site)
			}
		})
	}
}

// manySided is a wavy oval about the size of the demo, with half-round edges.
func manySided(n int) design.Outline {
	nodes := make([]design.Node, n)
	for i := range nodes {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		w := 1 + 0.01*math.Sin(40*math.Pi*float64(i)/float64(n))
		nodes[i] = design.Node{
			At:   design.Point{X: units.FromMM(790 + 790*c*w), Y: units.FromMM(540 + 540*s*w)},
			Edge: design.Edge{Profile: design.Profile{Kind: design.ProfileHalfRound}},
		}
	}
	return design.Outline{Nodes: nodes}
}

package report_test

import (
	"math"

	"github.com/shopspring/decimal"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/material"
	"example.org/castwright/model/report"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/takeoff"
	"example.org/castwright/model/units"
	"example.org/castwright/model/warn"
)

const (
	in = units.Inch
	mm = units.Millimetre
)

// sample is a wash counter for a pottery studio, invented. Its measures are set by
// hand, so that what a report looks like does not hang on how a slab is measured:
// 60 x 22 x 1.5 in, an oval cut-out 17 x 14 in, a tap hole, a river that runs out
// over the left edge and a glass bed.
func sample(sys units.System) (design.Job, design.Option, report.Report) {
	river := design.Fill{Resin: true, TopCoat: 3 * mm,
		Glass: &design.GlassFill{Grain: 5 * mm, Share: 10 * units.Percent}}
	d := design.Design{
		Outline:   edit.Rectangle(60*in, 22*in),
		Thickness: in + in/2,
		Sinks: []design.Sink{{ID: "sink-1", Mount: design.MountUnder, BowlDepth: 6 * in,
			BowlMass: 7}},
		Taps:     []design.TapSet{{ID: "tap-1", Diameter: in + in/8*3}},
		Channels: []design.Channel{{ID: "river-1", Depth: 10 * mm, Fill: river}},
		Finish:   design.Finish{Exposure: design.ExposureFine, Polish: 3, Grind: in / 16},
	}
	m := material.Defaults()
	m.Mix.BagPrice = decimal.RequireFromString("18.90")
	m.Resin.LitrePrice = decimal.RequireFromString("31.5")

	var bowl geom.Loop
	for i := range 720 {
		a := math.Pi * float64(i) / 360
		bowl = append(bowl, geom.Vec{X: 762 + 8.5*25.4*math.Cos(a), Y: 279.4 + 7*25.4*math.Sin(a)})
	}
	s := slab.Solid{
		Thickness: 38.1,
		Openings: []slab.Opening{
			{Part: "sink-1", Kind: slab.OpeningSink, Loop: bowl},
			{Part: "tap-1", Kind: slab.OpeningTap, Diameter: 34.925},
		},
		Bowls: []slab.Bowl{{Part: "sink-1", Loop: bowl}},
		Recesses: []slab.Recess{{Part: "river-1", Depth: 10, Fill: river,
			Open: []slab.OpenEnd{{At: geom.Vec{X: 0, Y: 250}, Width: 62}}}},
		Beds: []slab.Bed{{Part: "glass-1", Grain: 9, Depth: 9, Coverage: 0.55}},
	}
	ms := slab.Measures{
		PlanArea: 851611.2, NetArea: 730056.7756,
		OutlinePerimeter: 4165.6, SeenLength: 2641.6, WallLength: 1524,
		CutoutPerimeter: 1349.463,
		ConcreteVolume:  27_703_360, ConcreteCentroid: [3]float64{759.7, 279.95, 18.94},
		ResinVolume: 111_800, ResinCentroid: [3]float64{200, 150, 33.1}, ResinArea: 11_180,
		Channels: []slab.ChannelMeasure{{Area: 11_180, AreaCentroid: geom.Vec{X: 200, Y: 150},
			Volume: 111_800, Centroid: [3]float64{200, 150, 33.1}, Length: 223.6}},
		Beds:        []slab.BedMeasure{{Area: 50_000, Centroid: geom.Vec{X: 1325, Y: 200}}},
		GrindVolume: 1_158_965, Bounds: geom.Box{Max: geom.Vec{X: 1524, Y: 558.8}},
	}
	r := report.Report{
		Solid: s, Measures: ms, Takeoff: takeoff.Reckon(d, m, s, ms),
		Faults: []design.Fault{{Rule: "share-range", Part: "glass-1", Field: "glass[0].coverage",
			At: design.Point{X: 1325 * mm, Y: 200*mm + 1}, Detail: "the coverage is odd; give 0 to 1"}},
		Warnings: []warn.Warning{
			{Code: "hole-near-cutout", Severity: warn.Severe, Part: "tap-1",
				At: geom.Vec{X: 762, Y: 470.7}, Value: 26.977, Limit: 38.1, Unit: "mm",
				Title: "Hole is close to a cut-out", Advice: "Leave at least a slab thickness between.",
				Source: "common practice, no source"},
			{Code: "lift-heavy", Severity: warn.Caution, At: geom.Vec{X: 762, Y: 279.4},
				Value: math.Inf(1), Limit: math.NaN(), Unit: "kg",
				Title: "Too heavy for two people", Advice: "Use a hoist, on edge and with straps.",
				Source: "NIOSH 94-110, revised lifting equation"},
			{Code: "carry-flat", Severity: warn.Note, At: geom.Vec{X: 762, Y: 50.8},
				Value: 3.0604, Limit: 1.3082, Unit: "MPa", Title: "Carried flat, the top could crack",
				Advice: "Carry it on edge.", Source: "ACI 318-19 14.5.2.1"},
			{Code: "supports-missing", Severity: warn.Note, Unit: "mm", Title: "No supports drawn",
				Advice: "Draw what the top rests on.", Source: "common practice, no source"},
		},
	}
	j := design.Job{Client: "Lower Kiln Pottery", Units: sys, Materials: m,
		Site: design.Site{Helpers: 2}}
	return j, design.Option{Name: "A", Title: "Wash counter with a river", Design: d}, r
}

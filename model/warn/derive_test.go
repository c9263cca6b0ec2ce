package warn_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/units"
	"example.org/castwright/model/warn"
)

func at(x, y units.Length) design.Point { return design.Point{X: x, Y: y} }

// vanity is a top of 60 x 22 x 1-1/2 in with a sink of 18 x 13 in in its middle,
// 5 in behind the front, three taps at 4 in, on gables, a front rail and a wall.
func vanity() design.Design {
	const in = units.Inch
	line := func(id design.ID, kind design.SupportKind, x0, y0, x1, y1 units.Length) design.Support {
		return design.Support{ID: id, Kind: kind, Line: []design.Point{at(x0*in, y0*in), at(x1*in, y1*in)}, Width: in}
	}
	return design.Design{
		Outline:   edit.Rectangle(60*in, 22*in),
		Thickness: in + in/2,
		Sinks: []design.Sink{{ID: "sink-1", At: at(30*in, 10*in), Mount: design.MountUnder,
			Shape: design.Shape{Kind: design.ShapeRectangle, Width: 18 * in, Depth: 10 * in, CornerRadius: 2 * in}}},
		Taps: []design.TapSet{{ID: "taps-1", Pattern: design.TapThree4, Diameter: in + 3*in/8, Sink: "sink-1",
			SetBack: 2*in + in/2}},
		Supports: []design.Support{
			line("left", design.SupportGable, 1, 0, 1, 22), line("right", design.SupportGable, 59, 0, 59, 22),
			line("front", design.SupportRail, 1, 1, 59, 1), line("wall", design.SupportWall, 0, 21, 60, 21)},
	}
}

// inlay is what the rules of channels may say.
var inlay = []warn.Code{warn.ChannelLeaves, warn.OpenEndDam, warn.ChannelNearEdge, warn.ChannelNearCutout,
	warn.ChannelMeetsCutout, warn.CoverThin, warn.PourDeep}

// river runs 4 in behind the front, 1 in wide and 3/8 in deep, from 1 in to 15 in
// from the left.
func river(start design.RiverEnd) design.Channel {
	const in = units.Inch
	return design.Channel{ID: "channel-1", Depth: 3 * in / 8, Fill: design.Fill{Resin: true}, Rivers: []design.River{{
		Nodes: []design.RiverNode{{At: at(in, 4*in), Width: in}, {At: at(15*in, 4*in), Width: in}}, Start: start}}}
}

func derive(d design.Design) []warn.Warning {
	m := design.Materials{
		Mix:   design.Mix{BagMass: 25, BagYield: 14, BagWater: 5, FreshDensity: 2300, CuredDensity: 2322.68},
		Resin: design.Resin{PartsA: 2, PartsB: 1, Density: 1100, MaxPour: 12},
	}
	return report.Derive(d, m, design.Site{Helpers: 2}).Warnings
}

// The whole way from a design to its warnings. Lengths by hand, in inches.
func TestDerive(t *testing.T) {
	const in = units.Inch
	span := want{warn.SpanLong, warn.Note, "", geom.Vec{}, 19, 0} // 20.5 - 1.5 in, front to back
	for _, c := range []struct {
		name   string
		change func(*design.Design)
		codes  []warn.Code
		want   []want
	}{
		{"as it is", func(*design.Design) {},
			[]warn.Code{warn.RailNarrow, warn.HoleNearEdge, warn.HoleNearCutout, warn.TapSetback, warn.SpanLong,
				warn.OverhangLong, warn.InsideCornerSharp, warn.CutoutCornerSharp, warn.SupportsMissing, warn.OffBalance},
			[]want{span}},
		{"sink 3 in forward", func(d *design.Design) { d.Sinks[0].At.Y -= 3 * in },
			[]warn.Code{warn.RailNarrow, warn.TapSetback, warn.HoleNearCutout},
			[]want{{warn.RailNarrow, warn.Caution, "sink-1", geom.Vec{X: 30, Y: 1}, 2, 3}}},
		{"sink 4 in back: 22 - 19 = 3 in behind, taps 0.5 - 11/16 in before its edge",
			func(d *design.Design) { d.Sinks[0].At.Y += 4 * in },
			[]warn.Code{warn.RailNarrow, warn.HoleInCutout},
			[]want{{warn.HoleInCutout, warn.Severe, "taps-1", geom.Vec{}, 0, 0}}},
		{"set-back of 1-3/4 in: 1-3/4 - 11/16 in of concrete", func(d *design.Design) { d.Taps[0].SetBack = in + 3*in/4 },
			[]warn.Code{warn.TapSetback, warn.HoleNearEdge},
			[]want{{warn.HoleNearEdge, warn.Caution, "taps-1", geom.Vec{}, 1.0625, 1.5},
				{warn.TapSetback, warn.Note, "taps-1", geom.Vec{X: 30, Y: 20.25}, 1.75, 50 / inch}}},
		{"square cut-out", func(d *design.Design) { d.Sinks[0].Shape.CornerRadius = 0 },
			[]warn.Code{warn.CutoutCornerSharp},
			[]want{{warn.CutoutCornerSharp, warn.Caution, "sink-1", geom.Vec{}, 0, 0.375}}},
		{"corners of 1/4 in", func(d *design.Design) { d.Sinks[0].Shape.CornerRadius = in / 4 },
			[]warn.Code{warn.CutoutCornerSharp},
			[]want{{warn.CutoutCornerSharp, warn.Caution, "sink-1", geom.Vec{}, 0.25, 0.375}}},
		{"no supports", func(d *design.Design) { d.Supports = nil },
			[]warn.Code{warn.SupportsMissing, warn.SpanLong},
			[]want{{warn.SupportsMissing, warn.Note, "", geom.Vec{X: 30, Y: 11}, 0, 0}}},
		{"on the wall alone", func(d *design.Design) { d.Supports = d.Supports[3:] },
			[]warn.Code{warn.OverhangLong},
			[]want{{warn.OverhangLong, warn.Severe, "", geom.Vec{}, 20.5, 22.0 / 3}}},
		{"river that leaves by the left edge, 1 in wide", func(d *design.Design) {
			d.Channels = []design.Channel{river(design.EndOpen)}
		}, inlay, []want{{warn.OpenEndDam, warn.Note, "channel-1", geom.Vec{Y: 4}, 1, 0}}},
		{"the same with a closed end", func(d *design.Design) {
			d.Channels = []design.Channel{river(design.EndRound)}
			d.Channels[0].Rivers[0].Nodes[0].At.X = in / 4
		}, inlay, []want{{warn.ChannelLeaves, warn.Caution, "channel-1", geom.Vec{Y: 4}, 0, 0},
			{warn.OpenEndDam, warn.Note, "channel-1", geom.Vec{Y: 4}, 0.866, 0}}}, // 2 root (1/2^2 - 1/4^2)
		{"river 7/8 in deep in two pours", func(d *design.Design) {
			d.Channels = []design.Channel{river(design.EndRound)}
			d.Channels[0].Rivers[0].Nodes[0].At.X = 4 * in
			d.Channels[0].Depth = 7 * in / 8
		}, inlay, []want{{warn.CoverThin, warn.Severe, "channel-1", geom.Vec{}, 0.625, 0.75},
			{warn.PourDeep, warn.Note, "channel-1", geom.Vec{}, 0.875, 12 / inch}}},
		{"L with a square inside corner", func(d *design.Design) {
			d.Outline = edit.LShape(60*in, 22*in, 20*in, 50*in, 0)
			d.Sinks, d.Taps, d.Supports = nil, nil, nil
		}, []warn.Code{warn.InsideCornerSharp},
			[]want{{warn.InsideCornerSharp, warn.Caution, "", geom.Vec{X: 20, Y: 28}, 0, 0.5}}},
		{"L with a radius of 3/8 in", func(d *design.Design) {
			d.Outline = edit.LShape(60*in, 22*in, 20*in, 50*in, 3*in/8)
			d.Sinks, d.Taps, d.Supports = nil, nil, nil
		}, []warn.Code{warn.InsideCornerSharp},
			[]want{{warn.InsideCornerSharp, warn.Caution, "", geom.Vec{}, 0.375, 0.5}}},
		{"L with a radius of 1/2 in", func(d *design.Design) {
			d.Outline = edit.LShape(60*in, 22*in, 20*in, 50*in, in/2)
			d.Sinks, d.Taps, d.Supports = nil, nil, nil
		}, []warn.Code{warn.InsideCornerSharp}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := vanity()
			c.change(&d)
			got := only(derive(d), c.codes...)
			// Where any place of several will do, and for limits that the tables
			// of the rules hold, the wanted place and limit are left at zero.
			for i := range got {
				if i < len(c.want) && c.want[i].at == (geom.Vec{}) {
					got[i].At = geom.Vec{}
				}
				if i < len(c.want) && c.want[i].code == warn.SpanLong {
					got[i].Limit = 0
				}
			}
			compare(t, got, inInches(c.want), 0.06)
		})
	}
}

// The mirrored top has the same warnings, mirrored.
func TestMirrored(t *testing.T) {
	const in = units.Inch
	d := vanity()
	d.Sinks[0].At = at(20*in, 8*in)
	d.Thickness = in
	m, err := edit.Mirror().Apply(d)
	if err != nil {
		t.Fatal(err)
	}
	a, b := derive(d), derive(m)
	if len(a) < 5 || len(a) != len(b) {
		t.Fatalf("%d warnings, mirrored %d:%s%s", len(a), len(b), list(a), list(b))
	}
	for i := range a {
		if a[i].Code != b[i].Code || a[i].Severity != b[i].Severity || a[i].Part != b[i].Part ||
			!close(a[i].Value, b[i].Value) || !close(a[i].Limit, b[i].Limit) {
			t.Errorf("%s\nmirrored:%s", list(a[i:i+1]), list(b[i:i+1]))
		}
	}
}

func close(a, b float64) bool { return a-b < 1e-6 && b-a < 1e-6 }

package warn_test

import (
	"math"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
	"example.org/castwright/model/warn"
)

// Concrete under a channel: at least 3/4 in, never less than half the slab
// (common practice, no source).
func TestCover(t *testing.T) {
	at := geom.Vec{X: 500, Y: 280}
	for _, c := range []struct {
		name             string
		thickness, depth float64 // in
		want             []want
	}{
		{"3/8 in of 1-1/2 in", 1.5, 0.375, nil},
		{"half of 1-1/2 in, which leaves 3/4 in", 1.5, 0.75, nil},
		{"7/8 in of 1-1/2 in: less than half is left", 1.5, 0.875, []want{
			{warn.CoverThin, warn.Severe, "r", at, 0.625 * inch, 0.75 * inch}}},
		{"1/2 in of 1-1/8 in: 5/8 in is left, more than half", 1.125, 0.5, []want{
			{warn.CoverThin, warn.Caution, "r", at, 0.625 * inch, 0.75 * inch}}},
		{"1-1/4 in of 2 in: 3/4 in is left, less than half", 2, 1.25, []want{
			{warn.CoverThin, warn.Severe, "r", at, 0.75 * inch, inch}}},
		{"right through", 1.5, 1.75, []want{
			{warn.CoverThin, warn.Severe, "r", at, -0.25 * inch, 0.75 * inch}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			top := newTop(c.thickness*inch, rect(0, 0, 1000, 560))
			top.channel("r", c.depth*inch, rect(400, 180, 600, 380))
			compare(t, only(top.check(), warn.CoverThin), c.want, 1e-6)
		})
	}
}

// Banks keep a slab thickness, 38 mm, from what they pass (common practice, no
// source).
func TestBanks(t *testing.T) {
	for _, c := range []struct {
		name  string
		bank  []geom.Loop
		codes []want
	}{
		{"clear", []geom.Loop{rect(200, 200, 400, 260)}, nil},
		{"30 mm from the front", []geom.Loop{rect(200, 30, 400, 90)}, []want{
			{warn.ChannelNearEdge, warn.Caution, "r", geom.Vec{X: 300, Y: 15}, 30, 38}}},
		{"20 mm from the sink", []geom.Loop{rect(200, 200, 580, 260)}, []want{
			{warn.ChannelNearCutout, warn.Caution, "r", geom.Vec{X: 590, Y: 230}, 20, 38}}},
		{"into the sink", []geom.Loop{rect(200, 200, 650, 260)}, []want{
			{warn.ChannelMeetsCutout, warn.Caution, "r", geom.Vec{X: 600, Y: 230}, 0, 0}}},
		{"round the sink, on an island 20 mm larger", []geom.Loop{rect(500, 60, 1000, 500),
			rect(580, 80, 920, 420).Reversed()}, []want{
			{warn.ChannelNearCutout, warn.Caution, "r", geom.Vec{X: 750, Y: 90}, 20, 38}}},
		{"over the sink", []geom.Loop{rect(500, 60, 1000, 500)}, []want{
			{warn.ChannelMeetsCutout, warn.Caution, "r", geom.Vec{X: 750, Y: 250}, 0, 0}}},
		{"out over the left edge", []geom.Loop{rect(-50, 200, 400, 260)}, nil},
		// It leaves on the left and comes within 20 mm of the front on its way.
		{"out over the left edge and along the front", []geom.Loop{{{X: -50, Y: 200}, {X: 150, Y: 200},
			{X: 150, Y: 20}, {X: 400, Y: 20}, {X: 400, Y: 260}, {X: -50, Y: 260}}}, []want{
			{warn.ChannelNearEdge, warn.Caution, "r", geom.Vec{X: 275, Y: 10}, 20, 38}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			top := newTop(38, rect(0, 0, 1500, 560))
			top.sink("s", rect(600, 100, 900, 400))
			top.channel("r", 9, c.bank...)
			got := only(top.check(), warn.ChannelNearEdge, warn.ChannelNearCutout, warn.ChannelMeetsCutout)
			if c.name == "into the sink" && len(got) == 1 && math.Abs(got[0].At.Y-230) <= 30 {
				got[0].At.Y = 230 // either place where a bank meets the cut-out
			}
			if strings.HasPrefix(c.name, "round the sink") && len(got) == 1 {
				got[0].At = c.codes[0].at // any side
			}
			compare(t, got, c.codes, 0.01)
		})
	}
}

func TestChannelLeaves(t *testing.T) {
	river := func(start, end design.RiverEnd) design.Channel {
		return design.Channel{ID: "r", Rivers: []design.River{{
			Nodes: []design.RiverNode{{At: design.Point{X: mm(100), Y: mm(230)}}, {At: design.Point{X: mm(400), Y: mm(230)}}},
			Start: start, End: end}}}
	}
	left := slab.OpenEnd{At: geom.Vec{Y: 230}, Width: 60}
	right := slab.OpenEnd{At: geom.Vec{X: 1500, Y: 230}, Width: 60}
	region := river(design.EndRound, design.EndRound)
	region.Regions = []design.Region{{}}
	for _, c := range []struct {
		name    string
		channel design.Channel
		loop    geom.Loop
		open    []slab.OpenEnd
		want    []want
	}{
		{"on the top", river(design.EndRound, design.EndRound), rect(100, 200, 400, 260), nil, nil},
		{"open at the left", river(design.EndOpen, design.EndRound), rect(-50, 200, 400, 260), []slab.OpenEnd{left}, nil},
		{"closed at the left", river(design.EndRound, design.EndOpen), rect(-50, 200, 400, 260), []slab.OpenEnd{left},
			[]want{{warn.ChannelLeaves, warn.Caution, "r", left.At, 0, 0}}},
		{"open at the left, closed at the right", river(design.EndOpen, design.EndFlat), rect(-50, 200, 1550, 260),
			[]slab.OpenEnd{left, right}, []want{{warn.ChannelLeaves, warn.Caution, "r", right.At, 0, 0}}},
		{"a region drawn over the edge is meant", region, rect(-50, 200, 400, 260), []slab.OpenEnd{left}, nil},
		{"off the top", river(design.EndRound, design.EndRound), rect(100, 700, 400, 760), nil,
			[]want{{warn.ChannelLeaves, warn.Caution, "r", geom.Vec{X: 100, Y: 700}, 0, 0}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			top := newTop(38, rect(0, 0, 1500, 560))
			top.design.Channels = []design.Channel{c.channel}
			top.channel("r", 9, c.loop).Open = c.open
			compare(t, only(top.check(), warn.ChannelLeaves), c.want, 1e-9)
		})
	}
}

func TestOpenEnds(t *testing.T) {
	top := newTop(38, rect(0, 0, 1500, 560))
	r := top.channel("r", 9, rect(-50, 200, 400, 260))
	r.Open = []slab.OpenEnd{{At: geom.Vec{Y: 230}, Width: 60}}
	compare(t, only(top.check(), warn.OpenEndDam), nil, 0) // nothing to hold back
	r.Fill.Resin = true
	compare(t, only(top.check(), warn.OpenEndDam), []want{
		{warn.OpenEndDam, warn.Note, "r", geom.Vec{Y: 230}, 60, 0}}, 1e-9)
}

// Pours: the resin's sheet says 3 mm (a coating), 12 mm or 50 mm a pour; the
// ranges are common practice, no source.
func TestPours(t *testing.T) {
	for _, c := range []struct {
		most, depth float64
		words       string // "" for no note
	}{
		{12.7, 9, ""}, {12.7, 12.7, ""}, {12.7, 12.8, "2 pours"}, {3, 9, "3 pours"}, {3, 9.4, "4 pours"}, {0, 9, ""},
	} {
		top := newTop(38, rect(0, 0, 1500, 560))
		top.materials.Resin.MaxPour = c.most
		top.channel("r", c.depth, rect(400, 200, 600, 260)).Fill.Resin = true
		got := only(top.check(), warn.PourDeep)
		if c.words == "" {
			compare(t, got, nil, 0)
			continue
		}
		compare(t, got, []want{{warn.PourDeep, warn.Note, "r", geom.Vec{X: 500, Y: 230}, c.depth, c.most}}, 1e-9)
		if len(got) == 1 && !strings.Contains(got[0].Advice, c.words) {
			t.Errorf("%g mm at %g: %q does not say %q", c.depth, c.most, got[0].Advice, c.words)
		}
	}
}

// Glass must be thicker than the grind or it vanishes (common practice, no
// source). Coarse aggregate takes 1/4 in and more (Concrete Polishing Council,
// exposure class D of the first chart).
func TestGlass(t *testing.T) {
	at := geom.Vec{X: 200, Y: 400}
	for _, c := range []struct {
		name                string
		grain, depth, grind float64
		want                []want
	}{
		{"1/2 in glass, cream polish", 12.7, 12.7, 0.5, nil},
		{"1/2 in glass, 1/4 in off", 12.7, 12.7, 6.35, nil},
		{"3/8 in glass, 1/4 in off", 9.525, 9.525, 6.35, []want{
			{warn.GlassThin, warn.Caution, "g", at, 9.525, 12.7}}},
		{"1/4 in glass, 1/4 in off", 6.35, 6.35, 6.35, []want{
			{warn.GlassThin, warn.Severe, "g", at, 6.35, 6.35}}},
		{"1/2 in glass in a layer of 5 mm, 1/4 in off", 12.7, 5, 6.35, []want{
			{warn.GlassThin, warn.Severe, "g", at, 5, 6.35}}},
		{"no grind", 2, 2, 0, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			top := newTop(38, rect(0, 0, 1500, 560))
			top.design.Finish.Grind = mm(c.grind)
			top.solid.Beds = []slab.Bed{{Part: "g", Grain: c.grain, Depth: c.depth,
				Loops: []geom.Loop{rect(100, 300, 300, 500)}}}
			compare(t, only(top.check(), warn.GlassThin), c.want, 1e-6)
		})
	}
}

func TestGlassInResin(t *testing.T) {
	for _, c := range []struct {
		grain float64
		want  []want
	}{
		{8, nil}, {9, nil},
		{12, []want{{warn.GlassThick, warn.Caution, "r", geom.Vec{X: 500, Y: 230}, 12, 9}}},
	} {
		top := newTop(38, rect(0, 0, 1500, 560))
		r := top.channel("r", 9, rect(400, 200, 600, 260))
		r.Fill = design.Fill{Resin: true, Glass: &design.GlassFill{Grain: mm(c.grain)}}
		compare(t, only(top.check(), warn.GlassThick), c.want, 1e-6)
		r.Fill.Resin = false
		compare(t, only(top.check(), warn.GlassThick), nil, 0)
	}
}

// Thickness: 1-1/2 in usual, down to 3/4 to 1 in with fibre (common practice, no
// source). Steel: two covers of 5/8 in and a No. 3 bar of 3/8 in make 1-5/8 in
// (ACI 318-19 Table 20.5.1.3.3 from memory, ASTM A615 Table 1).
func TestThickness(t *testing.T) {
	at := geom.Vec{X: 750, Y: 280}
	thin := func(s warn.Severity, v, l float64) want {
		return want{warn.SlabThin, s, "", at, v * inch, l * inch}
	}
	steel := func(v float64) want { return want{warn.SteelCover, warn.Note, "", at, v * inch, 1.625 * inch} }
	for _, c := range []struct {
		thickness units.Length
		want      []want
	}{
		{2 * units.Inch, nil},
		{units.Inch + 5*units.Inch/8, nil},
		{units.Inch + units.Inch/2, []want{steel(1.5)}},
		{38 * units.Millimetre, []want{steel(38 / inch)}},
		{units.Inch + units.Inch/4, []want{thin(warn.Note, 1.25, 38/inch), steel(1.25)}},
		{7 * units.Inch / 8, []want{thin(warn.Caution, 0.875, 1)}},
		{units.Inch / 2, []want{thin(warn.Severe, 0.5, 0.75)}},
	} {
		top := newTop(c.thickness.MM(), rect(0, 0, 1500, 560))
		compare(t, only(top.check(), warn.SlabThin, warn.SteelCover), c.want, 1e-6)
	}
}

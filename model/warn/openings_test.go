package warn_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/warn"
)

// Rails at a cut-out: 3 in wanted, 2 in least (common practice, no source). The
// top is 60 x 22 in, 1-1/2 in thick.
func TestRails(t *testing.T) {
	for _, c := range []struct {
		name string
		sink geom.Loop // in inches
		want []want
	}{
		{"4 in in front and behind", rect(20, 4, 40, 18), nil},
		{"3 in in front", rect(20, 3, 40, 18), nil},
		{"2-1/2 in in front", rect(20, 2.5, 40, 18), []want{
			{warn.RailNarrow, warn.Caution, "s", geom.Vec{X: 30, Y: 1.25}, 2.5, 3}}},
		{"2 in in front", rect(20, 2, 40, 18), []want{
			{warn.RailNarrow, warn.Caution, "s", geom.Vec{X: 30, Y: 1}, 2, 3}}},
		{"1-1/2 in in front, 2-1/2 in behind", rect(20, 1.5, 40, 19.5), []want{
			{warn.RailNarrow, warn.Severe, "s", geom.Vec{X: 30, Y: 0.75}, 1.5, 2},
			{warn.RailNarrow, warn.Caution, "s", geom.Vec{X: 30, Y: 20.75}, 2.5, 3}}},
		{"2-1/2 in beside and in front", rect(2.5, 2.5, 40, 18), []want{
			{warn.RailNarrow, warn.Caution, "s", geom.Vec{X: 1.25, Y: 10.25}, 2.5, 3},
			{warn.RailNarrow, warn.Caution, "s", geom.Vec{X: 21.25, Y: 1.25}, 2.5, 3}}},
		{"over the edge: not a rail", rect(20, -2, 40, 18), nil},
		{"outside: not a rail", rect(20, 23, 40, 40), nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			top := newTop(1.5*inch, scaled(rect(0, 0, 60, 22), inch))
			top.sink("s", scaled(c.sink, inch))
			compare(t, only(top.check(), warn.RailNarrow), inInches(c.want), 0.01)
		})
	}
}

func scaled(l geom.Loop, f float64) geom.Loop {
	out := make(geom.Loop, len(l))
	for i, p := range l {
		out[i] = p.Mul(f)
	}
	return out
}

// inInches turns what is wanted in inches into millimetres.
func inInches(ws []want) []want {
	out := make([]want, len(ws))
	for i, w := range ws {
		w.at, w.value, w.limit = w.at.Mul(inch), w.value*inch, w.limit*inch
		out[i] = w
	}
	return out
}

// A round sink in a round top has one rail, not one for each chord.
func TestRailOfRings(t *testing.T) {
	top := newTop(38, ring(geom.Vec{}, 300))
	top.sink("s", ring(geom.Vec{X: 5}, 240))
	got := only(top.check(), warn.RailNarrow)
	// 300 - 240 - 5 along the x axis.
	compare(t, got, []want{{warn.RailNarrow, warn.Caution, "s", geom.Vec{X: 272.5}, 55, 76.2}}, 3)
}

func TestRailTitles(t *testing.T) {
	for _, c := range []struct {
		back geom.Vec
		want string
	}{
		{geom.Vec{Y: 1}, "Rail in front of the sink is narrow"},
		{geom.Vec{Y: -1}, "Rail behind the sink is narrow"},
		{geom.Vec{X: 1}, "Rail beside the sink is narrow"},
	} {
		top := newTop(38, rect(0, 0, 1500, 560))
		top.sink("s", rect(700, 60, 800, 400))
		top.solid.Bowls[0].Back = c.back
		got := only(top.check(), warn.RailNarrow)
		if len(got) != 1 || got[0].Title != c.want {
			t.Errorf("back %v: %v, want %q", c.back, got, c.want)
		}
	}
}

func TestBridges(t *testing.T) {
	for _, c := range []struct {
		name   string
		second float64 // left side of the second sink; the first one ends at 600
		want   []want
	}{
		{"80 mm apart", 680, nil},
		{"70 mm apart", 670, []want{{warn.BridgeNarrow, warn.Caution, "a", geom.Vec{X: 635, Y: 300}, 70, 76.2}}},
		{"40 mm apart", 640, []want{{warn.BridgeNarrow, warn.Severe, "a", geom.Vec{X: 620, Y: 300}, 40, 50.8}}},
		{"overlapping", 590, []want{{warn.CutoutsOverlap, warn.Severe, "a", geom.Vec{X: 600, Y: 150}, 0, 0}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			top := newTop(38, rect(0, 0, 1500, 560))
			top.sink("a", rect(200, 150, 600, 450))
			top.sink("b", rect(c.second, 150, 1000, 450))
			got := only(top.check(), warn.BridgeNarrow, warn.CutoutsOverlap)
			if c.second < 600 && len(got) == 1 && math.Abs(got[0].At.X-595) <= 5 {
				got[0].At = c.want[0].at // anywhere along the two strips that they share
			}
			compare(t, got, c.want, 0.01)
		})
	}
}

// Holes: at least one slab thickness, 38 mm, of concrete all round; less than
// half is severe (common practice, no source). The hole is 35 mm wide.
func TestHoles(t *testing.T) {
	const r = 17.5
	for _, c := range []struct {
		name string
		at   geom.Vec // of the hole; there is a sink from (600, 100) to (900, 400)
		want []want
	}{
		{"clear of all", geom.Vec{X: 750, Y: 400 + 38 + r}, nil},
		{"30 mm from the back edge", geom.Vec{X: 300, Y: 560 - 30 - r}, []want{
			{warn.HoleNearEdge, warn.Caution, "h", geom.Vec{X: 300, Y: 545}, 30, 38}}},
		{"15 mm from the left edge", geom.Vec{X: 15 + r, Y: 300}, []want{
			{warn.HoleNearEdge, warn.Severe, "h", geom.Vec{X: 7.5, Y: 300}, 15, 19}}},
		{"25 mm from the sink", geom.Vec{X: 750, Y: 400 + 25 + r}, []want{
			{warn.HoleNearCutout, warn.Caution, "h", geom.Vec{X: 750, Y: 412.5}, 25, 38}}},
		{"10 mm from the sink", geom.Vec{X: 600 - 10 - r, Y: 250}, []want{
			{warn.HoleNearCutout, warn.Severe, "h", geom.Vec{X: 595, Y: 250}, 10, 19}}},
		{"in the sink", geom.Vec{X: 750, Y: 300}, []want{
			{warn.HoleInCutout, warn.Severe, "h", geom.Vec{X: 750, Y: 300}, 0, 0}}},
		{"half over the back edge", geom.Vec{X: 300, Y: 560}, []want{
			{warn.CutoutLeaves, warn.Severe, "h", geom.Vec{X: 300, Y: 560}, 0, 0}}},
		{"off the top", geom.Vec{X: 300, Y: 700}, []want{
			{warn.CutoutOutside, warn.Severe, "h", geom.Vec{X: 300, Y: 700}, 0, 0}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			top := newTop(38, rect(0, 0, 1500, 560))
			top.sink("s", rect(600, 100, 900, 400))
			top.hole("h", slab.OpeningTap, c.at, 2*r)
			got := only(top.check(), warn.HoleNearEdge, warn.HoleNearCutout, warn.HoleNearHole,
				warn.HoleInCutout, warn.HoleOverBowl, warn.CutoutLeaves, warn.CutoutOutside)
			if c.name == "half over the back edge" && len(got) == 1 && got[0].At.Dist(c.at) < r+0.1 {
				got[0].At = c.at // either place where it crosses
			}
			compare(t, got, c.want, 0.02)
		})
	}
}

func TestTwoHoles(t *testing.T) {
	for _, c := range []struct {
		apart float64 // centre to centre
		want  []want
	}{
		{101.6, nil}, // 4 in: 66.6 mm between
		{60, []want{{warn.HoleNearHole, warn.Caution, "a", geom.Vec{X: 330, Y: 300}, 25, 38}}},
		{50, []want{{warn.HoleNearHole, warn.Severe, "a", geom.Vec{X: 325, Y: 300}, 15, 19}}},
		{30, []want{{warn.CutoutsOverlap, warn.Severe, "a", geom.Vec{X: 315, Y: 300}, 0, 0}}},
		{0, []want{{warn.CutoutsOverlap, warn.Severe, "a", geom.Vec{X: 300, Y: 300}, 0, 0}}},
	} {
		top := newTop(38, rect(0, 0, 1500, 560))
		top.hole("a", slab.OpeningTap, geom.Vec{X: 300, Y: 300}, 35)
		top.hole("b", slab.OpeningHole, geom.Vec{X: 300 + c.apart, Y: 300}, 35)
		got := only(top.check(), warn.HoleNearHole, warn.CutoutsOverlap)
		for i := range got {
			if got[i].Code == warn.CutoutsOverlap && len(c.want) == 1 && got[i].At.Dist(c.want[0].at) < 20 {
				got[i].At = c.want[0].at
			}
		}
		compare(t, got, c.want, 0.02)
	}
}

// A tap must clear the bowl below by 1/2 in (common practice, no source).
func TestHoleOverBowl(t *testing.T) {
	for _, c := range []struct {
		name   string
		vessel bool
		kind   slab.OpeningKind
		at     geom.Vec // the bowl is a ring of radius 200 round (750, 250)
		want   []want
	}{
		{"20 mm behind a vessel", true, slab.OpeningTap, geom.Vec{X: 750, Y: 487.5}, nil},
		{"8 mm behind a vessel", true, slab.OpeningTap, geom.Vec{X: 750, Y: 475.5}, []want{
			{warn.HoleOverBowl, warn.Caution, "h", geom.Vec{X: 750, Y: 454}, 8, 12.7}}},
		{"under a vessel", true, slab.OpeningTap, geom.Vec{X: 750, Y: 420}, []want{
			{warn.HoleOverBowl, warn.Severe, "h", geom.Vec{X: 750, Y: 420}, 0, 0}}},
		{"the vessel's own drain", true, slab.OpeningVesselDrain, geom.Vec{X: 750, Y: 250}, nil},
		// The under-mount's cut-out is a ring of radius 180: the bowl reaches
		// 20 mm under the concrete.
		{"under the concrete's lip", false, slab.OpeningTap, geom.Vec{X: 750, Y: 475.5}, []want{
			{warn.HoleOverBowl, warn.Caution, "h", geom.Vec{X: 750, Y: 454}, 8, 12.7}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			top := newTop(38, rect(0, 0, 1500, 700))
			at := geom.Vec{X: 750, Y: 250}
			if c.vessel {
				top.solid.Bowls = []slab.Bowl{{Part: "s", Mount: design.MountVessel, Loop: ring(at, 200)}}
			} else {
				top.sink("s", ring(at, 180))
				top.solid.Bowls[0].Loop = ring(at, 200)
			}
			top.hole("h", c.kind, c.at, 35)
			compare(t, only(top.check(), warn.HoleOverBowl), c.want, 0.05)
		})
	}
}

// A plain hole for a drain belongs under a bowl.
func TestDrainUnderVessel(t *testing.T) {
	top := newTop(38, rect(0, 0, 1500, 560))
	at := geom.Vec{X: 750, Y: 250}
	top.solid.Bowls = []slab.Bowl{{Part: "s", Mount: design.MountVessel, Loop: ring(at, 200)}}
	top.hole("h", slab.OpeningHole, at, 44.45)
	for kind, n := range map[design.HoleKind]int{design.HoleDrain: 0, design.HoleCable: 1} {
		top.design.Holes = []design.Hole{{ID: "h", Kind: kind}}
		if got := only(top.check(), warn.HoleOverBowl); len(got) != n {
			t.Errorf("kind %d: %d warnings, want %d", kind, len(got), n)
		}
	}
}

// Set-back 2 to 2-1/2 in (common practice, no source); a metric maker's 50 and
// 64 mm pass.
func TestSetback(t *testing.T) {
	at := geom.Vec{X: 750, Y: 500}
	for _, c := range []struct {
		back float64
		want []want
	}{
		{2 * inch, nil}, {2.5 * inch, nil}, {50, nil}, {64, nil},
		{1.5 * inch, []want{{warn.TapSetback, warn.Note, "t", at, 38.1, 50}}},
		{4 * inch, []want{{warn.TapSetback, warn.Note, "t", at, 101.6, 64}}},
	} {
		top := newTop(38, rect(0, 0, 1500, 560))
		top.hole("t", slab.OpeningTap, at.Add(geom.Vec{X: -101.6}), 35)
		top.hole("t", slab.OpeningTap, at, 35)
		top.hole("t", slab.OpeningTap, at.Add(geom.Vec{X: 101.6}), 35)
		top.design.Taps = []design.TapSet{{ID: "t", Sink: "s", SetBack: mm(c.back)}}
		compare(t, only(top.check(), warn.TapSetback), c.want, 1e-6)
		top.design.Taps[0].Sink = "" // placed by hand: no set-back to judge
		compare(t, only(top.check(), warn.TapSetback), nil, 0)
	}
}

// Inside corners: 1/2 in least, 3/8 in in a cut-out's corner (common practice,
// no source).
func TestInsideCorners(t *testing.T) {
	l := geom.Loop{{}, {X: 1800}, {X: 1800, Y: 560}, {X: 600, Y: 560}, {X: 600, Y: 1500}, {Y: 1500}}
	at := geom.Vec{X: 600, Y: 560}
	rounded := func(r float64) geom.Loop {
		out := append(geom.Loop{}, l[:3]...)
		for k := 0.0; k <= 90; k += 3 {
			out = append(out, at.Add(geom.Vec{X: r, Y: r}).Add(geom.Vec{Y: -r}.Turn(-k*math.Pi/180)))
		}
		return append(out, l[4:]...)
	}
	for _, c := range []struct {
		name string
		l    geom.Loop
		want []want
	}{
		{"no inside corner", rect(0, 0, 1500, 560), nil},
		{"square", l, []want{{warn.InsideCornerSharp, warn.Caution, "", at, 0, 12.7}}},
		{"radius 1/4 in", rounded(6.35), []want{{warn.InsideCornerSharp, warn.Caution, "",
			at.Add(geom.Vec{X: 6.35 * (1 - 0.70711), Y: 6.35 * (1 - 0.70711)}), 6.35, 12.7}}},
		{"radius 1/2 in", rounded(12.7), nil},
		{"radius 1 in", rounded(25.4), nil},
		// Cut across by 20 mm: two corners of 45 degrees, told as one.
		{"chamfered", geom.Loop{{}, {X: 1800}, {X: 1800, Y: 560}, {X: 615, Y: 560}, {X: 600, Y: 575},
			{X: 600, Y: 1500}, {Y: 1500}}, []want{{warn.InsideCornerSharp, warn.Caution, "",
			geom.Vec{X: 615, Y: 560}, 0, 12.7}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			compare(t, only(newTop(38, c.l).check(), warn.InsideCornerSharp), c.want, 0.02)
		})
	}
	for _, c := range []struct {
		radius float64
		want   []want
	}{
		{0, []want{{warn.CutoutCornerSharp, warn.Caution, "s", geom.Vec{X: 500, Y: 150}, 0, 9.525}}},
		{6, []want{{warn.CutoutCornerSharp, warn.Caution, "s", geom.Vec{X: 900, Y: 400}, 6, 9.525}}},
		{9.525, nil}, {25, nil},
	} {
		top := newTop(38, rect(0, 0, 1500, 560))
		var sink geom.Loop
		for k, corner := range rect(500, 150, 900, 400) {
			centre := geom.Vec{X: 700, Y: 275}
			if c.radius == 0 {
				sink = append(sink, corner)
				continue
			}
			in := geom.Vec{X: c.radius, Y: c.radius}
			if corner.X > centre.X {
				in.X = -in.X
			}
			if corner.Y > centre.Y {
				in.Y = -in.Y
			}
			for a := 0.0; a <= 90; a += 3 {
				sink = append(sink, corner.Add(in).Add(
					geom.Vec{X: c.radius}.Turn((a+90*float64(k)+180)*math.Pi/180)))
			}
		}
		top.sink("s", sink)
		got := only(top.check(), warn.CutoutCornerSharp)
		if len(got) == 1 && len(c.want) == 1 {
			got[0].At = c.want[0].at // any of the four
		}
		compare(t, got, c.want, 0.02)
	}
	round := newTop(38, rect(0, 0, 1500, 560))
	round.sink("s", ring(geom.Vec{X: 750, Y: 280}, 150))
	compare(t, only(round.check(), warn.CutoutCornerSharp), nil, 0)
}

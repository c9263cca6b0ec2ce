package warn_test

import (
	"math"
	"testing"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/warn"
)

// The lengths in these tables are measured by hand on the drawing; the figures
// that they are judged by are those of strip_internal_test.go: at 38.1 mm
// (1-1/2 in) and 145 lb/ft3 plain concrete may be counted on for an overhang of
// 2.83 in and a span of 11.1 in, it cracks at 6.99 in and 26.7 in, and stone
// stops at 10 in and 36 in (Dimension Stone Design Manual).

// measured is a wanted length and how serious it is, -1 for no warning.
type measured struct {
	severity int
	value    float64
}

var fine = measured{severity: -1}

func TestOverhangAndSpan(t *testing.T) {
	const note, caution, severe = int(warn.Note), int(warn.Caution), int(warn.Severe)
	l := geom.Loop{{}, {X: 2000}, {X: 2000, Y: 700}, {X: 700, Y: 700}, {X: 700, Y: 2000}, {Y: 2000}}
	u := geom.Loop{{}, {X: 1600}, {X: 1600, Y: 1500}, {X: 1000, Y: 1500}, {X: 1000, Y: 600},
		{X: 600, Y: 600}, {X: 600, Y: 1500}, {Y: 1500}}
	for _, c := range []struct {
		name     string
		outline  geom.Loop
		sink     geom.Loop
		bearings []geom.Loop
		overhang measured
		span     measured
	}{
		{"a whole cabinet, an inch out in front", rect(0, 0, 900, 560), nil,
			[]geom.Loop{rect(20, 25.4, 880, 560)}, fine, fine},
		{"200 mm out in front", rect(0, 0, 900, 800), nil,
			[]geom.Loop{rect(0, 200, 900, 800)},
			measured{caution, 200}, fine},
		{"300 mm out in front: beyond stone and strength", rect(0, 0, 900, 1000), nil,
			[]geom.Loop{rect(0, 300, 900, 1000)},
			measured{severe, 300}, fine},
		{"more than a third of the width", rect(0, 0, 900, 450), nil,
			[]geom.Loop{rect(0, 170, 900, 450)},
			measured{caution, 170}, fine},
		{"less than a third of the width", rect(0, 0, 900, 600), nil,
			[]geom.Loop{rect(0, 170, 900, 600)},
			measured{note, 170}, fine},
		{"200 mm out at a corner both ways: 200, not the diagonal", rect(0, 0, 1200, 1200), nil,
			[]geom.Loop{rect(200, 200, 1200, 1200)},
			measured{caution, 200}, fine},
		{"two gables 600 mm apart, clear", rect(0, 0, 640, 560), nil,
			[]geom.Loop{rect(0, 0, 20, 560), rect(620, 0, 640, 560)},
			fine, measured{note, 600}},
		{"two gables 800 mm apart", rect(0, 0, 840, 560), nil,
			[]geom.Loop{rect(0, 0, 20, 560), rect(820, 0, 840, 560)},
			fine, measured{caution, 800}},
		{"two gables 1,000 mm apart", rect(0, 0, 1040, 560), nil,
			[]geom.Loop{rect(0, 0, 20, 560), rect(1020, 0, 1040, 560)},
			fine, measured{severe, 1000}},
		{"a third gable halves it", rect(0, 0, 1040, 560), nil,
			[]geom.Loop{rect(0, 0, 20, 560), rect(510, 0, 530, 560), rect(1020, 0, 1040, 560)},
			fine, measured{note, 490}},
		// Gables, wall and a front rail 460 mm before it: the short way counts.
		{"front rail and wall", rect(0, 0, 1500, 520), nil,
			[]geom.Loop{rect(0, 20, 1500, 40), rect(0, 500, 1500, 520)},
			fine, measured{note, 460}},
		{"turned by 30 degrees", turned(rect(0, 0, 1500, 520), 30), nil,
			[]geom.Loop{turned(rect(0, 20, 1500, 40), 30), turned(rect(0, 500, 1500, 520), 30)},
			fine, measured{note, 460}},
		// The notch of the L lies within the hull of the bearings, yet what
		// hangs into it is an overhang of 150 mm in front of each leg.
		{"overhang into the notch of an L", l, nil,
			[]geom.Loop{rect(0, 0, 2000, 550), rect(0, 0, 550, 2000)},
			measured{note, 150}, fine},
		// The other leg's cabinet is 200 mm away across the gap of the U, but
		// the gap carries nothing: each inner side hangs over by 300 mm.
		{"overhang into a U", u, nil,
			[]geom.Loop{rect(0, 0, 1600, 300), rect(0, 0, 300, 1500), rect(1300, 0, 1600, 1500)},
			measured{severe, 300},
			// The base of the U reaches from one leg's cabinet to the other's.
			measured{severe, 1000}},
		// Four legs, 60 mm wide, 500 apart in the clear: the diagonal between
		// two of them is 500 root 2.
		{"four legs", rect(0, 0, 620, 620), nil,
			[]geom.Loop{rect(0, 0, 60, 60), rect(560, 0, 620, 60), rect(560, 560, 620, 620), rect(0, 560, 60, 620)},
			fine, measured{caution, 500 * math.Sqrt2}},
		// Brackets 860 mm apart in the clear, their tips 110 mm behind the front
		// and 130 mm from the ends: the front hangs over the line of the tips.
		{"brackets", rect(0, 0, 1200, 560), nil,
			[]geom.Loop{rect(0, 530, 1200, 560), rect(130, 110, 170, 560), rect(1030, 110, 1070, 560)},
			measured{note, 130}, measured{caution, 860}},
		// Nothing between two gables but the wall behind: the free front spans.
		{"gables and wall", rect(0, 0, 1540, 560), nil,
			[]geom.Loop{rect(0, 0, 20, 560), rect(1520, 0, 1540, 560), rect(0, 540, 1540, 560)},
			fine, measured{severe, 1500}},
		// A rim all round: the largest empty circle touches front and back.
		{"rim", rect(0, 0, 1500, 640), nil,
			[]geom.Loop{rect(0, 0, 1500, 20), rect(0, 620, 1500, 640), rect(0, 0, 20, 640), rect(1480, 0, 1500, 640)},
			fine, measured{note, 600}},
		// A hub of radius 100 under a round top of radius 280.
		{"round top on a hub", ring(geom.Vec{}, 280), nil, []geom.Loop{ring(geom.Vec{}, 100)},
			measured{caution, 180}, fine},
		// Without the cut-out the spot before it would lie 460 mm from the
		// wall; with it, it hangs between the gables 960 mm apart.
		{"wall behind a cut-out", rect(0, 0, 1000, 520), rect(100, 60, 900, 480),
			[]geom.Loop{rect(0, 0, 20, 520), rect(980, 0, 1000, 520), rect(0, 500, 1000, 520)},
			fine, measured{severe, 960}},
		// The wall ledger lies 10 mm outside the top and carries nothing.
		{"ledger beside the top", rect(0, 0, 900, 560), nil,
			[]geom.Loop{rect(0, 570, 900, 590), rect(0, 0, 900, 300)},
			measured{severe, 260}, fine},
		{"ledger half under the top", rect(0, 0, 900, 560), nil,
			[]geom.Loop{rect(0, 550, 900, 570), rect(0, 0, 900, 300)},
			fine, fine},
	} {
		t.Run(c.name, func(t *testing.T) {
			top := newTop(1.5*inch, c.outline)
			if c.sink != nil {
				top.sink("s", c.sink)
			}
			for _, b := range c.bearings {
				top.bearing(b)
			}
			for _, k := range []struct {
				code warn.Code
				want measured
			}{{warn.OverhangLong, c.overhang}, {warn.SpanLong, c.span}} {
				got := only(top.check(), k.code)
				if k.want.severity < 0 {
					compare(t, got, nil, 0)
					continue
				}
				if len(got) != 1 {
					t.Fatalf("%s: got %d warnings, want one of %.1f mm", k.code, len(got), k.want.value)
				}
				g := got[0]
				if int(g.Severity) != k.want.severity || math.Abs(g.Value-k.want.value) > 0.05 {
					t.Errorf("%s %s of %.3f mm at %v, want severity %d, %.3f mm", g.Severity, g.Code, g.Value,
						g.At, k.want.severity, k.want.value)
				}
				if !c.outline.Bounds().Grow(0.01).Contains(g.At) {
					t.Errorf("%s is shown at %v, off the top", g.Code, g.At)
				}
			}
		})
	}
}

func turned(l geom.Loop, degrees float64) geom.Loop {
	out := make(geom.Loop, len(l))
	for i, p := range l {
		out[i] = p.Turn(degrees * math.Pi / 180)
	}
	return out
}

// Three legs 280 mm from the middle leave an empty circle of that radius. The
// legs stand at 90, 210 and 330 degrees.
func TestThreeLegs(t *testing.T) {
	top := newTop(1.5*inch, ring(geom.Vec{}, 330))
	for _, a := range []float64{90, 210, 330} {
		top.bearing(turned(rect(280, -20, 320, 20), a))
	}
	compare(t, only(top.check(), warn.SpanLong), []want{
		{warn.SpanLong, warn.Note, "", geom.Vec{}, 560, 281.32}}, 0.02)
}

// Thickness and width move the limits: the same overhang of 150 mm.
func TestOverhangLimits(t *testing.T) {
	for _, c := range []struct {
		thickness float64 // in
		depth     float64 // mm
		severity  int
		limit     float64 // in, by hand from 300 c + w c^2/2 = stress x 2 h^2, w = 145/12^3 x 12 h
	}{
		{0.75, 900, int(warn.Caution), 1.774}, // rupture 474.3 x 1.125 = 533.6 in lb; stone 6 in
		{1.5, 900, int(warn.Note), 2.826},     // usable 189.7 x 4.5 = 853.8 in lb
		{2, 900, int(warn.Note), 4.976},       // usable 189.7 x 8 = 1517.9 in lb
		{3, 900, -1, 0},                       // usable 189.7 x 18 = 3415.2 in lb: 10.9, stone 10 in
		{3, 420, int(warn.Caution), 420 / 3 / inch},
	} {
		top := newTop(c.thickness*inch, rect(0, 0, 900, c.depth))
		top.bearing(rect(0, 150, 900, c.depth))
		var want []want
		if c.severity >= 0 {
			want = append(want, w(warn.OverhangLong, warn.Severity(c.severity), geom.Vec{X: 450, Y: 75}, 150, c.limit*inch))
		}
		got := only(top.check(), warn.OverhangLong)
		for i := range got {
			got[i].At.X = 450 // anywhere along the front
		}
		compare(t, got, want, 0.03)
	}
}

func w(code warn.Code, severity warn.Severity, at geom.Vec, value, limit float64) want {
	return want{code, severity, "", at, value, limit}
}

func TestSupports(t *testing.T) {
	mid := geom.Vec{X: 450, Y: 280}
	top := newTop(38, rect(0, 0, 900, 560))
	compare(t, only(top.check(), warn.SupportsMissing), []want{w(warn.SupportsMissing, warn.Note, mid, 0, 0)}, 1e-9)
	top.bearing(rect(0, 600, 900, 620))
	compare(t, only(top.check(), warn.SupportsMissing), []want{w(warn.SupportsMissing, warn.Caution, mid, 0, 0)}, 1e-9)
	top.bearing(rect(0, 0, 900, 560))
	compare(t, only(top.check(), warn.SupportsMissing), nil, 0)
	top.solid.Bearings[1].Loops[0] = rect(-50, -50, 1000, 700) // larger than the top
	compare(t, only(top.check(), warn.SupportsMissing, warn.OverhangLong, warn.SpanLong), nil, 0)
}

// A top of 900 x 560 on a ledger 100 mm deep along the wall: its middle lies
// 280 - 100 mm beyond.
func TestBalance(t *testing.T) {
	top := newTop(38, rect(0, 0, 900, 560))
	top.bearing(rect(0, 460, 900, 560))
	at := geom.Vec{X: 450, Y: 280}
	top.weigh(40, at)
	compare(t, only(top.check(), warn.OffBalance), []want{w(warn.OffBalance, warn.Severe, at, 180, 0)}, 1e-9)
	top.bearing(rect(440, 200, 460, 220)) // a leg in front of the middle
	compare(t, only(top.check(), warn.OffBalance), nil, 0)
}

package warn_test

import (
	"math"
	"strings"
	"testing"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/model/warn"
)

// The NIOSH equation for a slab held 15 in before the ankles, hands at 30 in,
// raised 10 in, with a poor grip: 30.60 lb a person (NIOSH 94-110, computed). A
// top of 142.4 lb gives each of two people 71.2 lb, a lifting index of 2.33.
// Teams by UK HSE L23, from memory: two lift 2/3, three and more 1/2 of the sum.
func TestLifting(t *testing.T) {
	const lb = 0.45359237
	at := geom.Vec{X: 750, Y: 280}
	lift := func(s warn.Severity, value, limit float64) []want {
		return []want{{warn.LiftHeavy, s, "", at, value * lb, limit * lb}}
	}
	for _, c := range []struct {
		name    string
		weight  float64 // lb
		helpers int
		want    []want
		title   string
		advice  string
	}{
		{"light", 30, 0, nil, "", ""},
		{"two people: 2 x 30.6 x 2/3 = 40.8", 40, 0, lift(warn.Note, 40, 30.6), "Too heavy for one person", "two people"},
		{"two people: above 40.8, each below 30.6", 50, 0, lift(warn.Note, 50, 40.8), "Heavy for two people", "three people"},
		{"142.4 lb, two people", 142.4, 0, lift(warn.Caution, 71.2, 30.6), "Too much for each of two people", "hoist"},
		{"the same, said", 142.4, 2, lift(warn.Caution, 71.2, 30.6), "Too much for each of two people", "hoist"},
		{"200 lb, two people: 3.27", 200, 2, lift(warn.Severe, 100, 91.8), "Too much for each of two people", "hoist"},
		{"alone", 50, 1, lift(warn.Caution, 50, 30.6), "Too heavy for one person", "two people"},
		{"four people: 4 x 30.6 / 2 = 61.2", 60, 4, nil, "", ""},
		{"four people: above 61.2", 65, 4, lift(warn.Note, 65, 61.2), "Heavy for four people", "hoist"},
		{"nothing", 0, 1, nil, "", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			top := newTop(38, rect(0, 0, 1500, 560))
			top.weigh(c.weight*lb, at)
			top.site.Helpers = c.helpers
			got := only(top.check(), warn.LiftHeavy)
			compare(t, got, c.want, 0.01)
			if len(got) == 1 && (got[0].Title != c.title || !strings.Contains(got[0].Advice, c.advice)) {
				t.Errorf("%q, %q: want %q and %q", got[0].Title, got[0].Advice, c.title, c.advice)
			}
			if len(got) == 1 && got[0].Unit != "kg" {
				t.Errorf("unit %q", got[0].Unit)
			}
		})
	}
}

// Held flat by its ends, a plain top of length L, density r and thickness h is
// stressed by M / S = (r g L^2 / 8) / (h / 6) = 3 r g L^2 / 4 h, whatever its
// width: 2400 kg/m3, 1.5 m, 38 mm give 1.045 MPa, 2 m give 1.858 MPa. Plain
// concrete of 4000 psi may be counted on for 189.7 psi = 1.308 MPa and breaks at
// 474.3 psi = 3.270 MPa (ACI 318-19 14.5.2.1, 21.2.1, 19.2.3.1).
func TestCarryFlat(t *testing.T) {
	const density = 2400e-9 // kg/mm3
	for _, c := range []struct {
		name   string
		length float64
		sink   geom.Loop
		want   []want
	}{
		{"1.5 m", 1500, nil, nil},
		{"2 m", 2000, nil, []want{{warn.CarryFlat, warn.Note, "", geom.Vec{X: 1000, Y: 280}, 1.858, 1.308}}},
		// A cut-out in the middle leaves 60 + 100 mm of 560: 3.5 times the
		// stress of 1.045 MPa, less the weight cut out, which is left in here.
		{"1.5 m with a cut-out", 1500, rect(550, 60, 950, 460),
			[]want{{warn.CarryFlat, warn.Caution, "", geom.Vec{X: 750, Y: 510}, 3.657, 3.270}}},
		// It is the middle of the cut-out or beside it that counts: at 567 mm
		// from the end, just within, the moment is 0.9404 of that in the middle.
		{"the same cut-out at one end", 1500, rect(175, 60, 575, 460),
			[]want{{warn.CarryFlat, warn.Caution, "", geom.Vec{X: 567, Y: 510}, 3.439, 3.270}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			top := newTop(38, rect(0, 0, c.length, 560))
			top.weigh(density*c.length*560*38, geom.Vec{X: c.length / 2, Y: 280})
			if c.sink != nil {
				top.sink("s", c.sink)
			}
			got := only(top.check(), warn.CarryFlat)
			compare(t, got, c.want, 0.002)
			if len(got) == 1 && got[0].Unit != "MPa" {
				t.Errorf("unit %q", got[0].Unit)
			}
		})
	}
}

// Passage: sizes of the site against the piece, by hand; round a right angle by
// the ladder problem, 2 root 2 a - 2 t for equal passages. The piece is 2,200 x
// 900 x 38 mm.
func TestPassage(t *testing.T) {
	at := geom.Vec{X: 1100, Y: 450}
	for _, c := range []struct {
		name                    string
		high, wide, stair, turn units.Length
		want                    []want
	}{
		{name: "nothing known"},
		{name: "a usual door", high: 1981 * units.Millimetre, wide: 762 * units.Millimetre},
		{name: "a hatch", high: 700 * units.Millimetre, wide: 800 * units.Millimetre,
			want: []want{{warn.DoorTight, warn.Severe, "", at, 900, 800}}},
		{name: "a door of unknown height", wide: 762 * units.Millimetre,
			want: []want{{warn.DoorTight, warn.Caution, "", at, 900, 762}}},
		{name: "a wide door", wide: 950 * units.Millimetre},
		{name: "a wide stair", stair: 900 * units.Millimetre},
		{name: "a narrow stair", stair: 800 * units.Millimetre,
			want: []want{{warn.StairTight, warn.Note, "", at, 900, 800}}},
		{name: "a long landing", turn: 2300 * units.Millimetre},
		{name: "a landing of 1 m", turn: 1000 * units.Millimetre,
			want: []want{{warn.TurnTight, warn.Caution, "", at, 2200, 1000}}},
		// 2 root 2 x 1000 - 76 = 2752 mm: it swings round.
		{name: "a landing of 1 m at a passage of 1 m", turn: 1000 * units.Millimetre, stair: 1000 * units.Millimetre,
			want: []want{{warn.TurnTight, warn.Note, "", at, 2200, 1000}}},
		// 2 root 2 x 750 - 76 = 2045 mm: it does not.
		{name: "a landing and a passage of 750 mm", turn: 750 * units.Millimetre, stair: 750 * units.Millimetre,
			want: []want{{warn.TurnTight, warn.Severe, "", at, 2200, 1500*math.Sqrt2 - 76},
				{warn.StairTight, warn.Note, "", at, 900, 750}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			top := newTop(38, rect(0, 0, 2200, 900))
			top.site.DoorHeight, top.site.DoorWidth = c.high, c.wide
			top.site.StairWidth, top.site.StairTurn = c.stair, c.turn
			compare(t, only(top.check(), warn.DoorTight, warn.StairTight, warn.TurnTight), c.want, 0.01)
		})
	}
}

package warn_test

import (
	"cmp"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/warn"
)

// Whatever the solid, the warnings are finite, in words, in order and the same
// again.
func TestCheckOfWildTops(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	codes := map[warn.Code]int{}
	for trial := range 400 {
		top := wildTop(r)
		got := top.check()
		sound(t, trial, got)
		for _, w := range got {
			codes[w.Code]++
		}
		if again := top.check(); !reflect.DeepEqual(got, again) {
			t.Fatalf("trial %d: not the same again", trial)
		}
	}
	if len(codes) < 25 {
		t.Errorf("only %d kinds of warning came up: %v", len(codes), codes)
	}
}

// sound checks that warnings are finite, in words and in order.
func sound(t *testing.T, trial int, ws []warn.Warning) {
	t.Helper()
	for i, w := range ws {
		if !w.At.Finite() || math.IsNaN(w.Value-w.Value) || math.IsNaN(w.Limit-w.Limit) {
			t.Fatalf("trial %d: a number is not finite: %+v", trial, w)
		}
		if w.Title == "" || w.Advice == "" || w.Source == "" || w.Unit == "" {
			t.Fatalf("trial %d: words are missing: %+v", trial, w)
		}
		if i > 0 && worseFirst(ws[i-1], w) > 0 {
			t.Fatalf("trial %d: out of order:%s", trial, list(ws[i-1:i+1]))
		}
	}
}

func worseFirst(a, b warn.Warning) int {
	return cmp.Or(int(b.Severity)-int(a.Severity), cmp.Compare(a.Code, b.Code),
		cmp.Compare(a.At.X, b.At.X), cmp.Compare(a.At.Y, b.At.Y), cmp.Compare(a.Part, b.Part))
}

// wildTop is any top: loops that cross themselves or are empty, parts anywhere,
// now and then a number that is none.
func wildTop(r *rand.Rand) *top {
	number := func(size float64) float64 {
		switch r.IntN(60) {
		case 0:
			return 0
		case 1:
			return -size
		case 2:
			return math.Inf(1)
		case 3:
			return math.NaN()
		}
		return size * r.Float64()
	}
	place := func() geom.Vec { return geom.Vec{X: 1600 * r.Float64(), Y: 900 * r.Float64()} }
	loop := func(size float64) geom.Loop {
		at := place()
		l := make(geom.Loop, r.IntN(40))
		for i := range l {
			turn := 2 * math.Pi * float64(i) / float64(len(l))
			if r.IntN(10) == 0 {
				turn *= 3
			}
			l[i] = at.Add(geom.Vec{X: size * (0.2 + r.Float64())}.Turn(turn))
		}
		if r.IntN(50) == 0 && len(l) > 0 {
			l[0].X = math.NaN()
		}
		return l
	}
	id := func() design.ID { return design.ID([]string{"a", "b", "c"}[r.IntN(3)]) }
	t := newTop(number(80), loop(700))
	if r.IntN(3) > 0 {
		t.solid.Outline = rect(0, 0, 1500*r.Float64()+50, 800*r.Float64()+50)
	}
	for range r.IntN(4) {
		t.sink(id(), loop(200))
	}
	for range r.IntN(6) {
		t.hole(id(), slab.OpeningKind(1+r.IntN(3)), place(), 60*r.Float64())
	}
	for range r.IntN(3) {
		t.solid.Bowls = append(t.solid.Bowls, slab.Bowl{Part: id(), Loop: loop(200), Back: geom.Vec{Y: 1}})
	}
	for range r.IntN(3) {
		c := t.channel(id(), number(40), loop(300), loop(100).Reversed())
		c.Fill.Resin = r.IntN(4) > 0
		c.Open = append(c.Open, slab.OpenEnd{At: place(), Width: number(80)})
		c.Centrelines = [][]geom.Vec{{place(), place(), place()}, nil}
		if r.IntN(2) == 0 {
			c.Fill.Glass = &design.GlassFill{Grain: mm(40 * r.Float64())}
		}
	}
	for range r.IntN(2) {
		t.solid.Beds = append(t.solid.Beds, slab.Bed{Part: id(), Grain: number(20), Depth: number(20),
			Loops: []geom.Loop{loop(200)}})
	}
	for range r.IntN(5) {
		t.bearing(loop(300))
		if r.IntN(2) == 0 {
			p := place()
			t.bearing(rect(p.X, p.Y, p.X+20, p.Y+400))
		}
	}
	t.design.Finish.Grind = mm(8 * r.Float64())
	t.design.Taps = []design.TapSet{{ID: id(), Sink: "a", SetBack: mm(150 * r.Float64())}}
	t.design.Channels = []design.Channel{{ID: id(), Rivers: []design.River{{Nodes: make([]design.RiverNode, r.IntN(3))}}}}
	t.materials.Resin.MaxPour = number(20)
	t.materials.Mix.CuredDensity = number(3000)
	t.site = design.Site{DoorWidth: mm(900 * r.Float64()), DoorHeight: mm(1500 * r.Float64()),
		StairWidth: mm(900 * r.Float64()), StairTurn: mm(1500 * r.Float64()), Helpers: r.IntN(5) - 1}
	t.weigh(number(150), place())
	return t
}

// Warnings do not depend on where the drawing's origin lies, nor on which way
// it is turned.
func TestCheckMovesWithTheTop(t *testing.T) {
	const rad = 0.3
	shift := geom.Vec{X: 12_345, Y: -6_789}
	move := func(l geom.Loop) geom.Loop {
		out := make(geom.Loop, len(l))
		for i, p := range l {
			out[i] = p.Turn(rad).Add(shift)
		}
		return out
	}
	build := func(f func(geom.Loop) geom.Loop) *top {
		x := newTop(38, f(geom.Loop{{}, {X: 1800}, {X: 1800, Y: 560}, {X: 600, Y: 560}, {X: 600, Y: 1500}, {Y: 1500}}))
		x.sink("s", f(rect(880, 60, 1300, 480)))
		x.solid.Openings = append(x.solid.Openings, slab.Opening{Part: "t", Kind: slab.OpeningTap,
			Loop: f(ring(geom.Vec{X: 1400, Y: 530}, 17)), Centre: f(geom.Loop{{X: 1400, Y: 530}})[0], Diameter: 34})
		x.channel("r", 25, f(rect(100, 20, 500, 80)))
		x.bearing(f(rect(0, 0, 20, 1500)))
		x.bearing(f(rect(0, 540, 1800, 560)))
		x.bearing(f(rect(1780, 0, 1800, 560)))
		x.bearing(f(rect(580, 600, 600, 1500)))
		at := f(geom.Loop{{X: 700, Y: 500}})[0]
		x.weigh(110, at)
		return x
	}
	a := build(func(l geom.Loop) geom.Loop { return l }).check()
	b := build(move).check()
	slices.SortFunc(b, func(u, v warn.Warning) int {
		back := func(w warn.Warning) geom.Vec { return w.At.Sub(shift).Turn(-rad) }
		return cmp.Or(int(v.Severity)-int(u.Severity), cmp.Compare(u.Code, v.Code),
			cmp.Compare(math.Round(back(u).X), math.Round(back(v).X)), cmp.Compare(u.Part, v.Part))
	})
	if len(a) != len(b) || len(a) < 8 {
		t.Fatalf("%d warnings, moved %d:%s%s", len(a), len(b), list(a), list(b))
	}
	for i := range a {
		if a[i].Code != b[i].Code || a[i].Severity != b[i].Severity || a[i].Part != b[i].Part {
			t.Errorf("%s\nmoved:%s", list(a[i:i+1]), list(b[i:i+1]))
			continue
		}
		// Spans and overhangs are looked for on a grid that does not turn with the
		// top, and where both are far too long which of the two a spot counts as
		// depends on it. TestOverhangAndSpan has a turned top.
		if a[i].Code == warn.SpanLong || a[i].Code == warn.OverhangLong {
			continue
		}
		if math.Abs(a[i].Value-b[i].Value) > 1e-6 || math.Abs(a[i].Limit-b[i].Limit) > 1e-6 {
			t.Errorf("%s\nmoved:%s", list(a[i:i+1]), list(b[i:i+1]))
		}
	}
}

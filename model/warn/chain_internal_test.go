package warn

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/model/geom"
)

func rectangle(x0, y0, x1, y1 float64) geom.Loop {
	return geom.Loop{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
}

func polygon(n int, at geom.Vec, r float64) geom.Loop {
	l := make(geom.Loop, n)
	for i := range l {
		l[i] = at.Add(geom.Vec{X: r}.Turn(2 * math.Pi * float64(i) / float64(n)))
	}
	return l
}

// blob is a random loop round a place, star-shaped.
func blob(r *rand.Rand, n int, at geom.Vec, size float64) geom.Loop {
	l := make(geom.Loop, n)
	for i := range l {
		d := size * (0.5 + r.Float64())
		l[i] = at.Add(geom.Vec{X: d}.Turn(2 * math.Pi * float64(i) / float64(n)))
	}
	return l
}

// Every question that the tree answers is asked of each segment as well.
func TestChainAgainstEverySegment(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	crossed, apart := 0, 0
	for trial := range 300 {
		a := blob(r, 3+r.IntN(60), geom.Vec{}, 100)
		b := blob(r, 3+r.IntN(60), geom.Vec{X: 400 * r.Float64(), Y: 300 * r.Float64()}, 60)
		ca, cb := newChain(a), newChain(b)
		want := none(1000)
		for i := range a {
			for j := range b {
				p, q := ca.seg(i)
				u, v := cb.seg(j)
				segPair(p, q, u, v, &want)
			}
		}
		got, ok := ca.closest(cb, 1000)
		if !ok || math.Abs(got.d-want.d) > 1e-9 {
			t.Fatalf("trial %d: closest %g, want %g", trial, got.d, want.d)
		}
		if math.Abs(got.at.Dist(got.to)-got.d) > 1e-9 {
			t.Fatalf("trial %d: the connection is %g long, said %g", trial, got.at.Dist(got.to), got.d)
		}
		if got.d == 0 {
			crossed++
		} else {
			apart++
		}
		p := geom.Vec{X: 300 * r.Float64(), Y: 300 * r.Float64()}
		if ca.contains(p) != a.Contains(p) {
			t.Fatalf("trial %d: contains(%v) differs from the loop's own", trial, p)
		}
		q := geom.Vec{X: -200 * r.Float64(), Y: -200 * r.Float64()}
		n := 0
		for i := range a {
			u, v := ca.seg(i)
			if _, ok := meet(p, q, u, v); ok {
				n++
			}
		}
		if got := len(ca.crossings(p, q, nil)); got != n {
			t.Fatalf("trial %d: %d crossings, want %d", trial, got, n)
		}
	}
	if crossed < 30 || apart < 30 {
		t.Errorf("%d loops crossed and %d lay apart: the trial tells little", crossed, apart)
	}
}

func TestCrossings(t *testing.T) {
	c := newChain(rectangle(0, 0, 100, 50))
	for _, k := range []struct {
		name string
		a, b geom.Vec
		want int
	}{
		{"right through", geom.Vec{X: -10, Y: 20}, geom.Vec{X: 110, Y: 20}, 2},
		{"into", geom.Vec{X: -10, Y: 20}, geom.Vec{X: 50, Y: 20}, 1},
		{"within", geom.Vec{X: 10, Y: 20}, geom.Vec{X: 50, Y: 30}, 0},
		{"along a side", geom.Vec{X: 10, Y: 0}, geom.Vec{X: 50, Y: 0}, 0},
		{"through two corners", geom.Vec{X: -10, Y: -5}, geom.Vec{X: 110, Y: 55}, 2},
		{"away from it", geom.Vec{X: -10, Y: 60}, geom.Vec{X: 110, Y: 60}, 0},
	} {
		if got := len(c.crossings(k.a, k.b, nil)); got != k.want {
			t.Errorf("%s: %d crossings, want %d", k.name, got, k.want)
		}
	}
}

func TestSideOf(t *testing.T) {
	c := newChain(rectangle(0, 0, 100, 50))
	for _, k := range []struct {
		name string
		l    geom.Loop
		want side
	}{
		{"inside", rectangle(10, 10, 20, 20), within},
		{"over an edge", rectangle(90, 10, 110, 20), across},
		{"touches an edge", rectangle(90, 10, 100, 20), across},
		{"outside", rectangle(110, 10, 120, 20), without},
		{"around", rectangle(-10, -10, 120, 60), without},
	} {
		o := newChain(k.l)
		p, _ := c.closest(o, near)
		if got := c.sideOf(o, p.d); got != k.want {
			t.Errorf("%s: side %d, want %d", k.name, got, k.want)
		}
	}
}

// A rectangle of 200 x 100 about one of 100 x 40 leaves strips of known width.
func TestNarrows(t *testing.T) {
	outer := newChain(rectangle(0, 0, 200, 100))
	for _, k := range []struct {
		name string
		in   geom.Loop
		want []float64 // in order along the outline: front, right, back, left
	}{
		{"all far", rectangle(50, 40, 150, 60), nil},
		{"front", rectangle(50, 20, 150, 60), []float64{20}},
		{"front and back", rectangle(50, 20, 150, 75), []float64{20, 25}},
		{"front and left, equal", rectangle(20, 20, 120, 60), []float64{20, 20}},
		{"front just below reach, left less", rectangle(12, 29, 120, 60), []float64{29, 12}},
		{"front at one end and at the other", geom.Loop{{X: 50, Y: 20}, {X: 60, Y: 35},
			{X: 140, Y: 35}, {X: 150, Y: 22}, {X: 150, Y: 60}, {X: 50, Y: 60}}, []float64{20}},
		{"front crosses", rectangle(50, -5, 150, 60), []float64{0}},
		{"all round", rectangle(10, 15, 180, 75), []float64{15, 20, 25, 10}},
	} {
		var got []float64
		for _, n := range outer.narrows(newChain(k.in), 30, 5) {
			got = append(got, n.d)
		}
		if fmt.Sprint(got) != fmt.Sprint(k.want) {
			t.Errorf("%s: narrow places %v, want %v", k.name, got, k.want)
		}
	}
	// One ring is one place, however many segments it has.
	ring := newChain(polygon(500, geom.Vec{}, 100))
	if got := ring.narrows(newChain(polygon(300, geom.Vec{}, 80)), 30, 5); len(got) != 1 {
		t.Errorf("a ring of even width has %d narrow places, want 1", len(got))
	}
	// A bar in the ring comes near at both ends; the two corners of an end are
	// 7.8 away and its middle 10, which is too small a rise.
	if got := ring.narrows(newChain(rectangle(-90, -20, 90, 20)), 30, 5); len(got) != 2 {
		t.Errorf("a bar in a ring has %d narrow places, want 2", len(got))
	}
}

func TestHull(t *testing.T) {
	pts := []geom.Vec{{}, {X: 4}, {X: 2, Y: 1}, {X: 4, Y: 3}, {Y: 3}, {X: 2, Y: 3}, {X: 4}}
	if got := hull(pts); len(got) != 4 || geom.Loop(got).Area() != 12 {
		t.Errorf("hull %v, want the 4 x 3 rectangle", got)
	}
	for _, c := range []struct {
		p    geom.Vec
		want float64
	}{{geom.Vec{X: 2, Y: 1}, 0}, {geom.Vec{X: 2, Y: -3}, 3}, {geom.Vec{X: 7, Y: 7}, 5}} {
		if got, _ := outside(c.p, hull(pts)); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%v lies %g outside, want %g", c.p, got, c.want)
		}
	}
}

func TestCaliper(t *testing.T) {
	turned := func(l geom.Loop, rad float64) geom.Loop {
		out := make(geom.Loop, len(l))
		for i, p := range l {
			out[i] = p.Turn(rad)
		}
		return out
	}
	triangle := geom.Loop{{}, {X: 4}, {Y: 3}}
	l := geom.Loop{{}, {X: 60}, {X: 60, Y: 22}, {X: 40, Y: 22}, {X: 40, Y: 40}, {Y: 40}}
	for _, c := range []struct {
		name          string
		l             geom.Loop
		width, length float64
	}{
		{"rectangle", rectangle(0, 0, 60, 22), 22, 60},
		{"rectangle, turned", turned(rectangle(0, 0, 60, 22), 0.7), 22, 60},
		{"3-4-5 triangle: its height over the longest side", triangle, 2.4, 5},
		// The hull of an L of 60 x 40 with a notch of 20 x 18: its slanted side
		// from (60, 22) to (40, 40) is no jaw, so that the width is 40.
		{"L", l, 40, 60},
		{"hexagon of side 10: between flats 10 root 3", polygon(6, geom.Vec{}, 10), 10 * math.Sqrt(3), 20},
		{"circle of many points", polygon(2000, geom.Vec{X: 5}, 50), 100, 100},
	} {
		got := caliper(hull(c.l))
		if math.Abs(got.width-c.width) > 1e-3 || math.Abs(got.length-c.length) > 1e-3 {
			t.Errorf("%s: %.4f x %.4f, want %g x %g", c.name, got.width, got.length, c.width, c.length)
		}
	}
}

// The ladder problem: (a^(2/3) + b^(2/3))^(3/2), with the classic worked values
// 2 root 2 for two passages of width 1 and 5 root 5 for widths 1 and 8; for a
// piece of thickness t between equal passages 2 (root 2 a - t).
func TestLongestRound(t *testing.T) {
	for _, c := range []struct{ a, b, thick, want float64 }{
		{1000, 1000, 0, 2000 * math.Sqrt2},
		{1000, 8000, 0, 5000 * math.Sqrt(5)},
		{900, 900, 38, 1800*math.Sqrt2 - 76},
		{900, 30, 38, 0},
	} {
		if got := longestRound(c.a, c.b, c.thick); math.Abs(got-c.want) > 1e-3 {
			t.Errorf("passages %g and %g, %g thick: %.3f, want %.3f", c.a, c.b, c.thick, got, c.want)
		}
	}
}

func TestBends(t *testing.T) {
	// A square of 100 with one corner rounded by r, in chords that leave the
	// arc by at most 0.01 mm.
	rounded := func(r float64) geom.Loop {
		l := geom.Loop{{}, {X: 100}}
		n := math.Ceil(math.Pi / 2 / (2 * math.Acos(1-0.01/r)))
		for k := 0.0; k <= n; k++ {
			l = append(l, geom.Vec{X: 100 - r, Y: 100 - r}.Add(geom.Vec{X: r}.Turn(math.Pi/2*k/n)))
		}
		return append(l, geom.Vec{Y: 100})
	}
	for _, r := range []float64{1, 3, 6.35, 9, 9.525, 12.7, 30} {
		var got []float64
		for _, b := range bends(rounded(r), 1, 9.525) {
			got = append(got, b.radius)
		}
		n := 3 // the square corners
		if r < 9.5 {
			n = 4
		}
		if len(got) != n {
			t.Errorf("radius %g: %d sharp corners %.3f, want %d", r, len(got), got, n)
			continue
		}
		for _, g := range got {
			if g != 0 && math.Abs(g-r) > 0.01 {
				t.Errorf("radius %g is read as %.4f", r, g)
			}
		}
		if in := bends(rounded(r), -1, 12.7); len(in) != 0 {
			t.Errorf("radius %g: a convex loop has inside corners %v", r, in)
		}
	}
	if got := bends(polygon(90, geom.Vec{}, 8), 1, 9.525); len(got) != 0 {
		t.Errorf("a round hole has corners: %v", got)
	}
	// A triangle with a dent: its inside corner turns by the given angle.
	for _, c := range []struct {
		turn float64
		want int
	}{{9.5, 0}, {10.5, 1}, {90, 1}} {
		u := geom.Vec{X: 100}.Turn(c.turn / 2 * math.Pi / 180)
		dent := geom.Loop{{X: -u.X, Y: u.Y}, {Y: -300}, u, {}}
		if got := bends(dent, -1, 12.7); len(got) != c.want {
			t.Errorf("an inside corner of %g degrees: found %v, want %d", c.turn, got, c.want)
		}
	}
}

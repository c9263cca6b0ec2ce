package compare

import (
	"image"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/model/geom"
	"example.org/castwright/ui/view"
)

func box(x0, y0, x1, y1 float64) geom.Box {
	return geom.Box{Min: geom.Vec{X: x0, Y: y0}, Max: geom.Vec{X: x1, Y: y1}}
}

// around is the same room at each edge of both sides.
func around(n float64) [2]view.Edges {
	return [2]view.Edges{{Left: n, Top: n, Right: n, Bottom: n}, {Left: n, Top: n, Right: n, Bottom: n}}
}

func edges(r *rand.Rand) view.Edges {
	return view.Edges{Left: 80 * r.Float64(), Top: 80 * r.Float64(), Right: 80 * r.Float64(), Bottom: 80 * r.Float64()}
}

// By hand: a top of 1000 x 500 mm beside one of 2000 x 500 on sides of 500 x 300
// points with 50 around: 400 points for 2000 mm is a fifth of a point to the
// millimetre; fitted, the first has two fifths.
func TestFit(t *testing.T) {
	tops := [2]geom.Box{box(0, 0, 1000, 500), box(0, 0, 2000, 500)}
	for _, c := range []struct {
		fitted bool
		a, b   float64
	}{{false, 0.2, 0.2}, {true, 0.4, 0.2}} {
		l := newLock(500, 300, tops, geom.Vec{}, around(50), c.fitted)
		if a, b := l.views[0].Scale, l.views[1].Scale; math.Abs(a-c.a) > 1e-12 || math.Abs(b-c.b) > 1e-12 {
			t.Errorf("fitted %v: %g and %g points to the millimetre, want %g and %g", c.fitted, a, b, c.a, c.b)
		}
	}
	// Aligned by the back: the second is 200 mm deeper and stands 200 mm further down.
	l := newLock(500, 300, [2]geom.Box{box(0, 0, 1000, 500), box(0, 0, 1000, 700)}, geom.Vec{Y: -200}, around(50), false)
	a, b := l.views[0].Point(geom.Vec{Y: 500}), l.views[1].Point(geom.Vec{Y: 700})
	if a.Dist(b) > 1e-9 {
		t.Errorf("the backs lie at %v and %v", a, b)
	}
	if got := l.whole(1).H(); got != 700 {
		t.Errorf("%g mm are the whole, want 700", got)
	}
}

// randomLock is a lock after some of what a hand does to it.
func randomLock(r *rand.Rand) lock {
	top := func() geom.Box {
		x, y := 1000*r.Float64()-500, 1000*r.Float64()-500
		return box(x, y, x+50+4000*r.Float64(), y+50+2000*r.Float64())
	}
	l := newLock(100+2000*r.Float64(), 100+1200*r.Float64(), [2]geom.Box{top(), top()},
		geom.Vec{X: 200*r.Float64() - 100, Y: 200*r.Float64() - 100}, [2]view.Edges{edges(r), edges(r)}, r.IntN(2) == 0)
	for range r.IntN(8) {
		l = step(l, r)
	}
	return l
}

func step(l lock, r *rand.Rand) lock {
	w, h := l.views[0].W, l.views[0].H
	switch r.IntN(5) {
	case 0:
		return l.zoom(geom.Vec{X: r.Float64() * w, Y: r.Float64() * h}, math.Exp(8*r.Float64()-4))
	case 1:
		return l.pan(geom.Vec{X: 800*r.Float64() - 400, Y: 800*r.Float64() - 400})
	case 2:
		return l.resize(100+2000*r.Float64(), 100+1200*r.Float64())
	case 3:
		x, y := 2000*r.Float64(), 1000*r.Float64()
		return l.centre(box(x, y, x+300*r.Float64(), y+100), box(x+90, y, x+400, y+100))
	}
	return l.fit()
}

// Whatever is done, both sides stay together: one scale and one origin, or the ratio
// of scales at which both fit; and the tops are not lost.
func TestLocked(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for n := range 400 {
		l := randomLock(r)
		fit := l.fit()
		want := fit.views[0].Scale / fit.views[1].Scale
		if got := l.views[0].Scale / l.views[1].Scale; math.Abs(got/want-1) > 1e-9 {
			t.Fatalf("case %d: scales as %g, want %g", n, got, want)
		}
		if !l.fitted {
			p := geom.Vec{X: 3000*r.Float64() - 1000, Y: 3000*r.Float64() - 1000}
			a, b := l.views[0].Point(p.Add(l.beside)), l.views[1].Point(p)
			if a.Dist(b) > 1e-6*(1+a.Norm()) {
				t.Fatalf("case %d: one place lies at %v and %v", n, a, b)
			}
		}
		seen := geom.EmptyBox()
		for i, v := range l.views {
			b := l.whole(i)
			seen = seen.Include(v.Point(b.Min)).Include(v.Point(b.Max))
		}
		if mid := l.middle(); !seen.Grow(1e-6 * (1 + l.views[0].W)).Contains(mid) {
			t.Fatalf("case %d: the tops lie within %v, the middle of the side is %v", n, seen, mid)
		}
		for i, v := range l.views {
			if v.Scale < view.MinScale || v.Scale > view.MaxScale || !v.Origin.Finite() {
				t.Fatalf("case %d: side %d is at %+v", n, i, v)
			}
		}
	}
}

// A zoom holds the places under the mouse still on both sides, and its inverse leads
// back.
func TestZoomHolds(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	for n := range 200 {
		l := randomLock(r).fit()
		// Over both tops, so that neither is shifted back into sight.
		at := l.middle()
		m := l.zoom(at, 1.7)
		for i := range l.views {
			if p, q := l.views[i].Design(at), m.views[i].Design(at); p.Dist(q) > 1e-6 {
				t.Fatalf("case %d, side %d: %v under the mouse became %v", n, i, p, q)
			}
		}
		if m.views[0].Scale == l.views[0].Scale {
			continue // as near as it goes
		}
		back := m.zoom(at, l.views[0].Scale/m.views[0].Scale)
		if a, b := back.views[1].Origin, l.views[1].Origin; a.Dist(b) > 1e-6 {
			t.Fatalf("case %d: there and back it lies at %v, not %v", n, a, b)
		}
	}
	l := newLock(500, 300, [2]geom.Box{box(0, 0, 900, 500), box(0, 0, 900, 500)}, geom.Vec{}, around(20), false)
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if l.zoom(geom.Vec{}, bad) != l {
			t.Errorf("a factor of %g changes something", bad)
		}
	}
	if l.pan(geom.Vec{X: math.NaN()}) != l {
		t.Error("a pan by no number changes something")
	}
}

// What differs comes into the middle: of one scale the box around both places, fitted
// each place on its side.
func TestCentre(t *testing.T) {
	tops := [2]geom.Box{box(0, 0, 1500, 550), box(0, 0, 3000, 600)}
	mid := geom.Vec{X: 300, Y: 200}
	was, is := box(100, 100, 300, 200), box(500, 300, 700, 400)
	l := newLock(600, 400, tops, geom.Vec{}, around(40), false).centre(was, is)
	if p := l.views[0].Point(geom.Vec{X: 400, Y: 250}); p.Dist(mid) > 1e-9 || l.views[0] != l.views[1] {
		t.Errorf("the middle of both places lies at %v", p)
	}
	if l.views[0].Scale <= newLock(600, 400, tops, geom.Vec{}, around(40), false).views[0].Scale {
		t.Error("it is no nearer than the whole")
	}
	l = newLock(600, 400, tops, geom.Vec{}, around(40), true).centre(was, is)
	if p, q := l.views[0].Point(was.Centre()), l.views[1].Point(is.Centre()); p.Dist(mid) > 1e-9 || q.Dist(mid) > 1e-9 {
		t.Errorf("fitted they lie at %v and %v", p, q)
	}
	// What only one side has is shown where it would be on the other.
	l = newLock(600, 400, tops, geom.Vec{Y: -50}, around(40), false).centre(geom.EmptyBox(), is)
	if p := l.views[1].Point(is.Centre()); p.Dist(mid) > 1e-9 {
		t.Errorf("what was added lies at %v", p)
	}
	whole := newLock(600, 400, tops, geom.Vec{}, around(40), false)
	if got := whole.zoom(mid, 3).centre(geom.EmptyBox(), geom.EmptyBox()); got != whole {
		t.Error("what has no place does not show the whole")
	}
}

func TestColumn(t *testing.T) {
	for _, c := range []struct {
		share float64
		width int
		want  int
	}{{0, 100, 0}, {1, 100, 100}, {0.5, 101, 51}, {-3, 100, 0}, {7, 100, 100}, {math.NaN(), 100, 50}, {0.25, 0, 0}} {
		if got := column(c.share, c.width); got != c.want {
			t.Errorf("%g of %d is column %d, want %d", c.share, c.width, got, c.want)
		}
	}
	// A line under the mouse stays under it, to half a pixel.
	for w := 1; w < 3000; w += 37 {
		for x := 0; x <= w; x += 1 + w/17 {
			if got := column(shareAt(float64(x), float64(w)), w); got != x {
				t.Fatalf("a line at %d of %d is drawn at %d", x, w, got)
			}
		}
	}
	if got := shareAt(5, 0); got != 0.5 {
		t.Errorf("without a width it stands at %g", got)
	}
}

// Every pixel is of one side or the other, and they meet at the line.
func TestWiped(t *testing.T) {
	size := image.Rect(0, 0, 23, 7)
	a, b, dst := image.NewRGBA(size), image.NewRGBA(size), image.NewRGBA(size)
	for i := range a.Pix {
		a.Pix[i], b.Pix[i] = 10, 200
	}
	for _, x := range []int{-4, 0, 1, 11, 22, 23, 99} {
		wiped(dst, a, b, x)
		for y := range 7 {
			for c := range 23 {
				want := uint8(200)
				if c < x {
					want = 10
				}
				if got := dst.RGBAAt(c, y); got.R != want || got.A != want {
					t.Fatalf("line at %d: pixel %d, %d is %v", x, c, y, got)
				}
			}
		}
	}
}

// A layer seen through another view than its own lies where its places are.
func TestLayerMoves(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 100, 80))
	for y := 30; y < 50; y++ { // a square from (40, 30) on
		for x := 40; x < 60; x++ {
			img.Pix[img.PixOffset(x, y)] = 255
		}
	}
	from := view.New(100, 80)
	l := &layer{view: from, image: img}
	for _, v := range []view.View{from, from.Pan(geom.Vec{X: 13, Y: -9}), from.Zoom(geom.Vec{X: 50, Y: 40}, 2).Pan(geom.Vec{X: -11})} {
		dst := image.NewRGBA(img.Rect)
		l.paint(dst, v)
		p := v.Point(from.Design(geom.Vec{X: 50, Y: 40}))
		n, sum := 0, geom.Vec{}
		for y := range 80 {
			for x := range 100 {
				if dst.Pix[dst.PixOffset(x, y)] > 127 {
					n++
					sum = sum.Add(geom.Vec{X: float64(x) + 0.5, Y: float64(y) + 0.5})
				}
			}
		}
		if n == 0 || sum.Mul(1/float64(n)).Dist(p) > 0.6 {
			t.Errorf("at scale %g its middle is seen at %v, want %v", v.Scale, sum.Mul(1/math.Max(1, float64(n))), p)
		}
	}
}

// What is kept is bounded, and the best of it is given.
func TestKept(t *testing.T) {
	var k kept
	v := view.New(10, 10)
	of := subject{print: "a", photo: true}
	k.add(&layer{of: of, view: v, image: image.NewRGBA(image.Rect(0, 0, 4, 4)), grade: 0})
	k.add(&layer{of: of, view: v, image: image.NewRGBA(image.Rect(0, 0, 4, 4)), grade: 2})
	if l, exact := k.best(of, v); !exact || l.grade != 2 || len(k.list) != 1 {
		t.Errorf("%+v, %v of %d", l, exact, len(k.list))
	}
	if l, exact := k.best(of, v.Pan(geom.Vec{X: 1})); l == nil || exact {
		t.Error("for another view nothing is given, or as if it were for it")
	}
	if l, _ := k.best(subject{print: "b", photo: true}, v); l != nil {
		t.Error("another design is given")
	}
	for i := range 40 {
		k.add(&layer{of: of, view: v.Pan(geom.Vec{X: float64(i + 2)}), image: image.NewRGBA(image.Rect(0, 0, 2000, 1000))})
		if k.bytes > mostKept {
			t.Fatalf("%d bytes are kept", k.bytes)
		}
	}
}

package geom_test

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/castwright/model/geom"
	sf "github.com/peterstace/simplefeatures/geom"
)

// layerArea sums the parts that want accepts.
func layerArea(parts []geom.Part, want func(uint64) bool) (area float64, moment geom.Vec) {
	for _, p := range parts {
		if want(p.Layers) {
			area += p.Area
			moment = moment.Add(p.Moment)
		}
	}
	return area, moment
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.12g, want %.12g (off by %.3g, allowed %.3g)", what, got, want, got-want, tol)
	}
}

// The polygon rows of the geometry table: areas and centroids by the shoelace
// formula, any mensuration handbook (CRC Standard Mathematical Tables).
func TestSweepHandbook(t *testing.T) {
	for _, c := range []struct {
		name string
		loop geom.Loop
		area float64
		c    geom.Vec
	}{
		{"L shape", geom.Loop{{}, {X: 60}, {X: 60, Y: 22}, {X: 40, Y: 22}, {X: 40, Y: 40}, {Y: 40}},
			2040, geom.Vec{X: 26.470588, Y: 18.058824}},
		{"quadrilateral", geom.Loop{{X: 1, Y: 1}, {X: 7, Y: 2}, {X: 6, Y: 6}, {X: 2, Y: 5}},
			20, geom.Vec{X: 4.0416667, Y: 3.375}},
		{"triangle 3-4-5", geom.Loop{{}, {X: 4}, {Y: 3}}, 6, geom.Vec{X: 4. / 3, Y: 1}},
	} {
		for _, turn := range []float64{0, math.Pi / 2, 1} {
			var s geom.Sweep
			s.Reset(geom.Vec{X: 20, Y: 10})
			l := make(geom.Loop, len(c.loop))
			for i, p := range c.loop {
				l[i] = p.Turn(turn)
			}
			s.Add(3, l)
			parts := s.Parts()
			a, m := layerArea(parts, func(k uint64) bool { return k == 1<<3 })
			centre := c.c.Turn(turn)
			name := fmt.Sprintf("%s turned %g", c.name, turn)
			near(t, name+" area", a, c.area, 1e-6)
			near(t, name+" x", m.X/a, centre.X, 1e-6)
			near(t, name+" y", m.Y/a, centre.Y, 1e-6)
			if len(parts) != 1 {
				t.Errorf("%s: %d parts", name, len(parts))
			}
		}
	}
}

// star is a star-shaped polygon about c.
func star(r *rand.Rand, c geom.Vec, size float64, n int) geom.Loop {
	l := make(geom.Loop, n)
	for i := range l {
		a := 2 * math.Pi * (float64(i) + 0.8*r.Float64()) / float64(n)
		s, co := math.Sincos(a)
		l[i] = c.Add(geom.Vec{X: co, Y: s}.Mul(size * (0.3 + r.Float64())))
	}
	return l
}

func polygon(l geom.Loop) sf.Geometry {
	var xy []float64
	for i := 0; i <= len(l); i++ {
		p := l[i%len(l)]
		xy = append(xy, p.X, p.Y)
	}
	return sf.NewSingleRingPolygonXY(xy...).AsGeometry()
}

// Every boolean combination of two polygons against an overlay by noding and
// relabelling (simplefeatures), which shares nothing with the sweep.
func TestSweepAgainstOverlay(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	var s geom.Sweep
	for i := range 300 {
		a := star(r, geom.Vec{X: 100, Y: 50}, 100, 3+r.IntN(60))
		b := star(r, geom.Vec{X: 100 + 150*r.Float64(), Y: 50 * r.Float64()}, 80, 3+r.IntN(60))
		if i%3 == 0 { // shared vertices, level and coincident edges
			for _, l := range []geom.Loop{a, b} {
				for k := range l {
					l[k].X, l[k].Y = 20*math.Round(l[k].X/20), 20*math.Round(l[k].Y/20)
				}
			}
		}
		pa, pb := polygon(a), polygon(b)
		if pa.Validate() != nil || pb.Validate() != nil {
			continue
		}
		s.Reset(geom.Vec{X: 100, Y: 50})
		s.Add(0, a)
		s.Add(1, b.Reversed())
		parts := s.Parts()
		for name, op := range map[string]struct {
			f    func(a, b sf.Geometry) (sf.Geometry, error)
			want func(uint64) bool
		}{
			"union":        {sf.Union, func(k uint64) bool { return true }},
			"intersection": {sf.Intersection, func(k uint64) bool { return k == 3 }},
			"difference":   {sf.Difference, func(k uint64) bool { return k == 1 }},
		} {
			g, err := op.f(pa, pb)
			if err != nil {
				t.Fatal(err)
			}
			area, moment := layerArea(parts, op.want)
			name = fmt.Sprintf("case %d %s", i, name)
			near(t, name, area, g.Area(), 2e-5)
			if c, ok := g.Centroid().XY(); ok && g.Area() > 1 {
				near(t, name+" x", moment.X/area, c.X, 1e-6)
				near(t, name+" y", moment.Y/area, c.Y, 1e-6)
			}
		}
	}
}

// Loops bound the same region as the parts measure: their areas agree, every
// loop is simple, and the overlay library finds no difference.
func TestLoopsAgainstOverlay(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	var s geom.Sweep
	for i := range 300 {
		a := star(r, geom.Vec{X: 100, Y: 50}, 100, 3+r.IntN(40))
		b := star(r, geom.Vec{X: 100 + 150*r.Float64(), Y: 50 * r.Float64()}, 80, 3+r.IntN(40))
		if i%3 == 0 {
			for _, l := range []geom.Loop{a, b} {
				for k := range l {
					l[k].X, l[k].Y = 20*math.Round(l[k].X/20), 20*math.Round(l[k].Y/20)
				}
			}
		}
		pa, pb := polygon(a), polygon(b)
		if pa.Validate() != nil || pb.Validate() != nil {
			continue
		}
		for name, op := range map[string]struct {
			f    func(a, b sf.Geometry) (sf.Geometry, error)
			want func(uint64) bool
		}{
			"union":        {sf.Union, func(k uint64) bool { return true }},
			"intersection": {sf.Intersection, func(k uint64) bool { return k == 3 }},
			"difference":   {sf.Difference, func(k uint64) bool { return k == 1 }},
		} {
			g, err := op.f(pa, pb)
			if err != nil {
				t.Fatal(err)
			}
			s.Reset(geom.Vec{X: 100, Y: 50})
			s.Add(0, a)
			s.Add(1, b)
			loops := s.Loops(op.want)
			name = fmt.Sprintf("case %d %s", i, name)
			area := 0.0
			for k, l := range loops {
				area += l.Area()
				if err := polygon(l).Validate(); err != nil && i%3 != 0 {
					t.Errorf("%s: loop %d of %d: %v", name, k, len(loops), err)
				}
			}
			near(t, name, area, g.Area(), 1e-5)
			n := 0
			for _, p := range g.Dump() {
				if p.IsPolygon() {
					n += len(p.MustAsPolygon().DumpRings())
				}
			}
			if n != len(loops) && i%3 != 0 {
				t.Errorf("%s: %d loops, want %d", name, len(loops), n)
			}
		}
	}
}

// windingArea is the area where the winding number is not zero by brute force:
// exact along many lines, the midpoint rule across them.
func windingArea(loops []geom.Loop, lines int) float64 {
	b := geom.EmptyBox()
	for _, l := range loops {
		b = b.Union(l.Bounds())
	}
	h, sum := b.H()/float64(lines), 0.0
	for i := range lines {
		y := b.Min.Y + (float64(i)+0.5)*h
		type hit struct {
			x float64
			w int
		}
		var hits []hit
		for _, l := range loops {
			for k, p := range l {
				q := l[(k+1)%len(l)]
				if (p.Y <= y) == (q.Y <= y) {
					continue
				}
				w := 1
				if q.Y > p.Y {
					w = -1
				}
				hits = append(hits, hit{p.X + (y-p.Y)*(q.X-p.X)/(q.Y-p.Y), w})
			}
		}
		slices.SortFunc(hits, func(a, b hit) int { return cmp.Compare(a.x, b.x) })
		w := 0
		for k, hh := range hits {
			if w != 0 {
				sum += (hh.x - hits[k-1].x) * h
			}
			w += hh.w
		}
	}
	return sum
}

// Loops that cross themselves and each other, on one layer, by the non-zero rule.
func TestSweepWinding(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 1))
	var s geom.Sweep
	for i := range 60 {
		s.Reset(geom.Vec{})
		var loops []geom.Loop
		for range 1 + r.IntN(4) {
			l := make(geom.Loop, 3+r.IntN(20))
			for k := range l {
				l[k] = geom.Vec{X: 100 * r.Float64(), Y: 100 * r.Float64()}
				if i%2 == 0 {
					l[k].X, l[k].Y = 10*math.Round(l[k].X/10), 10*math.Round(l[k].Y/10)
				}
			}
			loops = append(loops, l)
			s.Add(0, l)
		}
		got, _ := layerArea(s.Parts(), func(k uint64) bool { return k == 1 })
		const lines = 40_000
		near(t, fmt.Sprintf("case %d", i), got, windingArea(loops, lines), 0.02)
		traced := 0.0
		for _, l := range s.Union(loops...) {
			traced += l.Area()
		}
		near(t, fmt.Sprintf("case %d traced", i), traced, got, 1e-5)
	}
}

func ring(c geom.Vec, radius float64, n int) geom.Loop {
	var l geom.Loop
	for _, v := range geom.Flatten(nil, geom.Circle(c, radius), 12e-2) {
		l = append(l, v.P)
	}
	l = l[:0]
	for i := range n {
		l = append(l, c.Add(geom.Vec{X: radius}.Turn(2*math.Pi*float64(i)/float64(n))))
	}
	return l
}

func BenchmarkSweep(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 1))
	for _, n := range []int{200, 2000, 20000} {
		b.Run(fmt.Sprintf("round/n=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			outer, inner := ring(geom.Vec{}, 500, n), ring(geom.Vec{}, 490, n)
			var s geom.Sweep
			for b.Loop() {
				s.Reset(geom.Vec{})
				s.Add(0, outer)
				s.Add(1, inner)
				s.Parts()
			}
		})
		b.Run(fmt.Sprintf("star/n=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			outer, inner := star(r, geom.Vec{}, 500, n), star(r, geom.Vec{}, 490, n)
			var s geom.Sweep
			for b.Loop() {
				s.Reset(geom.Vec{})
				s.Add(0, outer)
				s.Add(1, inner)
				s.Parts()
			}
		})
	}
}

func wave(n int, phase float64) geom.Loop {
	var l geom.Loop
	for i := 0; i <= n; i++ {
		x := 1000 * float64(i) / float64(n)
		l = append(l, geom.Vec{X: x, Y: 100*math.Sin(x/150+phase) + 185})
	}
	for i := n; i >= 0; i-- {
		l = append(l, l[i].Add(geom.Vec{Y: 30}))
	}
	return l
}

func BenchmarkUnion(b *testing.B) {
	b.ReportAllocs()
	p, q := wave(150, 0), wave(150, 1.5)
	var s geom.Sweep
	for b.Loop() {
		s.Union(p, q)
	}
}

// Pieces that share an edge leave no seam.
func TestUnionSeams(t *testing.T) {
	at := func(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y}.Turn(0.3) }
	for _, c := range []struct {
		name  string
		loops []geom.Loop
		want  int
		area  float64
	}{
		{"side by side", []geom.Loop{{at(0, 0), at(10, 0), at(10, 10), at(0, 10)}, {at(10, 0), at(20, 0), at(20, 10), at(10, 10)}}, 1, 200},
		{"part of a side", []geom.Loop{{at(0, 0), at(10, 0), at(10, 10), at(0, 10)}, {at(10, 3), at(20, 3), at(20, 8), at(10, 8)}}, 1, 150},
		{"corner to corner", []geom.Loop{{at(0, 0), at(10, 0), at(10, 10), at(0, 10)}, {at(10, 10), at(20, 10), at(20, 20), at(10, 20)}}, 2, 200},
		{"the same twice", []geom.Loop{{at(0, 0), at(10, 0), at(10, 10), at(0, 10)}, {at(0, 0), at(10, 0), at(10, 10), at(0, 10)}}, 1, 100},
		{"a frame", []geom.Loop{{at(0, 0), at(30, 0), at(30, 10), at(0, 10)}, {at(0, 20), at(30, 20), at(30, 30), at(0, 30)},
			{at(0, 5), at(10, 5), at(10, 25), at(0, 25)}, {at(20, 0), at(30, 0), at(30, 30), at(20, 30)}}, 2, 800},
	} {
		got := geom.Union(c.loops...)
		area := 0.0
		for _, l := range got {
			area += l.Area()
		}
		near(t, c.name, area, c.area, 1e-6)
		if len(got) != c.want {
			t.Errorf("%s: %d loops, want %d: %v", c.name, len(got), c.want, got)
		}
	}
}

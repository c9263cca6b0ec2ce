package raster

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/model/geom"
	"github.com/golang/freetype/raster"
	"golang.org/x/image/math/fixed"
)

// grey collects covers, 0 to 1, for each pixel.
type grey struct {
	w   int
	pix []float64
}

func (g *grey) lay(s span) {
	for x := s.x0; x < s.x1; x++ {
		g.pix[s.y*g.w+x] += float64(s.cover) / 0xffff
	}
}

// Paint makes grey a painter of the oracle.
func (g *grey) Paint(spans []raster.Span, _ bool) {
	for _, s := range spans {
		for x := max(0, s.X0); x < min(g.w, s.X1); x++ {
			g.pix[s.Y*g.w+x] += float64(s.Alpha) / 0xffff
		}
	}
}

// TestCellsAgainstFreetype compares random polygons, self-crossing ones too, with
// the rasterizer of the freetype project (golang/freetype/raster).
func TestCellsAgainstFreetype(t *testing.T) {
	const w, h = 61, 47
	rng := rand.New(rand.NewPCG(1, 1))
	for n := range 300 {
		l := make([]geom.Vec, 3+rng.IntN(9))
		for i := range l {
			// Whole 64ths, which both hold exactly.
			l[i] = geom.Vec{X: float64(rng.IntN(w*64)) / 64, Y: float64(rng.IntN(h*64)) / 64}
		}
		var c cells
		c.resize(w, h)
		c.polygon(l, 0)
		got := grey{w, make([]float64, w*h)}
		c.sweep(got.lay)

		want := grey{w, make([]float64, w*h)}
		r := raster.NewRasterizer(w, h)
		r.UseNonZeroWinding = true
		at := func(p geom.Vec) fixed.Point26_6 {
			return fixed.Point26_6{X: fixed.Int26_6(p.X * 64), Y: fixed.Int26_6(p.Y * 64)}
		}
		r.Start(at(l[0]))
		for _, p := range l[1:] {
			r.Add1(at(p))
		}
		r.Add1(at(l[0]))
		r.Rasterize(&want)

		for i := range want.pix {
			// It rounds each side to its grid of 1/64 in every pixel; ours to
			// 1/256. A pixel that many sides cross gathers their errors.
			if d := math.Abs(got.pix[i] - want.pix[i]); d > 0.06 {
				t.Fatalf("polygon %d %v: pixel (%d, %d) has cover %.4f, want %.4f", n, l, i%w, i/w, got.pix[i], want.pix[i])
			}
		}
	}
}

// TestCellsAgainstPoints compares triangles that reach beyond the picture on every
// side with the winding numbers of 16 x 16 points in each pixel.
func TestCellsAgainstPoints(t *testing.T) {
	const w, h, n = 23, 19, 16
	rng := rand.New(rand.NewPCG(3, 3))
	for k := range 60 {
		l := make(geom.Loop, 3)
		for i := range l {
			l[i] = geom.Vec{X: float64(rng.IntN(43*64))/64 - 10, Y: float64(rng.IntN(39*64))/64 - 10}
		}
		var c cells
		c.resize(w, h)
		c.polygon(l, 0)
		got := grey{w, make([]float64, w*h)}
		c.sweep(got.lay)
		for i, cover := range got.pix {
			in := 0
			for j := range n * n {
				p := geom.Vec{X: float64(i%w) + (float64(j%n)+0.5)/n, Y: float64(i/w) + (float64(j/n)+0.5)/n}
				if l.Contains(p) {
					in++
				}
			}
			if want := float64(in) / (n * n); math.Abs(cover-want) > 0.08 {
				t.Fatalf("triangle %d %v: pixel (%d, %d) has cover %.3f, points say %.3f", k, l, i%w, i/w, cover, want)
			}
		}
	}
}

// TestCellsArea holds the sum of all covers to the area by the shoelace formula.
func TestCellsArea(t *testing.T) {
	const w, h = 200, 150
	rng := rand.New(rand.NewPCG(2, 2))
	for n := range 200 {
		// A star about the middle: it never crosses itself.
		l := make(geom.Loop, 3+rng.IntN(40))
		for i := range l {
			s, c := math.Sincos(2 * math.Pi * float64(i) / float64(len(l)))
			r := 10 + 60*rng.Float64()
			l[i] = geom.Vec{X: math.Round((100+r*c)*256) / 256, Y: math.Round((75+r*s)*256) / 256}
		}
		var c cells
		c.resize(w, h)
		c.polygon(l, 0)
		sum := 0.0
		c.sweep(func(s span) { sum += float64(s.x1-s.x0) * float64(s.cover) / 0xffff })
		// Each pixel's cover is rounded down to 1/65535; each crossing of a row
		// or column to 1/256 of a pixel.
		if area := math.Abs(l.Area()); math.Abs(sum-area) > 0.02+2e-4*area {
			t.Fatalf("polygon %d: covers sum to %.4f, the area is %.4f", n, sum, area)
		}
	}
}

// TestCellsEmptied reports whether a sweep leaves nothing for the next shape.
func TestCellsEmptied(t *testing.T) {
	var c cells
	c.resize(40, 40)
	c.polygon([]geom.Vec{{X: -5, Y: -5}, {X: 60, Y: 3}, {X: 20, Y: 70}}, 0)
	c.sweep(func(span) {})
	c.sweep(func(s span) { t.Fatalf("a second sweep still lays %+v", s) })
	for i, k := range c.cell {
		if k != (cell{}) {
			t.Fatalf("cell %d still holds %+v", i, k)
		}
	}
}

func TestClipLoop(t *testing.T) {
	box := geom.Box{Max: geom.Vec{X: 10, Y: 10}}
	for _, c := range []struct {
		name string
		loop []geom.Vec
		area float64
	}{
		{"inside", []geom.Vec{{X: 1, Y: 1}, {X: 4, Y: 1}, {X: 4, Y: 4}, {X: 1, Y: 4}}, 9},
		{"around", []geom.Vec{{X: -1e12, Y: -1e12}, {X: 1e12, Y: -1e12}, {X: 1e12, Y: 1e12}, {X: -1e12, Y: 1e12}}, 100},
		{"half", []geom.Vec{{X: 5, Y: -50}, {X: 50, Y: -50}, {X: 50, Y: 50}, {X: 5, Y: 50}}, 50},
		{"outside", []geom.Vec{{X: 20, Y: 20}, {X: 30, Y: 20}, {X: 30, Y: 30}}, 0},
		{"beside but around the corner", []geom.Vec{{X: 25, Y: 5}, {X: 5, Y: 25}, {X: 30, Y: 30}}, 0},
	} {
		if got := math.Abs(geom.Loop(clipLoop(c.loop, box)).Area()); math.Abs(got-c.area) > 1e-6 {
			t.Errorf("%s: area %g is left, want %g", c.name, got, c.area)
		}
	}
}

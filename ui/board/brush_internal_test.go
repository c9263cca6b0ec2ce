package board

import (
	"image"
	"math"
	"testing"

	"example.org/castwright/model/geom"
	"fyne.io/fyne/v2/theme"
)

// inked is how many pixels of ink a brush has laid on an empty picture.
func inked(img *image.RGBA) float64 {
	sum := 0.0
	for i := 3; i < len(img.Pix); i += 4 {
		sum += float64(img.Pix[i]) / 255
	}
	return sum
}

// The ink laid is the area of the shape: coverage is exact but for rounding to
// 1/64 pixel and 1/255 of a colour.
func TestBrushLaysTheArea(t *testing.T) {
	c := geom.Vec{X: 50.3, Y: 49.6}
	for _, tt := range []struct {
		name string
		add  func(*brush)
		want float64
		tol  float64
	}{
		{"square", func(b *brush) {
			b.convex(geom.Vec{X: 10, Y: 10}, geom.Vec{X: 30.5, Y: 10}, geom.Vec{X: 30.5, Y: 30.25}, geom.Vec{X: 10, Y: 30.25})
		}, 20.5 * 20.25, 0.5},
		{"square run backward", func(b *brush) {
			b.convex(geom.Vec{X: 10, Y: 30}, geom.Vec{X: 30, Y: 30}, geom.Vec{X: 30, Y: 10}, geom.Vec{X: 10, Y: 10})
		}, 400, 0.5},
		{"disc, pi r r", func(b *brush) { b.disc(c, 20) }, math.Pi * 400, 0.03 * math.Pi * 400},
		{"ring, 2 pi r w", func(b *brush) { b.circle(c, 20, 3) }, 2 * math.Pi * 20 * 3, 0.02 * 2 * math.Pi * 60},
		{"line with its ends", func(b *brush) { b.line(geom.Vec{X: 20, Y: 30}, geom.Vec{X: 60, Y: 60}, 4) }, 4 * (50 + 4), 1},
		{"the same line twice", func(b *brush) {
			b.line(geom.Vec{X: 20, Y: 30}, geom.Vec{X: 60, Y: 30}, 4)
			b.line(geom.Vec{X: 60, Y: 30}, geom.Vec{X: 20, Y: 30}, 4)
		}, 4 * 44, 1},
		{"dashes, 6 of 10", func(b *brush) { b.dashes(geom.Vec{X: 0, Y: 50}, geom.Vec{X: 100, Y: 50}, 2, 6, 4) }, 2 * 60, 15},
		{"plate less its corners", func(b *brush) {
			b.plate(geom.Box{Min: geom.Vec{X: 10, Y: 10}, Max: geom.Vec{X: 70, Y: 40}}, 5)
		}, 1800 - 25*(4-math.Pi), 4},
		{"outside", func(b *brush) { b.disc(geom.Vec{X: -500, Y: 20}, 20) }, 0, 0},
		{"half outside", func(b *brush) {
			b.convex(geom.Vec{X: -10, Y: 10}, geom.Vec{X: 10, Y: 10}, geom.Vec{X: 10, Y: 30}, geom.Vec{X: -10, Y: 30})
		}, 200, 0.5},
	} {
		b := &brush{}
		img := image.NewRGBA(image.Rect(0, 0, 100, 100))
		b.on(img)
		tt.add(b)
		b.paint(tintOf(0, 0, 0, 0xff))
		if got := inked(img); math.Abs(got-tt.want) > tt.tol {
			t.Errorf("%s: ink on %.1f pixels, want %.1f", tt.name, got, tt.want)
		}
	}
}

// Far, endless and bad shapes are left out or cut, in no time.
func TestBrushBounds(t *testing.T) {
	b := &brush{}
	img := image.NewRGBA(image.Rect(0, 0, 100, 100))
	b.on(img)
	inf, nan := math.Inf(1), math.NaN()
	b.line(geom.Vec{X: -1e12, Y: 50}, geom.Vec{X: 1e12, Y: 50}, 2)
	b.paint(tintOf(0, 0, 0, 0xff))
	if got := inked(img); math.Abs(got-200) > 2 {
		t.Errorf("an endless line laid ink on %.1f pixels, want 200", got)
	}
	b.dashes(geom.Vec{X: -1e12, Y: 70}, geom.Vec{X: 1e12, Y: 70}, 2, 6, 4)
	b.line(geom.Vec{X: nan, Y: 0}, geom.Vec{X: 10, Y: 10}, 2)
	b.line(geom.Vec{X: inf, Y: 0}, geom.Vec{X: -inf, Y: 10}, 2)
	b.line(geom.Vec{X: 5, Y: 5}, geom.Vec{X: 5, Y: 5}, 2)
	b.convex(geom.Vec{X: nan}, geom.Vec{X: 1}, geom.Vec{Y: inf})
	b.convex(geom.Vec{X: 1e9}, geom.Vec{X: 1}, geom.Vec{Y: 1e9})
	b.paint(tintOf(0, 0, 0, 0xff))
}

// White text has a contrast of 4.5 to 1 on every ground that carries it.
func TestTextCanBeRead(t *testing.T) {
	k := newInk()
	for name, c := range map[string]tint{"accent": k.accent, "bad": k.bad, "low": k.low,
		// A label lets a little of what is below through: at worst white.
		"chip": tintOf(k.chip.r+0xff-k.chip.a, k.chip.g+0xff-k.chip.a, k.chip.b+0xff-k.chip.a, 0xff)} {
		l := luminance(tintColour(c))
		if ratio := 1.05 / (l + 0.05); ratio < 4.5 {
			t.Errorf("white on %s has a contrast of %.2f", name, ratio)
		}
	}
	if l := luminance(deepen(theme.Color(theme.ColorNameBackground))); l > whiteOn {
		t.Errorf("deepened ground has luminance %.3f", l)
	}
}

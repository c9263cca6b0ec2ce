package room

import (
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/pose"
)

// The noise of an even picture is found, also with edges in it.
func TestGrain(t *testing.T) {
	c := pose.Corners{{X: 30, Y: 30}, {X: 370, Y: 30}, {X: 370, Y: 270}, {X: 30, Y: 270}}
	for _, want := range []float64{0, 2, 6} {
		img := image.NewRGBA(image.Rect(0, 0, 400, 300))
		r := rand.New(rand.NewPCG(1, 1))
		for y := range 300 {
			for x := range 400 {
				v := 120.0
				if x/50%2 == 0 {
					v = 180
				}
				img.SetRGBA(x, y, color.RGBA{uint8(v), uint8(math.Round(v + want*r.NormFloat64())), uint8(v), 255})
			}
		}
		if got := grain(img, c); math.Abs(got-want) > 0.15*want+0.35 {
			t.Errorf("noise of %g is found as %.2f", want, got)
		}
	}
}

func TestBell(t *testing.T) {
	var sum, square float64
	const n = 300
	for y := range n {
		for x := range n {
			v := bell(x, y)
			sum, square = sum+v, square+v*v
		}
	}
	if mean := sum / n / n; math.Abs(mean) > 0.02 {
		t.Errorf("mean %g", mean)
	}
	if v := square / n / n; math.Abs(v-1) > 0.05 {
		t.Errorf("variance %g, want 1", v)
	}
}

// A slope of light is found through a tenth of outliers; a pattern that has none
// gives none.
func TestSlope(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	var list, pattern []sample
	for i := range 30 {
		for j := range 30 {
			at := geom.Vec{X: 1200 * (float64(i) + 0.5) / 30, Y: -600 * (float64(j) + 0.5) / 30}
			v := 0.3 * math.Exp(0.4*(at.X/1200-0.5)-0.2*(at.Y/600+0.5)+0.02*r.NormFloat64())
			if r.IntN(10) == 0 {
				v *= 0.2
			}
			list = append(list, sample{at, [3]float64{v, v, v}})
			w := 0.1 + 0.4*r.Float64()
			pattern = append(pattern, sample{at, [3]float64{w, w, w}})
		}
	}
	g := slope(list, 1200, 600)
	if math.Abs(g.X*1200-0.4) > 0.04 || math.Abs(g.Y*600+0.2) > 0.04 {
		t.Errorf("slope %.3f, %.3f across, want 0.4, -0.2", g.X*1200, g.Y*600)
	}
	if g := slope(pattern, 1200, 600); math.Hypot(g.X*1200, g.Y*600) > 0.03 {
		t.Errorf("a pattern has the slope %.3f, %.3f", g.X*1200, g.Y*600)
	}
}

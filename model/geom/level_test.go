package geom_test

import (
	"math"
	"testing"

	"example.org/castwright/model/geom"
)

// Corners that are level but for rounding, in either direction and at any turn,
// must not break the boundary (an arc that meets an upright side).
func TestUnionOfNearlyLevelCorners(t *testing.T) {
	loop := geom.Loop{
		{X: 1000.0000000000005, Y: 100}, {X: 1000, Y: 500}, {X: 200, Y: 500}, {X: 200, Y: 100},
		{X: 466.222776335807, Y: 73.33887389375604}, {X: 733.7772236641933, Y: 73.33887389375604},
	}
	for _, tiny := range []float64{0, 5e-13, 1e-12, 3e-11, 4e-10, 9e-10, 2e-9, 1e-7} {
		for turn := range 4 {
			l := make(geom.Loop, len(loop))
			for i, p := range loop {
				p.X += tiny * float64(i%3-1)
				p.Y += tiny * float64((i+1)%3-1)
				l[i] = p.Turn(float64(turn) * math.Pi / 2)
			}
			out := geom.Union(l)
			if len(out) != 1 || math.Abs(out[0].Area()-l.Area()) > 1e-4 {
				sum := 0.0
				for _, o := range out {
					sum += o.Area()
				}
				t.Errorf("moved by %g, turn %d: %d loops of %.6f mm2, want one of %.6f", tiny, turn, len(out), sum, l.Area())
			}
		}
	}
}

package warn_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// benchTop is an L of a given number of outline points with a front that waves,
// a sink, a set of taps, a river and a cabinet below.
func benchTop(points int) *top {
	outline := geom.Loop{}
	n := points - 4
	for i := range n {
		x := 1800 * float64(i) / float64(n-1)
		outline = append(outline, geom.Vec{X: x, Y: 25 * math.Sin(x/120)})
	}
	outline = append(outline, geom.Vec{X: 1800, Y: 560}, geom.Vec{X: 600, Y: 560},
		geom.Vec{X: 600, Y: 1500}, geom.Vec{Y: 1500})
	t := newTop(38, outline)
	t.sink("s", ring(geom.Vec{X: 1100, Y: 290}, 200))
	for _, x := range []float64{1000, 1100, 1200} {
		t.hole("t", slab.OpeningTap, geom.Vec{X: x, Y: 525}, 35)
	}
	t.hole("h", slab.OpeningHole, geom.Vec{X: 300, Y: 300}, 60)
	var left, right geom.Loop
	for i := range 300 {
		x := -40 + 2.5*float64(i)
		y := 200 + 60*math.Sin(x/90)
		left, right = append(left, geom.Vec{X: x, Y: y}), append(right, geom.Vec{X: x, Y: y + 40})
	}
	r := t.channel("r", 9, append(left, right.Reversed()...))
	r.Fill = design.Fill{Resin: true, Glass: &design.GlassFill{Grain: mm(4)}}
	r.Open = []slab.OpenEnd{{At: geom.Vec{Y: 200}, Width: 40}}
	for _, b := range []geom.Loop{rect(20, 40, 40, 1480), rect(560, 40, 580, 1480), rect(1760, 40, 1780, 540),
		rect(20, 540, 1780, 560), rect(20, 1460, 580, 1480), rect(580, 40, 1760, 60)} {
		t.bearing(b)
	}
	t.weigh(110, geom.Vec{X: 700, Y: 500})
	t.site = design.Site{DoorWidth: mm(760), DoorHeight: mm(1980), StairWidth: mm(900), StairTurn: mm(1100)}
	t.design.Finish.Grind = mm(1.5)
	return t
}

func BenchmarkCheck(b *testing.B) {
	for _, n := range []int{20, 200, 2_000, 20_000} {
		b.Run(fmt.Sprintf("n=%d", n), func(b *testing.B) {
			t := benchTop(n)
			b.ReportAllocs()
			for b.Loop() {
				t.check()
			}
		})
	}
}

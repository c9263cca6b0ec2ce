package template_test

import (
	"math"
	"testing"

	"example.org/castwright/model/template"
)

// Scans of walls: lengths and ends by hand.
func TestWalls(t *testing.T) {
	for _, c := range []struct {
		name, data string
		length     float64
		x0, x1     float64
		lines      int
	}{
		{"a polyline from right to left", dxfOf(4, "0 LWPOLYLINE 70 0 10 1200 20 0 10 600 20 8 10 0 20 0"), 2 * math.Hypot(600, 8), 0, 1200, 1},
		{"lines in any order", dxfOf(4, lines([4]float64{600, 8, 1200, 0}, [4]float64{600.05, 8, 0, 0})), 2 * math.Hypot(600, 8), 0, 1200, 1},
		{"with a closed outline beside it", dxfOf(4, "0 CIRCLE 10 0 20 400 40 50 "+lines([4]float64{0, 0, 500, 0})), 500, 0, 500, 1},
		{"two walls", dxfOf(4, lines([4]float64{0, 0, 100, 0}, [4]float64{0, 50, 400, 50})), 400, 0, 400, 2},
		{"in inches", dxfOf(1, lines([4]float64{0, 0, 10, 0})), 254, 0, 254, 1},
		{"an arc", dxfOf(4, "0 ARC 10 0 20 0 40 100 50 0 51 180"), math.Pi * 100, -100, 100, 1},
		{"svg", svgOf(`<path fill="none" d="M0 0L100 5L200 0"/>`), 2 * math.Hypot(100, 5), 0, 200, 1},
	} {
		got, err := template.Walls([]byte(c.data), template.UnitUnknown)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if len(got) != c.lines {
			t.Errorf("%s: %d lines, want %d", c.name, len(got), c.lines)
		}
		l, sum := got[0], 0.0
		for i := 1; i < len(l); i++ {
			sum += l[i].Dist(l[i-1])
		}
		near(t, c.name+": length", sum, c.length, 5e-4) // an arc is cut into chords
		if math.Abs(l[0].X-c.x0) > 1e-9 || math.Abs(l[len(l)-1].X-c.x1) > 1e-9 {
			t.Errorf("%s: from %v to %v", c.name, l[0], l[len(l)-1])
		}
	}
	for _, data := range []string{"", dxfOf(0, lines([4]float64{0, 0, 9, 0})), dxfOf(4, "0 CIRCLE 10 0 20 0 40 5")} {
		if got, err := template.Walls([]byte(data), template.UnitUnknown); err == nil {
			t.Errorf("%d lines in %q", len(got), data)
		}
	}
}

func BenchmarkRead(b *testing.B) {
	var grid [][4]float64
	for i := range 5000 {
		grid = append(grid, box(float64(i%100)*30, float64(i/100)*30, 20, 20)...)
	}
	data := []byte(dxfOf(4, lines(grid...)))
	b.ReportAllocs()
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if _, err := template.Read(data, template.UnitUnknown); err != nil {
			b.Fatal(err)
		}
	}
}

package template_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/template"
	"example.org/castwright/model/units"
)

// A square with one side bowed out to a half disc, in either direction: area
// a2 + pi a2/8, perimeter 3a + pi a/2. The centroid of a half disc lies
// 4r/(3 pi) from its chord (standard result, status M).
func TestMeasure(t *testing.T) {
	const a = 200.0
	at := func(x, y float64) design.Point {
		return design.Point{X: units.FromMM(x), Y: units.FromMM(y)}
	}
	forward := []design.Node{{At: at(0, 0)}, {At: at(a, 0)}, {At: at(a, a)}, {At: at(0, a)}}
	forward[1].Edge = design.Edge{Curve: design.CurveArc, Rise: units.FromMM(a / 2)}
	backward := []design.Node{{At: at(0, 0)}, {At: at(0, a)}, {At: at(a, a)}, {At: at(a, 0)}}
	backward[2].Edge = design.Edge{Curve: design.CurveArc, Rise: units.FromMM(-a / 2)}
	half := math.Pi * a * a / 8
	x := (a*a*a/2 + half*(a+4*a/2/3/math.Pi)) / (a*a + half)
	for _, nodes := range [][]design.Node{forward, backward} {
		area, perimeter, c := template.Measure(nodes)
		for _, v := range [][2]float64{{area, a*a + half}, {perimeter, 3*a + math.Pi*a/2}, {c.X, x}, {c.Y, a / 2}} {
			if math.Abs(v[0]-v[1]) > 1e-6 {
				t.Errorf("%g, want %g", v[0], v[1])
			}
		}
	}
	if area, perimeter, _ := template.Measure(nil); area != 0 || perimeter != 0 {
		t.Error("nothing has a measure")
	}
}

package template

import (
	"math"
	"testing"

	"example.org/castwright/model/geom"
)

// A span's area alone is that of its moments.
func TestAreaAlone(t *testing.T) {
	v := func(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }
	for _, s := range []span{
		{a: v(1, 2), b: v(30, -4)},
		{kind: arc, a: v(1, 2), b: v(30, -4), bulge: 0.3},
		{kind: arc, a: v(1, 2), b: v(30, -4), bulge: -2.5},
		{kind: arc, a: v(1, 2), b: v(30, -4), bulge: 1},
		{kind: cubic, a: v(1, 2), b: v(30, -4), c1: v(-20, 40), c2: v(60, 9)},
	} {
		want, _, _ := s.moments(v(7, 5))
		if got := s.area(v(7, 5)); math.Abs(got-want) > 1e-9*math.Abs(want) {
			t.Errorf("%+v: %.12g, want %.12g", s, got, want)
		}
	}
}

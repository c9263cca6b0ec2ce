package slab_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
)

// Builders of the designs that the tests measure; millimetres throughout.

func mm(x float64) units.Length { return units.FromMM(x) }

func pt(x, y float64) design.Point { return design.Point{X: mm(x), Y: mm(y)} }

func profile(k design.ProfileKind, size float64) design.Profile {
	return design.Profile{Kind: k, Size: mm(size)}
}

func nodes(xy ...float64) []design.Node {
	var out []design.Node
	for i := 0; i < len(xy); i += 2 {
		out = append(out, design.Node{At: pt(xy[i], xy[i+1])})
	}
	return out
}

// top is a design of a slab with these nodes, every edge with the profile p.
func top(thickness float64, p design.Profile, n []design.Node) design.Design {
	for i := range n {
		n[i].Edge.Profile = p
	}
	return design.Design{Outline: design.Outline{Nodes: n}, Thickness: mm(thickness)}
}

func rectangle(w, h float64) []design.Node { return nodes(0, 0, w, 0, w, h, 0, h) }

// roundTop is a circle of radius r about (x, y) in two arcs.
func roundTop(x, y, r float64) []design.Node {
	n := nodes(x-r, y, x+r, y)
	for i := range n {
		n[i].Edge.Curve = design.CurveArc
		n[i].Edge.Rise = mm(r)
	}
	return n
}

// polar is a regular polygon or, with a second radius, a star.
func polar(x, y float64, count int, radii ...float64) []design.Node {
	var xy []float64
	for i := range count * len(radii) {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(count*len(radii)))
		r := radii[i%len(radii)]
		xy = append(xy, x+r*c, y+r*s)
	}
	return nodes(xy...)
}

func with(d design.Design, edit func(*design.Design)) design.Design {
	edit(&d)
	return d
}

func sinkShape(k design.ShapeKind, w, h float64) design.Shape {
	return design.Shape{Kind: k, Width: mm(w), Depth: mm(h)}
}

// same fails the test where got is off want by more than the share rel of want,
// or by a billionth.
func same(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if off := math.Abs(got - want); !(off <= rel*math.Abs(want)+1e-9) {
		t.Errorf("%s: got %.10g, want %.10g, off by %.2g of it", what, got, want, off/math.Abs(want))
	}
}

// near fails the test where got is off want by more than tol.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.10g, want %.10g, off by %.3g, allowed %.2g", what, got, want, got-want, tol)
	}
}

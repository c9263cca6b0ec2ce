package template

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// nodes is a closed chain as a design writes it, rounded to the nanometre.
func nodes(c chain) []design.Node {
	out := make([]design.Node, len(c))
	for i, s := range c {
		out[i] = design.Node{At: point(s.a)}
		switch s.kind {
		case arc:
			chord := point(s.b).Sub(point(s.a))
			length := geom.Vec{X: chord.X.MM(), Y: chord.Y.MM()}.Norm()
			out[i].Edge.Curve = design.CurveArc
			out[i].Edge.Rise = units.FromMM(s.bulge * length / 2)
		case cubic:
			out[i].Edge.Curve = design.CurveSpline
			out[i].Edge.C1, out[i].Edge.C2 = point(s.c1), point(s.c2)
		}
	}
	return out
}

func point(p geom.Vec) design.Point {
	return design.Point{X: units.FromMM(p.X), Y: units.FromMM(p.Y)}
}

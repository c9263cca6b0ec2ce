package template

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// Measure gives the area (mm2), the perimeter (mm) and the centroid of a closed
// chain in either direction, exact for lines, arcs and cubics to rounding;
// corners are taken as they come.
func Measure(nodes []design.Node) (area, perimeter float64, centroid geom.Vec) {
	c := make(chain, len(nodes))
	for i, n := range nodes {
		c[i] = span{a: vec(n.At), b: vec(nodes[(i+1)%len(nodes)].At)}
		switch n.Edge.Curve {
		case design.CurveArc:
			if chord := c[i].a.Dist(c[i].b); chord > 0 {
				c[i].kind, c[i].bulge = arc, 2*n.Edge.Rise.MM()/chord
			}
		case design.CurveSpline:
			c[i].kind, c[i].c1, c[i].c2 = cubic, vec(n.Edge.C1), vec(n.Edge.C2)
		}
	}
	s := newShape(c)
	if s.area > 0 {
		centroid = s.first.Mul(1 / s.area).Add(s.box.Centre())
	}
	return s.area, s.length, centroid
}

func vec(p design.Point) geom.Vec { return geom.Vec{X: p.X.MM(), Y: p.Y.MM()} }

package edit

import (
	"fmt"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// JoinEdges makes one edge of edge i and the one after it, with the side and
// profile of the first: the same line, circle or spline where both are parts
// of one, else the spline that leaves and arrives in their directions and
// passes the corner that was between them, if there is one.
func JoinEdges(i int) Edit {
	return chainEdit("Join edges", func(nodes []design.Node) ([]design.Node, edgeMap, error) {
		if err := atEdge(nodes, i); err != nil {
			return nil, nil, err
		}
		corner := (i + 1) % len(nodes)
		p, q := spanOf(nodes, i), spanOf(nodes, corner)
		whole := mergeSpans(p, q)
		if whole.kind == design.CurveStraight && !straightOn(p, q) {
			whole = smoothJoin(p, q)
		}
		m := joined(nodes, corner)
		if len(nodes) < 3 {
			return nil, nil, fmt.Errorf("edge %d: the outline would have one edge left: keep two", i+1)
		}
		if len(nodes) == 3 && whole.kind == design.CurveStraight &&
			spanOf(nodes, (i+2)%len(nodes)).kind == design.CurveStraight {
			return nil, nil, fmt.Errorf("edge %d: the outline would have no area left: keep three corners", i+1)
		}
		nodes[i].Edge = whole.edge(nodes[i].Edge)
		return slices.Delete(nodes, corner, corner+1), m, nil
	})
}

// straightOn reports whether two spans are lines, the second in the first's
// direction.
func straightOn(p, q span) bool {
	if p.kind != design.CurveStraight || q.kind != design.CurveStraight {
		return false
	}
	way := span{kind: design.CurveStraight, a: p.a, b: q.b}
	return way.meets(p.b)
}

// smoothJoin is the cubic from the start of p to the end of q that leaves and
// arrives in their directions. Its handles are such that it passes the end of
// p at the share of the way that the chord of p makes of both; where no such
// handles point forward they are a third of the chord.
func smoothJoin(p, q span) span {
	out := span{kind: design.CurveSpline, a: p.a, b: q.b}
	from, to := geom.Tangent(p.curve(), 0), geom.Tangent(q.curve(), 1)
	u, v := p.a.Dist(p.b), q.a.Dist(q.b)
	t := ratio(u, u+v)
	// The corner is the cubic at t: two equations for the two handles.
	w0, w1, w2, w3 := (1-t)*(1-t)*(1-t), 3*(1-t)*(1-t)*t, 3*(1-t)*t*t, t*t*t
	rest := p.b.Sub(p.a.Mul(w0 + w1)).Sub(q.b.Mul(w2 + w3))
	first, second := from.Mul(w1), to.Mul(-w2)
	third := out.a.Dist(out.b) / 3
	h1, h2 := third, third
	if det := first.Cross(second); det != 0 {
		a, b := rest.Cross(second)/det, first.Cross(rest)/det
		if a > 0 && b > 0 && a < 100*(u+v) && b < 100*(u+v) {
			h1, h2 = a, b
		}
	}
	out.c1, out.c2 = out.a.Add(from.Mul(h1)), out.b.Sub(to.Mul(h2))
	return out
}

// SmoothCorner lets the two edges at corner i run into each other without a
// bend: both become splines whose handles at the corner lie in one line, along
// the chord from the corner before to the one after, each a third of its
// edge's chord long. At their other ends the edges keep their directions.
func SmoothCorner(i int) Edit {
	return outlineEdit("Smooth corner", func(nodes []design.Node) ([]design.Node, error) {
		if err := atCorner(nodes, i); err != nil {
			return nil, err
		}
		before := (i + len(nodes) - 1) % len(nodes)
		p, q := spanOf(nodes, before), spanOf(nodes, i)
		way := q.b.Sub(p.a)
		if way.Norm() == 0 || p.a == p.b || q.a == q.b {
			return nil, fmt.Errorf("corner %d: its edges lead back to where they come from: "+
				"add a corner first", i+1)
		}
		if p.kind != design.CurveSpline {
			p = p.as(design.CurveSpline)
		}
		if q.kind != design.CurveSpline {
			q = q.as(design.CurveSpline)
		}
		way = way.Unit()
		p.c2 = p.b.Sub(way.Mul(p.a.Dist(p.b) / 3))
		q.c1 = q.a.Add(way.Mul(q.a.Dist(q.b) / 3))
		nodes[before].Edge = p.edge(nodes[before].Edge)
		nodes[i].Edge = q.edge(nodes[i].Edge)
		nodes[i].Corner = design.Corner{}
		return nodes, nil
	})
}

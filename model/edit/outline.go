package edit

import (
	"fmt"
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// SetOutline gives the top another outline; all that lies on it stays, but for
// what relations hold to it. A river's end that stays on an edge goes to the
// nearest place on the new outline.
func SetOutline(o design.Outline) Edit {
	nodes := slices.Clone(o.Nodes)
	return newEdit("Change outline", func(d design.Design) (design.Design, error) {
		if len(nodes) < 2 {
			return d, fmt.Errorf("an outline needs at least 2 corners and has %d: add corners", len(nodes))
		}
		d.Relations = remapped(d.Relations, nearestAgain(d.Outline.Nodes, nodes))
		d.Outline.Nodes = slices.Clone(nodes)
		return d, nil
	})
}

// MoveNode puts corner i at a place. The handles that two spline edges have at
// the corner go with it, so that the curve keeps its direction there; an arc
// keeps its rise.
func MoveNode(i int, to design.Point) Edit {
	return outlineEdit("Move corner", func(nodes []design.Node) ([]design.Node, error) {
		if err := atCorner(nodes, i); err != nil {
			return nil, err
		}
		shiftNode(nodes, i, to.Sub(nodes[i].At))
		return nodes, nil
	})
}

// MoveEdge moves edge i with both its ends; the neighbouring edges stay
// attached to it.
func MoveEdge(i int, by design.Point) Edit {
	return outlineEdit("Move edge", func(nodes []design.Node) ([]design.Node, error) {
		if err := atEdge(nodes, i); err != nil {
			return nil, err
		}
		shiftNode(nodes, i, by)
		shiftNode(nodes, (i+1)%len(nodes), by)
		return nodes, nil
	})
}

// InsertNode splits edge i at the point of it nearest to a place. The outline
// stays as it was, to the nanometre: an arc keeps its circle and a spline its
// curve. Both parts keep side and profile; the new corner is square.
func InsertNode(i int, at design.Point) Edit {
	return chainEdit("Add corner", func(nodes []design.Node) ([]design.Node, edgeMap, error) {
		if err := atEdge(nodes, i); err != nil {
			return nil, nil, err
		}
		return insertNode(nodes, i, at)
	})
}

// RemoveNode takes corner i away. The edge that arrives there runs on to the
// next corner with its side and profile: along the same circle or the same
// spline where both edges were parts of one, else straight.
func RemoveNode(i int) Edit {
	return chainEdit("Remove corner", func(nodes []design.Node) ([]design.Node, edgeMap, error) {
		if err := atCorner(nodes, i); err != nil {
			return nil, nil, err
		}
		m := joined(nodes, i)
		nodes, err := removeNode(nodes, i)
		return nodes, m, err
	})
}

// outlineEdit is an edit of the outline's nodes; f may write into the slice
// that it is given.
func outlineEdit(name string, f func([]design.Node) ([]design.Node, error)) Edit {
	return chainEdit(name, func(nodes []design.Node) ([]design.Node, edgeMap, error) {
		nodes, err := f(nodes)
		return nodes, nil, err
	})
}

// chainEdit is an edit of the outline that splits or joins edges, and says by
// a map where their places have come to; nil when all stay.
func chainEdit(name string, f func([]design.Node) ([]design.Node, edgeMap, error)) Edit {
	return newEdit(name, func(d design.Design) (design.Design, error) {
		nodes, m, err := f(slices.Clone(d.Outline.Nodes))
		if err != nil {
			return d, err
		}
		if m != nil {
			d.Relations = remapped(d.Relations, m)
		}
		d.Outline.Nodes = nodes
		return d, nil
	})
}

func atCorner(nodes []design.Node, i int) error { return atIndex(nodes, i, "corner") }
func atEdge(nodes []design.Node, i int) error   { return atIndex(nodes, i, "edge") }

func atIndex(nodes []design.Node, i int, noun string) error {
	if i >= 0 && i < len(nodes) {
		return nil
	}
	if len(nodes) == 0 {
		return fmt.Errorf("%s %d: there is no outline yet: draw or pick one first", noun, i+1)
	}
	return fmt.Errorf("%s %d: the outline has %ss 1 to %d: pick one of these",
		noun, i+1, noun, len(nodes))
}

// shiftNode moves a node of a closed chain and the spline handles at it.
func shiftNode(nodes []design.Node, i int, by design.Point) {
	nodes[i].At = nodes[i].At.Add(by)
	if nodes[i].Edge.Curve == design.CurveSpline {
		nodes[i].Edge.C1 = nodes[i].Edge.C1.Add(by)
	}
	before := (i + len(nodes) - 1) % len(nodes)
	if nodes[before].Edge.Curve == design.CurveSpline {
		nodes[before].Edge.C2 = nodes[before].Edge.C2.Add(by)
	}
}

func insertNode(nodes []design.Node, i int, at design.Point) ([]design.Node, edgeMap, error) {
	s := spanOf(nodes, i)
	left, right := s.split(s.nearest(vec(at)))
	mid := point(left.b)
	next := nodes[(i+1)%len(nodes)].At
	if mid == nodes[i].At || mid == next {
		return nil, nil, fmt.Errorf("edge %d: the new corner would lie on the edge's end: "+
			"pick a place farther along the edge", i+1)
	}
	e := nodes[i].Edge
	nodes[i].Edge = left.edge(e)
	share := ratio(left.curve().Length(), s.curve().Length())
	return slices.Insert(nodes, i+1, design.Node{At: mid, Edge: right.edge(e)}), parted(i, share), nil
}

func removeNode(nodes []design.Node, i int) ([]design.Node, error) {
	before := (i + len(nodes) - 1) % len(nodes)
	merged := mergeSpans(spanOf(nodes, before), spanOf(nodes, i))
	rest := len(nodes) - 1
	if rest < 2 || rest == 2 && merged.kind == design.CurveStraight &&
		spanOf(nodes, (i+1)%len(nodes)).kind == design.CurveStraight {
		return nil, fmt.Errorf("corner %d: the outline would have no area left: "+
			"keep at least three corners", i+1)
	}
	nodes[before].Edge = merged.edge(nodes[before].Edge)
	return slices.Delete(nodes, i, i+1), nil
}

// sameCurve is how near, in millimetres, two spans must come to being parts of
// one curve to be joined as that curve.
const sameCurve = 0.001

// mergeSpans joins two spans that follow each other into one from the start of
// the first to the end of the second.
func mergeSpans(p, q span) span {
	straight := span{kind: design.CurveStraight, a: p.a, b: q.b}
	if p.kind != q.kind || p.a == q.b {
		return straight
	}
	switch p.kind {
	case design.CurveArc:
		// The chords turn at the joint by half of what the whole arc sweeps.
		u, v := p.b.Sub(p.a), q.b.Sub(q.a)
		turn := math.Atan2(u.Cross(v), u.Dot(v))
		whole := span{kind: design.CurveArc, a: p.a, b: q.b,
			rise: q.b.Dist(p.a) / 2 * math.Tan(turn/2)}
		if whole.rise == 0 || !whole.meets(p.curve().At(0.5)) || !whole.meets(q.curve().At(0.5)) {
			return straight
		}
		return whole
	case design.CurveSpline:
		in, out := p.b.Sub(p.c2), q.c1.Sub(q.a)
		if in.Norm() == 0 || out.Norm() == 0 {
			return straight
		}
		// De Casteljau's construction parts the middle handle as t to 1 - t.
		t := in.Norm() / (in.Norm() + out.Norm())
		whole := span{kind: design.CurveSpline, a: p.a, b: q.b,
			c1: p.a.Add(p.c1.Sub(p.a).Mul(1 / t)),
			c2: q.b.Add(q.c2.Sub(q.b).Mul(1 / (1 - t)))}
		if whole.curve().At(t).Dist(p.b) > sameCurve {
			return straight
		}
		return whole
	}
	return straight
}

// meets reports whether a point lies on the span.
func (s span) meets(p geom.Vec) bool {
	return s.curve().At(s.nearest(p)).Dist(p) <= sameCurve
}

// checkLength refuses a length that is below least or beyond what a design
// holds.
func checkLength(what string, l, least units.Length) error {
	if l < least {
		switch least {
		case 0:
			return fmt.Errorf("%s is %s mm: give 0 or more", what, mm(l))
		case units.Nanometre:
			return fmt.Errorf("%s is %s mm: give a length above zero", what, mm(l))
		}
		return fmt.Errorf("%s is %s mm: give at least %s mm", what, mm(l), mm(least))
	}
	return checkBound(what, l)
}

func checkBound(what string, l units.Length) error {
	if l > units.MaxLength || l < -units.MaxLength {
		return fmt.Errorf("%s is %s mm, beyond the %s mm that a drawing holds: give less",
			what, mm(l), mm(units.MaxLength))
	}
	return nil
}

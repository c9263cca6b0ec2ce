package slab

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// reach bounds every coordinate that the engine computes with, in millimetres
// from the origin: what lies beyond is drawn in to it, with a fault.
const reach = 20_000

// vec is a point of the design in millimetres, drawn in to the reach.
func vec(p design.Point) geom.Vec {
	return geom.Vec{X: clamp(p.X.MM(), -reach, reach), Y: clamp(p.Y.MM(), -reach, reach)}
}

func clamp(x, lo, hi float64) float64 { return math.Max(lo, math.Min(hi, x)) }

// edgeCurve is the curve of a node's edge, before any corner is cut.
func edgeCurve(n design.Node, next design.Node) geom.Curve {
	a, b := vec(n.At), vec(next.At)
	switch n.Edge.Curve {
	case design.CurveArc:
		return geom.ArcByRise(a, b, clamp(n.Edge.Rise.MM(), -reach, reach))
	case design.CurveSpline:
		return geom.Cubic{P0: a, P1: vec(n.Edge.C1), P2: vec(n.Edge.C2), P3: b}
	}
	return geom.Line{A: a, B: b}
}

// piece is one smooth part of a chain: an edge less what its corners take, or
// half of a corner's cut.
type piece struct {
	curve  geom.Curve
	node   int // whose edge carries it
	corner int // whose corner it is half of, -1 for an edge
}

// misfit is a corner that can't be cut as asked and was left square.
type misfit struct {
	node int
	most float64 // the largest size that fits, 0 when none does or unknown
}

// chain turns nodes into the pieces of a closed chain in order, starting at
// node 0, or at the middle of its corner's cut.
func chain(nodes []design.Node) ([]piece, []misfit) {
	n := len(nodes)
	if n < 2 {
		return nil, nil
	}
	edges := make([]geom.Curve, n)
	for i, nd := range nodes {
		edges[i] = edgeCurve(nd, nodes[(i+1)%n])
	}
	cuts, misfits := cutCorners(nodes, edges)
	var out []piece
	for i, e := range edges {
		next := (i + 1) % n
		if c := cuts[i]; c.curve != nil {
			out = append(out, piece{c.curve.Sub(0.5, 1), i, i})
		}
		t0, t1 := cuts[i].tb, cuts[next].ta
		if cuts[i].curve == nil {
			t0 = 0
		}
		if cuts[next].curve == nil {
			t1 = 1
		}
		if t0 > 0 || t1 < 1 {
			if t1 < t0 {
				t1 = t0
			}
			e = e.Sub(t0, t1)
		}
		if e.Length() > 1e-7 {
			out = append(out, piece{e, i, -1})
		}
		if c := cuts[next]; c.curve != nil {
			out = append(out, piece{c.curve.Sub(0, 0.5), i, next})
		}
	}
	return out, misfits
}

// cut is what a corner takes: it leaves the arriving edge at ta and joins the
// leaving one at tb. No curve means a square corner.
type cut struct {
	curve  geom.Curve
	ta, tb float64
}

func cutCorner(c design.Corner, size float64, arriving, leaving geom.Curve) (cut, bool) {
	switch c.Kind {
	case design.CornerRounded:
		ta, tb, arc, ok := geom.Fillet(arriving, leaving, size)
		return cut{arc, ta, tb}, ok
	case design.CornerChamfered:
		ta, tb, line, ok := geom.Chamfer(arriving, leaving, size)
		return cut{line, ta, tb}, ok
	}
	return cut{}, false
}

// wanted reports whether a corner asks for a cut at all: it has a size and its
// edges do not meet smoothly.
func wanted(c design.Corner, arriving, leaving geom.Curve) bool {
	if c.Kind == design.CornerSquare || c.Kind > design.CornerChamfered || c.Size <= 0 {
		return false
	}
	u, v := geom.Tangent(arriving, 1), geom.Tangent(leaving, 0)
	return math.Abs(math.Atan2(u.Cross(v), u.Dot(v))) > geom.SmoothTurn
}

// cutCorners works out every corner's cut. Where one does not fit, alone or
// beside its neighbour's, the larger one is left square and reported.
func cutCorners(nodes []design.Node, edges []geom.Curve) ([]cut, []misfit) {
	n := len(nodes)
	cuts := make([]cut, n)
	bad := map[int]bool{}
	for i, nd := range nodes {
		arriving := edges[(i+n-1)%n]
		if !wanted(nd.Corner, arriving, edges[i]) {
			continue
		}
		c, ok := cutCorner(nd.Corner, nd.Corner.Size.MM(), arriving, edges[i])
		if ok {
			cuts[i] = c
		} else {
			bad[i] = true
		}
	}
	for i := range edges {
		next := (i + 1) % n
		a, b := cuts[i], cuts[next]
		if a.curve == nil || b.curve == nil || a.tb <= b.ta+1e-9 {
			continue
		}
		drop := next
		if nodes[i].Corner.Size > nodes[next].Corner.Size {
			drop = i
		}
		cuts[drop] = cut{}
		bad[drop] = true
	}
	var misfits []misfit
	for i := range nodes {
		if bad[i] {
			misfits = append(misfits, misfit{node: i})
		}
	}
	return cuts, misfits
}

package slab

import (
	"fmt"
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
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
	nodes = some(nodes, maxPoints)
	n := len(nodes)
	if n < 2 {
		return nil, nil
	}
	edges := make([]geom.Curve, n)
	for i, nd := range nodes {
		edges[i] = edgeCurve(nd, nodes[(i+1)%n])
	}
	return join(nodes, edges)
}

// join cuts the corners of nodes, which are joined by edges.
func join(nodes []design.Node, edges []geom.Curve) ([]piece, []misfit) {
	n := len(nodes)
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

// pieceCurves is the pieces' curves.
func pieceCurves(pieces []piece) []geom.Curve {
	out := make([]geom.Curve, len(pieces))
	for i, p := range pieces {
		out[i] = p.curve
	}
	return out
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
	return turnAt(arriving, leaving) > geom.SmoothTurn
}

// turnAt is the angle, in radians and positive, by which the direction of travel
// turns from one curve to the next.
func turnAt(arriving, leaving geom.Curve) float64 {
	u, v := geom.Tangent(arriving, 1), geom.Tangent(leaving, 0)
	return math.Abs(math.Atan2(u.Cross(v), u.Dot(v)))
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
			m := misfit{node: i}
			if len(misfits) < maxFitted {
				m.most = largestFit(nodes, edges, cuts, i)
			}
			misfits = append(misfits, m)
		}
	}
	return cuts, misfits
}

// maxFitted is for how many corners of a chain the size that would fit is sought.
const maxFitted = 16

// largestFit is the largest size of a corner that fits between its edges and the
// cuts of its neighbours, by bisection; 0 when none does.
func largestFit(nodes []design.Node, edges []geom.Curve, cuts []cut, i int) float64 {
	n := len(nodes)
	before, after := (i+n-1)%n, (i+1)%n
	from, to := 0.0, 1.0
	if cuts[before].curve != nil {
		from = cuts[before].tb
	}
	if cuts[after].curve != nil {
		to = cuts[after].ta
	}
	lo, hi := 0.0, nodes[i].Corner.Size.MM()
	for range 24 {
		mid := (lo + hi) / 2
		if c, ok := cutCorner(nodes[i].Corner, mid, edges[before], edges[i]); ok && c.ta >= from && c.tb <= to {
			lo = mid
		} else {
			hi = mid
		}
	}
	if lo < 0.01 {
		return 0
	}
	return lo
}

// misfits reports the corners of a chain that could not be cut. The chain's
// origin stands at place.A and its x-axis runs along the vector place.B; the zero
// Line is the design's own frame.
func (r *resolver) misfits(field string, part design.ID, nodes []design.Node, misfits []misfit, place geom.Line) {
	for _, m := range misfits {
		n := nodes[m.node]
		at := vec(n.At)
		if place != (geom.Line{}) {
			at = place.A.Add(at.Turn(math.Atan2(place.B.Y, place.B.X)))
		}
		what := "radius"
		if n.Corner.Kind == design.CornerChamfered {
			what = "chamfer"
		}
		do := fmt.Sprintf("at most %.2f mm fits", math.Floor(m.most*100)/100)
		if m.most == 0 {
			do = "no size fits; make it square or lengthen its edges"
		}
		r.fault(design.RuleCorner, part, fmt.Sprintf("%s[%d].corner.size_mm", field, m.node), at,
			"corner %d has a %s of %s mm, which does not fit between its edges: %s; until then it stays square",
			m.node+1, what, units.DecimalMM(n.Corner.Size), do)
	}
}

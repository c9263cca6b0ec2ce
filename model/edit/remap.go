package edit

import (
	"math"
	"slices"

	"example.org/castwright/model/design"
)

// edgeMap says where a place on an edge of the outline, at a share of its
// length, comes to lie when edges are split, joined or turned.
type edgeMap func(edge int, share float64) (int, float64)

// remapped are relations with their edges as a map has it.
func remapped(relations []design.Relation, m edgeMap) []design.Relation {
	var out []design.Relation
	for i, r := range relations {
		if r.Kind != design.RelationEdge {
			continue
		}
		edge, share := m(r.Edge, r.Along)
		if edge == r.Edge && share == r.Along {
			continue
		}
		if out == nil {
			out = slices.Clone(relations)
		}
		out[i].Edge, out[i].Along = edge, fine(share)
	}
	if out == nil {
		return relations
	}
	return out
}

// fine is a share of an edge to the twelfth decimal: a length of less than a
// nanometre on any edge, and exact when it is turned about.
func fine(share float64) float64 { return math.Round(share*1e12) / 1e12 }

// parted is the map of splitting edge i at these shares of its length, which
// ascend.
func parted(i int, at ...float64) edgeMap {
	return func(edge int, share float64) (int, float64) {
		switch {
		case edge < i:
			return edge, share
		case edge > i:
			return edge + len(at), share
		}
		from := 0.0
		for k, to := range at {
			if share <= to {
				return i + k, ratio(share-from, to-from)
			}
			from = to
		}
		return i + len(at), ratio(share-from, 1-from)
	}
}

// joined is the map of taking corner i away from a chain of these nodes.
func joined(nodes []design.Node, i int) edgeMap {
	before := (i + len(nodes) - 1) % len(nodes)
	first := spanOf(nodes, before).curve().Length()
	second := spanOf(nodes, i).curve().Length()
	after := func(edge int) int {
		if edge > i {
			return edge - 1
		}
		return edge
	}
	return func(edge int, share float64) (int, float64) {
		switch edge {
		case before:
			return after(before), ratio(share*first, first+second)
		case i:
			return after(before), ratio(first+share*second, first+second)
		}
		return after(edge), share
	}
}

func ratio(a, b float64) float64 {
	if b == 0 {
		return 0
	}
	return min(1, max(0, a/b))
}

// nearestAgain is the map from one outline to quite another: what lay on an
// edge lies where the new outline comes nearest.
func nearestAgain(before, after []design.Node) edgeMap {
	return func(edge int, share float64) (int, float64) {
		if edge < 0 || edge >= len(before) || len(after) == 0 {
			return edge, share
		}
		to, s, _ := nearestEdge(after, vec(onEdge(before, edge, share)))
		return to, s
	}
}

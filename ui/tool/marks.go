package tool

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/ui/words"
)

// mark is a place that the snap can hold something on or in line with. Those of
// the outline are many: they are named when they hold.
type mark struct {
	at   geom.Vec
	kind markKind
	node int
	what string    // of a markNamed: "the hole"; of a markCentre: "the sink"
	of   design.ID // of a markCentre: the part, "" for the top, or cabinetID
}

type markKind uint8

const (
	markNamed  markKind = iota
	markCentre          // the middle of a thing that has centrelines
	markCorner          // a corner of the outline
	markEdge            // the middle of an edge of the outline
)

// name says what a mark is, for the outline that it was taken from.
func (m mark) name(nodes []design.Node) string {
	switch {
	case m.kind == markCorner && m.node < len(nodes):
		return "the " + small(words.Corner(design.Outline{Nodes: nodes}, m.node))
	case m.kind == markEdge && m.node < len(nodes):
		return "the middle of the " + edgeName(nodes, m.node)
	case m.kind == markCentre:
		return "the middle of " + m.what
	}
	return m.what
}

// marks are the places of a design that a moving thing can be held in line
// with, less those that move along with it.
func marks(d design.Design, s slab.Solid, moved []grip) []mark {
	var out []mark
	still := outlineStill(d.Outline.Nodes, moved)
	for i, n := range d.Outline.Nodes {
		j := wrap(i+1, len(d.Outline.Nodes))
		if still[i] {
			out = append(out, mark{at: vec(n.At), kind: markCorner, node: i})
		}
		if still[i] && still[j] {
			out = append(out, mark{at: edgeMiddle(d.Outline.Nodes, i), kind: markEdge, node: i})
		}
	}
	if len(s.Outline) > 0 && allStill(still) {
		out = append(out, mark{at: s.Outline.Bounds().Centre(), kind: markCentre, what: "the top"})
	}
	if m, ok := cabinetMiddle(s, moved); ok {
		out = append(out, mark{at: m, kind: markCentre, what: "the cabinet", of: cabinetID})
	}
	for _, k := range d.Sinks {
		if !moves(moved, k.ID) {
			out = append(out, mark{at: vec(k.At), kind: markCentre, what: "the " + partName(d, k.ID), of: k.ID})
		}
	}
	for _, t := range d.Taps {
		if at, ok := tapPlace(t, s); ok && !moves(moved, t.ID) && (t.Sink == "" || !moves(moved, t.Sink)) {
			out = append(out, mark{at: at, what: "the " + partName(d, t.ID)})
		}
	}
	for _, k := range d.Holes {
		if !moves(moved, k.ID) {
			out = append(out, mark{at: vec(k.At), what: "the " + partName(d, k.ID)})
		}
	}
	return out
}

// outlineStill says of each corner of the outline whether it stays.
func outlineStill(nodes []design.Node, moved []grip) []bool {
	still := make([]bool, len(nodes))
	for i := range still {
		still[i] = true
	}
	for _, g := range moved {
		if g.node < 0 || g.node >= len(nodes) {
			continue
		}
		switch g.kind {
		case gripCorner:
			still[g.node] = false
		case gripEdge:
			still[g.node], still[wrap(g.node+1, len(nodes))] = false, false
		}
	}
	return still
}

func allStill(still []bool) bool {
	for _, s := range still {
		if !s {
			return false
		}
	}
	return true
}

// moves reports whether a part is among what is moved.
func moves(moved []grip, id design.ID) bool {
	for _, g := range moved {
		if id != "" && g.part == id {
			return true
		}
	}
	return false
}

// cabinetMiddle is the middle of all gables, rails and legs.
func cabinetMiddle(s slab.Solid, moved []grip) (geom.Vec, bool) {
	b := geom.EmptyBox()
	count := 0
	for _, k := range s.Bearings {
		if k.Kind == design.SupportWall || k.Kind == design.SupportBracket || moves(moved, k.Part) {
			continue
		}
		count++
		for _, p := range k.Line {
			b = b.Include(p)
		}
	}
	c := b.Centre()
	return c, count >= 2 && !math.IsNaN(c.X+c.Y)
}

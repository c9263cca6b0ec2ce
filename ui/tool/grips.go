package tool

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
)

// Bounds on how many handles are offered at once: more could not be told apart.
const (
	maxNodeHandles  = 400
	maxWidthHandles = 40
	thinOut         = 14 // points between the nodes of a region that are offered
)

// grips are the handles of what is selected and of the edge under the mouse,
// besides the outline's corners, which can always be taken.
func (h *Hand) grips(perMM float64) []grip {
	d := h.s.Design()
	var out []grip
	if h.over.kind == gripEdge || h.over.kind == gripBend {
		out = append(out, grip{kind: gripBend, node: h.over.node})
	}
	sel := h.s.Selection()
	if len(sel) != 1 || !gripOf(sel[0]).exists(d) {
		return out
	}
	g := gripOf(sel[0])
	if _, locked := h.lockedOf(g); locked || g.part != "" && h.s.Hidden(g.part) {
		return out
	}
	switch g.kind {
	case gripCorner:
		before := wrap(g.node-1, len(d.Outline.Nodes))
		out = append(out, grip{kind: gripRadius, node: g.node})
		out = append(out, controls(d, g.node, 0)...)
		out = append(out, controls(d, before, 1)...)
	case gripEdge:
		if h.over.node != g.node || h.over.kind != gripEdge && h.over.kind != gripBend {
			out = append(out, grip{kind: gripBend, node: g.node})
		}
		out = append(out, controls(d, g.node, 0)...)
		out = append(out, controls(d, g.node, 1)...)
	case gripPart:
		p, _ := find(d, g.part)
		out = append(out, partGrips(p, g.part, perMM)...)
	}
	return out
}

// controls is a control point of an edge, if it has any.
func controls(d design.Design, node, side int) []grip {
	if d.Outline.Nodes[node].Edge.Curve != design.CurveSpline {
		return nil
	}
	return []grip{{kind: gripControl, node: node, side: side}}
}

// partGrips are the nodes of a part.
func partGrips(p part, id design.ID, perMM float64) []grip {
	var out []grip
	if p.sink != nil {
		if p.sink.Shape.Kind != design.ShapePath {
			out = append(out, grip{kind: gripSize, part: id})
			if p.sink.Shape.Kind != design.ShapeCircle {
				out = append(out, grip{kind: gripSize, part: id, side: 1})
			}
		}
		out = append(out, grip{kind: gripTurn, part: id})
	}
	if p.taps != nil && p.taps.Sink == "" {
		out = append(out, grip{kind: gripTurn, part: id})
	}
	if p.channel != nil {
		for r, river := range p.channel.Rivers {
			for n := range river.Nodes {
				out = append(out, grip{kind: gripRiver, part: id, group: r, node: n})
			}
		}
		if len(out) <= maxWidthHandles {
			for _, g := range out {
				out = append(out,
					grip{kind: gripWidth, part: id, group: g.group, node: g.node, side: 0},
					grip{kind: gripWidth, part: id, group: g.group, node: g.node, side: 1})
			}
		}
	}
	for r, region := range p.regions() {
		for c := 0; c <= len(region.Islands); c++ {
			var last geom.Vec
			for n, node := range chainOf(region, c) {
				// Of nodes that could not be told apart at this zoom one stands for
				// its neighbours.
				if at := vec(node.At); n == 0 || at.Dist(last) >= thinOut/perMM {
					last = at
					out = append(out, grip{kind: gripNode, part: id, group: r, chain: c, node: n})
				}
			}
		}
	}
	if p.support != nil {
		for n := range p.support.Line {
			out = append(out, grip{kind: gripEnd, part: id, node: n})
		}
	}
	return out
}

// splitRiver is the edit that puts a node into the river of a channel that runs
// under a double click, and the grip of that node.
func splitRiver(c design.Channel, p Pointer) (edit.Edit, grip, bool) {
	best, river, before := math.Inf(1), -1, 0
	for r, rv := range c.Rivers {
		for i := 0; i+1 < len(rv.Nodes); i++ {
			a, b := vec(rv.Nodes[i].At), vec(rv.Nodes[i+1].At)
			half := (rv.Nodes[i].Width.MM() + rv.Nodes[i+1].Width.MM()) / 4
			near := p.At.Dist(nearest(p.At, a, b))
			if near < best && near <= half+p.reach(reachEdge) {
				best, river, before = near, r, i+1
			}
		}
	}
	if river < 0 {
		return edit.Edit{}, grip{}, false
	}
	return edit.InsertRiverNode(c.ID, river, before, point(p.At)),
		grip{kind: gripRiver, part: c.ID, group: river, node: before}, true
}

// handleKind is how a grip is drawn.
func (g grip) handleKind() HandleKind {
	switch g.kind {
	case gripRadius:
		return HandleRadius
	case gripBend:
		return HandleBend
	case gripControl:
		return HandleControl
	case gripWidth, gripSize:
		return HandleWidth
	case gripTurn:
		return HandleTurn
	case gripRiver, gripEnd:
		return HandleNode
	}
	return HandleCorner
}

// stalk is where a control's stalk is rooted.
func (g grip) stalk(d design.Design, at geom.Vec) geom.Vec {
	nodes := d.Outline.Nodes
	switch {
	case g.kind == gripTurn:
		if p, ok := find(d, g.part); ok && p.sink != nil {
			// From the bowl's rim.
			in := at.Sub(vec(p.sink.At))
			return vec(p.sink.At).Add(in.Mul(0.72))
		} else if ok && p.taps != nil {
			return vec(p.taps.At)
		}
	case g.kind == gripControl && g.side == 0:
		return vec(nodes[g.node].At)
	case g.kind == gripControl:
		return vec(nodes[wrap(g.node+1, len(nodes))].At)
	case g.kind == gripRadius:
		return vec(nodes[g.node].At)
	}
	return at
}

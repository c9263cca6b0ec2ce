package tool

import (
	"math"

	"example.org/castwright/model/geom"
)

// Cursor is the shape of the mouse pointer over what lies under it.
func (h *Hand) Cursor() Cursor {
	if h.put != nil || h.pen != nil || h.free != nil {
		return CursorCross
	}
	if h.tool == Pan {
		return CursorHand
	}
	if h.overBond != nil && h.hold == nil {
		return CursorHand
	}
	g := h.over
	if h.hold != nil {
		g = h.hold.grip
	}
	nodes := h.s.Design().Outline.Nodes
	if !g.exists(h.s.Design()) {
		return CursorDefault
	}
	switch g.kind {
	case gripCorner, gripControl, gripRiver, gripNode, gripEnd:
		return CursorCross
	case gripEdge, gripBend:
		a, b := edgeEnds(nodes, g.node)
		return along(outward(a, b))
	case gripRadius:
		dir, _, _ := bisector(nodes, g.node)
		return along(dir)
	case gripWidth:
		p, _ := find(h.s.Design(), g.part)
		return along(bank(p.channel.Rivers[g.group], g.node, g.side))
	case gripPart:
		return CursorHand
	}
	return CursorDefault
}

// along is the cursor for dragging along a direction.
func along(u geom.Vec) Cursor {
	const steep = 0.3826834 // sine of 22.5 degrees
	switch {
	case math.Abs(u.Y) <= steep:
		return CursorEastWest
	case math.Abs(u.X) <= steep:
		return CursorNorthSouth
	case u.X*u.Y > 0:
		return CursorRising
	}
	return CursorFalling
}

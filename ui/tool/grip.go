package tool

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/ui/session"
)

// gripKind says what a hand can take hold of.
type gripKind uint8

const (
	gripNone    gripKind = iota
	gripTop              // the face: it does not move
	gripCorner           // a corner of the outline
	gripEdge             // an edge of the outline
	gripBend             // the middle of an edge of the outline
	gripRadius           // the size of a corner of the outline
	gripControl          // a control point of a spline edge of the outline
	gripPart             // a part as a whole
	gripRiver            // a node of a river's centreline
	gripWidth            // a river's width at a node
	gripNode             // a corner of a region
	gripEnd              // a point of a support
	gripSize             // the width or depth of a sink's bowl: side 0 or 1
	gripTurn             // the turn of a sink or of tap holes
)

// grip is one thing to take hold of. It is comparable.
type grip struct {
	kind  gripKind
	part  design.ID // of a part's grips
	group int       // which river or region
	chain int       // of a region: 0 the outer chain, k its island k-1
	node  int       // corner, edge or node
	side  int       // 0 or 1: which control point, or bank (right, left)
}

// pick is the grip as a selection.
func (g grip) pick() session.Pick {
	switch g.kind {
	case gripCorner, gripRadius:
		return session.Pick{Node: g.node}
	case gripEdge, gripBend, gripControl:
		return session.Pick{Node: g.node, Edge: true}
	}
	return session.Pick{Part: g.part, Node: -1}
}

// gripOf is the grip that stands for a selection.
func gripOf(p session.Pick) grip {
	switch {
	case p.Part != "":
		return grip{kind: gripPart, part: p.Part}
	case p.Node < 0:
		return grip{kind: gripTop}
	case p.Edge:
		return grip{kind: gripEdge, node: p.Node}
	}
	return grip{kind: gripCorner, node: p.Node}
}

// whole is the grip of the part or edge or corner that g belongs to.
func (g grip) whole() grip { return gripOf(g.pick()) }

// part looks a part up in a design.
type part struct {
	sink    *design.Sink
	taps    *design.TapSet
	hole    *design.Hole
	channel *design.Channel
	bed     *design.GlassBed
	support *design.Support
}

func find(d design.Design, id design.ID) (part, bool) {
	switch kind, i := d.Find(id); kind {
	case design.PartSink:
		return part{sink: &d.Sinks[i]}, true
	case design.PartTaps:
		return part{taps: &d.Taps[i]}, true
	case design.PartHole:
		return part{hole: &d.Holes[i]}, true
	case design.PartChannel:
		return part{channel: &d.Channels[i]}, true
	case design.PartGlass:
		return part{bed: &d.Glass[i]}, true
	case design.PartSupport:
		return part{support: &d.Supports[i]}, true
	}
	return part{}, false
}

// regions are the regions of a channel or glass bed.
func (p part) regions() []design.Region {
	switch {
	case p.channel != nil:
		return p.channel.Regions
	case p.bed != nil:
		return []design.Region{p.bed.Region}
	}
	return nil
}

// chainOf is the chain of a region that a grip speaks of.
func chainOf(r design.Region, chain int) []design.Node {
	if chain == 0 {
		return r.Outer
	}
	if chain-1 < len(r.Islands) {
		return r.Islands[chain-1]
	}
	return nil
}

// exists reports whether the design still has what the grip speaks of.
func (g grip) exists(d design.Design) bool {
	n := len(d.Outline.Nodes)
	switch g.kind {
	case gripTop:
		return n > 0
	case gripCorner, gripEdge, gripBend, gripRadius, gripControl:
		return g.node >= 0 && g.node < n
	}
	p, ok := find(d, g.part)
	if !ok {
		return false
	}
	switch g.kind {
	case gripPart:
		return true
	case gripSize:
		return p.sink != nil && p.sink.Shape.Kind != design.ShapePath
	case gripTurn:
		return p.sink != nil || p.taps != nil && p.taps.Sink == ""
	case gripRiver, gripWidth:
		return p.channel != nil && g.group < len(p.channel.Rivers) &&
			g.node < len(p.channel.Rivers[g.group].Nodes)
	case gripNode:
		rs := p.regions()
		return g.group < len(rs) && g.node < len(chainOf(rs[g.group], g.chain))
	case gripEnd:
		return p.support != nil && g.node < len(p.support.Line)
	}
	return false
}

// anchor is the place that stands for the grip: what moves when it is dragged.
// ok is false when the design has no such thing.
func (g grip) anchor(d design.Design, s slab.Solid, perMM float64) (at geom.Vec, ok bool) {
	if !g.exists(d) {
		return geom.Vec{}, false
	}
	nodes := d.Outline.Nodes
	p, _ := find(d, g.part)
	switch g.kind {
	case gripTop:
		return s.Outline.Bounds().Centre(), len(s.Outline) > 0
	case gripCorner:
		return vec(nodes[g.node].At), true
	case gripEdge:
		a, b := edgeEnds(nodes, g.node)
		return a.Lerp(b, 0.5), true
	case gripBend:
		return edgeMiddle(nodes, g.node), nodes[g.node].Edge.Curve != design.CurveSpline
	case gripRadius:
		return radiusHandle(nodes, g.node, perMM)
	case gripControl:
		if nodes[g.node].Edge.Curve != design.CurveSpline {
			return geom.Vec{}, false
		}
		if g.side == 0 {
			return vec(nodes[g.node].Edge.C1), true
		}
		return vec(nodes[g.node].Edge.C2), true
	case gripPart:
		return partPlace(p, s, g.part)
	case gripRiver:
		return vec(p.channel.Rivers[g.group].Nodes[g.node].At), true
	case gripWidth:
		r := p.channel.Rivers[g.group]
		half := r.Nodes[g.node].Width.MM() / 2
		return vec(r.Nodes[g.node].At).Add(bank(r, g.node, g.side).Mul(widthArm(half, perMM))), true
	case gripNode:
		return vec(chainOf(p.regions()[g.group], g.chain)[g.node].At), true
	case gripEnd:
		return vec(p.support.Line[g.node]), true
	case gripSize:
		u, half := sizeArm(*p.sink, g.side)
		return vec(p.sink.At).Add(u.Mul(math.Max(half, sizeOut/perMM))), true
	case gripTurn:
		return turnHandle(p, s, g.part, perMM)
	}
	return geom.Vec{}, false
}

// sizeArm is the unit vector from a sink's centre to the handle of its width
// (side 0, at its right) or depth (side 1, at its front), and half of that size.
func sizeArm(k design.Sink, side int) (u geom.Vec, half float64) {
	right := geom.Vec{X: 1}.Turn(k.Rotation.Radians())
	if side == 0 || k.Shape.Kind == design.ShapeCircle {
		return right, k.Shape.Width.MM() / 2
	}
	return right.Left().Mul(-1), k.Shape.Depth.MM() / 2
}

// turnHandle is where the knob lies that turns a part: beyond its corner at the
// right front, clear of the taps behind it.
func turnHandle(p part, s slab.Solid, id design.ID, perMM float64) (geom.Vec, bool) {
	if p.taps != nil {
		b := geom.EmptyBox()
		for _, l := range loopsOf(s, id) {
			b = b.Union(l.Bounds())
		}
		half := 0.0
		if !b.Empty() {
			half = math.Hypot(b.W(), b.H()) / 2
		}
		u := geom.Vec{X: 1}.Turn(p.taps.Rotation.Radians())
		return vec(p.taps.At).Add(u.Mul(half + turnOut/perMM)), true
	}
	k := p.sink
	depth := k.Shape.Depth.MM()
	if k.Shape.Kind == design.ShapeCircle {
		depth = k.Shape.Width.MM()
	}
	arm := geom.Vec{X: k.Shape.Width.MM() / 2, Y: -depth / 2}
	if k.Shape.Kind == design.ShapePath {
		b := geom.EmptyBox()
		for _, n := range k.Shape.Path {
			b = b.Include(vec(n.At))
		}
		arm = geom.Vec{X: b.Max.X, Y: b.Min.Y}
	}
	arm = arm.Add(arm.Unit().Mul(turnOut / perMM))
	return vec(k.At).Add(arm.Turn(k.Rotation.Radians())), true
}

// radiusHandle is where the handle of a corner's size lies: inside the corner,
// on its bisector, at the centre of its arc, but never so near to the corner
// that it can't be told from it.
func radiusHandle(nodes []design.Node, i int, perMM float64) (geom.Vec, bool) {
	dir, sin, ok := bisector(nodes, i)
	if !ok {
		return geom.Vec{}, false
	}
	size := 0.0
	if nodes[i].Corner.Kind != design.CornerSquare {
		size = nodes[i].Corner.Size.MM()
	}
	return vec(nodes[i].At).Add(dir.Mul(radiusOut/perMM + size/sin)), true
}

// widthArm is how far a river's width handle lies from its centreline.
func widthArm(half, perMM float64) float64 { return math.Max(half, widthOut/perMM) }

// bank is the unit vector from a river's node to its bank: side 0 is to the
// right of the flow, 1 to the left.
func bank(r design.River, node, side int) geom.Vec {
	n := len(r.Nodes)
	lo, hi := max(node-1, 0), min(node+1, n-1)
	dir := vec(r.Nodes[hi].At).Sub(vec(r.Nodes[lo].At)).Unit()
	if dir == (geom.Vec{}) {
		dir = geom.Vec{X: 1}
	}
	if side == 0 {
		return dir.Left().Mul(-1)
	}
	return dir.Left()
}

// partPlace is the place that stands for a part: a sink's or hole's centre, the
// middle of all else.
func partPlace(p part, s slab.Solid, id design.ID) (geom.Vec, bool) {
	switch {
	case p.sink != nil:
		return vec(p.sink.At), true
	case p.hole != nil:
		return vec(p.hole.At), true
	case p.taps != nil:
		return tapPlace(*p.taps, s)
	}
	b := geom.EmptyBox()
	add := func(at design.Point) { b = b.Include(vec(at)) }
	for _, r := range p.regions() {
		for _, n := range r.Outer {
			add(n.At)
		}
	}
	if p.channel != nil {
		for _, r := range p.channel.Rivers {
			for _, n := range r.Nodes {
				add(n.At)
			}
		}
	}
	if p.support != nil {
		for _, at := range p.support.Line {
			add(at)
		}
	}
	return b.Centre(), !b.Empty()
}

// tapPlace is the middle of a set's holes as they lie on the top.
func tapPlace(t design.TapSet, s slab.Solid) (geom.Vec, bool) {
	b := geom.EmptyBox()
	for _, o := range s.Openings {
		if o.Part == t.ID {
			b = b.Include(o.Centre)
		}
	}
	if b.Empty() {
		return vec(t.At), true
	}
	return b.Centre(), true
}

// loopsOf are a part's loops as they lie on the top: its cut-outs, recess, bed
// or bearing.
func loopsOf(s slab.Solid, id design.ID) []geom.Loop {
	var out []geom.Loop
	for _, o := range s.Openings {
		if o.Part == id {
			out = append(out, o.Loop)
		}
	}
	for _, b := range s.Bowls {
		if b.Part == id {
			out = append(out, b.Loop)
		}
	}
	for _, r := range s.Recesses {
		if r.Part == id {
			out = append(out, r.Loops...)
		}
	}
	for _, b := range s.Beds {
		if b.Part == id {
			out = append(out, b.Loops...)
		}
	}
	for _, b := range s.Bearings {
		if b.Part == id {
			out = append(out, b.Loops...)
		}
	}
	return out
}

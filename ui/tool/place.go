package tool

import (
	"fmt"
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// own reports whether dragging the grip changes a measure of its own (a radius,
// a rise, a width) and not a place.
func (g grip) own() bool {
	return g.kind == gripBend || g.kind == gripRadius || g.kind == gripWidth || g.kind == gripSize || g.kind == gripTurn
}

// moveBy is the edit that takes the grip, and all that is held with it, from
// where it was in d by a way.
func (g grip) moveBy(d design.Design, others []grip, by design.Point) (edit.Edit, error) {
	if len(others) > 0 {
		return moveAll(d, append([]grip{g}, others...), by)
	}
	nodes := d.Outline.Nodes
	switch g.kind {
	case gripCorner:
		return edit.MoveNode(g.node, nodes[g.node].At.Add(by)), nil
	case gripEdge:
		return edit.MoveEdge(g.node, by), nil
	case gripControl:
		e := nodes[g.node].Edge
		if g.side == 0 {
			return edit.SetSpline(g.node, e.C1.Add(by), e.C2), nil
		}
		return edit.SetSpline(g.node, e.C1, e.C2.Add(by)), nil
	case gripPart:
		return edit.MovePart(g.part, by), nil
	}
	p, _ := find(d, g.part)
	switch g.kind {
	case gripRiver:
		at := p.channel.Rivers[g.group].Nodes[g.node].At
		return edit.MoveRiverNode(g.part, g.group, g.node, at.Add(by)), nil
	case gripNode:
		at := chainOf(p.regions()[g.group], g.chain)[g.node].At
		return edit.MoveRegionNode(g.part, g.group, g.chain, g.node, at.Add(by)), nil
	case gripEnd:
		return edit.MoveSupportPoint(g.part, g.node, p.support.Line[g.node].Add(by)), nil
	}
	return edit.Edit{}, fmt.Errorf("the top itself is not moved: drag its corners or edges")
}

// moveAll moves several things together. Corners that belong to several edges
// move once.
func moveAll(d design.Design, all []grip, by design.Point) (edit.Edit, error) {
	var steps []edit.Edit
	moved := map[int]bool{}
	corner := func(i int) {
		if i = wrap(i, len(d.Outline.Nodes)); !moved[i] {
			moved[i] = true
			steps = append(steps, edit.MoveNode(i, d.Outline.Nodes[i].At.Add(by)))
		}
	}
	for _, g := range all {
		switch g.kind {
		case gripCorner:
			corner(g.node)
		case gripEdge:
			corner(g.node)
			corner(g.node + 1)
		case gripPart:
			// Tap holes that keep to a sink go with it by themselves.
			if p, ok := find(d, g.part); ok && p.taps != nil && moves(all, p.taps.Sink) {
				continue
			}
			steps = append(steps, edit.MovePart(g.part, by))
		default:
			return edit.Edit{}, fmt.Errorf("this can't be moved together with others: select it alone")
		}
	}
	if ids, ok := onlyParts(all); ok {
		return edit.MoveParts(ids, by), nil
	}
	return edit.Together(fmt.Sprintf("Move %d things", len(all)), steps...), nil
}

// onlyParts are the parts that the grips speak of, if all are whole parts.
func onlyParts(gs []grip) ([]design.ID, bool) {
	ids := make([]design.ID, len(gs))
	for i, g := range gs {
		if g.kind != gripPart {
			return nil, false
		}
		ids[i] = g.part
	}
	return ids, true
}

// measure is the grip's own measure (of a corner: its radius or cut) when its
// handle, at anchor in d, is dragged to target: millimetres, or degrees.
func (g grip) measure(d design.Design, anchor, target geom.Vec) float64 {
	nodes := d.Outline.Nodes
	by := target.Sub(anchor)
	switch g.kind {
	case gripBend:
		rise := 0.0
		if nodes[g.node].Edge.Curve == design.CurveArc {
			rise = nodes[g.node].Edge.Rise.MM()
		}
		a, b := edgeEnds(nodes, g.node)
		return rise + by.Dot(outward(a, b))
	case gripRadius, gripCorner:
		dir, sin, ok := bisector(nodes, g.node)
		if !ok {
			return 0
		}
		size := 0.0
		if nodes[g.node].Corner.Kind != design.CornerSquare {
			size = nodes[g.node].Corner.Size.MM()
		}
		return math.Max(0, size+by.Dot(dir)*sin)
	case gripWidth:
		p, ok := find(d, g.part)
		if !ok {
			return 0
		}
		r := p.channel.Rivers[g.group]
		return math.Max(0, r.Nodes[g.node].Width.MM()+2*by.Dot(bank(r, g.node, g.side)))
	case gripSize:
		if p, ok := find(d, g.part); ok && p.sink != nil {
			u, arm := sizeArm(*p.sink, g.side)
			return math.Max(0, 2*(arm+by.Dot(u)))
		}
	case gripTurn:
		p, ok := find(d, g.part)
		if !ok {
			return 0
		}
		at, now := geom.Vec{}, 0.0
		switch {
		case p.sink != nil:
			at, now = vec(p.sink.At), p.sink.Rotation.Degrees()
		case p.taps != nil:
			at, now = vec(p.taps.At), p.taps.Rotation.Degrees()
		}
		from, to := anchor.Sub(at), target.Sub(at)
		return half(now + math.Atan2(from.Cross(to), from.Dot(to))*180/math.Pi)
	}
	return 0
}

// half is an angle in degrees brought to more than minus half a turn and at most
// half of one.
func half(degrees float64) float64 {
	d := math.Mod(degrees, 360)
	switch {
	case d > 180:
		return d - 360
	case d <= -180:
		return d + 360
	}
	return d
}

// setMeasure is the edit that gives the grip its own measure.
func (g grip) setMeasure(d design.Design, l units.Length) (edit.Edit, error) {
	switch g.kind {
	case gripBend:
		return edit.BendEdge(g.node, l), nil
	case gripRadius, gripCorner:
		kind := d.Outline.Nodes[g.node].Corner.Kind
		if kind == design.CornerSquare {
			kind = design.CornerRounded
		}
		if l == 0 {
			kind = design.CornerSquare
		}
		return edit.SetCorner(g.node, design.Corner{Kind: kind, Size: l}), nil
	case gripWidth:
		return edit.SetRiverWidth(g.part, g.group, g.node, l), nil
	}
	return edit.Edit{}, fmt.Errorf("this has no measure of its own")
}

// remove is the edit that takes the grip's thing away.
func (g grip) remove(d design.Design) (edit.Edit, error) {
	switch g.kind {
	case gripCorner, gripRadius:
		return edit.RemoveNode(g.node), nil
	case gripEdge, gripBend, gripControl:
		return edit.Edit{}, fmt.Errorf("an edge can't be removed by itself: remove one of its corners")
	case gripPart:
		return edit.RemovePart(g.part), nil
	case gripRiver, gripWidth:
		return edit.RemoveRiverNode(g.part, g.group, g.node), nil
	case gripNode:
		return removeRegionNode(d, g)
	case gripEnd:
		return removeSupportPoint(d, g)
	}
	return edit.Edit{}, fmt.Errorf("the top itself can't be removed: draw or pick another outline")
}

// removeRegionNode takes a corner out of a region's chain.
func removeRegionNode(d design.Design, g grip) (edit.Edit, error) {
	p, _ := find(d, g.part)
	chain := chainOf(p.regions()[g.group], g.chain)
	if len(chain) <= 3 {
		return edit.Edit{}, fmt.Errorf("a region needs three corners: remove the whole %s",
			partName(d, g.part))
	}
	return changeChain(d, g, append(append([]design.Node(nil), chain[:g.node]...), chain[g.node+1:]...))
}

// changeChain is the edit that puts another chain in the place of a region's.
func changeChain(d design.Design, g grip, chain []design.Node) (edit.Edit, error) {
	p, _ := find(d, g.part)
	r := p.regions()[g.group]
	if g.chain == 0 {
		r.Outer = chain
	} else {
		r.Islands = append([][]design.Node(nil), r.Islands...)
		r.Islands[g.chain-1] = chain
	}
	if p.bed != nil {
		bed := *p.bed
		bed.Region = r
		return edit.SetGlass(bed), nil
	}
	c := *p.channel
	c.Regions = append([]design.Region(nil), c.Regions...)
	c.Regions[g.group] = r
	return edit.SetChannel(c), nil
}

func removeSupportPoint(d design.Design, g grip) (edit.Edit, error) {
	p, _ := find(d, g.part)
	least := 2
	if p.support.Patch {
		least = 3
	}
	if len(p.support.Line) <= least {
		return edit.Edit{}, fmt.Errorf("a support needs %d points: remove the whole %s",
			least, partName(d, g.part))
	}
	k := *p.support
	k.Line = append(append([]design.Point(nil), k.Line[:g.node]...), k.Line[g.node+1:]...)
	return edit.SetSupport(k), nil
}

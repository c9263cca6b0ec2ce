package slab

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// resolveOutline lays out the sides of the top. An outline that runs clockwise is
// measured the other way round.
func (r *resolver) resolveOutline() {
	nodes := r.d.Outline.Nodes
	pieces, misfits := chain(nodes)
	r.misfits("outline.nodes", "", nodes, misfits, geom.Line{})
	runs := make([]ringRun, len(pieces))
	sides := make([]Side, len(pieces))
	for i, p := range pieces {
		edge := nodes[p.node].Edge
		runs[i] = ringRun{geom.FlattenCoarsely(nil, p.curve, Tolerance, r.most), p.curve.Length(), edge.Profile}
		sides[i] = Side{
			Node: p.node, Corner: p.corner, Length: runs[i].length,
			Wall: edge.Side == design.SideWall, Profile: edge.Profile,
		}
	}
	loop, _ := loopOf(runs)
	if len(loop) < 3 || loop.Area() == 0 {
		return
	}
	if loop.Area() < 0 {
		runs = reversed(runs)
		for i, j := 0, len(sides)-1; i < j; i, j = i+1, j-1 {
			sides[i], sides[j] = sides[j], sides[i]
		}
		loop, _ = loopOf(runs)
	}
	for i, u := range runs {
		line := make([]geom.Vec, len(u.vertices))
		for k, v := range u.vertices {
			line[k] = v.P
		}
		line[len(line)-1] = runs[(i+1)%len(runs)].vertices[0].P
		sides[i].Points = line
	}
	r.solid.Outline, r.solid.Sides = loop, sides
	r.top = newRing(runs, r.solid.Thickness)
	r.fence = geom.NewFence(loop)
}

package slab

import (
	"math"

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
	length := 0.0
	for _, p := range pieces {
		length += p.curve.Length()
	}
	r.tolerance = Tolerance * clamp(length/fullSize, leastTolerance, 1)
	vertices := make([]geom.Vertex, 0, 4*len(pieces)) // of all runs
	for i, p := range pieces {
		edge := nodes[p.node].Edge
		from := len(vertices)
		vertices = geom.FlattenCoarsely(vertices, p.curve, r.fineness(p.curve, edge.Profile), r.most)
		runs[i] = ringRun{vertices[from:len(vertices):len(vertices)], p.curve.Length(), edge.Profile}
		sides[i] = Side{
			Node: p.node, Corner: p.corner, Length: runs[i].length,
			Wall: edge.Side == design.SideWall, Profile: edge.Profile,
		}
	}
	loop, _ := loopOf(runs)
	if len(loop) < 3 || math.Abs(loop.Area()) < leastArea {
		if len(nodes) > 0 {
			r.fault(design.RuleDegenerate, "", "outline.nodes", vec(nodes[0].At),
				"the outline encloses no area: move its nodes apart")
		}
		return
	}
	r.crossing("outline.nodes", "", "the outline", loop)
	if loop.Area() < 0 {
		r.fault(design.RuleDirection, "", "outline.nodes", vec(nodes[0].At),
			"the outline runs clockwise: reverse the order of its nodes; until then it is measured the other way round")
		runs = reversed(runs)
		for i, j := 0, len(sides)-1; i < j; i, j = i+1, j-1 {
			sides[i], sides[j] = sides[j], sides[i]
		}
		loop, _ = loopOf(runs)
	}
	points := make([]geom.Vec, 0, len(loop)+len(runs)) // of all sides
	for i, u := range runs {
		from := len(points)
		for _, v := range u.vertices[:len(u.vertices)-1] {
			points = append(points, v.P)
		}
		points = append(points, runs[(i+1)%len(runs)].vertices[0].P)
		sides[i].Points = points[from:len(points):len(points)]
	}
	for _, p := range pieces {
		r.curves[wholeTop] = append(r.curves[wholeTop], p.curve)
	}
	r.solid.Outline, r.solid.Sides = loop, sides
	r.top = newRing(runs, r.solid.Thickness)
	r.fence = geom.NewFence(loop)
}

// fullSize is the perimeter, in millimetres, from which on a top is flattened to
// Tolerance; a smaller one is flattened more finely in proportion, down to
// leastTolerance of it, so that its crossings are as good for its size. It takes
// the same number of steps.
const (
	fullSize       = 4000
	leastTolerance = 0.05
)

// leastArea is the area in mm2 below which a chain counts as having none.
const leastArea = 1e-3

// crossing reports a loop that crosses itself.
func (r *resolver) crossing(field string, part design.ID, name string, loop geom.Loop) {
	if at, crosses := r.sweep.Crossing(loop); crosses {
		r.fault(design.RuleCrossing, part, field, at,
			"%s crosses itself here: move its nodes or ease its curves; until then what it winds about counts as inside", name)
	}
}

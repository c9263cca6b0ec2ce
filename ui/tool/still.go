package tool

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// still is what lies still while something is moved: all that the snap can hold
// the moving thing to. It is gathered once for a gesture.
type still struct {
	d     design.Design
	s     slab.Solid
	marks []mark
	moved []bool // corners of the outline that move along
	lines []track
	edges bool // the moving thing may be held on an edge
	arms  []arm
	body  *body
	likes []like
}

// manyNodes bounds the outlines whose edges are compared with each other: a
// scanned wall has no two edges that were meant to be equal.
const manyNodes = 400

// arm is an edge that runs from a still place to the one that moves.
type arm struct {
	fixed geom.Vec
	now   geom.Vec // its moving end as taken
	name  string   // "the front edge"
	edge  int      // of the outline, -1 for another chain
}

// like is a measure that another may be made equal to.
type like struct {
	value float64
	name  string // what has it: "the back edge"
	words string // instead of "equal to that of " and the name
	edge  int    // of the outline, -1 for none
}

// newStill gathers all that is seen.
func (h *Hand) newStill(g grip, others []grip, anchor geom.Vec) *still {
	d, r := h.s.Seen()
	return newStill(d, r.Solid, g, others, anchor)
}

// newStill gathers what lies still while the grips are moved; g is the one in
// hand.
func newStill(d design.Design, s slab.Solid, g grip, others []grip, anchor geom.Vec) *still {
	all := append([]grip{g}, others...)
	st := &still{d: d, s: s, marks: marks(d, s, all), moved: outlineStill(d.Outline.Nodes, all)}
	for i := range st.moved {
		st.moved[i] = !st.moved[i]
	}
	for _, k := range d.Sinks {
		if k.Rotation%(90_000_000) != 0 && !moves(all, k.ID) {
			up := geom.Vec{Y: 1}.Turn(k.Rotation.Radians())
			name := "the centreline of the " + partName(d, k.ID)
			st.lines = append(st.lines, line(vec(k.At), up, holdsCentre, name),
				line(vec(k.At), up.Left(), holdsCentre, name))
		}
	}
	if len(others) > 0 {
		return st
	}
	nodes := d.Outline.Nodes
	switch g.kind {
	case gripCorner:
		st.slopes()
		st.addArms(nodes, g.node, true)
	case gripEdge:
		n := len(nodes)
		before, after := wrap(g.node-1, n), wrap(g.node+1, n)
		if n > 3 {
			st.addArm(nodes, before, before, g.node, true)
			st.addArm(nodes, after, wrap(after+1, n), after, true)
		}
	case gripRiver, gripEnd:
		st.edges = true
	case gripNode:
		st.edges = true
		if p, ok := find(d, g.part); ok {
			st.addArms(chainOf(p.regions()[g.group], g.chain), g.node, false)
		}
	case gripControl:
		st.smooth(nodes, g)
	case gripPart:
		st.body = bodyOf(s, g.part, anchor)
		if p, ok := find(d, g.part); ok {
			st.body.below = p.support != nil
		}
	case gripBend:
		st.likes = riseLikes(nodes, g.node)
	case gripRadius:
		st.likes = radiusLikes(nodes, g.node)
	case gripSize:
		st.likes = bowlLikes(d, g)
	case gripWidth:
		if p, ok := find(d, g.part); ok && p.channel != nil {
			st.likes = widthLikes(p.channel.Rivers[g.group], g.node)
		}
	}
	if len(st.arms) > 0 && len(nodes) <= manyNodes {
		st.lengths(nodes)
	}
	return st
}

// lengths are those of the edges of the outline that keep theirs.
func (st *still) lengths(nodes []design.Node) {
	for i := range nodes {
		if !st.moved[i] && !st.moved[wrap(i+1, len(nodes))] {
			a, b := edgeEnds(nodes, i)
			st.likes = append(st.likes, like{value: a.Dist(b), name: "the " + edgeName(nodes, i), edge: i})
		}
	}
}

// addArms adds the two edges that meet in a node.
func (st *still) addArms(nodes []design.Node, node int, outline bool) {
	n := len(nodes)
	if n < 3 {
		return
	}
	before, after := wrap(node-1, n), wrap(node+1, n)
	st.addArm(nodes, before, before, node, outline)
	st.addArm(nodes, node, after, node, outline)
}

// addArm adds an edge, by the node that stays and the one that moves.
func (st *still) addArm(nodes []design.Node, edge, fixed, moving int, outline bool) {
	a := arm{fixed: vec(nodes[fixed].At), now: vec(nodes[moving].At), name: "the " + edgeName(nodes, edge), edge: -1}
	if outline {
		a.edge = edge
	}
	st.arms = append(st.arms, a)
}

// slopes adds the lines of the straight edges that run aslant; what is upright or
// level is held in line with their corners.
func (st *still) slopes() {
	nodes := st.d.Outline.Nodes
	if len(nodes) > manyNodes {
		return
	}
	for i, n := range nodes {
		a, b := edgeEnds(nodes, i)
		dir := b.Sub(a).Unit()
		if n.Edge.Curve != design.CurveStraight || st.moved[i] || st.moved[wrap(i+1, len(nodes))] ||
			math.Abs(dir.X) < 1e-6 || math.Abs(dir.Y) < 1e-6 {
			continue
		}
		st.lines = append(st.lines, line(a, dir, holdsLine, "the "+edgeName(nodes, i)))
	}
}

// edgeNear is the edge of the outline nearest to p, within reach.
func (st *still) edgeNear(p geom.Vec, reach float64) (track, bool) {
	best, found := reach, -1
	for i, side := range st.s.Sides {
		if len(side.Points) < 2 {
			continue
		}
		if dist, _ := distance(p, side.Points, false); dist <= best {
			best, found = dist, i
		}
	}
	if found < 0 {
		return track{}, false
	}
	nodes, side := st.d.Outline.Nodes, st.s.Sides[found]
	t := track{kind: holdsEdge, pts: side.Points}
	switch {
	case side.Corner >= 0 && side.Corner < len(nodes):
		t.name = "the " + cornerName(nodes, side.Corner)
	case side.Node < len(nodes):
		t.name = "the " + edgeName(nodes, side.Node)
		a, b := edgeEnds(nodes, side.Node)
		e := nodes[side.Node].Edge
		switch e.Curve {
		case design.CurveStraight:
			t.at, t.dir = a, b.Sub(a).Unit()
		case design.CurveArc:
			if arc, ok := geom.ArcByRise(a, b, e.Rise.MM()).(geom.Arc); ok {
				t.at, t.r = arc.Centre, arc.Radius
			}
		}
	}
	return t, true
}

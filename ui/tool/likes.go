package tool

import (
	"math"
	"strconv"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// armTrack holds the moving end of an edge at the length of another edge.
func (s snapper) armTrack(a arm, p geom.Vec) (track, bool) {
	l, ok := s.nearestLike(a, p.Dist(a.fixed))
	if !ok {
		return track{}, false
	}
	t := track{kind: holdsLength, at: a.fixed, r: l.value, words: s.likeWords(a, l),
		guide: []Line{{Points: []geom.Vec{a.fixed}}}}
	// Nearly level or upright it is a line, so that it can cross others.
	d := p.Sub(a.fixed)
	switch {
	case math.Abs(d.Y) <= s.reach:
		t.at, t.dir, t.r = a.fixed.Add(geom.Vec{X: math.Copysign(l.value, d.X)}), geom.Vec{Y: 1}, 0
	case math.Abs(d.X) <= s.reach:
		t.at, t.dir, t.r = a.fixed.Add(geom.Vec{Y: math.Copysign(l.value, d.Y)}), geom.Vec{X: 1}, 0
	}
	return t, true
}

// armAlong does so for an end that moves along u, if its edge does.
func (s snapper) armAlong(a arm, p, u geom.Vec) []track {
	way := a.now.Sub(a.fixed)
	if math.Abs(way.Cross(u)) > 1e-6*(1+way.Norm()) {
		return nil
	}
	sign := math.Copysign(1, way.Dot(u))
	l, ok := s.nearestLike(a, sign*(p.Dot(u)-a.fixed.Dot(u)))
	if !ok {
		return nil
	}
	at := a.fixed.Add(u.Mul(sign * l.value))
	return []track{{kind: holdsLength, at: at, dir: u.Left(), words: s.likeWords(a, l),
		guide: []Line{{Points: []geom.Vec{a.fixed, at}}}}}
}

// nearestLike is the edge whose length is nearest to x, within reach.
func (s snapper) nearestLike(a arm, x float64) (like, bool) {
	found, best := -1, s.reach
	for i, l := range s.likes {
		if d := math.Abs(l.value - x); d < best-1e-9 && (l.edge < 0 || l.edge != a.edge) {
			found, best = i, d
		}
	}
	if found < 0 {
		return like{}, false
	}
	return s.likes[found], true
}

func (s snapper) likeWords(a arm, l like) string {
	return capital(a.name) + " as long as " + l.name + ", " + s.length(l.value)
}

// riseLikes are the rises that an edge may be given: those at which its arc
// touches the edges beside it, and those of other arcs.
func riseLikes(nodes []design.Node, i int) []like {
	n := len(nodes)
	if n < 3 {
		return nil
	}
	var out []like
	a, b := edgeEnds(nodes, i)
	half := a.Dist(b) / 2
	along := b.Sub(a).Unit()
	// The tangent at an end is turned from the chord by half of the arc's angle
	// t, clockwise at the start and counter-clockwise at the end, and
	// rise = half chord * tan(t/4).
	touch := func(sign float64, dir geom.Vec, edge int) {
		turn := sign * math.Atan2(along.Cross(dir), along.Dot(dir))
		if rise := half * math.Tan(turn/2); math.Abs(turn) < 0.97*math.Pi && math.Abs(rise) > 1 {
			out = append(out, like{value: rise, words: "Tangent to the " + edgeName(nodes, edge), edge: -1})
		}
	}
	before, after := wrap(i-1, n), wrap(i+1, n)
	_, in := heading(nodes, before)
	touch(-1, in, before)
	next, _ := heading(nodes, after)
	touch(1, next, after)
	for j, k := range nodes {
		if j != i && n <= manyNodes && k.Edge.Curve == design.CurveArc {
			out = append(out, like{value: k.Edge.Rise.MM(), name: "the " + edgeName(nodes, j), edge: -1})
		}
	}
	return out
}

// radiusLikes are the sizes that a corner may be given: those of other corners,
// and the one at which its round meets that of a neighbour.
func radiusLikes(nodes []design.Node, i int) []like {
	n := len(nodes)
	if n < 3 || n > manyNodes {
		return nil
	}
	var out []like
	kind := nodes[i].Corner.Kind
	for j, k := range nodes {
		if j != i && k.Corner.Kind != design.CornerSquare && (kind == design.CornerSquare || k.Corner.Kind == kind) {
			out = append(out, like{value: k.Corner.Size.MM(), name: "the " + cornerName(nodes, j), edge: -1})
		}
	}
	if kind == design.CornerChamfered {
		return out
	}
	meet := func(edge, other int) {
		_, sin, ok := bisector(nodes, i)
		if nodes[edge].Edge.Curve != design.CurveStraight || !ok || sin >= 1 {
			return
		}
		a, b := edgeEnds(nodes, edge)
		// A round takes radius / tan(half the corner's angle) off each edge.
		r := (a.Dist(b) - cornerTakes(nodes, other)) * sin / math.Sqrt(1-sin*sin)
		if r > 0 {
			out = append(out, like{value: r, words: "The round meets the " + cornerName(nodes, other), edge: -1})
		}
	}
	meet(wrap(i-1, n), wrap(i-1, n))
	meet(i, wrap(i+1, n))
	return out
}

// cornerTakes is how much a corner's cut takes off each of its straight edges.
func cornerTakes(nodes []design.Node, i int) float64 {
	size := nodes[i].Corner.Size.MM()
	switch nodes[i].Corner.Kind {
	case design.CornerChamfered:
		return size
	case design.CornerRounded:
		if _, sin, ok := bisector(nodes, i); ok && sin > 0 {
			return size * math.Sqrt(1-sin*sin) / sin
		}
	}
	return 0
}

// widthLikes are the widths of a river at its other nodes.
func widthLikes(r design.River, node int) []like {
	var out []like
	for i, n := range r.Nodes {
		if i != node {
			out = append(out, like{value: n.Width.MM(), name: "point " + strconv.Itoa(i+1) + " of the river", edge: -1})
		}
	}
	return out
}

// bowlLikes are the same size of the other sinks.
func bowlLikes(d design.Design, g grip) []like {
	var out []like
	for _, k := range d.Sinks {
		if k.ID == g.part || k.Shape.Kind == design.ShapePath {
			continue
		}
		_, half := sizeArm(k, g.side)
		out = append(out, like{value: 2 * half, name: "the " + partName(d, k.ID), edge: -1})
	}
	return out
}

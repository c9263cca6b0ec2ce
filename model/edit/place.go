package edit

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// Centre is the place of a part by which it is held and put in line: of a sink
// or a hole its centre, of tap holes the place of the set, of a channel, a
// glass bed or a support the middle of the bounds of its points (of a glass
// bed, of its outer chain's). False when the part is not there or has no points.
func Centre(d design.Design, id design.ID) (design.Point, bool) {
	var b bounds
	switch kind, i := d.Find(id); kind {
	case design.PartSink:
		return d.Sinks[i].At, true
	case design.PartTaps:
		at, _ := tapsPlace(d, d.Taps[i])
		return at, true
	case design.PartHole:
		return d.Holes[i].At, true
	case design.PartChannel:
		for _, r := range d.Channels[i].Rivers {
			for _, n := range r.Nodes {
				b.add(n.At)
			}
		}
		for _, r := range d.Channels[i].Regions {
			b.chain(r.Outer)
		}
	case design.PartGlass:
		b.chain(d.Glass[i].Region.Outer)
	case design.PartSupport:
		for _, p := range d.Supports[i].Line {
			b.add(p)
		}
	}
	return b.middle()
}

// bounds are those of points; the zero value holds none.
type bounds struct {
	some     bool
	min, max design.Point
}

func (b *bounds) add(p design.Point) {
	if !b.some {
		b.some, b.min, b.max = true, p, p
		return
	}
	b.min = design.Point{X: min(b.min.X, p.X), Y: min(b.min.Y, p.Y)}
	b.max = design.Point{X: max(b.max.X, p.X), Y: max(b.max.Y, p.Y)}
}

func (b *bounds) chain(nodes []design.Node) {
	for _, n := range nodes {
		b.add(n.At)
	}
}

func (b *bounds) middle() (design.Point, bool) {
	return design.Point{X: (b.min.X + b.max.X) / 2, Y: (b.min.Y + b.max.Y) / 2}, b.some
}

// along is a point's coordinate on an axis.
func along(p design.Point, a design.Axis) units.Length {
	if a == design.AxisY {
		return p.Y
	}
	return p.X
}

// onAxis is the vector of a length on an axis.
func onAxis(l units.Length, a design.Axis) design.Point {
	if a == design.AxisY {
		return design.Point{Y: l}
	}
	return design.Point{X: l}
}

// reachOf is how far a part reaches along an axis for what is centred between
// it and another: a support with its width, any other part its centre alone.
func reachOf(d design.Design, id design.ID, a design.Axis) (lo, hi units.Length, ok bool) {
	for _, s := range d.Supports {
		if s.ID != id {
			continue
		}
		var b bounds
		for _, p := range s.Line {
			b.add(p)
		}
		half := s.Width / 2
		if s.Patch {
			half = 0
		}
		return along(b.min, a) - half, along(b.max, a) + half, b.some
	}
	c, ok := Centre(d, id)
	return along(c, a), along(c, a), ok
}

// tapsPlace is where a set of tap holes lies and how it is turned: on its
// sink's centreline, SetBack short of the last edge met going from the sink's
// centre toward its back, moved Offset to the right; else where it says.
func tapsPlace(d design.Design, t design.TapSet) (design.Point, units.Angle) {
	sink := sinkOf(d, t.Sink)
	if t.Sink == "" || sink == nil {
		return t.At, t.Rotation
	}
	turn := sink.Rotation.Radians()
	back := geom.Vec{Y: 1}.Turn(turn)
	reach := lastCrossing(d.Outline.Nodes, vec(sink.At), back) - t.SetBack.MM()
	right := geom.Vec{X: 1}.Turn(turn)
	return point(vec(sink.At).Add(back.Mul(reach)).Add(right.Mul(t.Offset.MM()))), sink.Rotation
}

// OnEdge is the place on edge i of the outline at a share of its length.
func OnEdge(d design.Design, i int, share float64) (design.Point, bool) {
	if i < 0 || i >= len(d.Outline.Nodes) {
		return design.Point{}, false
	}
	return onEdge(d.Outline.Nodes, i, share), true
}

func onEdge(nodes []design.Node, i int, share float64) design.Point {
	switch {
	case share <= 0:
		return nodes[i].At
	case share >= 1:
		return nodes[(i+1)%len(nodes)].At
	}
	c := spanOf(nodes, i).curve()
	return point(c.At(geom.AtLength(c, share*c.Length())))
}

// NearestEdge is the place on the outline nearest to p, as an edge and a share
// of its length, and how far from p it lies; false when there is no outline.
func NearestEdge(d design.Design, p design.Point) (i int, share float64, off units.Length, ok bool) {
	i, share, dist := nearestEdge(d.Outline.Nodes, vec(p))
	if i < 0 {
		return 0, 0, 0, false
	}
	return i, share, units.FromMM(dist), true
}

func nearestEdge(nodes []design.Node, p geom.Vec) (edge int, share, dist float64) {
	edge, dist = -1, math.Inf(1)
	for i := range nodes {
		if s, d := nearestOn(nodes, i, p); d < dist {
			edge, share, dist = i, s, d
		}
	}
	return edge, share, dist
}

// nearestOn is the place on edge i nearest to p, as a share of the edge's
// length, and how far from p it lies.
func nearestOn(nodes []design.Node, i int, p geom.Vec) (share, dist float64) {
	s := spanOf(nodes, i)
	c, t := s.curve(), s.nearest(p)
	dist = c.At(t).Dist(p)
	if length := c.Length(); length > 0 {
		share = fine(math.Min(1, geom.Partial(c, t)/length))
	}
	return share, dist
}

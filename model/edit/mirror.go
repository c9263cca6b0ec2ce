package edit

import (
	"fmt"
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
)

// Mirror turns the top left to right about the middle of its outline's bounds,
// with all that lies on it. Chains run the same way round as before and start
// at the same corner, so mirroring twice gives the very same design.
func Mirror() Edit {
	return keepingEdit("Mirror", func(d design.Design) (design.Design, error) {
		if len(d.Outline.Nodes) == 0 {
			return d, fmt.Errorf("there is no outline to mirror: draw or pick one first")
		}
		m := mirror{axisOf(d.Outline.Nodes)}
		d.Outline.Nodes = m.chain(d.Outline.Nodes)
		d = cloneParts(d)
		for i := range d.Sinks {
			m.sink(&d.Sinks[i])
		}
		for i := range d.Taps {
			m.taps(&d.Taps[i])
		}
		for i := range d.Holes {
			d.Holes[i].At = m.point(d.Holes[i].At)
		}
		for i := range d.Channels {
			m.channel(&d.Channels[i])
		}
		for i := range d.Glass {
			d.Glass[i].Region = m.region(d.Glass[i].Region)
		}
		for i := range d.Supports {
			m.support(&d.Supports[i])
		}
		d.Relations = m.relations(d.Relations, len(d.Outline.Nodes))
		return d, nil
	})
}

// mirror reflects about the vertical line x = sum/2.
type mirror struct{ sum units.Length }

// axisOf is twice the middle of a chain's bounds. The float sum is first
// rounded to 1/1024 nm, which takes the noise of its last digits away, and
// then half to even: the mirrored chain so gives the same axis.
func axisOf(nodes []design.Node) units.Length {
	box := boundsOf(nodes)
	nm := (box.Min.X + box.Max.X) * float64(units.Millimetre)
	return units.Length(math.RoundToEven(math.Round(nm*1024) / 1024))
}

func (m mirror) point(p design.Point) design.Point {
	return design.Point{X: m.sum - p.X, Y: p.Y}
}

// chain mirrors a closed chain and turns its order back, so that it runs the
// same way round. An arc bows to the same side of its travel as before, since
// both the mirror and the order turn it; a spline swaps its control points.
func (m mirror) chain(nodes []design.Node) []design.Node {
	out := slices.Clone(nodes)
	n := len(nodes)
	for i := range out {
		out[i] = nodes[(n-i)%n]
		out[i].At = m.point(out[i].At)
		e := nodes[(2*n-i-1)%n].Edge
		if e.Curve == design.CurveSpline {
			e.C1, e.C2 = m.point(e.C2), m.point(e.C1)
		}
		out[i].Edge = e
	}
	return out
}

func (m mirror) region(r design.Region) design.Region {
	r.Outer = m.chain(r.Outer)
	r.Islands = slices.Clone(r.Islands)
	for i := range r.Islands {
		r.Islands[i] = m.chain(r.Islands[i])
	}
	return r
}

func (m mirror) sink(s *design.Sink) {
	s.At, s.Rotation = m.point(s.At), -s.Rotation
	s.Shape.Path = mirror{}.chain(s.Shape.Path) // about its own centre
}

func (m mirror) taps(t *design.TapSet) {
	t.At, t.Rotation, t.Offset = m.point(t.At), -t.Rotation, -t.Offset
	for i := range t.Holes {
		t.Holes[i].X = -t.Holes[i].X
	}
}

func (m mirror) channel(c *design.Channel) {
	for _, r := range c.Rivers {
		for i := range r.Nodes {
			r.Nodes[i].At = m.point(r.Nodes[i].At)
		}
	}
	for i := range c.Regions {
		c.Regions[i] = m.region(c.Regions[i])
	}
}

// relations mirrors what holds to the left or right side or to an edge of an
// outline with this many edges.
func (m mirror) relations(list []design.Relation, edges int) []design.Relation {
	out := slices.Clone(list)
	for i, r := range out {
		switch {
		case r.Kind == design.RelationSide && r.Side == design.SideLeft:
			out[i].Side = design.SideRight
		case r.Kind == design.RelationSide && r.Side == design.SideRight:
			out[i].Side = design.SideLeft
		case r.Kind == design.RelationBank && r.Bank != design.BothBanks:
			out[i].Bank = design.LeftBank + design.RightBank - r.Bank
		case r.Kind == design.RelationEdge && r.Edge >= 0 && r.Edge < edges:
			out[i].Edge, out[i].Along = edges-1-r.Edge, fine(1-r.Along)
		}
	}
	return out
}

// support mirrors a line; a patch also keeps its way round.
func (m mirror) support(s *design.Support) {
	for i := range s.Line {
		s.Line[i] = m.point(s.Line[i])
	}
	if s.Patch && len(s.Line) > 1 {
		slices.Reverse(s.Line[1:])
	}
}

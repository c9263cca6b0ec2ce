package edit

import (
	"fmt"
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/template"
	"example.org/castwright/model/units"
)

// PlaceOutline makes an outline that was brought in the outline of the top,
// turned and with the middle of its bounds at a place, as [PlaceTop] does.
func PlaceOutline(l template.Loop, at design.Point, by units.Angle) Edit {
	outer, holes := placed(l, at, by)
	return PlaceTop(design.Region{Outer: outer, Islands: holes})
}

// PlaceTop makes a region the outline of the top. Its islands become flush
// under-mounted cut-outs of their own shape. Edges are seen or at the wall, and
// have the profile, as the old ones that face the same way.
func PlaceTop(r design.Region) Edit {
	r = cloneRegion(r)
	return newEdit("Bring in outline", func(d design.Design) (design.Design, error) {
		if err := checkBrought(r.Outer); err != nil {
			return d, err
		}
		outer := facedAlike(r.Outer, d.Outline.Nodes)
		d.Relations = remapped(d.Relations, nearestAgain(d.Outline.Nodes, outer))
		d.Outline.Nodes = outer
		d.Sinks = slices.Clone(d.Sinks)
		for _, hole := range r.Islands {
			middle, path := aboutMiddle(hole)
			d.Sinks = append(d.Sinks, design.Sink{ID: NextID(d, sinks.prefix), At: middle,
				Shape: design.Shape{Kind: design.ShapePath, Path: path}})
		}
		return d, nil
	})
}

// facedAlike is a chain whose edges have the sides and profiles of those of an
// old chain that face the same way, to an eighth turn; else they are seen, with
// the profile of the first seen old edge.
func facedAlike(nodes, old []design.Node) []design.Node {
	out := slices.Clone(nodes)
	var plain design.Edge
	for _, n := range old {
		if n.Edge.Side == design.SideSeen {
			plain = n.Edge
			break
		}
	}
	for i := range out {
		as, best := plain, math.Sqrt2/2
		way := face(out, i)
		for k := range old {
			if d := face(old, k).Dot(way); d > best+1e-9 {
				as, best = old[k].Edge, d
			}
		}
		out[i].Edge.Side, out[i].Edge.Profile = as.Side, as.Profile
	}
	return out
}

// face is the unit vector to which the chord of an edge of a counter-clockwise
// chain looks.
func face(nodes []design.Node, i int) geom.Vec {
	return vec(nodes[(i+1)%len(nodes)].At.Sub(nodes[i].At)).Unit().Left().Mul(-1)
}

// BroughtRegion is an outline that was brought in as a region, mirrored left to
// right first if so wished, then turned, with the middle of its bounds at the
// origin. All chains run counter-clockwise.
func BroughtRegion(l template.Loop, by units.Angle, mirrored bool) design.Region {
	r := design.Region{Outer: slices.Clone(l.Nodes)}
	for _, h := range l.Holes {
		r.Islands = append(r.Islands, backward(h))
	}
	if mirrored {
		r = mirror{}.region(r)
	}
	middle := middleOf(r.Outer)
	for i, island := range r.Islands {
		r.Islands[i] = turned(island, middle, by, design.Point{})
	}
	r.Outer = turned(r.Outer, middle, by, design.Point{})
	shiftRegion(&r, design.Point{}.Sub(middleOf(r.Outer)))
	return r
}

// PlaceSink adds a sink with an outline that was brought in as its shape; all
// else of the sink, its place and its turn too, is as given. Holes in the
// outline, such as a drain, are left out: a cut-out has none.
func PlaceSink(l template.Loop, s design.Sink) Edit {
	_, path := aboutMiddle(l.Nodes)
	s.Shape = design.Shape{Kind: design.ShapePath, Path: path}
	add := AddSink(s)
	return newEdit("Bring in sink", func(d design.Design) (design.Design, error) {
		if err := checkBrought(path); err != nil {
			return d, err
		}
		return add.change(d)
	})
}

// PlaceChannel adds a channel with an outline that was brought in as its only
// region, turned and with its middle at a place; holes become islands.
func PlaceChannel(l template.Loop, c design.Channel, at design.Point, by units.Angle) Edit {
	outer, holes := placed(l, at, by)
	c.Rivers, c.Regions = nil, []design.Region{{Outer: outer, Islands: holes}}
	add := AddChannel(c)
	return newEdit("Bring in channel", func(d design.Design) (design.Design, error) {
		if err := checkBrought(outer); err != nil {
			return d, err
		}
		return add.change(d)
	})
}

// PlaceGlass adds a glass bed of the shape of an outline that was brought in,
// turned and with its middle at a place; holes become islands.
func PlaceGlass(l template.Loop, g design.GlassBed, at design.Point, by units.Angle) Edit {
	outer, holes := placed(l, at, by)
	g.Region = design.Region{Outer: outer, Islands: holes}
	add := AddGlass(g)
	return newEdit("Bring in glass bed", func(d design.Design) (design.Design, error) {
		if err := checkBrought(outer); err != nil {
			return d, err
		}
		return add.change(d)
	})
}

func checkBrought(nodes []design.Node) error {
	if len(nodes) < 2 {
		return fmt.Errorf("the outline has %d corners: bring in one that is closed", len(nodes))
	}
	return nil
}

// placed is a loop turned about the middle of its bounds, which is moved to a
// place. All chains run counter-clockwise.
func placed(l template.Loop, at design.Point, by units.Angle) (outer []design.Node, holes [][]design.Node) {
	middle := middleOf(l.Nodes)
	for _, h := range l.Holes {
		holes = append(holes, turned(backward(h), middle, by, at))
	}
	return turned(l.Nodes, middle, by, at), holes
}

// aboutMiddle is the middle of a chain's bounds, and the chain relative to it.
func aboutMiddle(nodes []design.Node) (design.Point, []design.Node) {
	middle := middleOf(nodes)
	return middle, turned(nodes, middle, 0, design.Point{})
}

func middleOf(nodes []design.Node) design.Point {
	if len(nodes) == 0 {
		return design.Point{}
	}
	return point(boundsOf(nodes).Centre())
}

// backward is a closed chain run the other way, from the same corner.
func backward(nodes []design.Node) []design.Node {
	n := len(nodes)
	out := slices.Clone(nodes)
	for i := range out {
		out[i] = nodes[(n-i)%n]
		e := nodes[(2*n-i-1)%n].Edge
		e.Rise, e.C1, e.C2 = -e.Rise, e.C2, e.C1
		out[i].Edge = e
	}
	return out
}

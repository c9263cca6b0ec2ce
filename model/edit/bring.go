package edit

import (
	"fmt"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/template"
	"example.org/castwright/model/units"
)

// PlaceOutline makes an outline that was brought in the outline of the top,
// turned and with the middle of its bounds at a place. Its holes become flush
// under-mounted cut-outs of their own shape.
func PlaceOutline(l template.Loop, at design.Point, by units.Angle) Edit {
	outer, holes := placed(l, at, by)
	return newEdit("Bring in outline", func(d design.Design) (design.Design, error) {
		if err := checkBrought(outer); err != nil {
			return d, err
		}
		d.Relations = remapped(d.Relations, nearestAgain(d.Outline.Nodes, outer))
		d.Outline.Nodes = slices.Clone(outer)
		d.Sinks = slices.Clone(d.Sinks)
		for _, hole := range holes {
			middle, path := aboutMiddle(hole)
			d.Sinks = append(d.Sinks, design.Sink{ID: NextID(d, sinks.prefix), At: middle,
				Shape: design.Shape{Kind: design.ShapePath, Path: path}})
		}
		return d, nil
	})
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

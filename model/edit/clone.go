package edit

import (
	"slices"

	"example.org/castwright/model/design"
)

// The clones share nothing with what they were made from.

func cloneSink(s design.Sink) design.Sink {
	s.Shape.Path = slices.Clone(s.Shape.Path)
	return s
}

func cloneTaps(t design.TapSet) design.TapSet {
	t.Holes = slices.Clone(t.Holes)
	return t
}

func cloneChannel(c design.Channel) design.Channel {
	c.Rivers = slices.Clone(c.Rivers)
	for i := range c.Rivers {
		c.Rivers[i].Nodes = slices.Clone(c.Rivers[i].Nodes)
	}
	c.Regions = slices.Clone(c.Regions)
	for i := range c.Regions {
		c.Regions[i] = cloneRegion(c.Regions[i])
	}
	if c.Fill.Glass != nil {
		glass := *c.Fill.Glass
		c.Fill.Glass = &glass
	}
	return c
}

func cloneRegion(r design.Region) design.Region {
	r.Outer = slices.Clone(r.Outer)
	r.Islands = slices.Clone(r.Islands)
	for i := range r.Islands {
		r.Islands[i] = slices.Clone(r.Islands[i])
	}
	return r
}

func cloneGlass(g design.GlassBed) design.GlassBed {
	g.Region = cloneRegion(g.Region)
	return g
}

func cloneSupport(s design.Support) design.Support {
	s.Line = slices.Clone(s.Line)
	return s
}

// cloneParts gives a design whose parts, but for the outline, may be written.
func cloneParts(d design.Design) design.Design {
	d.Sinks = cloneAll(d.Sinks, cloneSink)
	d.Taps = cloneAll(d.Taps, cloneTaps)
	d.Holes = slices.Clone(d.Holes)
	d.Channels = cloneAll(d.Channels, cloneChannel)
	d.Glass = cloneAll(d.Glass, cloneGlass)
	d.Supports = cloneAll(d.Supports, cloneSupport)
	return d
}

func cloneAll[T any](list []T, clone func(T) T) []T {
	out := slices.Clone(list)
	for i := range out {
		out[i] = clone(out[i])
	}
	return out
}

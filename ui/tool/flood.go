package tool

import (
	"errors"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// floodCraft fills with glass what lies about the mouse between the top's edges,
// the banks of channels, the rims of holes and other beds.
type floodCraft struct {
	of     *geom.Vec // the outline's first point: another solid has another
	region design.Region
	found  bool
	lines  []Line
}

func (c *floodCraft) measures(*Hand, *free) []measure { return nil }

func (c *floodCraft) trail(h *Hand, f *free) { c.aim(h, f) }

func (c *floodCraft) aim(h *Hand, f *free) {
	s := h.s.Report().Solid
	c.lines = nil
	if len(s.Outline) == 0 {
		c.found = false
		return
	}
	if c.found && c.of == &s.Outline[0] && holdsPlace(c.region, f.at.At) {
		c.lines = regionLines(c.region)
		return
	}
	c.of = &s.Outline[0]
	c.region, c.found = about(s, f.at.At)
	if c.found {
		c.lines = regionLines(c.region)
	}
}

// holdsPlace reports whether a region with straight edges has a place in it.
func holdsPlace(r design.Region, at geom.Vec) bool {
	for i, l := range regionLines(r) {
		if geom.Loop(l.Points).Contains(at) != (i == 0) {
			return false
		}
	}
	return true
}

// about is the region about a place within which nothing begins or ends.
func about(s slab.Solid, at geom.Vec) (design.Region, bool) {
	if !s.Outline.Contains(at) {
		return design.Region{}, false
	}
	var layers [4][]geom.Loop
	layers[0] = []geom.Loop{s.Outline}
	for _, o := range s.Openings {
		layers[1] = append(layers[1], o.Loop)
	}
	for _, r := range s.Recesses {
		layers[2] = append(layers[2], r.Loops...)
	}
	for _, b := range s.Beds {
		layers[3] = append(layers[3], b.Loops...)
	}
	var sweep geom.Sweep
	sweep.Reset(s.Outline.Bounds().Centre())
	var here uint64
	for i, loops := range layers {
		for _, l := range loops {
			sweep.Add(i, l)
		}
		if inside(at, loops) {
			here |= 1 << i
		}
	}
	if here&2 != 0 { // in a hole there is nothing to fill
		return design.Region{}, false
	}
	return edit.RegionAt(sweep.Loops(func(l uint64) bool { return l == here }), point(at))
}

func (c *floodCraft) finish(h *Hand, f *free) (string, error) {
	c.aim(h, f)
	if !c.found {
		return "", errors.New("there is nothing to fill here: click on the top, in a channel or on an island")
	}
	for _, b := range h.s.Report().Solid.Beds {
		if inside(f.at.At, b.Loops) {
			return "", errors.New("there is glass here already")
		}
	}
	bed := h.glassNow()
	bed.Region = c.region
	add := edit.AddGlass(bed)
	add.Name = "Fill with glass"
	c.found = false
	return "", h.doNew(add, "")
}

func (c *floodCraft) show(_ *Hand, f *free, o *Overlay) {
	if f.shown {
		o.Ghost = append(o.Ghost, c.lines...)
	}
}

func (c *floodCraft) hint(h *Hand, f *free) string {
	if f.shown && c.found {
		return "A click fills what is outlined with glass; Esc ends."
	}
	return "Move over the top and click to fill what lies between edges, banks and holes with glass; Esc ends."
}

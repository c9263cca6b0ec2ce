package design

import (
	"fmt"

	"example.org/castwright/model/units"
)

func (c *checker) channel(field string, h Channel, thickness units.Length) {
	c.identity(field, h.ID, h.place())
	c.depth(field+".depth_mm", "the channel", h.Depth, thickness)
	if len(h.Rivers) == 0 && len(h.Regions) == 0 {
		c.add(RuleMissing, field, "the channel has neither a river nor a region: draw one or remove the channel")
	}
	for i, v := range h.Rivers {
		c.river(fmt.Sprintf("%s.rivers[%d]", field, i), v)
	}
	for i, r := range h.Regions {
		c.region(fmt.Sprintf("%s.regions[%d]", field, i), r)
	}
	c.fill(field+".fill", h.Fill)
}

// place is where a fault of the channel as a whole is shown.
func (h Channel) place() Point {
	for _, v := range h.Rivers {
		if len(v.Nodes) > 0 {
			return v.Nodes[0].At
		}
	}
	for _, r := range h.Regions {
		if len(r.Outer) > 0 {
			return r.Outer[0].At
		}
	}
	return Point{}
}

// depth checks the depth of something in the face.
func (c *checker) depth(field, name string, v, thickness units.Length) {
	c.size(field, name+"'s depth", v)
	if v >= thickness && v > 0 && v <= MaxSize {
		c.add(RuleDepth, field, "%s is %s deep and the slab %s thick: leave concrete under it", name, mm(v), mm(thickness))
	}
}

func (c *checker) river(field string, v River) {
	if len(v.Nodes) < 2 {
		c.add(RuleMissing, field+".nodes", "the river has %d nodes: give two or more", len(v.Nodes))
	}
	c.kind(field+".start", "the river's start", uint8(v.Start), int(EndOpen)+1)
	c.kind(field+".end", "the river's end", uint8(v.End), int(EndOpen)+1)
	before := c.at
	for i, n := range v.Nodes {
		c.at = n.At
		at := fmt.Sprintf("%s.nodes[%d]", field, i)
		c.place(at+".at_mm", n.At)
		c.size(at+".width_mm", "the river's width", n.Width)
		if i > 0 && n.At == v.Nodes[i-1].At {
			c.add(RuleZeroEdge, at+".at_mm", "the river's nodes %d and %d lie on each other: remove one of them", i, i+1)
		}
	}
	c.at = before
}

func (c *checker) region(field string, r Region) {
	c.chain(field+".outer", "the region", r.Outer)
	for i, l := range r.Islands {
		c.chain(fmt.Sprintf("%s.islands[%d]", field, i), "the island", l)
	}
}

func (c *checker) fill(field string, f Fill) {
	c.share(field+".opacity_percent", "the opacity", f.Opacity)
	c.length(field+".top_coat_mm", "the top coat", f.TopCoat, 0, 50*units.Millimetre)
	if f.Glass != nil {
		c.size(field+".glass.grain_mm", "the size of the glass", f.Glass.Grain)
		c.share(field+".glass.share_percent", "the glass's share", f.Glass.Share)
	}
}

func (c *checker) bed(field string, b GlassBed, thickness units.Length) {
	var at Point
	if len(b.Region.Outer) > 0 {
		at = b.Region.Outer[0].At
	}
	c.identity(field, b.ID, at)
	c.region(field+".region", b.Region)
	c.size(field+".grain_mm", "the size of the glass", b.Grain)
	c.share(field+".coverage_percent", "the coverage", b.Coverage)
	c.depth(field+".depth_mm", "the glass bed", b.Depth, thickness)
}

func (c *checker) support(field string, s Support) {
	var at Point
	if len(s.Line) > 0 {
		at = s.Line[0]
	}
	c.identity(field, s.ID, at)
	c.kind(field+".kind", "the support", uint8(s.Kind), int(SupportLeg)+1)
	switch {
	case s.Patch && len(s.Line) < 3:
		c.add(RuleMissing, field+".line_mm", "the patch has %d corners: give three or more", len(s.Line))
	case !s.Patch && len(s.Line) < 2:
		c.add(RuleMissing, field+".line_mm", "the line has %d points: give two or more", len(s.Line))
	}
	if !s.Patch {
		c.size(field+".width_mm", "the support's width", s.Width)
	}
	for i, p := range s.Line {
		c.place(fmt.Sprintf("%s.line_mm[%d]", field, i), p)
	}
}

package design

import (
	"fmt"

	"example.org/castwright/model/units"
)

func (c *checker) sink(field string, s Sink, thickness units.Length) {
	c.identity(field, s.ID, s.At)
	c.place(field+".at_mm", s.At)
	c.kind(field+".mount", "the mount", uint8(s.Mount), int(MountVessel)+1)
	c.shape(field+".shape", s.Shape)
	switch s.Mount {
	case MountUnder:
		c.kind(field+".reveal.kind", "the reveal", uint8(s.Reveal.Kind), int(RevealOverhang)+1)
		if s.Reveal.Kind != RevealFlush {
			c.length(field+".reveal.size_mm", "the reveal", s.Reveal.Size, 0, units.Metre)
		}
		c.profile(field+".profile", s.Profile, thickness)
	case MountOver:
		c.length(field+".rim_mm", "the rim", s.Rim, 0, units.Metre)
	case MountVessel:
		c.size(field+".drain_mm", "the drain's diameter", s.Drain)
	}
	c.length(field+".bowl_depth_mm", "the bowl's depth", s.BowlDepth, 0, MaxSize)
	c.mass(field+".bowl_mass_kg", "the bowl's weight", s.BowlMass)
}

func (c *checker) shape(field string, s Shape) {
	c.kind(field+".kind", "the shape", uint8(s.Kind), int(ShapePath)+1)
	switch s.Kind {
	case ShapePath:
		c.chain(field+".path", "the path", s.Path)
		return
	case ShapeCircle:
		c.size(field+".width_mm", "the diameter", s.Width)
		return
	}
	c.size(field+".width_mm", "the width", s.Width)
	c.size(field+".depth_mm", "the depth", s.Depth)
	if s.Kind == ShapeEllipse || s.Width <= 0 || s.Depth <= 0 {
		return
	}
	least := min(s.Width, s.Depth)
	if s.CornerRadius < 0 || s.CornerRadius > least/2 {
		c.add(RuleShape, field+".corner_radius_mm", "the corner radius is %s: give from 0 mm to half the shorter side, %s",
			mm(s.CornerRadius), mm(least/2))
	}
	if s.Kind == ShapeD && (s.Bow < 0 || s.Bow > s.Width/2 || s.Bow > s.Depth) {
		c.add(RuleShape, field+".bow_mm", "the front bows out by %s: give from 0 mm to %s, half the width and no more than the depth",
			mm(s.Bow), mm(min(s.Width/2, s.Depth)))
	}
}

func (c *checker) taps(field string, t TapSet) {
	c.identity(field, t.ID, t.At)
	c.place(field+".at_mm", t.At)
	c.kind(field+".pattern", "the pattern", uint8(t.Pattern), int(TapOwn)+1)
	c.size(field+".diameter_mm", "the holes' diameter", t.Diameter)
	if t.Pattern == TapOwn {
		if n := len(t.Holes); n == 0 {
			c.add(RuleMissing, field+".holes_mm", "the pattern has no hole: add one or choose another pattern")
		} else if n > MaxPattern {
			c.add(RuleCount, field+".holes_mm", "the pattern has %d holes: at most %d can be reckoned with", n, MaxPattern)
		}
		for i, h := range t.Holes {
			c.place(fmt.Sprintf("%s.holes_mm[%d]", field, i), h)
		}
	}
	c.length(field+".offset_mm", "the offset", t.Offset, -MaxSize, MaxSize)
	if t.Sink != "" {
		c.length(field+".set_back_mm", "the set-back", t.SetBack, -MaxSize, MaxSize)
	}
}

func (c *checker) hole(field string, h Hole) {
	c.identity(field, h.ID, h.At)
	c.place(field+".at_mm", h.At)
	c.kind(field+".kind", "the hole", uint8(h.Kind), int(HoleOther)+1)
	c.size(field+".diameter_mm", "the diameter", h.Diameter)
}

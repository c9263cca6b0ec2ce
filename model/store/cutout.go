package store

import "example.org/castwright/model/design"

func sink(v visitor, s *design.Sink) {
	v.point(need("at_mm"), &s.At)
	v.angle(may("rotation_deg"), &s.Rotation)
	v.object(need("shape"), func(v visitor) { shape(v, &s.Shape) })
	word(v, need("mount"), mountWords, &s.Mount)
	v.object(may("reveal"), func(v visitor) {
		word(v, may("kind"), revealWords, &s.Reveal.Kind)
		v.length(when(s.Reveal.Kind != design.RevealFlush, "size_mm"), &s.Reveal.Size)
	})
	v.length(may("rim_mm"), &s.Rim)
	v.length(may("drain_mm"), &s.Drain)
	v.object(may("profile"), func(v visitor) { profile(v, &s.Profile) })
	v.length(may("bowl_depth_mm"), &s.BowlDepth)
	v.number(may("bowl_mass_kg"), &s.BowlMass)
}

func shape(v visitor, s *design.Shape) {
	word(v, need("kind"), shapeWords, &s.Kind)
	path, circle := s.Kind == design.ShapePath, s.Kind == design.ShapeCircle
	v.length(when(!path, "width_mm"), &s.Width)
	v.length(when(!path && !circle, "depth_mm"), &s.Depth)
	v.length(may("corner_radius_mm"), &s.CornerRadius)
	v.length(may("bow_mm"), &s.Bow)
	list(v, when(path, "path"), &s.Path, node)
}

func taps(v visitor, t *design.TapSet) {
	word(v, need("pattern"), patternWords, &t.Pattern)
	v.points(may("holes_mm"), &t.Holes)
	v.length(need("diameter_mm"), &t.Diameter)
	id(v, may("sink"), &t.Sink)
	v.length(may("offset_mm"), &t.Offset)
	v.length(when(t.Sink != "", "set_back_mm"), &t.SetBack)
	v.point(when(t.Sink == "", "at_mm"), &t.At)
	v.angle(may("rotation_deg"), &t.Rotation)
}

func hole(v visitor, h *design.Hole) {
	word(v, need("kind"), holeWords, &h.Kind)
	v.point(need("at_mm"), &h.At)
	v.length(need("diameter_mm"), &h.Diameter)
}

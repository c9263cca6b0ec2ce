package store

import "example.org/castwright/model/design"

func top(v visitor, d *design.Design) {
	v.length(need("thickness_mm"), &d.Thickness)
	v.object(need("outline"), func(v visitor) { list(v, need("nodes"), &d.Outline.Nodes, node) })
	parts(v, may("sinks"), &d.Sinks, func(s *design.Sink) *design.ID { return &s.ID }, sink)
	parts(v, may("taps"), &d.Taps, func(t *design.TapSet) *design.ID { return &t.ID }, taps)
	parts(v, may("holes"), &d.Holes, func(h *design.Hole) *design.ID { return &h.ID }, hole)
	parts(v, may("channels"), &d.Channels,
		func(c *design.Channel) *design.ID { return &c.ID }, channel)
	parts(v, may("glass_beds"), &d.Glass,
		func(g *design.GlassBed) *design.ID { return &g.ID }, glassBed)
	v.object(need("finish"), func(v visitor) { finish(v, &d.Finish) })
	parts(v, may("supports"), &d.Supports,
		func(s *design.Support) *design.ID { return &s.ID }, support)
	list(v, may("relations").atMost(design.MaxRelations), &d.Relations, relation)
	v.text(may("notes"), &d.Notes)
}

func node(v visitor, n *design.Node) {
	v.point(need("at_mm"), &n.At)
	v.object(may("corner"), func(v visitor) {
		word(v, may("kind"), cornerWords, &n.Corner.Kind)
		v.length(when(n.Corner.Kind != design.CornerSquare, "size_mm"), &n.Corner.Size)
	})
	v.object(may("edge"), func(v visitor) { edge(v, &n.Edge) })
}

func edge(v visitor, e *design.Edge) {
	word(v, may("curve"), curveWords, &e.Curve)
	v.length(when(e.Curve == design.CurveArc, "rise_mm"), &e.Rise)
	v.point(when(e.Curve == design.CurveSpline, "c1_mm"), &e.C1)
	v.point(when(e.Curve == design.CurveSpline, "c2_mm"), &e.C2)
	word(v, may("side"), sideWords, &e.Side)
	v.object(may("profile"), func(v visitor) { profile(v, &e.Profile) })
}

func profile(v visitor, p *design.Profile) {
	word(v, may("kind"), profileWords, &p.Kind)
	sized := false
	switch p.Kind {
	case design.ProfileEased, design.ProfileRounded, design.ProfileBevelled, design.ProfileRough:
		sized = true
	}
	v.length(when(sized, "size_mm"), &p.Size)
}

func region(v visitor, r *design.Region) {
	list(v, need("outer"), &r.Outer, node)
	v.chains(may("islands"), len(r.Islands),
		func(k int) int { return len(*grown(&r.Islands, k)) },
		func(v visitor, k, i int) { node(v, grown(grown(&r.Islands, k), i)) })
}

func finish(v visitor, f *design.Finish) {
	v.colour(need("colour"), &f.Colour)
	word(v, need("exposure"), exposureWords, &f.Exposure)
	v.count(need("polish"), &f.Polish)
	v.length(need("grind_mm"), &f.Grind)
}

func support(v visitor, s *design.Support) {
	word(v, need("kind"), supportWords, &s.Kind)
	v.points(need("line_mm"), &s.Line)
	v.flag(may("patch"), &s.Patch)
	v.length(when(!s.Patch, "width_mm"), &s.Width)
}

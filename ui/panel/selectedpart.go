package panel

import (
	"fmt"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/words"
)

// part is the fields of a part by its ID.
func (b *sheet) part(id design.ID, box geom.Box) {
	switch kind, i := b.d.Find(id); kind {
	case design.PartSink:
		b.sink(b.d.Sinks[i], box)
	case design.PartTaps:
		b.taps(b.d.Taps[i], box)
	case design.PartHole:
		b.hole(b.d.Holes[i], box)
	case design.PartChannel:
		b.channel(b.d.Channels[i])
	case design.PartGlass:
		b.bed(b.d.Glass[i])
	case design.PartSupport:
		b.support(b.d.Supports[i])
	}
}

func (b *sheet) sink(k design.Sink, box geom.Box) {
	set := func(change func(*design.Sink)) edit.Edit {
		q := k
		change(&q)
		return edit.SetSink(q)
	}
	b.choice("Mount", "How the sink sits.", words.Mounts, int(k.Mount), func(i int) edit.Edit {
		return set(func(q *design.Sink) { q.Mount = design.Mount(i); startMount(q, b.sys) })
	})
	b.shape(k.Shape,
		func(sh design.Shape) edit.Edit { return set(func(q *design.Sink) { q.Shape = sh }) })
	switch k.Mount {
	case design.MountUnder:
		b.choice("Reveal", "Where the bowl's rim lies against the edge of the concrete.", words.Reveals,
			int(k.Reveal.Kind),
			func(i int) edit.Edit {
				return set(func(q *design.Sink) {
					q.Reveal.Kind = design.RevealKind(i)
					if q.Reveal.Size == 0 && q.Reveal.Kind != design.RevealFlush {
						q.Reveal.Size = StartSize(design.ProfileEased, b.sys)
					}
				})
			})
		if k.Reveal.Kind != design.RevealFlush {
			b.length("By", words.Of(words.Reveals, int(k.Reveal.Kind))+" by this much all round.",
				k.Reveal.Size,
				func(l units.Length) edit.Edit { return set(func(q *design.Sink) { q.Reveal.Size = l }) })
		}
		b.profile("Arris", "Shape of the cut-out's upper edge.", k.Profile, words.Profiles[:4],
			func(p design.Profile) edit.Edit { return set(func(q *design.Sink) { q.Profile = p }) })
	case design.MountOver:
		b.length("Rim", "How far the rim covers the face beyond the cut-out.", k.Rim,
			func(l units.Length) edit.Edit { return set(func(q *design.Sink) { q.Rim = l }) })
	case design.MountVessel:
		b.length("Drain hole", "Diameter of the only hole that goes through the top.", k.Drain,
			func(l units.Length) edit.Edit { return set(func(q *design.Sink) { q.Drain = l }) })
	}
	b.position(k.At, box, "Middle of the sink. ",
		func(p design.Point) edit.Edit { return set(func(q *design.Sink) { q.At = p }) })
	b.angle("Turned", "Counter-clockwise.", k.Rotation,
		func(a units.Angle) edit.Edit { return set(func(q *design.Sink) { q.Rotation = a }) })
	b.length("Water depth", "When the bowl is full.", k.BowlDepth,
		func(l units.Length) edit.Edit { return set(func(q *design.Sink) { q.BowlDepth = l }) })
	b.mass("Bowl weighs", "The bowl's own weight, from its data sheet.", k.BowlMass,
		func(kg float64) edit.Edit { return set(func(q *design.Sink) { q.BowlMass = kg }) })
}

// startMount gives a sink that is mounted another way what that way needs:
// common practice, no source.
func startMount(q *design.Sink, sys units.System) {
	rim, drain := 15*units.Millimetre, 45*units.Millimetre
	if sys == units.Imperial {
		rim, drain = 5*units.Inch/8, 7*units.Inch/4
	}
	if q.Mount == design.MountOver && q.Rim == 0 {
		q.Rim = rim
	}
	if q.Mount == design.MountVessel && q.Drain == 0 {
		q.Drain = drain
	}
}

func (b *sheet) shape(s design.Shape, e func(design.Shape) edit.Edit) {
	set := func(change func(*design.Shape)) edit.Edit {
		q := s
		change(&q)
		return e(q)
	}
	if s.Kind == design.ShapePath {
		b.reading("Shape", "An outline of its own.", fmt.Sprintf("Own, %s",
			amount.Count(len(s.Path), "corner")))
		return
	}
	b.choice("Shape", "Plan shape of the bowl.", words.Shapes[:4], int(s.Kind), func(i int) edit.Edit {
		return set(func(q *design.Shape) {
			q.Kind = design.ShapeKind(i)
			if q.Depth == 0 {
				q.Depth = q.Width
			}
			if q.Kind == design.ShapeD && q.Bow == 0 {
				q.Bow = q.Depth / 4
			}
		})
	})
	if s.Kind == design.ShapeCircle {
		b.length("Diameter", "Of the bowl.", s.Width,
			func(l units.Length) edit.Edit { return set(func(q *design.Shape) { q.Width = l }) })
		return
	}
	b.length("Width", "Of the bowl, along its own back.", s.Width,
		func(l units.Length) edit.Edit { return set(func(q *design.Shape) { q.Width = l }) })
	b.length("Depth", "Of the bowl, from its front to its back.", s.Depth,
		func(l units.Length) edit.Edit { return set(func(q *design.Shape) { q.Depth = l }) })
	if s.Kind == design.ShapeRectangle || s.Kind == design.ShapeD {
		b.length("Corner radius", "Of the bowl's corners.", s.CornerRadius,
			func(l units.Length) edit.Edit { return set(func(q *design.Shape) { q.CornerRadius = l }) })
	}
	if s.Kind == design.ShapeD {
		b.length("Bow", "Rise of the front's arc over its chord.", s.Bow,
			func(l units.Length) edit.Edit { return set(func(q *design.Shape) { q.Bow = l }) })
	}
}

func (b *sheet) taps(t design.TapSet, box geom.Box) {
	set := func(change func(*design.TapSet)) edit.Edit {
		q := t
		change(&q)
		return edit.SetTaps(q)
	}
	list := words.Patterns[:3]
	if t.Pattern == design.TapOwn {
		list = words.Patterns
	}
	b.choice("Holes", "How many, and how far the outer two are apart.", list, int(t.Pattern),
		func(i int) edit.Edit { return set(func(q *design.TapSet) { q.Pattern = design.TapPattern(i) }) })
	b.length("Diameter", "Of each hole.", t.Diameter,
		func(l units.Length) edit.Edit { return set(func(q *design.TapSet) { q.Diameter = l }) })
	keeps, at := []string{"No sink"}, 0
	for i, k := range b.d.Sinks {
		keeps = append(keeps, words.Part(b.d, k.ID))
		if k.ID == t.Sink {
			at = i + 1
		}
	}
	b.choice("Keeps to", "The sink whose centreline the holes keep to when it moves.", keeps, at,
		func(i int) edit.Edit {
			if i == 0 {
				return edit.FreeTaps(t.ID)
			}
			return set(func(q *design.TapSet) {
				q.Sink = b.d.Sinks[i-1].ID
				if q.SetBack == 0 {
					q.SetBack = 55 * units.Millimetre
					if b.sys == units.Imperial {
						q.SetBack = 9 * units.Inch / 4
					}
				}
			})
		})
	if t.Sink != "" {
		b.length("Set-back", "From the back edge to the line of the holes.", t.SetBack,
			func(l units.Length) edit.Edit { return set(func(q *design.TapSet) { q.SetBack = l }) })
		b.length("Off centre", "To the right of the sink's centreline.", t.Offset,
			func(l units.Length) edit.Edit { return set(func(q *design.TapSet) { q.Offset = l }) })
		return
	}
	b.position(t.At, box, "Middle of the set. ",
		func(p design.Point) edit.Edit { return set(func(q *design.TapSet) { q.At = p }) })
	b.angle("Turned", "Counter-clockwise.", t.Rotation,
		func(a units.Angle) edit.Edit { return set(func(q *design.TapSet) { q.Rotation = a }) })
}

func (b *sheet) hole(h design.Hole, box geom.Box) {
	set := func(change func(*design.Hole)) edit.Edit {
		q := h
		change(&q)
		return edit.SetHole(q)
	}
	b.choice("For", "What the hole is for.", words.HoleKinds, int(h.Kind),
		func(i int) edit.Edit { return set(func(q *design.Hole) { q.Kind = design.HoleKind(i) }) })
	b.length("Diameter", "Of the hole.", h.Diameter,
		func(l units.Length) edit.Edit { return set(func(q *design.Hole) { q.Diameter = l }) })
	b.position(h.At, box, "Middle of the hole. ",
		func(p design.Point) edit.Edit { return set(func(q *design.Hole) { q.At = p }) })
}

func (b *sheet) channel(c design.Channel) {
	set := func(change func(*design.Channel)) edit.Edit {
		q := c
		change(&q)
		return edit.SetChannel(q)
	}
	b.length("Depth", "Below the finished face.", c.Depth,
		func(l units.Length) edit.Edit { return set(func(q *design.Channel) { q.Depth = l }) })
	for i, r := range c.Rivers {
		if len(c.Rivers) > 1 {
			b.heading(fmt.Sprintf("River %d", i+1))
		}
		b.width(c.ID, i, r)
		b.choice("Starts", "How the river's first end stops.", words.Ends, int(r.Start),
			func(k int) edit.Edit { return edit.SetRiverEnds(c.ID, i, design.RiverEnd(k), r.End) })
		b.choice("Ends", "How the river's last end stops; open runs over the edge.", words.Ends,
			int(r.End),
			func(k int) edit.Edit { return edit.SetRiverEnds(c.ID, i, r.Start, design.RiverEnd(k)) })
	}
	if len(c.Rivers) > 1 {
		b.heading("Filling")
	}
	b.fill(c.Fill, func(f design.Fill) edit.Edit { return set(func(q *design.Channel) { q.Fill = f }) })
}

// width is the width of a whole river; where its nodes differ, the widths are
// said and a new one goes to all.
func (b *sheet) width(id design.ID, i int, r design.River) {
	if len(r.Nodes) == 0 {
		return
	}
	low, high := r.Nodes[0].Width, r.Nodes[0].Width
	for _, n := range r.Nodes {
		low, high = min(low, n.Width), max(high, n.Width)
	}
	b.length("Width", "Of the river at all its points; drag a bank to change one of them.", low,
		func(l units.Length) edit.Edit { return edit.SetRiverWidth(id, i, -1, l) })
	if low != high {
		f := &b.fields[len(b.fields)-1]
		f.text, f.nudge = "", nil
		f.empty = units.Format(low, b.sys) + " – " + units.Format(high, b.sys)
	}
}

func (b *sheet) fill(f design.Fill, e func(design.Fill) edit.Edit) {
	set := func(change func(*design.Fill)) edit.Edit {
		q := f
		change(&q)
		return e(q)
	}
	b.tick("Resin", "Filled with resin; without it the recess stays empty.", f.Resin,
		func(on bool) edit.Edit { return set(func(q *design.Fill) { q.Resin = on }) })
	if !f.Resin {
		return
	}
	b.colour("Colour", "Of the resin.", f.Colour, ofResin,
		func(c design.Colour) edit.Edit { return set(func(q *design.Fill) { q.Colour = c }) })
	b.share("Opacity", "0 is clear as water.", f.Opacity,
		func(s units.Share) edit.Edit { return set(func(q *design.Fill) { q.Opacity = s }) })
	b.length("Top coat", "Thickness of the flood coat over the filled channel, 0 for none.", f.TopCoat,
		func(l units.Length) edit.Edit { return set(func(q *design.Fill) { q.TopCoat = l }) })
	b.tick("Glass in it", "Broken glass scattered in the resin.", f.Glass != nil,
		func(on bool) edit.Edit {
			return set(func(q *design.Fill) {
				q.Glass = nil
				if on {
					q.Glass = &design.GlassFill{Grain: b.grain(), Share: 15 * units.Percent,
						Colour: GlassColours[0].Colour}
				}
			})
		})
	if f.Glass == nil {
		return
	}
	glass := func(change func(*design.GlassFill)) edit.Edit {
		g := *f.Glass
		change(&g)
		return set(func(q *design.Fill) { q.Glass = &g })
	}
	b.length("Grain", "Size of the pieces.", f.Glass.Grain,
		func(l units.Length) edit.Edit { return glass(func(g *design.GlassFill) { g.Grain = l }) })
	b.share("Glass share", "Of the filling's volume.", f.Glass.Share,
		func(s units.Share) edit.Edit { return glass(func(g *design.GlassFill) { g.Share = s }) })
	b.colour("Glass colour", "Of the pieces.", f.Glass.Colour, ofGlass,
		func(c design.Colour) edit.Edit { return glass(func(g *design.GlassFill) { g.Colour = c }) })
}

// grain is a usual size of glass: common practice, no source.
func (b *sheet) grain() units.Length {
	if b.sys == units.Imperial {
		return 3 * units.Inch / 8
	}
	return 10 * units.Millimetre
}

func (b *sheet) bed(g design.GlassBed) {
	set := func(change func(*design.GlassBed)) edit.Edit {
		q := g
		change(&q)
		return edit.SetGlass(q)
	}
	b.length("Grain", "Size of the pieces.", g.Grain,
		func(l units.Length) edit.Edit { return set(func(q *design.GlassBed) { q.Grain = l }) })
	b.share("Coverage", "Share of the bed's area that is glass.", g.Coverage,
		func(s units.Share) edit.Edit { return set(func(q *design.GlassBed) { q.Coverage = s }) })
	b.length("Layer", "Depth of the layer as cast, before grinding.", g.Depth,
		func(l units.Length) edit.Edit { return set(func(q *design.GlassBed) { q.Depth = l }) })
	b.colour("Colour", "Of the pieces.", g.Colour, ofGlass,
		func(c design.Colour) edit.Edit { return set(func(q *design.GlassBed) { q.Colour = c }) })
}

func (b *sheet) support(p design.Support) {
	set := func(change func(*design.Support)) edit.Edit {
		q := p
		change(&q)
		return edit.SetSupport(q)
	}
	b.choice("Kind", "What carries the top here.", words.Supports, int(p.Kind),
		func(i int) edit.Edit { return set(func(q *design.Support) { q.Kind = design.SupportKind(i) }) })
	if p.Patch {
		b.reading("Patch", "Drag its corners to change it.", amount.Count(len(p.Line), "corner"))
		return
	}
	b.length("Width", "How wide it bears.", p.Width,
		func(l units.Length) edit.Edit { return set(func(q *design.Support) { q.Width = l }) })
	length := 0.0
	for i := 1; i < len(p.Line); i++ {
		d := p.Line[i].Sub(p.Line[i-1])
		length += geom.Vec{X: d.X.MM(), Y: d.Y.MM()}.Norm()
	}
	b.reading("Length", "Drag an end to change it.", units.Format(units.FromMM(length), b.sys))
}

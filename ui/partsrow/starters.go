package partsrow

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/panel"
)

// starter is something to pick: it is put in hand, applied, or takes a tool.
type starter struct {
	name, hint string
	sample     design.Design // what its picture shows
	below      bool          // the picture shows what is below the top
	put        *board.Put
	edit       *edit.Edit
	tool       *board.Tool
	profile    *design.Profile // its picture is a section
}

// kit makes starters in round figures of the maker's system. Sizes are common
// practice, no source, unless it is said otherwise.
type kit struct {
	sys units.System
	d   design.Design // in hand
	box geom.Box      // of its outline
}

// size is a length in the maker's system: millimetres, or 64ths of an inch.
func (k kit) size(mm, in64 int) units.Length {
	if k.sys == units.Imperial {
		return units.Length(in64) * units.Inch / 64
	}
	return units.Length(mm) * units.Millimetre
}

// inch is n inches as 64ths.
func inch(n float64) int { return int(n * 64) }

// swatch is a plain piece of the top in hand, as large as a box about a part.
func (k kit) swatch(w, d units.Length) design.Design {
	out := design.Design{Outline: edit.Rectangle(w, d), Thickness: k.d.Thickness, Finish: k.d.Finish}
	for i := range out.Outline.Nodes {
		out.Outline.Nodes[i].Edge.Side = design.SideSeen
	}
	return out
}

// shapes are outlines of an overall size.
func (k kit) shapes(w, d units.Length) []starter {
	radius, rise := k.size(50, inch(2)), min(d/6, k.size(90, inch(3.5)))
	leg := min(d, w*2/5)
	deep := max(d*2, d+k.size(500, inch(20)))
	round := min(w, max(d, k.size(900, inch(36))))
	list := []struct {
		name, hint string
		o          design.Outline
	}{
		{"Rectangle", "A plain top with its back at a wall.", edit.Rectangle(w, d)},
		{"Bowed front", "A rectangle whose front bows out.", edit.BowedFront(w, d, rise)},
		{"L", "Along the back wall with a return at the left.", edit.LShape(w, d, leg, deep, radius)},
		{"U", "Along the back wall with a return at each side.", edit.UShape(max(w, 3*leg), d, leg, leg, deep, radius)},
		{"Oval", "An ellipse, seen all round.", edit.Oval(w, d)},
		{"Round", "A disc, seen all round.", edit.Round(round)},
	}
	var out []starter
	for _, s := range list {
		o := k.placed(s.o)
		e := edit.SetOutline(o)
		sample := design.Design{Outline: o, Thickness: k.d.Thickness, Finish: k.d.Finish}
		out = append(out, starter{name: s.name, hint: s.hint + " A click takes it; what is on the top stays where it is.",
			sample: sample, edit: &e})
	}
	tool := board.Outline
	return append(out, starter{name: "Draw it", hint: "Draw the outline corner by corner, typing lengths as you go.", tool: &tool})
}

// placed puts an outline where the one in hand lies, with its seen edges' profile.
func (k kit) placed(o design.Outline) design.Outline {
	profile := design.Profile{Kind: design.ProfileEased, Size: panel.StartSize(design.ProfileEased, k.sys)}
	for _, n := range k.d.Outline.Nodes {
		if n.Edge.Side == design.SideSeen {
			profile = n.Edge.Profile
			break
		}
	}
	by := design.Point{}
	if !k.box.Empty() {
		by = design.Point{X: units.FromMM(k.box.Min.X), Y: units.FromMM(k.box.Min.Y)}
	}
	nodes := append([]design.Node(nil), o.Nodes...)
	for i := range nodes {
		n := &nodes[i]
		n.At = n.At.Add(by)
		if n.Edge.Curve == design.CurveSpline {
			n.Edge.C1, n.Edge.C2 = n.Edge.C1.Add(by), n.Edge.C2.Add(by)
		}
		if n.Edge.Side == design.SideSeen {
			n.Edge.Profile = profile
		}
	}
	return design.Outline{Nodes: nodes}
}

// profiles are edges to give one edge, or with edge -1 all seen ones.
func (k kit) profiles(edgeIndex int) []starter {
	var out []starter
	for kind := design.ProfileSquare; kind <= design.ProfileRough; kind++ {
		p := design.Profile{Kind: kind, Size: panel.StartSize(kind, k.sys)}
		e := edit.SetSeenProfiles(p)
		if edgeIndex >= 0 {
			e = edit.SetProfile(edgeIndex, p)
		}
		out = append(out, starter{profile: &p, edit: &e})
	}
	return out
}

func (k kit) sinks() []starter {
	under := design.Profile{Kind: design.ProfileEased, Size: panel.StartSize(design.ProfileEased, k.sys)}
	list := []struct {
		name, hint string
		s          design.Sink
	}{
		{"Under, oval", "Under-mount, oval.", design.Sink{Shape: design.Shape{Kind: design.ShapeEllipse, Width: k.size(430, inch(17)), Depth: k.size(350, inch(14))}}},
		{"Under, rectangle", "Under-mount, rectangular with rounded corners.", design.Sink{Shape: design.Shape{Width: k.size(480, inch(19)), Depth: k.size(330, inch(13)), CornerRadius: k.size(50, inch(2))}}},
		{"Under, D", "Under-mount, straight at the back and bowed in front.", design.Sink{Shape: design.Shape{Kind: design.ShapeD, Width: k.size(500, inch(20)), Depth: k.size(400, inch(16)), CornerRadius: k.size(40, inch(1.5)), Bow: k.size(90, inch(3.5))}}},
		{"Under, round", "Under-mount, round.", design.Sink{Shape: design.Shape{Kind: design.ShapeCircle, Width: k.size(400, inch(16)), Depth: k.size(400, inch(16))}}},
		{"Over, rectangle", "Dropped in; its rim hides the cut-out's edge.", design.Sink{Mount: design.MountOver, Rim: k.size(15, inch(0.625)), Shape: design.Shape{Width: k.size(480, inch(19)), Depth: k.size(380, inch(15)), CornerRadius: k.size(50, inch(2))}}},
		{"Vessel, round", "Stands on the face; only a drain hole goes through.", design.Sink{Mount: design.MountVessel, Drain: k.size(45, inch(1.75)), Shape: design.Shape{Kind: design.ShapeCircle, Width: k.size(400, inch(16)), Depth: k.size(400, inch(16))}}},
		{"Vessel, oval", "Stands on the face; only a drain hole goes through.", design.Sink{Mount: design.MountVessel, Drain: k.size(45, inch(1.75)), Shape: design.Shape{Kind: design.ShapeEllipse, Width: k.size(520, inch(20)), Depth: k.size(380, inch(15))}}},
	}
	var out []starter
	for _, i := range list {
		s := i.s
		s.BowlDepth, s.BowlMass = k.size(140, inch(5.5)), 9
		if s.Mount == design.MountUnder {
			s.Profile = under
		}
		m := k.size(90, inch(3.5))
		sample := k.swatch(s.Shape.Width+2*m, s.Shape.Depth+2*m)
		t := s
		t.ID, t.At = "sink-1", design.Point{X: s.Shape.Width/2 + m, Y: s.Shape.Depth/2 + m}
		sample.Sinks = []design.Sink{t}
		out = append(out, starter{name: i.name, hint: i.hint + inHandHint, sample: sample, put: &board.Put{Sink: &s}})
	}
	return out
}

const inHandHint = " A click here takes it in hand, a click on the top sets it down."

func (k kit) taps() []starter {
	list := []struct {
		name, hint string
		p          design.TapPattern
	}{
		{"One hole", "A single hole for a mixer.", design.TapSingle},
		{"Three at 4 in", "Three holes, the outer two 4 in apart.", design.TapThree4},
		{"Three at 8 in", "Three holes, the outer two 8 in apart.", design.TapThree8},
	}
	var out []starter
	for _, i := range list {
		t := design.TapSet{Pattern: i.p, Diameter: k.size(35, inch(1.375))}
		sample := k.swatch(k.size(320, inch(12.5)), k.size(140, inch(5.5)))
		u := t
		u.ID, u.At = "taps-1", design.Point{X: k.size(160, inch(6.25)), Y: k.size(70, inch(2.75))}
		sample.Taps = []design.TapSet{u}
		out = append(out, starter{name: i.name, hint: i.hint + " Set down behind a sink they keep to its centreline." + inHandHint,
			sample: sample, put: &board.Put{Taps: &t}})
	}
	return out
}

func (k kit) holes() []starter {
	list := []struct {
		name string
		kind design.HoleKind
		d    units.Length
	}{
		{"Drain", design.HoleDrain, k.size(45, inch(1.75))},
		{"Soap", design.HoleSoap, k.size(30, inch(1.25))},
		{"Cable", design.HoleCable, k.size(60, inch(2.375))},
		{"Other", design.HoleOther, k.size(35, inch(1.375))},
	}
	var out []starter
	for _, i := range list {
		h := design.Hole{Kind: i.kind, Diameter: i.d}
		sample := k.swatch(k.size(180, inch(7)), k.size(110, inch(4.25)))
		u := h
		u.ID, u.At = "hole-1", design.Point{X: k.size(90, inch(3.5)), Y: k.size(55, inch(2.125))}
		sample.Holes = []design.Hole{u}
		out = append(out, starter{name: i.name, hint: "A plain hole, " + units.Format(i.d, k.sys) + " wide." + inHandHint,
			sample: sample, put: &board.Put{Hole: &h}})
	}
	return out
}

// stockFill is the filling of the design's first channel, or a plain one.
func (k kit) stockFill() (design.Fill, units.Length) {
	for _, c := range k.d.Channels {
		return c.Fill, c.Depth
	}
	return design.Fill{Resin: true, Colour: panel.ResinColours[3].Colour, Opacity: 60 * units.Percent}, k.size(12, inch(0.5))
}

// channels are rivers and pools as wide as the top in hand allows.
func (k kit) channels() []starter {
	fill, depth := k.stockFill()
	w, d := k.size(1200, inch(48)), k.size(560, inch(22))
	if !k.box.Empty() {
		w, d = units.FromMM(k.box.W()), units.FromMM(k.box.H())
	}
	run, wave := w*3/5, d/8
	wide, slim := k.size(80, inch(3.25)), k.size(45, inch(1.75))
	node := func(x, y, width units.Length) design.RiverNode {
		return design.RiverNode{At: design.Point{X: x, Y: y}, Width: width}
	}
	calm := design.River{Nodes: []design.RiverNode{node(-run/2, -wave/2, wide), node(-run/8, wave/3, slim), node(run/4, -wave/4, slim), node(run/2, wave/2, wide)}}
	lively := design.River{Nodes: []design.RiverNode{node(-run/2, 0, slim), node(-run/4, wave*3/2, wide), node(0, -wave, slim), node(run/4, wave, wide), node(run/2, -wave/2, slim)}}
	fall := design.River{Nodes: []design.RiverNode{node(-run/2, -wave/2, wide), node(-run/6, wave/2, slim), node(run/5, -wave/3, wide), node(run/2, wave/3, slim)}, Start: design.EndOpen}
	branch := []design.River{calm, {Nodes: []design.RiverNode{node(-run/8, wave/3, slim), node(run/8, wave*5/4, slim), node(run*3/8, wave*2, slim*2/3)}}}
	pool := design.Region{Outer: edit.Oval(run/2, d/3).Nodes}
	for i := range pool.Outer {
		n, by := &pool.Outer[i], design.Point{X: -run / 4, Y: -d / 6}
		n.At, n.Edge.C1, n.Edge.C2 = n.At.Add(by), n.Edge.C1.Add(by), n.Edge.C2.Add(by)
	}
	list := []struct {
		name, hint string
		c          design.Channel
	}{
		{"Calm river", "A river that keeps its course.", design.Channel{Rivers: []design.River{calm}}},
		{"Lively river", "A river that winds and changes its width.", design.Channel{Rivers: []design.River{lively}}},
		{"Branching", "A river with an arm.", design.Channel{Rivers: branch}},
		{"Over the left edge", "A river that runs over the left edge: it needs a dam.", design.Channel{Rivers: []design.River{fall}}},
		{"Pool", "A recess of its own shape.", design.Channel{Regions: []design.Region{pool}}},
	}
	var out []starter
	for _, i := range list {
		c := i.c
		c.Depth, c.Fill = depth, fill
		sample := k.swatch(w*3/4, d)
		u := c
		u.ID = "channel-1"
		sample.Channels = []design.Channel{u}
		if moved, err := edit.MovePart(u.ID, design.Point{X: w * 3 / 8, Y: d / 2}).Apply(sample); err == nil {
			sample = moved
		}
		out = append(out, starter{name: i.name, hint: i.hint + inHandHint, sample: sample, put: &board.Put{Channel: &c}})
	}
	river, region := board.River, board.Region
	return append(out,
		starter{name: "Draw a river", hint: "Draw the middle of a river point by point.", tool: &river},
		starter{name: "Draw a pool", hint: "Draw a recess of any shape point by point.", tool: &region})
}

func (k kit) glass() []starter {
	bed := design.GlassBed{Grain: k.size(10, inch(0.375)), Coverage: 50 * units.Percent, Depth: k.size(8, inch(0.3125)), Colour: panel.GlassColours[1].Colour}
	for _, g := range k.d.Glass {
		bed.Grain, bed.Coverage, bed.Depth, bed.Colour = g.Grain, g.Coverage, g.Depth, g.Colour
	}
	w, d := k.size(420, inch(16)), k.size(180, inch(7))
	long := k.size(700, inch(28))
	if !k.box.Empty() {
		long = units.FromMM(k.box.W() * 0.7)
	}
	drift := edit.BowedFront(long, k.size(110, inch(4.5)), k.size(50, inch(2))).Nodes
	list := []struct {
		name, hint string
		outer      []design.Node
	}{
		{"Oval bed", "Glass in an oval.", edit.Oval(w, d).Nodes},
		{"Drift along a wall", "A strip with a bowed front, to lie along the back.", drift},
		{"Patch", "Glass in a rectangle.", edit.Rectangle(w*3/4, d).Nodes},
	}
	var out []starter
	for _, i := range list {
		g := bed
		nodes := append([]design.Node(nil), i.outer...)
		for j := range nodes {
			nodes[j].Edge.Side = design.SideSeen
		}
		g.Region = design.Region{Outer: nodes}
		box := geom.EmptyBox()
		for _, n := range nodes {
			box = box.Include(geom.Vec{X: n.At.X.MM(), Y: n.At.Y.MM()})
		}
		m := k.size(60, inch(2.5))
		sample := k.swatch(units.FromMM(box.W())+2*m, units.FromMM(box.H())+2*m)
		u := g
		u.ID = "glass-1"
		sample.Glass = []design.GlassBed{u}
		if moved, err := edit.MovePart(u.ID, design.Point{X: m, Y: m}).Apply(sample); err == nil {
			sample = moved
		}
		out = append(out, starter{name: i.name, hint: i.hint + inHandHint, sample: sample, put: &board.Put{Glass: &g}})
	}
	tool := board.Glass
	return append(out, starter{name: "Draw it", hint: "Draw a bed of glass point by point.", tool: &tool})
}

func (k kit) supports() []starter {
	w, d := k.size(1200, inch(48)), k.size(560, inch(22))
	if !k.box.Empty() {
		w, d = units.FromMM(k.box.W()), units.FromMM(k.box.H())
	}
	board18, ledger, leg, bracket := k.size(18, inch(0.75)), k.size(40, inch(1.5)), k.size(80, inch(3)), k.size(40, inch(1.5))
	at := func(x, y units.Length) design.Point { return design.Point{X: x, Y: y} }
	list := []struct {
		name, hint string
		s          design.Support
	}{
		{"Gable", "The side of a cabinet, front to back.", design.Support{Kind: design.SupportGable, Width: board18, Line: []design.Point{at(0, 0), at(0, d*9/10)}}},
		{"Rail", "The front rail of a cabinet, left to right.", design.Support{Kind: design.SupportRail, Width: board18, Line: []design.Point{at(0, 0), at(w*4/5, 0)}}},
		{"Wall bearing", "A ledger along a wall.", design.Support{Kind: design.SupportWall, Width: ledger, Line: []design.Point{at(0, 0), at(w, 0)}}},
		{"Bracket", "A bracket at the wall; local code and a licensed person decide on it.", design.Support{Kind: design.SupportBracket, Width: bracket, Line: []design.Point{at(0, 0), at(0, d*2/3)}}},
		{"Leg", "A leg, as a patch.", design.Support{Kind: design.SupportLeg, Patch: true, Line: []design.Point{at(0, 0), at(leg, 0), at(leg, leg), at(0, leg)}}},
	}
	var out []starter
	for _, i := range list {
		s := i.s
		sample := k.swatch(w, d)
		u := s
		u.ID = "support-1"
		by := at(w/2, d/20)
		switch s.Kind {
		case design.SupportRail:
			by = at(w/10, d/8)
		case design.SupportWall:
			by = at(0, d-ledger/2)
		case design.SupportBracket:
			by = at(w/2, d/3)
		case design.SupportLeg:
			by = at(w/10, d/8)
		}
		sample.Supports = []design.Support{u}
		if moved, err := edit.MovePart(u.ID, by).Apply(sample); err == nil {
			sample = moved
		}
		out = append(out, starter{name: i.name, hint: i.hint + inHandHint, sample: sample, below: true, put: &board.Put{Support: &s}})
	}
	if e, sample, ok := k.cabinet(w, d, board18); ok {
		out = append([]starter{{name: "Cabinet", hint: "Two gables and two rails under the whole top, at once.", sample: sample, below: true, edit: &e}}, out...)
	}
	tool := board.Support
	return append(out, starter{name: "Draw it", hint: "Draw the line that something carries the top along.", tool: &tool})
}

// cabinet is a cabinet under the whole box of the outline: gables at both sides,
// rails at front and back, set in as is usual for an overhang.
func (k kit) cabinet(w, d, thick units.Length) (edit.Edit, design.Design, bool) {
	side, front, back := k.size(25, inch(1)), k.size(40, inch(1.5)), k.size(20, inch(0.75))
	if w < 4*side || d < 2*(front+back) {
		return edit.Edit{}, design.Design{}, false
	}
	origin := design.Point{}
	if !k.box.Empty() {
		origin = design.Point{X: units.FromMM(k.box.Min.X), Y: units.FromMM(k.box.Min.Y)}
	}
	parts := func(o design.Point) []design.Support {
		x0, x1 := o.X+side+thick/2, o.X+w-side-thick/2
		y0, y1 := o.Y+front, o.Y+d-back
		line := func(kind design.SupportKind, a, b design.Point) design.Support {
			return design.Support{Kind: kind, Width: thick, Line: []design.Point{a, b}}
		}
		p := func(x, y units.Length) design.Point { return design.Point{X: x, Y: y} }
		return []design.Support{
			line(design.SupportGable, p(x0, y0), p(x0, y1)), line(design.SupportGable, p(x1, y0), p(x1, y1)),
			line(design.SupportRail, p(x0, y0+thick/2), p(x1, y0+thick/2)), line(design.SupportRail, p(x0, y1-thick/2), p(x1, y1-thick/2)),
		}
	}
	add := func(d design.Design, o design.Point) (design.Design, error) {
		out := d
		for _, s := range parts(o) {
			var err error
			if out, err = edit.AddSupport(s).Apply(out); err != nil {
				return d, err
			}
		}
		return out, nil
	}
	sample, err := add(k.swatch(w, d), design.Point{})
	return edit.Edit{Name: "Add cabinet", Apply: func(d design.Design) (design.Design, error) { return add(d, origin) }}, sample, err == nil
}

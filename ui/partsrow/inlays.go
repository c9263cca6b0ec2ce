package partsrow

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/bring"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/panel"
)

// stockFill is the filling of the design's first channel, or a plain one.
func (k kit) stockFill() (design.Fill, units.Length) {
	for _, c := range k.d.Channels {
		return c.Fill, c.Depth
	}
	return design.Fill{Resin: true, Colour: panel.ResinColours[3].Colour,
		Opacity: 60 * units.Percent}, k.size(12, 0.5)
}

// channels are rivers and pools as wide as the top in hand allows.
func (k kit) channels() []starter {
	fill, depth := k.stockFill()
	w, d := k.size(1200, 48), k.size(560, 22)
	if !k.box.Empty() {
		w, d = units.FromMM(k.box.W()), units.FromMM(k.box.H())
	}
	run, wave := w*3/5, d/8
	wide, slim := k.size(80, 3.25), k.size(45, 1.75)
	node := func(x, y, width units.Length) design.RiverNode {
		return design.RiverNode{At: design.Point{X: x, Y: y}, Width: width}
	}
	calm := design.River{Nodes: []design.RiverNode{node(-run/2, -wave/2, wide),
		node(-run/8, wave/3, slim), node(run/4, -wave/4, slim), node(run/2, wave/2, wide)}}
	lively := design.River{Nodes: []design.RiverNode{node(-run/2, 0, slim),
		node(-run/4, wave*3/2, wide), node(0, -wave, slim), node(run/4, wave, wide), node(run/2,
			-wave/2, slim)}}
	fall := design.River{Nodes: []design.RiverNode{node(-run/2, -wave/2, wide),
		node(-run/6, wave/2, slim), node(run/5, -wave/3, wide), node(run/2, wave/3,
			slim)}, Start: design.EndOpen}
	branch := []design.River{calm, {Nodes: []design.RiverNode{node(-run/8, wave/3, slim),
		node(run/8, wave*5/4, slim), node(run*3/8, wave*2, slim*2/3)}}}
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
		{"Lively river", "A river that winds and changes its width.",
			design.Channel{Rivers: []design.River{lively}}},
		{"Branching", "A river with an arm.", design.Channel{Rivers: branch}},
		{"Over the left edge", "A river that runs over the left edge: it needs a dam.",
			design.Channel{Rivers: []design.River{fall}}},
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
		if moved, err := edit.MovePart(u.ID, design.Point{X: w * 3 / 8,
			Y: d / 2}).Apply(sample); err == nil {
			sample = moved
		}
		out = append(out, starter{name: i.name, hint: i.hint + inHandHint, sample: sample,
			put: &board.Put{Channel: &c}})
	}
	freehand, river, region := board.Freehand, board.River, board.Region
	return append(out,
		starter{name: "Draw freehand", hint: "Draw a river in one stroke; it is fitted smoothly. From a river on it is a branch, " +
			"round an area a pool.", tool: &freehand, icon: icon.Stroke},
		starter{name: "Draw a river", hint: "Draw the middle of a river point by point.", tool: &river},
		starter{name: "Draw a pool", hint: "Draw a recess of any shape point by point.", tool: &region}, fromFile(bring.Channel))
}

// glass is beds to seed with glass.
func (k kit) glass() []starter {
	bed := design.GlassBed{Grain: k.size(10, 0.375), Coverage: 50 * units.Percent,
		Depth: k.size(8, 0.3125), Colour: panel.GlassColours[1].Colour}
	for _, g := range k.d.Glass {
		bed.Grain, bed.Coverage, bed.Depth, bed.Colour = g.Grain, g.Coverage, g.Depth, g.Colour
	}
	w, d := k.size(420, 16), k.size(180, 7)
	long := k.size(700, 28)
	if !k.box.Empty() {
		long = units.FromMM(k.box.W() * 0.7)
	}
	drift := edit.BowedFront(long, k.size(110, 4.5), k.size(50, 2)).Nodes
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
		m := k.size(60, 2.5)
		sample := k.swatch(units.FromMM(box.W())+2*m, units.FromMM(box.H())+2*m)
		u := g
		u.ID = "glass-1"
		sample.Glass = []design.GlassBed{u}
		if moved, err := edit.MovePart(u.ID, design.Point{X: m, Y: m}).Apply(sample); err == nil {
			sample = moved
		}
		out = append(out, starter{name: i.name, hint: i.hint + inHandHint, sample: sample,
			put: &board.Put{Glass: &g}})
	}
	paint, wipe, bank, flood, tool := board.Brush, board.Eraser, board.Bank, board.Flood, board.Glass
	return append(out,
		starter{name: "Paint it", hint: "Paint glass with a round brush.", tool: &paint, icon: icon.Brush},
		starter{name: "Along a bank", hint: "A strip of glass that follows the bank of a channel.", tool: &bank, icon: icon.Bank},
		starter{name: "Fill", hint: "Fill what lies between edges, banks and holes.", tool: &flood, icon: icon.Flood},
		starter{name: "Wipe away", hint: "Take glass away with a round brush.", tool: &wipe, icon: icon.Remove},
		starter{name: "Draw it", hint: "Draw a bed of glass point by point.", tool: &tool}, fromFile(bring.Glass))
}

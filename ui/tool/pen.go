package tool

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// pen is a drawing under way, point by point.
type pen struct {
	points []geom.Vec
	at     geom.Vec // where the next point would go
	shown  bool
	snap   snap
	typed  *typed
	field  string       // the measure that a number goes to
	pins   []pin        // what was typed for the next point
	width  units.Length // of a river at the next point, 0 for the stock's
	widths []units.Length
	fault  string
	edge   int // of the outline, that is drawn through points; -1 for that beside the first one
}

// Stock is what newly drawn parts start from. The board's owner may set it;
// what the design has already is continued first.
type Stock struct {
	Channel design.Channel // its depth, fill; the rivers are drawn
	Width   units.Length   // of a river
	Glass   design.GlassBed
	Support design.Support
}

// StockOf is a plain stock in round figures of the maker's system: half an inch
// deep, two inches wide.
func StockOf(sys units.System) Stock {
	depth, width, grain, gable := 12*units.Millimetre, 60*units.Millimetre, 8*units.Millimetre, 18*units.Millimetre
	if sys == units.Imperial {
		depth, width, grain, gable = units.Inch/2, 2*units.Inch, units.Inch*3/8, units.Inch*3/4
	}
	return Stock{
		Channel: design.Channel{Depth: depth, Fill: design.Fill{
			Resin: true, Colour: design.Colour{R: 0x1f, G: 0x6f, B: 0x86}, Opacity: 60 * units.Percent,
		}},
		Width: width,
		Glass: design.GlassBed{
			Grain: grain, Coverage: 50 * units.Percent, Depth: depth,
			Colour: design.Colour{R: 0x8e, G: 0xca, B: 0xc8},
		},
		Support: design.Support{Kind: design.SupportGable, Width: gable},
	}
}

// closes reports whether the tool draws a closed chain.
func (t Tool) closes() bool { return t == Outline || t == Region || t == Glass }

// need is how many points the drawing takes at least.
func (t Tool) need() int {
	switch {
	case t.closes():
		return 3
	case t == Through:
		return 1
	}
	return 2
}

// aim moves the place where the next point would go.
func (h *Hand) aim(p Pointer) {
	k := h.pen
	k.shown = true
	if k.typed != nil {
		return
	}
	if h.onFirst(p) {
		k.at, k.snap = k.points[0], snap{at: k.points[0], words: "On the first point: a click closes the shape"}
		return
	}
	st := &still{}
	if h.tool != Outline {
		st = h.newStill(grip{}, nil, geom.Vec{})
		st.edges = true
		if n := len(k.points); n > 0 && h.tool != Through {
			st.arms = []arm{{fixed: k.points[n-1], name: "the line", edge: -1}}
		}
	}
	for i, q := range k.points {
		what := "a point set before"
		if i == len(k.points)-1 {
			what = "the last point"
		}
		st.marks = append(st.marks, mark{at: q, what: what})
	}
	k.snap = h.snapper(st, p).plane(p.At)
	k.at = k.snap.at
}

// onFirst reports whether a click would close the shape.
func (h *Hand) onFirst(p Pointer) bool {
	k := h.pen
	return h.tool.closes() && len(k.points) >= h.tool.need() && k.points[0].Dist(p.At) <= p.reach(reachGrip)
}

// point sets a point down, or closes or ends the drawing.
func (h *Hand) point(p Pointer) {
	k := h.pen
	if p.Double && len(k.points) >= h.tool.need() {
		h.finish(p)
		return
	}
	if h.onFirst(p) {
		h.finish(p)
		return
	}
	k.typed = nil
	h.aim(p)
	h.penSet()
}

func (h *Hand) setPoint(at geom.Vec, p Pointer) {
	k := h.pen
	pins := k.pins
	k.typed, k.pins, k.fault = nil, nil, ""
	if n := len(k.points); n > 0 && k.points[n-1].Dist(at) < 1e-6 {
		return
	}
	k.points, k.widths = append(k.points, at), append(k.widths, h.penRiverWidth())
	k.at = at
	k.field = ""
	if len(pins) > 0 {
		k.field = pins[0].id
	}
	if h.tool == Support && len(k.points) == 2 {
		h.finish(p)
	}
}

// finish makes the drawing part of the design.
func (h *Hand) finish(p Pointer) {
	k := h.pen
	if len(k.points) < h.tool.need() {
		k.fault = "This needs at least " + countWord(h.tool.need())
		return
	}
	d := h.s.Design()
	done := false
	switch h.tool {
	case Outline:
		done = h.do(edit.Edit{Name: "Draw outline", Apply: edit.SetOutline(design.Outline{
			Nodes: chain(k.points, d.Outline.Nodes)}).Apply})
	case River:
		done = h.add(h.addRiver(k.points, p))
	case Region:
		c := h.stockChannel()
		c.Regions = []design.Region{{Outer: chain(k.points, nil)}}
		done = h.add(edit.AddChannel(c))
	case Glass:
		bed := h.stockNow().Glass
		if n := len(d.Glass); n > 0 {
			bed = d.Glass[n-1]
		}
		bed.ID, bed.Region = "", design.Region{Outer: chain(k.points, nil)}
		done = h.add(edit.AddGlass(bed))
	case Through:
		if e, edge, ok := h.throughEdit(k.points); ok {
			if done = h.do(e); done {
				h.SetTool(Select)
				h.choose(grip{kind: gripEdge, node: edge})
				return
			}
		}
	case Support:
		s := h.stockNow().Support
		s.ID, s.Line, s.Patch = "", []design.Point{point(k.points[0]), point(k.points[1])}, false
		done = h.add(edit.AddSupport(s))
	}
	if done {
		h.SetTool(Select)
		return
	}
	k.fault, h.note = h.note, ""
}

// chain makes points a counter-clockwise chain of straight edges, with the seen
// profile of the chain that it takes the place of.
func chain(points []geom.Vec, old []design.Node) []design.Node {
	l := geom.Loop(points)
	if l.Area() < 0 {
		l = l.Reversed()
	}
	var profile design.Profile
	for _, n := range old {
		if n.Edge.Side == design.SideSeen {
			profile = n.Edge.Profile
			break
		}
	}
	nodes := make([]design.Node, len(l))
	for i, q := range l {
		nodes[i] = design.Node{At: point(q), Edge: design.Edge{Profile: profile}}
	}
	return nodes
}

// stockChannel is a channel of the depth and fill that the design has already,
// else of the stock's.
func (h *Hand) stockChannel() design.Channel {
	c := h.stockNow().Channel
	if have := h.s.Design().Channels; len(have) > 0 {
		c = have[len(have)-1]
	}
	c.ID, c.Rivers, c.Regions = "", nil, nil
	return c
}

// onEdge is how near in millimetres an end must lie to an edge to have been put
// on it, as the snap does.
const onEdge = 1e-3

// addRiver is the edit that adds a river. An end that was put on an edge of the
// top stays on it.
func (h *Hand) addRiver(points []geom.Vec, p Pointer) edit.Edit {
	c := h.river(points, p)
	add := edit.AddChannel(c)
	ends := map[design.RiverSide]geom.Vec{design.RiverStart: points[0], design.RiverFinish: points[len(points)-1]}
	return edit.Edit{Name: add.Name, Apply: func(d design.Design) (design.Design, error) {
		out, err := add.Apply(d)
		if err != nil {
			return d, err
		}
		made := edit.NewParts(d, out)
		for _, end := range []design.RiverSide{design.RiverStart, design.RiverFinish} {
			at := point(ends[end])
			if _, _, off, ok := edit.NearestEdge(d, at); len(made) != 1 || !ok || off.MM() > onEdge {
				continue
			}
			if tied, err := edit.TieRiver(made[0], 0, end).Apply(out); err == nil {
				out = tied
			}
		}
		return out, nil
	}}
}

// river is a channel with one river through the points. It runs over an edge
// where it starts or ends outside the top or near its rim.
func (h *Hand) river(points []geom.Vec, p Pointer) design.Channel {
	c := h.stockChannel()
	s := h.s.Report().Solid
	end := func(q geom.Vec) design.RiverEnd {
		if len(s.Outline) == 0 {
			return design.EndRound
		}
		near, _ := distance(q, s.Outline, true)
		if !s.Outline.Contains(q) || near <= p.reach(reachEdge) {
			return design.EndOpen
		}
		return design.EndRound
	}
	r := design.River{Start: end(points[0]), End: end(points[len(points)-1])}
	for i, q := range points {
		r.Nodes = append(r.Nodes, design.RiverNode{At: point(q), Width: h.pen.widths[i]})
	}
	c.Rivers = []design.River{r}
	return c
}

func countWord(n int) string {
	return [...]string{1: "one point", 2: "two points", 3: "three points"}[n]
}

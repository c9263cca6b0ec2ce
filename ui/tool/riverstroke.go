package tool

import (
	"errors"
	"fmt"
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// riverCraft makes a river of a stroke, or a branch where it starts or ends in a
// channel, a pool where its ends meet, and an island where that lies in a channel.
type riverCraft struct {
	width, tolerance units.Length // 0 for what the job's stock has, and what the zoom asks for
}

func (c *riverCraft) aim(*Hand, *free)   {}
func (c *riverCraft) trail(*Hand, *free) {}

// widthNow is how wide a river is drawn.
func (c *riverCraft) widthNow(h *Hand) units.Length {
	if c.width > 0 {
		return c.width
	}
	return h.stockNow().Width
}

// toleranceNow is how far a fitted river may lie off the stroke: unless it was
// typed, what a hand can't help at this zoom, two points of the picture.
func (c *riverCraft) toleranceNow(h *Hand) units.Length {
	if c.tolerance > 0 {
		return c.tolerance
	}
	want, steps := h.at.reach(2), []units.Length{units.Millimetre, 2 * units.Millimetre, 3 * units.Millimetre,
		5 * units.Millimetre, 8 * units.Millimetre, 12 * units.Millimetre, 20 * units.Millimetre}
	if h.s.Job().Units == units.Imperial {
		steps = []units.Length{units.Inch / 32, units.Inch / 16, units.Inch / 8, units.Inch / 4, units.Inch / 2, units.Inch}
	}
	for _, s := range steps {
		if s.MM() >= want {
			return s
		}
	}
	return steps[len(steps)-1]
}

// toleranceFor is the tolerance for a stroke: a small one is not to lose its shape.
func (c *riverCraft) toleranceFor(h *Hand, points []geom.Vec) units.Length {
	if c.tolerance > 0 {
		return c.tolerance
	}
	box := geom.Loop(points).Bounds()
	return min(c.toleranceNow(h), max(units.Millimetre/2, units.FromMM(math.Hypot(box.W(), box.H())/smallShare)))
}

// smallShare is how many times its tolerance a stroke measures across at least.
const smallShare = 40

func (c *riverCraft) measures(h *Hand, _ *free) []measure {
	return []measure{
		{"Width", c.widthNow(h), units.Millimetre, func(l units.Length) { c.width = l }},
		{"Fitted within", c.toleranceNow(h), units.Millimetre / 10, func(l units.Length) { c.tolerance = l }},
	}
}

// closes reports whether a stroke comes back to its start.
func closes(points []geom.Vec, p Pointer) bool {
	if len(points) < 8 {
		return false
	}
	long := 0.0
	for i := 1; i < len(points); i++ {
		long += points[i].Dist(points[i-1])
	}
	near := p.reach(reachGrip)
	return points[0].Dist(points[len(points)-1]) <= near && long > 6*near
}

// covering is the channel that has a place in it, or else within reach.
func covering(s slab.Solid, at geom.Vec, reach float64) (found slab.Recess, ok bool) {
	for _, r := range s.Recesses {
		near := rim(at, r.Loops)
		if inside(at, r.Loops) {
			near = 0
		}
		if near <= reach {
			found, ok, reach = r, true, near
		}
	}
	return found, ok
}

// joining is the channel that a stroke with an end at a place joins: the river's
// own bank there meets it.
func (c *riverCraft) joining(h *Hand, at geom.Vec) (slab.Recess, bool) {
	return covering(h.s.Report().Solid, at, math.Max(c.widthNow(h).MM()/2, h.at.reach(reachEdge)))
}

func (c *riverCraft) finish(h *Hand, f *free) (string, error) {
	if closes(f.points, f.at) {
		return c.finishLoop(h, f)
	}
	s, d := h.s.Report().Solid, h.s.Design()
	first, last := f.points[0], f.points[len(f.points)-1]
	if first.Dist(last) < f.at.reach(reachAgain) && len(f.points) < 8 {
		return "", errors.New("a click draws nothing here: press, draw the river in one stroke, and let go")
	}
	from, joins := c.joining(h, first)
	to, meets := c.joining(h, last)
	host := from
	if !joins {
		host = to
	}
	var trunk design.Channel
	if joins || meets {
		if p, ok := find(d, host.Part); ok && p.channel != nil {
			trunk = *p.channel
		}
		meets = meets && to.Part == host.Part
	}
	way, open, err := clipped(f.points, s.Outline, f.at.reach(reachGrip), [2]bool{!joins, !meets})
	if err != nil {
		return "", err
	}
	points := make([]design.Point, len(way))
	for i, p := range way {
		points[i] = point(p)
	}
	r, off, err := edit.BranchFromStroke(trunk, points, c.widthNow(h), c.toleranceFor(h, f.points))
	if err != nil {
		return "", err
	}
	told := h.fitWords(len(r.Nodes), off)
	var ties []design.RiverSide
	for i, end := range [...]struct {
		node int
		kind *design.RiverEnd
		side design.RiverSide
	}{{0, &r.Start, design.RiverStart}, {len(r.Nodes) - 1, &r.End, design.RiverFinish}} {
		if !open[i] {
			continue
		}
		*end.kind = design.EndOpen
		if edge, share, _, ok := edit.NearestEdge(d, r.Nodes[end.node].At); ok {
			if at, ok := edit.OnEdge(d, edge, share); ok {
				r.Nodes[end.node].At = at
				ties = append(ties, end.side)
			}
		}
	}
	if trunk.ID != "" {
		add := edit.AddRiver(trunk.ID, r)
		add.Name = "Add branch"
		return told + ": a branch of the " + partName(d, trunk.ID), h.doNew(tied(add, trunk.ID, len(trunk.Rivers), ties), trunk.ID)
	}
	made := h.stockChannel()
	made.Rivers = []design.River{r}
	add := edit.AddChannel(made)
	add.Name = "Draw river"
	return told, h.doNew(tied(add, "", 0, ties), "")
}

// tied is an edit after which ends of a river stay on the edges that they lie on;
// id is "" for a channel that the edit makes.
func tied(e edit.Edit, id design.ID, river int, ends []design.RiverSide) edit.Edit {
	return edit.Edit{Name: e.Name, Apply: func(d design.Design) (design.Design, error) {
		out, err := e.Apply(d)
		if err != nil {
			return d, err
		}
		of := id
		if made := edit.NewParts(d, out); of == "" && len(made) == 1 {
			of = made[0]
		}
		for _, end := range ends {
			// A channel that is held as a whole keeps that.
			if held, err := edit.TieRiver(of, river, end).Apply(out); err == nil {
				out = held
			}
		}
		return out, nil
	}}
}

// clipped is a stroke less what lies beyond the top at its ends. Where it comes
// from beyond, or starts within reach of the rim, it starts on the rim and is
// open there; ends that may not be open are left alone.
func clipped(points []geom.Vec, outline geom.Loop, reach float64, may [2]bool) (way []geom.Vec, open [2]bool, err error) {
	way = append([]geom.Vec(nil), points...)
	if len(outline) == 0 {
		return way, open, nil
	}
	for end := range 2 {
		if may[end] {
			if way, open[end] = clipStart(way, outline, reach); way == nil {
				return nil, open, errors.New("the stroke lies beyond the top: draw it over the top")
			}
		}
		for i, j := 0, len(way)-1; i < j; i, j = i+1, j-1 {
			way[i], way[j] = way[j], way[i]
		}
	}
	return way, open, nil
}

func clipStart(way []geom.Vec, outline geom.Loop, reach float64) ([]geom.Vec, bool) {
	if !outline.Contains(way[0]) {
		for i := 1; i < len(way); i++ {
			if outline.Contains(way[i]) {
				t := cast(way[i], way[i-1].Sub(way[i]).Unit(), outline)
				on := way[i].Add(way[i-1].Sub(way[i]).Unit().Mul(math.Min(t, way[i].Dist(way[i-1]))))
				return append([]geom.Vec{on}, way[i:]...), true
			}
		}
		return nil, false
	}
	if near, on := distance(way[0], outline, true); near <= reach {
		return append([]geom.Vec{on}, way...), true
	}
	return way, false
}

// fitWords says how well a stroke was fitted.
func (h *Hand) fitWords(points int, off units.Length) string {
	least := units.Millimetre / 10
	if h.s.Job().Units == units.Imperial {
		least = units.Inch / 16
	}
	near := h.length(off.MM())
	if off < least {
		near = "less than " + h.length(least.MM())
	}
	return fmt.Sprintf("Fitted with %d points, within %s of your stroke", points, near)
}

// finishLoop makes a pool or an island of a stroke whose ends meet.
func (c *riverCraft) finishLoop(h *Hand, f *free) (string, error) {
	chain, off, err := edit.LoopFromStroke(f.way(), c.toleranceFor(h, f.points))
	if err != nil {
		return "", err
	}
	told := h.fitWords(len(chain), off)
	s, d := h.s.Report().Solid, h.s.Design()
	var host slab.Recess
	in := false
	for _, p := range f.points {
		if host, in = covering(s, p, 0); in {
			break
		}
	}
	if !in {
		made := h.stockChannel()
		made.Regions = []design.Region{{Outer: chain}}
		add := edit.AddChannel(made)
		add.Name = "Draw pool"
		return told + ": a pool", h.doNew(add, "")
	}
	for _, p := range f.points {
		if !inside(p, host.Loops) {
			return told + ": a pool of the " + partName(d, host.Part), h.doNew(edit.AddPool(host.Part, chain), host.Part)
		}
	}
	had, _ := find(d, host.Part)
	if err := h.doNew(edit.AddIsland(host.Part, chain), host.Part); err != nil {
		return "", err
	}
	told += ": an island in the " + partName(d, host.Part)
	if now, _ := find(h.s.Design(), host.Part); now.channel != nil && len(now.channel.Rivers) < len(had.channel.Rivers) {
		told += ", whose banks are points to drag from now on"
	}
	return told, nil
}

func (c *riverCraft) show(h *Hand, f *free, o *Overlay) {
	if closed := f.pressed && closes(f.points, f.at); closed {
		o.Ghost = append(o.Ghost, Line{Points: f.points, Closed: true})
	} else {
		f.swath(o, c.widthNow(h).MM())
	}
	if f.shown {
		w := c.widthNow(h).MM()
		o.Ghost = append(o.Ghost, ring(f.at.At, w/2))
		o.Dims = append(o.Dims, Dim{From: f.at.At.Sub(geom.Vec{X: w / 2}), To: f.at.At.Add(geom.Vec{X: w / 2}),
			Text: "width " + h.length(w), Active: f.pressed, Beside: geom.Vec{Y: 1}, Bare: true})
	}
}

func (c *riverCraft) hint(h *Hand, f *free) string {
	s := h.s.Report().Solid
	if f.pressed {
		switch {
		case closes(f.points, f.at):
			if _, in := covering(s, f.points[0], 0); in {
				return "Let go here and the stroke closes: within a channel it leaves an island, else it widens it. Esc takes it back."
			}
			return "Let go here and the stroke closes to a pool. Esc takes it back."
		case len(s.Outline) > 0 && !s.Outline.Contains(f.at.At):
			return "Let go here and the river runs over the edge, and stays on that edge when the top changes. Esc takes it back."
		}
		if _, in := c.joining(h, f.at.At); in && len(f.points) > 8 {
			return "Let go here and the river runs into this channel. Esc takes it back."
		}
		return "Let go to end the river; back at its start it closes to a pool. Esc takes it back."
	}
	sizes := "A number sets the width, Tab Tab the fit (" + h.length(c.toleranceNow(h).MM()) + "), [ ] narrower, wider; Esc ends."
	if f.told != "" {
		return "Draw a branch of it, or Esc to drag its points and banks."
	}
	if f.shown {
		if _, in := c.joining(h, f.at.At); in {
			return "Press and draw a branch of this channel, or round an island in it. " + sizes
		}
	}
	return "Press and draw the river in one stroke, over an edge if you like. " + sizes
}

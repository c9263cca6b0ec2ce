package tool

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// Put is a new part to be placed: one of its fields is set. The part lies about
// the place that stands for it (a sink's centre, a tap set's middle, the middle
// of a channel), wherever that is; a click moves it there.
type Put struct {
	Sink    *design.Sink
	Taps    *design.TapSet
	Hole    *design.Hole
	Channel *design.Channel
	Glass   *design.GlassBed
	Support *design.Support
	// Outline becomes the outline of the top, its islands cut-outs.
	Outline *design.Region
	// With are tap holes that come with a sink and keep to it.
	With []design.TapSet
	// Brought is a part whose shape comes from a file.
	Brought bool
}

// putID is the ID of a part in hand, which no part of a design can have.
const putID design.ID = "\x00in hand"

// inHand is a part in hand and where it would lie.
type inHand struct {
	put   Put
	name  string
	home  geom.Vec // the place that stands for the part, as it came
	at    geom.Vec
	shown bool // the mouse is on the board
	snap  snap
	ghost []geom.Loop
	fault string

	ghostAt geom.Vec // where the ghost was made for
	typed   *typed
	field   string // the measure that a number goes to
	pins    []pin  // what was typed
}

// Put takes a new part in hand: it follows the mouse until a click sets it down
// or Esc puts it back. A Put without a part empties the hand.
func (h *Hand) Put(p Put) {
	h.Cancel()
	h.tool, h.pen, h.free = Select, nil, nil
	d := p.alone(design.Point{})
	id := putID
	home, ok := geom.Vec{}, false
	if part, found := find(d, id); found {
		home, ok = partPlace(part, slab.Solid{}, id)
	}
	if !ok {
		return
	}
	h.put = &inHand{put: p, name: partName(d, putID), home: home}
	if p.Outline != nil {
		h.put.name = "outline"
	}
	h.s.Select()
}

// alone is a design of nothing but the part, moved, under [putID].
func (p Put) alone(by design.Point) design.Design {
	var d design.Design
	switch {
	case p.Sink != nil:
		k := *p.Sink
		k.ID = putID
		d.Sinks = []design.Sink{k}
	case p.Taps != nil:
		k := *p.Taps
		k.ID = putID
		d.Taps = []design.TapSet{k}
	case p.Hole != nil:
		k := *p.Hole
		k.ID = putID
		d.Holes = []design.Hole{k}
	case p.Channel != nil:
		k := *p.Channel
		k.ID = putID
		d.Channels = []design.Channel{k}
	case p.Glass != nil:
		k := *p.Glass
		k.ID = putID
		d.Glass = []design.GlassBed{k}
	case p.Support != nil:
		k := *p.Support
		k.ID = putID
		d.Supports = []design.Support{k}
	case p.Outline != nil:
		d.Glass = []design.GlassBed{{ID: putID, Region: *p.Outline}}
	default:
		return d
	}
	if by == (design.Point{}) {
		return d
	}
	if moved, err := edit.MovePart(putID, by).Apply(d); err == nil {
		return moved
	}
	return d
}

// carry moves the part in hand to the mouse.
func (h *Hand) carry(p Pointer) {
	k := h.put
	d := h.s.Design()
	k.shown = true
	if k.typed == nil {
		k.fault = ""
	}
	if k.put.Taps != nil {
		h.carryTaps(p)
	} else {
		k.snap = h.snapper(h.stillFor(k), p).plane(p.At)
		k.at = k.snap.at
	}
	if at, ok := h.holdPut(k, k.at); ok && len(k.pins) > 0 {
		h.putAt(k, at)
	}
	ghost := k.put.alone(k.by())
	if k.put.Taps != nil || k.put.Channel != nil {
		// What keeps to a sink or runs to an edge needs the top to be seen.
		ghost.Outline, ghost.Sinks, ghost.Thickness = d.Outline, d.Sinks, d.Thickness
	}
	k.ghost, k.ghostAt = loopsOf(slab.Resolve(ghost), putID), k.at
}

// putAt puts the part in hand elsewhere than at the mouse.
func (h *Hand) putAt(k *inHand, at geom.Vec) {
	k.at = at
	t := k.put.Taps
	if t == nil {
		return
	}
	set := *t
	k.home = at
	if f, ok := tapFrame(h.s.Design(), h.s.Report().Solid, set); ok && set.Sink != "" {
		set.SetBack = units.FromMM(f.back.Sub(at).Dot(f.up))
		set.Offset = units.FromMM(at.Sub(f.back).Dot(f.right))
	} else {
		set.At = point(at)
	}
	k.put.Taps = &set
}

// stillFor is what a part in hand can be held to.
func (h *Hand) stillFor(k *inHand) *still {
	st := h.newStill(grip{}, nil, geom.Vec{})
	box := geom.EmptyBox()
	for _, l := range k.ghost {
		box = box.Union(l.Bounds())
	}
	if !box.Empty() {
		st.body = &body{id: putID, reach: geom.Box{Min: box.Min.Sub(k.at), Max: box.Max.Sub(k.at)},
			below: k.put.Support != nil}
	}
	return st
}

func (k *inHand) by() design.Point { return point(k.at).Sub(point(k.home)) }

// carryTaps moves a tap set: near the centreline of a sink, behind its middle,
// it keeps to that sink.
func (h *Hand) carryTaps(p Pointer) {
	k := h.put
	d, s := h.s.Design(), h.s.Report().Solid
	set := *k.put.Taps
	set.Sink, set.Offset, set.SetBack = "", 0, 0
	for _, sink := range d.Sinks {
		f, ok := sinkFrame(sink, s)
		if !ok {
			continue
		}
		rel := p.At.Sub(f.centre)
		if rel.Dot(f.up) < 0 || rel.Dot(f.right) > p.reach(reachLine) || -rel.Dot(f.right) > p.reach(reachLine) {
			continue
		}
		sn := h.snapper(nil, p)
		sn.reach = p.reach(reachLine)
		k.snap = f.snap(sn, p.At)
		k.at, k.home = k.snap.at, k.snap.at
		set.Sink = sink.ID
		set.Offset = point(geom.Vec{X: k.at.Sub(f.back).Dot(f.right)}).X
		set.SetBack = point(geom.Vec{X: f.back.Sub(k.at).Dot(f.up)}).X
		set.At, set.Rotation = design.Point{}, 0
		k.put.Taps = &set
		return
	}
	k.snap = h.snapper(h.stillFor(k), p).plane(p.At)
	k.at, k.home = k.snap.at, k.snap.at
	set.At = point(k.at)
	k.put.Taps = &set
}

// setDown adds the part in hand to the design and selects it.
func (h *Hand) setDown(p Pointer) {
	defer h.lookUnder()
	h.carry(p)
	k := h.put
	d := k.put.alone(k.by())
	var e edit.Edit
	switch {
	case k.put.Sink != nil:
		d.Sinks[0].ID = ""
		e = withTaps(edit.AddSink(d.Sinks[0]), k.put.With)
	case k.put.Taps != nil:
		d.Taps[0].ID = ""
		e = edit.AddTaps(d.Taps[0])
	case k.put.Hole != nil:
		d.Holes[0].ID = ""
		e = edit.AddHole(d.Holes[0])
	case k.put.Channel != nil:
		d.Channels[0].ID = ""
		e = edit.AddChannel(d.Channels[0])
	case k.put.Glass != nil:
		d.Glass[0].ID = ""
		e = edit.AddGlass(d.Glass[0])
	case k.put.Support != nil:
		d.Supports[0].ID = ""
		e = edit.AddSupport(d.Supports[0])
	case k.put.Outline != nil:
		if h.do(edit.PlaceTop(d.Glass[0].Region)) {
			h.put = nil
			h.choose(grip{kind: gripTop})
		} else {
			k.fault, h.note = h.note, ""
		}
		return
	}
	if k.put.Brought {
		e = edit.Edit{Name: "Bring in " + k.name, Apply: e.Apply}
	}
	if h.add(h.kept(k, e)) {
		h.put = nil
	} else {
		k.fault, h.note = h.note, ""
	}
}

// add does an edit that adds a part, and selects the new one.
func (h *Hand) add(e edit.Edit) bool {
	before := h.s.Design()
	if !h.do(e) {
		return false
	}
	// What comes along with a part is not what was put.
	if made := edit.NewParts(before, h.s.Design()); len(made) > 0 {
		h.choose(grip{kind: gripPart, part: made[0]})
	}
	return true
}

// withTaps is an edit that adds a sink, and after it tap holes that keep to it.
func withTaps(add edit.Edit, taps []design.TapSet) edit.Edit {
	if len(taps) == 0 {
		return add
	}
	return edit.Edit{Name: add.Name, Apply: func(d design.Design) (design.Design, error) {
		out, err := add.Apply(d)
		if err != nil {
			return d, err
		}
		made := edit.NewParts(d, out)
		for _, t := range taps {
			t.ID, t.Sink = "", made[0]
			if out, err = edit.AddTaps(t).Apply(out); err != nil {
				return d, err
			}
		}
		return out, nil
	}}
}

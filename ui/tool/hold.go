package tool

import (
	"math"
	"reflect"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// hold is the thing in hand: dragged, nudged, or waiting for a number to be
// typed. All its edits start from the design as it was when it was taken, so
// they are one gesture.
type hold struct {
	grip   grip
	others []grip // moved along with it
	d0     design.Design
	s0     slab.Solid
	still  *still

	seen      design.Design // d0 less what is hidden, which holds no snap
	seenSolid slab.Solid

	anchor geom.Vec // where the grip was when taken
	grab   geom.Vec // where the mouse took it
	target geom.Vec // where the grip is now
	dir    geom.Vec // unit vector of the line that the grip keeps to, or zero
	frame  *frame   // of the sink whose centreline it keeps to, or nil

	pressed bool // by the mouse; else by keys
	begun   bool // an edit of the gesture stands in the session
	field   string
	typed   *typed
	pins    []pin   // measures that were typed in this gesture and go on holding
	given   []given // measures of its own that this gesture has set
	snap    snap
	fault   string // why the last edit was refused
}

// dragStart is how many points the mouse goes before a press becomes a drag.
const dragStart = 3

// take takes hold of g and others in the design as it stands.
func (h *Hand) take(g grip, others []grip, p Pointer) (*hold, bool) {
	d, s := h.s.Design(), h.s.Report().Solid
	anchor, ok := g.anchor(d, s, p.PerMM)
	if !ok {
		return nil, false
	}
	k := &hold{grip: g, others: others, d0: d, s0: s, anchor: anchor, target: anchor, grab: p.At}
	seen, r := h.s.Seen()
	k.seen, k.seenSolid = seen, r.Solid
	if len(others) > 0 {
		return k, true
	}
	switch {
	case g.kind == gripEdge:
		a, b := edgeEnds(d.Outline.Nodes, g.node)
		k.dir = outward(a, b)
	case g.kind == gripPart:
		if found, _ := find(d, g.part); found.taps != nil && found.taps.Sink != "" {
			if f, ok := tapFrame(d, s, *found.taps); ok {
				k.frame = &f
				k.anchor = f.back.Add(f.right.Mul(found.taps.Offset.MM())).
					Sub(f.up.Mul(found.taps.SetBack.MM()))
				k.target = k.anchor
			}
		}
	}
	return k, true
}

// drag follows the mouse.
func (h *Hand) drag(k *hold, p Pointer) {
	if k.typed != nil {
		return
	}
	if !k.begun && p.At.Dist(k.grab) < p.reach(dragStart) {
		return
	}
	if k.still == nil {
		k.still = newStill(k.seen, k.seenSolid, k.grip, k.others, k.anchor)
	}
	raw := k.anchor.Add(p.At.Sub(k.grab))
	sn := h.snapper(k.still, p)
	if k.grip.own() && len(k.others) == 0 {
		h.dragOwn(k, sn, raw)
		return
	}
	switch {
	case k.frame != nil:
		k.snap = k.frame.snap(sn, raw)
	case k.dir != geom.Vec{}:
		raw = k.anchor.Add(k.dir.Mul(raw.Sub(k.anchor).Dot(k.dir)))
		k.snap = sn.along(raw, k.dir)
	default:
		k.snap = sn.plane(raw)
	}
	h.moveTo(k, k.snap.at)
}

// snap holds a place near a sink's centreline on it, and rounds the set-back
// and the offset.
func (f frame) snap(sn snapper, p geom.Vec) snap {
	offset, setBack := p.Sub(f.back).Dot(f.right), f.back.Sub(p).Dot(f.up)
	out := snap{words: "On the grid of " + sn.grid}
	switch {
	case sn.off:
		setBack, offset = onGrid(setBack, sn.fine), onGrid(offset, sn.fine)
		out.words = snapOff
	case math.Abs(offset) <= sn.reach:
		setBack, offset = onGrid(setBack, sn.step), 0
		out.words = "On the centreline of the sink"
		out.guides = []Line{{Points: []geom.Vec{f.centre, f.back}}}
	default:
		setBack, offset = onGrid(setBack, sn.step), onGrid(offset, sn.step)
	}
	out.at = f.back.Add(f.right.Mul(offset)).Sub(f.up.Mul(setBack))
	return out
}

// dragOwn gives the grip's own measure the size that its handle is dragged to.
func (h *Hand) dragOwn(k *hold, sn snapper, raw geom.Vec) {
	x := k.grip.measure(k.d0, k.anchor, raw)
	var words string
	if k.grip.kind == gripTurn {
		x, words = sn.turn(x)
	} else {
		x, words = sn.size(x)
	}
	k.snap = snap{words: words}
	for _, f := range h.fieldsOf(k, h.at.PerMM) {
		if f.grip {
			h.setOwn(k, f, f.amount(x))
			return
		}
	}
}

// moveTo applies the edit that takes the grip to a place.
func (h *Hand) moveTo(k *hold, target geom.Vec) bool {
	was := k.target
	k.target = target
	if h.apply(k) {
		return true
	}
	k.target = was
	return false
}

// setOwn applies the edit that gives the thing in hand a measure of its own, v in
// the field's unit.
func (h *Hand) setOwn(k *hold, f field, v int64) bool {
	was := k.given
	k.given = slices.DeleteFunc(slices.Clone(was), func(z given) bool { return z.id == f.id() })
	k.given = append(k.given, given{f.id(), v, f.set})
	if h.apply(k) {
		return true
	}
	k.given = was
	return false
}

// edit is all that the gesture has done so far, as one edit of the design that
// it began with.
func (k *hold) edit() (edit.Edit, error) {
	by := point(k.target).Sub(point(k.anchor))
	var move edit.Edit
	if by != (design.Point{}) || len(k.given) == 0 {
		var err error
		if move, err = k.grip.moveBy(k.d0, k.others, by); err != nil || len(k.given) == 0 {
			return move, err
		}
	}
	name, d, all := move.Name, k.d0, slices.Clone(k.given)
	if move.Apply == nil {
		first, err := all[0].set(d, all[0].v)
		if err != nil {
			return edit.Edit{}, err
		}
		name = first.Name
	}
	return edit.Edit{Name: name, Apply: func(d design.Design) (design.Design, error) {
		out := d
		if move.Apply != nil {
			var err error
			if out, err = move.Apply(out); err != nil {
				return d, err
			}
		}
		for _, z := range all {
			e, err := z.set(out, z.v)
			if err == nil {
				out, err = e.Apply(out)
			}
			if err != nil {
				return d, err
			}
		}
		return out, nil
	}}, nil
}

// apply makes what the hold asks for the present state of its gesture.
func (h *Hand) apply(k *hold) bool {
	e, err := k.edit()
	if err == nil {
		if !k.begun {
			h.s.BeginGesture()
		}
		h.applying = true
		err = h.s.DoGesture(e)
		h.applying = false
		k.begun = k.begun || err == nil
	}
	k.fault = ""
	if err != nil {
		k.fault = capital(err.Error())
	}
	return err == nil
}

// changes reports whether the gesture has changed anything.
func (h *Hand) changes(k *hold) bool {
	return k.begun && !reflect.DeepEqual(k.d0, h.s.Design())
}

// release lets go of the thing in hand; what it has done stays.
func (h *Hand) release() {
	k := h.hold
	h.hold = nil
	if k != nil && k.begun && !h.changes(k) {
		h.cancelGesture()
	}
}

// revert takes back what the thing in hand has done and lets go of it.
func (h *Hand) revert() {
	k := h.hold
	h.hold = nil
	if k != nil && k.begun {
		h.cancelGesture()
	}
}

func (h *Hand) cancelGesture() {
	h.applying = true
	h.s.CancelGesture()
	h.applying = false
}

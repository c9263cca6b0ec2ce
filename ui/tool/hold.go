package tool

import (
	"math"
	"slices"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
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

	anchor geom.Vec // where the grip was when taken
	grab   geom.Vec // where the mouse took it
	target geom.Vec // where the grip is now
	dir    geom.Vec // unit vector of the line that the grip keeps to, or zero
	frame  *frame   // of the sink whose centreline it keeps to, or nil

	pressed bool // by the mouse; else by keys
	begun   bool // an edit of the gesture stands in the session
	changed bool // and it changes something
	field   string
	typed   *typed
	snap    snap
	fault   string // why the last edit was refused
}

// typed is a number being typed, with the field that it is for.
type typed struct {
	text  string
	field field
	bad   bool
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
		k.still = newStill(k.d0, k.s0, k.grip, k.others, k.anchor)
	}
	raw := k.anchor.Add(p.At.Sub(k.grab))
	sn := h.snapper(k.still, p)
	if k.grip.own() && len(k.others) == 0 {
		size, words := sn.size(k.grip.measure(k.d0, k.anchor, raw))
		k.target, k.snap = raw, snap{words: words}
		h.setOwn(k, units.FromMM(size))
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

// moveTo applies the edit that takes the grip to a place.
func (h *Hand) moveTo(k *hold, target geom.Vec) {
	by := point(target).Sub(point(k.anchor))
	e, err := k.grip.moveBy(k.d0, k.others, by)
	if h.apply(k, e, err) {
		k.target, k.changed = target, by != design.Point{}
	}
}

// setOwn applies the edit that gives the grip its own measure.
func (h *Hand) setOwn(k *hold, l units.Length) {
	e, err := k.grip.setMeasure(k.d0, l)
	if h.apply(k, e, err) {
		was := units.FromMM(k.grip.measure(k.d0, k.anchor, k.anchor))
		k.changed = l != was
	}
}

// apply makes e the present state of the hold's gesture.
func (h *Hand) apply(k *hold, e edit.Edit, err error) bool {
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

// release lets go of the thing in hand; what it has done stays.
func (h *Hand) release() {
	k := h.hold
	h.hold = nil
	if k != nil && k.begun && !k.changed {
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

// fieldsOf are the measures of the thing in hand as the design stands. While a
// corner is dragged its radius is left out: a gesture changes one or the other.
func (h *Hand) fieldsOf(k *hold, perMM float64) []field {
	fs := k.grip.fields(h.s.Design(), h.s.Report().Solid, perMM)
	if k.pressed && !k.grip.own() {
		fs = slices.DeleteFunc(fs, func(f field) bool { return f.own })
	}
	return fs
}

// active is the field that a typed number goes to: the one chosen, else the
// first that the movement changes most, else the first.
func (k *hold) active(fs []field) (field, bool) {
	var best field
	found := false
	moved := k.target.Sub(k.anchor)
	for _, f := range fs {
		if f.read {
			continue
		}
		if f.name == k.field {
			return f, true
		}
		if !found {
			best, found = f, true
			continue
		}
		a, b := math.Abs(moved.Dot(f.dir)), math.Abs(moved.Dot(best.dir))
		if a > b+1e-9 || a > b-1e-9 && a > 1e-9 && f.value < best.value {
			best = f
		}
	}
	return best, found
}

// nextField makes the next field the one that is typed to.
func (h *Hand) nextField(k *hold) {
	fs := h.fieldsOf(k, h.at.PerMM)
	now, ok := k.active(fs)
	if !ok {
		return
	}
	for i, f := range fs {
		if f.name != now.name {
			continue
		}
		for j := 1; j <= len(fs); j++ {
			if next := fs[(i+j)%len(fs)]; !next.read {
				k.field = next.name
				return
			}
		}
	}
}

// begins reports whether a character starts a number.
func begins(r rune) bool { return strings.ContainsRune("0123456789.,-=(", r) }

// startTyping opens a number for the active field.
func (h *Hand) startTyping(k *hold) bool {
	f, ok := k.active(h.fieldsOf(k, h.at.PerMM))
	if !ok {
		return false
	}
	k.field = f.name
	k.typed = &typed{field: f}
	k.snap = snap{}
	return true
}

// retype makes text the number typed so far. It changes nothing yet: on the way
// to 1200 a top is not to become 1 mm wide.
func (k *hold) retype(text string) {
	k.typed.text, k.typed.bad, k.fault = text, false, ""
}

// setField gives the typed field a value.
func (h *Hand) setField(k *hold, l units.Length) {
	f := k.typed.field
	if f.own {
		h.setOwn(k, l)
		return
	}
	h.moveTo(k, k.target.Add(f.dir.Mul(l.MM()-f.value)))
}

// commit makes the typed number final; a number that can't be used stays as it was
// typed, with the reason.
func (h *Hand) commit(k *hold) bool {
	l, err := h.parse(k.typed.text)
	if err != nil {
		k.typed.bad, k.fault = true, capital(err.Error())
		return false
	}
	h.setField(k, l)
	if k.fault != "" {
		k.typed.bad = true
		return false
	}
	return true
}

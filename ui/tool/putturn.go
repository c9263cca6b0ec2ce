package tool

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// The turns that keys give a part in hand.
const (
	quarter   = 90 * units.Degree
	smallTurn = 5 * units.Degree
)

// putRune turns or mirrors the part in hand; it reports whether the character
// means that.
func (h *Hand) putRune(r rune) bool {
	var e edit.Edit
	switch r {
	case 'r':
		e = edit.RotatePart(putID, -quarter)
	case 'R':
		e = edit.RotatePart(putID, quarter)
	case 't':
		e = edit.RotatePart(putID, -smallTurn)
	case 'T':
		e = edit.RotatePart(putID, smallTurn)
	case 'm', 'M':
		e = edit.MirrorParts([]design.ID{putID})
	default:
		return false
	}
	k := h.put
	out, err := e.Apply(k.put.alone(design.Point{}))
	if err != nil {
		k.fault = "The " + k.name + " can't be turned: it is round, or keeps to a sink"
		return true
	}
	k.fault = ""
	k.take(out)
	if k.shown {
		h.carry(h.at)
	}
	return true
}

// take makes the part of a design that holds nothing else the one in hand.
func (k *inHand) take(d design.Design) {
	switch p := &k.put; {
	case p.Sink != nil:
		p.Sink = &d.Sinks[0]
	case p.Taps != nil:
		p.Taps = &d.Taps[0]
	case p.Hole != nil:
		p.Hole = &d.Holes[0]
	case p.Channel != nil:
		p.Channel = &d.Channels[0]
	case p.Glass != nil:
		p.Glass = &d.Glass[0]
	case p.Support != nil:
		p.Support = &d.Supports[0]
	case p.Outline != nil:
		p.Outline = &d.Glass[0].Region
	}
	if home, ok := putHome(k.put); ok && k.put.Taps == nil {
		k.home = home
	}
	k.ghost = nil // what it reaches to has changed
}

// putHome is the place that stands for a part, as it comes.
func putHome(p Put) (geom.Vec, bool) {
	part, ok := find(p.alone(design.Point{}), putID)
	if !ok {
		return geom.Vec{}, false
	}
	return partPlace(part, slab.Solid{}, putID)
}

// turnWords says which keys turn the part in hand.
func (k *inHand) turnWords() string {
	if k.put.Hole != nil || k.put.Taps != nil && k.put.Taps.Sink != "" {
		return ""
	}
	return "; R, T turn it by 90°, 5°, M mirrors it"
}

package tool

import (
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// putFields are the measures of a part in hand with the place that stands for it
// at a place.
func (h *Hand) putFields(k *inHand, at geom.Vec) []field {
	s := h.s.Report().Solid
	if t := k.put.Taps; t != nil && t.Sink != "" {
		d := h.s.Design()
		if f, ok := tapFrame(d, s, *t); ok {
			set := *t
			set.SetBack = units.FromMM(f.back.Sub(at).Dot(f.up))
			set.Offset = units.FromMM(at.Sub(f.back).Dot(f.right))
			return tapFields(d, s, set)
		}
	}
	place := placeFields(h.s.Design(), at)
	if k.put.Support != nil || k.put.Channel != nil || k.put.Outline != nil {
		return place
	}
	by := at.Sub(k.ghostAt)
	what := matterOther
	if k.put.Hole != nil || k.put.Taps != nil {
		what = matterRound
	}
	if k.put.Sink != nil && k.put.Sink.Mount != design.MountVessel {
		what = matterSink
	}
	out := gaps(s, putID, what, func(u geom.Vec) (geom.Vec, bool) {
		q, ok := farthest(u, k.ghost)
		q = q.Add(by)
		switch {
		case k.put.Hole != nil:
			return at.Add(u.Mul(k.put.Hole.Diameter.MM() / 2)), true
		case k.put.Sink != nil && what == matterSink:
			if r, exact := sinkReach(*k.put.Sink, u); exact {
				return q.Add(u.Mul(at.Dot(u) + r - q.Dot(u))), ok
			}
		}
		return q, ok
	})
	for _, f := range place {
		f.hidden = true
		out = append(out, f)
	}
	return out
}

// holdPut moves a place for the part in hand until what was typed holds.
func (h *Hand) holdPut(k *inHand, at geom.Vec) (geom.Vec, bool) {
	for range 24 {
		by, off := pull(k.pins, h.putFields(k, at))
		if off <= pinNear {
			return at, true
		}
		at = at.Add(by)
		if !at.Finite() || at.Norm() > farthestPlace {
			return at, false
		}
		at = vec(point(at))
	}
	_, off := pull(k.pins, h.putFields(k, at))
	return at, off < 1e-4
}

// putPin makes the number that is being typed hold for the part in hand.
func (h *Hand) putPin() bool {
	k := h.put
	f := k.typed.field
	v, err := h.parseFor(f, k.typed.text)
	if err == nil {
		was := k.pins
		k.pins = pinned(was, h.putFields(k, k.at), f, units.Length(v).MM())
		if _, ok := h.holdPut(k, k.at); !ok {
			err = cantBoth(k.pins)
			k.pins = was
		}
	}
	if err != nil {
		k.typed.bad, k.fault = true, capital(err.Error())
		return false
	}
	k.typed, k.fault, k.field = nil, "", f.id()
	h.carry(h.putPointer())
	return true
}

// putPointer is where the part in hand is carried: at the mouse, else in the
// middle of the top.
func (h *Hand) putPointer() Pointer {
	p := h.at
	if !h.put.shown {
		if p.At = h.s.Report().Solid.Outline.Bounds().Centre(); h.put.put.Outline != nil && !p.At.Finite() {
			p.At = geom.Vec{} // the first outline lies about the origin
		}
	}
	return p
}

// putStart opens a number for the active measure of the part in hand.
func (h *Hand) putStart() bool {
	k := h.put
	if !k.shown {
		p := h.putPointer()
		if !p.At.Finite() {
			return false
		}
		h.carry(p)
	}
	f, ok := h.putActive(k)
	if !ok {
		return false
	}
	k.field, k.typed, k.fault = f.id(), &typed{field: f}, ""
	return true
}

// putActive is the measure that a number goes to: the one chosen, else, where the
// snap holds the part one way, the shortest the other way.
func (h *Hand) putActive(k *inHand) (field, bool) {
	fs := h.putFields(k, k.at)
	best, found := activeOf(fs, k.field)
	if !found || k.field != "" || k.snap.free == (geom.Vec{}) {
		return best, found
	}
	found = false
	for _, f := range fs {
		if math.Abs(f.dir.Dot(k.snap.free)) > 0.9 && !f.hidden && (!found || f.value < best.value) {
			best, found = f, true
		}
	}
	if !found {
		return activeOf(fs, "")
	}
	return best, true
}

// putTab makes what is typed hold and goes to the next measure.
func (h *Hand) putTab() bool {
	k := h.put
	begun := k.typed != nil && k.typed.text != ""
	switch {
	case begun:
		if !h.putPin() {
			return true
		}
		fallthrough
	case k.typed != nil || k.field != "":
		fs := h.putFields(k, k.at)
		now, ok := h.putActive(k)
		if !ok {
			return false
		}
		k.field = nextField(fs, now.id(), k.pins, begun)
	}
	return h.putStart()
}

// putBack forgets what is typed for the part in hand; it reports whether there
// was anything.
func (k *inHand) putBack() bool {
	switch {
	case k.typed != nil:
		k.typed, k.fault = nil, ""
	case len(k.pins) > 0:
		k.pins = slices.Delete(k.pins, len(k.pins)-1, len(k.pins))
	default:
		return false
	}
	return true
}

package tool

import (
	"errors"
	"math"
	"slices"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// typed is a number being typed, with the field that it is for.
type typed struct {
	text  string
	field field
	bad   bool
}

// pin is a measure that was typed: it goes on holding while others are typed.
type pin struct {
	id    string // of its field
	name  string
	value float64 // mm
}

// given is a measure of its own that a gesture gives the thing in hand.
type given struct {
	id  string
	v   int64 // nanometres or micro-degrees
	set func(d design.Design, v int64) (edit.Edit, error)
}

// begins reports whether a character starts a number.
func begins(r rune) bool { return strings.ContainsRune("0123456789.,-=(½¼¾⅛⅜⅝⅞", r) }

// parseFor reads a number that was typed for a field, in the field's unit.
func (h *Hand) parseFor(f field, text string) (int64, error) {
	text = strings.TrimPrefix(strings.TrimSpace(text), "=")
	if f.angle {
		a, err := units.ParseAngle(text)
		return int64(a), err
	}
	l, err := h.parse(text)
	return int64(l), err
}

// fieldsOf are the measures of the thing in hand as the design stands.
func (h *Hand) fieldsOf(k *hold, perMM float64) []field {
	if len(k.others) > 0 {
		return togetherFields(k.anchor, k.target)
	}
	return k.grip.fields(h.s.Design(), h.s.Report().Solid, perMM)
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
		if f.id() == k.field {
			return f, true
		}
		if !found {
			best, found = f, true
			continue
		}
		if f.set != nil {
			continue
		}
		a, b := math.Abs(moved.Dot(f.dir)), math.Abs(moved.Dot(best.dir))
		if a > b+1e-9 || a > b-1e-9 && a > 1e-9 && f.value < best.value {
			best = f
		}
	}
	return best, found
}

// stepField makes the next field the one that is typed to.
func (h *Hand) stepField(k *hold) {
	fs := h.fieldsOf(k, h.at.PerMM)
	if now, ok := k.active(fs); ok {
		k.field = nextField(fs, now.id(), nil, false)
	}
}

// nextField is the id of the field after another that can be typed to. After a
// number it is one that pulls the other way, as long as the place has room for
// one.
func nextField(fs []field, id string, pins []pin, number bool) string {
	at := slices.IndexFunc(fs, func(f field) bool { return f.id() == id })
	if number && at >= 0 && fs[at].dir != (geom.Vec{}) && len(pins) < 2 {
		for j := 1; j < len(fs); j++ {
			if f := fs[(at+j)%len(fs)]; !f.read && math.Abs(f.dir.Cross(fs[at].dir)) > 0.3 {
				return f.id()
			}
		}
	}
	for j := 1; j <= len(fs); j++ {
		if next := fs[(at+j)%len(fs)]; !next.read {
			return next.id()
		}
	}
	return id
}

// startTyping opens a number for the active field.
func (h *Hand) startTyping(k *hold) bool {
	f, ok := k.active(h.fieldsOf(k, h.at.PerMM))
	if !ok {
		return false
	}
	k.field = f.id()
	k.typed = &typed{field: f}
	k.snap = snap{}
	return true
}

// commit makes the typed number final; a number that can't be used stays as it was
// typed, with the reason.
func (h *Hand) commit(k *hold) bool {
	f := k.typed.field
	v, err := h.parseFor(f, k.typed.text)
	if err != nil {
		k.typed.bad, k.fault = true, capital(err.Error())
		return false
	}
	if !h.setField(k, f, v) {
		k.typed.bad = true
		return false
	}
	return true
}

// setField gives a field of the thing in hand a value, in the field's unit. What
// was typed before in the same gesture goes on holding, as far as both can.
func (h *Hand) setField(k *hold, f field, v int64) bool {
	given, pins, target := k.given, k.pins, k.target
	if f.set != nil {
		if h.setOwn(k, f, v) && h.holdPins(k) {
			return true
		}
	} else {
		k.pins = pinned(pins, h.fieldsOf(k, h.at.PerMM), f, units.Length(v).MM())
		if h.holdPins(k) {
			return true
		}
	}
	fault := k.fault
	k.given, k.pins, k.target = given, pins, target
	if k.begun {
		h.apply(k)
	}
	k.fault = fault
	return false
}

// pinned is the pins with another one. A place in the plane has room for two
// that pull in different directions: the one typed last stays.
func pinned(was []pin, fs []field, f field, value float64) []pin {
	var out []pin
	for _, p := range was {
		i := slices.IndexFunc(fs, func(g field) bool { return g.id() == p.id })
		if p.id != f.id() && i >= 0 && math.Abs(fs[i].dir.Cross(f.dir)) > 1e-3 {
			out = append(out, p)
		}
	}
	if len(out) > 1 {
		out = out[len(out)-1:]
	}
	return append(out, pin{f.id(), f.name, value})
}

// pinNear is how near in millimetres a typed measure must be met: what a length
// can hold, and the rounding of a place to it.
const pinNear = 2e-6

// holdPins moves the thing in hand until its typed measures hold.
func (h *Hand) holdPins(k *hold) bool {
	for range 24 {
		by, off := pull(k.pins, h.fieldsOf(k, h.at.PerMM))
		if off <= pinNear {
			return true
		}
		if !h.moveTo(k, k.target.Add(by)) {
			return false
		}
	}
	if _, off := pull(k.pins, h.fieldsOf(k, h.at.PerMM)); off > 1e-4 {
		k.fault = capital(cantBoth(k.pins).Error())
		return false
	}
	return true
}

func cantBoth(pins []pin) error {
	if len(pins) > 1 {
		return errors.New(small(pins[1].name) + " can't be so while " + small(pins[0].name) + " stays as it was typed")
	}
	return errors.New("no place has this measure")
}

// pull is the way by which what is held must move for its pins to hold, one step
// of Newton's in the plane, and how far off the worst one is.
func pull(pins []pin, fs []field) (by geom.Vec, off float64) {
	var dirs []geom.Vec
	var need []float64
	for _, p := range pins {
		for _, f := range fs {
			if f.id() == p.id {
				dirs, need = append(dirs, f.dir), append(need, p.value-f.value)
				off = math.Max(off, math.Abs(p.value-f.value))
			}
		}
	}
	switch len(dirs) {
	case 1:
		return dirs[0].Mul(need[0]), off
	case 2:
		det := dirs[0].Cross(dirs[1])
		if math.Abs(det) < 1e-6 {
			return dirs[1].Mul(need[1]), off
		}
		return geom.Vec{
			X: (need[0]*dirs[1].Y - need[1]*dirs[0].Y) / det,
			Y: (dirs[0].X*need[1] - dirs[1].X*need[0]) / det,
		}, off
	}
	return geom.Vec{}, off
}

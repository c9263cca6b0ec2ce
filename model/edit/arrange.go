package edit

import (
	"cmp"
	"fmt"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// Alignment says which lines of several parts are brought together.
type Alignment uint8

// The alignments: along x left, centre or right; along y front, middle or back.
const (
	AlignLeft Alignment = iota
	AlignCentre
	AlignRight
	AlignFront
	AlignMiddle
	AlignBack
)

// String is the name of the edit that aligns parts so.
func (a Alignment) String() string {
	words := [...]string{"Align left edges", "Align centres", "Align right edges",
		"Align fronts", "Align middles", "Align backs"}
	if int(a) >= len(words) {
		return "Align parts"
	}
	return words[a]
}

// axis is the axis along which parts move, and which line of them is meant: 0
// the near one, 1 the middle, 2 the far one.
func (a Alignment) axis() (design.Axis, int) {
	if a >= AlignFront {
		return design.AxisY, int(a - AlignFront)
	}
	return design.AxisX, int(a)
}

// Align brings parts into line: the side named to the outermost such side of
// them all, centres to the middle of the box round all. Tap holes whose sink
// is among the parts go with it.
func Align(ids []design.ID, how Alignment) Edit {
	ids = slices.Clone(ids)
	return newEdit(how.String(), func(d design.Design) (design.Design, error) {
		if how > AlignBack {
			return d, fmt.Errorf("alignment %d is not known: use left, centre, right, front, middle or back", how)
		}
		axis, line := how.axis()
		parts, all, err := extents(d, ids, axis, 2, "aligned")
		if err != nil {
			return d, err
		}
		d = cloneParts(d)
		for _, p := range parts {
			shiftPart(&d, p.id, onAxis(all.line(line)-p.line(line), axis))
		}
		return d, nil
	})
}

// Distribute moves parts along an axis so that the gaps between them are
// equal. The first and the last stay; three or more are needed.
func Distribute(ids []design.ID, axis design.Axis) Edit {
	ids = slices.Clone(ids)
	return newEdit("Space parts evenly", func(d design.Design) (design.Design, error) {
		parts, _, err := extents(d, ids, axis, 3, "distributed")
		if err != nil {
			return d, err
		}
		slices.SortStableFunc(parts, func(a, b interval) int { return cmp.Compare(a.lo+a.hi, b.lo+b.hi) })
		n := len(parts) - 1
		free := parts[n].lo - parts[0].hi
		for _, p := range parts[1:n] {
			free -= p.hi - p.lo
		}
		d = cloneParts(d)
		at := parts[0].hi
		for i, p := range parts[1:n] {
			gap := free*units.Length(i+1)/units.Length(n) - free*units.Length(i)/units.Length(n)
			at += gap
			shiftPart(&d, p.id, onAxis(at-p.lo, axis))
			at += p.hi - p.lo
		}
		return d, nil
	})
}

// interval is what a part takes up along one axis.
type interval struct {
	id     design.ID
	lo, hi units.Length
}

// line is the near side (0), the middle (1) or the far side (2).
func (r interval) line(which int) units.Length {
	return [...]units.Length{r.lo, (r.lo + r.hi) / 2, r.hi}[which]
}

// extents are what parts take up along an axis, each and all.
func extents(d design.Design, ids []design.ID, axis design.Axis, least int, verb string) (parts []interval, all interval, err error) {
	if axis > design.AxisY {
		return nil, all, fmt.Errorf("axis %d is not known: use x or y", axis)
	}
	ids, err = leading(d, ids)
	if err != nil {
		return nil, all, err
	}
	if len(ids) < least {
		return nil, all, fmt.Errorf("%d parts or more can be %s and this is %d: pick more", least, verb, len(ids))
	}
	for i, id := range ids {
		box := extent(d, id)
		if box.Empty() {
			return nil, all, fmt.Errorf("%s has no points to go by: draw it first", id)
		}
		r := interval{id: id}
		r.lo, r.hi = sidesOf(box, axis)
		parts = append(parts, r)
		if i == 0 {
			all = r
		}
		all.lo, all.hi = min(all.lo, r.lo), max(all.hi, r.hi)
	}
	return parts, all, nil
}

// leading are parts, each once, without the tap holes that keep to a sink
// among them and so go along by themselves.
func leading(d design.Design, ids []design.ID) ([]design.ID, error) {
	if len(ids) == 0 {
		return nil, fmt.Errorf("nothing is picked: pick the parts first")
	}
	there := map[design.ID]bool{}
	for _, id := range partIDs(d) {
		there[id] = true
	}
	picked := map[design.ID]bool{}
	for _, id := range ids {
		if !there[id] {
			return nil, noPart(id)
		}
		picked[id] = true
	}
	follows := map[design.ID]bool{}
	for _, t := range d.Taps {
		follows[t.ID] = t.Sink != "" && picked[t.Sink]
	}
	var out []design.ID
	for _, id := range ids {
		if picked[id] && !follows[id] {
			out = append(out, id)
		}
		picked[id] = false
	}
	return out, nil
}

// MoveParts moves parts together; they keep their relations to each other.
func MoveParts(ids []design.ID, by design.Point) Edit {
	ids = slices.Clone(ids)
	return newEdit(several("Move", ids), func(d design.Design) (design.Design, error) {
		lead, err := leading(d, ids)
		if err != nil {
			return d, err
		}
		d = cloneParts(d)
		for _, id := range lead {
			shiftPart(&d, id, by)
		}
		return d, nil
	})
}

// RemoveParts takes parts away, as [RemovePart] does each.
func RemoveParts(ids []design.ID) Edit {
	steps := make([]Edit, len(ids))
	for i, id := range ids {
		steps[i] = RemovePart(id)
	}
	return Together(several("Remove", ids), steps...)
}

// several is the name of an edit of some parts.
func several(verb string, ids []design.ID) string {
	if len(ids) == 1 {
		return verb + " " + nounOf(ids[0])
	}
	return fmt.Sprintf("%s %d parts", verb, len(ids))
}

// MirrorParts turns parts left to right about the middle of the box round them
// all.
func MirrorParts(ids []design.ID) Edit {
	ids = slices.Clone(ids)
	return newEdit(several("Mirror", ids), func(d design.Design) (design.Design, error) {
		lead, err := leading(d, ids)
		if err != nil {
			return d, err
		}
		box := geom.EmptyBox()
		for _, id := range lead {
			box = box.Union(extent(d, id))
		}
		if box.Empty() {
			return d, fmt.Errorf("these parts have no points to go by: draw them first")
		}
		m := mirror{units.FromMM(box.Min.X) + units.FromMM(box.Max.X)}
		d = cloneParts(d)
		for _, id := range lead {
			m.part(&d, id)
		}
		return d, nil
	})
}

// part mirrors one part with what goes along with it. The parts of d may be
// written.
func (m mirror) part(d *design.Design, id design.ID) {
	for i := range d.Sinks {
		if d.Sinks[i].ID != id {
			continue
		}
		m.sink(&d.Sinks[i])
		for k := range d.Taps {
			if d.Taps[k].Sink == id {
				m.taps(&d.Taps[k])
			}
		}
		return
	}
	for i := range d.Taps {
		t := &d.Taps[i]
		switch {
		case t.ID != id:
		case t.Sink == "":
			m.taps(t)
			return
		default:
			at, _ := tapsPlace(*d, *t)
			shiftTaps(*d, t, m.point(at).Sub(at))
			for k := range t.Holes {
				t.Holes[k].X = -t.Holes[k].X
			}
			return
		}
	}
	for i := range d.Holes {
		if d.Holes[i].ID == id {
			d.Holes[i].At = m.point(d.Holes[i].At)
			return
		}
	}
	for i := range d.Channels {
		if d.Channels[i].ID == id {
			m.channel(&d.Channels[i])
			return
		}
	}
	for i := range d.Glass {
		if d.Glass[i].ID == id {
			d.Glass[i].Region = m.region(d.Glass[i].Region)
			return
		}
	}
	for i := range d.Supports {
		if d.Supports[i].ID == id {
			m.support(&d.Supports[i])
			return
		}
	}
}

package edit

import (
	"fmt"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// Clip is parts that were copied, to be pasted into the same design or another.
type Clip struct {
	// Parts holds the parts and the relations among them, and nothing else of
	// a design.
	Parts design.Design
	// At is the middle of the box that the parts took up, less tap holes that
	// keep to a sink among them.
	At design.Point
}

// CopyParts takes copies of parts of a design. With a sink go the tap holes
// that keep to it; tap holes without their sink come loose where they stand.
// Relations among the parts are kept, others are not.
func CopyParts(d design.Design, ids []design.ID) (Clip, error) {
	lead, err := leading(d, ids)
	if err != nil {
		return Clip{}, err
	}
	taken := map[design.ID]bool{}
	box := geom.EmptyBox()
	for _, id := range lead {
		taken[id] = true
		box = box.Union(extent(d, id))
	}
	var c Clip
	if !box.Empty() {
		c.At = design.Point{X: (units.FromMM(box.Min.X) + units.FromMM(box.Max.X)) / 2,
			Y: (units.FromMM(box.Min.Y) + units.FromMM(box.Max.Y)) / 2}
	}
	for _, t := range d.Taps {
		if t.Sink != "" && taken[t.Sink] {
			taken[t.ID] = true
		}
	}
	sinks.pick(d, &c.Parts, taken)
	taps.pick(d, &c.Parts, taken)
	holes.pick(d, &c.Parts, taken)
	channels.pick(d, &c.Parts, taken)
	glass.pick(d, &c.Parts, taken)
	supports.pick(d, &c.Parts, taken)
	for i := range c.Parts.Taps {
		if t := &c.Parts.Taps[i]; t.Sink != "" && !taken[t.Sink] {
			release(d, t)
		}
	}
	for _, r := range d.Relations {
		others := r.Others()
		outside := func(id design.ID) bool { return !taken[id] }
		if taken[r.Part] && len(others) > 0 && !slices.ContainsFunc(others, outside) {
			c.Parts.Relations = append(c.Parts.Relations, r)
		}
	}
	return c, nil
}

// pick appends copies of the parts of this kind that are taken.
func (k kind[T]) pick(from design.Design, to *design.Design, taken map[design.ID]bool) {
	for _, part := range *k.list(&from) {
		if taken[*k.id(&part)] {
			list := k.list(to)
			*list = append(*list, k.clone(part))
		}
	}
}

// IDs are the parts of a clip by their old names, in the order of the file.
func (c Clip) IDs() []design.ID { return partIDs(c.Parts) }

// PasteParts puts the parts of a clip into a design under fresh IDs, with the
// middle of their box at a place. Tap holes follow the copy of their sink.
func PasteParts(c Clip, at design.Point) Edit {
	return newEdit(several("Paste", c.IDs()), func(d design.Design) (design.Design, error) {
		if len(c.IDs()) == 0 {
			return d, fmt.Errorf("nothing was copied: copy parts first")
		}
		d = cloneParts(d)
		names := map[design.ID]design.ID{"": ""}
		fresh := slices.Concat(sinks.paste(&d, c.Parts, names), taps.paste(&d, c.Parts, names),
			holes.paste(&d, c.Parts, names), channels.paste(&d, c.Parts, names),
			glass.paste(&d, c.Parts, names), supports.paste(&d, c.Parts, names))
		for i := range d.Taps {
			if t := &d.Taps[i]; slices.Contains(fresh, t.ID) {
				t.Sink = names[t.Sink]
			}
		}
		for _, id := range fresh {
			if t := tapsOf(d, id); t == nil || t.Sink == "" {
				shiftPart(&d, id, at.Sub(c.At))
			}
		}
		d.Relations = slices.Clone(d.Relations)
		for _, r := range c.Parts.Relations {
			r.Part, r.Other, r.Second = names[r.Part], names[r.Other], names[r.Second]
			d.Relations = append(d.Relations, r)
		}
		if len(d.Relations) > design.MaxRelations {
			return d, fmt.Errorf("the design would have %d relations, beyond the %d that it keeps: cut some first",
				len(d.Relations), design.MaxRelations)
		}
		return d, nil
	})
}

// paste appends the parts of this kind under fresh IDs, notes these by the old
// ones and gives them.
func (k kind[T]) paste(d *design.Design, from design.Design, names map[design.ID]design.ID) []design.ID {
	var fresh []design.ID
	for _, part := range *k.list(&from) {
		part = k.clone(part)
		id := NextID(*d, k.prefix)
		names[*k.id(&part)], *k.id(&part) = id, id
		list := k.list(d)
		*list = append(*list, part)
		fresh = append(fresh, id)
	}
	return fresh
}

func tapsOf(d design.Design, id design.ID) *design.TapSet {
	for i := range d.Taps {
		if d.Taps[i].ID == id {
			return &d.Taps[i]
		}
	}
	return nil
}

// DuplicateParts adds copies of parts, moved by some way.
func DuplicateParts(ids []design.ID, by design.Point) Edit {
	ids = slices.Clone(ids)
	return newEdit(several("Duplicate", ids), func(d design.Design) (design.Design, error) {
		c, err := CopyParts(d, ids)
		if err != nil {
			return d, err
		}
		return PasteParts(c, c.At.Add(by)).change(d)
	})
}

// NewParts are the parts that an edit has added, in the order of the file: what
// to select after pasting.
func NewParts(before, after design.Design) []design.ID {
	had := map[design.ID]bool{}
	for _, id := range partIDs(before) {
		had[id] = true
	}
	return slices.DeleteFunc(partIDs(after), func(id design.ID) bool { return had[id] })
}

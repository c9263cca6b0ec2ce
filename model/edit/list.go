package edit

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/castwright/model/design"
)

// kind is one kind of part: how its list is reached and how one is cloned.
// The prefix starts the IDs of new ones ("sink-1"), the noun stands in names
// and errors.
type kind[T any] struct {
	prefix, noun string
	list         func(*design.Design) *[]T
	id           func(*T) *design.ID
	clone        func(T) T
}

var (
	sinks = kind[design.Sink]{"sink", "sink",
		func(d *design.Design) *[]design.Sink { return &d.Sinks },
		func(s *design.Sink) *design.ID { return &s.ID }, cloneSink}
	taps = kind[design.TapSet]{"taps", "tap holes",
		func(d *design.Design) *[]design.TapSet { return &d.Taps },
		func(t *design.TapSet) *design.ID { return &t.ID }, cloneTaps}
	holes = kind[design.Hole]{"hole", "hole",
		func(d *design.Design) *[]design.Hole { return &d.Holes },
		func(h *design.Hole) *design.ID { return &h.ID },
		func(h design.Hole) design.Hole { return h }}
	channels = kind[design.Channel]{"channel", "channel",
		func(d *design.Design) *[]design.Channel { return &d.Channels },
		func(c *design.Channel) *design.ID { return &c.ID }, cloneChannel}
	glass = kind[design.GlassBed]{"glass", "glass bed",
		func(d *design.Design) *[]design.GlassBed { return &d.Glass },
		func(g *design.GlassBed) *design.ID { return &g.ID }, cloneGlass}
	supports = kind[design.Support]{"support", "support",
		func(d *design.Design) *[]design.Support { return &d.Supports },
		func(s *design.Support) *design.ID { return &s.ID }, cloneSupport}
)

// add is the edit that puts a new part last in its list. A part without an ID
// gets the next free one of its kind.
func (k kind[T]) add(part T, check func(design.Design, T) error) Edit {
	part = k.clone(part)
	return newEdit("Add "+k.noun, func(d design.Design) (design.Design, error) {
		part := k.clone(part)
		id := k.id(&part)
		if *id == "" {
			*id = NextID(d, k.prefix)
		}
		if hasPart(d, *id) {
			return d, fmt.Errorf("%s is in the design already: give the new one another name, "+
				"or leave it empty", *id)
		}
		if err := check(d, part); err != nil {
			return d, fmt.Errorf("%s: %w", *id, err)
		}
		list := k.list(&d)
		*list = append(slices.Clip(*list), part)
		return d, nil
	})
}

// set is the edit that puts a part in the place of the one with its ID.
func (k kind[T]) set(part T, check func(design.Design, T) error) Edit {
	part = k.clone(part)
	return k.change("Change "+k.noun, *k.id(&part), func(d design.Design, old *T) error {
		*old = k.clone(part)
		return check(d, *old)
	})
}

// change is the edit of one part: f writes into a clone of it.
func (k kind[T]) change(name string, id design.ID, f func(design.Design, *T) error) Edit {
	return newEdit(name, func(d design.Design) (design.Design, error) {
		list := k.list(&d)
		for i := range *list {
			if *k.id(&(*list)[i]) != id {
				continue
			}
			part := k.clone((*list)[i])
			if err := f(d, &part); err != nil {
				return d, fmt.Errorf("%s: %w", id, err)
			}
			*list = slices.Clone(*list)
			(*list)[i] = part
			return d, nil
		}
		return d, fmt.Errorf("there is no %s %q in this design: pick one that is there", k.noun, id)
	})
}

// ids appends the IDs of this kind in d.
func (k kind[T]) ids(d *design.Design, to []design.ID) []design.ID {
	list := *k.list(d)
	for i := range list {
		to = append(to, *k.id(&list[i]))
	}
	return to
}

// remove takes the part with this ID out of d's list and reports whether it
// was there.
func (k kind[T]) remove(d *design.Design, id design.ID) bool {
	list := k.list(d)
	for i := range *list {
		if *k.id(&(*list)[i]) == id {
			*list = slices.Delete(slices.Clone(*list), i, i+1)
			if len(*list) == 0 {
				*list = nil
			}
			return true
		}
	}
	return false
}

// partIDs lists the IDs of all parts in the order of the file.
func partIDs(d design.Design) []design.ID {
	var ids []design.ID
	ids = sinks.ids(&d, ids)
	ids = taps.ids(&d, ids)
	ids = holes.ids(&d, ids)
	ids = channels.ids(&d, ids)
	ids = glass.ids(&d, ids)
	return supports.ids(&d, ids)
}

func hasPart(d design.Design, id design.ID) bool { return slices.Contains(partIDs(d), id) }

// NextID is the first of prefix-1, prefix-2, ... that no part of d has.
func NextID(d design.Design, prefix string) design.ID {
	taken := map[design.ID]bool{}
	for _, id := range partIDs(d) {
		taken[id] = true
	}
	for n := 1; ; n++ {
		if id := design.ID(prefix + "-" + strconv.Itoa(n)); !taken[id] {
			return id
		}
	}
}

// nounOf is the noun of the part's kind by its ID, "part" when its maker gave
// it a name of another form.
func nounOf(id design.ID) string {
	prefix, _, _ := strings.Cut(string(id), "-")
	switch prefix {
	case sinks.prefix:
		return sinks.noun
	case taps.prefix:
		return taps.noun
	case holes.prefix:
		return holes.noun
	case channels.prefix:
		return channels.noun
	case glass.prefix:
		return glass.noun
	case supports.prefix:
		return supports.noun
	}
	return "part"
}

// partName is how errors call a part.
func partName(id design.ID) string {
	if id == "" {
		return "the outline"
	}
	return string(id)
}

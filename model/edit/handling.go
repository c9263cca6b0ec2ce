package edit

import (
	"fmt"
	"reflect"
	"slices"

	"example.org/castwright/model/design"
)

// LockParts locks parts of an option against the hand, or lets them go.
func LockParts(option string, ids []design.ID, locked bool) JobEdit {
	verb := "Unlock"
	if locked {
		verb = "Lock"
	}
	return handle(several(verb, ids), option, ids, func(h *design.Handling) { h.Locked = locked })
}

// HideParts leaves parts of an option out on the board, or shows them again.
// They stay in the top.
func HideParts(option string, ids []design.ID, hidden bool) JobEdit {
	verb := "Show"
	if hidden {
		verb = "Hide"
	}
	return handle(several(verb, ids), option, ids, func(h *design.Handling) { h.Hidden = hidden })
}

// ShowParts shows every hidden part of an option again.
func ShowParts(option string) JobEdit {
	return optionEdit("Show all parts", option, func(j *design.Job, i int) error {
		o := &j.Options[i]
		if len(o.HiddenParts()) == 0 {
			return fmt.Errorf("no part is hidden")
		}
		list := slices.Clone(o.Handling)
		for k := range list {
			list[k].Hidden = false
		}
		o.Handling = inUse(list)
		return nil
	})
}

func handle(name, option string, ids []design.ID, set func(*design.Handling)) JobEdit {
	ids = slices.Clone(ids)
	return optionEdit(name, option, func(j *design.Job, i int) error {
		o := &j.Options[i]
		if len(ids) == 0 {
			return fmt.Errorf("nothing is picked: pick the parts first")
		}
		list := slices.Clone(o.Handling)
		for _, id := range ids {
			if !hasPart(o.Design, id) {
				return noPart(id)
			}
			k := slices.IndexFunc(list, func(h design.Handling) bool { return h.Part == id })
			if k < 0 {
				k = len(list)
				list = append(list, design.Handling{Part: id})
			}
			set(&list[k])
		}
		list = inUse(list)
		if len(list) > design.MaxHandling {
			return fmt.Errorf("an option keeps %d parts that are locked or hidden: show or unlock some first",
				design.MaxHandling)
		}
		o.Handling = list
		return nil
	})
}

// inUse is what still says something; nil when nothing does. The list may be
// written.
func inUse(list []design.Handling) []design.Handling {
	list = slices.DeleteFunc(list, func(h design.Handling) bool { return !h.Locked && !h.Hidden })
	if len(list) == 0 {
		return nil
	}
	return list
}

// surviving is an option's handling after an edit of its design: what is gone
// takes its word along, so that a new part of the same name starts afresh.
func surviving(list []design.Handling, before, after design.Design) []design.Handling {
	gone := func(h design.Handling) bool { return !hasPart(before, h.Part) || !hasPart(after, h.Part) }
	if !slices.ContainsFunc(list, gone) {
		return list
	}
	return inUse(slices.DeleteFunc(slices.Clone(list), gone))
}

// guardLocked refuses an edit that would change or remove a locked part. A change
// of the top as a whole carries locked parts along, and so do relations: a lock
// keeps the hand off, not what the maker meant.
func guardLocked(o design.Option, e Edit, after design.Design) error {
	var locked []design.ID
	for _, h := range o.Handling {
		if h.Locked && hasPart(o.Design, h.Part) {
			locked = append(locked, h.Part)
		}
	}
	if len(locked) == 0 {
		return nil
	}
	var changed []design.ID
	for _, id := range locked {
		switch {
		case !hasPart(after, id):
			return lockedError(id)
		case !samePart(o.Design, after, id):
			changed = append(changed, id)
		}
	}
	if len(changed) == 0 || e.carries || !reflect.DeepEqual(o.Design.Outline, after.Outline) {
		return nil
	}
	// What the relations alone would have made of the locked parts.
	carried := cloneParts(after)
	carried.Relations = slices.Clone(after.Relations)
	for _, id := range changed {
		putBack(&carried, o.Design, id)
	}
	carried.Relations = slices.DeleteFunc(carried.Relations, func(r design.Relation) bool {
		return r.Kind != design.RelationEdge && slices.Contains(changed, r.Part)
	})
	for _, r := range o.Design.Relations {
		if _, bad := after.RelationFault(r); !bad && r.Kind != design.RelationEdge && slices.Contains(changed, r.Part) {
			carried.Relations = append(carried.Relations, r)
		}
	}
	carried = alongBanks(o.Design, hold(carried))
	for _, id := range changed {
		if !samePart(carried, after, id) {
			return lockedError(id)
		}
	}
	return nil
}

func lockedError(id design.ID) error {
	return fmt.Errorf("%s is locked: unlock it first", id)
}

// samePart reports whether two designs hold the very same part under an ID.
func samePart(a, b design.Design, id design.ID) bool {
	return sinks.same(a, b, id) && taps.same(a, b, id) && holes.same(a, b, id) &&
		channels.same(a, b, id) && glass.same(a, b, id) && supports.same(a, b, id)
}

func (k kind[T]) same(a, b design.Design, id design.ID) bool {
	p, q := k.find(&a, id), k.find(&b, id)
	return p == nil && q == nil || p != nil && q != nil && reflect.DeepEqual(*p, *q)
}

func (k kind[T]) find(d *design.Design, id design.ID) *T {
	list := *k.list(d)
	for i := range list {
		if *k.id(&list[i]) == id {
			return &list[i]
		}
	}
	return nil
}

// putBack writes a part of one design into another. The parts of d may be
// written.
func putBack(d *design.Design, from design.Design, id design.ID) {
	sinks.putBack(d, from, id)
	taps.putBack(d, from, id)
	holes.putBack(d, from, id)
	channels.putBack(d, from, id)
	glass.putBack(d, from, id)
	supports.putBack(d, from, id)
}

func (k kind[T]) putBack(d *design.Design, from design.Design, id design.ID) {
	if p, q := k.find(d, id), k.find(&from, id); p != nil && q != nil {
		*p = k.clone(*q)
	}
}

// Seen is an option's design as the board draws it: less the hidden parts. Tap
// holes whose sink is hidden stay where they are.
func Seen(o design.Option) design.Design {
	d := o.Design
	for _, id := range o.HiddenParts() {
		if out, err := RemovePart(id).change(d); err == nil {
			d = out
		}
	}
	d.Relations = nil
	return d
}

// Parts are the parts of a design in the order of the file.
func Parts(d design.Design) []design.ID { return partIDs(d) }

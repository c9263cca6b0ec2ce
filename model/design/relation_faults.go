package design

import (
	"fmt"

	"example.org/castwright/model/units"
)

// relationFaults lists the relations that can't be kept: they name what is not
// there, or stand in each other's way.
func (d Design) relationFaults() []Fault {
	if len(d.Relations) > MaxRelations {
		return []Fault{{Rule: RuleCount, Field: "relations",
			Detail: fmt.Sprintf("the design has %d relations, beyond the %d that can be kept: cut some",
				len(d.Relations), MaxRelations)}}
	}
	var faults []Fault
	out := make([]bool, len(d.Relations))
	for i, r := range d.Relations {
		if f, ok := d.RelationFault(r); ok {
			out[i] = true
			f.Field = fmt.Sprintf("relations[%d].%s", i, f.Field)
			faults = append(faults, f)
		}
	}
	for _, c := range d.relationConflicts() {
		out[c.late] = true
		faults = append(faults, Fault{Rule: RuleRelation, Part: d.Relations[c.late].Part,
			Field:  fmt.Sprintf("relations[%d].part", c.late),
			Detail: fmt.Sprintf("%s is held already by relations[%d]: cut one of the two", d.Relations[c.late].Part, c.early)})
	}
	_, looped := d.untangle(out)
	for _, i := range looped {
		faults = append(faults, Fault{Rule: RuleRelation, Part: d.Relations[i].Part,
			Field:  fmt.Sprintf("relations[%d].part", i),
			Detail: fmt.Sprintf("%s waits for a part that waits for it: cut one relation of the ring", d.Relations[i].Part)})
	}
	return faults
}

// RelationFault says what is wrong with one relation by itself, with the field
// within the relation; false when all that it names is there.
func (d Design) RelationFault(r Relation) (Fault, bool) {
	fault := func(rule Rule, field, format string, args ...any) (Fault, bool) {
		return Fault{Rule: rule, Part: r.Part, Field: field, Detail: fmt.Sprintf(format, args...)}, true
	}
	if r.Kind > RelationBank {
		return fault(RuleKind, "kind", "relation kind %d is not known", r.Kind)
	}
	if r.Axis > AxisY {
		return fault(RuleKind, "axis", "axis %d is not known: use x or y", r.Axis)
	}
	if !d.hasPart(r.Part) {
		return fault(RuleReference, "part", "there is no part %q: cut the relation", r.Part)
	}
	for k, other := range r.Others() {
		field := [...]string{"other", "second"}[k]
		if !d.hasPart(other) {
			return fault(RuleReference, field, "there is no part %q: cut the relation", other)
		}
		if other == r.Part {
			return fault(RuleRelation, field, "%s can't be held to itself: name another part", r.Part)
		}
	}
	if r.Kind == RelationBetween && r.Other == r.Second {
		return fault(RuleRelation, "second", "between %s and itself there is no middle: name two parts", r.Other)
	}
	if t := d.tapSet(r.Part); t != nil && t.Sink != "" {
		return fault(RuleRelation, "part", "%s keeps to the centreline of %s already: free it first", r.Part, t.Sink)
	}
	switch r.Kind {
	case RelationSide:
		if r.Side > SideBack {
			return fault(RuleKind, "side", "side %d is not known: use left, right, front or back", r.Side)
		}
	case RelationEdge:
		return d.edgeFault(r)
	case RelationBank:
		return d.bankFault(r)
	}
	return Fault{}, false
}

func (d Design) bankFault(r Relation) (Fault, bool) {
	fault := func(rule Rule, field, format string, args ...any) (Fault, bool) {
		return Fault{Rule: rule, Part: r.Part, Field: field, Detail: fmt.Sprintf(format, args...)}, true
	}
	rivers, found := 0, false
	for _, c := range d.Channels {
		if c.ID == r.Other {
			rivers, found = len(c.Rivers), true
		}
	}
	glass := false
	for _, g := range d.Glass {
		glass = glass || g.ID == r.Part
	}
	switch {
	case !glass:
		return fault(RuleReference, "part", "%s is no glass, and only glass lies along a bank", r.Part)
	case !found:
		return fault(RuleReference, "other", "%s is no channel, and only a channel has banks", r.Other)
	case r.Bank > RightBank:
		return fault(RuleKind, "bank", "bank %d is not known: use both, left or right", r.Bank)
	case r.Bank != BothBanks && rivers == 0:
		return fault(RuleReference, "bank", "%s has no river and so no left and right bank: use both", r.Other)
	case r.Distance < 0 || r.Distance > units.MaxLength:
		return fault(RuleRange, "distance_mm", "%s mm away from the bank: give 0 or more", units.DecimalMM(r.Distance))
	case r.Width <= 0 || r.Width > units.MaxLength:
		return fault(RuleRange, "width_mm", "a bed %s mm wide: give more than 0", units.DecimalMM(r.Width))
	}
	return Fault{}, false
}

func (d Design) edgeFault(r Relation) (Fault, bool) {
	fault := func(rule Rule, field, format string, args ...any) (Fault, bool) {
		return Fault{Rule: rule, Part: r.Part, Field: field, Detail: fmt.Sprintf(format, args...)}, true
	}
	var channel *Channel
	for i := range d.Channels {
		if d.Channels[i].ID == r.Part {
			channel = &d.Channels[i]
		}
	}
	switch {
	case channel == nil:
		return fault(RuleReference, "part", "%s is no channel, and only a river's end stays on an edge", r.Part)
	case r.River < 0 || r.River >= len(channel.Rivers):
		return fault(RuleReference, "river", "%s has %d rivers and none of the number %d, counted from 0",
			r.Part, len(channel.Rivers), r.River)
	case r.End > RiverFinish:
		return fault(RuleKind, "end", "end %d of a river is not known: use start or end", r.End)
	case r.Edge < 0 || r.Edge >= len(d.Outline.Nodes):
		return fault(RuleReference, "edge", "the outline has %d edges and none of the number %d, counted from 0",
			len(d.Outline.Nodes), r.Edge)
	case !(r.Along >= 0 && r.Along <= 1):
		return fault(RuleRange, "along_percent", "%g %% of an edge: give 0 %% to 100 %%", 100*r.Along)
	}
	return Fault{}, false
}

type conflict struct{ early, late int }

// relationConflicts are pairs of relations that hold the same thing.
func (d Design) relationConflicts() []conflict {
	var out []conflict
	first := map[string]int{}
	ends := map[ID]int{} // the first relation of a channel's end
	for i, r := range d.Relations {
		key := fmt.Sprintf("%q river %d end %d", r.Part, r.River, r.End)
		if axis, ok := r.Holds(); ok {
			key = fmt.Sprintf("%q along %d", r.Part, axis)
		} else if _, met := ends[r.Part]; !met {
			ends[r.Part] = i
		}
		if early, met := first[key]; met {
			out = append(out, conflict{early, i})
			continue
		}
		first[key] = i
	}
	for i, r := range d.Relations {
		if end, met := ends[r.Part]; met && holdsAxis(r) {
			out = append(out, conflict{min(end, i), max(end, i)})
		}
	}
	return out
}

func holdsAxis(r Relation) bool { _, ok := r.Holds(); return ok }

func (d Design) tapSet(id ID) *TapSet {
	for i := range d.Taps {
		if d.Taps[i].ID == id {
			return &d.Taps[i]
		}
	}
	return nil
}

// hasPart reports whether a part of any kind has this ID.
func (d Design) hasPart(id ID) bool {
	kind, _ := d.Find(id)
	return kind != NoPart
}

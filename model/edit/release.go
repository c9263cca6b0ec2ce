package edit

import (
	"fmt"
	"slices"

	"example.org/castwright/model/design"
)

// Held reports whether anything holds a part: a relation, or the sink whose
// centreline tap holes keep to.
func Held(d design.Design, id design.ID) bool {
	t := tapsOf(d, id)
	return t != nil && t.Sink != "" || len(d.RelationsOf(id)) > 0
}

// CutRelations cuts all that holds these parts, tap holes from their sinks too;
// they stay where they are.
func CutRelations(ids []design.ID) Edit {
	ids = slices.Clone(ids)
	return newEdit("Cut relations", func(d design.Design) (design.Design, error) {
		if len(ids) == 0 {
			return d, fmt.Errorf("nothing is picked: pick the parts first")
		}
		held := false
		for _, id := range ids {
			if !hasPart(d, id) {
				return d, noPart(id)
			}
			held = held || Held(d, id)
		}
		if !held {
			return d, fmt.Errorf("nothing holds these parts")
		}
		d.Taps = cloneAll(d.Taps, cloneTaps)
		for i := range d.Taps {
			if t := &d.Taps[i]; t.Sink != "" && slices.Contains(ids, t.ID) {
				release(d, t)
			}
		}
		d.Relations = slices.DeleteFunc(slices.Clone(d.Relations), func(r design.Relation) bool {
			return slices.Contains(ids, r.Part)
		})
		if len(d.Relations) == 0 {
			d.Relations = nil
		}
		return d, nil
	})
}

// Package edit holds the named edits of a design, the starters, and the history
// that undo walks. An edit never changes the value that it is given.
//
// After every edit what the maker meant is kept: [design.Relation] has the
// rules. [AddRelation] and its kin make a relation, [CutRelation] ends it, and
// [Together] moves several things as one hand does.
package edit

import (
	"fmt"

	"example.org/castwright/model/design"
)

// Edit is a named change of one design. The name is what undo shows: "Round
// corner". Apply refuses arguments that make no sense with a clear error; the
// design that it returns may still have faults.
//
// After an edit the relations of the design are kept, by the rules told at
// [design.Relation].
type Edit struct {
	Name  string
	Apply func(design.Design) (design.Design, error)

	// change is the edit alone, before relations are looked at; nil for an
	// edit made elsewhere. byHand says that it puts parts where a hand wants
	// them, relations or not; carries that it changes the top as a whole and
	// takes locked parts along.
	change  func(design.Design) (design.Design, error)
	byHand  bool
	carries bool
}

// JobEdit is a named change of a whole job: its options, client, materials.
type JobEdit struct {
	Name  string
	Apply func(design.Job) (design.Job, error)
}

// On makes a design's edit one of the job, on the option with this name. It
// refuses to change what is locked there; see [design.Handling].
func On(option string, e Edit) JobEdit {
	return JobEdit{e.Name, func(j design.Job) (design.Job, error) {
		for i, o := range j.Options {
			if o.Name != option {
				continue
			}
			d, err := e.Apply(o.Design)
			if err != nil {
				return j, fmt.Errorf("%s: %w", e.Name, err)
			}
			if err := guardLocked(o, e, d); err != nil {
				return j, fmt.Errorf("%s: %w", e.Name, err)
			}
			opts := append([]design.Option(nil), j.Options...)
			opts[i].Design, opts[i].Handling = d, surviving(o.Handling, o.Design, d)
			j.Options = opts
			return j, nil
		}
		return j, fmt.Errorf("%s: there is no option %q in this job", e.Name, option)
	}}
}

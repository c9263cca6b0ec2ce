package edit

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
)

// AddOption adds a design as a new option, named by the next free letter.
func AddOption(title string, d design.Design) JobEdit {
	return JobEdit{"Add option", func(j design.Job) (design.Job, error) {
		if err := firstOf(within(d), roomFor(j, d)); err != nil {
			return j, err
		}
		o := design.Option{Name: NextOption(j), Title: title, Design: d}
		j.Options = append(slices.Clip(j.Options), o)
		return j, nil
	}}
}

// DuplicateOption adds a copy of an option after it, named by the next free
// letter.
func DuplicateOption(name string) JobEdit {
	return optionEdit("Duplicate option", name, func(j *design.Job, i int) error {
		if err := roomFor(*j, j.Options[i].Design); err != nil {
			return err
		}
		o := j.Options[i]
		o.Name = NextOption(*j)
		j.Options = slices.Insert(j.Options, i+1, o)
		return nil
	})
}

// RenameOption gives an option another name, such as "C".
func RenameOption(name, to string) JobEdit {
	to = strings.TrimSpace(to)
	return optionEdit("Rename option", name, func(j *design.Job, i int) error {
		if to == "" {
			return fmt.Errorf("an option needs a name: give a letter or a short word")
		}
		if _, taken := j.Option(to); taken && to != name {
			return fmt.Errorf("there is an option %q already: give another name", to)
		}
		if to != name {
			for _, a := range j.Approvals {
				if a.Option == name || a.Option == to {
					return fmt.Errorf("revision %d was approved as option %q: change the title instead", a.Revision, a.Option)
				}
			}
		}
		j.Options[i].Name = to
		return nil
	})
}

// RetitleOption gives an option another title.
func RetitleOption(name, title string) JobEdit {
	return optionEdit("Change option's title", name, func(j *design.Job, i int) error {
		j.Options[i].Title = title
		return nil
	})
}

// MoveOption puts an option at another place in the order, 0 the first.
func MoveOption(name string, to int) JobEdit {
	return optionEdit("Move option", name, func(j *design.Job, i int) error {
		if to < 0 || to >= len(j.Options) {
			return fmt.Errorf("place %d: there are %d options: pick a place among them",
				to+1, len(j.Options))
		}
		o := j.Options[i]
		j.Options = slices.Insert(slices.Delete(j.Options, i, i+1), to, o)
		return nil
	})
}

// RemoveOption takes an option out of the job, which keeps at least one.
func RemoveOption(name string) JobEdit {
	return optionEdit("Remove option", name, func(j *design.Job, i int) error {
		if len(j.Options) == 1 {
			return fmt.Errorf("a job needs one option: add another before removing this one")
		}
		j.Options = slices.Delete(j.Options, i, i+1)
		return nil
	})
}

// NextOption is the first of A, B, ... Z, A2, B2, ... that no option has.
func NextOption(j design.Job) string {
	for round := 1; ; round++ {
		for letter := 'A'; letter <= 'Z'; letter++ {
			name := string(letter)
			if round > 1 {
				name = fmt.Sprintf("%c%d", letter, round)
			}
			_, taken := j.Option(name)
			if !taken && !slices.ContainsFunc(j.Approvals, func(a design.Approval) bool { return a.Option == name }) {
				return name
			}
		}
	}
}

// SetClient writes the client's name.
func SetClient(client string) JobEdit {
	return JobEdit{"Change client", func(j design.Job) (design.Job, error) {
		j.Client = client
		return j, nil
	}}
}

// SetSite writes what is known of the place.
func SetSite(s design.Site) JobEdit {
	return JobEdit{"Change site", func(j design.Job) (design.Job, error) {
		if s.Helpers < 0 || s.Helpers > design.MaxOptions {
			return j, fmt.Errorf("%d helpers: give how many people carry, 0 when not known", s.Helpers)
		}
		err := firstOf(
			checkLength("the door's width", s.DoorWidth, 0),
			checkLength("the door's height", s.DoorHeight, 0),
			checkLength("the stair's width", s.StairWidth, 0),
			checkLength("the stair's turn", s.StairTurn, 0),
		)
		if err != nil {
			return j, err
		}
		j.Site = s
		return j, nil
	}}
}

// SetUnits chooses how the maker reads and writes lengths. No length changes.
func SetUnits(s units.System) JobEdit {
	return JobEdit{"Change units", func(j design.Job) (design.Job, error) {
		if s > units.Imperial {
			return j, fmt.Errorf("system of units %d is not known: use metric or imperial", s)
		}
		j.Units = s
		return j, nil
	}}
}

// SetMaterials writes the materials as used on this job.
func SetMaterials(m design.Materials) JobEdit {
	return JobEdit{"Change materials", func(j design.Job) (design.Job, error) {
		if err := checkMaterials(m); err != nil {
			return j, err
		}
		j.Materials = m
		return j, nil
	}}
}

func checkMaterials(m design.Materials) error {
	if faults := m.Validate(); len(faults) > 0 {
		return errors.New(faults[0].Detail)
	}
	return firstOf(
		checkPrice("the price of a bag", m.Mix.BagPrice),
		checkPrice("the price of a litre of resin", m.Resin.LitrePrice),
		checkPrice("the price of a kilogram of glass", m.Glass.KgPrice),
	)
}

// roomFor refuses an option more than a job holds.
func roomFor(j design.Job, d design.Design) error {
	if len(j.Options) >= design.MaxOptions {
		return fmt.Errorf("a job holds %d options: remove one first", design.MaxOptions)
	}
	n := points(d)
	for _, o := range j.Options {
		n += points(o.Design)
	}
	if n > design.MaxJobPoints {
		return fmt.Errorf("the job would have %d points, beyond the %d that it may hold: "+
			"remove an option, or start another job", n, design.MaxJobPoints)
	}
	return nil
}

// optionEdit is an edit of the option with this name; f may write into the
// list of options.
func optionEdit(what, name string, f func(*design.Job, int) error) JobEdit {
	return JobEdit{what, func(j design.Job) (design.Job, error) {
		for i, o := range j.Options {
			if o.Name != name {
				continue
			}
			out := j
			out.Options = slices.Clone(j.Options)
			if err := f(&out, i); err != nil {
				return j, fmt.Errorf("option %s: %w", name, err)
			}
			return out, nil
		}
		return j, fmt.Errorf("there is no option %q in this job: pick one that is there", name)
	}}
}

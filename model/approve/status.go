package approve

import (
	"fmt"
	"slices"
	"strings"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/change"
	"example.org/castwright/model/design"
	"example.org/castwright/model/report"
	"example.org/castwright/model/terms"
	"example.org/castwright/model/units"
)

// State is how an option stands to what was agreed.
type State uint8

// The states.
const (
	Never    State = iota // no revision of this option holds
	Agreed                // it is what was agreed
	Changed               // it was agreed and has been changed since
	Tampered              // what was agreed does not match its fingerprint
)

// Status is how an option stands to its latest revision that holds.
type Status struct {
	State    State
	Approval design.Approval // of the latest, unless State is Never
	// Priced reports whether the price that the client was told is another now.
	Priced bool
}

// Of says how an option stands.
func Of(j design.Job, option string) Status {
	o, ok := j.Option(option)
	a, held := Latest(j, option)
	if !ok || !held {
		return Status{}
	}
	s := Status{State: Changed, Approval: a,
		Priced: !a.Price.Amount.IsZero() && !a.Price.Amount.Equal(o.Price.Amount)}
	switch {
	case Fingerprint(a.Design) != a.Fingerprint:
		s.State = Tampered
	case Fingerprint(o.Design) == a.Fingerprint:
		s.State = Agreed
	}
	return s
}

// Latest is the latest revision of an option that has not been withdrawn.
func Latest(j design.Job, option string) (design.Approval, bool) {
	for i := len(j.Approvals) - 1; i >= 0; i-- {
		if a := j.Approvals[i]; a.Option == option && a.Withdrawn == "" {
			return a, true
		}
	}
	return design.Approval{}, false
}

// Words says the status in a few words, for the window and for sheets.
func (s Status) Words() string {
	switch s.State {
	case Agreed:
		if s.Priced {
			return fmt.Sprintf("Approved, revision %d; the price has changed since", s.Approval.Revision)
		}
		return fmt.Sprintf("Approved, revision %d", s.Approval.Revision)
	case Changed:
		return fmt.Sprintf("Changed since revision %d", s.Approval.Revision)
	case Tampered:
		return fmt.Sprintf("Revision %d is not as signed", s.Approval.Revision)
	}
	return "Not approved yet"
}

// Since is what has changed from a revision to the option as it is.
type Since struct {
	Made []change.Change // what was done to the design
	// Price and Terms say in words that these are others now, "" when they are not.
	Price, Terms string
	// Numbers is what follows from it: the revision reckoned with the materials of
	// its day, the option with today's.
	Numbers []report.Difference
}

// Since says what has changed. Its Made is never empty for a design that differs.
func (s Status) Since(j design.Job, option string) Since {
	o, ok := j.Option(option)
	if !ok || s.State == Never {
		return Since{}
	}
	a := s.Approval
	out := Since{Made: change.Between(a.Design, o.Design, j.Units)}
	if s.State == Changed && len(out.Made) == 0 {
		out.Made = []change.Change{{Kind: change.Altered, Words: "Drawn otherwise"}}
	}
	if s.Priced {
		out.Price = "Price " + amount.Money(j.Materials.Currency, o.Price.Amount) + ", was " + amount.Money(a.Materials.Currency, a.Price.Amount)
	}
	if a.Terms != (design.Terms{}) && terms.Kept(a.Terms, a.Design) != terms.Kept(j.Terms, o.Design) {
		out.Terms = "What is included, or the words on care, changed"
	}
	out.Numbers = report.Differences(report.Derive(a.Design, a.Materials, j.Site), report.Derive(o.Design, j.Materials, j.Site))
	return out
}

// Count is how many things were changed; numbers that follow do not count.
func (s Since) Count() int {
	n := len(s.Made)
	for _, words := range [...]string{s.Price, s.Terms} {
		if words != "" {
			n++
		}
	}
	return n
}

// Lines is what was changed in words, then the numbers that follow: "Weight, dry
// 99.1 kg, was 98.8 kg (+0.3 kg)".
func (s Since) Lines(sys units.System, currency string) (made, numbers []string) {
	for _, c := range s.Made {
		made = append(made, c.Words)
	}
	for _, words := range [...]string{s.Price, s.Terms} {
		if words != "" {
			made = append(made, words)
		}
	}
	said := func(start string) bool {
		return slices.ContainsFunc(made, func(line string) bool { return strings.HasPrefix(line, start) })
	}
	for _, d := range s.Numbers {
		switch d.Key { // what has been said already
		case "thickness_mm":
			if said("Thickness ") {
				continue
			}
		case "width_mm", "depth_mm":
			if said("Top ") {
				continue
			}
		}
		if d.Key == "warnings" {
			if d.WordsB != report.Nothing {
				numbers = append(numbers, "Warned of now: "+d.WordsB)
			}
			if d.WordsA != report.Nothing {
				numbers = append(numbers, "No longer warned of: "+d.WordsA)
			}
			continue
		}
		if d.WordsA != "" || d.WordsB != "" {
			numbers = append(numbers, d.Label+" "+d.WordsB+", was "+d.WordsA)
			continue
		}
		was, is := d.Text(d.A, sys, currency), d.Text(d.B, sys, currency)
		if was != is {
			numbers = append(numbers, d.Label+" "+is+", was "+was+" ("+d.Change(sys, currency)+")")
		}
	}
	return made, numbers
}

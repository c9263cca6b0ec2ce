package approve

import (
	"fmt"

	"example.org/castwright/model/design"
	"example.org/castwright/model/report"
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
}

// Of says how an option stands.
func Of(j design.Job, option string) Status {
	o, ok := j.Option(option)
	a, held := Latest(j, option)
	if !ok || !held {
		return Status{}
	}
	switch {
	case Fingerprint(a.Design) != a.Fingerprint:
		return Status{Tampered, a}
	case Fingerprint(o.Design) == a.Fingerprint:
		return Status{Agreed, a}
	}
	return Status{Changed, a}
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
		return fmt.Sprintf("Approved, revision %d", s.Approval.Revision)
	case Changed:
		return fmt.Sprintf("Changed since revision %d", s.Approval.Revision)
	case Tampered:
		return fmt.Sprintf("Revision %d is not as signed", s.Approval.Revision)
	}
	return "Not approved yet"
}

// Since is what has changed from the revision to the option as it is, in numbers:
// the revision reckoned with the materials of its day, the option with today's.
func (s Status) Since(j design.Job, option string) []report.Difference {
	o, ok := j.Option(option)
	if !ok || s.State == Never {
		return nil
	}
	was := report.Derive(s.Approval.Design, s.Approval.Materials, j.Site)
	is := report.Derive(o.Design, j.Materials, j.Site)
	return report.Differences(was, is)
}

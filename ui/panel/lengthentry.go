package panel

import (
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
)

// LengthEntry is an entry for a length, as dialogs use it: what is typed is read
// in the job's system, arrows nudge it. It has a text of its own until it is
// read, so a text that can't be read stays, with the reason.
type LengthEntry struct {
	*control.Entry
	sys   units.System
	value units.Length
}

// NewLengthEntry is an entry that starts with a length. A zero length shows as
// nothing where empty says what that means, such as "not known".
func NewLengthEntry(f *control.Frame, hint string, sys units.System, l units.Length,
	empty string) *LengthEntry {
	e := &LengthEntry{Entry: control.NewEntry(f, hint+" "+lengthHint(sys)), sys: sys}
	e.SetPlaceHolder(empty)
	show := func() {
		text, _ := lengthText(e.value, sys)
		if e.value == 0 && empty != "" {
			text = ""
		}
		e.SetValue(text)
	}
	e.Commit = func(text string) error {
		l, err := units.Length(0), error(nil)
		if text != "" || empty == "" {
			l, err = units.Parse(text, sys)
		}
		if err != nil {
			return err
		}
		e.value = l
		show()
		return nil
	}
	e.Nudge = func(steps int) {
		e.value = max(0, e.value+units.Length(steps)*NudgeStep(sys))
		show()
	}
	e.value = l
	show()
	return e
}

// Length is the length that was read last.
func (e *LengthEntry) Length() units.Length { return e.value }

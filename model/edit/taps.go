package edit

import (
	"fmt"

	"example.org/castwright/model/design"
)

// AddTaps puts a set of tap holes into the top; without an ID it gets the next
// free one.
func AddTaps(t design.TapSet) Edit { return taps.add(t, checkTaps) }

// SetTaps puts t in the place of the tap holes with its ID.
func SetTaps(t design.TapSet) Edit { return taps.set(t, checkTaps) }

func checkTaps(d design.Design, t design.TapSet) error {
	if t.Sink != "" && sinkOf(d, t.Sink) == nil {
		return fmt.Errorf("there is no sink %q to keep to: name one that is there, or none", t.Sink)
	}
	return firstOf(
		checkBound("the diameter", t.Diameter),
		checkBound("the offset", t.Offset),
		checkBound("the set-back", t.SetBack),
	)
}

// sinkOf is the sink with this ID, nil when there is none.
func sinkOf(d design.Design, id design.ID) *design.Sink {
	for i := range d.Sinks {
		if d.Sinks[i].ID == id {
			return &d.Sinks[i]
		}
	}
	return nil
}

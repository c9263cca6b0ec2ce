package edit

import (
	"fmt"
	"math"

	"example.org/castwright/model/design"
)

// AddSink puts a sink into the top; without an ID it gets the next free one.
func AddSink(s design.Sink) Edit { return sinks.add(s, checkSink) }

// SetSink puts s in the place of the sink with its ID.
func SetSink(s design.Sink) Edit { return sinks.set(s, checkSink) }

func checkSink(_ design.Design, s design.Sink) error {
	if math.IsNaN(s.BowlMass) || math.Abs(s.BowlMass) > design.MaxQuantity {
		return fmt.Errorf("the bowl's mass is %g kg: give what the bowl weighs", s.BowlMass)
	}
	return firstOf(
		checkBound("the width", s.Shape.Width),
		checkBound("the depth", s.Shape.Depth),
		checkBound("the corner radius", s.Shape.CornerRadius),
		checkBound("the bow", s.Shape.Bow),
		checkBound("the reveal", s.Reveal.Size),
		checkBound("the rim", s.Rim),
		checkBound("the drain", s.Drain),
		checkBound("the bowl's depth", s.BowlDepth),
		checkProfile(s.Profile),
	)
}

// firstOf is the first error that is one.
func firstOf(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

package edit

import (
	"fmt"

	"example.org/castwright/model/design"
)

// AddSupport puts a support under the top; without an ID it gets the next free
// one.
func AddSupport(s design.Support) Edit { return supports.add(s, checkSupport) }

// SetSupport puts s in the place of the support with its ID.
func SetSupport(s design.Support) Edit { return supports.set(s, checkSupport) }

// MoveSupportPoint puts a point of a support's line, or a corner of its patch,
// at a place.
func MoveSupportPoint(id design.ID, i int, to design.Point) Edit {
	return supports.change("Move support", id, func(_ design.Design, s *design.Support) error {
		if i < 0 || i >= len(s.Line) {
			return fmt.Errorf("point %d: the support has %d points: pick one of these",
				i+1, len(s.Line))
		}
		s.Line[i] = to
		return nil
	})
}

func checkSupport(_ design.Design, s design.Support) error {
	return checkBound("the width", s.Width)
}

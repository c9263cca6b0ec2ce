package edit

import "example.org/castwright/model/design"

// AddHole puts a plain hole into the top; without an ID it gets the next free
// one.
func AddHole(h design.Hole) Edit { return holes.add(h, checkHole) }

// SetHole puts h in the place of the hole with its ID.
func SetHole(h design.Hole) Edit { return holes.set(h, checkHole) }

func checkHole(_ design.Design, h design.Hole) error {
	return checkBound("the diameter", h.Diameter)
}

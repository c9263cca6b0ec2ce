package slab

import "example.org/castwright/model/design"

// Validate lists every fault of a design: values out of range, and what the
// geometry can't be as drawn.
func Validate(d design.Design) []design.Fault {
	return append(d.Validate(), Resolve(d).Faults...)
}

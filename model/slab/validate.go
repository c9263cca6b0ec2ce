package slab

import "example.org/castwright/model/design"

// Validate lists every fault of a design: values out of range first, and then
// what the geometry can't be as drawn, which [Resolve] has found.
func Validate(d design.Design) []design.Fault {
	return append(d.Validate(), Resolve(d).Faults...)
}

package design

import "fmt"

// Validate lists every value of the design that is out of its range. What the
// geometry makes of the values is looked at by package slab.
func (d Design) Validate() []Fault {
	var f []Fault
	if d.Thickness <= 0 {
		f = append(f, Fault{Rule: "thickness", Field: "thickness_mm",
			Detail: fmt.Sprintf("the thickness is %g mm; give 10 mm to 150 mm", d.Thickness.MM())})
	}
	return f
}

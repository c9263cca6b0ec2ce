package design

import "fmt"

// Rule is the stable code of a fault.
type Rule string

// Fault is one thing wrong with a design: which rule, on which part and field,
// where on the drawing, and in words what is wrong and what to do.
type Fault struct {
	Rule   Rule
	Part   ID     // "" for the top itself
	Field  string // path of the value in the file, such as "sinks[0].at_mm"
	At     Point
	Detail string
}

func (f Fault) Error() string {
	if f.Field == "" {
		return f.Detail
	}
	return fmt.Sprintf("%s: %s", f.Field, f.Detail)
}

// Package report is the only place that numbers come from: panel, sheets and
// command line print the same [Report].
package report

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/takeoff"
	"example.org/castwright/model/warn"
)

// Report is every number that anyone sees of one design.
type Report struct {
	Solid    slab.Solid // for drawing and picking
	Measures slab.Measures
	Takeoff  takeoff.Takeoff
	Faults   []design.Fault // what is wrong with the design itself
	Warnings []warn.Warning // worst first
}

// Derive reckons the report of a design with the materials in use at a site. It
// is pure and never fails: what is wrong with the design stands in Faults.
func Derive(d design.Design, m design.Materials, site design.Site) Report {
	solid := slab.Resolve(d)
	r := Report{Solid: solid, Measures: solid.Measure(d.Finish.Grind.MM())}
	r.Takeoff = takeoff.Reckon(d, m, r.Solid, r.Measures)
	r.Faults = append(d.Validate(), solid.Faults...) // as slab.Validate, without resolving again
	r.Warnings = warn.Check(d, m, site, r.Solid, r.Measures, r.Takeoff)
	return r
}

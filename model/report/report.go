// Package report is the only place that numbers come from: panel, sheets and
// command line print the same [Report].
//
// What its measures mean, by their keys in the JSON report. All are of the finished
// top, so with the grind off; the solid is defined in the schema of the job file.
//
//   - plan_area_mm2: inside the outline with its corners cut, nothing else taken off.
//   - net_area_mm2: the plan area less everything that goes right through (cut-outs,
//     drains, tap and plain holes) at its plan size, each point once. Profiles and
//     channels take nothing off.
//   - outline_perimeter_mm: along the outline's exact curves, whatever meets it; seen
//     and wall edges add up to it.
//   - cutout_perimeter_mm: of the openings at their plan size, united, what of their
//     rims lies inside the outline. What two openings share counts once, what lies
//     along the outline or over its edge not at all.
//   - concrete_volume_mm3: the solid, with profiles, openings and channels off it and
//     glass beds counted as concrete.
//   - resin_volume_mm3: the space of the resin channels within the solid's edges and
//     openings up to the face, each point once, glass in it included; top coats lie
//     above the face and are not in it.
//   - glass_area_mm2: plan area of the glass beds inside the outline, less openings and
//     channels, each point once; the coverage is not in it. glass_mass_kg: of the glass
//     as laid in those beds, before grinding and without waste.
//   - weight_kg: finished, dry and empty: concrete less the glass in it, that glass after
//     grinding, and the channels' fill with its glass and top coats. No bowls, no water.
//   - centre_of_gravity_mm: of that same mass, as drawn, z above the
//     underside.
//   - bags: whole bags for the volume cast, grind and waste included.
package report

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/material"
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
// is pure and never fails: what is wrong with the design or the materials stands in
// Faults. What the job does not state is taken as [material.Completed] has it.
func Derive(d design.Design, m design.Materials, site design.Site) Report {
	solid := slab.Resolve(d)
	full := material.Completed(m)
	r := Report{Solid: solid, Measures: solid.Measure(d.Finish.Grind.MM())}
	r.Takeoff = takeoff.Reckon(d, full, r.Solid, r.Measures)
	r.Faults = append(d.Validate(), solid.Faults...) // as slab.Validate, without resolving again
	r.Faults = append(r.Faults, m.Validate()...)
	if r.Measures.Uncut {
		r.Faults = append(r.Faults, design.Fault{Rule: design.RuleProfile, Field: "outline.nodes",
			Detail: "the edges and their profiles cross each other too often to be cut, and the volume leaves the profiles out: " +
				"use fewer nodes or smaller profiles"})
	}
	r.Warnings = warn.Check(d, m, site, r.Solid, r.Measures, r.Takeoff)
	return r
}

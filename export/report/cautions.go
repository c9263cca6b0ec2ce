package report

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/lift"
	"example.org/castwright/model/report"
	"example.org/castwright/model/units"
)

// cautions lists the hazards of the work on this top, each said once and short.
func cautions(d design.Design, r report.Report, sys units.System) []string {
	out := []string{
		"Silica: grinding and cutting concrete sets free dust that scars the lungs. Work wet, or " +
			"with a shroud and vacuum, and wear a fitted respirator (limit 50 µg/m³ over 8 hours, " +
			"29 CFR 1910.1053, on building sites 1926.1153).",
		"Alkali: wet cement burns skin and eyes, and the pain can come late. Gloves, eye " +
			"protection, wash at once (OSHA 3351).",
	}
	if r.Takeoff.ResinMix.Value > 0 {
		out = append(out,
			"Resin: resin and hardener irritate, and can make skin allergic for good. Gloves, fresh "+
				"air, and the product's own safety sheet. A bucket of leftover resin heats up by "+
				"itself: stand it outdoors on concrete.",
			"Torch: seconds of flame only, never near solvent, with nothing that burns close by and "+
				"a watch afterwards (29 CFR 1910.252; from memory: 35 ft clear, half an hour).")
	}
	if one := lift.SlabLimit(); r.Takeoff.WeightDry.Value > one {
		out = append(out, "Lifting: "+units.FormatMass(r.Takeoff.WeightDry.Value, sys)+" is more than the "+
			units.FormatMass(one, sys)+" that one person should lift at a slab ("+lift.Source+
			"). A team, straps, on edge, never flat.")
	}
	out = append(out, "Supports, wall brackets, seating, wheelchair access and anything overhead: local "+
		"code and a licensed person decide. This report is no structural approval.")
	if len(d.Sinks)+len(d.Taps) > 0 {
		out = append(out, "Plumbing: local code and a licensed plumber decide.")
	}
	return out
}

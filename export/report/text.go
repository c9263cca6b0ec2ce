package report

import (
	"fmt"
	"io"
	"strings"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/report"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/takeoff"
	"example.org/castwright/model/units"
	"example.org/castwright/model/warn"
)

// Text writes the report of an option of the job as monospaced text in the job's
// units, in lines that fit on A4 and Letter.
func Text(w io.Writer, j design.Job, o design.Option, r report.Report) error {
	p := newPage(w)
	p.title(j, o, r)
	p.sizes(o.Design, r, j.Units)
	p.weights(r.Takeoff, j.Units)
	p.amounts(r, j.Units)
	p.costs(j.Materials, r.Takeoff)
	p.faults(r.Faults)
	p.warnings(r.Warnings, j.Units)
	p.reckoning(r.Takeoff, j.Units)
	p.heading("Take care")
	for _, c := range cautions(o.Design, r, j.Units) {
		p.words("- ", "  ", c)
	}
	return p.w.Flush()
}

func (p page) title(j design.Job, o design.Option, r report.Report) {
	p.words("", "", "Option "+o.Name+": "+o.Title)
	if j.Client != "" {
		p.words("For ", "    ", j.Client)
	}
	p.line(strings.Repeat("=", width))
	severe := 0
	for _, w := range r.Warnings {
		if w.Severity == warn.Severe {
			severe++
		}
	}
	p.words("", "", fmt.Sprintf("%s in the drawing, %s, %d severe.",
		count(len(r.Faults), "fault"), count(len(r.Warnings), "warning"), severe))
	if len(r.Faults) > 0 {
		p.words("", "", "The design has faults, so the numbers below may not be those of the "+
			"top that is meant.")
	}
}

// count writes a number of things.
func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

func (p page) sizes(d design.Design, r report.Report, sys units.System) {
	p.heading("Sizes")
	ms := r.Measures
	mm := func(x float64) string { return units.Format(units.FromMM(x), sys) }
	p.row("Left to right, in all", mm(ms.Bounds.W()), "")
	p.row("Front to back, in all", mm(ms.Bounds.H()), "")
	p.row("Thickness, finished", units.Format(d.Thickness, sys), "")
	p.figure(r.Takeoff.FormDepth, sys)
	p.row("Area, outline", units.FormatArea(ms.PlanArea, sys), "")
	p.row("Area, less openings", units.FormatArea(ms.NetArea, sys), "")
	p.row("Round the outline", mm(ms.OutlinePerimeter), "")
	p.row("  seen edges", mm(ms.SeenLength), "")
	p.row("  wall edges", mm(ms.WallLength), "")
	p.row("Round the cut-outs and holes", mm(ms.CutoutPerimeter), "")
	p.row("Concrete, as one solid", units.FormatBulk(ms.ConcreteVolume/1e6, sys), "")
	p.openings(r.Solid)
}

// openings counts what goes through the top.
func (p page) openings(s slab.Solid) {
	var n [4]int
	for _, o := range s.Openings {
		if int(o.Kind) < len(n) {
			n[o.Kind]++
		}
	}
	for kind, label := range [...]string{"Sink cut-outs", "Drain holes of vessels", "Tap holes",
		"Other holes"} {
		if n[kind] > 0 {
			p.row(label, fmt.Sprint(n[kind]), "")
		}
	}
}

// figure writes one figure with its range.
func (p page) figure(f takeoff.Figure, sys units.System) {
	p.row(f.Label, amount.Figure(f, sys), amount.Range(f, sys))
}

func (p page) weights(t takeoff.Takeoff, sys units.System) {
	p.heading("Weights, with their range")
	for _, f := range []takeoff.Figure{t.WeightDry, t.WeightConcrete, t.WeightWet, t.WeightFull,
		t.CentreX, t.CentreY, t.CentreZ} {
		p.figure(f, sys)
	}
}

func (p page) amounts(r report.Report, sys units.System) {
	t := r.Takeoff
	p.heading("Amounts, with their range")
	for _, f := range []takeoff.Figure{t.MixVolume, t.Bags, t.Water} {
		p.figure(f, sys)
	}
	if t.GlassArea.Value > 0 {
		for _, f := range []takeoff.Figure{t.GlassArea, t.GlassMass0, t.Displaced} {
			p.figure(f, sys)
		}
	}
	if t.GlassFill.Value > 0 {
		p.figure(t.GlassFill, sys)
	}
	if t.GlassMass.Value > 0 {
		p.figure(t.GlassMass, sys)
	}
	if t.ResinMix.Value > 0 {
		for _, f := range []takeoff.Figure{t.ResinVolume, t.TopCoat, t.ResinMix, t.ResinA, t.ResinB,
			t.ResinMass, t.Pours} {
			p.figure(f, sys)
		}
	}
	for i, d := range t.Dams {
		p.row(fmt.Sprintf("Dam %d, long x high", i+1), units.Format(units.FromMM(d.Length), sys),
			"x "+units.Format(units.FromMM(d.Height), sys))
	}
}

func (p page) costs(m design.Materials, t takeoff.Takeoff) {
	p.heading("Cost of materials")
	for _, c := range t.Costs {
		p.words("", "    ", c.Label)
		bought := counted(c.Amount, c.Unit)
		if c.Price.IsZero() {
			p.row("    "+bought+", no price given", money(m.Currency, c.Total), "")
			continue
		}
		p.row("    "+bought+" x "+money(m.Currency, c.Price), money(m.Currency, c.Total), "")
	}
	p.row("Total", money(m.Currency, t.Total), "")
}

func (p page) faults(faults []design.Fault) {
	if len(faults) == 0 {
		return
	}
	p.heading("Faults of the design")
	for i, f := range faults {
		mark := fmt.Sprintf("%d. ", i+1)
		p.words(mark, pad("", len(mark)), f.Error())
	}
}

func (p page) warnings(warnings []warn.Warning, sys units.System) {
	p.heading("Warnings, worst first")
	if len(warnings) == 0 {
		p.words("", "", "None. That a top breaks no limit here does not prove it sound.")
	}
	for _, w := range warnings {
		text := w.Title
		if w.Value != 0 || w.Limit != 0 {
			text += ": " + reading(w.Value, w.Unit, sys) + ", limit " + reading(w.Limit, w.Unit, sys)
		}
		text += ", at x" + noBreak + reading(w.At.X, "mm", sys) +
			", y" + noBreak + reading(w.At.Y, "mm", sys) + "."
		p.words(pad(strings.ToUpper(w.Severity.String()), 8)+" ", pad("", 9), text)
		p.words(pad("", 9), pad("", 9), w.Advice)
		p.words(pad("", 9), pad("", 9), "Limit: "+w.Source+". Code: "+string(w.Code)+".")
	}
}

func (p page) reckoning(t takeoff.Takeoff, sys units.System) {
	p.heading("How each number was reckoned")
	for _, f := range t.Figures() {
		p.words("", "    ", f.Label+": "+amount.Figure(f, sys))
		p.words("    ", "    ", f.How)
		p.words("    ", "    ", "Source: "+f.Source)
	}
	p.line("")
	p.words("", "", "Ranges take every input at its worst at once:")
	for _, d := range takeoff.Doubts() {
		p.words("- ", "  ", d.What+"; "+d.Source.String())
	}
	p.words("", "", "Formulas are in metric units, as the reckoning is. A product's own data sheet "+
		"overrules every figure here: type its figures into the materials.")
}

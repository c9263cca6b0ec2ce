package panel

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/report"
	"example.org/castwright/model/takeoff"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	look "example.org/castwright/ui/theme"
	"example.org/castwright/ui/words"
)

// reckoned is one number behind a quantity and how it came about.
type reckoned struct{ label, value, span, how, source string }

// quantity is one line: a name, the value that counts, and what stands behind it.
type quantity struct {
	label, value string
	behind       []reckoned
}

// quantitiesOf is the six lines of a report.
func quantitiesOf(d design.Design, m design.Materials, r report.Report, sys units.System) []quantity {
	t, ms := r.Takeoff, r.Measures
	figures := func(fs ...takeoff.Figure) (out []reckoned) {
		for _, f := range fs {
			out = append(out, reckoned{f.Label, amount.Figure(f, sys), amount.Range(f, sys), formula(f.How, sys),
				f.Source})
		}
		return out
	}
	drawn := func(label, value, how string) reckoned {
		return reckoned{label, value, "", how, "the drawing"}
	}
	mm := func(x float64) string { return amount.Of(x, "mm", sys) }

	size := []reckoned{
		drawn("Area, outline", units.FormatArea(ms.PlanArea, sys),
			"The region inside the outline, corners treated."),
		drawn("Area, less openings", units.FormatArea(ms.NetArea, sys),
			"The same less sink cut-outs and holes, united first."),
		drawn("Round the outline", mm(ms.OutlinePerimeter),
			"Along the exact curves: "+mm(ms.SeenLength)+" seen, "+mm(ms.WallLength)+" at walls."),
		drawn("Round the openings", mm(ms.CutoutPerimeter),
			"Along the exact curves, where they bound the top."),
	}
	mix := amount.Figure(t.Bags, sys) + " · " + amount.Figure(t.MixVolume, sys)

	resin := "none"
	var resinBehind []reckoned
	if t.ResinMix.Value > 0 {
		resin = amount.Figure(t.ResinMix, sys)
		if t.Pours.Value > 0 {
			resin += " · " + amount.Figure(t.Pours, sys)
		}
		resinBehind = figures(t.ResinVolume, t.TopCoat, t.ResinMix, t.ResinA, t.ResinB, t.Pours,
			t.ResinMass)
		for _, dam := range t.Dams {
			resinBehind = append(resinBehind, reckoned{"Dam", mm(dam.Length) + " long", "",
				mm(dam.Height) + " high at an open end, with a hand's width each side.", "the drawing"})
		}
	}
	glass := "none"
	var glassBehind []reckoned
	if t.GlassMass.Value > 0 {
		glass = amount.Figure(t.GlassMass, sys)
		glassBehind = figures(t.GlassArea, t.GlassMass0, t.GlassFill, t.GlassMass, t.Displaced)
	}
	return []quantity{
		{"Weight", amount.Figure(t.WeightDry, sys), figures(t.WeightDry, t.WeightConcrete, t.WeightWet,
			t.WeightFull, t.CentreX, t.CentreY, t.CentreZ)},
		{"Size", words.Size(ms.Bounds.W(), ms.Bounds.H(), sys), size},
		{"Mix", mix, figures(t.MixVolume, t.Bags, t.Water, t.FormDepth)},
		{"Resin", resin, resinBehind},
		{"Glass", glass, glassBehind},
		{"Cost", CostOf(t, m.Currency), costsOf(t, m.Currency, sys)},
	}
}

// CostOf is the total, or that prices are missing.
func CostOf(t takeoff.Takeoff, currency string) string {
	priced, missing := false, false
	for _, c := range t.Costs {
		if c.Amount > 0 {
			priced = priced || !c.Price.IsZero()
			missing = missing || c.Price.IsZero()
		}
	}
	switch {
	case !priced && missing:
		return "no prices yet"
	case missing:
		return "over " + amount.Money(currency, t.Total)
	}
	return amount.Money(currency, t.Total)
}

// sold is a unit that materials are sold by, where a maker works in inches.
type sold struct {
	sign, name string
	size       float64 // of it in the report's unit
}

// bought are the units that the report counts materials in, as sold.
var bought = map[string]sold{"L": {"qt", "quart", units.QuartL}, "kg": {"lb", "pound", units.PoundKG}}

func costsOf(t takeoff.Takeoff, currency string, sys units.System) (out []reckoned) {
	for _, c := range t.Costs {
		if c.Amount == 0 {
			continue
		}
		how, unit, price := amount.Of(c.Amount, c.Unit, units.Metric), c.Unit, c.Price
		if u, ok := bought[c.Unit]; ok && sys == units.Imperial {
			how = strconv.FormatFloat(math.Round(c.Amount/u.size*1000)/1000, 'f', -1, 64) + " " + u.sign
			unit, price = u.name, PriceOf(c.Price, u.size)
		}
		if c.Price.IsZero() {
			how += ", no price given: type it under Job and materials (Ctrl+J)."
		} else {
			how += " × " + amount.Money(currency, price) + " a " + unit
		}
		out = append(out, reckoned{c.Label, amount.Money(currency, c.Total), "", how,
			"the maker's own prices"})
	}
	return out
}

// signs writes a formula of the report, which is plain ASCII, with the signs that a
// screen has.
var signs = strings.NewReplacer(" m2", " m²", " m3", " m³", "/m3", "/m³", " x ", " × ")

// measured finds a metric unit in a formula.
var measured = regexp.MustCompile(`\d (kg|L|mm|m2)\b`)

// formula is how a figure was reckoned. Formulas are in metric units, as the reckoning
// is, which who works in inches is told.
func formula(how string, sys units.System) string {
	told := ""
	if sys == units.Imperial && measured.MatchString(how) {
		told = "In metric units: "
	}
	return told + signs.Replace(how)
}

// quantities is the section of the panel.
type quantities struct {
	p    *Panel
	box  *fyne.Container
	rows []*quantityRow
}

type quantityRow struct {
	tile   *control.Tile
	value  *control.Text
	sign   *widget.Icon
	detail *fyne.Container
	scroll *container.Scroll
	lines  []*reckonedLine
	open   bool
	latest quantity
}

func newQuantities(p *Panel) *quantities {
	q := &quantities{p: p, box: container.New(accordion{})}
	for range 6 {
		q.rows = append(q.rows, nil)
	}
	return q
}

// show shows the quantities.
func (q *quantities) show(list []quantity) {
	for i, item := range list {
		r := q.rows[i]
		if r == nil {
			r = q.newRow(item.label, i == 0)
			q.rows[i] = r
			q.box.Add(r.tile)
			q.box.Add(r.scroll)
		}
		r.latest = item
		r.value.SetText(item.value)
		if r.open {
			r.showLines()
		}
	}
}

func (q *quantities) newRow(label string, first bool) *quantityRow {
	r := &quantityRow{
		value: control.NewText("").Bold().Right(), detail: control.Column(look.Space),
		sign: control.Icon(icon.Right, look.Muted),
	}
	r.scroll = container.NewVScroll(inset(control.Pad(look.Gap, 0, r.detail)))
	r.scroll.Hide()
	head := container.NewBorder(nil, nil, control.Row(look.Gap,
		control.Sized(16, 16, control.Middle(r.sign)),
		control.Middle(control.NewText(label).Muted())), nil, control.Middle(r.value))
	r.tile = control.NewTile(q.p.frame, label+": a click says how it was reckoned, with the source.",
		control.Pad(3, look.Gap, head), func() { q.toggle(r) })
	return r
}

// toggle opens what stands behind a quantity, and closes what was open.
func (q *quantities) toggle(r *quantityRow) {
	for _, o := range q.rows {
		o.setOpen(o == r && !r.open)
	}
	q.p.relayout()
}

func (r *quantityRow) setOpen(open bool) {
	if open == r.open {
		return
	}
	r.open = open
	sign := icon.Right
	if open {
		sign = icon.Down
		r.showLines()
		r.scroll.Show()
	} else {
		r.scroll.Hide()
	}
	r.sign.SetResource(theme.NewColoredResource(sign, look.Muted))
}

func (r *quantityRow) showLines() {
	list := r.latest.behind
	if len(list) == 0 {
		list = []reckoned{{label: "There is none in this top."}}
	}
	for len(r.lines) < len(list) {
		l := newReckonedLine()
		r.lines = append(r.lines, l)
		r.detail.Add(l.box)
	}
	for i, l := range r.lines {
		if i >= len(list) {
			l.box.Hide()
			continue
		}
		l.show(list[i])
		l.box.Show()
	}
}

// reckonedLine is one number with its formula and source.
type reckonedLine struct {
	box          *fyne.Container
	label, value *control.Text
	words        *widget.Label
	shown        reckoned
}

func newReckonedLine() *reckonedLine {
	l := &reckonedLine{label: control.NewText("").Cut(), value: control.NewText("").Bold().Right(),
		words: control.SmallLines("")}
	head := container.NewBorder(nil, nil, nil, l.value, l.label)
	l.box = container.NewBorder(nil, nil, control.Sized(24, 0, control.NewFill("", 0)), nil,
		control.Column(0, control.Pad(0, look.Gap, head), l.words))
	return l
}

func (l *reckonedLine) show(r reckoned) {
	if r == l.shown {
		return
	}
	l.shown = r
	l.label.SetText(r.label)
	l.value.SetText(r.value)
	var parts []string
	if r.span != "" {
		parts = append(parts, "Between "+strings.Replace(r.span, " to ", " and ", 1)+".")
	}
	if r.how != "" {
		parts = append(parts, control.Sentence(r.how))
	}
	if r.source != "" {
		parts = append(parts, "Source: "+r.source+".")
	}
	l.words.SetText(strings.Join(parts, "\n"))
}

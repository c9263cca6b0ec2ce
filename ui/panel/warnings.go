package panel

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/units"
	"example.org/castwright/model/warn"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	look "example.org/castwright/ui/theme"
)

// item is one line of the warnings: a fault of the design or a warning.
type item struct {
	severity warn.Severity
	word     string // "fault" for what makes the numbers doubtful
	title    string
	reading  string // value and limit
	advice   string
	source   string
	part     design.ID
	at       geom.Vec
}

// itemsOf is faults first, then the warnings, worst first.
func itemsOf(r report.Report, sys units.System) (out []item) {
	for _, f := range r.Faults {
		out = append(out, item{
			severity: warn.Severe, word: "Fault", title: control.Sentence(f.Detail), part: f.Part,
			at: geom.Vec{X: f.At.X.MM(),
				Y: f.At.Y.MM()}, advice: "Until it is mended, the numbers may not be those of the top that is meant.",
		})
	}
	for _, w := range r.Warnings {
		i := item{severity: w.Severity, title: w.Title, advice: w.Advice, source: w.Source,
			part: w.Part, at: w.At}
		i.word = [...]string{"Note", "Caution", "Severe"}[min(int(w.Severity), 2)]
		if w.Value != 0 || w.Limit != 0 {
			i.reading = amount.Of(w.Value, w.Unit, sys) + ", limit " + amount.Of(w.Limit, w.Unit,
				sys)
		}
		out = append(out, i)
	}
	return out
}

// Tone is the sign and colour of a severity.
func Tone(s warn.Severity) (fyne.Resource, fyne.ThemeColorName) {
	switch s {
	case warn.Severe:
		return icon.Severe, theme.ColorNameError
	case warn.Caution:
		return icon.Caution, theme.ColorNameWarning
	}
	return icon.Note, look.Note
}

// warnings is the section of the panel.
type warnings struct {
	p     *Panel
	head  *fyne.Container
	list  *fyne.Container
	rows  []*warningRow
	count [3]*control.Text
	none  *widget.Label
	open  string // the title of the one that is open
}

type warningRow struct {
	box    *fyne.Container
	tile   *control.Tile
	sign   *widget.Icon
	title  *widget.Label
	sub    *control.Text
	detail *widget.Label
	shown  item
	drawn  bool
}

func newWarnings(p *Panel) *warnings {
	w := &warnings{p: p, list: control.Column(2)}
	counts := control.Row(look.Gap)
	for _, s := range []warn.Severity{warn.Severe, warn.Caution, warn.Note} {
		sign, colour := Tone(s)
		w.count[s] = control.NewText("0").Bold()
		counts.Add(control.Sized(16, 16, control.Middle(control.Icon(sign, colour))))
		counts.Add(control.Middle(w.count[s]))
		counts.Add(control.Sized(look.Gap, 0, control.NewFill("", 0)))
	}
	w.head = container.NewBorder(nil, nil, control.NewText("Warnings").Heading(), counts)
	w.none = control.SmallLines("No limit is broken. That alone does not prove a top sound.")
	w.list.Add(w.none)
	return w
}

// show shows the items.
func (w *warnings) show(items []item) {
	var n [3]int
	for _, i := range items {
		n[i.severity]++
	}
	for s, c := range w.count {
		c.SetText(fmt.Sprint(n[s]))
	}
	if (len(items) == 0) != w.none.Visible() {
		if len(items) == 0 {
			w.none.Show()
		} else {
			w.none.Hide()
		}
	}
	for len(w.rows) < len(items) {
		r := w.newRow()
		w.rows = append(w.rows, r)
		w.list.Add(r.box)
	}
	for k, r := range w.rows {
		if k >= len(items) {
			if r.box.Visible() {
				r.box.Hide()
			}
			continue
		}
		r.show(items[k], items[k].title == w.open)
		if !r.box.Visible() {
			r.box.Show()
		}
	}
}

func (w *warnings) newRow() *warningRow {
	r := &warningRow{sign: widget.NewIcon(nil), title: control.Lines(""),
		sub: control.NewText("").Caption().Muted().Cut(), detail: control.SmallLines("")}
	r.detail.Hide()
	text := control.Column(0, r.title, control.Pad(0, 5, r.sub))
	sign := control.Column(0, control.Sized(0, 4, control.NewFill("", 0)),
		control.Sized(20, 20, r.sign))
	body := container.NewBorder(nil, nil, sign, nil, text)
	r.tile = control.NewTile(w.p.frame, "A click shows the place on the drawing and says what to do.",
		control.Pad(2, look.Gap, body), func() { w.toggle(r) })
	r.box = control.Column(0, r.tile, container.NewBorder(nil, nil,
		control.Sized(24, 0, control.NewFill("", 0)), nil, r.detail))
	return r
}

// toggle opens a warning, shows its place and selects its part; a second click
// closes it.
func (w *warnings) toggle(r *warningRow) {
	if w.open == r.shown.title {
		w.open = ""
	} else {
		w.open = r.shown.title
		w.p.goTo(r.shown.part, r.shown.at)
	}
	for _, o := range w.rows {
		o.show(o.shown, o.shown.title == w.open)
	}
	w.p.relayout()
}

func (r *warningRow) show(i item, open bool) {
	if i != r.shown || !r.drawn {
		if !r.drawn || i.severity != r.shown.severity {
			sign, colour := Tone(i.severity)
			r.sign.SetResource(theme.NewColoredResource(sign, colour))
		}
		if i.title != r.shown.title {
			r.title.SetText(i.title)
		}
		r.shown, r.drawn = i, true
		sub := i.word
		if i.reading != "" {
			sub += " · " + i.reading
		}
		r.sub.SetText(sub)
		text := control.Sentence(i.advice)
		if i.source != "" {
			text += "\nLimit: " + i.source + "."
		}
		if r.detail.Text != text {
			r.detail.SetText(text)
		}
	}
	if open != r.detail.Visible() {
		if open {
			r.detail.Show()
		} else {
			r.detail.Hide()
		}
	}
	r.tile.SetOn(open)
}

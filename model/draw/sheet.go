package draw

import (
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/units"
)

// vary is what every picture for a client says.
const vary = "Colour and pattern vary with every casting: never exactly as pictured."

// sheetMargin is the white around a sheet, mm.
const sheetMargin = 15.0

// Sheet is the picture that the client takes home: the plan to scale with its
// dimensions, a title block, the key to the materials, the numbers and a scale
// bar. It is a sheet of A4, or of Letter for a job in inches, lying on its side;
// printed at that size its stated scale is true.
func Sheet(job design.Job, option design.Option, r report.Report, o SheetOptions) scene.Page {
	l := newLayout(job.Units, o)
	l.header(job, option, o)
	v := l.view(job.Units)
	zone := geom.Box{
		Min: geom.Vec{X: sheetMargin, Y: 37},
		Max: geom.Vec{X: l.w - sheetMargin, Y: l.h - 66},
	}
	v, one := l.plan(option.Design, r, v, zone)
	l.foot(v, scaleWords(one, job.Units, l.name))
	l.rule(sheetMargin, l.w-sheetMargin, l.h-61)
	column := 66.0
	l.key(v, entries(option.Design, r.Solid, job.Units), sheetMargin, l.h-55, l.w-2*sheetMargin-column-6)
	l.numbers(r, option.Design, l.w-sheetMargin-column, l.h-54.2, column)
	return l.page(v)
}

// view is what a plan on a sheet shows.
func (l *layout) view(sys units.System) View {
	return View{
		W: l.w * l.unit, H: l.h * l.unit, Scale: 1, Point: 0.25 * l.unit, Dots: l.dots, Theme: l.theme, Units: sys,
		Show: Show{Textures: true, Dimensions: true, Walls: true, Taps: true},
	}
}

// plan lays a plan into a zone at the largest standard scale.
func (l *layout) plan(d design.Design, r report.Report, v View, zone geom.Box) (View, float64) {
	b := r.Solid.Outline.Bounds()
	if b.Empty() || !b.Min.Finite() || !b.Max.Finite() {
		return v, 1
	}
	// What has room between its ends depends on the scale, and the scale on
	// the room: twice is enough.
	one := 1.0
	v.Scale = l.unit / 10
	for range 2 {
		v, one = l.fitted(v, b, zone, room(d, r.Solid, v))
	}
	l.items = append(l.items, Plan(d, r, v).Items...)
	return v, one
}

// header is the title block of one option: what, for whom, which option, when.
func (l *layout) header(job design.Job, option design.Option, o SheetOptions) {
	title := option.Title
	if title == "" {
		title = "Concrete top"
	}
	var sub []string
	if job.Client != "" {
		sub = append(sub, job.Client)
	}
	if option.Name != "" {
		sub = append(sub, "Option "+option.Name)
	}
	l.heading(title, strings.Join(sub, between), o.Date)
}

// heading is a title with a line below it and the date at its end.
func (l *layout) heading(title, sub, when string) {
	width, right, date := l.w-2*sheetMargin, l.w-sheetMargin, 0.0
	if when != "" {
		date = l.words(right, 28.2, scene.AnchorEnd, typeBody, false, l.theme.Faint, scene.Fitted(when, typeBody, false, 70)) + 8
	}
	l.words(sheetMargin, 19.5, scene.AnchorStart, typeTitle, true, l.theme.Ink, scene.Fitted(title, typeTitle, true, width))
	l.words(sheetMargin, 28.2, scene.AnchorStart, typeBody, false, l.theme.Faint, scene.Fitted(sub, typeBody, false, width-date))
}

// foot is the scale bar with its scale, and the note.
func (l *layout) foot(v View, scale string) {
	y := l.h - 10.5
	x := l.scaleBar(v, y)
	l.words(x, y, scene.AnchorStart, typeSmall, false, l.theme.Faint, scale)
	l.words(l.w-sheetMargin, y, scene.AnchorEnd, typeSmall, false, l.theme.Faint, vary)
}

// scaleBar lays a scale bar at the left of the line y, mm, and gives the x behind
// its words.
func (l *layout) scaleBar(v View, y float64) float64 {
	x := sheetMargin
	if !(v.Scale > 0) {
		return x
	}
	v.Point = 0.25 * l.unit
	for _, it := range scaleBar(v, l.at(x, y), 52*l.unit) {
		if t, ok := it.(scene.Text); ok {
			t.Size = typeSmall * l.unit
			x = (t.At.X+t.Width())/l.unit + 7
			it = t
		}
		l.items = append(l.items, it)
	}
	return x
}

// key lays the materials in a row, as many as there is room for, and gives the y
// below it.
func (l *layout) key(v View, list []entry, x, y, width float64) float64 {
	const most = 6
	list = list[:min(len(list), most)]
	pitch := min(44, width/float64(max(1, len(list))))
	size := min(19, pitch-5)
	bottom := y
	for i, e := range list {
		at := x + float64(i)*pitch
		e.swatch(l, v, at, y, size)
		below := l.paragraph(at, y+size+4.6, pitch-4, typeBody, true, l.theme.Ink, e.title, 2)
		bottom = max(bottom, l.paragraph(at, below+0.2, pitch-4, typeSmall, false, l.theme.Faint, e.more, 3))
	}
	return bottom
}

// numbers lays the figures that a client asks for in two columns of words.
func (l *layout) numbers(r report.Report, d design.Design, x, y, width float64) {
	m := r.Measures
	rows := [][2]string{
		{"Size", units.Format(units.FromMM(m.Bounds.W()), l.sys) + " × " + units.Format(units.FromMM(m.Bounds.H()), l.sys)},
		{"Thickness", units.Format(d.Thickness, l.sys)},
		{"Area", units.FormatArea(m.NetArea, l.sys)},
		{"Weight", units.FormatMass(r.Takeoff.WeightDry.Value, l.sys)},
	}
	for _, k := range d.Sinks {
		rows = append(rows, [2]string{"", SinkWords(k, l.sys)})
	}
	for _, t := range d.Taps {
		rows = append(rows, [2]string{"", TapWords(t, l.sys)})
	}
	bottom := l.h - 16
	for _, row := range rows {
		if y > bottom {
			return
		}
		if row[0] == "" {
			y = l.paragraph(x, y+1.2, width, typeSmall, false, l.theme.Faint, row[1], 2)
			continue
		}
		l.words(x, y, scene.AnchorStart, typeBody, false, l.theme.Faint, row[0])
		l.words(x+width, y, scene.AnchorEnd, typeBody, false, l.theme.Ink, row[1])
		y += 5.1
	}
}

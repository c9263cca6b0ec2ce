package draw

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/units"
)

// Side is one of two options that are compared.
type Side struct {
	Option design.Option
	Report report.Report
}

// Compare is a sheet with two options side by side at the same scale, their
// materials, and what differs between them in words and numbers.
func Compare(job design.Job, a, b Side, o SheetOptions) scene.Page {
	l := newLayout(job.Units, o)
	l.header(job, []design.Option{a.Option, b.Option}, o)
	gap := 10.0
	half := (l.w - 2*sheetMargin - gap) / 2
	sides := [...]Side{a, b}
	var zones [2]geom.Box
	for i := range sides {
		x := sheetMargin + float64(i)*(half+gap)
		zones[i] = geom.Box{Min: geom.Vec{X: x, Y: 43}, Max: geom.Vec{X: x + half, Y: l.h - 97}}
	}
	// The smaller scale of the two serves both.
	v := l.view(job.Units)
	v.Point = 0.22 * l.unit
	scale, one := l.unit, 1.0
	for i, s := range sides {
		bounds := s.Report.Solid.Outline.Bounds()
		if bounds.Empty() || !bounds.Min.Finite() || !bounds.Max.Finite() {
			continue
		}
		w := v
		w.Scale = l.unit / 20
		n := 1.0
		for range 2 {
			w, n = l.fitted(w, bounds, zones[i], room(s.Option.Design, s.Report.Solid, w))
		}
		if n >= one {
			one, scale = n, w.Scale
		}
	}
	v.W, v.H, v.Scale = l.w*l.unit, l.h*l.unit, scale
	page := v // textures on the page lie where the last plan's view puts them
	for i, s := range sides {
		x := zones[i].Min.X
		name := s.Option.Name
		tx := x
		if name != "" {
			tx += l.words(x, 38.4, scene.AnchorStart, 4.4, true, l.theme.Ink, scene.Fitted(name, 4.4, true, 0.4*half)) + 3
		}
		l.words(tx, 38.4, scene.AnchorStart, 4.4, false, l.theme.Ink, scene.Fitted(s.Option.Title, 4.4, false, half-(tx-x)))
		bounds := s.Report.Solid.Outline.Bounds()
		if bounds.Empty() || !bounds.Min.Finite() || !bounds.Max.Finite() {
			continue
		}
		w := l.centred(v, bounds, zones[i], room(s.Option.Design, s.Report.Solid, v))
		plan := Plan(s.Option.Design, s.Report, w)
		if i == 0 {
			page = w
		} else {
			moved(plan.Items, page, w)
		}
		l.items = append(l.items, plan.Items...)
		l.strip(page, entries(s.Option.Design, s.Report.Solid, job.Units), x, l.h-93, half)
	}
	l.foot(page, scaleWords(one, job.Units, l.name))
	l.table(job, a, b, l.h-80)
	return l.page(page)
}

// moved makes textures of items that were laid for the view from lie right on a
// page whose origin is that of the view page; both have the same scale.
func moved(items []scene.Item, page, from View) {
	shift := page.ToDesign(from.ToPage(geom.Vec{}))
	for i, it := range items {
		if f, ok := it.(scene.Fill); ok && f.Paint.Texture != nil {
			if rows, ok := f.Paint.Texture.(scene.Rows); ok {
				f.Paint.Texture = shifted{rows, shift}
				items[i] = f
			}
		}
	}
}

// shifted is a material moved by a vector.
type shifted struct {
	scene.Rows
	by geom.Vec
}

// At is the colour at a place of the design.
func (s shifted) At(x, y, footprint float64) scene.Colour {
	return s.Rows.At(x-s.by.X, y-s.by.Y, footprint)
}

// Row writes the colours of a row of pixels.
func (s shifted) Row(dst []uint8, x, y, step float64) { s.Rows.Row(dst, x-s.by.X, y-s.by.Y, step) }

// strip lays small swatches with one line of words each.
func (l *layout) strip(v View, list []entry, x, y, width float64) {
	const most = 4
	list = list[:min(len(list), most)]
	pitch := width / most
	for i, e := range list {
		at := x + float64(i)*pitch
		e.swatch(l, v, at, y, 8)
		words := wrapped(e.title, 2.3, false, pitch-11, 3)
		for k, line := range words {
			l.words(at+9.6, y+4+3.1*(float64(k)-float64(len(words)-1)/2), scene.AnchorStart, 2.3, false, l.theme.Faint, line)
		}
	}
}

// table lists what differs: words across the sheet, then numbers in two columns.
func (l *layout) table(job design.Job, a, b Side, y float64) {
	x, right := sheetMargin, l.w-sheetMargin
	l.rule(x, right, y)
	y += 5
	short := func(name string) string { return scene.Fitted(name, typeSmall, true, 26) }
	nameA, nameB := short(a.Option.Name), short(b.Option.Name)
	line := func(cols [4]float64, label, wa, wb, change string, y, size float64) {
		end := cols[3]
		if change != "" {
			end -= l.words(end, y, scene.AnchorEnd, size, false, l.theme.Ink, change) + 3
		}
		l.words(cols[0], y, scene.AnchorStart, size, false, l.theme.Faint, scene.Fitted(label, size, false, cols[1]-cols[0]-3))
		l.words(cols[1], y, scene.AnchorStart, size, false, l.theme.Ink, scene.Fitted(wa, size, false, cols[2]-cols[1]-4))
		l.words(cols[2], y, scene.AnchorStart, size, false, l.theme.Ink, scene.Fitted(wb, size, false, end-cols[2]))
	}
	type entry struct{ label, a, b, change string }
	var words, numbers []entry
	for _, d := range append(worded(a, b, job.Units), report.Differences(a.Report, b.Report)...) {
		if d.WordsA != "" || d.WordsB != "" {
			words = append(words, entry{d.Label, d.WordsA, d.WordsB, ""})
			continue
		}
		ta, tb := d.Text(d.A, job.Units, job.Materials.Currency), d.Text(d.B, job.Units, job.Materials.Currency)
		if ta != tb {
			numbers = append(numbers, entry{d.Label, ta, tb, d.Change(job.Units, job.Materials.Currency)})
		}
	}
	if len(words)+len(numbers) == 0 {
		l.words(x, y, scene.AnchorStart, typeBody, false, l.theme.Ink, "The two options are alike.")
		return
	}
	rows := len(words) + (len(numbers)+1)/2
	pitch := min(4.6, (l.h-17.5-y-12)/float64(max(1, rows)))
	size := min(typeSmall, 0.68*pitch)
	half := (right - x - 12) / 2
	cols := [4]float64{x, x + 0.27*half, x + 0.27*half + (right-x-0.27*half)/2, right}
	l.words(cols[1], y, scene.AnchorStart, typeSmall, true, l.theme.Ink, nameA)
	l.words(cols[2], y, scene.AnchorStart, typeSmall, true, l.theme.Ink, nameB)
	y += 5.4
	for _, e := range words {
		line(cols, e.label, e.a, e.b, "", y, size)
		y += pitch
	}
	y += 1.6
	columns := func(k int) [4]float64 {
		x0 := x + float64(k)*(half+12)
		return [4]float64{x0, x0 + 0.27*half, x0 + 0.53*half, x0 + half}
	}
	for k := range min(2, len(numbers)) {
		c := columns(k)
		l.words(c[1], y, scene.AnchorStart, size, true, l.theme.Ink, nameA)
		l.words(c[2], y, scene.AnchorStart, size, true, l.theme.Ink, nameB)
		l.words(c[3], y, scene.AnchorEnd, size, false, l.theme.Faint, "change")
	}
	y += pitch
	for i, e := range numbers {
		k := i / ((len(numbers) + 1) / 2)
		at := y + pitch*float64(i-k*((len(numbers)+1)/2))
		line(columns(k), e.label, e.a, e.b, e.change, at, size)
	}
}

// worded lists the differences that are in the designs alone: face, edges, what
// is laid in.
func worded(a, b Side, sys units.System) []report.Difference {
	var out []report.Difference
	words := func(key, label, x, y string) {
		if x != y {
			if x == "" {
				x = "none"
			}
			if y == "" {
				y = "none"
			}
			out = append(out, report.Difference{Key: key, Label: label, WordsA: x, WordsB: y})
		}
	}
	da, db := a.Option.Design, b.Option.Design
	words("finish", "Face", faceWords(da.Finish), faceWords(db.Finish))
	words("edges", "Edges", edgesWords(a.Report, sys), edgesWords(b.Report, sys))
	words("channels", "Channels", channelsWords(da, sys), channelsWords(db, sys))
	words("glass", "Glass beds", bedsWords(da, sys), bedsWords(db, sys))
	words("sinks", "Basins", sinksWords(da, sys), sinksWords(db, sys))
	words("taps", "Taps", tapsWords(da, sys), tapsWords(db, sys))
	return out
}

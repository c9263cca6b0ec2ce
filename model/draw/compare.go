package draw

import (
	"image"
	"math"
	"strconv"

	"example.org/castwright/model/change"
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
	// Picture stands in place of the drawing; nil for the drawing.
	Picture image.Image
}

// Compare is a sheet with two options side by side at the same scale, their
// materials, and what differs between them in words and numbers.
func Compare(job design.Job, a, b Side, o SheetOptions) scene.Page {
	l := newLayout(job.Units, o)
	l.header(job, []design.Option{a.Option, b.Option}, o)
	changes := marked(change.Between(a.Option.Design, b.Option.Design, job.Units))
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
		if s.Picture != nil {
			if i == 0 {
				page = w
			}
			l.fitPicture(s.Picture, zones[i])
			l.strip(page, entries(s.Option.Design, s.Report.Solid, job.Units), x, l.h-93, half)
			continue
		}
		plan := Plan(s.Option.Design, s.Report, w)
		if i == 0 {
			page = w
		} else {
			moved(plan.Items, page, w)
		}
		l.items = append(l.items, plan.Items...)
		l.marks(w, changes, i == 1)
		l.strip(page, entries(s.Option.Design, s.Report.Solid, job.Units), x, l.h-93, half)
	}
	if a.Picture != nil && b.Picture != nil {
		l.foot(View{}, "")
	} else {
		l.foot(page, scaleWords(one, job.Units, l.name))
	}
	l.table(job, a, b, changes, l.h-80)
	return l.page(page)
}

// maxMarks is how many changes are marked: options that have little in common are
// told apart without.
const maxMarks = 8

// marked is the changes that are worth a mark on the drawings.
func marked(all []change.Change) []change.Change {
	if len(all) > maxMarks {
		return nil
	}
	return all
}

// fitPicture lays a picture as large as fits into the middle of a zone, mm.
func (l *layout) fitPicture(img image.Image, zone geom.Box) {
	b := img.Bounds()
	if b.Empty() {
		return
	}
	w, h := zone.W(), zone.H()
	if k := float64(b.Dx()) / float64(b.Dy()); k*h < w {
		w = k * h
	} else {
		h = w / k
	}
	c := zone.Centre()
	l.items = append(l.items, scene.Picture{Image: img, Box: geom.Box{Min: l.at(c.X-w/2, c.Y-h/2), Max: l.at(c.X+w/2, c.Y+h/2)}})
}

// marks numbers the changes where they lie on one of the drawings.
func (l *layout) marks(v View, list []change.Change, after bool) {
	for i, c := range list {
		box := c.Was
		if after {
			box = c.Is
		}
		if c.Part == "" || box.Empty() {
			continue
		}
		p, q := v.ToPage(box.Min), v.ToPage(box.Max)
		page := geom.Box{Min: geom.Vec{X: p.X, Y: q.Y}, Max: geom.Vec{X: q.X, Y: p.Y}}.Grow(1.6 * l.unit)
		ring := rounded(page, 1.6*l.unit)
		for _, line := range [...]struct {
			width float64
			c     scene.Colour
		}{{0.9, l.theme.Halo}, {0.4, l.theme.Ink}} {
			l.items = append(l.items, scene.Stroke{Lines: [][]geom.Vec{ring}, Closed: true, Width: line.width * l.unit,
				Dash: []float64{1.6 * l.unit, 1.2 * l.unit}, Colour: line.c})
		}
		l.badge(page.Min, i+1)
	}
}

// badge is a number in a disc.
func (l *layout) badge(at geom.Vec, n int) {
	r := 2.1 * l.unit
	disc := make(geom.Loop, 24)
	for i := range disc {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(disc)))
		disc[i] = at.Add(geom.Vec{X: r * cos, Y: r * sin})
	}
	l.items = append(l.items,
		scene.Fill{Loops: []geom.Loop{disc}, Paint: scene.Paint{Colour: l.theme.Ink}},
		scene.Text{At: at, Size: 2.6 * l.unit, Bold: true, Colour: l.theme.Halo, Text: strconv.Itoa(n)})
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
func (l *layout) table(job design.Job, a, b Side, changes []change.Change, y float64) {
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
	for i, c := range changes {
		words = append(words, entry{strconv.Itoa(i + 1), "", c.Words, ""})
	}
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

package draw

import (
	"image"
	"math"

	"example.org/castwright/model/change"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edging"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
)

// Side is one of two options that are compared.
type Side struct {
	Option design.Option
	Report report.Report
	// Picture stands in place of the drawing; nil for the drawing.
	Picture image.Image
	// Approved says that this is the option as it was approved.
	Approved bool
}

// CompareOptions says what a sheet with two options tells.
type CompareOptions struct {
	SheetOptions
	// Cost tells what the materials cost the maker: for the maker's own copy. The price
	// is told wherever one is set.
	Cost bool
}

// Compare is a sheet with two options side by side at the same scale, their
// materials, and what differs between them in words and numbers.
func Compare(job design.Job, a, b Side, o CompareOptions) scene.Page {
	l := newLayout(job.Units, o.SheetOptions)
	title := "Two options side by side"
	if a.Approved || b.Approved {
		title = "As approved and as it is now"
	}
	l.heading(title, job.Client, o.Date)
	// Options that have little in common are told apart without marks.
	changes := change.Between(a.Option.Design, b.Option.Design, job.Units)
	if len(changes) > maxChanges {
		changes = nil
	}
	numbers := numbersToldOf(changes, edging.Common(a.Report.Solid.Sides, b.Report.Solid.Sides))
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
			w, n = l.fitted(w, bounds, zones[i], roomOf(w, sides, i))
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
		l.optionTitle(tx, 38.4, half-(tx-x), s.Option.Title)
		bounds := s.Report.Solid.Outline.Bounds()
		if bounds.Empty() || !bounds.Min.Finite() || !bounds.Max.Finite() {
			continue
		}
		w := l.centred(v, bounds, zones[i], roomOf(v, sides, i))
		if s.Picture != nil {
			if i == 0 {
				page = w
			}
			l.fitPicture(s.Picture, zones[i])
			l.strip(page, entries(s.Option.Design, s.Report.Solid, job.Units), x, l.h-93, half)
			continue
		}
		plan := Base(s.Option.Design, s.Report, w)
		if i == 0 {
			page = w
		} else {
			moved(plan.Items, page, w)
		}
		// Dimensions lie over the lines of the marks: they are read.
		marks := l.marks(w)
		l.items = append(l.items, plan.Items...)
		l.items = append(l.items, marks.lines(s, changes, i == 1)...)
		l.items = append(l.items, Dimensions(s.Option.Design, s.Report, w).Items...)
		l.items = append(l.items, marks.numbers(s, changes, i == 1)...)
		l.numberEdges(w, s.Report.Solid, numbers)
		l.strip(page, entries(s.Option.Design, s.Report.Solid, job.Units), x, l.h-93, half)
	}
	if a.Picture != nil && b.Picture != nil {
		l.foot(View{}, "")
		l.words(sheetMargin, l.h-10.5, scene.AnchorStart, typeSmall, false, l.theme.Faint, "Both pictures are taken from the same distance, so at the same scale.")
	} else {
		l.foot(page, scaleWords(one, job.Units, l.name))
	}
	l.table(job, a, b, changes, o.Cost, l.h-80)
	return l.page(page)
}

// optionTitle sets a title beside an option's name, a long one smaller and in two lines.
func (l *layout) optionTitle(x, y, width float64, title string) {
	const size, small = 4.4, 3.3
	if scene.Fitted(title, size, false, width) == title {
		l.words(x, y, scene.AnchorStart, size, false, l.theme.Ink, title)
		return
	}
	lines := wrapped(title, small, false, width, 2)
	for i, line := range lines {
		l.words(x, y+1.3*small*(float64(i)-0.5*float64(len(lines)-1)), scene.AnchorStart, small, false, l.theme.Ink, line)
	}
}

// numbersToldOf is those of the numbers of edges that the changes name.
func numbersToldOf(changes []change.Change, numbers map[int]int) map[int]int {
	out := map[int]int{}
	for _, c := range changes {
		for _, node := range c.EdgesIs {
			if n, ok := numbers[node]; ok {
				out[node] = n
			}
		}
	}
	return out
}

// roomOf is the room that the dimensions of a side take; of tops of one size, that of
// both, so that they stand level.
func roomOf(v View, sides [2]Side, at int) [4]float64 {
	of := func(s Side) [4]float64 { return room(s.Option.Design, s.Report.Solid, v) }
	out, other := of(sides[at]), of(sides[1-at])
	a, b := sides[0].Report.Solid.Outline.Bounds(), sides[1].Report.Solid.Outline.Bounds()
	if math.Abs(a.W()-b.W()) < 0.5 && math.Abs(a.H()-b.H()) < 0.5 {
		for i := range out {
			out[i] = max(out[i], other[i])
		}
	}
	return out
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

// table lists what differs below y: what was done to the design, then words across
// the sheet, then numbers in two columns.
func (l *layout) table(job design.Job, a, b Side, changes []change.Change, cost bool, y float64) {
	x, right := sheetMargin, l.w-sheetMargin
	l.rule(x, right, y)
	y += 5
	words, numbers := differing(job, a, b, cost)
	if len(words)+len(numbers)+len(changes) == 0 {
		l.words(x, y, scene.AnchorStart, typeBody, false, l.theme.Ink, "The two are alike.")
		return
	}
	half := (right - x - 12) / 2
	column := func(k int) float64 { return x + float64(k)*(half+12) }
	// Words run over a few lines where there is room for them. Two lines of heads, and one
	// for each row.
	from := x + 0.27*half
	cols := [4]float64{x, from, from + (right-from)/2, right}
	wordsLines := func(size float64, most int) (lines [][2][]string, n int) {
		for _, e := range words {
			both := [2][]string{wrapped(e.A, size, false, cols[2]-cols[1]-4, most), wrapped(e.B, size, false, cols[3]-cols[2], most)}
			lines = append(lines, both)
			n += max(1, len(both[0]), len(both[1]))
		}
		return lines, n
	}
	const gap = 1.6 // between the parts
	var lines [][2][]string
	pitch, size := 0.0, 0.0
	for most := 3; most > 0; most-- {
		rows := 0
		lines, rows = wordsLines(typeSmall, most)
		rows += (len(changes)+1)/2 + (len(numbers)+1)/2
		pitch = min(4.6, (l.h-17-y-2*gap)/float64(rows+1))
		if size = min(typeSmall, 0.68*pitch); size == typeSmall || most == 1 {
			lines, _ = wordsLines(size, most)
			break
		}
	}
	if n := len(changes); n > 0 {
		for i, c := range changes {
			k := i / ((n + 1) / 2)
			at := y + pitch*float64(i-k*((n+1)/2))
			if i+1 <= maxMarks {
				l.badge(geom.Vec{X: column(k) + 1.7, Y: at}.Mul(l.unit), 0.4*pitch, i+1)
			}
			l.words(column(k)+6, at, scene.AnchorStart, size, false, l.theme.Ink, scene.Fitted(c.Words, size, false, half-6))
		}
		y += pitch*float64((n+1)/2) + gap
	}
	short := func(name string) string { return scene.Fitted(name, size, true, 30) }
	nameA, nameB := short(a.Option.Name), short(b.Option.Name)
	put := func(cols [4]float64, e Contrast, bold bool, y float64) {
		end := cols[3]
		if e.Change != "" {
			end -= l.words(end, y, scene.AnchorEnd, size, false, l.theme.Ink, e.Change) + 3
		}
		l.words(cols[0], y, scene.AnchorStart, size, false, l.theme.Faint, scene.Fitted(e.Label, size, false, cols[1]-cols[0]-3))
		l.words(cols[1], y, scene.AnchorStart, size, bold, l.theme.Ink, scene.Fitted(e.A, size, bold, cols[2]-cols[1]-4))
		l.words(cols[2], y, scene.AnchorStart, size, bold, l.theme.Ink, scene.Fitted(e.B, size, bold, end-cols[2]))
	}
	if len(words) > 0 {
		put(cols, Contrast{A: nameA, B: nameB}, true, y)
		y += pitch
		for i, e := range words {
			l.words(cols[0], y, scene.AnchorStart, size, false, l.theme.Faint, scene.Fitted(e.Label, size, false, cols[1]-cols[0]-3))
			for k, side := range lines[i] {
				for n, line := range side {
					l.words(cols[1+k], y+pitch*float64(n), scene.AnchorStart, size, false, l.theme.Ink, line)
				}
			}
			y += pitch * float64(max(1, len(lines[i][0]), len(lines[i][1])))
		}
		y += gap
	}
	n := (len(numbers) + 1) / 2
	for k := range min(2, len(numbers)) {
		from := column(k)
		cols := [4]float64{from, from + 0.27*half, from + 0.53*half, from + half}
		put(cols, Contrast{A: nameA, B: nameB, Change: "change"}, true, y)
		for i, e := range numbers[k*n : min(len(numbers), (k+1)*n)] {
			put(cols, e, false, y+pitch*float64(i+1))
		}
	}
}

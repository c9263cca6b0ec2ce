package draw

import (
	"math"
	"slices"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/units"
)

// Room is how many points around the top its dimension lines take at most.
const Room = 96

// Measures of dimension lines, in points.
const (
	rowPitch  = 19.0 // from one line to the next
	firstRow  = 20.0 // from the top's bounds to the first line
	textSize  = 11.0
	smallSize = 10.0
	tick      = 3.4 // half length of the slanting end marks
	textGap   = 4.0 // between a text and its line
	stretch   = 4.0 // extension lines go on beyond the line
	clearance = 5.0 // between the top and an extension line
)

// edge is a side of the top's bounds along which dimension lines run.
type edge uint8

const (
	front edge = iota
	back
	left
	right
)

// span is one dimension: between two stations along the edge, in mm of the
// design, from features that lie at foot0 and foot1 across it.
type span struct {
	from, to     float64
	foot0, foot1 float64
	text         string
}

// row is dimensions on one line.
type row []span

// sketch gathers the items of dimension lines.
type sketch struct {
	View
	bounds geom.Box // of the top, mm
	feet   [][]geom.Vec
	lines  [][]geom.Vec
	ticks  [][]geom.Vec
	texts  []scene.Text
	items  []scene.Item // what lies over the lines
}

// finished is all items: extension lines lowest, texts on plates that part them
// from lines that pass below.
func (k *sketch) finished() []scene.Item {
	faint := k.Theme.Faint
	faint.A = 0x98
	stroke := func(l [][]geom.Vec, c scene.Colour, w float64) scene.Item {
		return scene.Stroke{Lines: l, Width: k.pt(w), Colour: c}
	}
	out := []scene.Item{stroke(k.feet, faint, 0.6), stroke(k.lines, k.Theme.Ink, 0.8), stroke(k.ticks, k.Theme.Ink, 1.2)}
	var plates []geom.Loop
	for _, t := range k.texts {
		plates = append(plates, rounded(k.extent(t), k.pt(2)))
	}
	if len(plates) > 0 {
		out = append(out, scene.Fill{Loops: plates, Paint: scene.Paint{Colour: k.Theme.Halo}})
	}
	for _, t := range k.texts {
		out = append(out, t)
	}
	return append(out, k.items...)
}

// extent is the box of a text in the middle of its place, level or upright.
func (k *sketch) extent(t scene.Text) geom.Box {
	half := geom.Vec{X: t.Width()/2 + k.pt(1.5), Y: 0.52 * t.Size}
	if t.Angle != 0 {
		half = geom.Vec{X: half.Y, Y: half.X}
	}
	return geom.Box{Min: t.At.Sub(half), Max: t.At.Add(half)}
}

// rows lays the rows of an edge, the first one nearest, beginning extra points
// further out.
func (k *sketch) rows(e edge, rows []row, extra float64) {
	at := firstRow + extra
	for _, r := range rows {
		if len(r) == 0 {
			continue
		}
		k.row(e, r, at)
		at += k.pitch(r)
	}
}

// pitch is how much further out than a row the next one lies, in points.
func (k *sketch) pitch(r row) float64 {
	for _, s := range r {
		if !k.fits(s) {
			return 1.75 * rowPitch
		}
	}
	return rowPitch
}

// room is how far rows reach out from the top, in points.
func (k *sketch) room(rows []row, extra float64) float64 {
	at := 0.0
	for _, r := range rows {
		if len(r) > 0 {
			at += k.pitch(r)
		}
	}
	if at == 0 {
		return extra + 8
	}
	return firstRow + extra + at - 0.45*rowPitch
}

// fits reports whether a dimension's text has room between its ends.
func (k *sketch) fits(s span) bool {
	t := scene.Text{Size: k.pt(textSize), Text: s.text}
	return t.Width()+k.pt(2*textGap+13) <= (s.to-s.from)*k.Scale
}

// place is the page's point at a station along an edge and off page units
// outside of the top's bounds.
func (k *sketch) place(e edge, station, off float64) geom.Vec {
	switch e {
	case front:
		return k.ToPage(geom.Vec{X: station, Y: k.bounds.Min.Y}).Add(geom.Vec{Y: off})
	case back:
		return k.ToPage(geom.Vec{X: station, Y: k.bounds.Max.Y}).Add(geom.Vec{Y: -off})
	case left:
		return k.ToPage(geom.Vec{X: k.bounds.Min.X, Y: station}).Add(geom.Vec{X: -off})
	}
	return k.ToPage(geom.Vec{X: k.bounds.Max.X, Y: station}).Add(geom.Vec{X: off})
}

// feature is the page's point of a feature at a station.
func (k *sketch) feature(e edge, station, foot float64) geom.Vec {
	if e == front || e == back {
		return k.ToPage(geom.Vec{X: station, Y: foot})
	}
	return k.ToPage(geom.Vec{X: foot, Y: station})
}

// row lays dimensions on a line that many points outside of the bounds. A text
// that has no room between its ends goes beyond the line.
func (k *sketch) row(e edge, r row, at float64) {
	off := k.pt(at)
	out := k.place(e, 0, 1).Sub(k.place(e, 0, 0))
	drawn := map[float64]bool{}
	taken := math.Inf(-1) // along the line, by the last text beyond it
	for _, s := range r {
		a, b := k.place(e, s.from, off), k.place(e, s.to, off)
		for _, end := range [...]struct {
			station, foot float64
			p             geom.Vec
		}{{s.from, s.foot0, a}, {s.to, s.foot1, b}} {
			if drawn[end.station] {
				continue
			}
			drawn[end.station] = true
			k.feet = append(k.feet, []geom.Vec{
				k.feature(e, end.station, end.foot).Add(out.Mul(k.pt(clearance))), end.p.Add(out.Mul(k.pt(stretch)))})
			t := k.pt(tick)
			k.ticks = append(k.ticks, []geom.Vec{end.p.Add(geom.Vec{X: -t, Y: t}), end.p.Add(geom.Vec{X: t, Y: -t})})
		}
		text := scene.Text{Anchor: scene.AnchorMiddle, Size: k.pt(textSize), Colour: k.Theme.Ink, Text: s.text}
		if e == left || e == right {
			text.Angle = -math.Pi / 2
		}
		u := b.Sub(a).Unit()
		width := text.Width()
		text.At = a.Lerp(b, 0.5)
		if k.fits(s) {
			half := width/2 + k.pt(textGap)
			k.lines = append(k.lines, []geom.Vec{a, text.At.Sub(u.Mul(half))}, []geom.Vec{text.At.Add(u.Mul(half)), b})
		} else {
			// Beyond the line, moved on along it past the text before.
			k.lines = append(k.lines, []geom.Vec{a, b})
			mid := text.At.Dot(u)
			if low := mid - width/2; low < taken+k.pt(6) {
				text.At = text.At.Add(u.Mul(taken + k.pt(6) - low))
				mid = text.At.Dot(u)
			}
			taken = mid + width/2
			text.At = text.At.Add(out.Mul(k.pt(0.72 * rowPitch)))
		}
		k.texts = append(k.texts, text)
	}
}

// length writes a length in mm for reading.
func (v View) length(mm float64) string { return units.Format(units.FromMM(mm), v.Units) }

// stations sorts values and leaves out those nearer than 0.5 mm to the one
// before.
func stations(v []float64) []float64 {
	v = slices.Clone(v)
	slices.Sort(v)
	var out []float64
	for _, x := range v {
		if len(out) == 0 || x-out[len(out)-1] > 0.5 {
			out = append(out, x)
		}
	}
	return out
}

// chain is the dimensions from each station to the next.
func (k *sketch) chain(at []float64, foot func(station float64) float64) row {
	var r row
	for i := 1; i < len(at); i++ {
		r = append(r, span{at[i-1], at[i], foot(at[i-1]), foot(at[i]), k.length(at[i] - at[i-1])})
	}
	return r
}

// plate is a text over the top, on a plate that parts it from what is below.
func (k *sketch) plate(t scene.Text, ground scene.Colour) {
	w, h := t.Width()/2+k.pt(3), 0.62*t.Size
	middle := t.At
	switch t.Anchor {
	case scene.AnchorStart:
		middle.X += t.Width() / 2
	case scene.AnchorEnd:
		middle.X -= t.Width() / 2
	}
	c := geom.Box{Min: middle.Sub(geom.Vec{X: w, Y: h}), Max: middle.Add(geom.Vec{X: w, Y: h})}
	k.items = append(k.items, scene.Fill{Loops: []geom.Loop{rounded(c, k.pt(3))}, Paint: scene.Paint{Colour: ground}}, t)
}

// rounded is a rectangle on the page with rounded corners.
func rounded(b geom.Box, r float64) geom.Loop {
	r = math.Min(r, math.Min(b.W(), b.H())/2)
	var out geom.Loop
	for q, c := range [...]geom.Vec{
		{X: b.Max.X - r, Y: b.Max.Y - r}, {X: b.Min.X + r, Y: b.Max.Y - r},
		{X: b.Min.X + r, Y: b.Min.Y + r}, {X: b.Max.X - r, Y: b.Min.Y + r},
	} {
		for i := range 7 {
			s, k := math.Sincos(math.Pi / 2 * (float64(q) + float64(i)/6))
			out = append(out, geom.Vec{X: c.X + r*k, Y: c.Y + r*s})
		}
	}
	return out
}

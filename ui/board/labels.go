package board

import (
	"math"
	"slices"

	"example.org/castwright/model/geom"
	"example.org/castwright/ui/tool"
)

// Sizes of labels, in points.
const (
	chipPadX    = 6.0
	chipPadY    = 4.0
	labelOff    = 16.0 // of a dimension's label from its line
	labelMargin = 6.0  // from the picture's rim
	labelGap    = 2.0  // between labels
	handleRoom  = 9.0  // about a handle's middle that no label covers
	leaderFrom  = 34.0 // a label this far from its line is led to it
	targetSize  = 24.0 // a label's height to the mouse (WCAG 2.2, 2.5.8)
)

// label is where the number of a dimension was drawn.
type label struct {
	box   geom.Box // pixels
	field string
}

// writeLabels finds room for every label, so that none covers another, a handle
// or the number being typed, nor where it can be helped a number of the drawing
// below, and writes them. The number comes first, then the
// label that is typed to, then what is too small; a label that finds no room is
// left out.
func (l *overlay) writeLabels(o tool.Overlay) {
	l.taken = l.taken[:0]
	if !l.keep.Empty() {
		l.taken = append(l.taken, l.keep)
	}
	if o.Value != nil {
		l.value(*o.Value)
	}
	room := geom.Vec{X: handleRoom * l.px, Y: handleRoom * l.px}
	for _, h := range o.Handles {
		at := l.v.Point(h.At)
		l.taken = append(l.taken, geom.Box{Min: at.Sub(room), Max: at.Add(room)})
	}
	for _, k := range o.Links {
		at := l.v.Point(k.Chain)
		half := geom.Vec{X: chainRadius * l.px, Y: chainRadius * l.px}
		l.taken = append(l.taken, geom.Box{Min: at.Sub(half), Max: at.Add(half)})
	}
	for rank := range 3 {
		for _, d := range o.Dims {
			if rankOf(d) == rank {
				l.label(d)
			}
		}
	}
}

func rankOf(d tool.Dim) int {
	switch {
	case d.Active:
		return 0
	case d.Low:
		return 1
	}
	return 2
}

// label paints the number of a dimension beside what is in sight of its line.
func (l *overlay) label(d tool.Dim) {
	from, to := l.v.Point(d.From), l.v.Point(d.To)
	if d.Tag != nil {
		from = l.v.Point(*d.Tag)
		to = from
	}
	a, b, ok := l.brush.clip(from, to, 0)
	if !ok {
		return
	}
	beside := geom.Vec{X: d.Beside.X, Y: -d.Beside.Y} // the picture runs down
	size := geom.Vec{X: l.text.width(d.Text) + 2*chipPadX*l.px, Y: l.text.up + 2*chipPadY*l.px}
	box, ok := l.place(a, b, beside, size)
	if !ok && len(l.below) > 0 {
		numbers := l.below
		l.below = nil
		box, ok = l.place(a, b, beside, size)
		l.below = numbers
	}
	if !ok {
		return
	}
	l.lead(box, a, b)
	ground := l.ink.chip
	switch {
	case d.Severe:
		ground = l.ink.bad
	case d.Low:
		ground = l.ink.low
	case d.Active:
		ground = l.ink.accent
	}
	if d.Active && d.Low {
		l.brush.plate(box.Grow(3*l.px), (chipRadius+3)*l.px)
		l.brush.paint(l.ink.accent)
	}
	l.plate(box, ground)
	l.text.write(l.brush.img, geom.Vec{X: box.Min.X + chipPadX*l.px, Y: box.Max.Y - chipPadY*l.px}, d.Text, l.ink.onChip)
	if d.Field != "" {
		l.labels = append(l.labels, label{box, d.Field})
	}
}

// stops are the places along a line at which its label is tried.
var stops = [...]float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95}

// place finds room for a label of a size about the line from a to b, first on the
// side that it asks for: along the line, across it, then further and further off.
func (l *overlay) place(a, b, beside, size geom.Vec) (geom.Box, bool) {
	along := b.Sub(a).Unit()
	off := func(u geom.Vec) float64 { // clear of the line, whichever way that runs
		return labelOff*l.px + math.Abs(u.X)*(size.X-labelOff*l.px)/2
	}
	step := size.Y + 2*labelGap*l.px
	try := func(at geom.Vec) (geom.Box, bool) {
		box := l.within(geom.Box{Min: at.Sub(size.Mul(0.5)), Max: at.Add(size.Mul(0.5))})
		return box, !l.occupied(box)
	}
	took := func(box geom.Box) (geom.Box, bool) {
		l.taken = append(l.taken, box)
		return box, true
	}
	sides := []geom.Vec{beside, beside.Mul(-1)}
	if beside == (geom.Vec{}) {
		if box, ok := try(a.Lerp(b, 0.5)); ok {
			return took(box)
		}
		sides = []geom.Vec{{Y: -1}, {Y: 1}}
	}
	for _, u := range sides {
		for _, t := range stops {
			if a.Dist(b) < 1 && t != 0.5 {
				break
			}
			if box, ok := try(a.Lerp(b, t).Add(u.Mul(off(u)))); ok {
				return took(box)
			}
		}
	}
	// All about the middle, ring after ring.
	mid := a.Lerp(b, 0.5)
	if along == (geom.Vec{}) {
		along = geom.Vec{X: 1}
	}
	for ring := 1.0; ring <= 6; ring++ {
		for i := range 12 {
			u := sides[0].Turn(float64(i) * math.Pi / 6)
			if box, ok := try(mid.Add(geom.Vec{X: u.X * (off(geom.Vec{X: 1}) + ring*step), Y: u.Y * (labelOff*l.px + ring*step)})); ok {
				return took(box)
			}
		}
	}
	return geom.Box{}, false
}

// lead draws a line from a label that lies far off to the line that it speaks of.
func (l *overlay) lead(box geom.Box, a, b geom.Vec) {
	near := geom.NearestOnSegment(box.Centre(), a, b)
	edge := geom.Vec{X: math.Max(box.Min.X, math.Min(box.Max.X, near.X)), Y: math.Max(box.Min.Y, math.Min(box.Max.Y, near.Y))}
	if edge.Dist(near) < leaderFrom*l.px {
		return
	}
	l.brush.line(edge, near, (dimWidth+2*casing)*l.px)
	l.brush.paint(l.ink.light)
	l.brush.line(edge, near, dimWidth*l.px)
	l.brush.paint(l.ink.dark)
}

func (l *overlay) occupied(box geom.Box) bool {
	box = box.Grow(labelGap / 2 * l.px)
	return slices.ContainsFunc(l.taken, box.Touches) || slices.ContainsFunc(l.below, box.Touches)
}

// within is the box shifted into the picture.
func (l *overlay) within(box geom.Box) geom.Box {
	m := labelMargin * l.px
	shift := func(lo, hi, total float64) float64 {
		switch {
		case lo < m:
			return m - lo
		case hi > total-m:
			return math.Max(m-lo, total-m-hi)
		}
		return 0
	}
	d := geom.Vec{X: shift(box.Min.X, box.Max.X, l.v.W), Y: shift(box.Min.Y, box.Max.Y, l.v.H)}
	return geom.Box{Min: box.Min.Add(d), Max: box.Max.Add(d)}
}

// value paints the number being typed, with what it is for above it, and takes
// its room.
func (l *overlay) value(v tool.Value) {
	text, ground := "= "+v.Text, l.ink.accent
	if v.Bad {
		text, ground = "! "+v.Text, l.ink.bad
	}
	caret, line := 1.5*l.px, l.text.up+7*l.px
	pad := geom.Vec{X: 9 * l.px, Y: 7 * l.px}
	size := geom.Vec{
		X: math.Max(l.text.width(text)+3*caret, l.text.width(v.Name)) + 2*pad.X,
		Y: line + l.text.up + 2*pad.Y,
	}
	corner := l.v.Point(v.At).Add(geom.Vec{X: 14 * l.px, Y: -size.Y - 12*l.px})
	box := l.within(geom.Box{Min: corner, Max: corner.Add(size)})
	l.taken = append(l.taken, box)
	l.plate(box, ground)
	at := box.Min.Add(pad).Add(geom.Vec{Y: l.text.up})
	l.text.write(l.brush.img, at, v.Name, l.ink.onChip)
	at.Y += line
	l.text.write(l.brush.img, at, text, l.ink.onChip)
	at.X += l.text.width(text) + 2*caret
	l.brush.line(at, at.Sub(geom.Vec{Y: l.text.up}), caret)
	l.brush.paint(l.ink.onChip)
}

// at is the field whose label lies at a place in pixels.
func (l *overlay) at(p geom.Vec) (string, bool) {
	for i := len(l.labels) - 1; i >= 0; i-- {
		box := l.labels[i].box
		if box.Grow(math.Max(0, (targetSize*l.px-box.H())/2)).Contains(p) {
			return l.labels[i].field, true
		}
	}
	return "", false
}

package board

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"fyne.io/fyne/v2"
)

// dimensionAt is what is selected, and which of its measures typed, by a click on
// a number of the dimensions that always stand around the top: its width, its
// depth or the radius of a corner. ok is false where there is none, or where the
// hand has something else to do.
func (b *Board) dimensionAt(at fyne.Position) (pick session.Pick, field string, ok bool) {
	p := &b.picture
	if !p.fitsFrame() || b.hand.Tool() != Select || !b.hand.Idle() {
		return pick, "", false
	}
	px := float64(p.frame.Rect.Dx()) / b.view.W
	place := geom.Vec{X: float64(at.X) * px, Y: float64(at.Y) * px}
	for _, item := range p.was.dims {
		if t, is := item.(scene.Text); is && textBox(t, targetSize*px).Contains(place) {
			if pick, field, ok = b.measureOf(t); ok {
				return pick, field, true
			}
		}
	}
	return pick, "", false
}

// numbers adds the boxes of the dimensions' numbers as they stand, in pixels.
func (b *Board) numbers(boxes []geom.Box) []geom.Box {
	if !b.picture.fitsFrame() {
		return boxes
	}
	for _, item := range b.picture.was.dims {
		if t, is := item.(scene.Text); is {
			boxes = append(boxes, textBox(t, 0))
		}
	}
	return boxes
}

// fitsFrame reports whether the base lies as the frame does.
func (p *picture) fitsFrame() bool {
	return p.frame != nil && p.fits(p.of) && !p.foreign && p.gen == p.now
}

// measureOf is the measure whose number a text of the dimensions is.
func (b *Board) measureOf(t scene.Text) (pick session.Pick, field string, ok bool) {
	d, sys, v := b.s.Design(), b.s.Job().Units, b.picture.was.view
	box := b.s.Report().Solid.Outline.Bounds()
	if box.Empty() {
		return pick, "", false
	}
	says := func(mm float64) bool { return t.Text == units.Format(units.FromMM(mm), sys) }
	low, high := v.ToPage(box.Min), v.ToPage(box.Max) // the page runs down
	switch {
	case t.Angle == 0 && t.At.Y > low.Y && says(box.W()):
		return session.Pick{Node: -1}, "Width", true
	case t.Angle != 0 && t.At.X < low.X && says(box.H()):
		return session.Pick{Node: -1}, "Depth", true
	}
	// A radius stands beside its corner.
	near := math.Inf(1)
	for i, n := range d.Outline.Nodes {
		if n.Corner.Kind != design.CornerRounded || t.Text != "R "+units.Format(n.Corner.Size, sys) {
			continue
		}
		at := v.ToPage(geom.Vec{X: n.At.X.MM(), Y: n.At.Y.MM()})
		if far := at.Dist(t.At); far < near && far < 3*math.Hypot(high.X-low.X, high.Y-low.Y) {
			near, pick = far, session.Pick{Node: i}
		}
	}
	return pick, "Radius", !math.IsInf(near, 1)
}

// textBox is where a text lies on the page, at least as wide and high as a target
// must be.
func textBox(t scene.Text, least float64) geom.Box {
	w := t.Width()
	half := geom.Vec{X: math.Max(w, least) / 2, Y: math.Max(t.Size, least) / 2}
	c := t.At
	switch t.Anchor {
	case scene.AnchorStart:
		c.X += w / 2
	case scene.AnchorEnd:
		c.X -= w / 2
	}
	if t.Angle != 0 {
		half = geom.Vec{X: half.Y, Y: half.X}
	}
	return geom.Box{Min: c.Sub(half), Max: c.Add(half)}
}

// takeDimension opens the number of a dimension under the mouse.
func (b *Board) takeDimension(at fyne.Position) bool {
	pick, field, ok := b.dimensionAt(at)
	if !ok {
		return false
	}
	b.s.Select(pick)
	return b.hand.TakeField(field)
}

// overNumber reports whether a number that can be typed lies under the mouse.
func (b *Board) overNumber(at fyne.Position) bool {
	if _, ok := b.labelAt(at); ok {
		return true
	}
	_, _, ok := b.dimensionAt(at)
	return ok
}

// Package view is the transform between a top in millimetres and the picture of
// it on the board: zoom, pan and fit. It draws nothing.
//
// The design has x to the right and y toward the back wall; the picture has x to
// the right and y down, its origin at the top left, and is measured in points
// (the toolkit's device-independent pixels) or, after [View.Pixels], in pixels.
package view

import (
	"math"

	"example.org/castwright/model/geom"
)

// The bounds of the zoom in points per millimetre: from a hall 100 m wide on a
// small screen to a sixteenth of an inch across a hand's breadth.
const (
	MinScale = 0.002
	MaxScale = 64
)

// ActualScale shows a top at its own size on a screen of 96 points to the inch.
const ActualScale = 96 / 25.4

// maxShift bounds how far the design's origin may lie from the picture, in
// points, so that no drawing library meets a number that it chokes on.
const maxShift = 2e7

// View is one way of looking at a top. It is a value; its methods give another.
// The zero View is not usable; start with [New].
type View struct {
	W, H   float64  // size of the picture, points
	Scale  float64  // points per millimetre
	Origin geom.Vec // where the design's (0, 0) lies in the picture, points
}

// New is a view of w by h points with the design's origin in its middle at one
// point to the millimetre.
func New(w, h float64) View {
	v := View{Scale: 1}
	v.W, v.H = size(w), size(h)
	v.Origin = geom.Vec{X: v.W / 2, Y: v.H / 2}
	return v
}

// Point is where a place of the design lies in the picture.
func (v View) Point(p geom.Vec) geom.Vec {
	return geom.Vec{X: v.Origin.X + p.X*v.Scale, Y: v.Origin.Y - p.Y*v.Scale}
}

// Design is the place of the design at a point of the picture, in millimetres.
func (v View) Design(q geom.Vec) geom.Vec {
	return geom.Vec{X: (q.X - v.Origin.X) / v.Scale, Y: (v.Origin.Y - q.Y) / v.Scale}
}

// Length is how many millimetres the given points are.
func (v View) Length(points float64) float64 { return points / v.Scale }

// Visible is the part of the design's plane that the picture shows.
func (v View) Visible() geom.Box {
	return geom.EmptyBox().Include(v.Design(geom.Vec{})).Include(v.Design(geom.Vec{X: v.W, Y: v.H}))
}

// Zoom is the view scaled by factor with the place under the point at held
// still. A factor that is no positive number, or a place that is none, changes
// nothing; the scale stays within [MinScale] and [MaxScale].
func (v View) Zoom(at geom.Vec, factor float64) View {
	if !(factor > 0) || math.IsInf(factor, 0) || !at.Finite() {
		return v
	}
	return v.scaled(at, v.Scale*factor)
}

// Actual is the view at the top's own size, held still in the middle.
func (v View) Actual() View { return v.scaled(v.middle(), ActualScale) }

// scaled is the view at a scale, with the place under the point at held still.
func (v View) scaled(at geom.Vec, scale float64) View {
	p := v.Design(at)
	v.Scale = math.Max(MinScale, math.Min(MaxScale, scale))
	v.Origin = geom.Vec{X: at.X - p.X*v.Scale, Y: at.Y + p.Y*v.Scale}
	return v.tame()
}

// Pan is the view with its picture shifted by d points.
func (v View) Pan(d geom.Vec) View {
	if !d.Finite() {
		return v
	}
	v.Origin = v.Origin.Add(d)
	return v.tame()
}

// Fit is the view that shows the whole of b, in its middle, with at least margin
// points around it. A box that holds nothing, or no finite numbers, changes
// nothing.
func (v View) Fit(b geom.Box, margin float64) View {
	return v.FitWithin(b, Edges{margin, margin, margin, margin})
}

// FitWithin is the view that shows the whole of b in the middle of what the given
// points at each edge leave. A box that holds nothing, or no finite numbers, changes
// nothing.
func (v View) FitWithin(b geom.Box, e Edges) View {
	if b.Empty() || !b.Min.Finite() || !b.Max.Finite() {
		return v
	}
	room := func(total, at0, at1 float64) float64 { return math.Max(total-at0-at1, total/4) }
	scale := math.Min(room(v.W, e.Left, e.Right)/math.Max(b.W(), 1e-6), room(v.H, e.Top, e.Bottom)/math.Max(b.H(), 1e-6))
	v.Scale = math.Max(MinScale, math.Min(MaxScale, scale))
	c := b.Centre()
	m := v.middle().Add(geom.Vec{X: (e.Left - e.Right) / 2, Y: (e.Top - e.Bottom) / 2})
	v.Origin = geom.Vec{X: m.X - c.X*v.Scale, Y: m.Y + c.Y*v.Scale}
	return v.tame()
}

// Show is the view shifted no more than it must so that p lies at least margin
// points inside the picture. A view that shows it already stays.
func (v View) Show(p geom.Vec, margin float64) View {
	if !p.Finite() {
		return v
	}
	q := v.Point(p)
	inside := func(x, total float64) float64 {
		m := math.Min(margin, total/2)
		return math.Max(m, math.Min(total-m, x)) - x
	}
	return v.Pan(geom.Vec{X: inside(q.X, v.W), Y: inside(q.Y, v.H)})
}

// Resize is the view on a picture of another size, with what was in the middle
// still there.
func (v View) Resize(w, h float64) View {
	old := v.middle()
	v.W, v.H = size(w), size(h)
	return v.Pan(v.middle().Sub(old))
}

// Pixels is the same view measured in pixels, ratio of them to the point.
func (v View) Pixels(ratio float64) View {
	v.W, v.H, v.Scale = v.W*ratio, v.H*ratio, v.Scale*ratio
	v.Origin = v.Origin.Mul(ratio)
	return v
}

func (v View) middle() geom.Vec { return geom.Vec{X: v.W / 2, Y: v.H / 2} }

// tame keeps the origin within bounds.
func (v View) tame() View {
	bound := func(x float64) float64 { return math.Max(-maxShift, math.Min(maxShift, x)) }
	v.Origin = geom.Vec{X: bound(v.Origin.X), Y: bound(v.Origin.Y)}
	return v
}

// size is a picture's side made safe: at least a point, at most what any screen
// has.
func size(x float64) float64 {
	if !(x >= 1) {
		return 1
	}
	return math.Min(x, 1<<15)
}

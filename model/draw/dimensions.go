package draw

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/slab"
)

// maxStations bounds the stations of one chain; a top with more is measured by
// its overall size alone.
const maxStations = 7

// Dimensions is the dimension lines alone, on a ground that is not painted, to
// be drawn over a base. Below the top stand its width and that of its legs, to
// the left its depth, behind it the places of sinks from side to side, to the
// right those of sinks and taps from the back edge.
func Dimensions(d design.Design, r report.Report, v View) scene.Page {
	p := v.page(scene.Colour{})
	m, ok := measured(d, r.Solid, v)
	if !ok {
		return p
	}
	for e := range m.rows {
		m.sketch.rows(edge(e), m.rows[e], m.extra[e])
	}
	m.sketch.sinkSizes(d, r.Solid)
	m.sketch.corners(r.Solid, d)
	p.Items = m.sketch.finished()
	return p
}

// measures is the rows of dimensions beside each edge of a top.
type measures struct {
	sketch *sketch
	rows   [4][]row
	extra  [4]float64 // points that the rows keep clear of the top
}

// measured works out which dimensions a plan needs; ok is false when there is
// nothing to measure.
func measured(d design.Design, s slab.Solid, v View) (m measures, ok bool) {
	if !v.usable() || len(s.Outline) < 3 {
		return m, false
	}
	b := s.Outline.Bounds()
	if b.Empty() || !b.Min.Finite() || !b.Max.Finite() {
		return m, false
	}
	k := &sketch{View: v, bounds: b}
	m.sketch = k
	for e, wall := range wallEdges(s, b) {
		if wall && v.Show.Walls {
			m.extra[e] = wallWidth - 4
		}
	}
	m.rows[front] = []row{k.outlineRow(d, s, front), k.overall(s.Outline, front)}
	m.rows[left] = []row{k.overhang(s), k.outlineRow(d, s, left), k.overall(s.Outline, left)}
	m.rows[back] = []row{k.spreads(d, s), k.across(d, s)}
	m.rows[right] = []row{k.fromBack(d, s)}
	return m, true
}

// room is how far the dimensions reach out from the top, in points.
func room(d design.Design, s slab.Solid, v View) (out [4]float64) {
	if m, ok := measured(d, s, v); ok {
		for e := range out {
			out[e] = m.sketch.room(m.rows[e], m.extra[e])
		}
	}
	return out
}

// wallEdges tells along which sides of the bounds a wall lies.
func wallEdges(s slab.Solid, b geom.Box) (out [4]bool) {
	for _, side := range s.Sides {
		if !side.Wall {
			continue
		}
		for _, p := range side.Points {
			out[front] = out[front] || p.Y < b.Min.Y+1
			out[back] = out[back] || p.Y > b.Max.Y-1
			out[left] = out[left] || p.X < b.Min.X+1
			out[right] = out[right] || p.X > b.Max.X-1
		}
	}
	// A wall that only touches a side with its end does not lie along it.
	along := func(e edge) bool {
		for _, side := range s.Sides {
			if !side.Wall || len(side.Points) < 2 {
				continue
			}
			u := side.Points[len(side.Points)-1].Sub(side.Points[0])
			if flat := math.Abs(u.X) > math.Abs(u.Y); flat == (e == front || e == back) {
				return true
			}
		}
		return false
	}
	for e := range out {
		out[e] = out[e] && along(edge(e))
	}
	return out
}

// overall is the whole width or depth, from the points that reach furthest.
func (k *sketch) overall(l geom.Loop, e edge) row {
	b := k.bounds
	// The extreme points nearest to the edge's side.
	var lo, hi geom.Vec
	first := true
	for _, p := range l {
		if e == left || e == right {
			p.X, p.Y = p.Y, p.X
		}
		if first || p.X < lo.X-1e-6 || p.X < lo.X+1e-6 && p.Y < lo.Y {
			lo = p
		}
		if first || p.X > hi.X+1e-6 || p.X > hi.X-1e-6 && p.Y < hi.Y {
			hi = p
		}
		first = false
	}
	length := b.W()
	if e == left || e == right {
		length = b.H()
	}
	return row{{lo.X, hi.X, lo.Y, hi.Y, k.length(length)}}
}

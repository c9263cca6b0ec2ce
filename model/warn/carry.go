package warn

import (
	"math"

	"example.org/castwright/model/geom"
)

// # How overhang and span are measured
//
// An overhang is measured from the edge of the top to the nearest bearing,
// square to the bearing as a tape would: at a corner that hangs over both ways
// the larger of the two counts, not the diagonal. A straight line of concrete
// between two bearings that are no farther apart than a top may span counts as
// a bearing for this, so that a top on brackets hangs over the line of their
// tips. Only where the top's edge faces away from the bearing is it an
// overhang; an edge that runs on toward another bearing spans.
//
// A spot of the top that does not lie on a bearing spans the shorter of
//
//   - the distance from a bearing to the spot and on to a bearing on the other
//     side, where the two directions make an angle of 165 degrees or more, and
//   - where bearings lie all round the spot, no gap between their directions as
//     wide as 180 degrees, twice the distance to the nearest.
//
// At its largest the first is the clear span between two parallel bearings, the
// second the largest empty circle among several.
//
// Only bearings under the top count, and only those that concrete reaches in a
// straight line: not across a cut-out or a notch. Each spot is carried the
// easier way, the one that uses up less of its limit, and the top is as good as
// its worst spot. (The convex hull of the bearings would be simpler, but the
// hull of an L or a U covers the room in the notch, and an overhang into it
// would pass for a span.) Seen past the ends of the rail that it hangs on, an
// overhang of length c looks like a span of at least 2c / sin 15 degrees =
// 7.7c, well above the limits' ratio of 4, so no overhang passes for a span.

// hang is how one spot is carried.
type hang struct {
	at       geom.Vec
	reach    float64  // mm to the nearest bearing, square to it
	overhang float64  // mm past the bearings or a line between them, 0 for none
	root     geom.Vec // where the reach, or the overhang, starts
	width    float64  // mm of the top in the same direction
	span     float64  // mm, +Inf for none
}

// hangs measures the spots of the top that may be badly carried: those farther
// from a bearing than least, mm.
func (b *bearings) hangs(least float64) []hang {
	var found []hang
	for _, p := range b.top.spots() {
		if h, ok := b.hang(p, least); ok {
			found = append(found, h)
		}
	}
	return found
}

// hang measures how one spot is carried; false if it lies on a bearing or not
// farther from one than least.
func (b *bearings) hang(p place, least float64) (hang, bool) {
	if b.on(p.at) {
		return hang{}, false
	}
	e, f := b.nearest(p)
	h := hang{at: p.at, root: f}
	var away geom.Vec
	h.reach, away = e.reach(p.at, f)
	if !(h.reach > least) {
		return hang{}, false
	}
	if p.out != [2]geom.Vec{} {
		h.overhang = h.reach
		for _, br := range b.bridges {
			g := foot(p.at, br.a, br.b)
			if d := p.at.Dist(g); d < h.overhang && b.top.clear(p.inner, g) {
				h.root, h.overhang, away = g, d, p.at.Sub(g).Unit()
			}
		}
		if !p.facing(away) {
			h.overhang = 0
		}
	}
	h.width = b.top.widthAlong(p.inner, away)
	h.span = b.span(p)
	return h, true
}

// widen climbs from a spot to where the span is largest, to 0.01 mm.
func (b *bearings) widen(h hang) hang {
	bounds := b.top.outline.bounds()
	step := math.Hypot(bounds.x1-bounds.x0, bounds.y1-bounds.y0) / 32
	for step > 0.005 {
		moved := false
		for _, u := range [...]geom.Vec{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}} {
			at := h.at.Add(u.Mul(step))
			if !b.top.concrete(at) {
				continue
			}
			if n, ok := b.hang(place{at: at, inner: at}, 0); ok && !math.IsInf(n.span, 1) && n.span > h.span*(1+1e-9) {
				h, moved = n, true
			}
		}
		if !moved {
			step /= 2
		}
	}
	return h
}

// nearest is the nearest bearing that concrete reaches in a straight line, and
// its point. When there is none, it is the nearest one, whatever lies between:
// the true way round is longer still.
func (b *bearings) nearest(p place) (edge, geom.Vec) {
	best := math.Inf(1)
	var at edge
	var ft geom.Vec
	for _, e := range b.edges {
		f := foot(p.at, e.a, e.b)
		if d := p.at.Dist(f); d < best {
			best, at, ft = d, e, f
		}
	}
	if math.IsInf(best, 1) || b.top.clear(p.inner, ft) {
		return at, ft
	}
	far := math.Inf(1)
	for _, e := range b.edges {
		for _, g := range [...]geom.Vec{foot(p.at, e.a, e.b), e.a, e.b, e.a.Lerp(e.b, 0.5)} {
			if d := p.at.Dist(g); d < far && b.top.clear(p.inner, g) {
				far, at, ft = d, e, g
			}
		}
	}
	return at, ft
}

// widthAlong is how wide the top is through p along v, from edge to edge.
func (c *check) widthAlong(p, v geom.Vec) float64 {
	u := v.Unit()
	if u == (geom.Vec{}) {
		return math.Inf(1)
	}
	b := c.outline.bounds()
	far := u.Mul(math.Hypot(b.x1-b.x0, b.y1-b.y0) + 1)
	length := far.Norm()
	ahead, behind := 1.0, 1.0
	for _, t := range c.outline.crossings(p, p.Add(far), nil) {
		ahead = min(ahead, t)
	}
	for _, t := range c.outline.crossings(p, p.Sub(far), nil) {
		behind = min(behind, t)
	}
	return (ahead + behind) * length
}

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
//   - the distance between two bearings on opposite sides of it, the directions
//     to which make an angle of 165 degrees or more, and
//   - where bearings lie all round the spot, no gap between their directions as
//     wide as 180 degrees, twice the distance to the nearest.
//
// At its largest the first is the clear span between two parallel bearings, the
// second the largest empty circle among several.
//
// Only bearings under the top count, and only those that a straight line within
// the outline reaches: not across a notch; spans do not cross a cut-out either.
// Each spot is carried the easier way, the one that uses up less of its limit,
// and the top is as good as its worst spot. (The convex hull of the bearings
// would be simpler, but the hull of an L or a U covers the room in the notch, and
// an overhang into it would pass for a span.) Toward the two ends of the rail that
// it hangs on, an overhang of length c looks like a span of at least 2c / tan 7.5
// degrees = 15c, well above the limits' ratio of 4, so none passes for a span.

// hang is how one spot hangs on the nearest bearing.
type hang struct {
	place
	reach    float64  // mm to the nearest bearing, square to it
	from     geom.Vec // the bearing's point
	overhang float64  // mm past the bearings or a line between them, 0 for none
	root     geom.Vec // where the reach, or the overhang, starts
	width    float64  // mm of the top in the same direction
}

// hang measures how one spot hangs; false if it lies on a bearing or not farther
// from one than least, mm.
func (b *bearings) hang(p place, least float64) (hang, bool) {
	if len(b.edges) == 0 || b.on(p.at) {
		return hang{}, false
	}
	e, f := b.nearest(p)
	h := hang{place: p, from: f, root: f}
	var away geom.Vec
	h.reach, away = e.reach(p.at, f)
	if !(h.reach > least) {
		return hang{}, false
	}
	if p.out != [2]geom.Vec{} {
		h.overhang = h.reach
		for i := range b.bridges {
			g := foot(p.at, b.bridges[i].a, b.bridges[i].b)
			if d := apart(p.at, g); d < h.overhang && b.top.inside(p.inner, g) {
				h.root, h.overhang, away = g, d, p.at.Sub(g).Unit()
			}
		}
		if !p.facing(away) {
			h.overhang = 0
		}
	}
	h.width = b.top.widthAlong(p.inner, away)
	return h, true
}

// widen climbs from a spot to where the bearings all round it are farthest away,
// to 0.05 mm, over spots that pass, and gives the span there. Each round looks at
// four spots; 30 rounds are half as many again as any test has needed.
func (b *bearings) widen(h hang, span float64, pass func(hang, float64) bool) (hang, float64) {
	bounds := b.top.outline.bounds()
	step := math.Hypot(bounds.x1-bounds.x0, bounds.y1-bounds.y0) / 32
	for rounds := 0; step > 0.02 && rounds < 30; rounds++ {
		moved := false
		for _, u := range [...]geom.Vec{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}} {
			at := h.at.Add(u.Mul(step))
			if !b.top.concrete(at) || b.on(at) {
				continue
			}
			p := place{at: at, inner: at}
			_, f := b.nearest(p)
			l, _ := b.span(p, f.Sub(at))
			if l <= span*(1+equal) {
				continue
			}
			if n, ok := b.hang(p, 0); ok && pass(n, l) {
				h, span, moved = n, l, true
			}
		}
		if !moved {
			step /= 2
		}
	}
	return h, span
}

// nearest is the nearest bearing that can be reached straight within the outline,
// and its point. When there is none, it is the nearest one, whatever lies
// between: the true way round is longer still.
func (b *bearings) nearest(p place) (at edge, ft geom.Vec) {
	best := math.Inf(1)
	for _, e := range b.edges {
		f := foot(p.at, e.a, e.b)
		if d := apart(p.at, f); d < best {
			best, at, ft = d, e, f
		}
	}
	if b.top.inside(p.inner, ft) {
		return at, ft
	}
	best = math.Inf(1)
	for _, e := range b.edges {
		f := foot(p.at, e.a, e.b)
		if d := apart(p.at, f); d < best && b.top.inside(p.inner, f) {
			best, at, ft = d, e, f
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

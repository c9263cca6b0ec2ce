package slab

import (
	"math"

	"example.org/castwright/model/geom"
)

// within is how far inside the outline, in millimetres, a channel is looked for:
// two tolerances, so that a bank drawn along the very edge counts as open however
// the two are flattened.
const within = 2 * Tolerance

// openEnds finds the gaps that a channel makes in the outline.
func (r *resolver) openEnds(region *geom.Fence) []OpenEnd {
	if r.fence == nil || region.Bounds().Empty() {
		return nil
	}
	var gaps []gap
	for i, side := range r.solid.Sides {
		for k := 1; k < len(side.Points); k++ {
			a, b := side.Points[k-1], side.Points[k]
			in := b.Sub(a).Unit().Left().Mul(within)
			gaps = appendGaps(gaps, region, a, b, in, i)
		}
	}
	// The outline is closed: a gap may run over its first point.
	if n := len(gaps); n > 1 && gaps[n-1].end == r.solid.Outline[0] && gaps[0].start == r.solid.Outline[0] {
		gaps[0].pieces = append(gaps[n-1].pieces, gaps[0].pieces...)
		gaps = gaps[:n-1]
	}
	var out []OpenEnd
	for _, g := range gaps {
		if e := g.openEnd(r.solid.Sides); e.Width > within {
			out = append(out, e)
		}
	}
	return out
}

// gap is a run of the outline within a channel.
type gap struct {
	start, end geom.Vec
	pieces     []gapPiece
}

type gapPiece struct {
	a, b geom.Vec
	side int
}

// appendGaps adds what lies of the edge from a to b within the region, joined to
// the last gap where that ends at a.
func appendGaps(gaps []gap, region *geom.Fence, a, b, in geom.Vec, side int) []gap {
	box := region.Bounds().Grow(within)
	if math.Max(a.X, b.X) < box.Min.X || math.Min(a.X, b.X) > box.Max.X ||
		math.Max(a.Y, b.Y) < box.Min.Y || math.Min(a.Y, b.Y) > box.Max.Y {
		return gaps
	}
	p, q := a.Add(in), b.Add(in)
	cuts := append(append([]float64{0}, region.Crossings(p, q)...), 1)
	for i := 1; i < len(cuts); i++ {
		t0, t1 := cuts[i-1], cuts[i]
		if t1 <= t0 || !region.Contains(p.Lerp(q, (t0+t1)/2)) {
			continue
		}
		x, y := a.Lerp(b, t0), a.Lerp(b, t1)
		if t0 == 0 {
			x = a
		}
		if t1 == 1 {
			y = b
		}
		piece := gapPiece{x, y, side}
		if n := len(gaps); n > 0 && gaps[n-1].end.Dist(x) < within {
			gaps[n-1].end = y
			gaps[n-1].pieces = append(gaps[n-1].pieces, piece)
		} else {
			gaps = append(gaps, gap{x, y, []gapPiece{piece}})
		}
	}
	return gaps
}

// openEnd is the gap's length and middle, and the edge that the middle lies on.
func (g gap) openEnd(sides []Side) OpenEnd {
	var e OpenEnd
	for _, p := range g.pieces {
		e.Width += p.a.Dist(p.b)
	}
	left := e.Width / 2
	for _, p := range g.pieces {
		d := p.a.Dist(p.b)
		if d > 0 && left <= d {
			e.At, e.Node = p.a.Lerp(p.b, left/d), sides[p.side].Node
			break
		}
		left -= d
	}
	return e
}

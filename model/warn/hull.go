package warn

import (
	"math"
	"slices"

	"example.org/castwright/model/geom"
)

// hull is the convex hull, counter-clockwise without collinear points (monotone
// chain, Andrew 1979). Fewer than three points come back as they are, sorted.
func hull(pts []geom.Vec) []geom.Vec {
	pts = slices.Clone(pts)
	slices.SortFunc(pts, func(a, b geom.Vec) int {
		switch {
		case a.X < b.X || a.X == b.X && a.Y < b.Y:
			return -1
		case a == b:
			return 0
		}
		return 1
	})
	pts = slices.Compact(pts)
	if len(pts) < 3 {
		return pts
	}
	var h []geom.Vec
	half := func(floor int, p geom.Vec) {
		for len(h) > floor && h[len(h)-1].Sub(h[len(h)-2]).Cross(p.Sub(h[len(h)-1])) <= 0 {
			h = h[:len(h)-1]
		}
		h = append(h, p)
	}
	for _, p := range pts {
		half(1, p)
	}
	floor := len(h)
	for _, p := range slices.Backward(pts[:len(pts)-1]) {
		half(floor, p)
	}
	return h[:len(h)-1]
}

// outside is how far p lies outside a hull, 0 within it, and the hull's
// nearest point.
func outside(p geom.Vec, h []geom.Vec) (float64, geom.Vec) {
	best, at, in := math.Inf(1), p, len(h) > 2
	for i, a := range h {
		b := h[(i+1)%len(h)]
		in = in && b.Sub(a).Cross(p.Sub(a)) >= 0
		f := foot(p, a, b)
		if d := p.Dist(f); d < best {
			best, at = d, f
		}
	}
	if in {
		return 0, p
	}
	return best, at
}

// piece is the smallest rectangle-like hold of a hull: its smallest width and
// its length square to that, mm, and the direction of its length.
type piece struct {
	width, length float64
	along         geom.Vec
}

// caliper measures a hull by rotating calipers: the smallest width is met with
// one jaw along an edge (Houle and Toussaint 1988).
func caliper(h []geom.Vec) piece {
	if len(h) < 3 {
		b := geom.Loop(h).Bounds()
		return piece{0, math.Hypot(b.W(), b.H()), geom.Vec{X: b.W(), Y: b.H()}.Unit()}
	}
	at := func(k int) geom.Vec { return h[k%len(h)] }
	best := piece{width: math.Inf(1)}
	top, right, left := 1, 1, 1 // farthest from the edge, along it, against it
	for i, a := range h {
		u := at(i + 1).Sub(a).Unit()
		for u.Cross(at(top+1).Sub(at(top))) > 0 {
			top++
		}
		for u.Dot(at(right+1).Sub(at(right))) > 0 {
			right++
		}
		if i == 0 {
			left = top
		}
		for u.Dot(at(left+1).Sub(at(left))) < 0 {
			left++
		}
		p := piece{u.Cross(at(top).Sub(a)), u.Dot(at(right).Sub(at(left))), u}
		if p.width < best.width || p.width == best.width && p.length < best.length {
			best = p
		}
	}
	return best
}

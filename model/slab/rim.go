package slab

import (
	"math"

	"example.org/castwright/model/geom"
)

// rim is a closed chain of exact curves to measure distances from.
type rim struct {
	curves []geom.Curve
	boxes  []geom.Box
	length []float64
	fence  *geom.Fence // of the chain flattened to Tolerance
	left   bool        // its inside lies to the left of its curves
}

func newRim(curves []geom.Curve, fence *geom.Fence) *rim {
	m := &rim{curves: curves, fence: fence}
	area := 0.0
	for _, c := range curves {
		m.boxes = append(m.boxes, c.Bounds())
		m.length = append(m.length, c.Length())
		for _, t := range [...]float64{0, 0.25, 0.5, 0.75} {
			area += c.At(t).Cross(c.At(t + 0.25))
		}
	}
	m.left = area > 0
	return m
}

// depth is how deep p lies inside the rim, negative outside; exact where that is
// less than enough, and rough to two tolerances beyond.
func (m *rim) depth(p geom.Vec, enough float64) float64 {
	in := m.fence.Contains(p)
	_, rough := m.fence.Nearest(p)
	if rough <= enough+2*Tolerance {
		best, at, t := math.Inf(1), -1, 0.0
		for i, box := range m.boxes {
			if !box.Grow(math.Min(best, rough+2*Tolerance)).Contains(p) {
				continue
			}
			if u, d := geom.NearestParam(m.curves[i], p); d < best {
				best, at, t = d, i, u
			}
		}
		if at >= 0 {
			rough = best
			if best < 2*Tolerance {
				in = m.inside(p, at, t)
			}
		}
	}
	if !in {
		return -rough
	}
	return rough
}

// inside reports on which side of the rim the point p lies, to which the point at
// t of the curve i is the nearest.
func (m *rim) inside(p geom.Vec, i int, t float64) bool {
	n := len(m.curves)
	c := m.curves[i]
	by := p.Sub(c.At(t))
	u := geom.Tangent(c, t)
	is := u.Cross(by) > 0 == m.left
	other := geom.Vec{}
	switch {
	case t <= 1e-9:
		other = geom.Tangent(m.curves[(i+n-1)%n], 1)
	case t >= 1-1e-9:
		other = geom.Tangent(m.curves[(i+1)%n], 0)
	default:
		return is
	}
	// At a corner: inside both edges of one that stands out, inside either of another.
	also := other.Cross(by) > 0 == m.left
	turn := u.Cross(other)
	if t <= 1e-9 {
		turn = -turn
	}
	if turn > 0 == m.left {
		return is && also
	}
	return is || also
}

// neighbour is a rim that may bound, hide or share a part of another one.
type neighbour struct {
	*rim
	outline bool // what lies outside it is hidden
	earlier bool // what lies along both is counted there
}

// How finely a rim is divided where others touch it, in millimetres: no further
// than finest, and into no more than mostPieces pieces at a time beyond its curves; a circle that
// touches another is then divided to 2e-4. What is left is decided by its middle,
// which is exact. Two edges that keep within along of each other over a piece
// that is not short run along each other: a circle of 80 m would have to touch
// a straight edge to do so.
const (
	finest     = 1e-5
	mostPieces = 800
	along      = 1e-6
	notShort   = 0.05
)

// rimPiece is a part of one curve of a rim, and the neighbours that it is not yet
// clear of.
type rimPiece struct {
	curve  int
	t0, t1 float64
	length float64
	near   []neighbour
}

// bounding is how much of the rim bounds concrete, and its whole length.
func (m *rim) bounding(beside []neighbour) (bounding, all float64) {
	var pieces, next []rimPiece
	for i := range m.curves {
		all += m.length[i]
		pieces = append(pieces, rimPiece{i, 0, 1, m.length[i], beside})
	}
	for len(pieces) > 0 {
		next = next[:0:0]
		last := len(pieces) > mostPieces+len(m.curves)
		for _, p := range pieces {
			left, hidden := m.resolve(p, last)
			switch {
			case hidden:
			case len(left) == 0:
				bounding += p.length
			default:
				mid := (p.t0 + p.t1) / 2
				whole := m.curves[p.curve]
				a := whole.Sub(p.t0, mid).Length()
				next = append(next, rimPiece{p.curve, p.t0, mid, a, left},
					rimPiece{p.curve, mid, p.t1, math.Max(0, p.length-a), left})
			}
		}
		pieces = next
	}
	return bounding, all
}

// resolve looks at a piece beside its neighbours: it gives those that it must be
// divided for, or says that it is hidden. The last time it decides by the middle.
func (m *rim) resolve(p rimPiece, last bool) (left []neighbour, hidden bool) {
	c := m.curves[p.curve]
	mid := c.At((p.t0 + p.t1) / 2)
	for _, n := range p.near {
		d := n.depth(mid, p.length)
		if n.outline {
			d = -d // hidden is what lies outside
		}
		switch {
		case d >= p.length:
			return nil, true
		case -d >= p.length:
		case math.Abs(d) < along && p.length > notShort && n.runsAlong(c, p):
			if n.hides(m, c, p) {
				return nil, true
			}
		case last || p.length < finest:
			if d > 0 {
				return nil, true
			}
		default:
			left = append(left, n)
		}
	}
	return left, false
}

// runsAlong reports whether a piece, of which the middle lies on the rim, does so
// all along.
func (m *rim) runsAlong(c geom.Curve, p rimPiece) bool {
	for _, f := range [...]float64{0, 0.23, 0.71, 1} {
		if math.Abs(m.depth(c.At(p.t0+f*(p.t1-p.t0)), along)) > 4*along {
			return false
		}
	}
	return true
}

// hides reports whether the neighbour takes a piece of the rim m that runs along
// its own: because there is no concrete beside it, or it has been counted.
func (n neighbour) hides(m *rim, c geom.Curve, p rimPiece) bool {
	if n.earlier {
		return true
	}
	const out = 1e-4
	t := (p.t0 + p.t1) / 2
	away := geom.Normal(c, t).Mul(out)
	if m.left {
		away = away.Mul(-1)
	}
	in := n.depth(c.At(t).Add(away), out) > 0
	return in != n.outline
}

package raster

import (
	"fmt"
	"math"

	"example.org/castwright/model/geom"
)

// MaxSide is the longest side of a picture in pixels.
const MaxSide = 8192

// size checks a page's size and gives it in whole pixels.
func size(w, h float64) (int, int, error) {
	for _, side := range [...]float64{w, h} {
		if !(side >= 1) {
			return 0, 0, fmt.Errorf("a picture of %g x %g pixels can't be painted: each side needs at least 1", w, h)
		}
		if side > MaxSide {
			return 0, 0, fmt.Errorf("a picture of %.0f x %.0f pixels is too large: give at most %d for each side", w, h, MaxSide)
		}
	}
	return int(math.Round(w)), int(math.Round(h)), nil
}

// margin is how far beyond the picture geometry is kept, in pixels, so that what
// is cut off leaves no mark inside.
const margin = 16

// finite reports whether every point is a number.
func finite(pts []geom.Vec) bool {
	for _, p := range pts {
		if !p.Finite() {
			return false
		}
	}
	return true
}

// clipLoop is the part of a closed loop within the box, by half planes
// (Sutherland and Hodgman 1974). Where the loop leaves the box and comes back,
// the result runs along the box's rim, so that insides stay insides. The result
// shares no memory with l once it has been cut.
func clipLoop(l []geom.Vec, b geom.Box) []geom.Vec {
	box := geom.EmptyBox()
	for _, p := range l {
		box = box.Include(p)
	}
	switch {
	case box.Max.X < b.Min.X || box.Min.X > b.Max.X || box.Max.Y < b.Min.Y || box.Min.Y > b.Max.Y:
		return nil
	case b.Contains(box.Min) && b.Contains(box.Max):
		return l
	}
	l = clipHalf(l, func(p geom.Vec) float64 { return p.X - b.Min.X })
	l = clipHalf(l, func(p geom.Vec) float64 { return b.Max.X - p.X })
	l = clipHalf(l, func(p geom.Vec) float64 { return p.Y - b.Min.Y })
	return clipHalf(l, func(p geom.Vec) float64 { return b.Max.Y - p.Y })
}

// clipHalf keeps what lies where inside is not negative.
func clipHalf(l []geom.Vec, inside func(geom.Vec) float64) []geom.Vec {
	if len(l) == 0 {
		return nil
	}
	out := make([]geom.Vec, 0, len(l)+4)
	prev := l[len(l)-1]
	before := inside(prev)
	for _, p := range l {
		now := inside(p)
		if (before >= 0) != (now >= 0) {
			out = append(out, prev.Lerp(p, before/(before-now)))
		}
		if now >= 0 {
			out = append(out, p)
		}
		prev, before = p, now
	}
	return out
}

// clipSegment gives the parameters between which the segment lies in the box
// (Liang and Barsky 1984); ok is false when it does not meet it.
func clipSegment(p, q geom.Vec, b geom.Box) (lo, hi float64, ok bool) {
	d := q.Sub(p)
	hi = 1
	for _, e := range [...][2]float64{
		{-d.X, p.X - b.Min.X}, {d.X, b.Max.X - p.X},
		{-d.Y, p.Y - b.Min.Y}, {d.Y, b.Max.Y - p.Y},
	} {
		switch t := e[1] / e[0]; {
		case e[0] == 0 && e[1] < 0:
			return 0, 0, false
		case e[0] < 0:
			lo = math.Max(lo, t)
		case e[0] > 0:
			hi = math.Min(hi, t)
		}
	}
	return lo, hi, lo <= hi
}

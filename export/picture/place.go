package picture

import (
	"math"

	"example.org/castwright/model/geom"
)

// Place is the place of the design that a view of w x h pixels shows at (x, y),
// pixels from the upper left corner; ok is false where it shows the room.
func (s *Set) Place(v View, w, h int, x, y float64) (at geom.Vec, ok bool) {
	if v.check(w, h) != nil || !(x >= 0 && y >= 0 && x <= float64(w) && y <= float64(h)) {
		return geom.Vec{}, false
	}
	c := s.camera(v, w, h)
	hit, ok := s.sceneOf(v).hit(c.ray(x, y))
	switch hit.m {
	case matConcrete, matResin, matGlaze, matMetal:
		return geom.Vec{X: hit.p.X, Y: hit.p.Y}, ok
	}
	return geom.Vec{}, false
}

// sceneOf is what a view shows.
func (s *Set) sceneOf(v View) *scene {
	if v.Kind == Top {
		return s.table()
	}
	return s.room()
}

// The eye of a view, and the bounds that one which turns keeps.
const (
	quarterTurn, quarterRise = -15.0, 34.0
	closeRise                = 28.0
	lowestRise, highestRise  = 3.0, 88.0
	closeSpan                = 320.0 // mm
)

// Turning is a view that can be walked on from: the same one with the place of its
// eye filled in, Orbit, or Close at its place. What it sees is the same but for a
// view straight down, which Orbit has with the perspective of an eye.
func (s *Set) Turning(v View) View {
	side := 1.0
	if s.flip {
		side = -1
	}
	switch v.Kind {
	case Top:
		v = View{Kind: Orbit, Rise: highestRise, Away: 1, Seed: v.Seed}
	case Quarter:
		v = View{Kind: Orbit, Turn: side * quarterTurn, Rise: quarterRise, Away: 1, Seed: v.Seed}
	case Close:
		if v.Rise == 0 {
			v.Turn, v.Rise = 0.8*side*quarterTurn, closeRise
		}
		if v.Span <= 0 {
			v.Span = closeSpan
		}
		if v.At == (geom.Vec{}) {
			v.At = s.frontSpot()
		}
	}
	return v
}

// Shape is the shape of a picture that is to be saved.
type Shape uint8

// The shapes.
const (
	Wide       Shape = iota // 16 to 9
	FourThirds              // 4 to 3
	OwnShape                // that of the top as the view shows it
)

// Height is the height in pixels of a picture of a view with a width and shape.
func (s *Set) Height(v View, shape Shape, width int) int {
	switch shape {
	case FourThirds:
		return heightOf(width, 3.0/4)
	case OwnShape:
		return s.ownHeight(v, width)
	}
	return heightOf(width, 9.0/16)
}

func heightOf(width int, share float64) int {
	return max(8, min(MaxSide, int(math.Round(float64(width)*share))))
}

// ownHeight is the height in pixels of a picture of this width that has the shape
// of what a view shows of the top.
func (s *Set) ownHeight(v View, w int) int {
	if v.Kind == Top {
		return s.PlanHeight(w)
	}
	if v.Kind != Quarter && v.Kind != Orbit {
		return heightOf(w, 2.0/3)
	}
	const side = 1000
	v = s.Turning(v)
	v.Away = 1
	c := s.camera(v, side, side)
	b := geom.EmptyBox()
	for _, p := range s.corners() {
		if x, y, ok := c.project(p); ok {
			b = b.Include(geom.Vec{X: x, Y: y})
		}
	}
	if b.Empty() || !(b.W() > 0) {
		return heightOf(w, 1)
	}
	// The camera keeps a tenth of the picture free about the middle of the top.
	return heightOf(w, max(0.4, min(1.5, 1.12*b.H()/b.W())))
}

// corners are those of the box that holds the top, its basins and what stands on
// it.
func (s *Set) corners() (out [8]v3) {
	for i := range out {
		p := v3{s.bounds.Min.X, s.bounds.Min.Y, s.body.t - 90}
		if i&1 > 0 {
			p.X = s.bounds.Max.X
		}
		if i&2 > 0 {
			p.Y = s.bounds.Max.Y
		}
		if i&4 > 0 {
			p.Z = s.body.t + s.height
		}
		out[i] = p
	}
	return out
}

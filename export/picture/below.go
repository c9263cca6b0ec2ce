package picture

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// Below says what a top stands on in the views from the side.
type Below uint8

// What there may be below.
const (
	BelowDesigned Below = iota // the legs of the design, else a plain cabinet
	BelowCabinet
	BelowLegs // those of the design, else four
	BelowNothing
)

// HasLegs reports whether a solid is carried by legs of its own.
func HasLegs(s slab.Solid) bool {
	for _, b := range s.Bearings {
		if b.Kind == design.SupportLeg {
			return true
		}
	}
	return false
}

// HasWalls reports whether a solid has an edge at which a wall stands.
func HasWalls(s slab.Solid) bool { return wallSides(s) != [3]bool{} }

// below is the mesh of what the set stands on.
func (s *Set) below(what Below) []triangle {
	floor := s.solid.Thickness - floorBelow
	walls := HasWalls(s.solid)
	switch what {
	case BelowNothing:
		return nil
	case BelowCabinet:
		return cabinet(s.solid, walls, floor)
	case BelowLegs:
		if out := ownLegs(s.solid, floor); len(out) > 0 {
			return out
		}
		return s.fourLegs(floor)
	}
	if out := ownLegs(s.solid, floor); len(out) > 0 {
		return out
	}
	return cabinet(s.solid, walls, floor)
}

// The section of a leg that the design does not have, and how far it keeps from the
// top's outline and from what is cut out; all mm.
const (
	legSide  = 60.0
	legInset = 45.0
)

// fourLegs is a leg near each corner of the top's bounds, where there is concrete
// above it.
func (s *Set) fourLegs(floor float64) []triangle {
	b := s.bounds
	const n = 48
	var out []triangle
	for i := range 4 {
		corner := geom.Vec{X: b.Min.X, Y: b.Min.Y}
		if i&1 > 0 {
			corner.X = b.Max.X
		}
		if i&2 > 0 {
			corner.Y = b.Max.Y
		}
		best, at := math.Inf(1), geom.Vec{}
		for j := range n * n {
			p := geom.Vec{X: b.Min.X + b.W()*(float64(j%n)+0.5)/n, Y: b.Min.Y + b.H()*(float64(j/n)+0.5)/n}
			free := min(-s.body.outline.at(p.X, p.Y)-legInset, s.body.openings.at(p.X, p.Y)-20) - legSide/2
			if d := p.Dist(corner); free > 0 && d < best {
				best, at = d, p
			}
		}
		if math.IsInf(best, 1) {
			continue // too small a top
		}
		const h = legSide / 2
		out = append(out, loft(geom.Loop{at.Add(geom.Vec{X: -h, Y: -h}), at.Add(geom.Vec{X: h, Y: -h}),
			at.Add(geom.Vec{X: h, Y: h}), at.Add(geom.Vec{X: -h, Y: h})}, []ring{{0, 0.8, floor}, {0, 1, floor + 500}, {0, 1, -0.2}}, matWood)...)
	}
	return out
}

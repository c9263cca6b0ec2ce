package view

import (
	"math"

	"example.org/castwright/model/geom"
)

// Edges are distances from the edges of a picture inward, in points; less than
// nothing lies beyond.
type Edges struct{ Left, Top, Right, Bottom float64 }

// Edges is how far from each edge a point of the picture lies.
func (v View) Edges(q geom.Vec) Edges { return Edges{q.X, q.Y, v.W - q.X, v.H - q.Y} }

// Within is e with no distance larger than most.
func (e Edges) Within(most float64) Edges {
	return Edges{math.Min(e.Left, most), math.Min(e.Top, most), math.Min(e.Right, most), math.Min(e.Bottom, most)}
}

// Furthest is the larger distance of both, for each edge.
func (e Edges) Furthest(o Edges) Edges {
	return Edges{math.Max(e.Left, o.Left), math.Max(e.Top, o.Top), math.Max(e.Right, o.Right),
		math.Max(e.Bottom, o.Bottom)}
}

// Past is by how many points e lies nearer to the edges than o, as a step to the
// right and downward; zero where it lies no nearer.
func (e Edges) Past(o Edges) geom.Vec {
	past := func(e, o float64) float64 { return math.Max(0, o-e) }
	return geom.Vec{
		X: past(e.Right, o.Right) - past(e.Left, o.Left),
		Y: past(e.Bottom, o.Bottom) - past(e.Top, o.Top),
	}
}

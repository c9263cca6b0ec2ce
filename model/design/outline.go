package design

import "example.org/castwright/model/units"

// Point is a place in plan.
type Point struct{ X, Y units.Length }

// Add is the point moved by q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub is the vector from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Outline is the plan shape of the finished top: a closed chain of nodes,
// counter-clockwise seen from above. The edge of a node runs from it to the
// next one; the last node's edge closes the chain.
type Outline struct {
	Nodes []Node
}

// Node is a corner of a chain and the edge that leaves it.
type Node struct {
	At     Point
	Corner Corner
	Edge   Edge
}

// CornerKind says how two edges meet at a node.
type CornerKind uint8

// The kinds of corner.
const (
	CornerSquare    CornerKind = iota // the edges meet as they come
	CornerRounded                     // an arc of radius Size, tangent to both edges
	CornerChamfered                   // a straight cut from Size before the node to Size after it, measured along the edges
)

// Corner is the treatment of one node. Where the two edges have different
// profiles, the corner's cut is shared: its first half carries the profile of
// the edge that arrives, its second half that of the edge that leaves.
type Corner struct {
	Kind CornerKind
	Size units.Length
}

// CurveKind is the shape of an edge in plan.
type CurveKind uint8

// The kinds of curve.
const (
	CurveStraight CurveKind = iota
	CurveArc                // circular, given by its rise over the chord
	CurveSpline             // one cubic Bézier span with two control points
)

// Edge is the side of a chain from one node to the next.
type Edge struct {
	Curve CurveKind
	// Rise of an arc over its chord (the sagitta). Positive bows to the right
	// of the direction of travel: outward on a counter-clockwise outline.
	Rise units.Length
	// C1 and C2 are the control points of a spline, absolute.
	C1, C2  Point
	Side    Side
	Profile Profile
}

// Side says whether an edge is seen or hidden.
type Side uint8

// The kinds of side.
const (
	SideSeen Side = iota // a finished edge
	SideWall             // against a wall
)

// ProfileKind is the shape of an edge in section.
type ProfileKind uint8

// The kinds of profile. Inset(z) in package slab gives each one's formula.
const (
	ProfileSquare    ProfileKind = iota // straight down; Size unused
	ProfileEased                        // a small radius Size at the face arris
	ProfileRounded                      // a quarter circle of radius Size at the face arris
	ProfileBevelled                     // a flat at 45 degrees, Size wide and Size high, at the face arris
	ProfileHalfRound                    // a quarter circle from the face down; Size is its radius, 0 means half the thickness
	ProfileFullRound                    // a half circle over the whole thickness; Size unused
	ProfileRough                        // broken stone from a flexible liner Size thick; the outline is the mean of the broken face
)

// Profile is an edge's shape in section and its size.
type Profile struct {
	Kind ProfileKind
	Size units.Length
}

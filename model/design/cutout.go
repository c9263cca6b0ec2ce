package design

import "example.org/castwright/model/units"

// ID names a part within its design, such as "sink-1". IDs are unique within a
// design and survive edits, so that relations and selections hold.
type ID string

// ShapeKind is the plan shape of a cut-out.
type ShapeKind uint8

// The kinds of shape.
const (
	ShapeRectangle ShapeKind = iota // Width x Depth, corners of CornerRadius
	ShapeEllipse                    // axes Width x Depth
	ShapeCircle                     // diameter Width
	ShapeD                          // straight back, straight sides, bowed front: see Shape.Bow
	ShapePath                       // any closed chain, Path, relative to the centre
)

// Shape is a plan shape about its own centre: x to its right, y to its back.
type Shape struct {
	Kind         ShapeKind
	Width, Depth units.Length
	// CornerRadius rounds the four corners of a rectangle or a D.
	CornerRadius units.Length
	// Bow is the rise of a D's front arc over its chord. The D fits into
	// Width x Depth: its sides are Depth - Bow long.
	Bow units.Length
	// Path is the chain of a ShapePath, relative to the centre,
	// counter-clockwise; sides and profiles of its edges are ignored.
	Path []Node
}

// Mount says how a sink sits.
type Mount uint8

// The ways to mount a sink.
const (
	MountUnder  Mount = iota // below the top; the concrete's edge is seen and polished
	MountOver                // dropped in; its rim hides the cut-out's edge
	MountVessel              // stands on the face; only a drain hole goes through
)

// RevealKind says in words where an under-mounted bowl's rim lies.
type RevealKind uint8

// The kinds of reveal.
const (
	RevealFlush    RevealKind = iota // cut-out edge and bowl edge in line
	RevealRimShows                   // the cut-out is larger than the bowl by Size all round
	RevealOverhang                   // the concrete covers the bowl's rim by Size all round
)

// Reveal is the offset between an under-mount's cut-out edge and bowl edge.
type Reveal struct {
	Kind RevealKind
	Size units.Length
}

// Sink is a basin and its cut-out.
type Sink struct {
	ID       ID
	At       Point       // centre of the shape
	Rotation units.Angle // about the centre, counter-clockwise
	// Shape is, for an under-mount, the bowl's opening: the cut-out is that
	// shape grown (rim shows) or shrunk (concrete overhangs) by the reveal.
	// For an over-mount it is the cut-out itself; for a vessel the bowl's
	// outline on the face, which is not cut.
	Shape  Shape
	Mount  Mount
	Reveal Reveal // under-mount only
	// Rim is how far an over-mount's rim covers the face beyond the cut-out.
	Rim units.Length
	// Drain is the diameter of a vessel's drain hole, at the centre.
	Drain units.Length
	// Profile of the cut-out's arris, for under-mounts.
	Profile Profile
	// BowlDepth is the depth of water when full; BowlMass the bowl's own
	// weight in kilograms.
	BowlDepth units.Length
	BowlMass  float64
}

// TapPattern is how many holes and how far apart.
type TapPattern uint8

// The patterns.
const (
	TapSingle TapPattern = iota
	TapThree4            // three, outer two 4 in apart
	TapThree8            // three, outer two 8 in apart
	TapOwn               // TapSet.Holes
)

// TapSet is a group of tap holes (US: faucet holes).
type TapSet struct {
	ID      ID
	Pattern TapPattern
	// Holes of an own pattern, relative to the set's place, before turning.
	Holes    []Point
	Diameter units.Length
	// Sink names the sink whose centreline the set keeps to; "" leaves the set
	// where At says. On a centreline the set lies SetBack from the back edge
	// (the last edge met going from the sink's centre toward its own back),
	// moved Offset to the right of the centreline and turned with the sink.
	Sink    ID
	Offset  units.Length
	SetBack units.Length
	// At and Rotation place a set that belongs to no sink.
	At       Point
	Rotation units.Angle
}

// HoleKind says what a plain hole is for.
type HoleKind uint8

// The kinds of hole.
const (
	HoleDrain HoleKind = iota
	HoleSoap
	HoleCable
	HoleOther
)

// Hole is a plain round hole through the top.
type Hole struct {
	ID       ID
	Kind     HoleKind
	At       Point
	Diameter units.Length
}

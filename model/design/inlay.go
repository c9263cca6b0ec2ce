package design

import "example.org/castwright/model/units"

// Colour is an sRGB colour with 8 bits a channel.
type Colour struct{ R, G, B uint8 }

// Channel is a recess in the face, filled or not: the union of its rivers and
// regions, all of one depth.
type Channel struct {
	ID      ID
	Rivers  []River
	Regions []Region
	Depth   units.Length // finished depth below the face
	Fill    Fill
}

// River is a band about a spline centreline. The centreline is the natural
// cubic spline through the nodes over cumulative chord length; the width runs
// as the monotone cubic of Fritsch and Butland (1984) over the same parameter;
// each bank lies half the width from the centreline, square to it.
type River struct {
	Nodes      []RiverNode
	Start, End RiverEnd
}

// RiverNode is a place on a river's centreline and the width there.
type RiverNode struct {
	At    Point
	Width units.Length
}

// RiverEnd says how a river ends.
type RiverEnd uint8

// The kinds of river end.
const (
	EndRound RiverEnd = iota // a half disc of the end's width
	EndFlat                  // square to the centreline
	EndOpen                  // runs on straight, at its end width, until both banks have left the top
)

// Region is a closed chain with islands left standing in it.
type Region struct {
	Outer   []Node
	Islands [][]Node
}

// Fill says what goes into a channel.
type Fill struct {
	Resin   bool // false leaves the recess empty
	Colour  Colour
	Opacity units.Share  // 0 clear, whole opaque
	TopCoat units.Length // flood coat over the filled channel, 0 for none
	Glass   *GlassFill   // glass broadcast into the resin, nil for none
}

// GlassFill is glass inside a resin fill.
type GlassFill struct {
	Grain  units.Length // size of the pieces
	Share  units.Share  // share of the fill's volume
	Colour Colour
}

// GlassBed is a region of the face seeded with glass, one layer deep.
type GlassBed struct {
	ID     ID
	Region Region
	Grain  units.Length // size of the pieces
	// Coverage is the share of the region's area that is glass, taken as the
	// solid share through the depth of the layer.
	Coverage units.Share
	Depth    units.Length // depth of the layer as cast, before grinding
	Colour   Colour
}

// Exposure is how far the face is opened.
type Exposure uint8

// The exposure classes, by what makes up most of the ground face.
const (
	ExposureCream Exposure = iota
	ExposureFine
	ExposureCoarse
)

// Finish is the look of the face.
type Finish struct {
	Colour   Colour
	Exposure Exposure
	Polish   int          // 1 flat, 2 satin, 3 polished, 4 highly polished
	Grind    units.Length // what grinding takes off the face
}

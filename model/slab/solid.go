package slab

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// Tolerance is how far, in millimetres, a flattened curve may stray from the
// exact one. Areas and volumes do not depend on it, because flattening keeps the
// area; what it decides is where two curves cross (a hole over the edge: 5e-8 of
// the area, measured in TestOverlappingHoles) and how a curve looks: at 0.01 mm a
// round tap hole has 76 vertices, and no picture up to 8192 pixels across shows
// them.
const Tolerance = 0.01

// Solid is a design with every part in its place, flattened. Only [Resolve] makes
// one that can be cut and measured. Readers must not write into its slices. All
// values are millimetres.
type Solid struct {
	Thickness float64
	Outline   geom.Loop // counter-clockwise
	Sides     []Side    // the outline in runs, in order
	Openings  []Opening // what goes right through
	Bowls     []Bowl    // where the basins lie
	Recesses  []Recess  // channels
	Beds      []Bed     // glass beds
	Bearings  []Bearing // supports
	Faults    []design.Fault

	body *body // what sections are cut from, nil when there is no solid
}

// Side is one run of the outline with one profile: an edge less what its
// corners take, or half of a corner's cut.
type Side struct {
	Node    int // index of the node whose edge carries this run
	Corner  int // index of the node whose corner this run belongs to, -1 for the edge itself
	Points  []geom.Vec
	Length  float64 // along the exact curve
	Wall    bool
	Profile design.Profile
}

// OpeningKind says what an opening is for.
type OpeningKind uint8

// The kinds of opening.
const (
	OpeningSink OpeningKind = iota
	OpeningVesselDrain
	OpeningTap
	OpeningHole
)

// Opening is a hole right through the top.
type Opening struct {
	Part      design.ID
	Kind      OpeningKind
	Index     int       // which hole of a tap set
	Loop      geom.Loop // counter-clockwise
	Centre    geom.Vec
	Diameter  float64 // of a round one, else 0
	Perimeter float64 // along the exact curve
	Profile   design.Profile
}

// Bowl is a basin's own outline in plan: the opening of an under-mount's bowl,
// the rim of an over-mount, the outline of a vessel.
type Bowl struct {
	Part  design.ID
	Mount design.Mount
	Loop  geom.Loop
	Back  geom.Vec // unit vector toward its back
}

// Recess is a channel: its regions united, outer loops counter-clockwise,
// islands clockwise.
type Recess struct {
	Part        design.ID
	Depth       float64
	Loops       []geom.Loop
	Centrelines [][]geom.Vec
	Open        []OpenEnd
	Fill        design.Fill

	length float64 // of the centrelines, along the exact splines
}

// OpenEnd is where a channel leaves the top: a dam is needed there.
type OpenEnd struct {
	At    geom.Vec // middle of the gap, on the outline
	Width float64  // length of the outline within the channel
	Node  int      // edge that it leaves by
}

// Bed is a glass bed.
type Bed struct {
	Part     design.ID
	Loops    []geom.Loop
	Grain    float64
	Depth    float64
	Coverage float64
}

// Bearing is a support as a region in plan.
type Bearing struct {
	Part  design.ID
	Kind  design.SupportKind
	Loops []geom.Loop
	Line  []geom.Vec // centreline, or the patch's corners
	Patch bool
}

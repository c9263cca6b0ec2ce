package tool

import "example.org/castwright/model/geom"

// Overlay is what the hand shows over the top, in millimetres of the design.
type Overlay struct {
	Selected []Line // what is selected
	Hover    []Line // what a press would take
	Ghost    []Line // a part in hand, or a drawing under way
	Swaths   []Swath
	Guides   []Line // what the snap holds
	Handles  []Handle
	Dims     []Dim
	Value    *Value     // a number being typed
	Links    []Link     // what holds what is selected, and what it holds
	Locks    []geom.Vec // places of locked parts that are selected or under the mouse
	Frame    *geom.Box  // being drawn to select what lies inside
}

// Link is a relation: what is held, and what it is held to. Its chain, which runs
// along a unit vector, can be clicked.
type Link struct {
	From, To     geom.Vec
	Chain, Along geom.Vec
	Words        string // what it keeps, without a full stop
	Hover        bool   // the mouse is over the chain
	Armed        bool   // taken by a click: a second one cuts it
}

// Line is a polyline.
type Line struct {
	Points []geom.Vec
	Closed bool
}

// Swath is what a round brush of a width has swept over.
type Swath struct {
	Points []geom.Vec
	Width  float64 // mm
}

// HandleKind is what a handle does, and so how it looks.
type HandleKind uint8

// The kinds of handle.
const (
	HandleCorner  HandleKind = iota // a node of a chain: square
	HandleRadius                    // a corner's size: ring
	HandleBend                      // the middle of an edge: diamond
	HandleControl                   // a spline's control point: small disc on a stalk
	HandleWidth                     // a river's bank: bar
	HandleNode                      // a river's node, a support's end: disc
	HandleTurn                      // what a part is turned by: ring on a stalk
)

func (k HandleKind) String() string {
	return [...]string{"corner", "radius", "bend", "control", "width", "node", "turn"}[k]
}

// Handle is a place to take hold of.
type Handle struct {
	Kind   HandleKind
	At     geom.Vec
	Stalk  geom.Vec // where a control's stalk is rooted
	Active bool     // in hand, under the mouse or selected
}

// Dim is a live dimension: a measure with its number.
type Dim struct {
	From, To geom.Vec
	Text     string
	Active   bool // a typed number goes here
	// Field names the measure; pass it to [Hand.TakeField] when the label is
	// clicked. It is "" for a measure that can only be read.
	Field string
	// Beside is the unit vector toward which the label stands off the middle
	// of the line; zero puts it on the line.
	Beside geom.Vec
	// Bare is a measure of a line that is seen anyway: it is not drawn again.
	Bare bool
	// Low is a measure under its limit, which the text says in words; Severe is
	// one far under it.
	Low, Severe bool
	// Tag, unless nil, is where the label goes instead.
	Tag *geom.Vec
}

// Value is a number being typed.
type Value struct {
	At   geom.Vec
	Name string // of the field, such as "Rail in front"
	Text string // as typed so far
	Bad  bool   // it was entered and can't be used
}

package tool

import (
	"math"

	"example.org/castwright/model/geom"
)

// Pointer is one event of the mouse or a finger.
type Pointer struct {
	At     geom.Vec // place on the design, mm
	PerMM  float64  // points of the picture to the millimetre
	Mod    Mod
	Double bool // a second press at the same place, soon after the first
}

// Mod is the modifier keys held.
type Mod uint8

// The modifiers.
const (
	Shift Mod = 1 << iota
	Alt
	Control
)

// Key is a key that means something on the board.
type Key uint8

// The keys.
const (
	KeyNone Key = iota
	KeyEscape
	KeyEnter
	KeyTab
	KeyDelete
	KeyBackspace
	KeyLeft
	KeyRight
	KeyUp
	KeyDown
)

// Cursor is the shape of the mouse pointer.
type Cursor uint8

// The cursors. Those of the resize family are named for the way they drag.
const (
	CursorDefault Cursor = iota
	CursorCross
	CursorHand
	CursorEastWest
	CursorNorthSouth
	CursorRising  // along the diagonal from lower left to upper right
	CursorFalling // along the diagonal from upper left to lower right
)

// Distances in points of the picture.
const (
	reachGrip  = 12 // a handle is taken from here: a target of 24 points (WCAG 2.2, 2.5.8)
	reachEdge  = 7  // an edge is taken from here
	reachSnap  = 7  // a guide holds from here
	reachLine  = 24 // a tap set in hand keeps to a sink from here
	reachAgain = 5  // a press this near the last one is at the same place
	radiusOut  = 26 // a square corner's radius handle lies this far inside
	turnOut    = 28 // a part's turning knob lies this far beyond its corner
	sizeOut    = 16 // a sink's size handle lies at least this far from its centre
	widthOut   = 16 // a river's width handle lies at least this far from its centreline
)

// reach is the given points in millimetres.
func (p Pointer) reach(points float64) float64 { return points / p.PerMM }

// enter checks an event at the door: a place that is none is refused, a zoom
// that is none is taken to be the last one.
func (h *Hand) enter(p *Pointer) bool {
	if !(p.PerMM > 0) || math.IsInf(p.PerMM, 0) {
		p.PerMM = h.at.PerMM
	}
	if !p.At.Finite() || p.At.Norm() > farthestPlace {
		return false
	}
	h.at, h.here = *p, true
	return true
}

// farthestPlace bounds where a pointer may be: ten times what a design holds.
const farthestPlace = 1e6

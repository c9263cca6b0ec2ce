// Package tool holds what hands do on the board, as state machines without a
// toolkit: a [Hand] takes presses, moves, keys and characters in millimetres of
// the design and answers with edits, an [Overlay] to draw, a hint in words and a
// cursor. Whoever scripts it needs no window.
//
// Everything that changes the design is a named edit that goes through the
// session; one gesture is one undo step, and backing out leaves no trace.
package tool

// Tool is what a press on the board means.
type Tool uint8

// The tools. All but the first two set down points; Esc and a finished drawing
// lead back to [Select].
const (
	Select  Tool = iota // pick, drag, bend, round, nudge
	Pan                 // drag the paper
	Outline             // draw the outline point by point
	River               // draw a river's centreline
	Region              // draw a channel as a closed region
	Glass               // draw a glass bed
	Support             // draw a bearing line with two points
)

// draws reports whether the tool sets down points.
func (t Tool) draws() bool { return t >= Outline }

func (t Tool) String() string {
	return [...]string{"select", "pan", "outline", "river", "region", "glass", "support"}[t]
}

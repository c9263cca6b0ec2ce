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

// The tools. From Outline on they set down points; Esc and a finished drawing
// lead back to [Select]. From Freehand on they draw by strokes; they stay in hand
// for the next one until Esc.
const (
	Select   Tool = iota // pick, drag, bend, round, nudge
	Pan                  // drag the paper
	Outline              // draw the outline point by point
	River                // draw a river's centreline
	Region               // draw a channel as a closed region
	Glass                // draw a glass bed
	Support              // draw a bearing line with two points
	Through              // draw an edge through points
	Freehand             // draw a river, a branch, a pool or an island in one stroke
	Brush                // paint glass
	Eraser               // wipe glass away
	Bank                 // lay glass along the bank of a channel
	Flood                // fill what lies between edges, banks and holes with glass
)

// draws reports whether the tool sets down points.
func (t Tool) draws() bool { return t >= Outline && t <= Through }

// strokes reports whether the tool draws by strokes of a pressed button.
func (t Tool) strokes() bool { return t > Through }

func (t Tool) String() string {
	return [...]string{"select", "pan", "outline", "river", "region", "glass", "support", "through",
		"freehand", "brush", "eraser", "bank", "flood"}[t]
}

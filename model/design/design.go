package design

import "example.org/castwright/model/units"

// Design is one top. It is an immutable value: see the package comment.
type Design struct {
	Outline   Outline
	Thickness units.Length // finished
	Sinks     []Sink
	Taps      []TapSet
	Holes     []Hole
	Channels  []Channel
	Glass     []GlassBed
	Finish    Finish
	Supports  []Support
	Relations []Relation
	Notes     string
	// Extra holds members of the file that this version does not know, by
	// dotted path, so that they survive a round trip.
	Extra Extra
}

// SupportKind is what carries the top.
type SupportKind uint8

// The kinds of support.
const (
	SupportWall SupportKind = iota // a ledger or wall bearing
	SupportGable
	SupportRail
	SupportBracket
	SupportLeg
)

// Support is what the top rests on: a line with a width, or a patch.
type Support struct {
	ID   ID
	Kind SupportKind
	// Line of two points or more, Width wide; or, with Patch, the corners of
	// a closed patch of three or more.
	Line  []Point
	Width units.Length
	Patch bool
}

// Extra is unknown members of a file: a map from the place (a JSON pointer
// within the owner) to the member's raw JSON text.
type Extra map[string]string

// Job is one commission.
type Job struct {
	Client    string
	Site      Site
	Units     units.System // how the maker reads and writes
	Materials Materials
	Options   []Option
	Terms     Terms
	Approvals []Approval // frozen, in the order of their revisions
	Room      Room       // the client's room in a photograph, if there is one
	Extra     Extra
}

// Site is what is known of the place. Zero lengths and counts are unknown.
type Site struct {
	Notes      string
	DoorWidth  units.Length // the narrowest door on the way
	DoorHeight units.Length
	StairWidth units.Length // clear width of the narrowest stair or passage
	StairTurn  units.Length // clear length at the tightest turn or landing
	Helpers    int          // people who carry, the maker included
}

// Option is one proposal: a name, a title and a design.
type Option struct {
	Name  string // "A", "B", ...
	Title string
	Price Price // what the client pays
	// Handling says which parts are locked or hidden, in the order in which it
	// was said; see [Handling].
	Handling []Handling
	Design   Design
}

// Option gives the option with this name.
func (j Job) Option(name string) (Option, bool) {
	for _, o := range j.Options {
		if o.Name == name {
			return o, true
		}
	}
	return Option{}, false
}

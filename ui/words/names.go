package words

import (
	"fmt"
	"math"
	"strings"

	"example.org/castwright/model/design"
)

// The kinds of things in the order of their numbers in package design.
var (
	Profiles  = []string{"Square", "Eased", "Rounded", "Bevelled", "Half round", "Full round", "Rough"}
	Corners   = []string{"Square", "Rounded", "Clipped"}
	Curves    = []string{"Straight", "Arc", "Spline"}
	Sides     = []string{"Seen", "At a wall"}
	Shapes    = []string{"Rectangle", "Oval", "Round", "D-shape", "Own shape"}
	Mounts    = []string{"Under-mount", "Over-mount", "Vessel"}
	Reveals   = []string{"Flush", "Bowl rim shows", "Concrete overhangs"}
	Patterns  = []string{"One hole", "Three at 4 in", "Three at 8 in", "Own pattern"}
	HoleKinds = []string{"Drain", "Soap", "Cable", "Other"}
	Ends      = []string{"Round", "Flat", "Open"}
	Supports  = []string{"Wall bearing", "Gable", "Rail", "Bracket", "Leg"}
	Exposures = []string{"Cream", "Fine stone", "Coarse stone"}
	Polishes  = []string{"Flat", "Satin", "Polished", "Highly polished"} // levels 1 to 4
)

// Of is a word of one of the lists above, "?" beyond it.
func Of(list []string, i int) string {
	if i < 0 || i >= len(list) {
		return "?"
	}
	return list[i]
}

// Part is a part by name: "Sink", or "Sink 2" where there are several. The top
// itself is "Top".
func Part(d design.Design, id design.ID) string {
	name, count := "", 0
	switch kind, i := d.Find(id); kind {
	case design.PartSink:
		name, count = "Sink", len(d.Sinks)
	case design.PartTaps:
		name, count = "Taps", len(d.Taps)
	case design.PartHole:
		name, count = Of(HoleKinds, int(d.Holes[i].Kind))+" hole", len(d.Holes)
	case design.PartChannel:
		name, count = "Channel", len(d.Channels)
	case design.PartGlass:
		name, count = "Glass bed", len(d.Glass)
	case design.PartSupport:
		name, count = Of(Supports, int(d.Supports[i].Kind)), len(d.Supports)
	default:
		return "Top"
	}
	if _, n, ok := strings.Cut(string(id), "-"); ok && count > 1 {
		return name + " " + n
	}
	return name
}

// Edge names an edge of the outline by the way that it faces: "Front edge"; where
// several face that way, "Front edge 2", counted from the first node.
func Edge(o design.Outline, i int) string {
	side := facing(o, i)
	n, at := 0, 0
	for k := range o.Nodes {
		if facing(o, k) == side {
			n++
			if k <= i {
				at = n
			}
		}
	}
	if n > 1 {
		return fmt.Sprintf("%s edge %d", side, at)
	}
	return side + " edge"
}

func facing(o design.Outline, i int) string {
	n := len(o.Nodes)
	if n == 0 || i < 0 {
		return "An"
	}
	a, b := o.Nodes[i%n].At, o.Nodes[(i+1)%n].At
	// Outward of a counter-clockwise chain is to the right of its run.
	dx, dy := (b.Y - a.Y).MM(), (a.X - b.X).MM()
	switch {
	case math.Abs(dx) > math.Abs(dy) && dx > 0:
		return "Right"
	case math.Abs(dx) > math.Abs(dy):
		return "Left"
	case dy > 0:
		return "Back"
	}
	return "Front"
}

// Corner names a corner of the outline by the edges that meet there.
func Corner(o design.Outline, i int) string {
	n := len(o.Nodes)
	if n == 0 || i < 0 {
		return "Corner"
	}
	a, b := facing(o, (i+n-1)%n), facing(o, i%n)
	if a == b {
		return a + " corner"
	}
	// Front and back before left and right.
	if a == "Left" || a == "Right" {
		a, b = b, a
	}
	return a + " " + strings.ToLower(b) + " corner"
}

// Profile is an edge's profile with its size in the maker's units.
func Profile(p design.Profile, size func() string) string {
	name := Of(Profiles, int(p.Kind))
	if ProfileSized(p.Kind) && p.Size != 0 {
		return name + " " + size()
	}
	return name
}

// ProfileSized reports whether a profile has a size of its own.
func ProfileSized(k design.ProfileKind) bool {
	return k != design.ProfileSquare && k != design.ProfileFullRound
}

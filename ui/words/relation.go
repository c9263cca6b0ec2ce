package words

import (
	"slices"
	"strconv"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
)

// Relation says what a relation keeps, as a sentence without its full stop: "Sink
// stays centred between gable 1 and gable 2". length writes a length.
func Relation(d design.Design, r design.Relation, length func(units.Length) string) string {
	name, way := Part(d, r.Part), ", left to right"
	if axis, _ := r.Holds(); axis == design.AxisY {
		way = ", front to back"
	}
	stays := " stays "
	if isTaps(d, r.Part) {
		stays = " stay "
	}
	switch r.Kind {
	case design.RelationTop:
		return name + stays + "centred on the top" + way
	case design.RelationBetween:
		return name + stays + "centred between " + Lower(Part(d, r.Other)) + " and " + Lower(Part(d, r.Second))
	case design.RelationPart:
		return name + stays + "in line with the " + Lower(Part(d, r.Other)) + way
	case design.RelationSide:
		return "Middle of the " + Lower(name) + " keeps " + length(r.Distance) + " from the " + r.Side.String() + " side"
	case design.RelationEdge:
		return End(d, r) + " stays on the " + Lower(Edge(d.Outline, r.Edge))
	case design.RelationBank:
		return name + stays + "along " + r.Bank.String() + " of the " + Lower(Part(d, r.Other)) + ", " + length(r.Width) + " wide"
	}
	return r.Sentence(func(id design.ID) string { return Part(d, id) }, length)
}

// Ended are those of the relations before that a design no longer has, as sentences in
// the middle of one. Where it lies along what it is held to is no other relation. d is
// the design that they are of.
func Ended(d design.Design, before, after []design.Relation, length func(units.Length) string) []string {
	var out []string
	for _, r := range before {
		if !slices.ContainsFunc(after, func(o design.Relation) bool { return r.SameHold(o) }) {
			out = append(out, Lower(Relation(d, r, length)))
		}
	}
	return out
}

// End is the end of a river that a relation holds: "Start of the river", with the
// river's number where the channel has several.
func End(d design.Design, r design.Relation) string {
	end, rivers := "Start", 0
	if r.End == design.RiverFinish {
		end = "End"
	}
	for _, c := range d.Channels {
		if c.ID == r.Part {
			rivers = len(c.Rivers)
		}
	}
	if rivers > 1 {
		return end + " of river " + strconv.Itoa(r.River+1)
	}
	return end + " of the river"
}

// TapsKept says which sink a set of tap holes stays with; "" for one on its own.
func TapsKept(d design.Design, t design.TapSet) string {
	if t.Sink == "" {
		return ""
	}
	return Part(d, t.ID) + " stay with the centreline of the " + Lower(Part(d, t.Sink))
}

// IsAre is the verb after a part's name: taps are several.
func IsAre(d design.Design, id design.ID) string {
	if isTaps(d, id) {
		return "are"
	}
	return "is"
}

func isTaps(d design.Design, id design.ID) bool {
	for _, t := range d.Taps {
		if t.ID == id {
			return true
		}
	}
	return false
}

// Lower is a name in the middle of a sentence.
func Lower(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

// Offer says what a relation would keep, after the part's name and "keeps": "in the
// middle of the top, left to right". length writes a length.
func Offer(d design.Design, r design.Relation, length func(units.Length) string) string {
	way := ", left to right"
	if axis, _ := r.Holds(); axis == design.AxisY {
		way = ", front to back"
	}
	switch r.Kind {
	case design.RelationTop:
		return "centred on the top" + way
	case design.RelationBetween:
		return "centred between " + Lower(Part(d, r.Other)) + " and " + Lower(Part(d, r.Second))
	case design.RelationPart:
		return "in line with the " + Lower(Part(d, r.Other)) + way
	case design.RelationSide:
		return length(r.Distance) + " from the " + r.Side.String() + " side"
	case design.RelationEdge:
		return Lower(End(d, r)) + " on the " + Lower(Edge(d.Outline, r.Edge))
	case design.RelationBank:
		return "along " + r.Bank.String() + " of the " + Lower(Part(d, r.Other))
	}
	return r.Sentence(func(id design.ID) string { return Part(d, id) }, length)
}

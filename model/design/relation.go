package design

import (
	"fmt"
	"slices"

	"example.org/castwright/model/units"
)

// Relation is something that the maker meant and that outlives edits: a sink
// that is centred on its cabinet, a river that starts at an edge. The places in
// a design are always complete without its relations; these say how an edit is
// to carry them on. (Tap holes on a sink's centreline have their own relation,
// [TapSet.Sink], which gives their place.)
//
// The rules, which package edit keeps:
//
//   - After every edit the relations are solved anew, those first that others
//     look at: what is held moves, what it is held to stays.
//   - A part that is moved by hand along the way in which it is held goes where
//     the hand puts it. A distance takes its new value; a river's end put on the
//     outline stays on that edge at that place; any other relation that no longer
//     holds is cut. Put back before the gesture ends, nothing is cut.
//   - Resizing, mirroring and changes of the outline are not moves by hand: a
//     held part follows its relations, in place of the rule for loose parts.
//   - A glass bed along a bank is laid anew when its channel changes, after all
//     else. Where the strip then has another number of pieces than there are beds
//     along it, each bed takes the nearest piece that is free, or stays. A bed whose
//     shape is changed by hand is cut from the bank.
//   - What is removed takes its relations along.
//   - Along one axis a part is held once: a new relation takes the place of an
//     old one. A channel is held either by the ends of its rivers or as a whole.
type Relation struct {
	Kind RelationKind
	Part ID   // what is held
	Axis Axis // [RelationTop], [RelationBetween] and [RelationPart]: along x or y
	// Other is what Part is held to, Second the other of two.
	Other, Second ID
	// Side of the top's bounds and the Distance of the part's centre from it,
	// positive inward.
	Side     TopSide
	Distance units.Length
	// River of the channel Part, from 0, and which of its ends stays on the
	// edge that leaves corner Edge of the outline, from 0, at the share Along
	// of that edge's length, from 0 to 1.
	River int
	End   RiverSide
	Edge  int
	Along float64
	// Which bank of the channel Other the glass bed Part lies along, Distance
	// away from it and so wide.
	Bank  BankSide
	Width units.Length
}

// RelationKind says how a part is held. A part's centre is its place; that of
// a channel, a glass bed or a support is the middle of the bounds of its
// points, for a glass bed of its outer chain's.
type RelationKind uint8

// The kinds of relation.
const (
	RelationTop     RelationKind = iota // the centre of Part midway between two sides of the top's bounds
	RelationBetween                     // midway between Other and Second: supports by the sides that face each other, other parts by their centres
	RelationPart                        // in line with the centre of Other
	RelationSide                        // at Distance from Side
	RelationEdge                        // a river's end on an edge of the outline
	RelationBank                        // a glass bed along the bank of the channel Other
)

// BankSide says along which banks of a channel a bed runs, seen in the direction
// of its first river.
type BankSide uint8

// The banks.
const (
	BothBanks BankSide = iota // all round the channel
	LeftBank
	RightBank
)

// Axis is a direction in plan.
type Axis uint8

// The axes.
const (
	AxisX Axis = iota // left to right
	AxisY             // front to back
)

// TopSide is a side of the bounds of the top.
type TopSide uint8

// The sides.
const (
	SideLeft TopSide = iota
	SideRight
	SideFront
	SideBack
)

// Axis is the axis along which a distance from the side is measured.
func (s TopSide) Axis() Axis {
	if s == SideFront || s == SideBack {
		return AxisY
	}
	return AxisX
}

// RiverSide is one of the two ends of a river.
type RiverSide uint8

// The ends.
const (
	RiverStart RiverSide = iota
	RiverFinish
)

// Holds gives the axis along which a relation holds its part; false for a
// river's end, which is held both ways.
func (r Relation) Holds() (Axis, bool) {
	switch r.Kind {
	case RelationSide:
		return r.Side.Axis(), true
	case RelationEdge, RelationBank:
		return 0, false
	}
	return r.Axis, true
}

// Others are the parts that a relation looks at.
func (r Relation) Others() []ID {
	switch r.Kind {
	case RelationBetween:
		return []ID{r.Other, r.Second}
	case RelationPart, RelationBank:
		return []ID{r.Other}
	}
	return nil
}

// RelationsOf are the numbers of the relations that hold this part, in their
// order.
func (d Design) RelationsOf(id ID) []int {
	var out []int
	for i, r := range d.Relations {
		if r.Part == id {
			out = append(out, i)
		}
	}
	return out
}

// RelationsTo are the numbers of the relations that hold other parts to this
// one.
func (d Design) RelationsTo(id ID) []int {
	var out []int
	for i, r := range d.Relations {
		for _, other := range r.Others() {
			if other == id {
				out = append(out, i)
				break
			}
		}
	}
	return out
}

// RelationOrder is the order in which relations are solved: one that looks at
// a part comes after those that hold this part, else they keep their order.
// Relations with a fault are left out.
func (d Design) RelationOrder() []int {
	out := make([]bool, len(d.Relations))
	if len(d.Relations) > MaxRelations {
		return nil
	}
	for i, r := range d.Relations {
		_, out[i] = d.RelationFault(r)
	}
	for _, c := range d.relationConflicts() {
		out[c.late] = true
	}
	order, _ := d.untangle(out)
	return order
}

// untangle orders the relations that are not left out. Looped are those that
// wait for each other, and those that wait for these.
func (d Design) untangle(out []bool) (order, looped []int) {
	holding := map[ID][]int{}
	for i, r := range d.Relations {
		if !out[i] {
			holding[r.Part] = append(holding[r.Part], i)
		}
	}
	sinks := map[ID]ID{} // of tap holes that keep to one
	for _, t := range d.Taps {
		sinks[t.ID] = t.Sink
	}
	const (
		fresh = iota
		waiting
		done
		stuck
	)
	state := make([]int, len(d.Relations))
	var visit func(int) bool
	visit = func(i int) bool {
		if state[i] != fresh {
			return state[i] == done
		}
		state[i] = waiting
		ok := true
		for _, other := range d.Relations[i].Others() {
			before := holding[other]
			if sink := sinks[other]; sink != "" {
				before = slices.Concat(before, holding[sink])
			}
			for _, k := range before {
				ok = visit(k) && ok
			}
		}
		if !ok {
			state[i] = stuck
			return false
		}
		state[i] = done
		order = append(order, i)
		return true
	}
	for i := range d.Relations {
		if !out[i] && !visit(i) {
			looped = append(looped, i)
		}
	}
	return order, looped
}

// Sentence says a relation in plain words: "Centred between support-3 and
// support-4". Name gives the name of a part and length writes a length, as the
// reader likes them; nil for the IDs and for millimetres. Edges and rivers are
// counted from 1.
func (r Relation) Sentence(name func(ID) string, length func(units.Length) string) string {
	if name == nil {
		name = func(id ID) string { return string(id) }
	}
	if length == nil {
		length = func(l units.Length) string { return units.DecimalMM(l) + " mm" }
	}
	way := "left to right"
	if axis, _ := r.Holds(); axis == AxisY {
		way = "front to back"
	}
	switch r.Kind {
	case RelationTop:
		return "Centred on the top, " + way
	case RelationBetween:
		return fmt.Sprintf("Centred between %s and %s", name(r.Other), name(r.Second))
	case RelationPart:
		return fmt.Sprintf("In line with %s, %s", name(r.Other), way)
	case RelationSide:
		return fmt.Sprintf("Keeps %s from the %s side", length(r.Distance), r.Side)
	case RelationEdge:
		end := "Start"
		if r.End == RiverFinish {
			end = "End"
		}
		return fmt.Sprintf("%s of river %d stays on edge %d", end, r.River+1, r.Edge+1)
	case RelationBank:
		return fmt.Sprintf("Lies along %s of %s, %s wide", r.Bank, name(r.Other), length(r.Width))
	}
	return "Held in a way that this version does not know"
}

// String is the word for a side.
func (s TopSide) String() string {
	words := [...]string{"left", "right", "front", "back"}
	if int(s) >= len(words) {
		return "unknown"
	}
	return words[s]
}

// String is what a side is called in a sentence.
func (b BankSide) String() string {
	words := [...]string{"the banks", "the left bank", "the right bank"}
	if int(b) >= len(words) {
		return "an unknown bank"
	}
	return words[b]
}

// String is the word for an end.
func (s RiverSide) String() string {
	if s == RiverFinish {
		return "end"
	}
	return "start"
}

// SameHold reports whether two relations hold the same part to the same thing,
// wherever along it.
func (r Relation) SameHold(o Relation) bool {
	r.Distance, r.Edge, r.Along = 0, 0, 0
	o.Distance, o.Edge, o.Along = 0, 0, 0
	return r == o
}

// Package change says what was done to a design between two states of it, part by
// part: what is new, what is gone, what was moved and by how much, what is
// otherwise than it was. Numbers that follow from it are compared by
// report.Differences.
package change

import (
	"reflect"
	"strconv"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// Kind is what happened to a part.
type Kind uint8

// The kinds of change.
const (
	Added Kind = iota
	Removed
	Moved   // is the same at another place
	Altered // is another
)

// Change is one thing that differs.
type Change struct {
	Part  design.ID // "" for the top itself
	Kind  Kind
	Words string // "Sink moved 40 mm to the left"
	// Was and Is are where it lies in the two designs, mm; empty where it is not.
	Was, Is geom.Box
	// EdgesWas and EdgesIs are the edges of the outline that it is of, by their nodes in
	// the two designs; nil for what is of no edge alone.
	EdgesWas, EdgesIs []int
}

// Between lists what differs from a to b: the top first, then its parts in the
// order of b, last what only a has. Parts are the same when they share an ID.
func Between(a, b design.Design, sys units.System) []Change {
	out := top(a, b, sys)
	was, is := parts(a), parts(b)
	for _, p := range is {
		i := indexOf(was, p.id)
		if i < 0 {
			out = append(out, Change{Part: p.id, Kind: Added, Words: name(is, p) + " added", Was: geom.EmptyBox(), Is: Extent(b, p.id)})
			continue
		}
		old := was[i]
		if reflect.DeepEqual(old.value, p.value) && place(a, p.id) == place(b, p.id) {
			continue
		}
		c := Change{Part: p.id, Kind: Altered, Words: name(is, p) + " changed", Was: Extent(a, p.id), Is: Extent(b, p.id)}
		by, ok := moved(a, b, old, p)
		if ok {
			c.Kind = Moved
			c.Words = name(is, p) + " moved " + way(by, sys)
		} else if d := drilled(old.value, p.value, sys); d != "" {
			c.Words = name(is, p) + ": " + d
		} else {
			size := resized(c.Was, c.Is, sys)
			more := detail(old.value, p.value, size == "", sys)
			switch p.value.(type) {
			case design.Sink, design.TapSet, design.Hole: // what has a place of its own
				if by != (design.Point{}) {
					more = strings.TrimPrefix(more+"; moved "+way(by, sys), "; ")
				}
			}
			switch {
			case size != "" && more != "":
				c.Words = name(is, p) + " " + size + "; " + more
			case size != "":
				c.Words = name(is, p) + " " + size
			case more != "":
				c.Words += ": " + more
			}
		}
		out = append(out, c)
	}
	for _, p := range was {
		if indexOf(is, p.id) < 0 {
			out = append(out, Change{Part: p.id, Kind: Removed, Words: name(was, p) + " removed", Was: Extent(a, p.id), Is: geom.EmptyBox()})
		}
	}
	return append(out, unseen(a, b, len(out) == 0)...)
}

// unseen is what differs in the designs and not in the tops. only says that nothing
// else does.
func unseen(a, b design.Design, only bool) []Change {
	var out []Change
	say := func(words string) {
		out = append(out, Change{Kind: Altered, Words: words, Was: geom.EmptyBox(), Is: geom.EmptyBox()})
	}
	if len(a.Relations)+len(b.Relations) > 0 && !reflect.DeepEqual(a.Relations, b.Relations) {
		say("What keeps its place with what changed")
	}
	if len(a.Extra)+len(b.Extra) > 0 && !reflect.DeepEqual(a.Extra, b.Extra) {
		say("Members of the file that this version does not know changed")
	}
	if only && out == nil && !reflect.DeepEqual(order(a), order(b)) {
		say("Parts lie in another order")
	}
	return out
}

func order(d design.Design) []design.ID {
	var out []design.ID
	for _, p := range parts(d) {
		out = append(out, p.id)
	}
	return out
}

// top is what differs in the top itself.
func top(a, b design.Design, sys units.System) []Change {
	var out []Change
	ba, bb := edit.Bounds(a.Outline), edit.Bounds(b.Outline)
	say := func(words string) { out = append(out, Change{Kind: Altered, Words: words, Was: ba, Is: bb}) }
	if !reflect.DeepEqual(chain(a.Outline, false), chain(b.Outline, false)) {
		words := "Outline reshaped"
		if d := resized(ba, bb, sys); d != "" {
			words = "Top " + d
		}
		say(words)
	}
	out = append(out, edges(a, b, sys)...)
	if a.Thickness != b.Thickness {
		say("Thickness " + units.Format(b.Thickness, sys) + ", was " + units.Format(a.Thickness, sys))
	}
	if !reflect.DeepEqual(a.Finish, b.Finish) {
		words := "Finish changed"
		if more := detail(a.Finish, b.Finish, true, sys); more != "" {
			words += ": " + more
		}
		say(words)
	}
	if a.Notes != b.Notes {
		say("Notes changed")
	}
	return out
}

// chain is an outline's course, or with finish its sides and profiles.
func chain(o design.Outline, finish bool) []design.Node {
	out := make([]design.Node, len(o.Nodes))
	for i, n := range o.Nodes {
		if finish {
			out[i].Edge.Side, out[i].Edge.Profile = n.Edge.Side, n.Edge.Profile
			continue
		}
		out[i] = n
		out[i].Edge.Side, out[i].Edge.Profile = 0, design.Profile{}
	}
	return out
}

// part is a part of a design with what it is.
type part struct {
	id    design.ID
	noun  string
	value any
}

func parts(d design.Design) []part {
	var out []part
	for _, p := range d.Sinks {
		out = append(out, part{p.ID, "Sink", p})
	}
	for _, p := range d.Taps {
		out = append(out, part{p.ID, "Tap holes", p})
	}
	for _, p := range d.Holes {
		out = append(out, part{p.ID, "Hole", p})
	}
	for _, p := range d.Channels {
		out = append(out, part{p.ID, "Channel", p})
	}
	for _, p := range d.Glass {
		out = append(out, part{p.ID, "Glass", p})
	}
	for _, p := range d.Supports {
		out = append(out, part{p.ID, "Support", p})
	}
	return out
}

func indexOf(list []part, id design.ID) int {
	for i, p := range list {
		if p.id == id {
			return i
		}
	}
	return -1
}

// name is the part's noun, with its number where there are several.
func name(list []part, p part) string {
	n, mine := 0, 0
	for _, q := range list {
		if q.noun == p.noun {
			n++
		}
		if q.id == p.id {
			mine = n
		}
	}
	if n < 2 {
		return p.noun
	}
	return p.noun + " " + strconv.Itoa(mine)
}

func place(d design.Design, id design.ID) design.Point {
	p, _ := edit.Centre(d, id)
	return p
}

// moved is by how much a part was moved from what it was, if that is all that was
// done to it.
func moved(a, b design.Design, was, p part) (design.Point, bool) {
	by := design.Point{X: place(b, p.id).X - place(a, p.id).X, Y: place(b, p.id).Y - place(a, p.id).Y}
	if by == (design.Point{}) {
		return by, false
	}
	if reflect.DeepEqual(was.value, p.value) {
		return by, true // it follows another part
	}
	d, err := edit.MovePart(p.id, by).Apply(a)
	if err != nil {
		return by, false
	}
	all := parts(d)
	i := indexOf(all, p.id)
	return by, i >= 0 && reflect.DeepEqual(all[i].value, p.value)
}

// Extent is where a part of a design lies, mm; empty for none.
func Extent(d design.Design, id design.ID) geom.Box {
	lo, hi, ok := edit.Extent(d, id)
	if !ok {
		return geom.EmptyBox()
	}
	return geom.Box{Min: geom.Vec{X: lo.X.MM(), Y: lo.Y.MM()}, Max: geom.Vec{X: hi.X.MM(), Y: hi.Y.MM()}}
}

// way says a move in words: "40 mm to the left and 10 mm toward the back".
func way(by design.Point, sys units.System) string {
	var out []string
	for _, m := range [...]struct {
		v         units.Length
		less, way string
	}{{by.X, "to the left", "to the right"}, {by.Y, "toward the front", "toward the back"}} {
		if m.v == 0 {
			continue
		}
		word := m.way
		if m.v < 0 {
			word = m.less
		}
		out = append(out, units.Format(max(m.v, -m.v), sys)+" "+word)
	}
	return strings.Join(out, " and ")
}

// drilled says another pattern of tap holes, "" for the same and for other parts: a
// row of holes has no size that a client would ask for.
func drilled(a, b any, sys units.System) string {
	was, okA := a.(design.TapSet)
	is, okB := b.(design.TapSet)
	if !okA || !okB || was.Pattern == is.Pattern {
		return ""
	}
	words := func(t design.TapSet) string {
		switch t.Pattern {
		case design.TapThree4:
			return "three, spread " + units.Format(4*units.Inch, sys)
		case design.TapThree8:
			return "three, spread " + units.Format(8*units.Inch, sys)
		case design.TapOwn:
			return strconv.Itoa(len(t.Holes)) + " of own pattern"
		}
		return "one"
	}
	return words(is) + ", was " + words(was)
}

// resized says a new size in words, "" when it is the old one.
func resized(a, b geom.Box, sys units.System) string {
	if a.Empty() || b.Empty() {
		return ""
	}
	size := func(x geom.Box) string {
		return units.Format(units.FromMM(x.W()), sys) + " × " + units.Format(units.FromMM(x.H()), sys)
	}
	if size(a) == size(b) {
		return ""
	}
	return size(b) + ", was " + size(a)
}

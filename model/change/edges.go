package change

import (
	"reflect"
	"strconv"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edging"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// edges is which edges are finished otherwise, those that changed alike together:
// "Front and left edges: half round, were square".
func edges(a, b design.Design, sys units.System) []Change {
	if reflect.DeepEqual(chain(a.Outline, true), chain(b.Outline, true)) {
		return nil
	}
	was, is := sidesOf(a), sidesOf(b)
	if !edging.Same(was, is) {
		return edgesBySide(was, is, sys)
	}
	was, is = edging.Edges(was), edging.Edges(is)
	numbers := edging.Common(was, is)
	facing := map[string]int{} // how many edges face a side
	type step struct{ from, to edging.Finish }
	var order []step
	changed := map[step][]int{}
	for i := range is {
		facing[edging.Facing(is[i].Points)]++
		s := step{edging.Of(was[i]), edging.Of(is[i])}
		if s.from == s.to {
			continue
		}
		if changed[s] == nil {
			order = append(order, s)
		}
		changed[s] = append(changed[s], i)
	}
	var out []Change
	for _, s := range order {
		c := Change{Kind: Altered, Was: geom.EmptyBox(), Is: geom.EmptyBox()}
		var names []string
		for _, i := range changed[s] {
			c.EdgesWas, c.EdgesIs = append(c.EdgesWas, is[i].Node), append(c.EdgesIs, is[i].Node)
			c.Was, c.Is = around(c.Was, was[i]), around(c.Is, is[i])
			names = append(names, edging.Facing(is[i].Points))
		}
		one := len(names) == 1
		c.Words = edgeNames(names, changed[s], is, numbers, facing) + ": " + fromTo(s.from, s.to, one, sys)
		out = append(out, c)
	}
	if out == nil { // seen by nobody, but the fingerprint sees it
		out = []Change{{Kind: Altered, Words: "An edge at the wall, which is not seen, has another profile", Was: geom.EmptyBox(), Is: geom.EmptyBox()}}
	}
	return out
}

// edgeNames says which edges: "Edge 3 (front)", "Front and left edges".
func edgeNames(names []string, at []int, of []slab.Side, numbers map[int]int, facing map[string]int) string {
	if numbers != nil {
		for k, i := range at {
			names[k] = strconv.Itoa(numbers[of[i].Node]) + " (" + names[k] + ")"
		}
		if len(names) == 1 {
			return "Edge " + names[0]
		}
		return "Edges " + edging.And(names)
	}
	if len(names) == len(of) && len(names) > 1 {
		return "All edges"
	}
	// Too many to be numbered, or the side is name enough.
	count := map[string]int{}
	for _, n := range names {
		count[n]++
	}
	words := edging.BySide(names)
	for i, w := range words {
		n, _, _ := strings.Cut(w, " ")
		if count[n] < facing[n] {
			words[i] = strconv.Itoa(count[n]) + " of " + strconv.Itoa(facing[n]) + " " + n
		}
	}
	return edgeWord(sentence(edging.And(words)), len(names) == 1 && facing[names[0]] == 1)
}

// edgesBySide compares the edges of two tops that have other edges: what is found at
// each side.
func edgesBySide(was, is []slab.Side, sys units.System) []Change {
	var out []Change
	for _, side := range [...]string{"front", "left", "right", "back"} {
		a, b := at(side, was), at(side, is)
		if reflect.DeepEqual(a.finishes, b.finishes) || len(b.finishes) == 0 {
			continue
		}
		words := func(list []edging.Finish) string {
			var out []string
			for _, f := range list {
				out = append(out, f.Words(sys))
			}
			return edging.And(out)
		}
		c := Change{Kind: Altered, EdgesWas: a.nodes, EdgesIs: b.nodes, Was: a.box, Is: b.box}
		c.Words = edgeWord(sentence(side), len(b.nodes) == 1) + ": "
		if len(a.finishes) == 1 && len(b.finishes) == 1 {
			c.Words += fromTo(a.finishes[0], b.finishes[0], len(b.nodes) == 1, sys)
		} else if c.Words += words(b.finishes); len(a.finishes) > 0 {
			c.Words += ", " + wasWord(len(a.nodes) == 1) + words(a.finishes)
		}
		out = append(out, c)
	}
	return out
}

// looks is the edges that look to one side.
type looks struct {
	nodes    []int
	finishes []edging.Finish // each once, in order
	box      geom.Box
}

func at(side string, sides []slab.Side) looks {
	out := looks{box: geom.EmptyBox()}
	met := map[edging.Finish]bool{}
	for _, s := range edging.Edges(sides) {
		if edging.Facing(s.Points) != side {
			continue
		}
		out.nodes = append(out.nodes, s.Node)
		out.box = around(out.box, s)
		if f := edging.Of(s); !met[f] {
			met[f] = true
			out.finishes = append(out.finishes, f)
		}
	}
	return out
}

// fromTo says a finish and what it was: "half round, was square".
func fromTo(from, to edging.Finish, one bool, sys units.System) string {
	a, b := from.Words(sys), to.Words(sys)
	if a == b { // the liner of broken stone, of which nothing else is said
		a, b = a+" "+units.Format(from.Profile.Size, sys), b+" "+units.Format(to.Profile.Size, sys)
	}
	return b + ", " + wasWord(one) + a
}

func wasWord(one bool) string {
	if one {
		return "was "
	}
	return "were "
}

func edgeWord(name string, one bool) string {
	if one {
		return name + " edge"
	}
	return name + " edges"
}

func sentence(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// sidesOf is the sides of a design's outline alone.
func sidesOf(d design.Design) []slab.Side {
	return slab.Resolve(design.Design{Outline: d.Outline, Thickness: d.Thickness}).Sides
}

func around(b geom.Box, s slab.Side) geom.Box {
	for _, p := range s.Points {
		b = b.Include(p)
	}
	return b
}

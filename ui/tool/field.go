package tool

import (
	"fmt"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// field is one measure of the thing in hand: shown live, and set by typing.
type field struct {
	name     string
	key      string  // what it is known by, unless that is its name: names of edges change as they turn
	value    float64 // mm, or degrees of an angle
	angle    bool
	from, to geom.Vec
	beside   geom.Vec // side on which the label stands off
	// dir is the unit vector along which the grip moves to make the value
	// grow one for one. It is zero for a measure of the thing itself, such as
	// a radius, and for what can only be read.
	dir geom.Vec
	// set gives the thing a measure of its own, in nanometres or micro-degrees;
	// nil for a place.
	set  func(d design.Design, v int64) (edit.Edit, error)
	grip bool // it is what dragging the grip changes
	read bool // can't be set
	bare bool // of a line that is seen anyway
	// hidden is a measure of nothing that is only shown once it is typed to.
	hidden bool
	tag    *geom.Vec
	met    matter // what a gap ends at
	low    low    // what is wrong with it, if it is too small
}

// id is what a field is known by while a gesture lasts.
func (f field) id() string {
	if f.key != "" {
		return f.key
	}
	return f.name
}

// amount is a value in the field's unit as a whole number.
func (f field) amount(x float64) int64 {
	if f.angle {
		return int64(units.FromDegrees(x))
	}
	return int64(units.FromMM(x))
}

// positive is a set that refuses a size of nothing.
func positive(name string, set func(d design.Design, l units.Length) edit.Edit) func(design.Design, int64) (edit.Edit, error) {
	return func(d design.Design, v int64) (edit.Edit, error) {
		if v <= 0 {
			return edit.Edit{}, fmt.Errorf("the %s must be more than nothing", name)
		}
		return set(d, units.Length(v)), nil
	}
}

// fields are the measures of the grip in the design as it stands.
func (g grip) fields(d design.Design, s slab.Solid, perMM float64) []field {
	if !g.exists(d) {
		return nil
	}
	nodes := d.Outline.Nodes
	p, _ := find(d, g.part)
	switch g.kind {
	case gripTop:
		return topFields(d)
	case gripCorner:
		return append(cornerFields(nodes, g.node), roundFields(nodes, g, perMM)...)
	case gripEdge:
		return append(edgeFields(nodes, s, g.node), bendFields(nodes, g)...)
	case gripBend:
		return bendFields(nodes, g)
	case gripRadius:
		return roundFields(nodes, g, perMM)
	case gripControl:
		return controlFields(nodes, g.node, g.side)
	case gripPart:
		return partFields(d, s, p, g.part)
	case gripSize, gripTurn:
		return handleFields(d, s, p, g)
	case gripRiver:
		r := p.channel.Rivers[g.group]
		return append(placeFields(d, vec(r.Nodes[g.node].At)), widthFields(r, g)...)
	case gripWidth:
		return widthFields(p.channel.Rivers[g.group], g)
	case gripNode:
		chain := chainOf(p.regions()[g.group], g.chain)
		return append(cornerFields(chain, g.node), placeFields(d, vec(chain[g.node].At))...)
	case gripEnd:
		return endFields(*p.support, d, g)
	}
	return nil
}

// placeFields are how far a place lies from the left and the front of the top's
// bounds, as a tape measures it.
func placeFields(d design.Design, at geom.Vec) []field {
	b := edit.Bounds(d.Outline)
	if b.Empty() {
		return nil
	}
	return []field{
		{name: fromLeft, value: at.X - b.Min.X, from: geom.Vec{X: b.Min.X, Y: at.Y}, to: at,
			dir: geom.Vec{X: 1}, beside: geom.Vec{Y: 1}},
		{name: fromFront, value: at.Y - b.Min.Y, from: geom.Vec{X: at.X, Y: b.Min.Y}, to: at,
			dir: geom.Vec{Y: 1}, beside: geom.Vec{X: 1}},
	}
}

// The names of the measures of a place.
const (
	fromLeft  = "From the left"
	fromFront = "From the front"
)

// togetherFields are how far several things are moved.
func togetherFields(from, to geom.Vec) []field {
	corner := geom.Vec{X: to.X, Y: from.Y}
	return []field{
		{name: "To the right by", value: to.X - from.X, from: from, to: corner, dir: geom.Vec{X: 1}, beside: geom.Vec{Y: -1}},
		{name: "To the back by", value: to.Y - from.Y, from: corner, to: to, dir: geom.Vec{Y: 1}, beside: geom.Vec{X: 1}},
	}
}

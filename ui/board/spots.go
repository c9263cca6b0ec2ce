package board

import (
	"example.org/castwright/model/geom"
	"example.org/castwright/ui/tool"
)

// Spot is a place on the drawing that can be clicked, in pixels of the window. It
// is for tests of the real window, which find their way by it.
type Spot struct {
	Name string
	At   geom.Vec
}

// Typing is the number that is being typed on the drawing; false for none.
func (b *Board) Typing() (tool.Value, bool) {
	v := b.hand.Overlay().Value
	if v == nil {
		return tool.Value{}, false
	}
	return *v, true
}

// Labels are the labels of measures that a click opens, as drawn last.
func (b *Board) Labels() []Spot {
	g := b.Geometry()
	var out []Spot
	for _, l := range b.picture.over.labels {
		out = append(out, Spot{l.field, l.box.Centre().Add(geom.Vec{X: g.X, Y: g.Y})})
	}
	return out
}

// Links are the chains of the relations that are shown.
func (b *Board) Links() []Spot {
	g := b.Geometry()
	var out []Spot
	for _, k := range b.hand.Overlay().Links {
		at := geom.Vec{X: g.Origin.X + k.Chain.X*g.PerMM, Y: g.Origin.Y - k.Chain.Y*g.PerMM}
		out = append(out, Spot{k.Words, at})
	}
	return out
}

// Handles are what is selected can be taken by.
func (b *Board) Handles() []Spot {
	g := b.Geometry()
	var out []Spot
	for _, h := range b.hand.Overlay().Handles {
		at := geom.Vec{X: g.Origin.X + h.At.X*g.PerMM, Y: g.Origin.Y - h.At.Y*g.PerMM}
		out = append(out, Spot{h.Kind.String(), at})
	}
	return out
}

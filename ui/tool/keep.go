package tool

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// What a maker says while setting a sink down is kept as a relation: a sink put
// on a centreline stays on it when the top changes, one whose distance from an
// edge was typed keeps that distance. (The rules of relations stand in package
// design; moving the sink by hand ends or changes them.)

// tie is a centreline that the snap holds a part on, along an axis.
type tie struct {
	axis design.Axis
	to   mark
}

// tiesOf are the centrelines among the tracks that hold a place.
func tiesOf(ts ...track) []tie {
	var out []tie
	for _, t := range ts {
		if t.kind != holdsCentre || t.of == nil || !t.upright() {
			continue
		}
		axis := design.AxisX
		if math.Abs(t.dir.X) > 0.5 {
			axis = design.AxisY
		}
		out = append(out, tie{axis, *t.of})
	}
	return out
}

// relation is what keeps a part on the centreline.
func (t tie) relation(id design.ID, s slab.Solid) (design.Relation, bool) {
	r := design.Relation{Part: id, Axis: t.axis}
	switch t.to.of {
	case "":
		r.Kind = design.RelationTop
		return r, true
	case cabinetID:
		a, b, ok := cabinetEnds(s, t.axis)
		r.Kind, r.Other, r.Second = design.RelationBetween, a, b
		return r, ok
	}
	r.Kind, r.Other = design.RelationPart, t.to.of
	return r, true
}

// cabinetID stands for the cabinet as a whole, which no part of a design can be.
const cabinetID design.ID = "\x00cabinet"

// cabinetEnds are the outermost parts of the cabinet along an axis.
func cabinetEnds(s slab.Solid, axis design.Axis) (first, last design.ID, ok bool) {
	lo, hi := math.Inf(1), math.Inf(-1)
	u := geom.Vec{X: 1}
	if axis == design.AxisY {
		u = geom.Vec{Y: 1}
	}
	for _, k := range s.Bearings {
		if k.Kind == design.SupportWall || k.Kind == design.SupportBracket || len(k.Line) == 0 {
			continue
		}
		b := geom.EmptyBox()
		for _, p := range k.Line {
			b = b.Include(p)
		}
		at := b.Centre().Dot(u)
		if at < lo {
			lo, first = at, k.Part
		}
		if at > hi {
			hi, last = at, k.Part
		}
	}
	return first, last, first != last && first != ""
}

// sideOf is the side of the top that a measure of a gap to an edge is taken from.
func sideOf(f field) (design.TopSide, bool) {
	if f.met != matterEdge || f.dir == (geom.Vec{}) {
		return 0, false
	}
	switch {
	case f.dir.X > 0.5:
		return design.SideLeft, true
	case f.dir.X < -0.5:
		return design.SideRight, true
	case f.dir.Y > 0.5:
		return design.SideFront, true
	}
	return design.SideBack, true
}

// kept adds to the edit that sets a sink down what it is to keep to. A relation
// that would move the sink is not made.
func (h *Hand) kept(k *inHand, add edit.Edit) edit.Edit {
	if k.put.Sink == nil {
		return add
	}
	s := h.s.Report().Solid
	fs := h.putFields(k, k.at)
	return edit.Edit{Name: add.Name, Apply: func(d design.Design) (design.Design, error) {
		out, err := add.Apply(d)
		if err != nil {
			return d, err
		}
		made := edit.NewParts(d, out)
		if len(made) == 0 {
			return out, nil
		}
		id := made[0]
		place, _ := edit.Centre(out, id)
		try := func(e edit.Edit) {
			next, err := e.Apply(out)
			if err != nil {
				return
			}
			if at, ok := edit.Centre(next, id); ok && at.Sub(place).X.Abs() < 1000 && at.Sub(place).Y.Abs() < 1000 {
				out = next
			}
		}
		typed := map[design.Axis]bool{}
		for _, p := range k.pins {
			if f, ok := activeOf(fs, p.id); ok && f.id() == p.id {
				axis := design.AxisX
				if math.Abs(f.dir.Y) > 0.5 {
					axis = design.AxisY
				}
				typed[axis] = true
				if side, ok := sideOf(f); ok {
					try(edit.KeepDistance(id, side))
				}
			}
		}
		for _, t := range k.snap.ties {
			if r, ok := t.relation(id, s); ok && !typed[t.axis] {
				try(edit.AddRelation(r))
			}
		}
		return out, nil
	}}
}

// keptWords say what a sink in hand would stay on.
func (k *inHand) keptWords() string {
	if k.put.Sink == nil || len(k.snap.ties) == 0 || len(k.pins) > 1 {
		return ""
	}
	return ", to stay on " + k.snap.ties[0].name()
}

func (t tie) name() string { return "the centreline of " + t.to.what }

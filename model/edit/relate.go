package edit

import (
	"fmt"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// AddRelation makes a part keep to something, and puts it there. It takes the
// place of the relation that held the part along the same axis, or the same
// end of the same river. See [design.Relation] for the rules.
func AddRelation(r design.Relation) Edit {
	return newEdit(relationName(r), func(d design.Design) (design.Design, error) {
		return related(d, r)
	})
}

// CutRelation takes relation i away, counted from 0; all stays where it is.
func CutRelation(i int) Edit {
	return newEdit("Cut relation", func(d design.Design) (design.Design, error) {
		if i < 0 || i >= len(d.Relations) {
			return d, fmt.Errorf("relation %d: the design has %d relations: pick one of these",
				i+1, len(d.Relations))
		}
		d.Relations = slices.Delete(slices.Clone(d.Relations), i, i+1)
		if len(d.Relations) == 0 {
			d.Relations = nil
		}
		return d, nil
	})
}

// KeepDistance makes a part keep the distance that its centre has from a side
// of the top.
func KeepDistance(id design.ID, side design.TopSide) Edit {
	r := design.Relation{Kind: design.RelationSide, Part: id, Side: side}
	return newEdit(relationName(r), func(d design.Design) (design.Design, error) {
		r := r
		at, ok := Centre(d, id)
		if !ok {
			return d, noPart(id)
		}
		if len(d.Outline.Nodes) > 0 && side <= design.SideBack {
			box := boundsOf(d.Outline.Nodes)
			lo, hi := sidesOf(box, side.Axis())
			r.Distance = along(at, side.Axis()) - lo
			if far(side) {
				r.Distance = hi - along(at, side.Axis())
			}
		}
		return related(d, r)
	})
}

// TieRiver makes an end of a river stay on the edge of the outline that it is
// nearest to, at the place nearest to it.
func TieRiver(id design.ID, river int, end design.RiverSide) Edit {
	r := design.Relation{Kind: design.RelationEdge, Part: id, River: river, End: end}
	return newEdit(relationName(r), func(d design.Design) (design.Design, error) {
		r := r
		if at, ok := endOf(d, r); ok {
			r.Edge, r.Along, _, _ = NearestEdge(d, at)
		}
		return related(d, r)
	})
}

func relationName(r design.Relation) string {
	switch r.Kind {
	case design.RelationTop, design.RelationBetween:
		return "Centre " + nounOf(r.Part)
	case design.RelationPart:
		return "Line up " + nounOf(r.Part)
	case design.RelationSide:
		return "Keep distance of " + nounOf(r.Part)
	case design.RelationBank:
		return "Keep " + nounOf(r.Part) + " along bank"
	}
	return "Tie river to edge"
}

// related is a design with one relation more, if it can be kept beside the
// others.
func related(d design.Design, r design.Relation) (design.Design, error) {
	if f, bad := d.RelationFault(r); bad {
		return d, fmt.Errorf("%s", f.Detail)
	}
	if err := checkBound("the distance", r.Distance); err != nil {
		return d, err
	}
	if len(d.Outline.Nodes) == 0 && (r.Kind == design.RelationTop || r.Kind == design.RelationSide) {
		return d, fmt.Errorf("there is no outline to keep to: draw or pick one first")
	}
	axis, whole := r.Holds()
	var kept []design.Relation
	for _, old := range d.Relations {
		oldAxis, oldWhole := old.Holds()
		if old.Part == r.Part {
			switch {
			case whole != oldWhole:
				return d, fmt.Errorf("%s is held already, %s: cut that relation first",
					r.Part, lowerFirst(old.Sentence(nil, nil)))
			case whole && oldAxis == axis, !whole && old.River == r.River && old.End == r.End:
				continue
			}
		}
		kept = append(kept, old)
	}
	if len(kept) >= design.MaxRelations {
		return d, fmt.Errorf("a design keeps %d relations: cut one first", design.MaxRelations)
	}
	before := len(d.RelationOrder())
	replaced := len(d.Relations) - len(kept)
	d.Relations = append(kept, r)
	if len(d.RelationOrder()) < before-replaced+1 {
		return d, fmt.Errorf("%s would wait for a part that waits for it: cut the other relation first",
			r.Part)
	}
	return d, nil
}

func lowerFirst(s string) string {
	if s != "" && s[0] >= 'A' && s[0] <= 'Z' {
		return string(s[0]+'a'-'A') + s[1:]
	}
	return s
}

// Tie is where a relation shows on the drawing: the place of what is held, and
// each place that it is held to, in line with it.
type Tie struct {
	At design.Point
	To []design.Point
}

// TieOf is the tie of a relation of d; false when it has none because
// something is missing.
func TieOf(d design.Design, r design.Relation) (Tie, bool) {
	if _, bad := d.RelationFault(r); bad {
		return Tie{}, false
	}
	if r.Kind == design.RelationEdge {
		at, ok := endOf(d, r)
		return Tie{at, []design.Point{onEdge(d.Outline.Nodes, r.Edge, r.Along)}}, ok
	}
	at, ok := Centre(d, r.Part)
	if !ok {
		return Tie{}, false
	}
	tie := Tie{At: at}
	axis, _ := r.Holds()
	to := func(l units.Length) {
		tie.To = append(tie.To, at.Add(onAxis(l-along(at, axis), axis)))
	}
	switch r.Kind {
	case design.RelationPart, design.RelationBank:
		other, ok := Centre(d, r.Other)
		tie.To = append(tie.To, other)
		return tie, ok
	case design.RelationBetween:
		near, far, ok := facing(d, r, axis)
		to(near)
		to(far)
		return tie, ok
	}
	if len(d.Outline.Nodes) == 0 {
		return Tie{}, false
	}
	lo, hi := sidesOf(boundsOf(d.Outline.Nodes), axis)
	switch {
	case r.Kind == design.RelationTop:
		to(lo)
		to(hi)
	case far(r.Side):
		to(hi)
	default:
		to(lo)
	}
	return tie, true
}

// far reports whether a side is the right one or the back.
func far(s design.TopSide) bool { return s == design.SideRight || s == design.SideBack }

// sidesOf are the sides of a box across an axis.
func sidesOf(b geom.Box, a design.Axis) (lo, hi units.Length) {
	if a == design.AxisY {
		return units.FromMM(b.Min.Y), units.FromMM(b.Max.Y)
	}
	return units.FromMM(b.Min.X), units.FromMM(b.Max.X)
}

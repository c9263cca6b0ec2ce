package edit

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// Offer is something that a part can keep to, with the edit that makes it do so
// and how far the part would go for it; a distance that is kept as it is moves
// nothing. Sink is set, and Relation is not, for tap holes that would keep to the
// centreline of this sink.
type Offer struct {
	Relation design.Relation
	Sink     design.ID
	Edit     Edit
	Moves    units.Length
}

// Offers are the things that a part can keep to: first the middles and centrelines,
// then the sides of the top. What it keeps to already, and what can't be kept beside
// that, is not among them.
func Offers(d design.Design, id design.ID) []Offer {
	from, ok := Centre(d, id)
	if !ok || len(d.Outline.Nodes) == 0 {
		return nil
	}
	var out []Offer
	add := func(o Offer) {
		for _, i := range d.RelationsOf(id) {
			if d.Relations[i].SameHold(o.Relation) && o.Sink == "" {
				return
			}
		}
		next, err := o.Edit.Apply(d)
		if err != nil {
			return
		}
		// A relation that comes to nothing, or ends another one of the part along
		// the other way, is none.
		if o.Sink == "" && !hasTie(next, o.Relation) {
			return
		}
		if o.Relation.Kind == design.RelationEdge && o.Sink == "" {
			end, _ := endOf(d, o.Relation)
			o.Moves = units.FromMM(vec(onEdge(d.Outline.Nodes, o.Relation.Edge, o.Relation.Along).Sub(end)).Norm())
		} else if at, ok := Centre(next, id); ok {
			o.Moves = units.FromMM(vec(at.Sub(from)).Norm())
		}
		out = append(out, o)
	}
	relation := func(r design.Relation) { r.Part = id; add(Offer{Relation: r, Edit: AddRelation(r)}) }
	if t := tapsOf(d, id); t != nil && t.Sink == "" {
		for _, s := range d.Sinks {
			add(Offer{Sink: s.ID, Edit: TieTaps(id, s.ID)})
		}
	}
	for _, c := range d.Channels {
		if c.ID != id {
			continue
		}
		for i := range c.Rivers {
			for _, end := range []design.RiverSide{design.RiverStart, design.RiverFinish} {
				r := design.Relation{Kind: design.RelationEdge, Part: id, River: i, End: end}
				if at, ok := endOf(d, r); ok {
					r.Edge, r.Along, _, _ = NearestEdge(d, at)
				}
				add(Offer{Relation: r, Edit: TieRiver(id, i, end)})
			}
		}
	}
	for _, axis := range []design.Axis{design.AxisX, design.AxisY} {
		if a, b, ok := outermost(d, id, axis); ok {
			relation(design.Relation{Kind: design.RelationBetween, Axis: axis, Other: a, Second: b})
		}
	}
	for _, s := range d.Sinks {
		for _, axis := range []design.Axis{design.AxisX, design.AxisY} {
			if s.ID != id {
				relation(design.Relation{Kind: design.RelationPart, Axis: axis, Other: s.ID})
			}
		}
	}
	relation(design.Relation{Kind: design.RelationTop, Axis: design.AxisX})
	relation(design.Relation{Kind: design.RelationTop, Axis: design.AxisY})
	box := boundsOf(d.Outline.Nodes)
	for _, side := range []design.TopSide{design.SideLeft, design.SideRight, design.SideFront, design.SideBack} {
		r := design.Relation{Kind: design.RelationSide, Part: id, Side: side}
		lo, hi := sidesOf(box, side.Axis())
		if r.Distance = along(from, side.Axis()) - lo; far(side) {
			r.Distance = hi - along(from, side.Axis())
		}
		add(Offer{Relation: r, Edit: KeepDistance(id, side)})
	}
	return out
}

func hasTie(d design.Design, r design.Relation) bool {
	for _, i := range d.RelationsOf(r.Part) {
		if d.Relations[i].SameHold(r) {
			return true
		}
	}
	return false
}

// outermost are the two gables, rails or legs that lie furthest out along an axis
// and are not the part itself.
func outermost(d design.Design, but design.ID, axis design.Axis) (first, last design.ID, ok bool) {
	lo, hi := units.Length(math.MaxInt64), units.Length(math.MinInt64)
	for _, s := range d.Supports {
		at, there := Centre(d, s.ID)
		if !there || s.ID == but || s.Kind == design.SupportWall || s.Kind == design.SupportBracket ||
			!runsAcross(s, axis) {
			continue
		}
		if l := along(at, axis); l < lo {
			lo, first = l, s.ID
		}
		if l := along(at, axis); l > hi {
			hi, last = l, s.ID
		}
	}
	return first, last, first != last && lo < hi
}

// runsAcross reports whether a support lies across an axis, as a gable does from
// front to back; a patch or a leg does both ways.
func runsAcross(s design.Support, axis design.Axis) bool {
	if s.Patch || len(s.Line) != 2 {
		return true
	}
	run := s.Line[1].Sub(s.Line[0])
	return along(run, axis).Abs() <= along(run, 1-axis).Abs()
}

// TieTaps makes tap holes keep to the centreline of a sink, at the offset and the
// set-back that they have now, turned as the sink is.
func TieTaps(id, sink design.ID) Edit {
	return taps.change("Keep tap holes to sink", id, func(d design.Design, t *design.TapSet) error {
		s := sinkOf(d, sink)
		if s == nil {
			return checkTaps(d, design.TapSet{Sink: sink})
		}
		at, _ := tapsPlace(d, *t)
		turn := s.Rotation.Radians()
		back := geom.Vec{Y: 1}.Turn(turn)
		off := vec(at.Sub(s.At))
		t.SetBack = units.FromMM(lastCrossing(d.Outline.Nodes, vec(s.At), back) - off.Dot(back))
		t.Offset = units.FromMM(off.Dot(geom.Vec{X: 1}.Turn(turn)))
		t.Sink, t.At, t.Rotation = sink, design.Point{}, 0
		return nil
	})
}

package edit

import (
	"math"
	"reflect"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// slack is what a relation may be off before anything is moved for it: far
// below what can be cast, and above the rounding of places to nanometres.
const slack = units.Micrometre / 10

// hold moves what is held to where its relations say, in the order of
// [design.Design.RelationOrder]. A design whose relations hold comes back as
// it was.
func hold(d design.Design) design.Design {
	owned := false
	own := func() {
		if !owned {
			d, owned = cloneParts(d), true
		}
	}
	var top geom.Box
	if len(d.Relations) > 0 && len(d.Outline.Nodes) > 0 {
		top = boundsOf(d.Outline.Nodes)
	}
	for _, i := range d.RelationOrder() {
		r := d.Relations[i]
		if r.Kind == design.RelationEdge {
			holdEnd(&d, r, own)
			continue
		}
		axis, whole := r.Holds()
		if !whole {
			continue // see alongBanks
		}
		want, ok := heldAt(d, r, top)
		at, there := Centre(d, r.Part)
		if by := want - along(at, axis); ok && there && by.Abs() > slack {
			own()
			shiftPart(&d, r.Part, onAxis(by, axis))
		}
	}
	return d
}

// heldAt is where along its axis a relation wants the centre of its part; top
// are the outline's bounds. False when there is nothing to go by.
func heldAt(d design.Design, r design.Relation, top geom.Box) (units.Length, bool) {
	axis, _ := r.Holds()
	lo, hi := sidesOf(top, axis)
	switch r.Kind {
	case design.RelationTop:
		return (lo + hi) / 2, len(d.Outline.Nodes) > 0
	case design.RelationSide:
		if far(r.Side) {
			return hi - r.Distance, len(d.Outline.Nodes) > 0
		}
		return lo + r.Distance, len(d.Outline.Nodes) > 0
	case design.RelationPart:
		at, ok := Centre(d, r.Other)
		return along(at, axis), ok
	case design.RelationBetween:
		near, far, ok := facing(d, r, axis)
		return (near + far) / 2, ok
	}
	return 0, false
}

// facing are the places, along an axis, that a part is centred between: where
// the two others face each other.
func facing(d design.Design, r design.Relation, axis design.Axis) (near, far units.Length, ok bool) {
	lo1, hi1, ok1 := reachOf(d, r.Other, axis)
	lo2, hi2, ok2 := reachOf(d, r.Second, axis)
	if lo1+hi1 > lo2+hi2 {
		return hi2, lo1, ok1 && ok2
	}
	return hi1, lo2, ok1 && ok2
}

// riverOf is the river of a relation, nil when it is not there.
func riverOf(d design.Design, r design.Relation) *design.River {
	for i := range d.Channels {
		if c := &d.Channels[i]; c.ID == r.Part && r.River >= 0 && r.River < len(c.Rivers) {
			return &c.Rivers[r.River]
		}
	}
	return nil
}

// endOf is the place of the river's end that a relation is about.
func endOf(d design.Design, r design.Relation) (design.Point, bool) {
	river := riverOf(d, r)
	if river == nil || len(river.Nodes) == 0 {
		return design.Point{}, false
	}
	if r.End == design.RiverFinish {
		return river.Nodes[len(river.Nodes)-1].At, true
	}
	return river.Nodes[0].At, true
}

// holdEnd puts a river's end on its edge. The move fades along the river, by
// the length of its chords, to nothing at the other end, so that the river
// keeps its shape.
func holdEnd(d *design.Design, r design.Relation, own func()) {
	at, ok := endOf(*d, r)
	if !ok {
		return
	}
	by := onEdge(d.Outline.Nodes, r.Edge, r.Along).Sub(at)
	if by.X.Abs() <= slack && by.Y.Abs() <= slack {
		return
	}
	own()
	nodes := riverOf(*d, r).Nodes
	if r.End == design.RiverFinish {
		slices.Reverse(nodes)
		defer slices.Reverse(nodes)
	}
	total, from := 0.0, make([]float64, len(nodes))
	for i := 1; i < len(nodes); i++ {
		total += vec(nodes[i].At).Dist(vec(nodes[i-1].At))
		from[i] = total
	}
	for i := range nodes {
		left := 1.0
		if total > 0 {
			left = 1 - from[i]/total
		}
		nodes[i].At = nodes[i].At.Add(design.Point{X: scaled(by.X, left), Y: scaled(by.Y, left)})
	}
}

func scaled(l units.Length, f float64) units.Length {
	return units.Length(math.Round(float64(l) * f))
}

// put is how near to the outline, in millimetres, a river's end must be laid
// by hand to stay on it.
const put = 0.5

// released are the relations after an edit by hand: those of parts that it
// moved are brought up to date or cut, and those to what is gone go too.
// What a file brought along that can't hold stays, to be explained as a fault.
func released(before, after design.Design) []design.Relation {
	out := after.Relations
	owned := false
	own := func() {
		if !owned {
			out, owned = slices.Clone(out), true
		}
	}
	var top geom.Box
	if len(out) > 0 && len(after.Outline.Nodes) > 0 {
		top = boundsOf(after.Outline.Nodes)
	}
	cut := 0
	for i, r := range after.Relations {
		r, keep := afterHand(before, after, r, top)
		switch {
		case !keep:
			own()
			out = slices.Delete(out, i-cut, i-cut+1)
			cut++
		case r != out[i-cut]:
			own()
			out[i-cut] = r
		}
	}
	if len(out) == 0 {
		return nil
	}
	return out
}

// afterHand is what an edit by hand makes of one relation; false when it is cut.
func afterHand(before, after design.Design, r design.Relation, top geom.Box) (design.Relation, bool) {
	if r.Kind == design.RelationEdge {
		was, had := endOf(before, r)
		is, has := endOf(after, r)
		if !had || !has || was == is {
			return r, true
		}
		nodes := after.Outline.Nodes
		edge := r.Edge
		if edge < 0 || edge >= len(nodes) {
			return r, true
		}
		share, off := nearestOn(nodes, edge, vec(is))
		if off > put {
			if edge, share, off = nearestEdge(nodes, vec(is)); off > put {
				return r, false
			}
		}
		if is != onEdge(nodes, r.Edge, r.Along) {
			r.Edge, r.Along = edge, share
		}
		return r, true
	}
	if r.Kind == design.RelationBank {
		still := reflect.DeepEqual(channelOf(before, r.Other), channelOf(after, r.Other))
		return r, !still || sameBeds(before, after, []design.ID{r.Part})
	}
	axis, _ := r.Holds()
	was, had := Centre(before, r.Part)
	is, has := Centre(after, r.Part)
	if !had || !has || along(was, axis) == along(is, axis) {
		return r, true
	}
	want, ok := heldAt(after, r, top)
	off := along(is, axis) - want
	switch {
	case !ok || off.Abs() <= slack:
		return r, true
	case r.Kind != design.RelationSide:
		return r, false
	case far(r.Side):
		r.Distance -= off
	default:
		r.Distance += off
	}
	return r, r.Distance.Abs() <= units.MaxLength
}

// withoutGone cuts the relations that named only what was there before an edit
// and name what is not there after it.
func withoutGone(before, after design.Design) []design.Relation {
	gone := func(r design.Relation) bool {
		if _, bad := after.RelationFault(r); !bad {
			return false
		}
		_, was := before.RelationFault(r)
		return !was
	}
	if !slices.ContainsFunc(after.Relations, gone) {
		return after.Relations
	}
	out := slices.DeleteFunc(slices.Clone(after.Relations), gone)
	if len(out) == 0 {
		return nil
	}
	return out
}

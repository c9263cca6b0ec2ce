package edit

import (
	"fmt"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// fullTurn is once round.
const fullTurn = 360 * units.Degree

// RotatePart turns a part counter-clockwise: a sink or tap holes about their
// place, a channel, a glass bed or a support about its centre. Tap holes on a
// centreline turn with their sink only, and a round hole not at all.
func RotatePart(id design.ID, by units.Angle) Edit {
	return newEdit("Turn "+nounOf(id), func(d design.Design) (design.Design, error) {
		at, ok := Centre(d, id)
		if !hasPart(d, id) {
			return d, noPart(id)
		}
		d = cloneParts(d)
		for i := range d.Sinks {
			if d.Sinks[i].ID == id {
				d.Sinks[i].Rotation = halfTurn(d.Sinks[i].Rotation + by%fullTurn)
				return d, nil
			}
		}
		for i := range d.Taps {
			if d.Taps[i].ID != id {
				continue
			}
			if d.Taps[i].Sink != "" {
				return d, fmt.Errorf("%s turns with %s, whose centreline it keeps to: free it first",
					id, d.Taps[i].Sink)
			}
			d.Taps[i].Rotation = halfTurn(d.Taps[i].Rotation + by%fullTurn)
			return d, nil
		}
		for i := range d.Holes {
			if d.Holes[i].ID == id {
				return d, fmt.Errorf("%s is round: turning it changes nothing", id)
			}
		}
		if !ok {
			return d, fmt.Errorf("%s has no points to turn: draw it first", id)
		}
		rotate(&d, id, at, by)
		return d, nil
	})
}

// RotateParts turns parts counter-clockwise together, about the middle of the box
// round them all; a part alone as [RotatePart] does. Round holes move round and
// tap holes go with their sink.
func RotateParts(ids []design.ID, by units.Angle) Edit {
	ids = slices.Clone(ids)
	return newEdit(several("Turn", ids), func(d design.Design) (design.Design, error) {
		lead, err := leading(d, ids)
		if err != nil {
			return d, err
		}
		if len(lead) == 1 {
			return RotatePart(lead[0], by).change(d)
		}
		box := geom.EmptyBox()
		for _, id := range lead {
			box = box.Union(extent(d, id))
		}
		if box.Empty() {
			return d, fmt.Errorf("these parts have no points to turn: draw them first")
		}
		about := point(box.Centre())
		d = cloneParts(d)
		for _, id := range lead {
			at, ok := Centre(d, id)
			if !ok {
				continue
			}
			if holes.find(&d, id) == nil {
				turned, err := RotatePart(id, by).change(d)
				if err != nil {
					return d, err
				}
				d = cloneParts(turned)
			}
			shiftPart(&d, id, turnedPoint(at, about, by, about).Sub(at))
		}
		return d, nil
	})
}

// halfTurn is an angle from -180 degrees to 180.
func halfTurn(a units.Angle) units.Angle {
	a %= fullTurn
	switch {
	case a > fullTurn/2:
		return a - fullTurn
	case a < -fullTurn/2:
		return a + fullTurn
	}
	return a
}

// rotate turns the points of a channel, a glass bed or a support.
func rotate(d *design.Design, id design.ID, about design.Point, by units.Angle) {
	chain := func(nodes []design.Node) { copy(nodes, turned(nodes, about, by, about)) }
	region := func(r design.Region) {
		chain(r.Outer)
		for _, island := range r.Islands {
			chain(island)
		}
	}
	for _, c := range d.Channels {
		if c.ID != id {
			continue
		}
		for _, r := range c.Rivers {
			for i := range r.Nodes {
				r.Nodes[i].At = turnedPoint(r.Nodes[i].At, about, by, about)
			}
		}
		for _, r := range c.Regions {
			region(r)
		}
	}
	for _, g := range d.Glass {
		if g.ID == id {
			region(g.Region)
		}
	}
	for _, s := range d.Supports {
		if s.ID == id {
			for i, p := range s.Line {
				s.Line[i] = turnedPoint(p, about, by, about)
			}
		}
	}
}

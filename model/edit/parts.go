package edit

import (
	"fmt"
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// MovePart moves a part of any kind. Tap holes that keep to a sink move along
// and across its centreline and still keep to it.
func MovePart(id design.ID, by design.Point) Edit {
	return newEdit("Move "+nounOf(id), func(d design.Design) (design.Design, error) {
		out := cloneParts(d)
		if !shiftPart(&out, id, by) {
			return d, noPart(id)
		}
		return out, nil
	})
}

// RemovePart takes a part of any kind away. Tap holes that kept to a removed
// sink stay where they are, on their own.
func RemovePart(id design.ID) Edit {
	return newEdit("Remove "+nounOf(id), func(d design.Design) (design.Design, error) {
		if sinkOf(d, id) != nil {
			d = freeTaps(d, id)
		}
		removed := sinks.remove(&d, id) || taps.remove(&d, id) || holes.remove(&d, id) ||
			channels.remove(&d, id) || glass.remove(&d, id) || supports.remove(&d, id)
		if !removed {
			return d, noPart(id)
		}
		d.Extra = d.Extra.WithoutPart(id)
		return d, nil
	})
}

// DuplicatePart adds a copy of a part of any kind, moved by some way, last in
// its list. With a sink go the tap holes that keep to it.
func DuplicatePart(id design.ID, by design.Point) Edit {
	return newEdit("Duplicate "+nounOf(id), func(d design.Design) (design.Design, error) {
		copies := []func(*design.Design, design.ID, design.Point) (design.ID, bool){
			sinks.copyOf, taps.copyOf, holes.copyOf, channels.copyOf, glass.copyOf, supports.copyOf,
		}
		out := cloneParts(d)
		for _, copyOf := range copies {
			fresh, ok := copyOf(&out, id, by)
			if !ok {
				continue
			}
			for _, t := range d.Taps {
				if t.Sink != "" && t.Sink == id {
					moved := cloneTaps(t)
					moved.ID, moved.Sink = NextID(out, taps.prefix), fresh
					out.Taps = append(out.Taps, moved)
				}
			}
			return out, nil
		}
		return d, noPart(id)
	})
}

// copyOf appends a moved copy of the part with this ID under a fresh one. The
// parts of d may be written.
func (k kind[T]) copyOf(d *design.Design, id design.ID, by design.Point) (design.ID, bool) {
	list := k.list(d)
	for i := range *list {
		if *k.id(&(*list)[i]) != id {
			continue
		}
		part := k.clone((*list)[i])
		fresh := NextID(*d, k.prefix)
		*k.id(&part) = fresh
		*list = append(*list, part)
		shiftPart(d, fresh, by)
		return fresh, true
	}
	return "", false
}

func noPart(id design.ID) error {
	return fmt.Errorf("there is no part %q in this design: pick one that is there", id)
}

// shiftPart moves the part with this ID and reports whether it was there. The
// parts of d may be written.
func shiftPart(d *design.Design, id design.ID, by design.Point) bool {
	kind, i := d.Find(id)
	switch kind {
	case design.PartSink:
		d.Sinks[i].At = d.Sinks[i].At.Add(by)
	case design.PartTaps:
		shiftTaps(*d, &d.Taps[i], by)
	case design.PartHole:
		d.Holes[i].At = d.Holes[i].At.Add(by)
	case design.PartChannel:
		shiftChannel(&d.Channels[i], by)
	case design.PartGlass:
		shiftRegion(&d.Glass[i].Region, by)
	case design.PartSupport:
		for j := range d.Supports[i].Line {
			d.Supports[i].Line[j] = d.Supports[i].Line[j].Add(by)
		}
	}
	return kind != design.NoPart
}

// shiftTaps moves a set of tap holes: one that keeps to a sink by the offset
// from its centreline and the set-back from the edge behind it.
func shiftTaps(d design.Design, t *design.TapSet, by design.Point) {
	sink := sinkOf(d, t.Sink)
	if t.Sink == "" || sink == nil {
		t.At = t.At.Add(by)
		return
	}
	along := vec(by).Turn(-sink.Rotation.Radians())
	t.Offset += units.FromMM(along.X)
	t.SetBack -= units.FromMM(along.Y)
}

func shiftChannel(c *design.Channel, by design.Point) {
	for i := range c.Rivers {
		for j := range c.Rivers[i].Nodes {
			c.Rivers[i].Nodes[j].At = c.Rivers[i].Nodes[j].At.Add(by)
		}
	}
	for i := range c.Regions {
		shiftRegion(&c.Regions[i], by)
	}
}

func shiftRegion(r *design.Region, by design.Point) {
	shiftChain(r.Outer, by)
	for _, island := range r.Islands {
		shiftChain(island, by)
	}
}

// shiftChain moves a whole chain. Control points that no spline uses stay 0.
func shiftChain(nodes []design.Node, by design.Point) {
	for i := range nodes {
		nodes[i].At = nodes[i].At.Add(by)
		if nodes[i].Edge.Curve == design.CurveSpline {
			nodes[i].Edge.C1 = nodes[i].Edge.C1.Add(by)
			nodes[i].Edge.C2 = nodes[i].Edge.C2.Add(by)
		}
	}
}

// FreeTaps lets a set of tap holes go from its sink; it stays where it is.
func FreeTaps(id design.ID) Edit {
	return taps.change("Free tap holes", id, func(d design.Design, t *design.TapSet) error {
		if t.Sink == "" {
			return fmt.Errorf("these tap holes keep to no sink already")
		}
		release(d, t)
		return nil
	})
}

// freeTaps lets every set of tap holes that keeps to this sink go.
func freeTaps(d design.Design, sink design.ID) design.Design {
	cloned := false
	for i := range d.Taps {
		if d.Taps[i].Sink != sink {
			continue
		}
		if !cloned {
			d.Taps, cloned = cloneAll(d.Taps, cloneTaps), true
		}
		release(d, &d.Taps[i])
	}
	return d
}

// release cuts the relation of a set of tap holes to its sink and writes the
// place where it stood.
func release(d design.Design, t *design.TapSet) {
	t.At, t.Rotation = tapsPlace(d, *t)
	t.Sink, t.Offset, t.SetBack = "", 0, 0
}

// lastCrossing is how far the ray from p along the unit vector dir runs to its
// last crossing of a closed chain, corners untreated; 0 when it meets none.
// Curves are walked in steps of 1/64 of the edge and straight between.
func lastCrossing(nodes []design.Node, p, dir geom.Vec) float64 {
	const steps = 64
	last := 0.0
	for i := range nodes {
		s := spanOf(nodes, i)
		n := steps
		if s.kind == design.CurveStraight {
			n = 1
		}
		from, curve := s.a, s.curve()
		for k := 1; k <= n; k++ {
			to := s.b
			if k < n {
				to = curve.At(float64(k) / float64(n))
			}
			a, b := dir.Cross(from.Sub(p)), dir.Cross(to.Sub(p))
			if (a >= 0) != (b >= 0) {
				last = math.Max(last, from.Lerp(to, a/(a-b)).Sub(p).Dot(dir))
			}
			from = to
		}
	}
	return last
}

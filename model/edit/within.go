package edit

import (
	"fmt"
	"reflect"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
)

// newEdit names an edit by hand, which keeps what relations it can, and holds
// its result to the bounds of a document.
func newEdit(name string, f func(design.Design) (design.Design, error)) Edit {
	return finished(Edit{Name: name, change: f, byHand: true})
}

// keepingEdit names an edit that moves parts by a rule of its own, not by
// hand: what is held follows its relations instead.
func keepingEdit(name string, f func(design.Design) (design.Design, error)) Edit {
	return finished(Edit{Name: name, change: f, carries: true})
}

func finished(e Edit) Edit {
	e.Apply = func(d design.Design) (design.Design, error) {
		out, err := e.change(d)
		if err != nil {
			return d, err
		}
		return settled(d, out, e.byHand)
	}
	return e
}

// settled is a changed design with its relations kept, if it is within the
// bounds of a document.
func settled(before, after design.Design, byHand bool) (design.Design, error) {
	if len(after.Relations) > 0 {
		after.Relations = withoutGone(before, after)
		if byHand {
			after.Relations = released(before, after)
		}
		after = hold(after)
		if laid := alongBanks(before, after); !reflect.DeepEqual(laid.Glass, after.Glass) {
			after = hold(laid) // what keeps to the glass
		}
	}
	if err := within(after); err != nil {
		return before, err
	}
	return after, nil
}

// Together is several edits as one step. Parts that move together keep their
// relations among each other: only at the end is looked at what still holds.
func Together(name string, edits ...Edit) Edit {
	edits = slices.Clone(edits)
	return Edit{Name: name, Apply: func(d design.Design) (design.Design, error) {
		from, out := d, d
		for _, e := range edits {
			var err error
			if e.change != nil && e.byHand {
				if out, err = e.change(out); err != nil {
					return d, err
				}
				continue
			}
			if out, err = settled(from, out, true); err != nil {
				return d, err
			}
			if out, err = e.Apply(out); err != nil {
				return d, err
			}
			from = out
		}
		out, err := settled(from, out, true)
		if err != nil {
			return d, err
		}
		return out, nil
	}}
}

// within refuses a design that a file could not hold.
func within(d design.Design) error {
	count := 0
	var err error
	see := func(part design.ID, p design.Point) {
		count++
		if err == nil && (checkBound("", p.X) != nil || checkBound("", p.Y) != nil) {
			err = fmt.Errorf("%s would reach %s, %s mm, beyond the %s mm that a drawing holds: "+
				"keep it nearer", partName(part), mm(p.X), mm(p.Y),
				mm(units.MaxLength))
		}
	}
	eachPoint(d, see)
	if err != nil {
		return err
	}
	if count > design.MaxPoints {
		return fmt.Errorf("the design would have %d points, beyond the %d that it may hold: "+
			"use fewer, or splines in place of many short edges", count, design.MaxPoints)
	}
	return nil
}

// points is how many points a design has.
func points(d design.Design) int {
	n := 0
	eachPoint(d, func(design.ID, design.Point) { n++ })
	return n
}

// eachPoint shows every point of a design to see, with its part.
func eachPoint(d design.Design, see func(design.ID, design.Point)) {
	chain := func(part design.ID, nodes []design.Node) {
		for _, n := range nodes {
			see(part, n.At)
			if n.Edge.C1 != (design.Point{}) || n.Edge.C2 != (design.Point{}) {
				see(part, n.Edge.C1)
				see(part, n.Edge.C2)
			}
		}
	}
	region := func(part design.ID, r design.Region) {
		chain(part, r.Outer)
		for _, island := range r.Islands {
			chain(part, island)
		}
	}
	line := func(part design.ID, ps []design.Point) {
		for _, p := range ps {
			see(part, p)
		}
	}
	chain("", d.Outline.Nodes)
	for _, s := range d.Sinks {
		see(s.ID, s.At)
		chain(s.ID, s.Shape.Path)
	}
	for _, t := range d.Taps {
		see(t.ID, t.At)
		line(t.ID, t.Holes)
	}
	for _, h := range d.Holes {
		see(h.ID, h.At)
	}
	for _, c := range d.Channels {
		for _, r := range c.Rivers {
			for _, n := range r.Nodes {
				see(c.ID, n.At)
			}
		}
		for _, r := range c.Regions {
			region(c.ID, r)
		}
	}
	for _, g := range d.Glass {
		region(g.ID, g.Region)
	}
	for _, s := range d.Supports {
		line(s.ID, s.Line)
	}
}

// mm writes a length in millimetres, exactly.
func mm(l units.Length) string { return units.DecimalMM(l) }

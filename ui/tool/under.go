package tool

import (
	"cmp"
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// under lists what lies at a place, what a press takes first: handles of what
// is selected, then the small over the large and the top over what is below it.
func (h *Hand) under(p Pointer) []grip {
	d, s := h.s.Design(), h.s.Report().Solid
	_, seen := h.s.Seen() // what is hidden is not taken
	var out []grip
	for _, g := range h.grips(p.PerMM) {
		if at, ok := g.anchor(d, s, p.PerMM); ok && at.Dist(p.At) <= p.reach(reachGrip) {
			out = append(out, g)
		}
	}
	slices.SortStableFunc(out, func(a, b grip) int {
		pa, _ := a.anchor(d, s, p.PerMM)
		pb, _ := b.anchor(d, s, p.PerMM)
		return cmp.Compare(pa.Dist(p.At), pb.Dist(p.At))
	})
	add := func(gs ...grip) {
		for _, g := range gs {
			if !slices.Contains(out, g) {
				out = append(out, g)
			}
		}
	}
	if g, ok := cornerUnder(d, seen.Solid, p); ok {
		add(g)
	}
	add(holesUnder(seen.Solid, p)...)
	if g, ok := edgeUnder(seen.Solid, p); ok {
		add(g)
	}
	add(inlaysUnder(seen.Solid, p)...)
	near, below := supportsUnder(seen.Solid, p)
	add(near...)
	if s.Outline.Contains(p.At) {
		add(grip{kind: gripTop})
	}
	add(below...)
	return out
}

// cornerUnder is the outline's corner at a place: its node, or anywhere on the
// cut that rounds or chamfers it.
func cornerUnder(d design.Design, s slab.Solid, p Pointer) (grip, bool) {
	best, found := p.reach(reachGrip), -1
	for i, n := range d.Outline.Nodes {
		if dist := vec(n.At).Dist(p.At); dist <= best {
			best, found = dist, i
		}
	}
	if found < 0 {
		best = p.reach(reachEdge)
		for _, side := range s.Sides {
			if side.Corner < 0 {
				continue
			}
			if dist, _ := distance(p.At, side.Points, false); dist <= best {
				best, found = dist, side.Corner
			}
		}
	}
	return grip{kind: gripCorner, node: found}, found >= 0
}

// edgeUnder is the outline's edge at a place.
func edgeUnder(s slab.Solid, p Pointer) (grip, bool) {
	best, found := p.reach(reachEdge), -1
	for _, side := range s.Sides {
		if side.Corner >= 0 {
			continue
		}
		if dist, _ := distance(p.At, side.Points, false); dist <= best {
			best, found = dist, side.Node
		}
	}
	return grip{kind: gripEdge, node: found}, found >= 0
}

// sized is a grip and how large the thing is.
type sized struct {
	grip grip
	area float64
}

// holesUnder are the sinks, taps and holes at a place, the smallest first.
func holesUnder(s slab.Solid, p Pointer) []grip {
	var hits []sized
	hit := func(id design.ID, l geom.Loop) {
		near, _ := distance(p.At, l, true)
		if l.Contains(p.At) || near <= p.reach(reachEdge) {
			hits = append(hits, sized{grip{kind: gripPart, part: id}, math.Abs(l.Area())})
		}
	}
	for _, o := range s.Openings {
		hit(o.Part, o.Loop)
	}
	for _, b := range s.Bowls {
		hit(b.Part, b.Loop)
	}
	return smallFirst(hits)
}

// inlaysUnder are the channels and glass beds at a place, the smallest first.
func inlaysUnder(s slab.Solid, p Pointer) []grip {
	var hits []sized
	hit := func(id design.ID, loops []geom.Loop) {
		if inside(p.At, loops) || rim(p.At, loops) <= p.reach(reachEdge) {
			hits = append(hits, sized{grip{kind: gripPart, part: id}, area(loops)})
		}
	}
	for _, r := range s.Recesses {
		hit(r.Part, r.Loops)
	}
	for _, b := range s.Beds {
		hit(b.Part, b.Loops)
	}
	return smallFirst(hits)
}

// supportsUnder are the supports whose dashed rim or line is at a place, and
// those that lie below it.
func supportsUnder(s slab.Solid, p Pointer) (near, below []grip) {
	var close, under []sized
	for _, b := range s.Bearings {
		hit := sized{grip{kind: gripPart, part: b.Part}, area(b.Loops)}
		line, _ := distance(p.At, b.Line, b.Patch)
		switch {
		case math.Min(line, rim(p.At, b.Loops)) <= p.reach(reachEdge):
			close = append(close, hit)
		case inside(p.At, b.Loops):
			under = append(under, hit)
		}
	}
	return smallFirst(close), smallFirst(under)
}

func smallFirst(hits []sized) []grip {
	slices.SortStableFunc(hits, func(a, b sized) int { return cmp.Compare(a.area, b.area) })
	out := make([]grip, len(hits))
	for i, h := range hits {
		out[i] = h.grip
	}
	return out
}

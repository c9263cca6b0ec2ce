package slab

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

func (r *resolver) resolveChannel(i int, c design.Channel) {
	field := fmt.Sprintf("channels[%d]", i)
	out := Recess{Part: c.ID, Depth: clamp(c.Depth.MM(), 0, reach), Fill: c.Fill}
	var loops []geom.Loop
	for k, g := range c.Regions {
		loops = append(loops, r.region(fmt.Sprintf("%s.regions[%d]", field, k), c.ID, g)...)
	}
	for k, v := range c.Rivers {
		band, ok := riverBand(v)
		if !ok {
			continue
		}
		start := r.bandEnd(v.Start, band, false)
		end := r.bandEnd(v.End, band, true)
		if at, folded := band.Fold(); folded {
			r.fault(design.RuleFold, c.ID, fmt.Sprintf("%s.rivers[%d]", field, k), at,
				"the river bends more sharply here than half its width; make it narrower or the bend wider")
		}
		flat := band.Flatten(r.tolerance)
		loops = append(loops, flat.Loops(start, end)...)
		out.Centrelines = append(out.Centrelines, flat.Centreline())
		out.length += band.Length()
	}
	out.Loops = r.sweep.Union(loops...)
	spent := r.sweep.Spent()
	fence := geom.NewFence(out.Loops...)
	if len(out.Loops) > 0 {
		r.onTop(c.ID, "channel", out.Loops[0][0], out.Loops[0][0], fence)
	}
	if len(loops) > 0 && spent {
		r.fault(design.RuleFold, c.ID, field, loops[0][0],
			"the channel folds over itself too often to be united: use fewer nodes or smaller widths")
	} else {
		out.Open = r.openEnds(fence)
	}
	r.solid.Recesses = append(r.solid.Recesses, out)
}

// riverBand is the band of a river; nodes on top of the one before are left out.
func riverBand(v design.River) (geom.Band, bool) {
	var points []geom.Vec
	var widths []float64
	for _, n := range some(v.Nodes, maxPoints) {
		p := vec(n.At)
		if k := len(points); k > 0 && p.Dist(points[k-1]) < 1e-6 {
			continue
		}
		points = append(points, p)
		widths = append(widths, clamp(n.Width.MM(), 0, reach))
	}
	return geom.NewBand(points, widths)
}

// bandEnd turns a river's end into a band's.
func (r *resolver) bandEnd(e design.RiverEnd, b geom.Band, last bool) geom.BandEnd {
	switch e {
	case design.EndRound:
		return geom.BandEnd{Round: true}
	case design.EndOpen:
		left, right, dir := b.Ends(last)
		return geom.BandEnd{Extend: r.wayOut(left, right, dir)}
	}
	return geom.BandEnd{}
}

// pastEdge is how far beyond the edge an open end runs, so that nothing of the edge
// is left by rounding; over a narrower gap it ends in the middle.
const pastEdge = 1.0

// wayOut is how far the cross line from left to right must run on in the direction
// dir until none of it lies on the top: 0 when none does at the start.
func (r *resolver) wayOut(left, right, dir geom.Vec) float64 {
	if r.fence == nil {
		return 0
	}
	// On its way the line is on the top where an end of it is, and where the outline
	// crosses it.
	var on []stay
	for _, p := range [2]geom.Vec{left, right} {
		met := r.fence.Ray(p, dir)
		if r.fence.Contains(p) {
			met = append([]float64{0}, met...)
		}
		for i := 1; i < len(met); i += 2 {
			on = append(on, stay{met[i-1], met[i]})
		}
	}
	across := right.Sub(left)
	width := across.Norm()
	across = across.Unit()
	for i, a := range r.solid.Outline {
		b := r.solid.Outline[(i+1)%len(r.solid.Outline)]
		a, b := a.Sub(left), b.Sub(left)
		s, t, ok := between(a.Dot(across), b.Dot(across), width)
		if !ok {
			continue
		}
		x, y := a.Lerp(b, s).Dot(dir), a.Lerp(b, t).Dot(dir)
		on = append(on, stay{math.Min(x, y), math.Max(x, y)})
	}
	slices.SortFunc(on, func(a, b stay) int { return cmp.Compare(a.from, b.from) })
	far, next := 0.0, math.Inf(1)
	for _, s := range on {
		if s.from > far+1e-6 {
			next = s.from
			break
		}
		far = math.Max(far, s.to)
	}
	if far == 0 {
		return 0
	}
	return far + math.Min(pastEdge, (next-far)/2)
}

// stay is a part of a line's way.
type stay struct{ from, to float64 }

// between gives which part of the way from x to y, as fractions of it, lies
// between 0 and width; false when none does.
func between(x, y, width float64) (s, t float64, ok bool) {
	if math.Max(x, y) <= 0 || math.Min(x, y) >= width {
		return 0, 0, false
	}
	if x == y {
		return 0, 1, true
	}
	s, t = (0-x)/(y-x), (width-x)/(y-x)
	if s > t {
		s, t = t, s
	}
	return clamp(s, 0, 1), clamp(t, 0, 1), true
}

// region gives a region less its islands as clean loops.
func (r *resolver) region(field string, part design.ID, g design.Region) []geom.Loop {
	outer := r.chainLoop(field+".outer", part, g.Outer, false)
	if len(outer) < 3 {
		return nil
	}
	if len(g.Islands) == 0 {
		return []geom.Loop{outer}
	}
	fence := geom.NewFence(outer)
	var islands []geom.Loop
	for k, nodes := range g.Islands {
		l := r.chainLoop(fmt.Sprintf("%s.islands[%d]", field, k), part, nodes, true)
		if len(l) < 3 {
			continue
		}
		islands = append(islands, l)
		if _, _, gap := fence.Clearance(geom.NewFence(l)); gap > 0 && !fence.Contains(l[0]) {
			r.fault(design.RuleOutside, part, fmt.Sprintf("%s.islands[%d]", field, k), l[0],
				"the island lies outside its region; move it inside or remove it")
		}
	}
	r.sweep.Reset(outer.Bounds().Centre())
	r.sweep.Add(0, outer)
	for _, l := range islands {
		r.sweep.Add(1, l)
	}
	return r.sweep.Loops(func(layers uint64) bool { return layers == 1 })
}

// chainLoop is the loop of a chain, counter-clockwise; empty when it has no area.
// An island may run either way.
func (r *resolver) chainLoop(field string, part design.ID, nodes []design.Node, island bool) geom.Loop {
	pieces, misfits := chain(nodes)
	r.misfits(field, part, nodes, misfits, geom.Line{})
	loop, _ := loopOf(r.flat(pieceCurves(pieces), design.Profile{}))
	if len(nodes) > 0 {
		seen := loop
		if island && loop.Area() < 0 {
			seen = loop.Reversed()
		}
		r.chainFaults(field, part, "the chain", seen, vec(nodes[0].At))
	}
	switch area := loop.Area(); {
	case area == 0:
		return nil
	case area < 0:
		return loop.Reversed()
	}
	return loop
}

// chainFaults reports what is wrong with a closed chain inside the top.
func (r *resolver) chainFaults(field string, part design.ID, name string, loop geom.Loop, at geom.Vec) {
	switch area := loop.Area(); {
	case math.Abs(area) < leastArea:
		r.fault(design.RuleShape, part, field, at, "%s encloses no area: move its nodes apart", name)
		return
	case area < 0:
		r.fault(design.RuleDirection, part, field, at,
			"%s runs clockwise: reverse the order of its nodes; until then it is taken the other way round", name)
	}
	r.crossing(field, part, name, loop)
}

func (r *resolver) resolveBed(i int, b design.GlassBed) {
	loops := r.sweep.Union(r.region(fmt.Sprintf("glass_beds[%d].region", i), b.ID, b.Region)...)
	if len(loops) > 0 {
		r.onTop(b.ID, "glass bed", loops[0][0], loops[0][0], geom.NewFence(loops...))
	}
	r.solid.Beds = append(r.solid.Beds, Bed{
		Part:     b.ID,
		Loops:    loops,
		Grain:    b.Grain.MM(),
		Depth:    clamp(b.Depth.MM(), 0, reach),
		Coverage: clamp(b.Coverage.Fraction(), 0, 1),
	})
}

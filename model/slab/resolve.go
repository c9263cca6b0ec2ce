package slab

import (
	"fmt"
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// maxOpenings bounds the holes of one top, maxVertices the vertices that the
// flattening of all chains aims at: beyond, steps grow coarser, areas stay exact.
// maxPoints bounds the points of one chain.
const (
	maxOpenings = 600
	maxVertices = 60_000
	maxPoints   = design.MaxPoints
)

// Resolve places every part of a design and flattens its curves. It never
// fails: what can't be placed is left out or placed as well as may be, and
// stands in Faults.
func Resolve(d design.Design) Solid {
	r := resolver{d: d, tolerance: Tolerance, curves: map[int][]geom.Curve{}, solid: Solid{Thickness: clamp(d.Thickness.MM(), 0, reach)}}
	w := drawers.Get().(*drawer)
	defer drawers.Put(w)
	r.sweep = &w.sweep
	r.most = max(2, maxVertices/max(1, points(d)))
	r.resolveOutline()
	for i, k := range some(d.Sinks, design.MaxParts) {
		r.resolveSink(i, k)
	}
	for i, t := range some(d.Taps, design.MaxParts) {
		r.resolveTaps(i, t)
	}
	for _, h := range some(d.Holes, design.MaxParts) {
		r.resolveHole(h)
	}
	for i, c := range some(d.Channels, design.MaxInlays) {
		r.resolveChannel(i, c)
	}
	for i, b := range some(d.Glass, design.MaxInlays) {
		r.resolveBed(i, b)
	}
	for _, p := range some(d.Supports, design.MaxParts) {
		r.solid.Bearings = append(r.solid.Bearings, r.resolveSupport(p))
	}
	r.solid.body = r.body()
	return r.solid
}

// some is the first most of a list; what is beyond has a fault of its own.
func some[T any](list []T, most int) []T { return list[:min(len(list), most)] }

// resolver is a resolving under way.
type resolver struct {
	d         design.Design
	solid     Solid
	rings     []*ring // of the openings
	top       *ring
	fence     *geom.Fence // of the outline
	most      int         // steps of one curve
	tolerance float64     // of flattening, Tolerance or less
	sweep     *geom.Sweep
	fences    []*geom.Fence        // of the openings
	full      bool                 // no more openings are taken
	curves    map[int][]geom.Curve // of the openings by index, and of the outline
}

// points counts the points of a design's chains and rivers.
func points(d design.Design) int {
	n := len(d.Outline.Nodes)
	region := func(g design.Region) {
		n += len(g.Outer)
		for _, l := range g.Islands {
			n += len(l)
		}
	}
	for _, k := range d.Sinks {
		n += len(k.Shape.Path) + 4
	}
	for _, c := range d.Channels {
		for _, v := range c.Rivers {
			n += len(v.Nodes)
		}
		for _, g := range c.Regions {
			region(g)
		}
	}
	for _, b := range d.Glass {
		region(b.Region)
	}
	return n
}

// fault notes what is wrong, at a place in millimetres.
func (r *resolver) fault(rule design.Rule, part design.ID, field string, at geom.Vec, detail string, args ...any) {
	r.solid.Faults = append(r.solid.Faults, design.Fault{
		Rule: rule, Part: part, Field: field,
		At:     design.Point{X: units.FromMM(at.X), Y: units.FromMM(at.Y)},
		Detail: fmt.Sprintf(detail, args...),
	})
}

// body gathers what sections are cut from.
func (r *resolver) body() *body {
	b := &body{
		thickness: r.solid.Thickness,
		outline:   r.top,
		openings:  r.rings,
		curves:    r.curves,
		fence:     r.fence,
		fences:    r.fences,
	}
	if r.top == nil || b.thickness <= 0 {
		return nil
	}
	b.centre = r.solid.Outline.Bounds().Centre()
	for _, c := range r.solid.Recesses {
		b.recesses = append(b.recesses, recessLoops{math.Min(c.Depth, b.thickness), c.Loops})
	}
	b.addProfiles(r.top)
	for _, o := range r.rings {
		b.addProfiles(o)
	}
	return b
}

// flat flattens curves end to end into the runs of a ring.
func (r *resolver) flat(curves []geom.Curve, profile design.Profile) []ringRun {
	runs := make([]ringRun, len(curves))
	for i, c := range curves {
		runs[i] = ringRun{geom.FlattenCoarsely(nil, c, r.fineness(c, profile), r.most), c.Length(), profile}
	}
	return runs
}

// fineness is the tolerance for flattening a curve with a profile. Where the
// profile draws in past the centre of a bend, all steps of its strip cross each
// other: there are then no more of them than need be.
func (r *resolver) fineness(c geom.Curve, profile design.Profile) float64 {
	size, _ := profileSpan(profile, r.solid.Thickness)
	if r.tolerance == Tolerance || !(size > 0) {
		return r.tolerance
	}
	const looks = 32
	for i := range looks + 1 {
		if math.Abs(c.Curvature(float64(i)/looks))*size > 0.9 {
			return Tolerance
		}
	}
	return r.tolerance
}

// loopOf is the loop of a ring's runs and their exact length.
func loopOf(runs []ringRun) (loop geom.Loop, length float64) {
	n := 0
	for _, u := range runs {
		n += len(u.vertices) - 1
	}
	loop = make(geom.Loop, 0, n)
	for _, u := range runs {
		for _, v := range u.vertices[:len(u.vertices)-1] {
			loop = append(loop, v.P)
		}
		length += u.length
	}
	return loop, length
}

// reversed is the runs run the other way.
func reversed(runs []ringRun) []ringRun {
	out := make([]ringRun, len(runs))
	for i, u := range runs {
		vs := make([]geom.Vertex, len(u.vertices))
		for k, v := range u.vertices {
			vs[len(vs)-1-k] = geom.Vertex{P: v.P, Off: v.Off.Mul(-1)}
		}
		out[len(out)-1-i] = ringRun{vs, u.length, u.profile}
	}
	return out
}

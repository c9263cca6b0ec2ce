package slab

import (
	"slices"

	"example.org/castwright/model/geom"
)

// cutoutPerimeter is the length of the openings' boundaries where they bound the
// top: inside the outline and outside every other opening. An opening that
// touches nothing counts with the length of its exact curves; of one that does,
// the share of its flattened boundary is taken.
func (s Solid) cutoutPerimeter() float64 {
	if len(s.Openings) == 0 || len(s.Outline) == 0 {
		return 0
	}
	top := geom.NewFence(s.Outline)
	fences := make([]*geom.Fence, len(s.Openings))
	for i, o := range s.Openings {
		fences[i] = geom.NewFence(o.Loop)
	}
	sum := 0.0
	for i, o := range s.Openings {
		var others, earlier []*geom.Fence
		for k, f := range fences {
			if k != i && f.Bounds().Touches(fences[i].Bounds()) {
				others = append(others, f)
				if k < i {
					earlier = append(earlier, f)
				}
			}
		}
		if apart(fences[i], top, others) {
			if bounds(o.Loop[0], o.Loop[0], top, others, nil) {
				sum += o.Perimeter
			}
			continue
		}
		all, bounding := 0.0, 0.0
		for k, a := range o.Loop {
			b := o.Loop[(k+1)%len(o.Loop)]
			all += a.Dist(b)
			bounding += boundingLength(a, b, top, others, earlier)
		}
		if all > 0 {
			sum += o.Perimeter * (bounding / all)
		}
	}
	return sum
}

// beside is how far outside an opening's edge concrete is looked for.
const beside = 1e-4

// boundingLength is the length of an opening's edge from a to b that has concrete
// beside it. What lies along an earlier opening's edge has been counted there.
func boundingLength(a, b geom.Vec, top *geom.Fence, others, earlier []*geom.Fence) float64 {
	cuts := top.Crossings(a, b)
	for _, f := range others {
		cuts = append(cuts, f.Crossings(a, b)...)
	}
	out := b.Sub(a).Unit().Left().Mul(-beside)
	at := func(t float64) bool {
		p := a.Lerp(b, t)
		return bounds(p, p.Add(out), top, others, earlier)
	}
	if len(cuts) == 0 {
		if at(0.5) {
			return a.Dist(b)
		}
		return 0
	}
	cuts = append(cuts, 0, 1)
	slices.Sort(cuts)
	share := 0.0
	for i := 1; i < len(cuts); i++ {
		if cuts[i] > cuts[i-1] && at((cuts[i]+cuts[i-1])/2) {
			share += cuts[i] - cuts[i-1]
		}
	}
	return a.Dist(b) * share
}

// apart reports whether an opening touches neither the outline nor another one.
func apart(f, top *geom.Fence, others []*geom.Fence) bool {
	for _, g := range append(others[:len(others):len(others)], top) {
		if f.Within(g, 2*beside) {
			return false
		}
	}
	return true
}

// bounds reports whether the point p of an opening's edge, just beside which q
// lies outside it, bounds concrete.
func bounds(p, q geom.Vec, top *geom.Fence, others, earlier []*geom.Fence) bool {
	if !top.Contains(q) || slices.ContainsFunc(others, func(f *geom.Fence) bool { return f.Contains(q) }) {
		return false
	}
	return !slices.ContainsFunc(earlier, func(f *geom.Fence) bool {
		_, d := f.Nearest(p)
		return d < 1e-9
	})
}

package slab

import (
	"slices"

	"example.org/castwright/model/geom"
)

// cutoutPerimeter is the length of the openings' boundaries where they bound the
// top: inside the outline and outside every other opening. An opening that
// touches nothing counts with the length of its exact curves; of one that does,
// the boundary is followed piece by piece on curves flattened a hundred times as
// finely.
func (s Solid) cutoutPerimeter() float64 {
	b := s.body
	if len(s.Openings) == 0 || b == nil {
		return 0
	}
	top, fences := b.fence, b.fences
	fine := fineFences{curves: b.curves, fences: map[int]*geom.Fence{}}
	sum := 0.0
	for i, o := range s.Openings {
		var others []int
		for k, f := range fences {
			if k != i && f.Bounds().Touches(fences[i].Bounds()) {
				others = append(others, k)
			}
		}
		if apart(fences, i, top, others) {
			if p := o.Loop[0]; bounds(p, p, top, pick(fences, others), nil) {
				sum += o.Perimeter
			}
			continue
		}
		var near, earlier []*geom.Fence
		for _, k := range others {
			near = append(near, fine.of(k))
			if k < i {
				earlier = append(earlier, fine.of(k))
			}
		}
		loop := fine.loop(i)
		all, bounding := 0.0, 0.0
		for k, a := range loop {
			b := loop[(k+1)%len(loop)]
			all += a.Dist(b)
			bounding += boundingLength(a, b, fine.of(wholeTop), near, earlier)
		}
		if all > 0 {
			sum += o.Perimeter * (bounding / all)
		}
	}
	return sum
}

func pick(fences []*geom.Fence, which []int) []*geom.Fence {
	out := make([]*geom.Fence, len(which))
	for i, k := range which {
		out[i] = fences[k]
	}
	return out
}

// wholeTop stands for the outline among the openings.
const wholeTop = -1

// fineFences are the outline and the openings on fine steps, as they are needed.
type fineFences struct {
	curves map[int][]geom.Curve
	fences map[int]*geom.Fence
}

func (f *fineFences) loop(i int) geom.Loop {
	var out geom.Loop
	var vs []geom.Vertex
	for _, c := range f.curves[i] {
		vs = geom.FlattenCoarsely(vs[:0], c, Tolerance/100, 40_000/len(f.curves[i]))
		for _, v := range vs[:len(vs)-1] {
			out = append(out, v.P)
		}
	}
	if out.Area() < 0 {
		return out.Reversed()
	}
	return out
}

func (f *fineFences) of(i int) *geom.Fence {
	if f.fences[i] == nil {
		f.fences[i] = geom.NewFence(f.loop(i))
	}
	return f.fences[i]
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

// apart reports whether the opening i touches neither the outline nor another
// one.
func apart(fences []*geom.Fence, i int, top *geom.Fence, others []int) bool {
	if fences[i].Within(top, within) {
		return false
	}
	return !slices.ContainsFunc(others, func(k int) bool { return fences[i].Within(fences[k], within) })
}

// bounds reports whether the point p of an opening's edge, just beside which q
// lies outside it, bounds concrete.
func bounds(p, q geom.Vec, top *geom.Fence, others, earlier []*geom.Fence) bool {
	if !top.Contains(q) || slices.ContainsFunc(others, func(f *geom.Fence) bool { return f.Contains(q) }) {
		return false
	}
	return !slices.ContainsFunc(earlier, func(f *geom.Fence) bool { return f.Near(p, 1e-9) })
}

package slab

import (
	"slices"

	"example.org/castwright/model/geom"
)

// cutoutPerimeter is the length of the openings' boundaries where they bound the
// top: inside the outline and outside every other opening. An opening that touches
// nothing counts with the length of its exact curves; the curves of one that does
// are divided until every piece lies clear of the others' curves or along them.
func (s Solid) cutoutPerimeter() float64 {
	b := s.body
	if len(s.Openings) == 0 || b == nil {
		return 0
	}
	top, fences := b.fence, b.fences
	rims := map[int]*rim{}
	rimOf := func(i int) *rim {
		if rims[i] == nil {
			f := top
			if i != wholeTop {
				f = fences[i]
			}
			rims[i] = newRim(b.curves[i], f)
		}
		return rims[i]
	}
	sum := 0.0
	for i, o := range s.Openings {
		var others []int
		for k, f := range fences {
			if k != i && f.Bounds().Touches(fences[i].Bounds()) {
				others = append(others, k)
			}
		}
		if apart(fences, i, top, others) {
			if p := o.Loop[0]; top.Contains(p) && !slices.ContainsFunc(others, func(k int) bool { return fences[k].Contains(p) }) {
				sum += o.Perimeter
			}
			continue
		}
		beside := []neighbour{{rim: rimOf(wholeTop), outline: true}}
		for _, k := range others {
			beside = append(beside, neighbour{rim: rimOf(k), earlier: k < i})
		}
		bounding, all := rimOf(i).bounding(beside)
		if all > 0 {
			sum += o.Perimeter * (bounding / all)
		}
	}
	return sum
}

// wholeTop stands for the outline among the openings.
const wholeTop = -1

// apart reports whether the opening i touches neither the outline nor another
// one.
func apart(fences []*geom.Fence, i int, top *geom.Fence, others []int) bool {
	if fences[i].Within(top, within) {
		return false
	}
	return !slices.ContainsFunc(others, func(k int) bool { return fences[i].Within(fences[k], within) })
}

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
	sum, pairs := 0.0, 0
	for i, o := range s.Openings {
		var others []int
		for k, f := range fences {
			if k != i && f.Bounds().Touches(fences[i].Bounds()) {
				others = append(others, k)
			}
		}
		if pairs += len(others); pairs > maxBeside {
			return s.flatPerimeter()
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

// maxBeside is how many openings may lie beside others, each counted, for their
// rims to be divided along exact curves: some hundred pairs take a second.
const maxBeside = 400

// flatPerimeter is the same length along the flattened curves: with U the openings
// together and T the top, half of what the boundaries of U and of the part of U in T
// have more than that of the part of U outside T. It is the sum of all rims when
// they cross too often even for that.
func (s Solid) flatPerimeter() float64 {
	const top, openings = 1 << 0, 1 << 1
	var sweep geom.Sweep
	length := func(keep func(uint64) bool) float64 {
		sweep.Reset(s.Outline.Bounds().Centre())
		sweep.Add(0, s.Outline)
		for _, o := range s.Openings {
			sweep.Add(1, o.Loop)
		}
		sum := 0.0
		for _, l := range sweep.Loops(keep) {
			sum += l.Perimeter()
		}
		return sum
	}
	inside := length(func(l uint64) bool { return l == top|openings })
	all := length(func(l uint64) bool { return l&openings != 0 })
	outside := length(func(l uint64) bool { return l == openings })
	if !sweep.Spent() {
		return (inside + all - outside) / 2
	}
	sum := 0.0
	for _, o := range s.Openings {
		sum += o.Perimeter
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

package template

import (
	"math"
	"sort"

	"example.org/castwright/model/geom"
)

const (
	minArea = 1.0 // mm2: smaller outlines are dropped
	// maxTests bounds how often a point is held against a side of an outline
	// while outlines are sorted into each other.
	maxTests = 400_000_000
	// redrawn is how far the straight lines that an outline which crosses itself
	// is redrawn with may lie off it, mm.
	redrawn = 0.01
)

// nest sorts closed chains into outlines and the holes directly in them; what
// lies inside a hole is an outline again.
func nest(chains []ring, n *notes) ([]Loop, error) {
	if len(chains) > maxLoops {
		return nil, fail(0, "the drawing has more than %d closed outlines: save only those needed", maxLoops)
	}
	var shapes []shape
	for _, c := range chains {
		s := newShape(c.chain)
		switch {
		case s.box.W() > maxMM || s.box.H() > maxMM:
			return nil, fail(0, "an outline is larger than %g m: check the unit", maxMM/1000)
		case math.Abs(s.box.Min.X) > maxAway || math.Abs(s.box.Min.Y) > maxAway:
			return nil, fail(0, "an outline lies more than %g km from the drawing's origin: move it there", maxAway/1e6)
		}
		for _, s := range s.uncrossed(c.odd, n) {
			if s.area < minArea {
				n.count("dropped %d outline of less than 1 mm2", "dropped %d outlines of less than 1 mm2")
				continue
			}
			shapes = append(shapes, s)
		}
	}
	sort.SliceStable(shapes, func(i, j int) bool { return shapes[i].area > shapes[j].area })
	shapes = withoutTwins(shapes, n)
	tests := 0
	for i := range shapes {
		for j := i - 1; j >= 0; j-- { // the smallest larger one that holds it
			if !shapes[j].mayHold(shapes[i]) {
				continue
			}
			if tests += probes * len(shapes[j].flat); tests > maxTests {
				return nil, fail(0, "the drawing has too many outlines that lie within each other: save only those needed")
			}
			if shapes[j].holds(shapes[i]) {
				shapes[i].parent, shapes[i].level = j, shapes[j].level+1
				break
			}
		}
	}
	var loops []Loop
	place := make([]int, len(shapes))
	for i, s := range shapes {
		if s.level%2 == 0 {
			place[i] = len(loops)
			loops = append(loops, Loop{Nodes: nodes(s.chain), Area: s.area, Perimeter: s.length, Centroid: s.first})
			continue
		}
		l := &loops[place[s.parent]]
		l.Holes = append(l.Holes, nodes(s.chain.reversed()))
		// Centroid holds the first moments so far, about the middle of the
		// outline; a hole's are about its own.
		by := s.box.Centre().Sub(shapes[s.parent].box.Centre())
		l.Centroid = l.Centroid.Sub(s.first).Sub(by.Mul(s.area))
		l.Area -= s.area
	}
	for i, s := range shapes {
		if s.level%2 == 0 {
			l := &loops[place[i]]
			l.Centroid = l.Centroid.Mul(1 / l.Area).Add(s.box.Centre())
		}
	}
	return loops, nil
}

// shape is a closed chain, counter-clockwise, with its measures.
type shape struct {
	chain         chain
	area, length  float64
	first         geom.Vec // first moments of area about the middle of the box
	flat          geom.Loop
	box           geom.Box
	parent, level int
}

func newShape(c chain) shape {
	s := shape{chain: c, parent: -1, flat: c.flat(16)}
	s.box = s.flat.Bounds()
	s.measure()
	return s
}

func (s *shape) measure() {
	origin := s.box.Centre()
	for _, p := range s.chain {
		a, f, l := p.moments(origin)
		s.area += a
		s.first = s.first.Add(f)
		s.length += l
	}
	if s.area < 0 {
		s.area, s.first, s.chain = -s.area, s.first.Mul(-1), s.chain.reversed()
		s.flat = s.flat.Reversed()
	}
}

// flat is a closed chain as points, so many to a curve.
func (c chain) flat(steps int) geom.Loop {
	var out geom.Loop
	for _, p := range c {
		k := 1
		if p.kind != line {
			k = steps
		}
		for i := range k {
			out = append(out, p.at(float64(i)/float64(k)))
		}
	}
	return out
}

// maxCrossed bounds the points of an outline that is held against itself.
const maxCrossed = 60_000

// uncrossed is the shape, or where it crosses itself the shapes that it covers,
// by the even-odd rule or the non-zero one, redrawn by straight lines.
func (s shape) uncrossed(odd bool, n *notes) []shape {
	if len(s.chain) < 2 || len(s.flat) > maxCrossed {
		return []shape{s}
	}
	var sweep geom.Sweep
	if _, crosses := sweep.Crossing(s.flat); !crosses {
		return []shape{s}
	}
	// Flattened finely, thin shapes may turn out not to cross.
	fine := s.chain.flat(stepsFor(s.box))
	if len(fine) > maxCrossed {
		fine = s.flat
	}
	if _, crosses := sweep.Crossing(fine); !crosses {
		return []shape{s}
	}
	middle := s.box.Centre()
	moved := make(geom.Loop, len(fine))
	for i, p := range fine {
		moved[i] = p.Sub(middle)
	}
	var loops []geom.Loop
	if odd {
		loops = sweep.EvenOdd(moved)
	} else {
		loops = sweep.Union(moved)
	}
	if sweep.Spent() {
		n.count("dropped %d outline that crosses itself too often", "dropped %d outlines that cross themselves too often")
		return nil
	}
	n.count("redrew %d outline that crosses itself, by straight lines",
		"redrew %d outlines that cross themselves, by straight lines")
	var out []shape
	for _, l := range loops {
		c := make(chain, len(l))
		for i, p := range l {
			c[i] = span{a: p.Add(middle), b: l[(i+1)%len(l)].Add(middle)}
		}
		if len(c) > 2 {
			out = append(out, newShape(c))
		}
	}
	return out
}

// stepsFor is into how many lines a curve in a box is cut so that they stay
// within [redrawn] of it.
func stepsFor(b geom.Box) int {
	return min(1024, max(16, int(math.Sqrt((b.W()+b.H())/redrawn))))
}

// withoutTwins drops outlines that were drawn twice. The shapes come by area.
func withoutTwins(shapes []shape, n *notes) []shape {
	var out []shape
	for _, s := range shapes {
		twin := false
		for k := len(out) - 1; k >= 0 && out[k].area-s.area < 1e-3+1e-7*s.area; k-- {
			if twin = out[k].like(s); twin {
				break
			}
			if len(out)-k > maxCrowd {
				break
			}
		}
		if twin {
			n.count("dropped %d outline drawn twice", "dropped %d outlines drawn twice")
			continue
		}
		out = append(out, s)
	}
	return out
}

// like reports whether two shapes of about one area are the same drawing.
func (s shape) like(t shape) bool {
	const tol = 1e-3
	if s.box.Min.Dist(t.box.Min) > tol || s.box.Max.Dist(t.box.Max) > tol ||
		math.Abs(s.length-t.length) > tol+1e-7*s.length {
		return false
	}
	step := max(1, len(t.flat)/16)
	for i := 0; i < len(t.flat); i += step {
		best := math.Inf(1)
		for j, a := range s.flat {
			b := s.flat[(j+1)%len(s.flat)]
			best = math.Min(best, t.flat[i].Dist(geom.NearestOnSegment(t.flat[i], a, b)))
		}
		if best > math.Max(tol, 0.01*(s.box.W()+s.box.H())) {
			return false
		}
	}
	return true
}

// probes is how many points of a shape are held against another.
const probes = 8

// mayHold reports whether t's box lies in that of s.
func (s shape) mayHold(t shape) bool { return s.box.Contains(t.box.Min) && s.box.Contains(t.box.Max) }

// holds reports whether most of a few points of t lie inside s.
func (s shape) holds(t shape) bool {
	in, count, step := 0, 0, max(1, len(t.flat)/(probes-1))
	for i := 0; i < len(t.flat); i += step {
		count++
		if s.flat.Contains(t.flat[i]) {
			in++
		}
	}
	return 2*in > count
}

package slab

import (
	"cmp"
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// grownPart is one closed part of a shape that has grown or shrunk.
type grownPart struct {
	curves  []geom.Curve // of its outer boundary, counter-clockwise unless a path runs the other way
	length  float64      // of all boundaries; 0 when it is that of the curves
	islands []geom.Loop  // clockwise: what it has closed round
}

// grown is the parallel body of a shape at a distance, in its place, the largest
// part first: out of a narrow neck, shrinking makes two parts.
func (r *resolver) grown(s design.Shape, by float64, at geom.Vec, turn float64) []grownPart {
	if by == 0 || s.Kind != design.ShapePath {
		if curves := shapeCurves(s, by); len(curves) > 0 {
			return []grownPart{{curves: moved(curves, turn, at)}}
		}
	}
	curves := shapeCurves(s, 0)
	if by == 0 || len(curves) == 0 {
		return nil
	}
	return r.parallelBody(moved(curves, turn, at), by, at)
}

// parallelBody is the parallel body of any closed chain of curves, round at its
// corners: its loop with its strip added or taken off, on finer steps than usual,
// because its boundaries are measured on the steps.
func (r *resolver) parallelBody(curves []geom.Curve, by float64, at geom.Vec) []grownPart {
	runs := make([]ringRun, len(curves))
	for i, c := range curves {
		runs[i] = ringRun{geom.FlattenCoarsely(nil, c, r.tolerance/20, r.most), c.Length(), design.Profile{}}
	}
	loop, _ := loopOf(runs)
	if len(loop) < 3 {
		return nil
	}
	if loop.Area() < 0 == (by < 0) { // the strip lies to the left
		runs = reversed(runs)
	}
	ring := newRing(runs, r.solid.Thickness)
	if ring == nil {
		return nil
	}
	w := drawer{fine: true}
	w.sweep.Reset(at)
	w.outline(ring, layerWhole, layerGone, func(design.Profile) float64 { return math.Abs(by) })
	return parts(w.sweep.Loops(func(layers uint64) bool { return by > 0 || layers == setConcrete }))
}

// parts sorts loops into outer ones, the largest first, and the islands in them.
func parts(loops []geom.Loop) []grownPart {
	var out []grownPart
	var outers []geom.Loop
	for _, l := range loops {
		if l.Area() > leastArea {
			outers = append(outers, l)
		}
	}
	slices.SortStableFunc(outers, func(a, b geom.Loop) int { return cmp.Compare(b.Area(), a.Area()) })
	for _, l := range outers {
		out = append(out, grownPart{curves: lines(l), length: steppedLength(l)})
	}
	for _, l := range loops {
		if l.Area() >= -leastArea {
			continue
		}
		for i := len(outers) - 1; i >= 0; i-- {
			if outers[i].Contains(l[0]) {
				out[i].islands = append(out[i].islands, l)
				out[i].length += steppedLength(l)
				break
			}
		}
	}
	return out
}

// steppedLength is the length of the curves that a flattened loop stands for. Its
// vertices stand off by two thirds of the sagitta, as [geom.Flatten] puts them, so
// that a step that turns by x is longer than its curve by x²/24 of it. A step that
// is long beside its neighbours, or ends in a corner, is a straight edge.
func steppedLength(l geom.Loop) float64 {
	n := len(l)
	step := func(i int) geom.Vec { return l[(i+1)%n].Sub(l[(i+n)%n]) }
	turn := func(i int) float64 { // at the start of step i
		u, v := step((i+n-1)%n), step(i%n)
		return math.Abs(math.Atan2(u.Cross(v), u.Dot(v)))
	}
	sum := 0.0
	for i := range l {
		d := step(i).Norm()
		sum += d
		if d > 2*math.Max(step((i+n-1)%n).Norm(), step((i+1)%n).Norm()) {
			continue
		}
		if x := math.Min(turn(i), turn(i+1)); math.Max(turn(i), turn(i+1)) < 1.2*geom.MaxTurn {
			sum -= d * x * x / 24
		}
	}
	return sum
}

// lines gives the edges of a loop as curves.
func lines(l geom.Loop) []geom.Curve {
	out := make([]geom.Curve, len(l))
	for i, p := range l {
		out[i] = geom.Line{A: p, B: l[(i+1)%len(l)]}
	}
	return out
}

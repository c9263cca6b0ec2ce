package edit

import (
	"fmt"
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// PullEdgeThrough bends edge i into the circular arc from its one end to its
// other through a point; a point in line with the ends makes it straight.
func PullEdgeThrough(i int, p design.Point) Edit {
	return edgeEdit("Bend edge", i, func(s span, e design.Edge) (design.Edge, error) {
		rise, ok := riseThrough(s.a, s.b, vec(p))
		if !ok {
			return e, fmt.Errorf("no arc from end to end passes there: pull the edge to its side, between its ends")
		}
		if err := checkBound("the rise", rise); err != nil {
			return e, err
		}
		e.Curve, e.Rise, e.C1, e.C2 = design.CurveArc, rise, design.Point{}, design.Point{}
		if rise == 0 {
			e.Curve = design.CurveStraight
		}
		return e, nil
	})
}

// riseThrough is the rise of the arc from a to b through p. An angle at the
// circumference over the chord is half of what the rest of the circle sweeps
// (Euclid, Elements, III.20), so with the angle x at p the arc sweeps 2 pi - 2 x
// and its rise is half the chord times the tangent of a quarter of that.
func riseThrough(a, b, p geom.Vec) (units.Length, bool) {
	u, v := a.Sub(p), b.Sub(p)
	chord := b.Sub(a)
	x := math.Atan2(math.Abs(u.Cross(v)), u.Dot(v))
	if chord.Norm() == 0 || u.Norm() == 0 || v.Norm() == 0 || x < 1e-6 {
		return 0, false
	}
	rise := chord.Norm() / 2 * math.Tan((math.Pi-x)/2)
	if rise > units.MaxLength.MM() {
		return 0, false
	}
	return units.FromMM(math.Copysign(rise, chord.Cross(u))), true
}

// maxThrough bounds the points that one edge is drawn through.
const maxThrough = 500

// SplineThrough makes edge i a smooth chain of splines through points, in
// order from its start: the natural cubic spline over the lengths of the
// chords, each span of it one edge with the side and profile of the old one.
func SplineThrough(i int, points []design.Point) Edit {
	points = slices.Clone(points)
	return chainEdit("Draw edge through points", func(nodes []design.Node) ([]design.Node, edgeMap, error) {
		if err := atEdge(nodes, i); err != nil {
			return nil, nil, err
		}
		if len(points) == 0 || len(points) > maxThrough {
			return nil, nil, fmt.Errorf("edge %d: %d points to pass: give 1 to %d", i+1, len(points), maxThrough)
		}
		way := append(append([]design.Point{nodes[i].At}, points...), nodes[(i+1)%len(nodes)].At)
		for k := 1; k < len(way); k++ {
			if way[k] == way[k-1] {
				return nil, nil, fmt.Errorf("edge %d: point %d lies on the one before it: leave it out", i+1, k)
			}
			if err := firstOf(checkBound("a point's x", way[k].X), checkBound("a point's y", way[k].Y)); err != nil {
				return nil, nil, fmt.Errorf("edge %d: %w", i+1, err)
			}
		}
		spans, shares := naturalSpans(way)
		added := make([]design.Node, len(points))
		for k := range added {
			added[k] = design.Node{At: way[k+1], Edge: spans[k+1].edge(nodes[i].Edge)}
		}
		nodes[i].Edge = spans[0].edge(nodes[i].Edge)
		return slices.Insert(nodes, i+1, added...), parted(i, shares...), nil
	})
}

// naturalSpans are the cubics of the natural spline through points, and the
// shares of its length at the inner points.
func naturalSpans(points []design.Point) ([]span, []float64) {
	way := make([]geom.Vec, len(points))
	at := make([]float64, len(points))
	for i, p := range points {
		if way[i] = vec(p); i > 0 {
			at[i] = at[i-1] + way[i].Dist(way[i-1])
		}
	}
	natural := geom.NewNatural(at, way)
	spans := make([]span, len(way)-1)
	lengths := make([]float64, len(way))
	_, leave, _ := natural.At(at[0])
	for i := range spans {
		h := at[i+1] - at[i]
		_, arrive, _ := natural.At(at[i+1])
		// A cubic's derivative at its ends is three times its handles.
		spans[i] = span{kind: design.CurveSpline, a: way[i], b: way[i+1],
			c1: way[i].Add(leave.Mul(h / 3)), c2: way[i+1].Sub(arrive.Mul(h / 3))}
		lengths[i+1] = lengths[i] + spans[i].curve().Length()
		leave = arrive
	}
	var shares []float64
	for _, l := range lengths[1 : len(lengths)-1] {
		shares = append(shares, ratio(l, lengths[len(lengths)-1]))
	}
	return spans, shares
}

package slab

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// shapeCurves gives the closed chain of a shape about its own centre,
// counter-clockwise, grown by grow millimetres (shrunk when negative) to a
// parallel body; none where that has other edges than the shape. A path does not
// grow here.
func shapeCurves(s design.Shape, grow float64) []geom.Curve {
	w, d := clamp(s.Width.MM(), 0, reach)/2+grow, clamp(s.Depth.MM(), 0, reach)/2+grow
	r := clamp(s.CornerRadius.MM(), 0, reach)
	if r > 0 || grow > 0 {
		r = math.Max(0, r+grow)
	}
	switch s.Kind {
	case design.ShapeRectangle:
		return rectangle(w, d, r)
	case design.ShapeCircle:
		return circle(w)
	case design.ShapeEllipse:
		return ellipse(w-grow, d-grow, grow)
	case design.ShapeD:
		return dShape(s, grow, r)
	case design.ShapePath:
		pieces, _ := chain(s.Path)
		return pieceCurves(pieces)
	}
	return nil
}

func circle(r float64) []geom.Curve {
	if !(r > 0) {
		return nil
	}
	c := geom.Circle(geom.Vec{}, r)
	return []geom.Curve{c.Sub(0, 0.5), c.Sub(0.5, 1)}
}

func ellipse(a, b, grow float64) []geom.Curve {
	if !(a > 0 && b > 0 && math.Min(a, b)*math.Min(a, b)/math.Max(a, b)+grow > 0) {
		return nil // shrunk by more than its least radius of curvature, it is no smooth curve
	}
	var out []geom.Curve
	for i := range 4 {
		e := geom.EllipseArc{A: a, B: b, Start: float64(i) * math.Pi / 2, Sweep: math.Pi / 2}
		if grow == 0 {
			out = append(out, e)
		} else {
			out = append(out, geom.Parallel{Base: e, D: -grow})
		}
	}
	return out
}

// rectangle of half width w and half depth d with corners of radius r.
func rectangle(w, d, r float64) []geom.Curve {
	if !(w > 0 && d > 0) {
		return nil
	}
	r = math.Min(r, math.Min(w, d))
	c := []geom.Vec{{X: w, Y: -d}, {X: w, Y: d}, {X: -w, Y: d}, {X: -w, Y: -d}}
	var out []geom.Curve
	for i, p := range c {
		q := c[(i+1)%4]
		dir := q.Sub(p).Unit()
		if a, b := p.Add(dir.Mul(r)), q.Sub(dir.Mul(r)); q.Sub(p).Norm() > 2*r+1e-9 {
			out = append(out, geom.Line{A: a, B: b})
		}
		if r > 0 {
			centre := q.Sub(dir.Mul(r)).Add(dir.Left().Mul(r))
			out = append(out, geom.Arc{Centre: centre, Radius: r, Start: float64(i) * math.Pi / 2, Sweep: math.Pi / 2})
		}
	}
	return out
}

// dChain is a D as a chain: its front arc from left to right, then its straight
// edges, of which the sides may have no length; and the corners that do not fit.
func dChain(s design.Shape) ([]geom.Curve, []misfit) {
	w, d, bow := dSize(s)
	if !(w > 0 && d > 0 && bow > 0) {
		return nil, nil
	}
	front := bow - d
	p := []geom.Vec{{X: -w, Y: front}, {X: w, Y: front}, {X: w, Y: d}, {X: -w, Y: d}}
	edges := []geom.Curve{geom.ArcByRise(p[0], p[1], bow)}
	if d-front > 1e-6 {
		edges = append(edges, geom.Line{A: p[1], B: p[2]}, geom.Line{A: p[2], B: p[3]}, geom.Line{A: p[3], B: p[0]})
	} else {
		edges = append(edges, geom.Line{A: p[1], B: p[0]})
	}
	nodes := make([]design.Node, len(edges))
	for i := range nodes {
		nodes[i].Corner = design.Corner{Kind: design.CornerRounded, Size: s.CornerRadius}
	}
	pieces, misfits := join(nodes, edges)
	return pieceCurves(pieces), misfits
}

// dSize is half the width and half the depth of a D, and the rise of its front.
func dSize(s design.Shape) (w, d, bow float64) {
	w, d = clamp(s.Width.MM(), 0, reach)/2, clamp(s.Depth.MM(), 0, reach)/2
	return w, d, clamp(s.Bow.MM(), 0, math.Min(w, 2*d))
}

// dShape is a D with all of its edges moved out by grow and corners of radius r;
// none where its edges do not meet again so, or an arc does not fit them.
func dShape(s design.Shape, grow, r float64) []geom.Curve {
	w, d, bow := dSize(s)
	if bow <= 0 {
		return rectangle(w+grow, d+grow, r)
	}
	if base, misfits := dChain(s); grow == 0 {
		return base
	} else if len(misfits) > 0 || d+d-bow < 1e-6 {
		return nil
	}
	radius := (w*w + bow*bow) / (2 * bow)
	centre := geom.Vec{Y: -d + radius}
	radius, half, back := radius+grow, w+grow, d+grow
	if !(half > 0 && radius > half-1e-9) {
		return nil
	}
	drop := math.Sqrt(math.Max(0, radius*radius-half*half))
	front := centre.Y - drop // where the sides meet the arc
	if back <= front {
		return nil
	}
	right, left := geom.Vec{X: half, Y: front}, geom.Vec{X: -half, Y: front}
	start := math.Atan2(-drop, -half)
	if start > 0 {
		start -= 2 * math.Pi // atan2 gives +pi where the drop is +0
	}
	edges := []geom.Curve{
		geom.Arc{Centre: centre, Radius: radius, Start: start, Sweep: math.Atan2(-drop, half) - start},
		geom.Line{A: right, B: geom.Vec{X: half, Y: back}},
		geom.Line{A: geom.Vec{X: half, Y: back}, B: geom.Vec{X: -half, Y: back}},
		geom.Line{A: geom.Vec{X: -half, Y: back}, B: left},
	}
	return roundAll(edges, r)
}

// roundAll rounds every corner of a closed chain by r; none where an arc does not
// fit.
func roundAll(edges []geom.Curve, r float64) []geom.Curve {
	if r <= 0 {
		return edges
	}
	n := len(edges)
	cuts := make([]cut, n)
	for i := range edges {
		arriving := edges[(i+n-1)%n]
		ta, tb, arc, ok := geom.Fillet(arriving, edges[i], r)
		switch {
		case ok:
			cuts[i] = cut{arc, ta, tb}
		case turnAt(arriving, edges[i]) > geom.SmoothTurn:
			return nil
		default:
			cuts[i] = cut{nil, 1, 0}
		}
	}
	var out []geom.Curve
	for i, e := range edges {
		from, to := cuts[i].tb, cuts[(i+1)%n].ta
		if from > to+1e-9 {
			return nil
		}
		if cuts[i].curve != nil {
			out = append(out, cuts[i].curve)
		}
		if e = e.Sub(from, math.Max(from, to)); e.Length() > 1e-7 {
			out = append(out, e)
		}
	}
	return out
}

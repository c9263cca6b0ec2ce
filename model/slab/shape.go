package slab

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// shapeCurves gives the closed chain of a shape about its own centre,
// counter-clockwise, grown by grow millimetres (shrunk when negative) to a
// parallel body.
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
		var out []geom.Curve
		pieces, _ := chain(s.Path)
		for _, p := range pieces {
			out = append(out, p.curve)
		}
		return out
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
	if !(a > 0 && b > 0 && a+grow > 0 && b+grow > 0) {
		return nil
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

// dShape is a straight back at the top of the box, straight sides and a front
// arc of rise Bow, all moved out by grow, with corners of radius r.
func dShape(s design.Shape, grow, r float64) []geom.Curve {
	w, d := clamp(s.Width.MM(), 0, reach)/2, clamp(s.Depth.MM(), 0, reach)/2
	bow := clamp(s.Bow.MM(), 0, math.Min(w, 2*d))
	if bow <= 0 {
		return rectangle(w+grow, d+grow, r)
	}
	if !(w > 0 && d > 0) {
		return nil
	}
	radius := (w*w + bow*bow) / (2 * bow)
	centre := geom.Vec{Y: -d + radius}
	radius, half, back := radius+grow, w+grow, d+grow
	if !(half > 0 && radius > 0) {
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

// roundAll rounds every corner of a closed chain by r where an arc fits.
func roundAll(edges []geom.Curve, r float64) []geom.Curve {
	n := len(edges)
	cuts := make([]cut, n)
	for i := range edges {
		ta, tb, arc, ok := geom.Fillet(edges[(i+n-1)%n], edges[i], r)
		cuts[i] = cut{nil, 1, 0}
		if ok {
			cuts[i] = cut{arc, ta, tb}
		}
	}
	var out []geom.Curve
	for i, e := range edges {
		if cuts[i].curve != nil {
			out = append(out, cuts[i].curve)
		}
		if e = e.Sub(cuts[i].tb, cuts[(i+1)%n].ta); e.Length() > 1e-7 {
			out = append(out, e)
		}
	}
	return out
}

package slab

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

func resolveChannel(c design.Channel) Recess {
	r := Recess{Part: c.ID, Depth: clamp(c.Depth.MM(), 0, reach), Fill: c.Fill}
	for _, g := range c.Regions {
		r.Loops = append(r.Loops, regionLoops(g)...)
	}
	for _, v := range c.Rivers {
		loop, line := riverBand(v)
		if len(loop) > 2 {
			r.Loops = append(r.Loops, loop)
			r.Centrelines = append(r.Centrelines, line)
		}
	}
	return r
}

func regionLoops(g design.Region) []geom.Loop {
	var out []geom.Loop
	for i, nodes := range append([][]design.Node{g.Outer}, g.Islands...) {
		pieces, _ := chain(nodes)
		var curves []geom.Curve
		for _, p := range pieces {
			curves = append(curves, p.curve)
		}
		loop, _ := flattenChain(curves)
		if len(loop) < 3 {
			continue
		}
		if (loop.Area() > 0) != (i == 0) {
			loop = loop.Reversed()
		}
		out = append(out, loop)
	}
	return out
}

// riverBand is the band of a river and its centreline.
func riverBand(v design.River) (geom.Loop, []geom.Vec) {
	var s, w []float64
	var p []geom.Vec
	for _, n := range v.Nodes {
		q := vec(n.At)
		at := 0.0
		if len(p) > 0 {
			step := q.Dist(p[len(p)-1])
			if step < 1e-6 {
				continue
			}
			at = s[len(s)-1] + step
		}
		s, p, w = append(s, at), append(p, q), append(w, clamp(n.Width.MM(), 0, reach))
	}
	if len(p) < 2 {
		return nil, nil
	}
	line, width := geom.NewNatural(s, p), geom.NewMonotone(s, w)
	n := 24 * (len(p) - 1)
	var left, right geom.Loop
	var centre []geom.Vec
	for i := 0; i <= n; i++ {
		t := s[len(s)-1] * float64(i) / float64(n)
		q, d, _ := line.At(t)
		b, _ := width.At(t)
		off := d.Unit().Left().Mul(b / 2)
		centre = append(centre, q)
		left, right = append(left, q.Add(off)), append(right, q.Sub(off))
	}
	return append(right, left.Reversed()...), centre
}

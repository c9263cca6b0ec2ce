package slab

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// resolveSupport gives a support as a region: a patch is its polygon, a line is a
// strip of its width, flat at the ends, mitred at its turns and rounded where
// they are sharp.
func (r *resolver) resolveSupport(p design.Support) Bearing {
	b := Bearing{Part: p.ID, Kind: p.Kind, Patch: p.Patch}
	for _, q := range p.Line {
		if v := vec(q); len(b.Line) == 0 || v != b.Line[len(b.Line)-1] {
			b.Line = append(b.Line, v)
		}
	}
	if p.Patch {
		if len(b.Line) > 2 {
			b.Loops = r.sweep.Union(geom.Loop(b.Line))
		}
		return b
	}
	half := clamp(p.Width.MM(), 0, reach) / 2
	if half == 0 || len(b.Line) < 2 {
		return b
	}
	var parts []geom.Loop
	for i := 1; i < len(b.Line); i++ {
		x, y := b.Line[i-1], b.Line[i]
		n := y.Sub(x).Unit().Left().Mul(half)
		parts = append(parts, geom.Loop{x.Sub(n), y.Sub(n), y.Add(n), x.Add(n)})
		if i > 1 {
			parts = append(parts, lineTurn(b.Line[i-2], x, y, half))
		}
	}
	b.Loops = r.sweep.Union(parts...)
	return b
}

// lineTurn fills the outside of a strip's turn at p, counter-clockwise.
func lineTurn(before, p, after geom.Vec, half float64) geom.Loop {
	u, v := p.Sub(before).Unit(), after.Sub(p).Unit()
	turn := math.Atan2(u.Cross(v), u.Dot(v))
	side := -math.Copysign(half, turn) // the outside, to the left positive
	a, b := u.Left().Mul(side), v.Left().Mul(side)
	l := geom.Loop{p, p.Add(a)}
	if dot := u.Dot(v); dot > -0.5 {
		l = append(l, p.Add(a.Add(b).Mul(1/(1+dot))))
	} else {
		arc := geom.Arc{Centre: p, Radius: half, Start: math.Atan2(a.Y, a.X), Sweep: turn}
		vs := geom.Flatten(nil, arc, Tolerance)
		for _, x := range vs[1 : len(vs)-1] {
			l = append(l, x.P)
		}
	}
	l = append(l, p.Add(b))
	if l.Area() < 0 {
		return l.Reversed()
	}
	return l
}

package picture

import "math"

// How thick resin stands above the concrete's own shape: a coat over the whole
// channel, and where the channel leaves the top a film down the edge, with runs
// side by side, a lip along its foot and drops.

// rim is the width over which a coat rises from its border: what surface tension
// holds.
func (c *channel) rim() float64 { return 1.4*c.coat + 0.8 }

// bulges reports whether the resin's surface leaves the concrete's shape.
func (c *channel) bulges() bool { return c.falls || c.coat > 0 }

// risen is the distance to the resin's surface where f is the distance to the
// concrete's own shape.
func (c *channel) risen(b *body, p v3, g spot, f float64) float64 {
	plan := c.plan.in(g)
	if plan > 8 {
		return f
	}
	if !c.falls || b.plan[g.k].d < -24 {
		switch {
		case c.coat == 0:
			return f
		case plan < -c.rim()-1:
			return f - c.coat
		}
	}
	if f > 16+c.coat {
		return f - 8 - c.coat
	}
	// The thickness changes fast: step with care.
	return 0.5 * (f - c.rise(b, p, g))
}

// rise is the thickness at p, which lies over the spot g of the plan.
func (c *channel) rise(b *body, p v3, g spot) float64 {
	plan := c.plan.in(g)
	if plan >= 0 {
		return 0
	}
	coat := 0.0
	if c.coat > 0 {
		// A dome's side: upright at the border, level a little further in.
		u := min(1, -plan/c.rim())
		coat = c.coat * u * (2 - u)
	}
	if !c.falls {
		return coat
	}
	d, _, node := b.about(g)
	if d < -20 {
		return coat
	}
	down := b.t - p.Z
	k := smooth(-1, 0.3*b.t, down)
	if k == 0 {
		return coat
	}
	// The film thins toward its sides and under the top.
	side := 1 - bell(-plan/3.5)
	under := 1 - smooth(1, 9, -d)*smooth(-2, 1, down-b.t)
	film := max(0.8, 0.85*c.coat)
	u := b.along(p, node.near)
	film += c.running(u, down, d, b.t)
	// A lip where it comes to rest at the lower end.
	x := (down - b.t + 1.5) / 3.2
	film += 0.9 * bell(x*x)
	return coat*(1-k) + film*k*side*under
}

// runCell is how far apart runs are, mm.
const runCell = 15.0

// run is one of them: its place along the outline, width, strength, and the depths
// below the face where it begins and ends.
type run struct{ at, w, strong, from, to float64 }

// runsOf are the runs along way mm of an outline, of a top t thick; the first one
// stands half a cell before its start. The outline closes: what lies before its start
// is what lies before its end, and the other way round.
func runsOf(way, t float64) []run {
	out := make([]run, int(min(1e5, way/runCell))+3)
	for i := range out {
		h := hash4(uint32(i-1), 7, 0xfa11, 3)
		strong := draw(h, 3)
		out[i] = run{
			at: (float64(i) - 0.5 + 0.7*(draw(h, 1)-0.5)) * runCell, w: 3.4 + 3.2*draw(h, 2),
			strong: 1.7 * strong * strong,
			from:   0.25 * t * draw(h, 4), to: t * (0.62 + 0.55*draw(h, 5)),
		}
	}
	if n := len(out) - 3; n > 0 {
		out[0] = out[n]
		out[0].at -= way
		for i := n + 1; i < len(out); i++ {
			out[i] = out[i-n]
			out[i].at += way
		}
	}
	return out
}

// running is what single runs add to the film at the way u along the edge and down
// below the face, for a top t thick: each one swells toward its round tip, and hangs
// as a drop when it reaches the lower end, where the outline's distance is d.
func (c *channel) running(u, down, d, t float64) float64 {
	i := max(0, min(len(c.runs)-2, int(math.Floor(u/runCell-0.5))+1))
	sum := 0.0
	for k := range c.runs[i : i+2] {
		r := &c.runs[i+k]
		x := (u - r.at) / r.w
		if x*x > 9 {
			continue
		}
		if k := smooth(r.from, r.from+0.5*t, down) * (1 - smooth(r.to-1.5, r.to+2.5, down)); k > 0 {
			sum += r.strong * k * math.Exp(-x*x)
		}
		if r.to < t-4 {
			y := (down - r.to + 2) / 3
			sum += 0.8 * r.strong * bell(1.6*x*x+y*y)
			continue
		}
		if r.strong > 0.5 {
			y, z := (down-t)/4, (d+1)/3.5
			sum += 1.1 * r.strong * bell(2.2*x*x+y*y+z*z)
		}
	}
	return sum
}

// bell is exp(-x), and 0 where that is less than a millionth.
func bell(x float64) float64 {
	if x > 14 {
		return 0
	}
	return math.Exp(-x)
}

// along is the way along the outline at p, whose nearest segment is near.
func (b *body) along(p v3, near int32) float64 {
	g := &b.segs[near]
	ex, ey := g.b.X-g.a.X, g.b.Y-g.a.Y
	l := ex*ex + ey*ey
	if l == 0 {
		return b.way[near]
	}
	u := max(0, min(1, ((p.X-g.a.X)*ex+(p.Y-g.a.Y)*ey)/l))
	return b.way[near] + u*math.Sqrt(l)
}

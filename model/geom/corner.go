package geom

import "math"

// Fillet finds the arc of radius r that is tangent to the end of a and to the
// start of b, which meet in a corner; of several the one nearest to the corner.
// It leaves a at ta and joins b at tb. It is false when there is none, and when
// the curves meet smoothly so that there is nothing to round.
func Fillet(a, b Curve, r float64) (ta, tb float64, arc Arc, ok bool) {
	u, v := Tangent(a, 1), Tangent(b, 0)
	turn := math.Atan2(u.Cross(v), u.Dot(v))
	if !(r > 0) || math.Abs(turn) < SmoothTurn || math.Abs(turn) > math.Pi-1e-9 {
		return 1, 0, Arc{}, false
	}
	d := math.Copysign(r, turn) // the centre lies at d to the left of both
	reach := r * math.Tan(math.Abs(turn)/2)
	_, lineA := a.(Line)
	_, lineB := b.(Line)
	if lineA && lineB {
		ta, tb = 1-reach/a.Length(), reach/b.Length()
		ok = ta >= -1e-12 && tb <= 1+1e-12
	} else {
		ta, tb, ok = filletNewton(a, b, d, reach)
		// Where Newton has run far off, there may be an arc nearer to the corner.
		way := func(ta, tb float64) float64 { return (1-ta)*a.Length() + tb*b.Length() }
		if !ok || way(ta, tb) > 4*reach {
			if sa, sb, found := filletScan(a, b, d); found && (!ok || way(sa, sb) < way(ta, tb)) {
				ta, tb, ok = sa, sb, true
			}
		}
	}
	if !ok {
		return 1, 0, Arc{}, false
	}
	ta, tb = math.Max(0, ta), math.Min(1, tb)
	p, q := a.At(ta), b.At(tb)
	n := Normal(a, ta)
	c := p.Add(n.Mul(d))
	from, to := p.Sub(c), q.Sub(c)
	sweep := math.Atan2(from.Cross(to), from.Dot(to))
	if sweep*turn < 0 {
		sweep += math.Copysign(2*math.Pi, turn)
	}
	return ta, tb, Arc{c, r, math.Atan2(from.Y, from.X), sweep}, true
}

// SmoothTurn is the change of direction, in radians, up to which two edges meet
// smoothly: a thousandth of a degree, some hundred times what rounding to the
// nanometre does to edges that are drawn tangent, and too little for a chamfer to
// take anything off.
const SmoothTurn = 0.001 * math.Pi / 180

// filletNewton looks for the parameters at which the parallels of a and b at d
// cross, from the place where those of the tangents at the corner do.
func filletNewton(a, b Curve, d, reach float64) (ta, tb float64, ok bool) {
	pa, pb := Parallel{a, d}, Parallel{b, d}
	va, vb := a.Deriv(1).Norm(), b.Deriv(0).Norm()
	if va < 1e-9 || vb < 1e-9 {
		return 0, 0, false
	}
	s, t := math.Max(0, 1-reach/va), math.Min(1, reach/vb)
	for range 50 {
		f := pa.At(s).Sub(pb.At(t))
		ds, dt := pa.Deriv(s), pb.Deriv(t)
		det := -ds.Cross(dt)
		if f.Norm() < 1e-11*(1+math.Abs(d)) {
			return s, t, filletValid(a, b, s, t, d)
		}
		if math.Abs(det) < 1e-12 {
			return 0, 0, false
		}
		// [ds, -dt] (x, y) = -f
		x := f.Cross(dt) / det
		y := f.Cross(ds) / det
		s, t = clamp01(s+limit(x, 0.3)), clamp01(t+limit(y, 0.3))
	}
	return 0, 0, false
}

func limit(x, bound float64) float64 { return math.Max(-bound, math.Min(bound, x)) }

func clamp01(x float64) float64 { return math.Max(0, math.Min(1, x)) }

// filletValid reports whether the arc between the two places really bends as
// the corner does and by less than a full turn.
func filletValid(a, b Curve, s, t, d float64) bool {
	p, q := a.At(s), b.At(t)
	c := p.Add(Normal(a, s).Mul(d))
	from, to := p.Sub(c), q.Sub(c)
	sweep := math.Atan2(from.Cross(to), from.Dot(to))
	return q.Add(Normal(b, t).Mul(d)).Dist(c) < 1e-6 && sweep*d >= 0
}

// filletScan walks back along a from the corner until the parallel's point
// comes as near to b as |d|, and closes in on that place.
func filletScan(a, b Curve, d float64) (ta, tb float64, ok bool) {
	const samples = 128
	pa := Parallel{a, d}
	gap := func(s float64) (float64, float64) {
		t, dist := NearestParam(b, pa.At(s))
		return dist - math.Abs(d), t
	}
	hi := 1.0
	prev, _ := gap(hi)
	for i := 1; i <= samples; i++ {
		lo := 1 - float64(i)/samples
		g, _ := gap(lo)
		if prev < 0 && g >= 0 {
			for range 80 {
				mid := (lo + hi) / 2
				if m, _ := gap(mid); m >= 0 {
					lo = mid
				} else {
					hi = mid
				}
			}
			_, t := gap(lo)
			if t > 0 && t < 1 && filletValid(a, b, lo, t, d) {
				return lo, t, true
			}
			lo = 1 - float64(i)/samples
		}
		hi, prev = lo, g
	}
	return 0, 0, false
}

// NearestParam is the parameter of the point of c nearest to p, and its
// distance.
func NearestParam(c Curve, p Vec) (t, dist float64) {
	switch c := c.(type) {
	case Line:
		d := c.B.Sub(c.A)
		if n := d.Dot(d); n > 0 {
			t = clamp01(p.Sub(c.A).Dot(d) / n)
		}
		return t, c.At(t).Dist(p)
	case Arc:
		return c.nearest(p)
	}
	const samples = 64
	best, bestD := 0, math.Inf(1)
	for i := 0; i <= samples; i++ {
		if d := c.At(float64(i) / samples).Dist(p); d < bestD {
			best, bestD = i, d
		}
	}
	lo := math.Max(0, float64(best-1)/samples)
	hi := math.Min(1, float64(best+1)/samples)
	slope := func(t float64) float64 { return c.At(t).Sub(p).Dot(c.Deriv(t)) }
	for range 60 {
		mid := (lo + hi) / 2
		if slope(mid) > 0 {
			hi = mid
		} else {
			lo = mid
		}
	}
	t = (lo + hi) / 2
	for _, e := range [2]float64{0, 1} {
		if math.Abs(t-e) < 1e-12 {
			t = e
		}
	}
	return t, c.At(t).Dist(p)
}

// Chamfer finds the straight cut from the distance s before the end of a to the
// distance s after the start of b, measured along them. It is false when an edge
// is shorter than that.
func Chamfer(a, b Curve, s float64) (ta, tb float64, cut Line, ok bool) {
	la, lb := a.Length(), b.Length()
	if !(s > 0) || s > la || s > lb {
		return 1, 0, Line{}, false
	}
	ta, tb = AtLength(a, la-s), AtLength(b, s)
	return ta, tb, Line{a.At(ta), b.At(tb)}, true
}

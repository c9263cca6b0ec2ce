package picture

// The light of places that a mirror shows and the picture does not: one ray to the
// middle of each light tells of those, and the rest is a share of what the studio
// would give, as places in sight of the same kind have it. So there is no noise.

// kindOf sorts places by what light comes back to them: by material, and level
// ones apart from others.
func kindOf(m materialID, n v3) int {
	if n.Z > 0.9 {
		return 2 * int(m)
	}
	return 2*int(m) + 1
}

const (
	kinds       = 2 * (int(matGround) + 1)
	sharePlaces = 24  // of each kind are looked at
	shareGuess  = 0.8 // where none is in sight
)

// direct is the irradiance over pi at a place by one ray to the middle of each
// light, and what the studio gives with nothing in the way.
func (s *scene) direct(p, n v3) (lights, studio v3) {
	o := off(p, n)
	studio = s.rig.open(p, n)
	for i := range s.rig.lights {
		l := &s.rig.lights[i]
		k := l.share(p, n)
		if k <= 0 {
			continue
		}
		e := l.l.mul(k)
		studio = studio.sub(e)
		q := l.c.sub(o)
		t := q.norm()
		if !s.blocked(ray{o, q.mul(1 / t)}, t) {
			lights = lights.add(e)
		}
	}
	return lights, studio
}

// shares finds what share of the studio's light, bounces included, the places of
// each kind have in sight.
func (l *layer) shares(s *scene) {
	var got, open [kinds]v3
	var n [kinds]int
	for i := range l.share {
		l.share[i] = v3{shareGuess, shareGuess, shareGuess}
	}
	// Far apart in the picture: a step that runs through all blocks.
	step := len(l.t)*618/1000 | 1
	for gcd(step, len(l.t)) != 1 {
		step += 2
	}
	for i, at := 0, 0; i < len(l.t) && i < 4096; i, at = i+1, (at+step)%len(l.t) {
		t := &l.t[at]
		k := kindOf(t.m, t.n.wide())
		if t.m == matNone || t.m == matMetal || n[k] == sharePlaces || s.catches(t.m) {
			continue
		}
		lights, studio := s.direct(t.p.wide(), t.n.wide())
		got[k], open[k] = got[k].add(t.d.wide().sub(lights)), open[k].add(studio)
		n[k]++
	}
	for k := range n {
		if n[k] < 4 {
			continue
		}
		each := func(a, b float64) float64 { return max(0.3, min(2.5, a/max(b, 1e-6))) }
		l.share[k] = v3{each(got[k].X, open[k].X), each(got[k].Y, open[k].Y), each(got[k].Z, open[k].Z)}
	}
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// guessed is the irradiance over pi at a place that may be out of sight.
func (k *shot) guessed(h *hit) v3 {
	lights, studio := k.s.direct(h.p, h.n)
	return lights.add(studio.times(k.l.share[kindOf(h.m, h.n)]))
}

package picture

import "sync"

// shot is one picture in the making: a scene, a camera and its light.
type shot struct {
	s       *scene
	c       camera
	l       *layer
	cover   *cover
	mirrors int // rays for a metal's blurred mirror
	turn    int // where in their sequence they start
	seed    uint32
	stopped func() bool // the picture is given up; nil for never
	spare   *sync.Pool  // sights of tiles that are finished
}

// givenUp reports whether the picture is no longer wanted.
func (k *shot) givenUp() bool { return k.stopped != nil && k.stopped() }

// sight is what one ray through a pixel sees.
type sight struct {
	c v3
	n v3
	m materialID
	t float64
	// Of a surface whose texture may be looked at again: its reflectance, and
	// the light that this multiplies; no light for others.
	kd, light c3
	// Of stony concrete: see grain.
	cement c3
	stone  *stone
	// Beside a top that is cut out nothing is seen but how much light it leaves.
	bare  bool
	shade float64
}

// pixel shades the place (x, y) of the picture.
func (k *shot) pixel(x, y float64, rnd *source) sight {
	r := k.c.ray(x, y)
	h, ok := k.s.met(r, seenNear, k.cover.at(x, y))
	switch {
	case !ok && k.s.empty == nil:
		return sight{c: k.s.rig.studio(r.d), t: far}
	case !ok:
		return sight{t: far, bare: true, shade: 1}
	case !k.s.catches(h.m):
		return k.shade(r, &h, x, y, rnd)
	}
	out := sight{m: h.m, n: h.n, t: h.t, bare: true, shade: 1}
	if h.m == matFloor {
		return out // too far below to matter
	}
	d, _, fits := k.l.at(k.s, x, y, h.p, h.n, h.m, k.c.footprint(h.t))
	if !fits {
		d, _ = k.s.shaded(h.p, h.n, 4, rnd)
	}
	out.shade = d.X
	return out
}

// shade is what a ray through a place of the picture sees at h.
func (k *shot) shade(r ray, h *hit, x, y float64, rnd *source) sight {
	fp := k.c.footprint(h.t)
	f := k.s.surface(h, r.d, fp)
	out := sight{n: h.n, m: h.m, t: h.t}
	if f.metal {
		out.c = k.metal(&f, h, r.d, rnd)
		return out
	}
	n := facing(f.n, r.d)
	d, mirror, fits := k.l.at(k.s, x, y, h.p, n, h.m, fp)
	if !fits {
		d, _ = k.s.gather(h.p, n, min(1, k.s.roughness(h.m)), 4, rnd)
	}
	if f.part > 0.01 {
		over := *h
		over.p, over.n = f.over, v3{Z: 1}
		d = d.along(k.lit(&over, rnd), f.part)
	}
	cos := -r.d.dot(n)
	e := 0.0
	switch {
	case f.clear:
		e = f.f
		out.c = f.kd.times(d)
	case f.a >= 0:
		e = coats().at(f.a, cos)
		out.c = f.kd.times(d).mul(1 - e)
		if h.m == matConcrete && h.n.dot(f.n) > 0.99 {
			out.kd, out.light = f.kd.small(), d.mul(1-e).small()
			out.cement, out.stone = f.cement.small(), f.stone
		}
	default:
		out.c = f.kd.times(d)
		return out
	}
	if f.gleam != (v3{}) {
		// Sparkle is of the lights: no more of it than of them.
		lit := clamp01(d.luma())
		out.c = out.c.add(f.gleam.mul((1 - e) * lit))
	}
	if e > 1e-4 {
		w := r.d.mirrored(n)
		if w.dot(h.n) < 0.01 {
			w = w.along(h.n, 0.01-w.dot(h.n)).unit()
		}
		o := off(h.p, h.n)
		a := max(f.a, 0)
		switch {
		case a < glossy:
			sharp, way := k.reflected(ray{o, w}, 0, rnd)
			// The further away, the wider the blur: where it is wider than a
			// block, the layer shows it.
			if fits && k.s.roughness(h.m) >= clearest {
				wide := 2 * a * way / (k.c.footprint(h.t) + k.c.k*way) / float64(k.l.step)
				sharp = sharp.mix(mirror, smooth(blurFrom, blurAll, wide))
			}
			mirror = sharp
		case !fits:
			mirror = k.s.rig.studio(w)
		}
		out.c = out.c.add(mirror.mul(e)).add(k.highlights(&f, o, n, r.d))
	}
	return out
}

// highlights are the lights that a coat or metal mirrors at p, of normal n, along
// the way back of a ray of direction d. A rough coat has them here where they are
// in its lobe alone: the light layer has the rest.
func (k *shot) highlights(f *surface, p, n, d v3) v3 {
	var sum v3
	a, w := max(f.a, smoothest), d.mirrored(n)
	for i := range k.s.rig.lights {
		l := &k.s.rig.lights[i]
		part := 1.0
		if !f.metal {
			if part = l.inLobe(p, w, a); part == 0 {
				continue
			}
		}
		share, facet := l.shine(p, n, d.mul(-1), a)
		if share *= part; share*l.l.luma() < 1e-3 {
			continue
		}
		// One ray tells whether something stands before the light.
		to := l.near(p, w).sub(p)
		t := to.norm()
		if k.s.blocked(ray{p, to.mul(1 / t)}, t) {
			continue
		}
		sum = sum.add(l.l.times(f.fresnel(facet)).mul(share))
	}
	return sum
}

// fresnel is a surface's reflectance for light that meets it at an angle.
func (f *surface) fresnel(cos float64) v3 {
	k := 0.0
	switch {
	case f.metal:
		return schlick(f.f0, cos)
	case f.clear:
		k = fresnel(cos, resinIndex)
	default:
		k = fresnel(cos, coatIndex)
	}
	return v3{k, k, k}
}

// How wide the blur of a mirror is, in blocks of the light layer, where the layer
// begins to show it, and where it shows it alone.
const blurFrom, blurAll = 0.6, 2.0

// reflected is what a mirror shows along r, without lights, and how far away: the
// light of what it meets comes from the layer where that is in sight. spread is how wide a part of
// the scene one ray stands for, at distance 1.
func (k *shot) reflected(r ray, spread float64, rnd *source) (c v3, way float64) {
	h, ok := k.s.hit(r)
	if !ok {
		return k.s.rig.studio(r.d), far
	}
	fp := max(1, k.c.footprint(h.t+300), spread*h.t)
	f := k.s.surface(&h, r.d, fp)
	if f.metal {
		return k.s.rig.studio(r.d.mirrored(f.n)).times(f.f0), h.t
	}
	c = k.lit(&h, rnd).times(f.kd)
	if f.a >= 0 {
		// What its coat mirrors, lights left out.
		e := f.f
		cos := -r.d.dot(facing(f.n, r.d))
		if !f.clear {
			e = coats().at(f.a, cos)
			c = c.mul(1 - e)
		}
		c = c.add(k.s.rig.studio(r.d.mirrored(h.n)).mul(e))
	}
	return c, h.t
}

// lit is the light at a place that may or may not be in sight.
func (k *shot) lit(h *hit, rnd *source) v3 {
	// What catches shadows has the share of its light in the layer, not the light.
	if x, y, ok := k.c.project(h.p); ok && !k.s.catches(h.m) {
		away := h.p.sub(k.c.eye).norm()
		if d, _, fits := k.l.at(k.s, x, y, h.p, h.n, h.m, k.c.footprint(away)); fits {
			// It fades toward the picture's sides: beyond them is a guess.
			w, h2 := float64(k.c.w), float64(k.c.h)
			if in := smooth(0, 0.12*w, min(min(x, w-x), min(y, h2-y))); in < 1 {
				d = k.guessed(h).mix(d, in)
			}
			return d
		}
	}
	return k.guessed(h)
}

// metal is a brushed metal: a few mirror rays, and the lights in closed form.
func (k *shot) metal(f *surface, h *hit, d v3, rnd *source) v3 {
	n := facing(f.n, d)
	o := off(h.p, h.n)
	var sum v3
	weight := 0.0
	// Every pixel takes the same places of the lobe: a blur without grain.
	for i := range k.mirrors {
		w, _, g := lobe(d, n, f.a, fract(0.5+float64(k.turn+i)*r2x), fract(0.5+float64(k.turn+i)*r2y))
		if w.dot(h.n) <= 0 || g <= 0 {
			continue
		}
		c, _ := k.reflected(ray{o, w}, f.a, rnd)
		sum = sum.along(c, g)
		weight += g
	}
	if weight > 0 {
		sum = sum.mul(1 / weight)
	}
	return sum.times(schlick(f.f0, -d.dot(n))).add(k.highlights(f, o, n, d))
}

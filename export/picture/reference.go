package picture

import "math"

// The reference: a plain path tracer of the same scene, slow and without
// shortcuts. It follows refraction into resin and out of it again and lets every
// light that a mirror meets count. The quick method is held to it in tests.

const referenceDepth = 24

// traced is the radiance along one path from the eye.
func (s *scene) traced(r ray, pixel float64, plan bool, rnd *source) v3 {
	var sum v3
	weight := v3{1, 1, 1}
	way := 0.0
	counted := true // lights met by chance count: nothing has sampled them
	for depth := range referenceDepth {
		h, ok := s.hit(r)
		if counted {
			for i := range s.rig.lights {
				if t, on := s.rig.lights[i].hit(r); on && depth > 0 && (!ok || t < h.t) {
					return sum.add(weight.times(s.rig.lights[i].l))
				}
			}
		}
		if !ok {
			return sum.add(weight.times(s.rig.studio(r.d)))
		}
		way += h.t
		footprint := pixel
		if !plan {
			footprint *= way
		}
		if depth > 0 {
			footprint = max(footprint, 2)
		}
		if h.m == matResin {
			var alive bool
			if r, weight, counted, alive = s.throughResin(&h, r, weight, footprint, rnd); !alive {
				return sum
			}
		} else {
			x := s.surface(&h, r.d, footprint)
			var add v3
			var alive bool
			add, r, weight, counted, alive = s.scattered(&x, &h, r, weight, rnd)
			sum = sum.add(add)
			if !alive {
				return sum
			}
		}
		if depth >= 3 {
			q := min(0.97, weight.most())
			if rnd.next() >= q {
				return sum
			}
			weight = weight.mul(1 / q)
		}
	}
	return sum
}

// scattered lights a surface and draws the path's next direction.
func (s *scene) scattered(x *surface, h *hit, r ray, weight v3, rnd *source) (add v3, next ray, w v3, counted, alive bool) {
	o := off(h.p, h.n)
	n := facing(x.n, r.d)
	cos := -r.d.dot(n)
	if x.metal {
		d, facet, g := lobe(r.d, n, x.a, rnd.next(), rnd.next())
		if d.dot(h.n) <= 0 {
			return add, r, weight, false, false
		}
		return add, ray{o, d}, weight.times(schlick(x.f0, facet)).mul(g), true, true
	}
	e, mean := 0.0, 0.0
	if x.a >= 0 {
		e, mean = coats().at(x.a, cos), coats().mean(x.a)
	}
	if x.gleam != (v3{}) {
		add = weight.times(x.gleam).mul(1 - e)
	}
	p := 0.0
	if x.a >= 0 {
		p = max(0.1, min(0.9, e/(e+(1-e)*x.kd.most()+1e-6)))
	}
	if rnd.next() < p {
		d, facet, g := lobe(r.d, n, max(x.a, 1e-3), rnd.next(), rnd.next())
		if d.dot(h.n) <= 0 {
			return add, r, weight, false, false
		}
		return add, ray{o, d}, weight.mul(fresnel(facet, coatIndex) * g / p), true, true
	}
	body := weight.times(x.kd).mul((1 - e) / (1 - p))
	pass := func(c float64) float64 {
		if x.a < 0 {
			return 1
		}
		return (1 - coats().at(x.a, c)) / (1 - mean)
	}
	for k := range s.rig.lights {
		add = add.add(body.times(s.fromLight(o, n, k, rnd.next(), rnd.next(), pass)))
	}
	d := cosineDir(n, rnd.next(), rnd.next())
	if d.dot(h.n) <= 0 {
		return add, r, weight, false, false
	}
	return add, ray{o, d}, body.mul(pass(d.dot(n))), false, true
}

// facing keeps a shading normal on the eye's side.
func facing(n, d v3) v3 {
	if c := n.dot(d); c > -0.02 {
		return n.along(d, -c-0.02).unit()
	}
	return n
}

// throughResin follows a path that meets resin from outside until it leaves
// again: mirrored at the surface, or bent into it, scattered by pigment, bank
// and floor, and bent out again.
func (s *scene) throughResin(h *hit, r ray, weight v3, footprint float64, rnd *source) (ray, v3, bool, bool) {
	c := &s.body.channels[h.channel]
	n := facing(c.surfaceNormal(h.p, h.n), r.d)
	if rnd.next() < fresnel(-r.d.dot(n), resinIndex) {
		d := r.d.mirrored(n)
		return ray{off(h.p, h.n), d}, weight, true, d.dot(h.n) > 0
	}
	d, _ := refracted(r.d, n, resinIndex)
	p := h.p.along(h.n, -0.05)
	// Pigment stands as a sheet that faces out wherever light is scattered first.
	// What it sends out leaves as the pigment's colour has it; what comes from
	// below must get past it.
	lit := false
	for range 40 {
		t, bottom := s.inside(ray{p, d})
		inward := d.dot(h.n) < 0
		if inward {
			lit = false
			free := -math.Log(1-rnd.next()) / max(1e-9, c.resin.veil)
			if c.resin.opaque {
				free = 0
			}
			if free < t {
				if c.resin.glass != nil {
					if x, ok := c.struck(s, ray{p, d}, free, &weight, rnd); ok {
						p, d = x.o, x.d
						continue
					}
				}
				p = p.along(d, free)
				weight = weight.times(c.resin.colour)
				d = cosineDir(h.n, rnd.next(), rnd.next())
				lit = true
				continue
			}
		} else if !lit && rnd.next() >= math.Exp(-c.resin.veil*t) {
			break
		}
		if c.resin.glass != nil {
			if x, ok := c.struck(s, ray{p, d}, t, &weight, rnd); ok {
				p, d = x.o, x.d
				continue
			}
		}
		p = p.along(d, t)
		if !lit {
			weight = weight.times(c.resin.clear(t))
		}
		if bottom {
			m := gradient(s.body.at, p, 0.25)
			weight = weight.times(s.concrete.wet(p, footprint))
			p = p.along(m, 0.05)
			d = cosineDir(m, rnd.next(), rnd.next())
		} else {
			m := c.surfaceNormal(p, s.body.normal(p))
			cos := d.dot(m)
			out, ok := refracted(d, m.mul(-1), 1/resinIndex)
			if cos > 0 && ok && rnd.next() >= fresnel(cos, 1/resinIndex) {
				return ray{off(p, s.body.normal(p)), out}, weight, true, true
			}
			d = d.mirrored(m)
			if d.Z > 0 && p.Z > s.body.t-0.2 {
				d.Z = -d.Z
			}
			p = p.along(m, -0.05)
		}
		if weight.most() < 0.003 {
			break
		}
	}
	return r, weight, false, false
}

// struck follows a ray through the glass in resin for way mm: tinted by the
// pieces that it passes, until a crushed face of one scatters it.
func (c *channel) struck(s *scene, r ray, way float64, weight *v3, rnd *source) (next ray, ok bool) {
	g := c.resin.glass
	var met crossings
	for i := range g.walk(r, way, &met) {
		x := &met[i]
		if !x.p.lieIn(c, s.body).held {
			continue
		}
		if rnd.next() < x.k.cloud(x.fi) {
			n := x.k.n[x.fi]
			*weight = weight.times(c.resin.clear(x.in)).times(g.pale)
			return ray{r.at(x.in - 0.01), cosineDir(n, rnd.next(), rnd.next())}, true
		}
		*weight = weight.times(g.through(x.out - x.in))
	}
	return ray{}, false
}

// inside finds where a ray inside the resin meets concrete (bottom) or the
// resin's own surface.
func (s *scene) inside(r ray) (t float64, bottom bool) {
	t = 0.02
	last := t
	for range 200 {
		p := r.at(t)
		a, b := s.body.at(p), -s.body.skin(p)
		if a < 0.02 {
			if a < 0 {
				t = surfaced(s.body.at, r, last, t)
			}
			return t, true
		}
		if b < 0.004 {
			return t, false
		}
		last = t
		t += max(0.01, min(a, b))
	}
	return t, true
}

// surfaced is the place between lo, outside, and hi, inside, where a distance
// falls to a hundredth: a step of a march has gone too far, as it may where the
// distance shrinks faster than the way.
func surfaced(at func(v3) float64, r ray, lo, hi float64) float64 {
	for range 12 {
		if m := (lo + hi) / 2; at(r.at(m)) > 0.01 {
			lo = m
		} else {
			hi = m
		}
	}
	return lo
}

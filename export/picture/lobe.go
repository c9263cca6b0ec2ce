package picture

import "math"

// The lights in a rough coat, in closed form.

// shine is how much of the light a rough surface of normal n and roughness a sends
// from p toward the eye, which lies the way o, before its Fresnel reflectance: that
// of the cosine facet, between the way to the eye and the facets that mirror the
// light.
//
// Facets are spread by GGX. In the slopes of a facet's normal, that is a density
// 1 / (pi a² (1 + s²/a²)²): the very kernel of the form factor of a level surface
// for a parallel one at the height a. So the share of facets that mirror a light is
// Lambert's sum over the sides of its rectangle, taken of half vectors that are
// drawn together by a, as cosines are transformed in Heitz, Dupuy, Hill and
// Neubelt, Real-Time Polygonal-Light Shading with Linearly Transformed Cosines,
// 2016; it holds for lights far from the mirror ray too. What facets hide from each
// other is taken for one way to the light.
func (s *softbox) shine(p, n, o v3, a float64) (share, facet float64) {
	if s.n.dot(p.sub(s.c)) <= 0 {
		return 0, 0
	}
	a = max(a, smoothest)
	u, v := frame(n)
	quad := [4]v3{s.point(0, 0).sub(p), s.point(0, 1).sub(p), s.point(1, 1).sub(p), s.point(1, 0).sub(p)}
	var cut [8]v3
	var mid v3
	m := 0
	add := func(c v3) {
		c = c.unit()
		mid = mid.add(c)
		h := c.add(o)
		cut[m] = v3{h.dot(u), h.dot(v), a * h.dot(n)}.unit()
		m++
	}
	for i := range 4 {
		a, b := quad[i], quad[(i+1)&3]
		da, db := a.dot(n), b.dot(n)
		if da > 0 {
			add(a)
		}
		if (da > 0) != (db > 0) {
			add(a.mix(b, da/(da-db)))
		}
	}
	if m < 3 {
		return 0, 0
	}
	sum := 0.0
	prev := cut[m-1]
	for i := range m {
		next := cut[i]
		sum += (prev.X*next.Y - prev.Y*next.X) * arcOverSine(prev.dot(next))
		prev = next
	}
	share = math.Abs(sum) / (2 * math.Pi)
	// The way to the light: to its part above the horizon, and the nearer to the
	// mirror ray the more of that meets it.
	l := mid.unit().mix(s.toward(p, o.mul(-1).mirrored(n)), min(1, share)).unit()
	h := l.add(o).unit()
	co := max(1e-3, o.dot(n))
	facet = h.dot(o)
	return share * masking(co, a) * masking(l.dot(n), a) * facet / (co * max(1e-3, h.dot(n))), facet
}

// smoothest bounds the roughness from below: the edge of a light that is seen in a
// mirror is a little soft.
const smoothest = 0.0008

// toward is the direction from p to near.
func (s *softbox) toward(p, w v3) v3 { return s.near(p, w).sub(p).unit() }

// near is the light's place nearest to a ray from p of direction w.
func (s *softbox) near(p, w v3) v3 {
	q := s.c.sub(p)
	k := w.dot(s.n)
	t := q.dot(s.n) / min(k, -1e-3)
	if k >= 0 || t <= 0 {
		t = q.norm()
	}
	e := w.mul(t).sub(q)
	return s.c.along(s.u, max(-s.hu, min(s.hu, e.dot(s.u)))).along(s.v, max(-s.hv, min(s.hv, e.dot(s.v))))
}

// reach says how far from a light a mirror ray may pass, in roughnesses, so that
// the light counts as in its lobe: from the first number on less, from the second
// on not at all. There is less than a fiftieth of the lobe's brightness.
var reach = [2]float64{1.8, 2.8}

// inLobe is how far a light counts as in the lobe about a mirror ray w from p of
// roughness a, 0 to 1.
func (s *softbox) inLobe(p, w v3, a float64) float64 {
	q := s.c.sub(p)
	d := 1 / q.norm()
	c := q.dot(w) * d
	half := math.Sqrt(max(0, 1-c) / max(1e-9, 1+c)) // tangent of half the angle
	return 1 - smooth(reach[0], reach[1], (half-0.5*d*math.Sqrt(s.hu*s.hu+s.hv*s.hv))/a)
}

package picture

// scene is what rays meet, under one rig of lights.
type scene struct {
	body     *body
	concrete *concrete
	mesh     *things
	planes   []plane
	rig      rig
	key      v3      // toward the key light
	keyShare float64 // of the open face's light
	// Planes and cabinet of a scene that a top is cut out of are not seen, but
	// catch the top's shadow: alone is that scene without a cabinet, empty
	// without the top either.
	alone, empty *scene
	gain         v3 // of its light, by channel; none for 1
}

// plane is an endless wall or floor, seen from the side that n points to.
type plane struct {
	n v3
	d float64
	m materialID
}

// hit is where a ray meets the scene.
type hit struct {
	t       float64
	p, n    v3 // n faces the ray
	m       materialID
	channel int // of resin
}

const far = 1e5

// hit finds the nearest thing on a ray.
func (s *scene) hit(r ray) (hit, bool) { return s.hitWithin(r, seenNear) }

// hitWithin is hit with the top's skin known to near, in mm.
func (s *scene) hitWithin(r ray, near float64) (hit, bool) { return s.met(r, near, true) }

// met is hitWithin with things or, where a ray is known to meet none, without.
func (s *scene) met(r ray, near float64, things bool) (hit, bool) {
	h := hit{t: far, channel: -1}
	found := false
	for i := range s.planes {
		pl := &s.planes[i]
		if k := r.d.dot(pl.n); k < -1e-9 {
			if t := (pl.d - r.o.dot(pl.n)) / k; t > 0 && t < h.t {
				if pl.m == matGround && s.body != nil {
					if p := r.at(t); s.body.openings.at(p.X, p.Y) < 0 {
						continue // through a cut-out one sees the bowl
					}
				}
				h.t, h.n, h.m, found = t, pl.n, pl.m, true
			}
		}
	}
	t, onBody := 0.0, false
	if s.body != nil {
		t, onBody = s.body.hit(r, h.t, near)
	}
	if onBody {
		h.t, found = t, true
	}
	m, onThing := meshHit{}, false
	if things {
		m, onThing = s.mesh.hit(&r, h.t)
	}
	if onThing {
		h.t, h.n, h.m = m.t, m.normal(), m.tri.material
		if g := m.tri.face(); g.dot(r.d)*g.dot(h.n) > 0 {
			h.n = h.n.mul(-1)
		}
		// Where the smooth normal turns from the eye, take the edge of sight.
		h.p, h.n = r.at(m.t), facing(h.n, r.d)
		return h, true
	}
	h.p = r.at(h.t)
	if !onBody {
		return h, found
	}
	h.m = matConcrete
	switch class := s.body.kind(h.p.X, h.p.Y); {
	case class == classMixed || h.p.Z < s.body.t-0.05:
		h.n = facing(s.body.normal(h.p), r.d)
		if h.channel = s.body.resinAt(h.p); h.channel >= 0 {
			h.m = matResin
		}
	case class >= classChannel:
		h.n, h.m, h.channel = v3{Z: 1}, matResin, int(class-classChannel)
	default:
		h.n = v3{Z: 1}
	}
	return h, true
}

// blocked reports whether the top, its basins or furniture stand on a ray before
// limit. Walls and floor hide no light.
func (s *scene) blocked(r ray, limit float64) bool {
	_, ok := s.obstacle(r, limit)
	return ok
}

// obstacle is blocked that also says how far away one of them stands.
func (s *scene) obstacle(r ray, limit float64) (float64, bool) {
	if t, ok := s.mesh.obstacle(&r, limit); ok {
		return t, true
	}
	if s.body == nil {
		return 0, false
	}
	return s.body.hit(r, limit, wayNear)
}

// off is where a ray may leave a surface without meeting it again at once.
func off(p, n v3) v3 { return p.along(n, 0.05) }

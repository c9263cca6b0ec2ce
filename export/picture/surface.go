package picture

import (
	"math"

	"example.org/castwright/model/design"
)

// materialID names a material.
type materialID uint8

const (
	matNone materialID = iota // nothing but the studio
	matConcrete
	matResin
	matGlaze
	matMetal
	matWood
	matWall
	matFloor
	matTable
	matDark
	matStoneware
	matGround // what a cut-out top lies on
)

// surface is a material at a place, ready to be lit.
type surface struct {
	m     materialID
	kd    v3      // diffuse reflectance under the coat
	f0    v3      // of a metal
	metal bool    // no diffuse part
	a     float64 // roughness of coat or metal; negative: no coat
	n     v3
	gleam v3      // what glass mirrors of lights and studio
	clear bool    // kd is what a resin lifts; its own Fresnel loss is in it
	f     float64 // of a clear one: Fresnel reflectance
	over  v3      // and a place whose light is a part of its own
	part  float64
	// Of a face of stony concrete, for a second look: see grain.
	cement v3
	stone  *stone
}

// surface is what a ray of direction d sees at h with a footprint in mm.
func (s *scene) surface(h *hit, d v3, footprint float64) surface {
	x := surface{m: h.m, n: h.n, a: -1}
	switch h.m {
	case matConcrete:
		s.concreteSurface(&x, h, d, footprint)
	case matResin:
		l := s.body.channels[h.channel].look(s, h.p, d, h.n, footprint)
		x.kd, x.gleam, x.n, x.clear, x.f, x.a = l.albedo, l.gleam, l.n, true, l.f, 0
		x.over, x.part = l.over, l.part
	case matWood:
		x.kd, x.a = wood(h.p, footprint), 0.32
	case matWall, matFloor, matTable, matGround:
		x.kd = plainColour(h.m)
	case matMetal:
		x.metal, x.f0, x.a = true, v3{0.56, 0.53, 0.49}, 0.13
	default:
		x.kd = plainColour(h.m)
		x.a = map[materialID]float64{matGlaze: 0.03, matStoneware: 0.2}[h.m]
	}
	return x
}

// plainColour is the diffuse reflectance of the plain materials.
func plainColour(m materialID) v3 {
	switch m {
	case matGlaze:
		return v3{0.80, 0.795, 0.78}
	case matWall:
		return v3{0.70, 0.685, 0.655}
	case matFloor:
		return v3{0.36, 0.32, 0.28}
	case matTable, matGround:
		return v3{0.72, 0.71, 0.69}
	case matDark:
		return v3{0.015, 0.015, 0.016}
	case matStoneware:
		return v3{0.045, 0.05, 0.055}
	case matMetal:
		return v3{0.56, 0.53, 0.49}
	case matWood:
		return v3{0.26, 0.165, 0.10}
	}
	return v3{0.4, 0.4, 0.4}
}

// coarse is a material's reflectance where light has bounced already: without
// detail, coat and body as one.
func (s *scene) coarse(h *hit) v3 {
	switch h.m {
	case matConcrete, matGlaze, matWood, matStoneware:
		return s.coarseBody(h).mul(0.955).add(v3{0.045, 0.045, 0.045})
	case matResin:
		k := &s.body.channels[h.channel]
		c, depth := &k.resin, k.depth+k.coat
		body := s.concrete.base.times(c.clear(1.9 * depth))
		veil := 1 - math.Exp(-c.veil*depth)
		body = body.mix(c.colour, veil)
		return v3{lifted(body.X), lifted(body.Y), lifted(body.Z)}.mul(1 - resinOutside)
	}
	return plainColour(h.m)
}

// coarseBody is coarse below the coat.
func (s *scene) coarseBody(h *hit) v3 {
	if h.m != matConcrete {
		return plainColour(h.m)
	}
	if h.n.Z < 0.9 || len(s.concrete.stones) == 0 {
		return s.concrete.base
	}
	return s.concrete.base.mix(gradeMean, 0.4)
}

func (s *scene) concreteSurface(x *surface, h *hit, d v3, footprint float64) {
	c := s.concrete
	p := h.p
	broken := 0.0
	if s.body.rough && h.n.Z < 0.97 {
		if e := s.body.edges[s.body.outline.nearest(p.X, p.Y)]; e.kind == design.ProfileRough && s.body.outline.at(p.X, p.Y) > -brokenReach-4 {
			if len(s.body.rims) == 0 || s.body.openings.at(p.X, p.Y) > 3 {
				broken = 1 - smooth(0.80, 0.97, h.n.Z)
			}
		}
	}
	g := c.at(p, footprint, broken, s.body.t)
	x.kd, x.a = g.kd, g.a
	if broken == 0 {
		x.cement, x.stone = g.cement, g.stone
	}
	x.n = h.n.add(g.bump).unit()
	if broken > 0 && footprint < 1.2 {
		// Grains too fine for the broken face's own shape.
		k := 0.42 * broken * (1.2 - footprint)
		q := p.mul(1 / 1.1)
		x.n = x.n.add(v3{
			k * (noise3(q) + 0.6*noise3(q.mul(2.7))),
			k * (noise3(v3{q.Y, q.Z + 5, q.X}) + 0.6*noise3(v3{q.Z, q.X, q.Y}.mul(2.7))),
			k * noise3(v3{q.Z + 9, q.X, q.Y})}).unit()
	}
	if len(c.beds) == 0 || p.Z < s.body.t-2 || h.n.Z < 0.5 {
		return
	}
	for i := range c.beds {
		b := &c.beds[i]
		if k, ok := b.at(p); ok {
			x.kd, x.gleam = b.look(s, &k, p, d, x.kd)
			x.cement, x.stone = v3{}, nil
			x.a = min(x.a, max(0.02, 0.6*c.alpha))
			return
		}
	}
}

// wood is a plain dark wood with upright grain and the seams of doors.
func wood(p v3, footprint float64) v3 {
	u := p.X + 0.6*p.Y
	warp := 6 * noise2(u/90, p.Z/400, 41)
	v := 0.5 + 0.35*noise2((u+warp)/9, p.Z/300, 42) + 0.25*noise2((u+warp)/34, p.Z/600, 43)
	if footprint < 4 {
		v += 0.15 * noise2((u+warp)/2.2, p.Z/120, 44)
	}
	kd := v3{0.16, 0.095, 0.055}.mix(v3{0.36, 0.235, 0.145}, clamp01(v))
	seam := math.Abs(math.Mod(math.Abs(u)+225, 450) - 225)
	return kd.mul(1 - 0.75*clamp01((1.6-seam)/max(0.8, footprint)+0.5)*min(1, 3.2/max(0.8, footprint)))
}

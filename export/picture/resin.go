package picture

import (
	"math"

	"example.org/castwright/model/design"
)

// resin is what fills a channel.
type resin struct {
	sigma  v3      // absorption, per mm
	veil   float64 // scattering by pigment, per mm
	colour v3      // reflectance of the pigment under the surface
	opaque bool
	glass  *scatter // nil for none
}

// tintWay is the way in mm through clear resin after which white light has the
// fill's colour. It is so long that a channel of the usual depth, with what the
// surface keeps back, comes out as bright as in the sketch.
const tintWay = 40.0

// newResin reads a fill; depth is the channel's.
func newResin(f design.Fill, depth float64) resin {
	c := linearOf(f.Colour)
	r := resin{colour: v3{sunk(c.X), sunk(c.Y), sunk(c.Z)}}
	each := func(x float64) float64 { return -math.Log(max(0.004, min(0.995, x))) / tintWay }
	r.sigma = v3{each(c.X), each(c.Y), each(c.Z)}
	o := f.Opacity.Fraction()
	r.sigma = r.sigma.mul(1 - clamp01(o)) // what pigment takes is in its colour
	r.opaque = o >= 0.995
	r.veil = -math.Log(1-min(0.995, max(0, o))) / 3
	if f.Glass != nil {
		r.glass = newScatter(*f.Glass, depth)
		if r.veil > 0 {
			// Glass takes its part of the pigment's light on both ways, to where
			// that is scattered first on the mean. The fill shall have the
			// design's colour still.
			gone := math.Exp(-r.veil * depth)
			g := r.glass.haze(1/r.veil - depth*gone/(1-gone))
			r.colour = v3{min(0.95, r.colour.X/(g.X*g.X)), min(0.95, r.colour.Y/(g.Y*g.Y)), min(0.95, r.colour.Z/(g.Z*g.Z))}
		}
	}
	return r
}

// clear is what is left of light after way mm (Bouguer, Lambert and Beer).
func (r *resin) clear(way float64) v3 {
	return v3{math.Exp(-r.sigma.X * way), math.Exp(-r.sigma.Y * way), math.Exp(-r.sigma.Z * way)}
}

// Diffuse reflectance of the resin's surface from outside and from inside:
// inside = 1 - (1 - outside) / n² by the invariance of radiance over n².
var resinOutside = diffuseFresnel(resinIndex)

var resinInside = 1 - (1-resinOutside)/(resinIndex*resinIndex)

// diffuseFresnel is the reflectance of a smooth surface for even light from
// outside: the integral of 2 F mu dmu by the midpoint rule.
func diffuseFresnel(n float64) float64 {
	const steps = 2000
	sum := 0.0
	for i := range steps {
		mu := (float64(i) + 0.5) / steps
		sum += 2 * mu * fresnel(mu, n) / steps
	}
	return sum
}

// lifted is what a diffuse body under the resin sends out of it for each unit of
// irradiance over pi at the surface, before the view's own Fresnel loss; body is
// its reflectance with the ways through the resin.
func lifted(body float64) float64 { return relifted(body, body) }

// relifted is lifted where the body gives back another share, again, of the
// light that the surface mirrors inside.
func relifted(body, again float64) float64 {
	return (1 - resinOutside) * body / (resinIndex * resinIndex * (1 - resinInside*again))
}

// sunk is the reflectance of a body that looks like x when it lies under the
// resin's surface: the inverse of lifted.
func sunk(x float64) float64 {
	return x / ((1-resinOutside)/(resinIndex*resinIndex) + resinInside*x)
}

// surfaceNormal is the normal of the resin's surface: it climbs its banks and
// ripples a little.
func (c *channel) surfaceNormal(p, n v3) v3 {
	plan := c.plan.at(p.X, p.Y)
	if plan > -9 {
		g := c.plan.slope(p.X, p.Y)
		k := 0.34*math.Exp(min(0, plan)/0.8) + 0.07*math.Exp(min(0, plan)/2.6)
		n = n.add(v3{-g.X * k, -g.Y * k, 0})
	}
	q := p.mul(1.0 / 23)
	n.X += 0.003 * noise3(q)
	n.Y += 0.003 * noise3(v3{q.Y + 9, q.Z, q.X})
	return n.unit()
}

// depthAt is how far below the resin's surface a place inside it lies, about.
func (c *channel) depthAt(b *body, p v3) float64 {
	g := b.outline.spot(p.X, p.Y)
	f := b.solid(p, g)
	if c.bulges() {
		f -= c.rise(b, p, g)
	}
	return max(0, -f)
}

// bottom finds where a ray inside the resin meets bank or floor. A ray that
// meets the resin's own surface again, as in the round of a fall, is mirrored
// there. It gives the place and the whole way.
func (b *body) bottom(r ray) (q v3, way float64) {
	t, last := 0.15, 0.15
	for range 160 {
		p := r.at(t)
		d := b.at(p)
		if d < 0.02 {
			if d < 0 {
				t = surfaced(b.at, r, last, t)
				p = r.at(t)
			}
			return p, way + t
		}
		last = t
		if b.bulges {
			out := -b.skin(p)
			if out < 0 && t > 0.3 {
				n := gradient(b.skin, p, 0.25)
				way += t
				r = ray{p.along(n, -0.1), r.d.mirrored(n)}
				t, last = 0, 0
				continue
			}
			d = min(d, max(out, 0.05))
		}
		if t += max(d, 0.02); way+t > 300 {
			break
		}
	}
	return r.at(t), way + t
}

// resinLook is what a pixel of resin shows besides its mirror.
type resinLook struct {
	albedo v3      // times the irradiance over pi
	gleam  v3      // what loose faces of glass mirror
	f      float64 // Fresnel reflectance
	n      v3
	over   v3      // of a fall: the place of the face that light came down by,
	part   float64 // and the share that did
}

// look follows a view ray of direction d that meets the resin's surface at p.
func (c *channel) look(s *scene, p, d, n v3, footprint float64) resinLook {
	n = c.surfaceNormal(p, n)
	cos := max(0.02, -d.dot(n))
	out := resinLook{n: n, f: fresnel(cos, resinIndex)}
	in, _ := refracted(d, n, resinIndex)
	r := ray{p, in}
	q, way := s.body.bottom(r)
	m := &c.resin
	if c.falls && n.Z < 0.95 {
		// Light comes to the round of a fall through its face and its front, the
		// more by the one that is nearer; to a floor more from above.
		front, down := -s.body.outline.at(q.X, q.Y), s.body.t-q.Z
		if plan := c.plan.at(q.X, q.Y); front > 1 && plan < 0 {
			// The light is asked for where the face is level again.
			in := s.body.outline.slope(q.X, q.Y).Mul(max(0, levelAgain-front))
			out.over = v3{q.X - in.X, q.Y - in.Y, s.body.t + c.coat}
			out.part = smooth(0.95, 0.6, n.Z) * front * front / (front*front + 0.4*down*down)
		}
	}
	// Pigment stands as a sheet where light is scattered first: what it sends out
	// has its colour, what lies below it must get past it on both ways.
	var body, veiled v3
	if m.opaque {
		veiled = m.colour
	} else {
		depth := c.depthAt(s.body, q)
		glass := glassLook{through: v3{1, 1, 1}, veiled: v3{1, 1, 1}.mul(1 - math.Exp(-m.veil*way)), shade: 1}
		if m.glass != nil {
			glass = m.glass.look(s, c, r, way, m)
		}
		if seen := math.Exp(-m.veil * (way + 1.18*depth)); seen > 0.003 {
			floor := s.concrete.wet(q, footprint)
			floor = floor.mul(c.reached(s, q, depth))
			body = floor.times(m.clear(way + 1.18*depth)).times(glass.through).mul(seen * glass.shade * c.web(q, depth))
		}
		body = body.add(glass.body)
		veiled = m.colour.times(glass.veiled)
		out.gleam = glass.gleam.mul(1 - out.f)
		// What the surface sends back inside goes a longer way than what came in.
		again := body.times(m.clear(longWay * depth)).add(veiled)
		out.albedo = v3{relifted(body.X+veiled.X, again.X), relifted(body.Y+veiled.Y, again.Y), relifted(body.Z+veiled.Z, again.Z)}.mul(1 - out.f)
		return out
	}
	out.albedo = v3{lifted(veiled.X), lifted(veiled.Y), lifted(veiled.Z)}.mul(1 - out.f)
	return out
}

// levelAgain is how far inside an edge, in mm, a fall's face is level at the
// latest, about.
const levelAgain = 24.0

// longWay is how much longer, in depths, the way of light is that the surface
// mirrors inside: nearly all of it runs beyond the critical angle, where the mean
// of 1/cos is 2.6 for each half.
const longWay = 2.4

// web is the soft net of light that the ripples of the surface throw on the
// floor; its mean is 1.
func (c *channel) web(q v3, depth float64) float64 {
	k := min(0.07, 0.006*depth)
	n := noise3(v3{q.X / 19, q.Y / 19, 4})
	m := noise3(v3{q.X/12 + 1.6*n, q.Y / 12, 8})
	return 1 + k*(1-2.9*math.Abs(m))
}

package picture

import "math"

// source gives numbers in [0, 1) that follow from its seed alone: one generator
// for each pixel and sample, never a shared one.
type source struct {
	seed, n uint32
	block   uint32 // seed that neighbours share, 0 for none
	place   uint32 // among the neighbours
	// Of a path of the reference: the pixel's seed and which of its paths it is.
	pixel, path uint32
}

func (s *source) next() float64 {
	s.n++
	if s.pixel != 0 && int(s.n) <= len(r8) {
		// The first numbers of a pixel's paths fill the space evenly.
		return fract(draw(s.pixel, s.n) + float64(s.path)*r8[s.n-1])
	}
	return float64(rehash(s.seed, s.n)>>8) / (1 << 24)
}

// The plastic-number sequence in two dimensions (R2) fills the square evenly.
const (
	r2x = 0.7548776662466927
	r2y = 0.5698402909980532
)

// The same in four dimensions.
var r4 = [4]float64{0.8566748838545029, 0.7338918566271260, 0.6287067210378087, 0.5385972572236101}

// shift is where the sequences of a pixel start. Neighbours that share a block
// go on in one sequence, in Morton's order, so that together they fill the space
// as evenly as one pixel alone does; the filter then has little left to do.
func (s *source) shift() (x [4]float64) {
	for i := range x {
		if s.block != 0 {
			x[i] = draw(s.block, uint32(i))
		} else {
			x[i] = s.next()
		}
	}
	return x
}

// texelSource is the source of a texel of the light layer.
func texelSource(x, y int, seed uint32) source {
	place := uint32(0)
	for b := range 4 {
		place |= uint32(x>>b&1)<<(2*b) | uint32(y>>b&1)<<(2*b+1)
	}
	return source{seed: hash4(uint32(x), uint32(y), seed, 23), block: hash4(uint32(x>>4), uint32(y>>4), seed, 24) | 1, place: place}
}

// The same in eight.
var r8 = func() (r [8]float64) {
	// The root of x^9 = x + 1, by halving.
	lo, hi := 1.0, 2.0
	for range 60 {
		if m := (lo + hi) / 2; math.Pow(m, 9) < m+1 {
			lo = m
		} else {
			hi = m
		}
	}
	for i := range r {
		r[i] = fract(math.Pow(lo, -float64(i+1)))
	}
	return r
}()

func fract(x float64) float64 { return x - math.Floor(x) }

// lightDepth is how many times light may bounce in the quick method.
const lightDepth = 12

// brightest bounds one sample of bounced light, where the open face has 1: rare
// bright ones would leave specks that no filter takes out.
const brightest = 2.5

// alikeEnough is the error, as a share of the light, below which no more samples
// are taken.
const alikeEnough = 0.02

// gather traces the irradiance over pi at p of normal n with a number of
// samples. What would fall there with nothing in the way is known in closed
// form, so the samples tell only what differs from it: what share of each light
// and of the window is in sight, and how much brighter or darker than the studio
// is what stands before it, along one path by the cosine. In the open nothing
// differs, and there is no noise. a is the roughness of the coat that the light
// must pass, negative for none. It gives the mean and the variance of the mean's
// luminance.
func (s *scene) gather(p, n v3, a float64, samples int, rnd *source) (mean v3, variance float64) {
	mean, variance, _ = s.felt(p, n, a, samples, rnd, nil)
	return mean, variance
}

// nearest bounds how near something counts as, mm.
const nearest = 2.0

// felt is gather that also says how steeply the light's luminance may change about
// the place, to the millimetre: what stands in the way of light, or sends
// other light than the studio, changes its part within about its distance (after
// Ward, Rubinstein and Clear, A Ray Tracing Solution for Diffuse Interreflection,
// 1988).
// What of each light is in sight is written to seen, if that is not nil.
func (s *scene) felt(p, n v3, a float64, samples int, rnd *source, seen *[mostLights]float64) (mean v3, variance, steep float64) {
	shift := rnd.shift()
	pass := passing(a)
	o := off(p, n)
	var lights [mostLights]lit
	m := s.rig.lit(p, n, &lights)
	base := s.rig.even(n, pass)
	sum, ysum, sum2 := v3{}, 0.0, 0.0
	start := int(rnd.place) * samples
	for i := range samples {
		k := float64(start + i)
		u, v := fract(shift[0]+k*r4[0]), fract(shift[1]+k*r4[1])
		w := cosineDir(n, fract(shift[2]+k*r4[2]), fract(shift[3]+k*r4[3]))
		l, way := s.differs(ray{o, w}, rnd)
		l = l.mul(pass.at(w.dot(n)))
		y := l.luma()
		if y > brightest {
			l = l.mul(brightest / y)
			y = brightest
		}
		steep += math.Abs(y) / max(nearest, way)
		sum = sum.add(l)
		for k := range m {
			g := &lights[k]
			f, left, reach := s.sampled(o, n, g, fract(u+0.41*float64(k)), fract(v+0.73*float64(k)), pass)
			g.all += f
			g.seen += f * left
			if reach > 0 {
				steep += g.bright / max(nearest, reach)
			}
			y += g.bright * left
		}
		sum2 += y * y
		ysum += y
		if n := float64(i + 1); i+1 == samples/2 && n >= 3 {
			// Where the samples agree, half of them will do.
			if y := ysum / n; sum2/n-y*y < alikeEnough*alikeEnough*n*y*y {
				samples = i + 1
				break
			}
		}
	}
	k := 1 / float64(samples)
	mean = base.add(sum.mul(k))
	y := sum.mul(k).luma()
	for i := range m {
		g := &lights[i]
		if g.all > 0 {
			mean = mean.along(g.e, g.seen/g.all)
			y += g.bright * g.seen / g.all
			if seen != nil {
				seen[g.k] = min(1, g.seen/g.all)
			}
		}
	}
	mean = v3{max(0, mean.X), max(0, mean.Y), max(0, mean.Z)}
	if samples > 1 {
		variance = max(0, sum2*k-y*y) / float64(samples-1)
	} else {
		variance = y * y
	}
	return mean, variance, steep * k
}

// pass is the share of light that a coat lets through to its body and out, by
// direction, over its mean.
type pass struct {
	a, mean float64
}

func passing(a float64) pass {
	if a < 0 {
		return pass{-1, 0}
	}
	return pass{a, coats().mean(a)}
}

func (p pass) at(cos float64) float64 {
	if p.a < 0 {
		return 1
	}
	return (1 - coats().at(p.a, cos)) / (1 - p.mean)
}

// lit is what a light gives a place.
type lit struct {
	k      int     // of the rig's lights; the window is after the last one
	e      v3      // irradiance over pi with nothing in the way
	bright float64 // its luminance
	all    float64 // weights of the samples, and of those that are not hidden
	seen   float64
}

const mostLights = 3

// lit lists the lights that reach a place.
func (g *rig) lit(p, n v3, to *[mostLights]lit) int {
	m := 0
	for k := range g.lights {
		if share := g.lights[k].share(p, n); share > 1e-6 {
			e := g.lights[k].l.mul(share)
			to[m] = lit{k: k, e: e, bright: e.luma()}
			m++
		}
	}
	if e := g.windowLight(n); e.X+e.Y+e.Z > 1e-6 {
		to[m] = lit{k: len(g.lights), e: e, bright: e.luma()}
		m++
	}
	return m
}

// windowWidth is about how wide the window is, at distance 1.
const windowWidth = 0.5

// sampled is the weight of one place of a light, and what of it is seen; where
// something hides it, reach is about how wide the edge of its shadow is, else 0.
func (s *scene) sampled(o, n v3, g *lit, u, v float64, pass pass) (f, seen, reach float64) {
	if g.k == len(s.rig.lights) {
		d, f := windowPlace(u, v)
		cos := d.dot(n)
		if cos <= 0 || f <= 0 {
			return 0, 0, 0
		}
		if t, hid := s.shut(ray{o, d}); hid {
			return f * cos, 0, windowWidth * t
		}
		return f * cos, pass.at(cos), 0
	}
	l := &s.rig.lights[g.k]
	q := l.point(u, v).sub(o)
	r2 := q.dot(q)
	dist := math.Sqrt(r2)
	d := q.mul(1 / dist)
	cos, cosL := d.dot(n), -d.dot(l.n)
	if cos <= 0 || cosL <= 0 {
		return 0, 0, 0
	}
	f = cos * cosL / r2
	if t, hid := s.obstacle(ray{o, d}, dist); hid {
		return f, 0, t * (l.hu + l.hv) / dist
	}
	return f, pass.at(cos), 0
}

// fromLight is one light's irradiance over pi by one point of it.
func (s *scene) fromLight(o, n v3, k int, u, v float64, pass func(float64) float64) v3 {
	l := &s.rig.lights[k]
	q := l.point(u, v).sub(o)
	r2 := q.dot(q)
	dist := math.Sqrt(r2)
	d := q.mul(1 / dist)
	cos, cosL := d.dot(n), -d.dot(l.n)
	if cos <= 0 || cosL <= 0 || s.blocked(ray{o, d}, dist) {
		return v3{}
	}
	return l.l.mul(cos * cosL * l.area() / (math.Pi * r2) * pass(cos))
}

// shut reports whether anything, walls too, stands before the studio on a ray, and
// how far away.
func (s *scene) shut(r ray) (float64, bool) {
	for i := range s.planes {
		p := &s.planes[i]
		if k := r.d.dot(p.n); k < -1e-9 && p.d-r.o.dot(p.n) < 0 {
			return (p.d - r.o.dot(p.n)) / k, true
		}
	}
	return s.obstacle(r, far)
}

// differs is how much the radiance along a ray is more than the studio's,
// without lights and window that it meets by chance: they are counted where it
// starts. Every surface on the way is taken as diffuse. way is how far the first
// of them is.
func (s *scene) differs(r ray, rnd *source) (sum v3, way float64) {
	weight := v3{1, 1, 1}
	way = far
	for depth := 1; ; depth++ {
		h, ok := s.hitWithin(r, wayNear)
		if !ok {
			return sum, way
		}
		if depth == 1 {
			way = h.t
		}
		var mirror, body, all v3
		if depth == 1 {
			// What is seen first mirrors the lights as well: a polished face
			// throws their light on the wall.
			mirror, body, all = s.glint(&h, r.d)
		} else {
			body = s.coarse(&h)
			all = body
		}
		o := off(h.p, h.n)
		var e v3
		// One of the lights stands for all.
		var lights [mostLights]lit
		if m := s.rig.lit(o, h.n, &lights); m > 0 {
			bright := 0.0
			for k := range m {
				bright += lights[k].bright
			}
			x, k := rnd.next()*bright, 0
			for k < m-1 && x >= lights[k].bright {
				x -= lights[k].bright
				k++
			}
			if f, seen, _ := s.sampled(o, h.n, &lights[k], rnd.next(), rnd.next(), pass{-1, 0}); f > 0 && seen > 0 {
				e = lights[k].e.mul(bright / lights[k].bright)
			}
		}
		even := s.rig.even(h.n, pass{-1, 0})
		there := mirror.add(body.times(e)).add(all.times(even)).sub(s.rig.backdrop(r.d))
		sum = sum.add(weight.times(there))
		weight = weight.times(all)
		q := min(0.95, weight.most())
		if depth == lightDepth || rnd.next() >= q {
			return sum, way
		}
		weight = weight.mul(1 / q)
		r = ray{o, cosineDir(h.n, rnd.next(), rnd.next())}
	}
}

// glint is what a surface mirrors of the lights toward where a ray of direction d
// comes from, in closed form; the share of their light that its body gives back;
// and the share of all other light that body and mirror do.
func (s *scene) glint(h *hit, d v3) (mirror, body, all v3) {
	a, f := s.roughness(h.m), v3{}
	cos := -d.dot(h.n)
	switch {
	case h.m == matMetal:
		f = schlick(plainColour(matMetal), cos)
	case h.m == matResin:
		k := fresnel(cos, resinIndex)
		f, a, body = v3{k, k, k}, 0, s.coarse(h)
	case a >= 0:
		k := coats().at(a, cos)
		f, body = v3{k, k, k}, s.coarseBody(h).mul(1-k)
	default:
		body = s.coarse(h)
		return v3{}, body, body
	}
	w := d.mirrored(h.n)
	mirror = s.rig.studio(w).sub(s.rig.backdrop(w)) // the window
	o := off(h.p, h.n)
	for i := range s.rig.lights {
		l := &s.rig.lights[i]
		v, t := l.sheen(ray{o, w}, a)
		if v*f.most()*l.l.luma() < 0.01 || s.blocked(ray{o, w}, t) {
			continue
		}
		mirror = mirror.add(l.l.mul(v))
	}
	return mirror.times(f), body, body.add(f)
}

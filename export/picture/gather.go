package picture

import "math"

// source gives numbers in [0, 1) that follow from its seed alone: one generator
// for each pixel and sample, never a shared one.
type source struct {
	seed, n uint32
	block   uint32 // seed that neighbours share, 0 for none
	place   uint32 // among the neighbours
}

func (s *source) next() float64 {
	s.n++
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

func fract(x float64) float64 { return x - math.Floor(x) }

// lightDepth is how many times light may bounce in the quick method.
const lightDepth = 9

// brightest bounds one sample of bounced light, where the open face has 1: rare
// bright ones would leave specks that no filter takes out.
const brightest = 2.5

// gather traces the irradiance over pi at p of normal n with a number of
// samples: to each light, and along one path by the cosine. a is the roughness
// of the coat that the light must pass, negative for none. It gives the mean and
// the variance of the mean's luminance.
func (s *scene) gather(p, n v3, a float64, samples int, rnd *source) (mean v3, variance float64) {
	shift := rnd.shift()
	coat := coats()
	o := off(p, n)
	pass := func(cos float64) float64 {
		if a < 0 {
			return 1
		}
		return (1 - coat.at(a, cos)) / (1 - coat.mean(a))
	}
	sum, sum2 := v3{}, 0.0
	for i := range samples {
		k := float64(int(rnd.place)*samples + i)
		u, v := fract(shift[0]+k*r4[0]), fract(shift[1]+k*r4[1])
		var d v3
		for k := range s.rig.lights {
			d = d.add(s.fromLight(o, n, k, fract(u+0.41*float64(k)), fract(v+0.73*float64(k)), pass))
		}
		w := cosineDir(n, fract(shift[2]+k*r4[2]), fract(shift[3]+k*r4[3]))
		l := s.bounced(ray{o, w}, rnd).mul(pass(w.dot(n)))
		if y := l.luma(); y > brightest {
			l = l.mul(brightest / y)
		}
		d = d.add(l)
		sum = sum.add(d)
		y := d.luma()
		sum2 += y * y
	}
	k := 1 / float64(samples)
	mean = sum.mul(k)
	y := mean.luma()
	if samples > 1 {
		variance = max(0, sum2*k-y*y) / float64(samples-1)
	} else {
		variance = y * y
	}
	return mean, variance
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

func open(float64) float64 { return 1 }

// bounced is the radiance along a ray, without lights that it meets by chance:
// they have been counted where it starts. Every surface on the way is taken as
// diffuse.
func (s *scene) bounced(r ray, rnd *source) v3 {
	var sum v3
	weight := v3{1, 1, 1}
	for depth := 1; ; depth++ {
		h, ok := s.hitWithin(r, wayNear)
		if !ok {
			return sum.add(weight.times(s.rig.studio(r.d)))
		}
		if depth == 1 {
			// What is seen first mirrors the lights as well: a polished face
			// throws their light on the wall.
			var glint, body v3
			glint, body = s.glint(&h, r.d)
			sum = sum.add(glint)
			weight = body
		} else {
			weight = weight.times(s.coarse(&h))
		}
		if depth >= 1 {
			q := min(0.95, weight.most())
			if rnd.next() >= q {
				return sum
			}
			weight = weight.mul(1 / q)
		}
		o := off(h.p, h.n)
		// One of the lights stands for all.
		k := min(len(s.rig.lights)-1, int(rnd.next()*float64(len(s.rig.lights))))
		e := s.fromLight(o, h.n, k, rnd.next(), rnd.next(), open).mul(float64(len(s.rig.lights)))
		sum = sum.add(weight.times(e))
		if depth == lightDepth {
			return sum
		}
		r = ray{o, cosineDir(h.n, rnd.next(), rnd.next())}
	}
}

// glint is what a surface mirrors toward where a ray of direction d comes from,
// lights in closed form and the studio as if nothing stood in it, and the share
// of light that its body gives back.
func (s *scene) glint(h *hit, d v3) (mirror, body v3) {
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
		return v3{}, s.coarse(h)
	}
	w := d.mirrored(h.n)
	mirror = s.rig.studio(w)
	o := off(h.p, h.n)
	for i := range s.rig.lights {
		l := &s.rig.lights[i]
		v, t := l.sheen(ray{o, w}, a, cos)
		if v*f.most()*l.l.luma() < 0.01 || s.blocked(ray{o, w}, t) {
			continue
		}
		mirror = mirror.add(l.l.mul(v))
	}
	return mirror.times(f), body
}

package picture

import (
	"image"
	"math"
)

// layer is the light of a picture at a part of its resolution: one texel for
// each block of pixels. Light is smooth where material is not, so it may be
// traced coarsely and filtered.
type layer struct {
	step   int // pixels to a texel
	ox, oy float64
	w, h   int
	t      []texel
}

// texel is the light at the middle of one block.
type texel struct {
	p, n      v3
	footprint float64
	d         v3      // irradiance over pi
	vd        float64 // variance of its luminance
	s         v3      // what the coat mirrors but the lights, without Fresnel
	vs        float64
	open      v3 // irradiance over pi with nothing in the way
	m         materialID
}

// glossy is the roughness below which a mirror ray is followed for each pixel.
const glossy = 0.06

// trace fills the layer.
func (s *scene) trace(p *pool, c *camera, step, samples int, ox, oy float64, seed uint32) (*layer, error) {
	l := &layer{step: step, ox: ox, oy: oy, w: (c.w+step-1)/step + 1, h: (c.h+step-1)/step + 1}
	l.t = make([]texel, l.w*l.h)
	err := p.tiles(l.w, l.h, 16, func(r image.Rectangle) {
		for y := r.Min.Y; y < r.Max.Y; y++ {
			for x := r.Min.X; x < r.Max.X; x++ {
				rnd := texelSource(x, y, seed)
				s.lightAt(&l.t[y*l.w+x], c.ray(l.pixel(x, y)), c, step, samples, &rnd)
			}
		}
	})
	return l, err
}

// pixel is the place in the picture of a texel.
func (l *layer) pixel(x, y int) (float64, float64) {
	return (float64(x) + l.ox) * float64(l.step), (float64(y) + l.oy) * float64(l.step)
}

func (s *scene) lightAt(t *texel, r ray, c *camera, step, samples int, rnd *source) {
	h, ok := s.hit(r)
	if !ok {
		return
	}
	t.m, t.p, t.n = h.m, h.p, h.n
	t.footprint = c.footprint(h.t) * float64(step)
	if s.catches(h.m) {
		t.d, t.vd = s.shaded(h.p, h.n, samples, rnd)
		return
	}
	a := s.roughness(h.m)
	if h.m != matMetal {
		t.d, t.vd = s.gather(h.p, h.n, min(a, 1), samples, rnd)
	}
	t.open = s.rig.open(h.p, h.n)
	if a >= glossy {
		t.s, t.vs = s.mirrored(&h, r.d, a, max(2, samples/2), rnd)
	}
}

// roughness is a material's coat in the light layer; negative for none.
func (s *scene) roughness(m materialID) float64 {
	switch m {
	case matConcrete:
		return s.concrete.alpha
	case matGlaze:
		return 0.03
	case matStoneware:
		return 0.2
	case matWood:
		return 0.32
	case matMetal:
		return 0.13
	}
	return -1
}

// mirrored is what a rough coat mirrors of the room without its lights; weights
// are normalized to 1, for the coat's table holds the masking.
func (s *scene) mirrored(h *hit, d v3, a float64, samples int, rnd *source) (v3, float64) {
	var sum v3
	weight, sum2 := 0.0, 0.0
	o := off(h.p, h.n)
	u, v := rnd.next(), rnd.next()
	for i := range samples {
		w, _, g := lobe(d, h.n, a, fract(u+float64(i)*r2x), fract(v+float64(i)*r2y))
		if g <= 0 || w.dot(h.n) <= 0 {
			continue
		}
		l := s.seen(ray{o, w}, rnd)
		sum = sum.add(l.mul(g))
		weight += g
		y := l.luma()
		sum2 += g * y * y
	}
	if weight == 0 {
		return s.rig.studio(d.mirrored(h.n)), 0
	}
	mean := sum.mul(1 / weight)
	y := mean.luma()
	return mean, max(0, sum2/weight-y*y) / float64(samples)
}

// seen is the radiance along a mirrored ray, lights left out.
func (s *scene) seen(r ray, rnd *source) v3 {
	h, ok := s.hit(r)
	if !ok {
		return s.rig.studio(r.d)
	}
	if h.m == matMetal {
		return s.rig.studio(r.d.mirrored(h.n)).times(plainColour(matMetal))
	}
	rnd.block = 0
	d, _ := s.gather(h.p, h.n, -1, 1, rnd)
	return d.times(s.coarse(&h))
}

// filtered smooths the layer by an à-trous wavelet that stops at edges
// (Dammertz and others, Edge-Avoiding À-Trous Wavelet Transform, 2010), carrying
// the variance along (Schied and others, 2017).
func (l *layer) filtered(p *pool) error {
	buf := make([]texel, len(l.t))
	for _, hop := range [...]int{1, 2, 4, 8, 16} {
		err := p.tiles(l.w, l.h, 32, func(r image.Rectangle) {
			for y := r.Min.Y; y < r.Max.Y; y++ {
				for x := r.Min.X; x < r.Max.X; x++ {
					l.smoothed(&buf[y*l.w+x], x, y, hop)
				}
			}
		})
		if err != nil {
			return err
		}
		l.t, buf = buf, l.t
	}
	return nil
}

// waning is near exp(-x) for x of 0 or more, by (1 - x/16)^16.
func waning(x float64) float64 {
	if x >= 16 {
		return 0
	}
	y := 1 - x/16
	y *= y
	y *= y
	y *= y
	return y * y
}

var kernel = [3]float64{3.0 / 8, 1.0 / 4, 1.0 / 16}

func (l *layer) smoothed(to *texel, x, y, hop int) {
	c := &l.t[y*l.w+x]
	*to = *c
	if c.m == matNone || c.m == matMetal {
		return
	}
	yd, ys := c.d.luma(), c.s.luma()
	kd := 1 / (6*math.Sqrt(l.spread(x, y, false)) + 0.015*yd + 1e-6)
	ks := 1 / (6*math.Sqrt(l.spread(x, y, true)) + 0.015*ys + 1e-6)
	flat := 1 / (1.2 * c.footprint * float64(hop))
	var sd, ss v3
	var wd, ws, vd, vs float64
	for j := -2; j <= 2; j++ {
		yy := y + j*hop
		if yy < 0 || yy >= l.h {
			continue
		}
		for i := -2; i <= 2; i++ {
			xx := x + i*hop
			if xx < 0 || xx >= l.w {
				continue
			}
			t := &l.t[yy*l.w+xx]
			if t.m != c.m {
				continue
			}
			k := c.n.dot(t.n)
			if k < 0.7 {
				continue
			}
			k *= k
			k *= k
			k *= k
			k *= k
			plane := math.Abs(c.n.dot(t.p.sub(c.p))) * flat
			w := kernel[max(i, -i)] * kernel[max(j, -j)] * k * waning(plane)
			a := w * waning(math.Abs(t.d.luma()-yd)*kd)
			sd, wd, vd = sd.add(t.d.mul(a)), wd+a, vd+a*a*t.vd
			b := w * waning(math.Abs(t.s.luma()-ys)*ks)
			ss, ws, vs = ss.add(t.s.mul(b)), ws+b, vs+b*b*t.vs
		}
	}
	if wd > 0 {
		to.d, to.vd = sd.mul(1/wd), vd/(wd*wd)
	}
	if ws > 0 {
		to.s, to.vs = ss.mul(1/ws), vs/(ws*ws)
	}
}

// spread is the variance about a texel, smoothed a little: that of one texel
// with few samples says little.
func (l *layer) spread(x, y int, mirror bool) float64 {
	sum, n := 0.0, 0.0
	m := l.t[y*l.w+x].m
	for j := max(0, y-1); j <= min(l.h-1, y+1); j++ {
		for i := max(0, x-1); i <= min(l.w-1, x+1); i++ {
			t := &l.t[j*l.w+i]
			if t.m != m {
				continue
			}
			if mirror {
				sum += t.vs
			} else {
				sum += t.vd
			}
			n++
		}
	}
	return sum / n
}

// at is the light at a place seen at pixel (x, y); ok is false when no texel
// nearby belongs to it.
func (l *layer) at(s *scene, x, y float64, p, n v3, m materialID, footprint float64) (d, mirror v3, ok bool) {
	u, v := x/float64(l.step)-l.ox, y/float64(l.step)-l.oy
	i, j := int(math.Floor(u)), int(math.Floor(v))
	fu, fv := u-float64(i), v-float64(j)
	q := query{p, n, m, 0.6*footprint*float64(l.step) + 0.5}
	var sum gathered
	rough := false
	lo, hi := math.Inf(1), 0.0
	for k := range 4 {
		a, b := k&1, k>>1
		w := (1 - fu + float64(a)*(2*fu-1)) * (1 - fv + float64(b)*(2*fv-1))
		t := l.texel(i+a, j+b)
		if t == nil || !q.fits(t) {
			rough = true
			continue
		}
		y := t.d.luma()
		lo, hi = min(lo, y), max(hi, y)
		sum.add(s, &q, t, w+1e-4)
	}
	if rough || hi > 1.5*lo {
		sum = gathered{open: sum.open, opened: sum.opened}
		for k := range 16 {
			a, b := k&3-1, k>>2-1
			t := l.texel(i+a, j+b)
			if t == nil || !q.fits(t) {
				continue
			}
			du, dv := fu-float64(a), fv-float64(b)
			w := waning(1.6*(du*du+dv*dv) + 2*math.Abs(n.dot(t.p.sub(p)))/q.near)
			sum.add(s, &q, t, w+1e-5)
		}
	}
	if sum.w == 0 {
		return v3{}, v3{}, false
	}
	return sum.d.mul(1 / sum.w), sum.s.mul(1 / sum.w), true
}

func (l *layer) texel(i, j int) *texel {
	if i < 0 || j < 0 || i >= l.w || j >= l.h {
		return nil
	}
	return &l.t[j*l.w+i]
}

// query is a place whose light is wanted.
type query struct {
	p, n v3
	m    materialID
	near float64
}

func (q *query) fits(t *texel) bool {
	return t.m == q.m && q.n.dot(t.n) > 0.25 && math.Abs(q.n.dot(t.p.sub(q.p))) <= q.near
}

// gathered is a weighted sum of texels.
type gathered struct {
	d, s   v3
	w      float64
	open   v3
	opened bool
}

// add takes a texel; where its normal differs, its light is scaled by what each
// of the two places would get with nothing in the way.
func (g *gathered) add(s *scene, q *query, t *texel, w float64) {
	d := t.d
	if q.n.dot(t.n) < 0.9995 && t.open != (v3{}) {
		if !g.opened {
			g.open, g.opened = s.rig.open(q.p, q.n), true
		}
		k := func(a, b float64) float64 { return min(3, a/max(b, 1e-3)) }
		d = v3{d.X * k(g.open.X, t.open.X), d.Y * k(g.open.Y, t.open.Y), d.Z * k(g.open.Z, t.open.Z)}
	}
	g.d, g.s, g.w = g.d.add(d.mul(w)), g.s.add(t.s.mul(w)), g.w+w
}

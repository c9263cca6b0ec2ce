package picture

import (
	"image"
	"math"
)

// layer is the light of a picture at a part of its resolution: one texel for
// each block of pixels. Light is smooth where material is not, so it may be
// traced coarsely and filtered. Blocks near contacts, edges and shadows have
// four finer texels each besides.
type layer struct {
	step int // pixels to a texel
	w, h int
	t    []texel
	sub  []int32 // by block: where its finer texels start, -1 for none
	fine []texel
	list []int32 // the blocks that have them
	near []bool  // by block: one by it, or it, has them
	// By kind of place: what share of the studio's light it has.
	share [kinds]v3
}

// c3 is a v3 in half the space.
type c3 struct{ X, Y, Z float32 }

func (a v3) small() c3 { return c3{float32(a.X), float32(a.Y), float32(a.Z)} }

func (a c3) wide() v3 { return v3{float64(a.X), float64(a.Y), float64(a.Z)} }

func (a c3) dot(b c3) float32 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

func (a c3) sub(b c3) c3 { return c3{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }

func (a c3) along(b c3, t float32) c3 { return c3{a.X + b.X*t, a.Y + b.Y*t, a.Z + b.Z*t} }

func (a c3) mul(f float32) c3 { return c3{a.X * f, a.Y * f, a.Z * f} }

func (a c3) luma() float32 { return 0.2126*a.X + 0.7152*a.Y + 0.0722*a.Z }

// texel is the light at the middle of one block.
type texel struct {
	p, n      c3
	footprint float32
	d         c3      // irradiance over pi
	vd        float32 // variance of its luminance
	s         c3      // what the coat mirrors but the lights, without Fresnel
	vs        float32
	open      c3      // irradiance over pi with nothing in the way
	steep     float32 // how fast its luminance may change, to the mm
	m         materialID
}

// Roughnesses: below glossy a mirror ray is followed for each pixel, and below
// clearest what it meets is seen without any blur.
const (
	glossy   = 0.06
	clearest = 0.02
)

// trace fills the layer.
func (s *scene) trace(p *pool, c *camera, step, samples int, seed uint32) (*layer, error) {
	l := &layer{step: step, w: (c.w+step-1)/step + 1, h: (c.h+step-1)/step + 1}
	l.t = make([]texel, l.w*l.h)
	err := p.tiles(l.w, l.h, 16, func(r image.Rectangle) {
		for y := r.Min.Y; y < r.Max.Y && !p.stopped(); y++ {
			for x := r.Min.X; x < r.Max.X; x++ {
				rnd := texelSource(x, y, seed)
				px, py := (float64(x)+0.5)*float64(step), (float64(y)+0.5)*float64(step)
				s.lightAt(&l.t[y*l.w+x], c.ray(px, py), c, float64(step), samples, &rnd)
			}
		}
	})
	return l, err
}

// refined traces finer texels where light changes within a block of the filtered
// layer, half a block apart, with three quarters of the samples.
func (s *scene) refined(p *pool, l *layer, c *camera, samples int, seed uint32) error {
	if l.step < 2 {
		return nil
	}
	l.refine()
	n, step := max(2, samples*3/4), float64(l.step)/2
	return p.tiles(len(l.list), 1, 64, func(r image.Rectangle) {
		for i := r.Min.X; i < r.Max.X && !p.stopped(); i++ {
			x, y := int(l.list[i])%l.w, int(l.list[i])/l.w
			for k := range 4 {
				fx, fy := 2*x+k&1, 2*y+k>>1
				rnd := texelSource(fx, fy, seed+1)
				s.lightAt(&l.fine[4*i+k], c.ray((float64(fx)+0.5)*step, (float64(fy)+0.5)*step), c, step, n, &rnd)
			}
		}
	})
}

// refine finds the blocks whose light changes within them.
func (l *layer) refine() {
	l.sub = make([]int32, len(l.t))
	for y := range l.h {
		for x := range l.w {
			at := y*l.w + x
			l.sub[at] = -1
			if l.t[at].m == matNone {
				continue
			}
		about:
			for j := max(0, y-1); j <= min(l.h-1, y+1); j++ {
				for i := max(0, x-1); i <= min(l.w-1, x+1); i++ {
					if l.t[at].parts(&l.t[j*l.w+i]) {
						l.sub[at] = int32(4 * len(l.list))
						l.list = append(l.list, int32(at))
						break about
					}
				}
			}
		}
	}
	l.near = make([]bool, len(l.t))
	for _, at := range l.list {
		x, y := int(at)%l.w, int(at)/l.w
		for j := max(0, y-1); j <= min(l.h-1, y+1); j++ {
			for i := max(0, x-1); i <= min(l.w-1, x+1); i++ {
				l.near[j*l.w+i] = true
			}
		}
	}
	l.fine = make([]texel, 4*len(l.list))
}

// parts reports whether light may change on the way to a neighbour.
func (t *texel) parts(u *texel) bool {
	if u.m == matNone {
		return false
	}
	if t.m == matMetal {
		return false
	}
	off := u.p.sub(t.p)
	if t.m != u.m && off.dot(off) > square(8*t.footprint) && t.steep*t.footprint < 0.03*(t.d.luma()+0.1) {
		return false // far behind the other, whose outline does not touch its light
	}
	if t.m != u.m || t.n.dot(u.n) < 0.8 || max(abs32(t.n.dot(off)), abs32(u.n.dot(off))) > t.footprint {
		return true
	}
	a, b := t.d.luma(), u.d.luma()
	d := math.Abs(float64(a - b))
	return d > 0.17*float64(max(a, b))
}

func (s *scene) lightAt(t *texel, r ray, c *camera, step float64, samples int, rnd *source) {
	h, ok := s.hit(r)
	if !ok {
		return
	}
	t.m, t.p, t.n = h.m, h.p.small(), h.n.small()
	t.footprint = float32(c.footprint(h.t) * step)
	if s.catches(h.m) {
		d, v := s.shaded(h.p, h.n, samples, rnd)
		t.d, t.vd = d.small(), float32(v)
		return
	}
	if h.m == matMetal {
		return // it is shaded for each pixel
	}
	a := s.roughness(h.m)
	var seen [mostLights]float64
	d, v, steep := s.felt(h.p, h.n, min(a, 1), samples, rnd, &seen)
	t.d, t.vd, t.steep = d.small(), float32(v), float32(steep)
	t.open = s.rig.open(h.p, h.n).small()
	if a >= clearest {
		m, v := s.mirrored(&h, r.d, a, max(2, samples/2), rnd)
		m = m.add(s.aside(&h, r.d, a, &seen))
		t.s, t.vs = m.small(), float32(v)
	}
}

// aside is what a rough coat mirrors of the lights beside its lobe, without
// Fresnel; highlights has what is in it.
func (s *scene) aside(h *hit, d v3, a float64, seen *[mostLights]float64) (sum v3) {
	w := d.mirrored(h.n)
	for i := range s.rig.lights {
		l := &s.rig.lights[i]
		part := (1 - l.inLobe(h.p, w, a)) * seen[i]
		if part == 0 {
			continue
		}
		share, facet := l.shine(h.p, h.n, d.mul(-1), a)
		sum = sum.along(l.l, part*share*fresnel(facet, coatIndex))
	}
	return sum.mul(1 / coats().at(a, -d.dot(h.n)))
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
// are normalized to 1, for the coat's table holds the masking and the reflectance.
func (s *scene) mirrored(h *hit, d v3, a float64, samples int, rnd *source) (v3, float64) {
	var sum v3
	weight, sum2 := 0.0, 0.0
	o := off(h.p, h.n)
	u, v := rnd.next(), rnd.next()
	for i := range samples {
		w, facet, g := lobe(d, h.n, a, fract(u+float64(i)*r2x), fract(v+float64(i)*r2y))
		if g <= 0 || w.dot(h.n) <= 0 {
			continue
		}
		g *= fresnel(facet, coatIndex)
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
	h, ok := s.hitWithin(r, wayNear)
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
					l.smoothed(&buf[y*l.w+x], x, y, hop, l.w, l.h, l.texel)
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

// filteredFine is filtered for the finer texels.
func (l *layer) filteredFine(s *scene, p *pool) error {
	buf := make([]texel, len(l.fine))
	for _, hop := range [...]int{1, 2, 4} {
		err := p.tiles(len(l.list), 1, 256, func(r image.Rectangle) {
			for i := r.Min.X; i < r.Max.X; i++ {
				x, y := int(l.list[i])%l.w, int(l.list[i])/l.w
				for k := range 4 {
					l.smoothed(&buf[4*i+k], 2*x+k&1, 2*y+k>>1, hop, 2*l.w, 2*l.h, l.finer)
				}
			}
		})
		if err != nil {
			return err
		}
		l.fine, buf = buf, l.fine
	}
	l.shares(s)
	// What the finer texels show beyond the blocks counts as far as it stands
	// out from their noise.
	return p.tiles(len(l.list), 1, 256, func(r image.Rectangle) {
		for i := r.Min.X; i < r.Max.X; i++ {
			x, y := int(l.list[i])%l.w, int(l.list[i])/l.w
			for k := range 4 {
				t := &l.fine[4*i+k]
				if t.m == matNone || t.m == matMetal {
					continue
				}
				q := query{t.p, t.n, t.m, 1.2*t.footprint + 0.5}
				d, m, ok := l.coarse(s, &q, float64(x)+0.25+0.5*float64(k&1), float64(y)+0.25+0.5*float64(k>>1), t.p.wide(), t.n.wide())
				if !ok {
					continue
				}
				c, cs := d.small(), m.small()
				e := t.d.luma() - c.luma()
				t.d = c.along(t.d.sub(c), e*e/(e*e+8*t.vd+1e-6))
				e = t.s.luma() - cs.luma()
				t.s = cs.along(t.s.sub(cs), e*e/(e*e+8*t.vs+1e-6))
			}
		}
	})
}

// waning is near exp(-x) for x of 0 or more, by (1 - x/16)^16.
func waning(x float32) float32 {
	if x >= 16 {
		return 0
	}
	y := 1 - x/16
	y *= y
	y *= y
	y *= y
	return y * y
}

var kernel = [3]float32{3.0 / 8, 1.0 / 4, 1.0 / 16}

// mixedChange is how far the light may change, as a share of it, over the way to
// a texel that is mixed with another.
const mixedChange = 0.3

// smoothed is the texel (x, y) of a grid of w x h after one pass.
func (l *layer) smoothed(to *texel, x, y, hop, w, h int, grid func(x, y int) *texel) {
	c := grid(x, y)
	*to = *c
	if c.m == matNone || c.m == matMetal {
		return
	}
	yd, ys := c.d.luma(), c.s.luma()
	sd2, ss2 := spread(c.m, x, y, w, h, grid)
	// The first pass mixes whatever is near: a weight by brightness would favour
	// the many dark samples over the few bright ones.
	kd, ks := float32(0), float32(0)
	if hop > 1 {
		kd, ks = 1/(4*root(sd2)+0.008*yd+1e-6), 1/(4*root(ss2)+0.008*ys+1e-6)
	}
	flat := 1 / (1.2 * c.footprint * float32(hop))
	// From the second pass on what is mixed must lie where light is nearly the
	// same: a contact's shadow would fade otherwise.
	narrow := float32(0)
	if hop > 1 {
		narrow = 1 / (mixedChange * (yd + 0.1))
	}
	var sd, ss c3
	var wd, ws, vd, vs, steep, all float32
	mirrors := c.s != c3{}
	for j := -2; j <= 2; j++ {
		yy := y + j*hop
		if yy < 0 || yy >= h {
			continue
		}
		for i := -2; i <= 2; i++ {
			xx := x + i*hop
			if xx < 0 || xx >= w {
				continue
			}
			t := grid(xx, yy)
			if t == nil || t.m != c.m {
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
			off := t.p.sub(c.p)
			plane := abs32(c.n.dot(off)) * flat
			k *= kernel[max(i, -i)] * kernel[max(j, -j)]
			w := k * waning(plane)
			a := k * waning(plane+off.dot(off)*square(max(c.steep, t.steep)*narrow)+abs32(t.d.luma()-yd)*kd)
			sd, wd, vd = sd.along(t.d, a), wd+a, vd+a*a*t.vd
			steep += w * t.steep
			all += w
			if mirrors {
				b := w * waning(abs32(t.s.luma()-ys)*ks)
				ss, ws, vs = ss.along(t.s, b), ws+b, vs+b*b*t.vs
			}
		}
	}
	if wd > 0 {
		to.d, to.vd = sd.mul(1/wd), vd/(wd*wd)
		to.steep = steep / all
	}
	if ws > 0 {
		to.s, to.vs = ss.mul(1/ws), vs/(ws*ws)
	}
}

func abs32(x float32) float32 { return math.Float32frombits(math.Float32bits(x) &^ (1 << 31)) }

func square(x float32) float32 { return x * x }

func root(x float32) float32 { return float32(math.Sqrt(float64(x))) }

// spread is the variance about a texel, smoothed a little: that of one texel
// with few samples says little.
func spread(m materialID, x, y, w, h int, grid func(x, y int) *texel) (d, s float32) {
	n := float32(0)
	for j := max(0, y-1); j <= min(h-1, y+1); j++ {
		for i := max(0, x-1); i <= min(w-1, x+1); i++ {
			if t := grid(i, j); t != nil && t.m == m {
				d, s, n = d+t.vd, s+t.vs, n+1
			}
		}
	}
	return d / n, s / n
}

// at is the light at a place seen at pixel (x, y); ok is false when no texel
// nearby belongs to it.
func (l *layer) at(s *scene, x, y float64, p, n v3, m materialID, footprint float64) (d, mirror v3, ok bool) {
	q := query{p.small(), n.small(), m, float32(0.6*footprint*float64(l.step) + 0.5)}
	u, v := x/float64(l.step), y/float64(l.step)
	within := u >= 0 && v >= 0 && u < float64(l.w) && v < float64(l.h)
	if !within || l.near == nil || !l.near[int(v)*l.w+int(u)] {
		return l.coarse(s, &q, u, v, p, n)
	}
	// The finer texels fade out beyond the blocks that have them.
	g := gathered{p: p, n: n}
	fine := q
	fine.near = float32(0.3*footprint*float64(l.step) + 0.3)
	share := l.around(s, &g, &fine, 2*u-0.5, 2*v-0.5, l.finer)
	if g.w < 1e-3 || share < 1e-3 {
		return l.coarse(s, &q, u, v, p, n)
	}
	fd, fs, _ := g.mean()
	if share > 0.999 {
		return fd, fs, true
	}
	if d, mirror, ok = l.coarse(s, &q, u, v, p, n); !ok {
		return fd, fs, true
	}
	return d.mix(fd, share), mirror.mix(fs, share), true
}

// coarse is at by the texels of blocks, with (u, v) in blocks.
func (l *layer) coarse(s *scene, q *query, u, v float64, p, n v3) (d, mirror v3, ok bool) {
	u, v = u-0.5, v-0.5
	i, j := int(math.Floor(u)), int(math.Floor(v))
	fu, fv := float32(u-float64(i)), float32(v-float64(j))
	g := gathered{p: p, n: n}
	rough := false
	lo, hi := float32(math.MaxFloat32), float32(0)
	for k := range 4 {
		a, b := k&1, k>>1
		w := (1 - fu + float32(a)*(2*fu-1)) * (1 - fv + float32(b)*(2*fv-1))
		t := l.texel(i+a, j+b)
		if t == nil || !q.fits(t) {
			rough = true
			continue
		}
		y := t.d.luma()
		lo, hi = min(lo, y), max(hi, y)
		g.add(s, q, t, w+1e-4)
	}
	if rough || hi > 1.5*lo {
		g.d, g.s, g.w = v3{}, v3{}, 0
		l.around(s, &g, q, u, v, l.texel)
	}
	if g.w == 0 {
		return v3{}, v3{}, false
	}
	return g.mean()
}

// around gathers from the 4 x 4 texels about a place of a grid, and gives the
// share of them that there is.
func (l *layer) around(s *scene, g *gathered, q *query, u, v float64, grid func(x, y int) *texel) float64 {
	i, j := int(math.Floor(u)), int(math.Floor(v))
	fu, fv := float32(u-float64(i)), float32(v-float64(j))
	var there, all float32
	for k := range 16 {
		a, b := k&3-1, k>>2-1
		du, dv := fu-float32(a), fv-float32(b)
		r := 1.6 * (du*du + dv*dv)
		w := waning(r)
		all += w
		t := grid(i+a, j+b)
		if t == nil {
			continue
		}
		there += w
		if q.fits(t) {
			g.add(s, q, t, w*waning(2*abs32(q.n.dot(t.p.sub(q.p)))/q.near)+1e-5)
		}
	}
	return float64(there / all)
}

// texel is the texel of a block, nil beyond the layer.
func (l *layer) texel(i, j int) *texel {
	if i < 0 || j < 0 || i >= l.w || j >= l.h {
		return nil
	}
	return &l.t[j*l.w+i]
}

// finer is a finer texel by its place in a grid of half the step, nil where
// there is none.
func (l *layer) finer(i, j int) *texel {
	if i < 0 || j < 0 || i >= 2*l.w || j >= 2*l.h {
		return nil
	}
	k := l.sub[j>>1*l.w+i>>1]
	if k < 0 {
		return nil
	}
	return &l.fine[int(k)+j&1<<1+i&1]
}

// query is a place whose light is wanted.
type query struct {
	p, n c3
	m    materialID
	near float32
}

func (q *query) fits(t *texel) bool {
	return t.m == q.m && q.n.dot(t.n) > 0.25 && abs32(q.n.dot(t.p.sub(q.p))) <= q.near
}

// gathered is a weighted sum of texels for a place.
type gathered struct {
	p, n   v3
	d, s   v3
	w      float64
	open   v3
	opened bool
}

func (g *gathered) mean() (d, s v3, ok bool) { return g.d.mul(1 / g.w), g.s.mul(1 / g.w), true }

// add takes a texel; where its normal differs, its light is scaled by what each
// of the two places would get with nothing in the way.
func (g *gathered) add(s *scene, q *query, t *texel, weight float32) {
	d, w := t.d.wide(), float64(weight)
	if q.n.dot(t.n) < 0.9995 && t.open != (c3{}) {
		if !g.opened {
			g.open, g.opened = s.rig.open(g.p, g.n), true
		}
		k := func(a float64, b float32) float64 { return min(3, a/max(float64(b), 1e-3)) }
		d = v3{d.X * k(g.open.X, t.open.X), d.Y * k(g.open.Y, t.open.Y), d.Z * k(g.open.Z, t.open.Z)}
	}
	g.d, g.s, g.w = g.d.along(d, w), g.s.along(t.s.wide(), w), g.w+w
}

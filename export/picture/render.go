package picture

import (
	"context"
	"image"
	"math"
	"sync"
)

// effort is what a quality means.
type effort struct {
	step, samples, edge, mirrors int
}

func (q Quality) effort(w, h int) effort {
	switch {
	case q == First && max(w, h) <= 700:
		return effort{6, 3, 0, 3}
	case q == First:
		return effort{10, 3, 0, 3}
	case q == Quick:
		return effort{8, 4, 4, 6}
	case max(w, h) <= 480:
		return effort{2, 8, 8, 8}
	case max(w, h) <= 1000:
		return effort{4, 8, 8, 8}
	case max(w, h) > 3000:
		return effort{8, 8, 4, 6}
	}
	return effort{4, 4, 4, 8}
}

// Render takes a picture of w x h pixels. show, if not nil, is called from one
// goroutine at a time with the stage in words, the share of it that is done, and
// a picture when there is a new one to look at: first a small one of the same
// view, last the finished one. A cancelled context ends the work within a tile
// with its error. The same set, view, quality and size give the same bytes.
func Render(ctx context.Context, set *Set, v View, q Quality, w, h int,
	show func(stage string, done float64, img *image.NRGBA)) (*image.NRGBA, error) {
	return render(ctx, set, v, q, w, h, workers(), show)
}

func render(ctx context.Context, set *Set, v View, q Quality, w, h, threads int,
	show func(stage string, done float64, img *image.NRGBA)) (*image.NRGBA, error) {
	if err := v.check(w, h); err != nil {
		return nil, err
	}
	watched := show != nil
	if !watched {
		show = func(string, float64, *image.NRGBA) {}
	}
	s := set.sceneOf(v)
	if q == Reference {
		c := set.camera(v, w, h)
		out, err := s.reference(ctx, c, 0, 512, v.Seed, func(d float64) { show("reference", d, nil) })
		if err != nil {
			return nil, err
		}
		img := developed(out, w, h)
		show("finished", 1, img)
		return img, nil
	}
	if m := max(w, h); m > 700 && q != First && watched {
		// A small one first.
		k := 640 / float64(m)
		sw, sh := max(8, int(math.Round(float64(w)*k))), max(8, int(math.Round(float64(h)*k)))
		img, err := s.quick(ctx, set.camera(v, sw, sh), First.effort(sw, sh), threads, v.Seed, func(string, float64) {})
		if err != nil {
			return nil, err
		}
		show("first look", 1, img)
	}
	img, err := s.quick(ctx, set.camera(v, w, h), q.effort(w, h), threads, v.Seed,
		func(stage string, d float64) { show(stage, d, nil) })
	if err != nil {
		return nil, err
	}
	show("finished", 1, img)
	return img, nil
}

// quick takes a picture by the split method.
func (s *scene) quick(ctx context.Context, c camera, e effort, threads int, seed uint32,
	report func(string, float64)) (*image.NRGBA, error) {
	img := image.NewNRGBA(image.Rect(0, 0, c.w, c.h))
	err := s.split(ctx, c, e, threads, seed, report, func(k *shot, r image.Rectangle) { k.tile(img, nil, r, e.edge) })
	if err != nil {
		return nil, err
	}
	return img, nil
}

// split traces the light of a picture, and has each of its tiles painted by it.
func (s *scene) split(ctx context.Context, c camera, e effort, threads int, seed uint32,
	report func(string, float64), paint func(*shot, image.Rectangle)) error {
	p := &pool{ctx, threads, func(d float64) { report("light", d) }}
	l, err := s.trace(p, &c, e.step, e.samples, seed)
	if err != nil {
		return err
	}
	p.report = nil
	if err := l.filtered(p); err != nil {
		return err
	}
	if err := s.refined(p, l, &c, e.samples, seed); err != nil {
		return err
	}
	if err := l.filteredFine(s, p); err != nil {
		return err
	}
	k := &shot{s: s, c: c, l: l, cover: s.mesh.cover(&c), mirrors: e.mirrors, seed: seed, stopped: p.stopped, spare: new(sync.Pool)}
	p.report = func(d float64) { report("picture", d) }
	return p.tiles(c.w, c.h, tileSide, func(r image.Rectangle) { paint(k, r) })
}

// tile paints one square; it looks one pixel beyond its sides so that edges are
// found the same way everywhere. shade, if not nil, takes what a top that is cut
// out leaves of the light, and img its cover.
func (k *shot) tile(img *image.NRGBA, shade *image.Gray, r image.Rectangle, edge int) {
	w, h := r.Dx()+2, r.Dy()+2
	seen := k.sights(w * h)
	defer k.spare.Put(&seen)
	for y := range h {
		if k.givenUp() {
			return
		}
		for x := range w {
			px, py := r.Min.X+x-1, r.Min.Y+y-1
			rnd := source{seed: hash4(uint32(px), uint32(py), k.seed, 47)}
			seen[y*w+x] = k.pixel(float64(px)+0.5, float64(py)+0.5, &rnd)
		}
	}
	for y := r.Min.Y; y < r.Max.Y; y++ {
		if k.givenUp() {
			return
		}
		for x := r.Min.X; x < r.Max.X; x++ {
			at := (y-r.Min.Y+1)*w + x - r.Min.X + 1
			a := &seen[at]
			m := mean{}
			m.take(a)
			if edge > 0 {
				beside := [4]*sight{&seen[at-1], &seen[at+1], &seen[at-w], &seen[at+w]}
				switch max(differ(a, beside[0]), differ(a, beside[1]), differ(a, beside[2]), differ(a, beside[3])) {
				case otherThing:
					k.refined(&m, x, y, edge)
				case otherTone:
					k.retouched(&m, a, &beside, x, y, edge)
				}
			}
			to := img.Pix[img.PixOffset(x, y):]
			if m.n > 0 {
				putPixel(to, m.sum.mul(1/m.n), x, y)
			}
			if shade == nil {
				continue
			}
			to[3] = uint8(255*m.n/(m.n+m.bare) + 0.5)
			left := 1.0
			if m.bare > 0 {
				left = m.shade / m.bare
			}
			shade.Pix[shade.PixOffset(x, y)] = uint8(255*clamp01(left) + 0.5)
		}
	}
}

// sights is room for n of them, from a tile that is finished if there is one.
func (k *shot) sights(n int) []sight {
	if s, ok := k.spare.Get().(*[]sight); ok && cap(*s) >= n {
		return (*s)[:n]
	}
	return make([]sight, n)
}

// mean gathers the samples of a pixel: colour of those that meet what is shown,
// light left of those that meet what only catches shadows.
type mean struct {
	sum            v3
	n, shade, bare float64
}

func (m *mean) take(a *sight) {
	if a.bare {
		m.shade, m.bare = m.shade+a.shade, m.bare+1
		return
	}
	m.sum, m.n = m.sum.add(bent(a.c)), m.n+1
}

// What two neighbouring pixels differ in.
const (
	alike = iota
	otherTone
	otherThing
)

// differ reports an edge between two pixels.
func differ(a, b *sight) int {
	if a.m != b.m || a.n.dot(b.n) < 0.97 || math.Abs(a.t-b.t) > 0.01*min(a.t, b.t) {
		return otherThing
	}
	x, y := a.c.luma(), b.c.luma()
	switch {
	case math.Abs(x-y) <= 0.10*max(0.1, max(x, y)):
		return alike
	case a.light == c3{} || b.light == c3{}:
		return otherThing
	}
	return otherTone
}

// retouched takes more samples of the texture of a pixel, under one light.
func (k *shot) retouched(m *mean, a *sight, beside *[4]*sight, x, y, n int) {
	r := k.c.ray(float64(x)+0.5, float64(y)+0.5)
	p := r.at(a.t)
	light := a.light.wide()
	rest := a.c.sub(a.kd.wide().times(light))
	h := hit{n: a.n, m: a.m, channel: -1}
	var found handful
	var ground cement
	stony := (a.cement != c3{} || a.stone != nil) && !k.s.concrete.bedded(p, k.c.footprint(a.t))
	if stony {
		gx, gy := aslant(p, k.s.body.t)
		ground = cement{of: k.s.concrete, x: gx, y: gy, footprint: k.c.footprint(a.t), colour: a.cement.wide()}
		found.take(a.stone)
		for _, b := range beside {
			found.take(b.stone)
		}
	}
	for i := range n {
		rnd := source{seed: hash4(uint32(x), uint32(y), k.seed+uint32(i)+1, 53)}
		u, v := inPixel(i, n, &rnd)
		r := k.c.ray(float64(x)+u, float64(y)+v)
		h.t = p.sub(r.o).dot(a.n) / r.d.dot(a.n)
		h.p = r.at(h.t)
		fp := k.c.footprint(h.t)
		var kd v3
		if stony {
			kd = k.s.concrete.again(h.p, &ground, fp, k.s.body.t, &found)
		} else {
			f := k.s.surface(&h, r.d, fp)
			kd = f.kd
		}
		m.take(&sight{c: kd.times(light).add(rest)})
	}
}

// refined takes more samples of a pixel on an edge.
func (k *shot) refined(m *mean, x, y, n int) {
	// Together they follow as many rays in a metal's mirror as one pixel.
	part := *k
	part.mirrors = max(2, (k.mirrors+n-1)/n)
	for i := range n {
		rnd := source{seed: hash4(uint32(x), uint32(y), k.seed+uint32(i)+1, 53)}
		u, v := inPixel(i, n, &rnd)
		part.turn = i * part.mirrors
		a := part.pixel(float64(x)+u, float64(y)+v, &rnd)
		m.take(&a)
	}
}

// inPixel is the place of the i-th of n samples in a pixel.
func inPixel(i, n int, rnd *source) (u, v float64) {
	u = (float64(i&1) + rnd.next()) / 2
	v = (float64(i>>1) + rnd.next()) / max(1, float64(n)/2)
	return u, v
}

// brightSample bounds what one sample adds to a pixel on an edge, so that a
// mirrored lamp in one of them does not outshine the rest. The tone is near
// white there.
const brightSample = 1.6

func bent(c v3) v3 {
	if m := c.most(); m > brightSample {
		return c.mul(brightSample / m)
	}
	return c
}

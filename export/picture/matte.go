package picture

import (
	"context"
	"fmt"
	"image"
	"math"
)

// Matte is a top cut out of its picture, to be laid over a photograph.
type Matte struct {
	// Top is the top with its basins and taps, transparent beside them. Its
	// colours are not multiplied by its alpha.
	Top *image.NRGBA
	// Shade is what the top leaves of the light on walls, cabinet or ground at
	// each pixel: 255 is all of it, a share of linear light.
	Shade *image.Gray
}

// Setting is the place that a cut-out top stands in.
type Setting struct {
	// Ground says that the top lies on a level surface, which catches its
	// shadow; else it lies on a cabinet, which hides what is below and catches
	// the shadow of the overhang. Walls at wall edges catch shadows too.
	Ground bool
	// KeyTurn and KeyRise are where the main light stands, in degrees to the
	// right of straight in front and above the horizon; the studio's place when
	// both are 0. KeySize is its breadth as a multiple of the studio's, 0 for 1.
	KeyTurn, KeyRise, KeySize float64
	// Gain multiplies the light, by channel of linear light; all 0 is all 1.
	Gain [3]float64
}

func (g Setting) check() error {
	for _, x := range [...]float64{g.KeyTurn, g.KeyRise, g.KeySize, g.Gain[0], g.Gain[1], g.Gain[2]} {
		if !(math.Abs(x) < 1e4) {
			return fmt.Errorf("a light with the value %g can't be set: give a number below 10,000", x)
		}
	}
	if g.KeySize < 0 || min(g.Gain[0], g.Gain[1], g.Gain[2]) < 0 {
		return fmt.Errorf("a light can't be smaller or darker than nothing: size %g, gain %g", g.KeySize, g.Gain)
	}
	return nil
}

// RenderMatte takes a picture of the top alone with its shadow, for a photograph
// of w x h pixels; v is usually a view of kind Through. show, if not nil, tells
// of the progress as in Render. Good and Reference are the same here.
func RenderMatte(ctx context.Context, set *Set, v View, g Setting, q Quality, w, h int,
	show func(stage string, done float64)) (*Matte, error) {
	return renderMatte(ctx, set, v, g, q, w, h, workers(), show)
}

func renderMatte(ctx context.Context, set *Set, v View, g Setting, q Quality, w, h, threads int,
	show func(stage string, done float64)) (*Matte, error) {
	if err := v.check(w, h); err != nil {
		return nil, err
	}
	if err := g.check(); err != nil {
		return nil, err
	}
	if show == nil {
		show = func(string, float64) {}
	}
	s := set.cutOut(g)
	e := min(q, Good).effort(w, h)
	if q > First {
		e.edge = 8
	}
	m := &Matte{image.NewNRGBA(image.Rect(0, 0, w, h)), image.NewGray(image.Rect(0, 0, w, h))}
	err := s.split(ctx, set.camera(v, w, h), e, threads, v.Seed, show,
		func(k *shot, r image.Rectangle) { k.tile(m.Top, m.Shade, r, e.edge) })
	if err != nil {
		return nil, err
	}
	return m, nil
}

// cutOut is the scene of a top in a setting.
func (s *Set) cutOut(g Setting) *scene {
	c := &scene{body: s.body, concrete: s.concrete, rig: s.studio()}
	c.planes = s.roomPlanes()
	if !s.walls[2] {
		c.planes = append(c.planes[:1], c.planes[2:]...) // no wall there
	}
	if g.Ground {
		c.mesh = s.alone()
		c.planes[0] = plane{v3{Z: 1}, 0, matGround}
	} else {
		c.mesh = s.stand()
	}
	l := &c.rig.lights[0]
	if size := g.KeySize; size > 0 {
		l.hu, l.hv, l.l = l.hu*size, l.hv*size, l.l.mul(1/(size*size))
	}
	if g.KeyTurn != 0 || g.KeyRise != 0 {
		mid := v3{s.bounds.Centre().X, s.bounds.Centre().Y, s.body.t}
		st, ct := math.Sincos(g.KeyTurn * math.Pi / 180)
		sr, cr := math.Sincos(max(5, min(89, g.KeyRise)) * math.Pi / 180)
		at := mid.along(v3{st * cr, -ct * cr, sr}, l.c.sub(mid).norm())
		*l = newSoftbox(at, mid, 2*l.hu, 2*l.hv, l.l)
	}
	s.level(c)
	if g.Gain != ([3]float64{}) {
		c.gain = v3{g.Gain[0], g.Gain[1], g.Gain[2]}
		c.rig.tint(c.gain)
	}
	c.alone = &scene{body: c.body, concrete: c.concrete, mesh: s.alone(), planes: c.planes, rig: c.rig}
	c.empty = &scene{concrete: c.concrete, mesh: newThings(0), planes: c.planes, rig: c.rig}
	return c
}

// catches reports whether a material is not seen itself, but for the shadow on
// it.
func (s *scene) catches(m materialID) bool {
	return s.empty != nil && (m == matWall || m == matFloor || m == matGround || m == matWood)
}

// shaded is the share of the light at p that the top leaves, and its variance.
func (s *scene) shaded(p, n v3, samples int, rnd *source) (v3, float64) {
	same := *rnd
	with, v := s.alone.gather(p, n, -1, samples, rnd)
	without, _ := s.empty.gather(p, n, -1, samples, &same)
	y := max(1e-6, without.luma())
	k := min(1, with.luma()/y)
	return v3{k, k, k}, v / (y * y)
}

// Over lays the cut-out top and its shadow over a photograph of the same size,
// in linear light. The photograph stays as it is.
func (m *Matte) Over(photo image.Image) *image.NRGBA {
	b := m.Top.Rect
	out := image.NewNRGBA(b)
	at := photo.Bounds().Min
	for y := range b.Dy() {
		for x := range b.Dx() {
			i := out.PixOffset(x, y)
			a := float64(m.Top.Pix[i+3]) / 255
			s := float64(m.Shade.Pix[m.Shade.PixOffset(x, y)]) / 255
			r, g, bl, _ := photo.At(at.X+x, at.Y+y).RGBA()
			for c, p := range [3]uint32{r, g, bl} {
				v := uint8(p >> 8)
				switch {
				case a == 1:
					v = m.Top.Pix[i+c]
				case a > 0 || s < 1:
					v = uint8(255*encoded(decoded(v)*s*(1-a)+decoded(m.Top.Pix[i+c])*a) + 0.5)
				}
				out.Pix[i+c] = v
			}
			out.Pix[i+3] = 255
		}
	}
	return out
}

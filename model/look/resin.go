package look

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
)

// Resin is a channel filled with resin, seen from above: its loops, its depth in
// mm, what fills it, and the concrete that it lies in. perMM is the picture's
// pixels to the millimetre. The patch is opaque and reaches a little beyond the
// loops.
func Resin(loops []geom.Loop, depth float64, f design.Fill, concrete design.Colour, perMM float64) scene.Rows {
	if !(depth >= 1) {
		depth = 1
	}
	depth = min(100, depth)
	cell := cellFor(perMM)
	loops = sane(loops)
	k := newKey("resin").loops(loops).number(depth).number(cell).colour(f.Colour).colour(concrete).number(f.Opacity.Fraction())
	if f.Glass != nil {
		k.number(f.Glass.Grain.MM()).number(f.Glass.Share.Fraction()).colour(f.Glass.Colour)
	}
	return newMosaic(k, cell, 128, perMM, bounds(loops).Grow(2+2*cell), true, func(g grid) []uint32 {
		return g.resin(loops, depth, f, fromDesign(concrete))
	})
}

// PlainResin is the mean colour of a fill of this depth in mm, without texture.
func PlainResin(f design.Fill, depth float64, concrete design.Colour) scene.Colour {
	k := newCast(max(1, min(100, depth)), f, fromDesign(concrete))
	var chip rgb
	var cover float32
	if f.Glass != nil {
		chip, cover = fromDesign(f.Glass.Colour), float32(min(0.8, f.Glass.Share.Fraction()))
	}
	return k.at(0, 0, 20, 40, geom.Vec{}, chip, cover, 1).srgb()
}

// cast is a channel's fill and what it is reckoned with.
type cast struct {
	depth   float32
	colour  rgb
	opacity float32
	floor   rgb // the concrete's colour
	full    rgb // the colour where much of it lies over each other
	take    rgb // what a millimetre of way takes, as a power of e
	hide    float32
}

// reference is the way through resin, in mm, that leaves white light the
// resin's own colour, when it is clear.
const reference = 9

func newCast(depth float64, f design.Fill, concrete rgb) cast {
	k := cast{depth: float32(depth), colour: fromDesign(f.Colour), opacity: float32(f.Opacity.Fraction()), floor: concrete}
	k.full = k.colour.times(k.colour).mul(0.55 / max(0.12, k.colour.luma()))
	log := func(x float32) float32 { return float32(-math.Log(float64(max(x, 0.004)))) }
	k.take = rgb{log(k.colour.r), log(k.colour.g), log(k.colour.b)}.mul(1.0 / reference)
	k.hide = log(1-min(0.995, k.opacity)) / 3
	return k
}

// through is what is left of white light after a way through the resin, mm
// (Beer's law).
func (k *cast) through(way float32) rgb {
	return rgb{decay(k.take.r * way), decay(k.take.g * way), decay(k.take.b * way)}
}

func (g grid) resin(loops []geom.Loop, depth float64, f design.Fill, concrete rgb) []uint32 {
	// The distance from the banks is smooth: a grid of half the fineness does.
	reach := 14 + 1.6*depth
	coarse, ok := gridOver(g.box().Grow(2*g.cell), max(1, 2*g.cell))
	if !ok {
		return nil
	}
	d := coarse.distance(loops, reach)
	k := newCast(depth, f, concrete)
	glass := noGlass
	if f.Glass != nil {
		glass = g.strewn(loops, depth, *f.Glass)
	}
	pix := make([]uint32, g.w*g.h)
	skirt := -float32(2.5 + 2*g.cell)
	rim := k.at(g.x(0), g.y(0), 0, float32(reach), geom.Vec{}, rgb{}, 0, float32(g.cell))
	beyond := pack(encode(rim.r), encode(rim.g), encode(rim.b), 0xff)
	for j := range g.h {
		y := g.y(j)
		for i := range g.w {
			n := j*g.w + i
			x := g.x(i)
			if coarse.about(d, x, y) < skirt-2*float32(coarse.cell) {
				pix[n] = beyond
				continue
			}
			in, slope := coarse.sloped(d, x, y)
			if in < skirt {
				pix[n] = beyond
				continue
			}
			chip, cover := glass(i, j)
			c := k.at(x, y, max(0, in), float32(reach), slope, chip, cover, float32(g.cell))
			pix[n] = pack(encode(c.r), encode(c.g), encode(c.b), 0xff)
		}
	}
	return pix
}

// noGlass is a fill without glass.
func noGlass(i, j int) (rgb, float32) { return rgb{}, 0 }

// strewn gives the colour of glass in a fill at each texel of a grid, and how
// much of the texel it covers.
func (g grid) strewn(loops []geom.Loop, depth float64, f design.GlassFill) func(i, j int) (rgb, float32) {
	grain := max(1, min(40, f.Grain.MM()))
	colour := fromDesign(f.Colour)
	// A share of the volume, seen from above: one layer's share grows with the
	// layers that lie over each other.
	share := 1 - math.Pow(1-max(0, min(0.9, f.Share.Fraction())), 1+depth/grain)
	if grain < speckled*g.cell {
		return func(i, j int) (rgb, float32) { return g.speckle(i, j, grain, share, colour) }
	}
	s := g.sheet()
	chips(loops, g.box(), grain, share, 72, func(c chip) { s.layChip(c, colour, 0.3, grain > 3*g.cell) })
	return func(i, j int) (rgb, float32) { n := j*g.w + i; return s.c[n], s.a[n] }
}

// at is the resin's colour at a place in mm from the nearest bank, where the
// distance grows along slope; cell is the size of a texel.
func (k *cast) at(x, y float64, in, reach float32, slope geom.Vec, chip rgb, cover, cell float32) rgb {
	// Flow: slow swirls, drawn by the noise itself, and wisps of pigment.
	n := clouds()
	warp := 2.6 * n.at(float32(x/12), float32(y/12))
	swirl := n.at(float32(x/5)+warp, float32(y/5)-0.8*warp)
	deep := smooth(in / (0.35*k.depth + 1)) // 0 at the bank, 1 where the full depth is seen
	middle := smooth(in / reach)
	depth := k.depth * (0.30 + 0.45*deep + 0.25*middle)

	// Pigmented resin scatters: its own colour, fuller and darker where it is
	// deep, streaked by the pour.
	wisp := 1 - min(1, 1.6*abs32(n.at(float32(x/7)-1.7*warp+40, float32(y/7)+1.3*warp)))
	c := k.colour.mul(1.16).mix(k.full, 0.30*middle).mul(1 - 0.12*middle + 0.09*swirl + 0.13*wisp*wisp)

	// Under it, as far as it is clear, floor or glass: light focused on it by
	// the surface, less what the colour takes on the way down and up.
	veil := 1 - 0.6*cover
	if k.opacity < 0.995 {
		veil = 1 - decay(k.hide*depth*(1-0.75*cover))
	}
	if veil < 0.995 {
		web := 1 - 2.2*abs32(n.at(float32(x/2.1)+warp, float32(y/2.1)+0.6*warp))
		floor := k.floor.mul((0.82 + 0.16*clamp01(web)*deep) * (0.75 + 0.25*deep))
		c = floor.mix(chip, cover).times(k.through(depth*(1-0.60*cover))).mix(c, veil)
	}
	c = c.mul(1 + 0.04*swirl)

	// The bank nearest the light throws its shade in; along the far one the
	// resin climbs and catches the light.
	toward := -float32(slope.X*Light.X + slope.Y*Light.Y)
	c = c.mul(1 - (0.14+0.32*max(0, toward))*decay(in/(0.22*k.depth+0.6)))
	line := max(0.9, 1.1*cell)
	bright := decay(sq((in-0.9*line)/(0.75*line))) * (0.06 + 0.80*max(0, -toward))
	c = c.mix(rgb{1, 1, 1}, 0.62*bright)

	// A glossy surface mirrors a window: soft slanting bands, bent where the
	// surface is not quite level, and bent up at the banks.
	across := float32(0.83*x-0.55*y)/150 + 0.10*warp - 0.25*decay(in/9)*toward
	band := across - float32(math.Floor(float64(across)))
	gleam := smooth(band/0.16) * smooth((0.42-band)/0.20)
	return c.mix(rgb{0.92, 0.96, 1}, 0.075*gleam+0.010)
}

func abs32(x float32) float32 {
	if x < 0 {
		return -x
	}
	return x
}

func sq(x float32) float32 { return x * x }

// decays is exp(-x) for x from 0 to 16 in steps of 1/64.
var decays = func() (t [16*64 + 2]float32) {
	for i := range t {
		t[i] = float32(math.Exp(-float64(i) / 64))
	}
	return t
}()

// decay is exp(-x) for x not below 0, between the steps of a table by straight
// lines: off by 3e-5 at most.
func decay(x float32) float32 {
	x *= 64
	switch {
	case !(x > 0):
		return 1
	case x >= 16*64:
		return 0
	}
	i := int(x)
	return decays[i] + (decays[i+1]-decays[i])*(x-float32(i))
}

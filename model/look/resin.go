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
	cell := CellFor(perMM)
	k := newKey("resin").loops(loops).number(depth).number(cell).colour(f.Colour).colour(concrete).number(f.Opacity.Fraction())
	if f.Glass != nil {
		k.number(f.Glass.Grain.MM()).number(f.Glass.Share.Fraction()).colour(f.Glass.Colour)
	}
	return bakes.get(k, func() *Patch {
		g, ok := gridOver(bounds(loops).Grow(2), cell)
		if !ok {
			return blank
		}
		return g.resin(loops, max(1, min(100, depth)), f, fromDesign(concrete))
	})
}

// PlainResin is the mean colour of a fill of this depth in mm, without texture.
func PlainResin(f design.Fill, depth float64, concrete design.Colour) scene.Colour {
	k := cast{float32(max(1, min(100, depth))), fromDesign(f.Colour), float32(f.Opacity.Fraction()), fromDesign(concrete)}
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
}

func (g grid) resin(loops []geom.Loop, depth float64, f design.Fill, concrete rgb) *Patch {
	// The distance from the banks is smooth: a grid of half the fineness does.
	coarse, _ := gridOver(bounds(loops).Grow(4), max(1, 2*g.cell))
	reach := 14 + 1.6*depth
	d := coarse.distance(loops, reach)
	k := cast{float32(depth), fromDesign(f.Colour), float32(f.Opacity.Fraction()), concrete}
	glass := sheet{}
	if f.Glass != nil {
		glass = g.sheet()
		grain := max(1, min(40, f.Glass.Grain.MM()))
		colour := fromDesign(f.Glass.Colour)
		// A share of the volume, seen from above: one layer's share grows with
		// the layers that lie over each other.
		share := 1 - math.Pow(1-min(0.9, f.Glass.Share.Fraction()), 1+depth/grain)
		chips(loops, grain, share, 72, func(c chip) { glass.layChip(c, colour, 0.3, grain/g.cell > 3) })
	}
	l := level{w: g.w, h: g.h, pix: make([]uint32, g.w*g.h)}
	for j := range g.h {
		y := g.y(j)
		for i := range g.w {
			x := g.x(i)
			in := coarse.sampled(d, x, y)
			if in < -2.5 {
				continue
			}
			h := coarse.cell
			slope := geom.Vec{
				X: float64(coarse.sampled(d, x+h, y)-coarse.sampled(d, x-h, y)) / (2 * h),
				Y: float64(coarse.sampled(d, x, y+h)-coarse.sampled(d, x, y-h)) / (2 * h),
			}
			n := j*g.w + i
			var chip rgb
			var cover float32
			if f.Glass != nil {
				chip, cover = glass.c[n], glass.a[n]
			}
			c := k.at(x, y, max(0, in), float32(reach), slope, chip, cover, float32(g.cell))
			l.pix[n] = pack(encode(c.r), encode(c.g), encode(c.b), 0xff)
		}
	}
	return newPatch(g.origin, g.cell, l, false, true)
}

// at is the resin's colour at a place in mm from the nearest bank, where the
// distance grows along slope.
func (k cast) at(x, y float64, in, reach float32, slope geom.Vec, chip rgb, cover, cell float32) rgb {
	// Flow: slow swirls, drawn by the noise itself, and wisps of pigment.
	n := clouds()
	warp := 2.6 * n.at(float32(x/12), float32(y/12))
	swirl := n.at(float32(x/5)+warp, float32(y/5)-0.8*warp)
	wisp := 1 - min(1, 1.6*abs32(n.at(float32(x/7)-1.7*warp+40, float32(y/7)+1.3*warp)))
	deep := smooth(in / (0.35*k.depth + 1)) // 0 at the bank, 1 where the full depth is seen
	middle := smooth(in / reach)
	depth := k.depth * (0.30 + 0.45*deep + 0.25*middle)

	// What is seen through clear resin: floor or glass, light focused on it by
	// the surface, less what the colour takes on the way down and up.
	web := 1 - 2.2*abs32(n.at(float32(x/2.1)+warp, float32(y/2.1)+0.6*warp))
	floor := k.floor.mul((0.82 + 0.16*clamp01(web)*deep) * (1 - 0.25*(1-deep)))
	floor = floor.mix(chip, cover)
	way := depth * (1 - 0.60*cover) / 9 // the colour is what 9 mm of resin let through
	through := rgb{pow(k.colour.r, way), pow(k.colour.g, way), pow(k.colour.b, way)}
	clear := floor.times(through)

	// Pigmented resin scatters: its own colour, fuller and darker where it is
	// deep, streaked by the pour.
	full := k.colour.times(k.colour).mul(0.55 / max(0.12, k.colour.luma()))
	body := k.colour.mul(1.16).mix(full, 0.30*middle).mul(1 - 0.12*middle + 0.09*swirl + 0.13*wisp*wisp)
	veil := 1 - pow(1-min(0.995, k.opacity), depth*(1-0.75*cover)/3)
	if k.opacity >= 0.995 {
		veil = 1 - 0.6*cover
	}
	c := clear.mix(body, veil)
	c = c.mul(1 + 0.04*swirl)

	// The bank nearest the light throws its shade in; along the far one the
	// resin climbs and catches the light.
	toward := -float32(slope.X*Light.X + slope.Y*Light.Y)
	c = c.mul(1 - (0.14+0.32*max(0, toward))*exp(-in/(0.22*k.depth+0.6)))
	line := max(0.9, 1.1*cell)
	bright := exp(-sq((in-0.9*line)/(0.75*line))) * (0.06 + 0.80*max(0, -toward))
	c = c.mix(rgb{1, 1, 1}, 0.62*bright)

	// A glossy surface mirrors a window: soft slanting bands, bent where the
	// surface is not quite level, and bent up at the banks.
	across := float32(0.83*x-0.55*y)/150 + 0.10*warp - 0.25*exp(-in/9)*toward
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

func exp(x float32) float32 { return float32(math.Exp(float64(x))) }

// pow is x to the power y for x in 0..1.
func pow(x, y float32) float32 {
	return float32(math.Exp2(float64(y) * math.Log2(float64(max(x, 0.004)))))
}

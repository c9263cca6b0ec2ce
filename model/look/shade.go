package look

import (
	"math"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
)

// blurred smooths a grid in place: three running means of radius r texels each
// way come near to a normal spread of deviation r.
func (g grid) blurred(v []float32, r int) {
	if r < 1 {
		return
	}
	line, sums := make([]float32, g.w), make([]float32, g.w)
	turned := make([]float32, len(v))
	for range 3 {
		for j := range g.h {
			runningMean(v[j*g.w:(j+1)*g.w], line, r)
		}
		g.meanColumns(turned, v, sums, r)
		copy(v, turned)
	}
}

// runningMean replaces values by their means over 2r + 1. What lies beyond the
// ends is like the ends.
func runningMean(v, line []float32, r int) {
	n := len(v)
	copy(line, v)
	sum := float32(0)
	for i := -r; i <= r; i++ {
		sum += line[max(0, min(n-1, i))]
	}
	scale := 1 / float32(2*r+1)
	for i := range n {
		v[i] = sum * scale
		sum += line[min(n-1, i+r+1)] - line[max(0, i-r)]
	}
}

// meanColumns is runningMean down all columns at once, row by row.
func (g grid) meanColumns(dst, v, sums []float32, r int) {
	row := func(j int) []float32 {
		j = max(0, min(g.h-1, j))
		return v[j*g.w : (j+1)*g.w]
	}
	clear(sums)
	for j := -r; j <= r; j++ {
		for i, x := range row(j) {
			sums[i] += x
		}
	}
	scale := 1 / float32(2*r+1)
	for j := range g.h {
		out, next, last := dst[j*g.w:(j+1)*g.w], row(j+r+1), row(j-r)
		for i, s := range sums {
			out[i] = s * scale
			sums[i] = s + next[i] - last[i]
		}
	}
}

// painted turns a grid of alphas into a patch of one colour.
func (g grid) painted(alpha []float32, c scene.Colour) *Patch {
	l := level{w: g.w, h: g.h, pix: make([]uint32, g.w*g.h)}
	for i, a := range alpha {
		l.pix[i] = premultiplied(c.R, c.G, c.B, a)
	}
	return newPatchOf(2, g.origin, g.cell, l, false, false)
}

// premultiplied packs a colour with an alpha of 0 to 1.
func premultiplied(r, g, b uint8, a float32) uint32 {
	k := uint32(clamp01(a)*255 + 0.5)
	one := func(x uint8) uint8 { return uint8((uint32(x)*k + 127) / 255) }
	return pack(one(r), one(g), one(b), uint8(k))
}

// softCell is the size of texels for something that is soft over spread mm.
func softCell(spread float64) float64 {
	cell := 0.25
	for cell < spread/3 && cell < 64 {
		cell *= 2
	}
	return cell
}

// Shadow is the soft shadow that loops cast on what is below: moved away from
// the light by throw, spread over spread, of the darkness alpha; mm and 0 to 1.
func Shadow(loops []geom.Loop, throw, spread, alpha float64) scene.Rows {
	loops = sane(loops)
	k := newKey("shadow").loops(loops).number(throw).number(spread).number(alpha)
	return bakes.get(k, func() *Patch {
		g, ok := gridOver(bounds(loops).Grow(throw+2.5*spread), softCell(spread))
		if !ok {
			return blank
		}
		off := Light.Mul(-throw)
		moved := make([]geom.Loop, len(loops))
		for i, l := range loops {
			moved[i] = make(geom.Loop, len(l))
			for j, p := range l {
				moved[i][j] = p.Add(off)
			}
		}
		v := g.cover(moved)
		g.blurred(v, int(math.Round(spread/g.cell/1.5)))
		for i := range v {
			v[i] *= float32(alpha)
		}
		return g.painted(v, scene.Colour{})
	})
}

// Hollow is the shade that falls into a hollow from its rim, for what lies below
// the loops: deep is how far below in mm, alpha how dark at most.
func Hollow(loops []geom.Loop, deep, alpha float64) scene.Rows {
	if !(deep >= 0.5) {
		deep = 0.5
	}
	deep = min(200, deep)
	loops = sane(loops)
	k := newKey("hollow").loops(loops).number(deep).number(alpha)
	return bakes.get(k, func() *Patch {
		throw, spread := 0.5*deep, 0.55*deep+0.5
		g, ok := gridOver(bounds(loops).Grow(2.5*spread+throw), max(0.25, softCell(spread)/2))
		if !ok {
			return blank
		}
		off := Light.Mul(-throw)
		moved := make([]geom.Loop, len(loops))
		for i, l := range loops {
			moved[i] = make(geom.Loop, len(l))
			for j, p := range l {
				moved[i][j] = p.Add(off)
			}
		}
		v := g.cover(moved)
		g.blurred(v, int(math.Round(spread/g.cell/1.5)))
		for i, in := range v {
			v[i] = float32(alpha) * (1 - in)
		}
		return g.painted(v, scene.Colour{})
	})
}

// blank is nothing at all.
var blank = newPatch(geom.Vec{}, 1, level{w: 1, h: 1, pix: make([]uint32, 1)}, false, false)

// Bowl is the inside of a glazed basin of the given colour, seen from above
// through loops: light glaze that turns away from the light on the near side and
// toward it on the far one, shaded under the rim. Depth is the basin's, mm.
func Bowl(loops []geom.Loop, depth float64, glaze scene.Colour) scene.Rows {
	if !(depth > 0) {
		depth = 120
	}
	depth = min(1000, depth)
	loops = sane(loops)
	k := newKey("bowl").loops(loops).number(depth).number(float64(glaze.R)).number(float64(glaze.G)).number(float64(glaze.B))
	return bakes.get(k, func() *Patch {
		box := bounds(loops)
		cell := 2.0
		for max(box.W(), box.H()) > 400*cell {
			cell *= 2
		}
		g, ok := gridOver(box.Grow(4), cell)
		if !ok {
			return blank
		}
		half := min(box.W(), box.H()) / 2
		wall := min(0.55*half, 0.9*depth) // breadth of the bowl's side in plan
		d := g.distance(loops, max(wall, 4*g.cell))
		g.blurred(d, max(1, int(0.07*half/g.cell)))
		base := rgb{linear[glaze.R], linear[glaze.G], linear[glaze.B]}
		l := level{w: g.w, h: g.h, pix: make([]uint32, g.w*g.h)}
		for j := range g.h {
			for i := range g.w {
				at := func(i, j int) float32 {
					return d[max(0, min(g.h-1, j))*g.w+max(0, min(g.w-1, i))]
				}
				in := at(i, j) / float32(wall) // 0 at the rim, 1 on the floor
				// The side falls away along the inward slope of the distance.
				gx := (at(i+1, j) - at(i-1, j)) / float32(2*g.cell)
				gy := (at(i, j+1) - at(i, j-1)) / float32(2*g.cell)
				steep := 1 - smooth(in)
				toward := -(gx*float32(Light.X) + gy*float32(Light.Y)) // > 0 on the side nearest the light
				// That side faces away from the light; its rim shades it.
				f := 0.80 + 0.10*smooth(in) - 0.26*steep*toward
				f -= 0.30 * float32(math.Exp(-float64(max(in, 0))*7)) * (0.45 + 0.55*max(0, toward))
				c := base.mul(f)
				l.pix[j*g.w+i] = pack(encode(c.r), encode(c.g), encode(c.b*1.01), 0xff)
			}
		}
		return newPatch(g.origin, g.cell, l, false, true)
	})
}

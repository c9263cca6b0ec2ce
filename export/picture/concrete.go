package picture

import (
	"math"

	"example.org/castwright/model/design"
)

// concrete is the material of a top, in the millimetres of the design.
type concrete struct {
	base     v3
	exposure design.Exposure
	alpha    float64 // roughness of the face
	polish   int
	stones   []stoneSize
	crushed  []stoneSize // what a broken face shows
	beds     []bed
}

// polishAlpha is the GGX roughness of the four polish levels.
var polishAlpha = [5]float64{1: 0.45, 2: 0.16, 3: 0.08, 4: 0.03}

func newConcrete(f design.Finish) *concrete {
	p := max(1, min(4, f.Polish))
	c := &concrete{base: linearOf(f.Colour), exposure: f.Exposure, polish: p, alpha: polishAlpha[p]}
	switch f.Exposure {
	case design.ExposureFine:
		c.stones = []stoneSize{newStoneSize(4.4, 0.66, 0.26, 31, c.base), newStoneSize(2.2, 0.66, 0.34, 32, c.base)}
	case design.ExposureCoarse:
		c.stones = []stoneSize{newStoneSize(17, 0.68, 0.12, 33, c.base), newStoneSize(8.5, 0.68, 0.15, 34, c.base),
			newStoneSize(4.2, 0.60, 0.24, 35, c.base), newStoneSize(2.1, 0.58, 0.34, 36, c.base)}
	}
	c.crushed = []stoneSize{newStoneSize(12, 0.7, 0.45, 33, c.base), newStoneSize(5.5, 0.6, 0.55, 34, c.base)}
	return c
}

// grain is what a place of the concrete looks like.
type grain struct {
	kd     v3
	a      float64
	bump   v3 // to add to the normal
	cement v3 // of stony concrete: its colour beside and below the stones
	stone  *stone
}

// holeless is the footprint in mm beyond which pinholes are too small to see.
const holeless = 1.6

// aslant is where the plan's pattern has p: drawn aslant through the depth below the
// face at height t, so that it stretches on no edge.
func aslant(p v3, t float64) (x, y float64) {
	h := p.Z - t
	return p.X + 0.8*h, p.Y + 0.6*h
}

// at is the material at p for a pixel footprint wide; broken says how far the
// place belongs to a broken face, 0 to 1.
func (c *concrete) at(p v3, footprint, broken float64, t float64) grain {
	x, y := aslant(p, t)
	ground := cement{of: c, x: x, y: y, footprint: footprint}
	g := grain{a: c.alpha}
	stones := c.stones
	if broken > 0.3 {
		stones = c.crushed
	}
	var kd v3
	if len(stones) > 0 {
		kd, g.stone = c.stony(p, &ground, stones, footprint, nil)
		g.cement = ground.colour
	} else {
		kd = ground.look()
		if footprint < 1.2 {
			kd = kd.mul(1 + sand(x, y, footprint))
		}
	}
	if broken < 0.3 {
		kd = c.pitted(kd, x, y, footprint)
	}
	if broken > 0 {
		g.a += (0.6 - g.a) * broken
		// Crushed faces are paler and drier than what is ground and sealed.
		kd = kd.mul(1 + 0.10*broken)
	} else if c.polish >= 2 {
		wander := noise2(x/21, y/21, 12)*0.6 + noise2(x/67, y/67, 13)*0.4
		g.a *= 1 + 0.35*wander
		if footprint < 8 {
			g.bump = v3{
				0.004*noise2(x/11, y/11, 14) + 0.003*noise2(x/37, y/37, 15),
				0.004*noise2(x/11, y/11, 16) + 0.003*noise2(x/37, y/37, 17), 0}
		}
	}
	g.kd = whitest(kd)
	return g
}

// whitest bounds a reflectance by what no concrete is whiter than.
func whitest(kd v3) v3 { return v3{min(0.95, kd.X), min(0.95, kd.Y), min(0.95, kd.Z)} }

// pitted is a face's colour with its pinholes.
func (c *concrete) pitted(kd v3, x, y, footprint float64) v3 {
	if footprint >= holeless {
		return kd
	}
	return kd.mul(1 - c.pinhole(x, y, footprint))
}

// cement is the colour of cement at a place of the plan's pattern, worked out when it
// is asked for first: most of a stony face never asks.
type cement struct {
	of              *concrete
	x, y, footprint float64
	colour          v3 // black until then
}

func (m *cement) look() v3 {
	if m.colour == (v3{}) {
		v, tone := m.of.mottle(m.x, m.y, m.footprint)
		k := math.Exp(1.25 * v)
		m.colour = v3{m.of.base.X * k * (1 + tone), m.of.base.Y * k, m.of.base.Z * k * (1 - 1.6*tone)}
	}
	return m.colour
}

// sand is what grains of sand that show faintly through the cream add to its
// brightness.
func sand(x, y, footprint float64) float64 {
	const cell = 1.1
	i, j := math.Floor(x/cell), math.Floor(y/cell)
	h := hash4(uint32(int32(i)), uint32(int32(j)), 17, 4)
	r := 0.22 + 0.26*unit01(h)
	w := rehash(h, 2)
	free := cell/2 - r
	dx := x - (i+0.5)*cell - free*(float64(w&0xff)/127.5-1)
	dy := y - (j+0.5)*cell - free*(float64(w>>8&0xff)/127.5-1)
	soft := max(footprint, 0.10)
	in := clamp01((r-math.Sqrt(dx*dx+dy*dy*1.3))/soft + 0.5)
	return 0.22 * (float64(w>>16&0xff)/255 - 0.5) * in * min(1, 1.2-footprint)
}

// mottle is the cast face's slow and fine variation: log brightness over 1.25,
// and how warm it is.
func (c *concrete) mottle(x, y, footprint float64) (v, tone float64) {
	wx, wy := 38*noise2(x/150, y/150, 1), 38*noise2(x/150, y/150, 2)
	a, l := 1.0, 230.0
	sum := 0.0
	for o := range 4 {
		sum += a * noise2((x+wx)/l, (y+wy)/l, 20+o)
		a, l = a*0.55, l/2.1
	}
	v = 0.085 * sum
	a, l, sum = 1.0, 52.0, 0
	for o := range 3 {
		if footprint > l/2 {
			break
		}
		sum += a * noise2((x+0.3*wx)/l, (y+0.3*wy)/l, 30+o)
		a, l = a*0.55, l/2.1
	}
	v += 0.055 * sum
	// Trowel haze: streaks along a direction that turns slowly.
	turn := 0.5 + 0.7*noise2(x/420, y/420, 3)
	s, co := math.Sincos(turn)
	u, w := x*co+y*s, y*co-x*s
	mask := smooth(-0.2, 0.5, noise2(x/190, y/190, 4))
	v += 0.030 * mask * noise2(u/150, w/11, 5)
	if footprint < 3 {
		v += 0.016 * mask * noise2(u/90, w/4.3, 6)
	}
	// Lime bloom: a few pale clouds.
	v += 0.05 * smooth(0.35, 0.8, noise2((x-wx)/120, (y+wy)/120, 7))
	fine := func(l, amp float64, layer int) {
		if footprint < l {
			v += amp * noise2(x/l, y/l, layer) * min(1, 2*(1-footprint/l))
		}
	}
	fine(17, 0.026, 8)
	fine(6.5, 0.024, 9)
	fine(2.6, 0.024, 10)
	fine(0.9, 0.02, 11)
	fine(0.34, 0.03, 51)
	return v - 0.009, 0.013 * noise2((x+wx)/95, (y-wx)/95, 18)
}

// pinhole is how much a small air hole darkens a place; holes come in clusters.
func (c *concrete) pinhole(x, y, footprint float64) float64 {
	const cell = 6.0
	i, j := math.Floor(x/cell), math.Floor(y/cell)
	h := hash4(uint32(int32(i)), uint32(int32(j)), 5, 91)
	cluster := 0.5 + 0.75*noise2(x/60, y/60, 19)
	few := 0.34
	if c.exposure != design.ExposureCream {
		few = 0.2
	}
	if unit01(h) > few*cluster*cluster {
		return 0
	}
	u := draw(h, 1)
	r := 0.2 + 0.55*u*u*u*u
	cx := (i+0.5)*cell + (cell/2-1)*(2*draw(h, 2)-1)
	cy := (j+0.5)*cell + (cell/2-1)*(2*draw(h, 3)-1)
	soft := max(footprint, 0.12)
	d := math.Hypot(x-cx, y-cy)
	return 0.70 * clamp01((r-d)/soft+0.5) * min(1, 2*r/soft)
}

// wet is the concrete below resin: no coat of its own.
func (c *concrete) wet(p v3, footprint float64) v3 {
	x, y := aslant(p, 0)
	ground := cement{of: c, x: x, y: y, footprint: max(footprint, 1.5)}
	return ground.look()
}

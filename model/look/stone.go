package look

import "math"

// canvas is a tile of linear light that shapes are painted on while a material
// is baked. Its side is a power of two; shapes that leave it come in again on
// the other side.
type canvas struct {
	n   int
	pix []rgb
}

// xy is a point in texels.
type xy struct{ x, y float32 }

// convex is a convex polygon, counter-clockwise, by its sides: a point is inside
// by the least of n . p - d over the sides, in texels.
type convex struct {
	nx, ny, d      []float32
	x0, y0, x1, y1 int // texels it may touch
}

// convexOf takes points in counter-clockwise order.
func convexOf(pts []xy) convex {
	c := convex{x0: math.MaxInt32, y0: math.MaxInt32, x1: math.MinInt32, y1: math.MinInt32}
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		ex, ey := q.x-p.x, q.y-p.y
		l := float32(math.Hypot(float64(ex), float64(ey)))
		if l < 1e-6 {
			continue
		}
		nx, ny := -ey/l, ex/l
		c.nx, c.ny, c.d = append(c.nx, nx), append(c.ny, ny), append(c.d, nx*p.x+ny*p.y)
		c.x0, c.y0 = min(c.x0, int(math.Floor(float64(p.x)))-2), min(c.y0, int(math.Floor(float64(p.y)))-2)
		c.x1, c.y1 = max(c.x1, int(math.Ceil(float64(p.x)))+2), max(c.y1, int(math.Ceil(float64(p.y)))+2)
	}
	return c
}

// inside is the distance from the nearest side at a texel's middle, positive
// within.
func (c *convex) inside(x, y float32) float32 {
	least := float32(math.MaxFloat32)
	for i, nx := range c.nx {
		least = min(least, nx*x+c.ny[i]*y-c.d[i])
	}
	return least
}

// pebble is a many-sided convex shape about c: corners at uneven angles on an
// ellipse of mean radius r, so that it looks broken rather than cut.
func pebble(d *dice, c xy, r float32, corners int) []xy {
	turn := float64(d.roll()) * 2 * math.Pi
	long := d.between(1, 1.45)
	sin, cos := math.Sincos(turn)
	pts := make([]xy, corners)
	for i := range pts {
		a := 2 * math.Pi * (float64(i) + 0.75*float64(d.roll())) / float64(corners)
		s, k := math.Sincos(a)
		px, py := float32(k)*r*long, float32(s)*r/long
		pts[i] = xy{c.x + px*float32(cos) - py*float32(sin), c.y + px*float32(sin) + py*float32(cos)}
	}
	return pts
}

// stone is how one piece of aggregate looks when it is ground flat.
type stone struct {
	colour  rgb
	speckle float32 // share by which its grains differ
	gap     float32 // texels of cement kept clear around it
	seed    uint32
}

// lay paints a stone: cement around it, a dark line where they meet, grains
// inside.
func (v *canvas) lay(pts []xy, s stone, cement rgb) {
	c := convexOf(pts)
	mask := v.n - 1
	g := int(s.gap)
	for y := c.y0 - g; y <= c.y1+g; y++ {
		row := v.pix[(y&mask)*v.n:][:v.n]
		for x := c.x0 - g; x <= c.x1+g; x++ {
			in := c.inside(float32(x)+0.5, float32(y)+0.5)
			if in <= -0.5-s.gap {
				continue
			}
			p := &row[x&mask]
			if in < 0.5 {
				*p = p.mix(cement, 0.8*clamp01(in+0.5+s.gap))
			}
			if in <= -0.5 {
				continue
			}
			grain := float32(mixed(s.seed, uint32(x&mask), uint32(y&mask))>>8)/(1<<23) - 1
			grain2 := float32(mixed(s.seed+1, uint32(x&mask)>>1, uint32(y&mask)>>1)>>8)/(1<<23) - 1
			k := 1 + s.speckle*(0.6*grain+0.6*grain2)
			k *= 0.86 + 0.14*clamp01(in/1.6)
			*p = p.mix(s.colour.mul(k), clamp01(in+0.5))
		}
	}
}

// grades of aggregate: greys to tans, a dark one and a quartz, in sRGB.
var grades = [...]struct {
	r, g, b uint8
	share   float32
}{
	{80, 79, 77, 0.10},
	{98, 96, 93, 0.13},
	{122, 119, 114, 0.15},
	{143, 137, 128, 0.15},
	{160, 149, 134, 0.14},
	{139, 122, 105, 0.09},
	{176, 167, 153, 0.13},
	{196, 191, 182, 0.11},
}

// grade picks a stone's colour, drawn a little toward the concrete's own so that
// stones and cement belong together.
func grade(d *dice, base rgb, toward float32) rgb {
	at := d.roll()
	k := 0
	for k < len(grades)-1 && at >= grades[k].share {
		at -= grades[k].share
		k++
	}
	g := grades[k]
	c := rgb{linear[g.r], linear[g.g], linear[g.b]}.mul(d.between(0.88, 1.14))
	hue := base.mul(c.luma() / max(base.luma(), 0.02)) // the base's hue as bright as the stone
	return c.mix(hue, 0.25).mix(base, toward)
}

// crop is one size of stones: a jittered grid with at most one to the cell.
type crop struct {
	cells   int     // along the tile
	share   float32 // of the cells that have one
	least   float32 // radius, of a cell
	most    float32
	corners int
	toward  float32 // how far their colour is drawn to the cement's
	gap     float32 // of the cell
}

// sow paints a crop. Stones are cut at a random height, so their sections run
// from nothing to the whole.
func (v *canvas) sow(c crop, base rgb, seed uint32) {
	size := float32(v.n) / float32(c.cells)
	for j := range c.cells {
		for i := range c.cells {
			d := diceOf(seed, i, j)
			if d.roll() > c.share {
				continue
			}
			h := d.roll()
			r := (c.least + (c.most-c.least)*float32(math.Sqrt(float64(1-h*h)))) * size
			loose := max(0.2, 0.62-0.8*r/size)
			at := xy{
				(float32(i) + 0.5 + loose*d.between(-1, 1)) * size,
				(float32(j) + 0.5 + loose*d.between(-1, 1)) * size,
			}
			n := c.corners + int(3*d.roll())
			s := stone{colour: grade(d, base, c.toward), speckle: d.between(0.03, 0.14),
				gap: c.gap * size, seed: mixed(seed, uint32(i), uint32(j))}
			v.lay(pebble(d, at, r, n), s, base)
		}
	}
}

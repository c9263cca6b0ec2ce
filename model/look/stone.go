package look

import "math"

// canvas is rows lo to hi of a tile of linear light that shapes are painted on
// while a material is baked. The tile's side is a power of two; shapes that leave
// it come in again on the other side.
type canvas struct {
	n      int
	lo, hi int
	pix    []rgb // of the whole tile
}

// xy is a point in texels.
type xy struct{ x, y float32 }

// maxCorners is the most that a convex polygon has.
const maxCorners = 10

// convex is a convex polygon, counter-clockwise, by its sides: a point is inside
// by the least of n . p - d over the sides, in texels.
type convex struct {
	n              int
	nx, ny, d      [maxCorners]float32
	x0, y0, x1, y1 int // texels it may touch
}

// convexOf takes points in counter-clockwise order.
func convexOf(pts []xy) convex {
	c := convex{x0: math.MaxInt32, y0: math.MaxInt32, x1: math.MinInt32, y1: math.MinInt32}
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		ex, ey := q.x-p.x, q.y-p.y
		l := float32(math.Sqrt(float64(ex*ex + ey*ey)))
		if l < 1e-6 || c.n == maxCorners {
			continue
		}
		nx, ny := -ey/l, ex/l
		c.nx[c.n], c.ny[c.n], c.d[c.n] = nx, ny, nx*p.x+ny*p.y
		c.n++
		c.x0, c.y0 = min(c.x0, int(math.Floor(float64(p.x)))-2), min(c.y0, int(math.Floor(float64(p.y)))-2)
		c.x1, c.y1 = max(c.x1, int(math.Ceil(float64(p.x)))+2), max(c.y1, int(math.Ceil(float64(p.y)))+2)
	}
	return c
}

// along gives, at the middle of the texel x of row y, how far each side is away.
func (c *convex) along(x, y int, at *[maxCorners]float32) {
	px, py := float32(x)+0.5, float32(y)+0.5
	for i := range c.n {
		at[i] = c.nx[i]*px + c.ny[i]*py - c.d[i]
	}
}

// step gives the distance from the nearest side, positive within, and goes on to
// the next texel.
func (c *convex) step(at *[maxCorners]float32) float32 {
	least := float32(math.MaxFloat32)
	for i := range c.n {
		least = min(least, at[i])
		at[i] += c.nx[i]
	}
	return least
}

// pebble is a many-sided convex shape about c: corners at uneven angles on an
// ellipse of mean radius r, so that it looks broken rather than cut. They are
// written over pts.
func pebble(d *dice, c xy, r float32, corners int, pts []xy) []xy {
	turn := float64(d.roll()) * 2 * math.Pi
	long := d.between(1, 1.45)
	sin, cos := math.Sincos(turn)
	pts = pts[:0]
	for i := range corners {
		a := 2 * math.Pi * (float64(i) + 0.75*float64(d.roll())) / float64(corners)
		s, k := math.Sincos(a)
		px, py := float32(k)*r*long, float32(s)*r/long
		pts = append(pts, xy{c.x + px*float32(cos) - py*float32(sin), c.y + px*float32(sin) + py*float32(cos)})
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
	var at [maxCorners]float32
	for y := c.y0 - g; y <= c.y1+g; y++ {
		if r := y & mask; r < v.lo || r >= v.hi {
			continue
		}
		row := v.pix[(y&mask)*v.n:][:v.n]
		c.along(c.x0-g, y, &at)
		for x := c.x0 - g; x <= c.x1+g; x++ {
			in := c.step(&at)
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
			h := mixed(s.seed, uint32(x&mask), uint32(y&mask))
			h2 := mixed(s.seed+1, uint32(x&mask)>>1, uint32(y&mask)>>1)
			grain := float32(h>>8)/(1<<23) + float32(h2>>8)/(1<<23) - 2
			k := (1 + 0.6*s.speckle*grain) * (0.86 + 0.14*min(1, max(0, in)/1.6))
			*p = p.mix(s.colour.mul(k), min(1, in+0.5))
		}
	}
}

// reaches reports whether rows from y0 to y1, in texels, meet the canvas, round
// the tile's end too.
func (v *canvas) reaches(y0, y1 float32) bool {
	n := float32(v.n)
	lo, hi := float32(v.lo), float32(v.hi)
	return y0 <= hi && y1 >= lo || y0+n <= hi && y1+n >= lo || y0-n <= hi && y1-n >= lo
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
	pts := make([]xy, 0, maxCorners)
	for j := range c.cells {
		if !v.reaches((float32(j)-1)*size, (float32(j)+2)*size) {
			continue
		}
		for i := range c.cells {
			d := dice{seed: mixed(seed, uint32(i), uint32(j))}
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
			s := stone{colour: grade(&d, base, c.toward), speckle: d.between(0.03, 0.14),
				gap: c.gap * size, seed: mixed(seed, uint32(i), uint32(j))}
			pts = pebble(&d, at, r, n, pts)
			v.lay(pts, s, base)
		}
	}
}

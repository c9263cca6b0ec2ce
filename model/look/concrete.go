package look

import (
	"encoding/binary"
	"math"
	"sync"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
)

// Size of the concrete tile.
const (
	tileSide = 1024 // texels
	tileCell = 0.5  // mm
)

// drift is the slow change of brightness over a cast top: 256 texels of 9 mm,
// which is no multiple of the tile's side, so that the two together repeat
// nowhere on a top.
const driftCell = 9.0

// Concrete is the face of a top. It is a [scene.Rows].
type Concrete struct {
	tile   *Patch
	polish int
	sheen  sheen
}

// sheen is the soft reflection of a window in a polished face: a slanting band
// across the top.
type sheen struct {
	at    geom.Vec // a place in the middle of the band, mm
	width float64  // mm
	most  float64  // of 255
}

// NewConcrete is the face of a finish. The bounds of the top, in millimetres,
// place the reflection that polish gives it.
func NewConcrete(f design.Finish, bounds geom.Box) *Concrete {
	tile := bakes.get(concreteKey(f), func() *Patch { return bakeConcrete(fromDesign(f.Colour), f.Exposure) })
	c := &Concrete{tile: tile, polish: max(1, min(4, f.Polish))}
	if !bounds.Empty() && bounds.Min.Finite() && bounds.Max.Finite() {
		size := math.Min(math.Max(bounds.W(), bounds.H()), 4000)
		c.sheen = sheen{
			at:    bounds.Min.Lerp(bounds.Max, 0.38),
			width: 0.16*size + 60,
			most:  [...]float64{0, 0, 4, 9, 15}[c.polish],
		}
	}
	return c
}

func concreteKey(f design.Finish) key {
	return newKey("concrete").colour(f.Colour).number(float64(f.Exposure))
}

// Baked reports whether [NewConcrete] has what the finish needs, or has to bake
// it first, which takes a tenth of a second or more. It is for windows that show
// something else meanwhile.
func Baked(f design.Finish) bool { return bakes.has(concreteKey(f)) }

// Plain is the mean colour of a finish: the face without its texture.
func Plain(f design.Finish) scene.Colour {
	return fromDesign(f.Colour).srgb()
}

// Opaque reports that concrete covers what is below.
func (c *Concrete) Opaque() bool { return true }

// At is the colour at a place of the design.
func (c *Concrete) At(x, y, footprint float64) scene.Colour {
	var b [4]uint8
	c.Row(b[:], x, y, footprint)
	return straight(b)
}

// chunk is how many pixels share a straight run of brightness.
const chunk = 16

// Row writes the colours of a row of pixels.
func (c *Concrete) Row(dst []uint8, x, y, step float64) {
	w := c.tile.walkFrom(x, y, step)
	drift := clouds()
	light := func(x float64) (gain, add int64) {
		k := drift.at(float32(x/driftCell), float32(y/driftCell))
		gain = int64((1 + 0.020*float64(k)) * (1 << 16))
		if s := c.sheen; s.most > 0 {
			// Across the band, which runs from front left to back right.
			t := (0.83*(x-s.at.X)-0.55*(y-s.at.Y))/s.width + 0.04*float64(k)
			if t = 1 - t*t/4; t > 0 {
				add = int64(s.most * t * t * (1 << 16))
			}
		}
		return gain, add
	}
	g0, a0 := light(x)
	turn := int(mixed(19, uint32(int64(math.Floor(y/step))), 0)) // of the dither, in this row
	if len(dst) <= 4*chunk {
		// The few pixels of a shape's rim.
		for ; len(dst) >= 4; dst = dst[4:] {
			c.put(dst, w.sample(), turn, g0, a0)
			w.u += w.du
		}
		return
	}
	var row [tileSide]uint64
	w.blended(row[:], len(dst)/4)
	u, mask := w.u, w.mask&(tileSide-1)
	for len(dst) > 0 {
		n := min(chunk, len(dst)/4)
		x += chunk * step
		g1, a1 := light(x)
		dg, da := (g1-g0)/chunk, (a1-a0)/chunk
		out := dst[: 4*n : 4*n]
		for i := 0; len(out) >= 4; i++ {
			k := u >> 16
			e := blend(row[k&mask&(tileSide-1)], row[(k+1)&mask&(tileSide-1)], uint64(u>>8)&0xff)
			c.put(out, e, i*3+turn, g0, a0)
			out = out[4:]
			u += w.du
			g0 += dg
			a0 += da
		}
		g0, a0 = g1, a1
		dst = dst[4*n:]
	}
}

// put writes a texel under the light: times the gain plus the sheen, both in
// 1/65536, all lanes at once. The gain goes in as 1/128; what is lost to
// rounding is spread over neighbours.
func (c *Concrete) put(dst []uint8, e uint64, turn int, gain, add int64) {
	d := dither[turn&7]
	e = e*uint64((gain+d<<6)>>9)>>7&0x01ff01ff01ff01ff + uint64((add+d<<13)>>16)*0x0000000100010001
	e |= (e >> 8 & 0x0001000100010001) * 0xff // past white is white
	binary.LittleEndian.PutUint32(dst, texel(e&laneMask)|0xff000000)
}

// dither is steps of an eighth in an order that leaves no pattern.
var dither = [8]int64{0, 4, 2, 6, 1, 5, 3, 7}

// bakeConcrete bakes the tile of a colour and exposure, two halves at a time.
func bakeConcrete(base rgb, e design.Exposure) *Patch {
	const n = tileSide
	l := level{w: n, h: n, pix: make([]uint32, n*n)}
	pix, f := make([]rgb, n*n), newField(n)
	warmth := newField(64)
	warmth.add(13, 11, 0.003, 0, 17)
	half := func(lo, hi int) {
		v := canvas{n, lo, hi, pix}
		v.cement(base, f, warmth)
		v.aggregate(base, e)
		v.pinholes(e)
		for i := lo * n; i < hi*n; i++ {
			c := pix[i]
			l.pix[i] = pack(encode(c.r), encode(c.g), encode(c.b), 0xff)
		}
	}
	var wait sync.WaitGroup
	wait.Go(func() { half(n/2, n) })
	half(0, n/2)
	wait.Wait()
	return newPatch(geom.Vec{}, tileCell, l, true, true)
}

// cement lays the ground: bloom and trowel haze, then finer and finer sand.
func (v *canvas) cement(base rgb, f, warmth field) {
	n := v.n
	add := func(cellsX, cellsY int, amp float32, shear int, seed uint32) {
		f.addRows(v.lo, v.hi, cellsX, cellsY, amp, shear, seed)
	}
	add(11, 10, 0.016, 0, 11)
	add(29, 31, 0.014, 0, 12)
	add(7, 44, 0.012, 1, 13)
	add(52, 9, 0.010, 1, 14)
	add(97, 89, 0.011, 0, 15)
	add(231, 239, 0.014, 0, 16)
	for i := v.lo * n; i < v.hi*n; i++ {
		h := mixed(18, uint32(i), 0)
		sand := (float32(h>>8&0xff)+float32(h>>16&0xff)+float32(h>>24))/382.5 - 1 // deviation 1/3
		k := 1 + f.v[i] + 0.05*sand
		t := warmth.v[i/n>>4<<6+i%n>>4]
		v.pix[i] = rgb{base.r * k * (1 + t), base.g * k, base.b * k * (1 - 1.5*t)}
	}
}

// aggregate lays the stones that an exposure opens, smaller ones first.
func (v *canvas) aggregate(base rgb, e design.Exposure) {
	switch e {
	case design.ExposureFine:
		v.sow(crop{cells: 250, share: 0.75, least: 0.16, most: 0.40, corners: 4, toward: 0.30, gap: 0.06}, base, 21)
		v.sow(crop{cells: 128, share: 0.62, least: 0.14, most: 0.40, corners: 5, toward: 0.22, gap: 0.05}, base, 22)
	case design.ExposureCoarse:
		v.sow(crop{cells: 240, share: 0.75, least: 0.15, most: 0.40, corners: 4, toward: 0.25, gap: 0.05}, base, 21)
		v.sow(crop{cells: 122, share: 0.60, least: 0.16, most: 0.42, corners: 5, toward: 0.15, gap: 0.05}, base, 22)
		v.sow(crop{cells: 61, share: 0.60, least: 0.18, most: 0.44, corners: 5, toward: 0.10, gap: 0.05}, base, 23)
		v.sow(crop{cells: 33, share: 0.62, least: 0.20, most: 0.46, corners: 5, toward: 0.08, gap: 0.04}, base, 24)
	default:
		v.ghosts(base)
	}
}

// ghosts are the few grains of sand that show faintly through the cream.
func (v *canvas) ghosts(base rgb) {
	v.sow(crop{cells: 110, share: 0.07, least: 0.06, most: 0.22, corners: 5, toward: 0.90, gap: 0}, base, 31)
}

// pinholes are the small air holes of cast concrete, few and in clusters: many
// evenly spread ones would look like a dot screen.
func (v *canvas) pinholes(e design.Exposure) {
	cluster := newField(64)
	cluster.add(5, 5, 0.3, 0, 41)
	const cells = 24
	size := float32(v.n) / cells
	few := float32(0.55)
	if e != design.ExposureCream {
		few = 0.35
	}
	for j := range cells {
		for i := range cells {
			d := diceOf(42, i, j)
			k := clamp01(0.5 + cluster.at(float32(i)*64/cells, float32(j)*64/cells))
			if d.roll() > few*k*k {
				continue
			}
			u := d.roll()
			r := (0.22 + 0.55*u*u*u*u) / tileCell
			v.hole(xy{(float32(i) + d.roll()) * size, (float32(j) + d.roll()) * size}, r, 0.45)
		}
	}
}

// hole darkens a disc, and lights the rim that faces the light's far side.
func (v *canvas) hole(c xy, r, dark float32) {
	mask := v.n - 1
	reach := int(r) + 2
	for y := int(c.y) - reach; y <= int(c.y)+reach; y++ {
		for x := int(c.x) - reach; x <= int(c.x)+reach; x++ {
			dx, dy := float32(x)+0.5-c.x, float32(y)+0.5-c.y
			away := float32(math.Hypot(float64(dx), float64(dy)))
			if r := y & mask; r < v.lo || r >= v.hi {
				continue
			}
			p := &v.pix[(y&mask)*v.n+x&mask]
			*p = p.mul(1 - dark*clamp01(r-away+0.5))
		}
	}
}

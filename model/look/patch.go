package look

import (
	"encoding/binary"
	"math"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
)

// Patch is a baked picture of a material that lies on the design: a grid of
// texels with halved levels. It is transparent beyond its rim, or, when it is a
// tile, repeats for ever. It is a [scene.Rows].
type Patch struct {
	origin geom.Vec // of the grid's left front corner, mm
	cell   float64  // size of a texel, mm
	tile   bool     // sides are powers of two
	opaque bool
	levels []level
}

// level is a grid of texels, red, green, blue and alpha, the first three
// multiplied by alpha; row 0 is the front.
type level struct {
	w, h int
	pix  []uint32
	used []bool // of each row, for each block of texels: some are not transparent
}

// block is the texels of a row that are skipped together where nothing is.
const block = 32

func (l level) blocks() int { return (l.w + block - 1) / block }

// mark finds the blocks that hold something.
func (l *level) mark() {
	n := l.blocks()
	l.used = make([]bool, n*l.h)
	for y := range l.h {
		row := l.pix[y*l.w : (y+1)*l.w]
		for b := range n {
			some := uint32(0)
			for _, p := range row[b*block : min(len(row), (b+1)*block)] {
				some |= p
			}
			l.used[y*n+b] = some != 0
		}
	}
}

// pack makes a texel of premultiplied bytes.
func pack(r, g, b, a uint8) uint32 {
	return uint32(r) | uint32(g)<<8 | uint32(b)<<16 | uint32(a)<<24
}

// newPatch makes the halved levels of a baked grid.
func newPatch(origin geom.Vec, cell float64, base level, tile, opaque bool) *Patch {
	return newPatchOf(8, origin, cell, base, tile, opaque)
}

// newPatchOf is newPatch with at most this many levels.
func newPatchOf(most int, origin geom.Vec, cell float64, base level, tile, opaque bool) *Patch {
	p := &Patch{origin: origin, cell: cell, tile: tile, opaque: opaque, levels: []level{base}}
	for l := base; l.w > 4 && l.h > 4 && len(p.levels) < most; {
		l = halved(l, tile)
		p.levels = append(p.levels, l)
	}
	if !tile && !opaque {
		for i := range p.levels {
			p.levels[i].mark()
		}
	}
	return p
}

// halved is the level with each 2 x 2 texels made one, in linear light where
// they are opaque so that speckles keep their brightness.
func halved(l level, tile bool) level {
	h := level{w: (l.w + 1) / 2, h: (l.h + 1) / 2}
	h.pix = make([]uint32, h.w*h.h)
	for y := range h.h {
		y0 := 2 * y
		y1 := min(y0+1, l.h-1)
		for x := range h.w {
			x0 := 2 * x
			x1 := min(x0+1, l.w-1)
			h.pix[y*h.w+x] = average(l.pix[y0*l.w+x0], l.pix[y0*l.w+x1], l.pix[y1*l.w+x0], l.pix[y1*l.w+x1])
		}
	}
	return h
}

func average(a, b, c, d uint32) uint32 {
	if a&b&c&d>>24 != 0xff {
		const even, odd = 0x00ff00ff, 0xff00ff00
		lo := (a&even + b&even + c&even + d&even + 2*0x00010001) >> 2 & even
		hi := ((a&odd)>>8 + (b&odd)>>8 + (c&odd)>>8 + (d&odd)>>8 + 2*0x00010001) >> 2 & even
		return lo | hi<<8
	}
	one := func(shift uint) uint8 {
		return encode((linear[a>>shift&0xff] + linear[b>>shift&0xff] + linear[c>>shift&0xff] + linear[d>>shift&0xff]) / 4)
	}
	return pack(one(0), one(8), one(16), 0xff)
}

// Opaque reports whether the patch covers all that is painted with it.
func (p *Patch) Opaque() bool { return p.opaque }

// At is the colour at a place of the design for a pixel footprint wide.
func (p *Patch) At(x, y, footprint float64) scene.Colour {
	var b [4]uint8
	p.Row(b[:], x, y, footprint)
	return straight(b)
}

// straight takes the alpha out of a premultiplied colour.
func straight(b [4]uint8) scene.Colour {
	a := uint32(b[3])
	if a == 0 {
		return scene.Colour{}
	}
	one := func(x uint8) uint8 { return uint8(min(255, (uint32(x)*255+a/2)/a)) }
	return scene.Colour{R: one(b[0]), G: one(b[1]), B: one(b[2]), A: b[3]}
}

// walk is a row across one level, in 1/65536 of a texel.
type walk struct {
	level   level
	lo, hi  []uint32  // the two rows of texels
	used    [2][]bool // of their blocks, nil for all
	v       uint64    // weight of hi, of 256
	u, du   int64     // of the next pixel, less half a texel; and from one to the next
	mask    int64     // of a tile's column
	outside bool
}

// sharp is how many texels to the pixel there may be before the next level is
// taken: a little more than one, which is sharp and still calm.
const sharp = 1.77

// walkFrom starts a row at (x, y) with pixels step wide.
func (p *Patch) walkFrom(x, y, step float64) walk {
	if !(geom.Vec{X: x, Y: y}).Finite() || !(step > 1e-9 && step < 1e9) {
		x, y, step = 0, 0, 1
	}
	k := 0
	for r := step / p.cell; r > sharp && k < len(p.levels)-1; r /= 2 {
		k++
	}
	l := p.levels[k]
	cell := p.cell * float64(int(1)<<k)
	w := walk{level: l}
	u, v := (x-p.origin.X)/cell-0.5, (y-p.origin.Y)/cell-0.5
	if p.tile {
		u, v = u-math.Floor(u/float64(l.w))*float64(l.w), v-math.Floor(v/float64(l.h))*float64(l.h)
	} else if p.opaque { // what is beyond the rim is like the rim
		u, v = max(-1<<30, min(1<<30, u)), max(0, min(float64(l.h-1), v))
	} else if !(v > -1 && v < float64(l.h)) || !(math.Abs(u) < 1<<30) {
		w.outside = true
		return w
	}
	fv := math.Floor(v)
	j := int(fv)
	w.v = uint64((v - fv) * 256)
	row := func(j int) []uint32 {
		if p.tile {
			j &= l.h - 1
		}
		j = max(0, min(l.h-1, j))
		return l.pix[j*l.w : (j+1)*l.w]
	}
	w.lo, w.hi = row(j), row(j+1)
	if l.used != nil {
		n := l.blocks()
		for i := range w.used {
			y := max(0, min(l.h-1, j+i))
			w.used[i] = l.used[y*n : (y+1)*n]
		}
	}
	w.u, w.du = int64(math.Floor(u*65536)), max(1, int64(math.Round(step/cell*65536)))
	w.mask = int64(l.w - 1)
	return w
}

// blended writes the texels of a tile's row that n pixels meet, mixed from the
// two rows, at their columns.
func (w *walk) blended(row []uint64, n int) {
	width := w.level.w
	first := int(w.u >> 16)
	count := min(width, int((w.u+int64(n)*w.du)>>16)-first+2)
	for c := first; c < first+count; c++ {
		i := c & (width - 1)
		row[i] = blend(lanes(w.lo[i]), lanes(w.hi[i]), w.v)
	}
}

// sample is the colour of a tile at the next pixel.
func (w *walk) sample() uint64 {
	k := w.u >> 16
	i0, i1 := k&w.mask, (k+1)&w.mask
	a := blend(lanes(w.lo[i0]), lanes(w.hi[i0]), w.v)
	b := blend(lanes(w.lo[i1]), lanes(w.hi[i1]), w.v)
	return blend(a, b, uint64(w.u>>8)&0xff)
}

// lanes spreads the four bytes of a texel over 16 bits each: red, blue, green,
// alpha.
func lanes(p uint32) uint64 {
	return uint64(p&0x00ff00ff) | uint64(p&0xff00ff00)<<24
}

const laneMask = 0x00ff00ff00ff00ff

// blend is a and b with the weight f of 256 for b.
func blend(a, b, f uint64) uint64 {
	return (a*(256-f) + b*f + 0x0080008000800080) >> 8 & laneMask
}

// texel is the inverse of lanes.
func texel(e uint64) uint32 {
	return uint32(e&0x00ff00ff) | uint32(e>>24)&0xff00ff00
}

// Row writes the colours of a row of pixels.
func (p *Patch) Row(dst []uint8, x, y, step float64) {
	w := p.walkFrom(x, y, step)
	if w.outside {
		clear(dst)
		return
	}
	n := len(dst) / 4
	if p.tile {
		for i := range n {
			binary.LittleEndian.PutUint32(dst[4*i:], texel(w.sample()))
			w.u += w.du
		}
		return
	}
	for i := 0; i < n; {
		i += w.run(p.opaque, dst[4*i:4*n])
	}
}

// run writes some of the pixels of a row, at least the next one, and gives their
// number.
func (w *walk) run(opaque bool, dst []uint8) int {
	n, last := len(dst)/4, int64(w.level.w-1)
	c := w.u >> 16
	if c < 0 || c >= last || n < 8 {
		w.one(opaque, dst)
		return 1
	}
	first := c &^ (block - 1)
	if b := c / block; w.used[0] != nil && c != first+block-1 && !w.used[0][b] && !w.used[1][b] {
		// On to the last texel of the block, which its neighbour may colour.
		k := min(n, int(((first+block-1)<<16-w.u-1)/w.du)+1)
		clear(dst[:4*k])
		w.u += w.du * int64(k)
		return k
	}
	// Mix the two rows once for each texel, then go along.
	var mixed [block + 1]uint64
	end := min(block, last-first, (w.u+int64(n)*w.du)>>16-first+1)
	for k := c - first; k <= end; k++ {
		mixed[k] = blend(lanes(w.lo[first+k]), lanes(w.hi[first+k]), w.v)
	}
	u, k := w.u-first<<16, 0
	for ; k < n; k++ {
		at := u >> 16
		if at >= end {
			break
		}
		binary.LittleEndian.PutUint32(dst[4*k:], texel(blend(mixed[at&(block-1)], mixed[at&(block-1)+1], uint64(u>>8)&0xff)))
		u += w.du
	}
	if k == 0 {
		w.one(opaque, dst)
		return 1
	}
	w.u += w.du * int64(k)
	return k
}

// one writes the next pixel of a row, wherever it lies.
func (w *walk) one(opaque bool, dst []uint8) {
	c, last := w.u>>16, int64(w.level.w-1)
	if (c < -1 || c > last) && !opaque {
		binary.LittleEndian.PutUint32(dst, 0)
	} else {
		i0, i1 := max(0, min(last, c)), max(0, min(last, c+1))
		a := blend(lanes(w.lo[i0]), lanes(w.hi[i0]), w.v)
		b := blend(lanes(w.lo[i1]), lanes(w.hi[i1]), w.v)
		binary.LittleEndian.PutUint32(dst, texel(blend(a, b, uint64(w.u>>8)&0xff)))
	}
	w.u += w.du
}

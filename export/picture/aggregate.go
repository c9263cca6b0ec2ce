package picture

import (
	"math"
	"sync/atomic"
)

// stone is a piece about c, in cells of its lattice: what lies below all its faces,
// n times the place no more than b.
type stone struct {
	of      *stoneSize
	i, j, k int32 // its cell
	h       uint32
	near    float64 // square of the reach beyond which nothing of it lies
	c       v3
	n       [8]c3
	b       [8]float32
	colour  c3
	grain   float32 // share by which its grains differ
	veined  bool
}

// depth is how far inside the stone's faces a place of the lattice lies, in cells;
// not above zero when it is no part of it.
func (s *stone) depth(q v3) float64 {
	d := q.sub(s.c)
	if d.dot(d) > s.near {
		return 0
	}
	least := math.Inf(1)
	for f := range s.n {
		m := &s.n[f]
		if e := float64(s.b[f]) - d.X*float64(m.X) - d.Y*float64(m.Y) - d.Z*float64(m.Z); e < least {
			if least = e; e < 0 {
				break
			}
		}
	}
	return least
}

// keptStones is how many stones of one size are kept: more than a tile of a picture
// looks at.
const keptStones = 1 << 12

// stones are those of one size that were looked at last, each at a place that its
// cell gives.
type stones [keptStones]atomic.Pointer[stone]

// stoneOf is the stone of a cell whose hash is h, kept from an earlier look or made.
// One that several threads look for at once is made by each of them, and is the same.
func (z *stoneSize) stoneOf(i, j, k int32, h uint32) *stone {
	at := &z.kept[h%keptStones]
	if s := at.Load(); s != nil && s.i == i && s.j == j && s.k == k {
		return s
	}
	s := z.newStone(i, j, k, h)
	at.Store(s)
	return s
}

func (z *stoneSize) newStone(i, j, k int32, h uint32) *stone {
	c, r := lies(i, j, k, h)
	s := &stone{of: z, i: i, j: j, k: k, h: h, c: c, near: reach2(r)}
	for f, m := range stoneNormals {
		a := rehash(h, uint32(10+f))
		m.X += 0.9 * (float64(a&0xff)/255 - 0.5)
		m.Y += 0.9 * (float64(a>>8&0xff)/255 - 0.5)
		m.Z += 0.9 * (float64(a>>16&0xff)/255 - 0.5)
		s.n[f] = m.small()
		s.b[f] = float32(stoneFaces[f] * r * (0.75 + 0.5*float64(a>>24)/255) * m.norm())
	}
	s.colour = gradeColour(h, z.base, z.toward).small()
	s.grain = float32(0.05 + 0.14*draw(h, 72))
	s.veined = draw(h, 73) < 0.18
	return s
}

// handful is the stones in and beside a pixel, larger ones first.
type handful struct {
	n     int
	stone [5]*stone
}

func (f *handful) take(s *stone) {
	if s == nil {
		return
	}
	at := f.n
	for i := range f.n {
		if f.stone[i] == s {
			return
		}
		if at == f.n && f.stone[i].of.cell < s.of.cell {
			at = i
		}
	}
	copy(f.stone[at+1:f.n+1], f.stone[at:f.n])
	f.stone[at] = s
	f.n++
}

// again is the reflectance at p, near a place that has been looked at: of the stones
// found there or of its cement; t is the face's height.
func (c *concrete) again(p v3, ground *cement, footprint, t float64, found *handful) v3 {
	kd, _ := c.stony(p, ground, c.stones, footprint, found)
	x, y := aslant(p, t)
	return whitest(c.pitted(kd, x, y, footprint))
}

// missable is the least footprint, in cells, between whose middles stones lie that no
// middle meets.
const missable = 0.25

// among is [stoneSize.at], of the stones found about p if none can have been missed.
func (z *stoneSize) among(p v3, footprint float64, found *handful) (*stone, float64) {
	if found == nil || footprint > missable*z.cell {
		return z.at(p)
	}
	q := toLattice(p).mul(1 / z.cell)
	for _, s := range found.stone[:found.n] {
		if s.of == z {
			if edge := s.depth(q); edge > 0 {
				return s, edge * z.cell
			}
		}
	}
	return nil, 0
}

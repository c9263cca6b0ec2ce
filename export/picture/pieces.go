package picture

import "sync/atomic"

// keptCells is how many cells of broadcast glass are kept: more than a tile of a
// picture looks at.
const keptCells = 1 << 10

// cells are those that were looked at last, each at a place that its numbers give.
type cells [keptCells]atomic.Pointer[glassCell]

// glassCell is the pieces of glass whose middles lie in one cell of a [scatter].
type glassCell struct {
	i, j, k int
	pieces  []piece
}

// piece is one of them; its shape is made when a ray comes near it first.
type piece struct {
	c    v3 // in the lattice
	r    float64
	hash uint32
	made atomic.Pointer[chip]
	lies atomic.Pointer[lie]
}

// lie is how a piece lies in its channel.
type lie struct {
	held bool    // wholly within the resin, about
	deep float64 // how far below the resin's surface, mm
}

// pieces are those of a cell, kept from an earlier look or made. What several
// threads look for at once is made by each of them, and is the same.
func (s *scatter) pieces(i, j, k int) *glassCell {
	h := hash4(uint32(i), uint32(j), uint32(k), 0x61a55)
	at := &s.kept[h%keptCells]
	if c := at.Load(); c != nil && c.i == i && c.j == j && c.k == k {
		return c
	}
	drift := 1 + 0.55*noise2(float64(i)*s.cell/60, float64(j)*s.cell/60, 9)
	n := s.each * drift * (0.6 + 0.8*draw(h, 1))
	c := &glassCell{i: i, j: j, k: k, pieces: make([]piece, min(mostPieces, int(n+draw(h, 2))))}
	for n := range c.pieces {
		p := &c.pieces[n]
		p.hash = rehash(h, uint32(3+n))
		u := float64(p.hash>>24) / 255
		p.r = s.grain * (0.38 + 0.30*u*u)
		// The middle lies anywhere in the cell, and the piece reaches into the next
		// ones: no seams show where cells meet.
		step := s.cell / 1024
		w := rehash(p.hash, 40)
		p.c = v3{
			float64(i)*s.cell + step*float64(w&1023),
			float64(j)*s.cell + step*float64(w>>10&1023),
			float64(k)*s.cell + step*float64(w>>20&1023)}
	}
	at.Store(c)
	return c
}

// near reports whether a ray, given in the lattice, comes near the piece before way.
func (p *piece) near(o, d v3, way float64) bool {
	q := p.c.sub(o)
	b := q.dot(d)
	return b >= -p.r && b <= way+p.r && q.dot(q)-b*b <= p.r*p.r
}

// shape is the piece itself.
func (p *piece) shape() *chip {
	k := p.made.Load()
	if k == nil {
		made := newChip(fromLattice(p.c), p.r, p.hash, 0.35)
		k = &made
		p.made.Store(k)
	}
	return k
}

// lieIn is how the piece lies in the channel that it is broadcast into.
func (p *piece) lieIn(c *channel, b *body) *lie {
	l := p.lies.Load()
	if l == nil {
		k := p.shape()
		l = &lie{c.holds(b, k), c.depthAt(b, k.c)}
		p.lies.Store(l)
	}
	return l
}

package look

import (
	"math"
	"sync"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
)

// border is what a mosaic's tile holds beyond its rim on each side, in texels, so
// that its halved level meets those of its neighbours.
const border = 4

// mosaic is a material that lies on the design, baked tile by tile where it is
// looked at: a picture of a small part of a large top bakes that part alone. It
// is a [scene.Rows].
type mosaic struct {
	key    keySum
	cell   float64
	side   int      // of a tile, texels; even
	levels int      // of a tile
	box    geom.Box // nothing lies beyond
	opaque bool
	// bake fills a grid's texels, or returns nil where nothing is.
	bake func(g grid) []uint32

	mu    sync.Mutex
	tiles map[[2]int]*slot
}

// newMosaic is a material with texels of cell mm in tiles of side texels, for
// pictures with perMM pixels to the millimetre.
func newMosaic(k key, cell float64, side int, perMM float64, box geom.Box, opaque bool, bake func(grid) []uint32) *mosaic {
	m := &mosaic{cell: cell, side: side, levels: 1, box: box, opaque: opaque, bake: bake, tiles: map[[2]int]*slot{}}
	for step := 1 / (perMM * cell); step > sharp && m.levels < 8; step /= 2 {
		m.levels++
	}
	m.key = k.number(float64(side)).number(float64(m.levels)).sum()
	if box.Empty() || !box.Min.Finite() || !box.Max.Finite() {
		m.box = geom.EmptyBox()
	}
	return m
}

// Opaque reports whether the material covers all that is painted with it.
func (m *mosaic) Opaque() bool { return m.opaque }

// At is the colour at a place of the design for a pixel footprint wide.
func (m *mosaic) At(x, y, footprint float64) scene.Colour {
	var b [4]uint8
	m.Row(b[:], x, y, footprint)
	return straight(b)
}

// Row writes the colours of a row of pixels.
func (m *mosaic) Row(dst []uint8, x, y, step float64) {
	if !(step > 0) || math.IsNaN(x) || !(y >= m.box.Min.Y && y <= m.box.Max.Y) {
		clear(dst)
		return
	}
	side := float64(m.side) * m.cell
	j := int(math.Floor(y / side))
	for len(dst) >= 4 {
		n := len(dst) / 4
		if x > m.box.Max.X {
			clear(dst)
			return
		}
		if x < m.box.Min.X {
			n = pixelsTo(m.box.Min.X-x, step, n)
			clear(dst[:4*n])
		} else {
			i := int(math.Floor(x / side))
			n = pixelsTo(min(float64(i+1)*side, m.box.Max.X)-x, step, n)
			if p := m.tile(i, j); p != nil {
				p.Row(dst[:4*n], x, y, step)
			} else {
				clear(dst[:4*n])
			}
		}
		x += float64(n) * step
		dst = dst[4*n:]
	}
}

// pixelsTo is how many pixels it takes to come past a distance: at least one, at
// most n.
func pixelsTo(distance, step float64, n int) int {
	if k := math.Ceil(distance / step); k < float64(n) {
		return max(1, int(k))
	}
	return n
}

// slot is the place of a tile, baked once however many ask for it.
type slot struct {
	once  sync.Once
	patch *Patch
}

// tile gives the tile in a column and row of the design, nil where it is empty.
func (m *mosaic) tile(i, j int) *Patch {
	at := [2]int{i, j}
	m.mu.Lock()
	s, ok := m.tiles[at]
	if !ok {
		s = new(slot)
		m.tiles[at] = s
	}
	m.mu.Unlock()
	s.once.Do(func() { s.patch = m.bakeTile(i, j) })
	return s.patch
}

func (m *mosaic) bakeTile(i, j int) *Patch {
	k := newKey("tile")
	k.h.Write(m.key[:])
	k.number(float64(i)).number(float64(j))
	p := bakes.get(k, func() *Patch {
		g := grid{
			origin: geom.Vec{X: float64(i*m.side-border) * m.cell, Y: float64(j*m.side-border) * m.cell},
			cell:   m.cell, w: m.side + 2*border, h: m.side + 2*border,
		}
		pix := m.bake(g)
		if pix == nil {
			return blank
		}
		return newPatchOf(m.levels, g.origin, g.cell, level{w: g.w, h: g.h, pix: pix}, false, m.opaque)
	})
	if p == blank {
		return nil
	}
	return p
}

// box is the part of the design that the grid covers.
func (g grid) box() geom.Box {
	return geom.Box{Min: g.origin, Max: g.origin.Add(geom.Vec{X: float64(g.w) * g.cell, Y: float64(g.h) * g.cell})}
}

// meets reports whether two boxes overlap.
func meets(a, b geom.Box) bool {
	return a.Min.X <= b.Max.X && a.Max.X >= b.Min.X && a.Min.Y <= b.Max.Y && a.Max.Y >= b.Min.Y
}

// sane is loops without points that are no place.
func sane(loops []geom.Loop) []geom.Loop {
	for _, l := range loops {
		for _, p := range l {
			if !p.Finite() || math.Abs(p.X) > 1e6 || math.Abs(p.Y) > 1e6 {
				return nil
			}
		}
	}
	return loops
}

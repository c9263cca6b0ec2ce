package raster

import (
	"math/bits"

	"example.org/castwright/model/geom"
)

// cells turns closed polygons into the exact cover of every pixel that they
// touch. Each pixel met by an edge holds how far the edges in it run up or down
// and the area to their left; a walk along the row from the left then gives
// every pixel's cover (the method of Levien's LibArt and of FreeType). Numbers
// are whole, so the same polygon gives the same cover on every machine.
//
// The cells are a dense grid with a bit for each one in use: adding to one takes
// the same time however many there are. Lists of cells, as other rasterizers
// keep them, grow slow where hundreds of short lines lie side by side, as in a
// hatching.
type cells struct {
	w, h  int
	cell  []cell   // w + 1 to the row; the first holds all that lies to the left
	used  []uint64 // bits, words to the row
	words int
	y0    int // rows in use
	y1    int

	at    fixedPoint // of the pen
	start fixedPoint
}

// cell is what the edges in one pixel do.
type cell struct {
	cover int32 // height that they run up, in 1/256 pixels
	area  int32 // twice the area to their left
}

// fixedPoint is a place in 1/256 pixels.
type fixedPoint struct{ x, y int }

const (
	one   = 256 // of a pixel
	shift = 8
)

// resize makes the grid w by h pixels and empty.
func (c *cells) resize(w, h int) {
	if c.w != w || c.h != h {
		c.w, c.h, c.words = w, h, (w+1+63)/64
		c.cell = make([]cell, (w+1)*h)
		c.used = make([]uint64, c.words*h)
	}
	c.y0, c.y1 = h, 0
}

// moveTo starts a polygon.
func (c *cells) moveTo(p fixedPoint) { c.start, c.at = p, p }

// close draws the last side.
func (c *cells) close() { c.lineTo(c.start) }

// lineTo adds a side of the polygon.
func (c *cells) lineTo(p fixedPoint) {
	a := c.at
	c.at = p
	if a.y == p.y {
		return
	}
	dx, dy := p.x-a.x, p.y-a.y
	step, row, last := 1, a.y>>shift, (p.y-1)>>shift
	if dy < 0 {
		step, row, last = -1, (a.y-1)>>shift, p.y>>shift
	}
	// Rows before the first one and after the last one are skipped.
	if step > 0 && row < 0 {
		row = 0
	}
	if step < 0 && row >= c.h {
		row = c.h - 1
	}
	if step > 0 && row > last || step < 0 && row < last {
		return
	}
	for ; row != last+step; row += step {
		if row < 0 && step < 0 || row >= c.h && step > 0 {
			return
		}
		top, bottom := row<<shift, (row+1)<<shift
		from, to := max(top, min(bottom, a.y)), max(top, min(bottom, p.y))
		c.across(row, a.x+floorDiv((from-a.y)*dx, dy), a.x+floorDiv((to-a.y)*dx, dy), from-top, to-top)
	}
}

// floorDiv is a/b toward minus infinity: it does not change when a whole picture
// is shifted by whole rows, as division toward zero would.
func floorDiv(a, b int) int {
	q := a / b
	if a%b != 0 && (a < 0) != (b < 0) {
		q--
	}
	return q
}

// across adds the part of a side within a row: from x0 to x1, at heights y0 to
// y1 in the row.
func (c *cells) across(row, x0, x1, y0, y1 int) {
	if y0 == y1 {
		return
	}
	c.y0, c.y1 = min(c.y0, row), max(c.y1, row+1)
	i0, i1 := x0>>shift, x1>>shift
	if i0 == i1 {
		c.add(row, i0, y1-y0, x0&(one-1)+x1&(one-1))
		return
	}
	dx, dy := x1-x0, y1-y0
	step, edge, next := 1, one, 0 // the side of a pixel where it is left, and entered
	if dx < 0 {
		step, edge, next = -1, 0, one
	}
	// What lies left or right of the grid is one piece.
	if lo, hi := min(i0, i1), max(i0, i1); hi < 0 || lo >= c.w {
		c.add(row, i0, dy, 0)
		return
	}
	y, x := y0, x0&(one-1)
	for i := i0; i != i1; i += step {
		at := (i+1)<<shift - x0
		if dx < 0 {
			at = i<<shift - x0
		}
		to := y0 + floorDiv(at*dy, dx)
		c.add(row, i, to-y, x+edge)
		y, x = to, next
	}
	c.add(row, i1, y1-y, x+x1&(one-1))
}

// add adds a piece of a side to a cell: dy high, in the middle at half of x2.
func (c *cells) add(row, i, dy, x2 int) {
	if i >= c.w || dy == 0 {
		return
	}
	if i < 0 {
		i, x2 = -1, 0
	}
	i++
	k := &c.cell[row*(c.w+1)+i]
	k.cover += int32(dy)
	k.area += int32(dy * x2)
	c.used[row*c.words+i>>6] |= 1 << (i & 63)
}

// span is a run of pixels of a row with the same cover, 1 to 0xffff.
type span struct {
	y, x0, x1 int
	cover     uint32
}

// sweep hands out the spans by the non-zero rule, from the top and the left, and
// empties the grid.
func (c *cells) sweep(lay func(span)) {
	for y := c.y0; y < c.y1; y++ {
		row := c.cell[y*(c.w+1) : (y+1)*(c.w+1)]
		height, x := 0, 0
		for k, word := range c.used[y*c.words : (y+1)*c.words] {
			for word != 0 {
				i := k<<6 + bits.TrailingZeros64(word)
				word &= word - 1
				if at := i - 1; at > x {
					if a := coverOf(2 * one * height); a > 0 {
						lay(span{y, x, at, a})
					}
					x = at
				}
				height += int(row[i].cover)
				if i > 0 {
					if a := coverOf(2*one*height - int(row[i].area)); a > 0 {
						lay(span{y, x, x + 1, a})
					}
					x++
				}
				row[i] = cell{}
			}
			c.used[y*c.words+k] = 0
		}
		if a := coverOf(2 * one * height); a > 0 && x < c.w {
			lay(span{y, x, c.w, a})
		}
	}
	c.y0, c.y1 = c.h, 0
}

// coverOf turns twice an area in 1/65536 pixels into a cover.
func coverOf(area2 int) uint32 {
	if area2 < 0 {
		area2 = -area2
	}
	return uint32(min(area2/2, 0xffff))
}

// quadTo adds a curve with one control point, as straight sides.
func (c *cells) quadTo(b, p fixedPoint) {
	a := c.at
	// The curve strays from n chords by |a - 2b + p| / (8 n²): a twentieth of a
	// pixel is too little to see.
	dev := max(abs(a.x-2*b.x+p.x), abs(a.y-2*b.y+p.y))
	n := 1
	for n < 16 && dev > 8*n*n*one/20 {
		n++
	}
	for i := 1; i < n; i++ {
		s := n - i
		c.lineTo(fixedPoint{
			floorDiv(s*s*a.x+2*s*i*b.x+i*i*p.x, n*n),
			floorDiv(s*s*a.y+2*s*i*b.y+i*i*p.y, n*n),
		})
	}
	c.lineTo(p)
}

func abs(x int) int {
	if x < 0 {
		return -x
	}
	return x
}

// polygon adds a closed polygon on the page, whose row top is the grid's first.
func (c *cells) polygon(l []geom.Vec, top int) {
	if len(l) < 3 {
		return
	}
	c.moveTo(pointOf(l[0], top))
	for _, p := range l[1:] {
		c.lineTo(pointOf(p, top))
	}
	c.close()
}

package picture

import "math"

// cover is where in a picture things may be seen: the rays of most pixels meet
// the top, a wall or the floor, and need not ask.
type cover struct {
	w, h int // cells
	on   []bool
}

const coverCell = 16 // pixels

// cover finds the cells of a picture that triangles are seen in, by the
// rectangle about each of them.
func (t *things) cover(c *camera) *cover {
	k := &cover{w: (c.w + coverCell - 1) / coverCell, h: (c.h + coverCell - 1) / coverCell}
	k.on = make([]bool, k.w*k.h)
	for _, b := range [2]*bvh{t.low, t.high} {
		for i := range b.tris {
			tri := &b.tris[i]
			x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
			whole := true
			for _, p := range [3]v3{tri.a, tri.b, tri.c} {
				x, y, ok := c.project(p)
				whole = whole && ok
				x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
			}
			if !whole { // it reaches behind the eye
				x0, y0, x1, y1 = 0, 0, float64(c.w), float64(c.h)
			}
			k.mark(x0-1, y0-1, x1+1, y1+1)
		}
	}
	return k
}

func (k *cover) mark(x0, y0, x1, y1 float64) {
	cell := func(x float64, n int) int { return int(max(0, min(float64(n-1), x/coverCell))) }
	if x1 < 0 || y1 < 0 || x0 > float64(k.w*coverCell) || y0 > float64(k.h*coverCell) {
		return
	}
	for j := cell(y0, k.h); j <= cell(y1, k.h); j++ {
		row := k.on[j*k.w:]
		for i := cell(x0, k.w); i <= cell(x1, k.w); i++ {
			row[i] = true
		}
	}
}

// at reports whether things may be seen at a place of the picture, or by it.
func (k *cover) at(x, y float64) bool {
	within := x >= 0 && y >= 0 && x < float64(k.w*coverCell) && y < float64(k.h*coverCell)
	return !within || k.on[int(y)/coverCell*k.w+int(x)/coverCell]
}

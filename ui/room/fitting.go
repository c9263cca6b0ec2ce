package room

import (
	"math"

	"example.org/castwright/model/geom"
)

// fitting is how a photograph lies on the screen, in device pixels.
type fitting struct {
	box   geom.Box // of what is seen of the photograph, on the screen
	from  geom.Vec // the pixel of the photograph at its upper left corner
	scale float64  // device pixels to one pixel of the whole photograph
}

// fit lays a photograph of pw x ph pixels into w x h device pixels, whole and in the
// middle, with a margin that corners at its rim can be taken hold of in.
func fit(pw, ph, w, h int, margin float64) fitting {
	rw, rh := math.Max(1, float64(w)-2*margin), math.Max(1, float64(h)-2*margin)
	k := math.Min(rw/float64(pw), rh/float64(ph))
	sw, sh := math.Max(1, math.Round(float64(pw)*k)), math.Max(1, math.Round(float64(ph)*k))
	x, y := math.Floor((float64(w)-sw)/2), math.Floor((float64(h)-sh)/2)
	return fitting{box: geom.Box{Min: geom.Vec{X: x, Y: y}, Max: geom.Vec{X: x + sw, Y: y + sh}}, scale: sw / float64(pw)}
}

// screen is where a pixel of the photograph is seen.
func (f fitting) screen(p geom.Vec) geom.Vec { return f.box.Min.Add(p.Sub(f.from).Mul(f.scale)) }

// photo is the pixel of the photograph that is seen at a place.
func (f fitting) photo(s geom.Vec) geom.Vec { return s.Sub(f.box.Min).Mul(1 / f.scale).Add(f.from) }

// near is the part of a photograph of pw x ph pixels that shows a box of it large, in
// the shape of w x h as far as the photograph reaches.
func near(box geom.Box, pw, ph, w, h int) geom.Box {
	const about, over = 1.25, 1.5 // what is shown beside the box, and above and below it
	bw, bh := math.Max(16, box.W()*about), math.Max(16, box.H()*over)
	if shape := float64(w) / float64(h); bw < bh*shape {
		bw = bh * shape
	} else {
		bh = bw / shape
	}
	bw, bh = math.Min(bw, float64(pw)), math.Min(bh, float64(ph))
	c := box.Centre()
	x := math.Max(0, math.Min(float64(pw)-bw, c.X-bw/2))
	y := math.Max(0, math.Min(float64(ph)-bh, c.Y-bh/2))
	return geom.Box{Min: geom.Vec{X: x, Y: y}, Max: geom.Vec{X: x + bw, Y: y + bh}}
}

// within is the nearest place of the photograph.
func within(p geom.Vec, w, h int) geom.Vec {
	return geom.Vec{X: math.Max(0, math.Min(float64(w), p.X)), Y: math.Max(0, math.Min(float64(h), p.Y))}
}

// nearest is the handle that lies nearest to a place, -1 when none is within reach.
func nearest(handles [4]geom.Vec, at geom.Vec, reach float64) int {
	best, dist := -1, reach
	for i, h := range handles {
		if d := h.Dist(at); d <= dist {
			best, dist = i, d
		}
	}
	return best
}

// loupeAt is where the loupe of a side lies beside a place, within w x h: above and
// to the right of it, or wherever else it fits.
func loupeAt(at geom.Vec, side, off float64, w, h int) geom.Vec {
	x, y := at.X+off, at.Y-off-side
	if x+side > float64(w) {
		x = at.X - off - side
	}
	if y < 0 {
		y = at.Y + off
	}
	return geom.Vec{X: math.Max(0, math.Min(x, float64(w)-side)), Y: math.Max(0, math.Min(y, float64(h)-side))}
}

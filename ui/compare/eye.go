package compare

import (
	"example.org/castwright/export/picture"
	"example.org/castwright/model/geom"
)

// eyes are the cameras of the pictures from the front. They are kept, since the sets
// that they are found by are not.
type eyes struct {
	of    eyesOf
	known [2]bool
	cam   [2]picture.Projection
	face  [2]float64
}

// eyesOf is what they hang on.
type eyesOf struct {
	prints [2]string // of the designs
	w, h   int
	fitted bool
}

// camera is the camera of the picture from the front of a side before its zoom, in
// pixels, and the height of its face; false until its set is built.
func (p *Page) camera(i int) (cam picture.Projection, face float64, ok bool) {
	of := eyesOf{fitted: p.Fitted()}
	of.w, of.h = p.pixels()
	var sets [2]*picture.Set
	for k, s := range p.of {
		if s.err == nil {
			of.prints[k] = s.print
			sets[k] = p.shots.set(s.print)
		}
	}
	if p.eyes.of == of && p.eyes.known[i] {
		return p.eyes.cam[i], p.eyes.face[i], true
	}
	if sets[i] == nil {
		return cam, 0, false
	}
	if of.fitted || sets[1-i] == nil {
		cam = sets[i].Projection(picture.View{Kind: picture.Quarter}, of.w, of.h)
	} else {
		cam = sameEye(sets, p.boxes(), of.w, of.h)
		if by := p.beside(); i == 1 {
			for k := range cam {
				cam[k][3] += cam[k][0]*by.X + cam[k][1]*by.Y
			}
		}
	}
	face = sets[i].Face()
	if of.fitted || sets[1-i] != nil || p.bare(1-i) { // else it is another one once the other's set is built
		if p.eyes.of != of {
			p.eyes = eyes{of: of}
		}
		p.eyes.known[i], p.eyes.cam[i], p.eyes.face[i] = true, cam, face
	}
	return cam, face, true
}

// bare reports whether a side has nothing to take a picture of.
func (p *Page) bare(i int) bool {
	return p.of[i].err != nil || p.of[i].Report.Solid.Outline.Bounds().Empty()
}

// boxes are the tops of both sides, on one origin.
func (p *Page) boxes() (out [2]geom.Box) {
	for i, s := range p.of {
		out[i] = geom.EmptyBox()
		if s.err == nil {
			out[i] = s.Report.Solid.Outline.Bounds()
			if i == 1 {
				out[i] = moved(out[i], p.beside())
			}
		}
	}
	return out
}

// sameEye is one camera that sees both tops from the front: that of the first, as far
// away as it must be.
func sameEye(sets [2]*picture.Set, tops [2]geom.Box, w, h int) picture.Projection {
	v := picture.SameScale(w, h, sets[0])[0]
	var cam picture.Projection
	for range 24 {
		cam = sets[0].Projection(v, w, h)
		inside := true
		for i, b := range tops {
			for k := range 8 {
				q := b.Min
				if k&1 > 0 {
					q.X = b.Max.X
				}
				if k&2 > 0 {
					q.Y = b.Max.Y
				}
				z := sets[i].Face()
				if k&4 > 0 {
					z -= 90
				}
				x, y, ok := cam.At(q.X, q.Y, z)
				inside = inside && ok && x > 0.03*float64(w) && x < 0.97*float64(w) && y > 0.03*float64(h) && y < 0.97*float64(h)
			}
		}
		if inside {
			break
		}
		v.Away *= 1.08
	}
	return cam
}

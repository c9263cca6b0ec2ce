package raster

import (
	"math"
	"sync"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// glyphKey names a glyph.
type glyphKey struct {
	face  scene.Face
	index sfnt.GlyphIndex
}

// outline is a glyph's contours in ems, x to the right, y down.
type outline struct{ segments sfnt.Segments }

// outlines remembers the glyphs met so far. They are loaded at the size of one
// font unit to the pixel and scaled when painted, so that a picture never
// depends on what was painted before it.
var outlines = struct {
	sync.Mutex
	buf sfnt.Buffer
	met map[glyphKey]outline
}{met: map[glyphKey]outline{}}

// maxOutlines bounds the glyphs that are remembered.
const maxOutlines = 4096

func outlineOf(k glyphKey) outline {
	outlines.Lock()
	defer outlines.Unlock()
	if o, ok := outlines.met[k]; ok {
		return o
	}
	f := k.face.Font()
	loaded, err := f.LoadGlyph(&outlines.buf, k.index, fixed.Int26_6(f.UnitsPerEm())<<6, nil)
	if err != nil {
		loaded = nil
	}
	o := outline{append(sfnt.Segments(nil), loaded...)}
	if len(outlines.met) < maxOutlines {
		outlines.met[k] = o
	}
	return o
}

// maxEm is the largest type in pixels.
const maxEm = 4096

// text paints a line of text as filled outlines, at any size and angle.
func (t *painter) text(s scene.Text) {
	if s.Text == "" || s.Colour.A == 0 || !s.At.Finite() || !(s.Size > 0 && s.Size <= maxEm) || math.IsNaN(s.Angle-s.Angle) {
		return
	}
	if s.Angle == 0 && (s.At.Y+s.Size < float64(t.top) || s.At.Y-s.Size > float64(t.top+t.h)) {
		return // in another band
	}
	glyphs, width := scene.Set(s.Text, s.Bold)
	start := 0.0
	switch s.Anchor {
	case scene.AnchorMiddle:
		start = -width * s.Size / 2
	case scene.AnchorEnd:
		start = -width * s.Size
	}
	if reach := width*s.Size + 2*s.Size; s.At.X < t.keep.Min.X-reach || s.At.X > t.keep.Max.X+reach ||
		s.At.Y < float64(t.top)-reach || s.At.Y > float64(t.top+t.h)+reach {
		return
	}
	at, base := s.At, scene.Middle*s.Size
	if s.Angle == 0 {
		// A line of text stands on whole pixels, so that it is crisp.
		at.Y = math.Round(at.Y+base) - base
	}
	sin, cos := math.Sincos(s.Angle)
	place := func(x, y float64) geom.Vec {
		y += base
		return geom.Vec{X: at.X + x*cos - y*sin, Y: at.Y + x*sin + y*cos}
	}
	for _, g := range glyphs {
		x := start + g.X*s.Size
		if p := place(x, 0); !t.keep.Grow(2 * s.Size).Contains(p) {
			continue
		}
		scale := s.Size / float64(g.Face.Font().UnitsPerEm()) / 64
		t.glyph(outlineOf(glyphKey{g.Face, g.Index}), func(p fixed.Point26_6) geom.Vec {
			return place(x+float64(p.X)*scale, float64(p.Y)*scale)
		})
	}
	t.paint(s.Colour)
}

// glyph gathers the contours of a glyph.
func (t *painter) glyph(o outline, place func(fixed.Point26_6) geom.Vec) {
	at := func(p fixed.Point26_6) fixedPoint { return pointOf(place(p), t.top) }
	open := false
	for _, s := range o.segments {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if open {
				t.cells.close()
			}
			t.cells.moveTo(at(s.Args[0]))
			open = true
		case sfnt.SegmentOpLineTo:
			t.cells.lineTo(at(s.Args[0]))
		case sfnt.SegmentOpQuadTo:
			t.cells.quadTo(at(s.Args[0]), at(s.Args[1]))
		}
	}
	if open {
		t.cells.close()
	}
}

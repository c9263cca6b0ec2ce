package raster

import (
	"math"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	"github.com/golang/freetype/raster"
	"golang.org/x/image/math/fixed"
)

// tint is a colour with premultiplied alpha, 0 to 255.
type tint struct{ r, g, b, a uint32 }

func tintOf(c scene.Colour) tint {
	a := uint32(c.A)
	return tint{(uint32(c.R)*a + 127) / 255, (uint32(c.G)*a + 127) / 255, (uint32(c.B)*a + 127) / 255, a}
}

// painter paints a page's items on a band of rows of a picture.
type painter struct {
	pix    []uint8 // of the band
	stride int
	w, h   int // of the band
	top    int // row of the page that is the band's first
	keep   geom.Box
	ras    *raster.Rasterizer

	perMM  float64
	origin geom.Vec

	now     tint
	texture scene.Rows
	row     []uint8
	mask    []uint8 // cover of a clip, for each pixel of the band
	masking bool    // paint into the mask
	masked  bool    // paint through the mask

	path   []geom.Vec // scratch
	dashed [][]geom.Vec
}

// on turns the painter to the rows from top on of a page, held by a picture of
// w by h pixels.
func (t *painter) on(pix []uint8, stride, w, h, top int, p scene.Page) {
	if t.ras == nil || t.w != w || t.h != h {
		t.ras = raster.NewRasterizer(w, h)
		t.row = make([]uint8, 4*w)
	}
	t.ras.UseNonZeroWinding = true
	t.ras.Clear()
	t.pix, t.stride, t.w, t.h, t.top = pix, stride, w, h, top
	t.keep = geom.Box{
		Min: geom.Vec{X: -margin, Y: float64(top) - margin},
		Max: geom.Vec{X: float64(w) + margin, Y: float64(top+h) + margin},
	}
	t.perMM, t.origin = p.PerMM, p.Origin
	if !(t.perMM > 0) || math.IsInf(t.perMM, 0) || !t.origin.Finite() {
		t.perMM, t.origin = 0, geom.Vec{}
	}
}

func (t *painter) item(item scene.Item) {
	switch item := item.(type) {
	case scene.Fill:
		t.fill(item)
	case scene.Stroke:
		t.stroke(item)
	case scene.Text:
		t.text(item)
	}
}

// point is a place of the page for the rasterizer, whose first row is the
// band's. Whole rows lie between page and band, so a shape meets the same
// pixels with the same cover whatever band it is painted in.
func (t *painter) point(p geom.Vec) fixed.Point26_6 {
	return fixed.Point26_6{
		X: fixed.Int26_6(math.Floor(p.X*64 + 0.5)),
		Y: fixed.Int26_6(math.Floor(p.Y*64+0.5)) - fixed.Int26_6(t.top*64),
	}
}

// gather adds a closed loop to what is painted next.
func (t *painter) gather(l []geom.Vec) {
	if len(l) < 3 {
		return
	}
	start := t.point(l[0])
	last := start
	t.ras.Start(start)
	for _, p := range l[1:] {
		if q := t.point(p); q != last {
			t.ras.Add1(q)
			last = q
		}
	}
	if last != start {
		t.ras.Add1(start)
	}
}

// paint paints what was gathered with a colour.
func (t *painter) paint(c scene.Colour) {
	t.now, t.texture = tintOf(c), nil
	t.ras.Rasterize(t)
	t.ras.Clear()
}

func (t *painter) fill(f scene.Fill) {
	if f.Clip != nil {
		if !t.setMask(f.Clip) {
			return
		}
		defer func() { t.masked = false }()
	}
	textured := f.Paint.Texture != nil && t.perMM > 0
	var rows scene.Rows
	if textured {
		var ok bool
		if rows, ok = f.Paint.Texture.(scene.Rows); !ok {
			rows = each{f.Paint.Texture}
		}
	}
	if !t.gatherAll(f.Loops) {
		return
	}
	if f.Paint.Colour.A > 0 && !(textured && rows.Opaque()) {
		t.paint(f.Paint.Colour)
		if !textured {
			return
		}
		t.gatherAll(f.Loops)
	}
	if textured {
		t.texture = rows
		t.ras.Rasterize(t)
	}
	t.ras.Clear()
}

// gatherAll gathers what can be painted of loops, and reports whether anything
// was.
func (t *painter) gatherAll(loops []geom.Loop) bool {
	some := false
	for _, l := range loops {
		if !finite(l) {
			continue
		}
		if cut := clipLoop(l, t.keep); len(cut) > 2 {
			t.gather(cut)
			some = true
		}
	}
	return some
}

// setMask lets only the inside of loops be painted from now on; it reports
// whether there is any.
func (t *painter) setMask(loops []geom.Loop) bool {
	if len(t.mask) != t.w*t.h {
		t.mask = make([]uint8, t.w*t.h)
	} else {
		clear(t.mask)
	}
	if !t.gatherAll(loops) {
		return false
	}
	t.masking = true
	t.ras.Rasterize(t)
	t.ras.Clear()
	t.masking, t.masked = false, true
	return true
}

// Paint lays spans, as the rasterizer hands them out.
func (t *painter) Paint(spans []raster.Span, _ bool) {
	for _, s := range spans {
		s.X0, s.X1 = max(s.X0, 0), min(s.X1, t.w)
		if s.X0 >= s.X1 || s.Y < 0 || s.Y >= t.h {
			continue
		}
		if t.masking {
			run := t.mask[s.Y*t.w+s.X0 : s.Y*t.w+s.X1]
			for i := range run {
				run[i] = uint8(s.Alpha >> 8)
			}
			continue
		}
		if t.masked {
			t.throughMask(s)
			continue
		}
		t.lay(s)
	}
}

// throughMask lays a span in runs of equal mask.
func (t *painter) throughMask(s raster.Span) {
	mask := t.mask[s.Y*t.w : (s.Y+1)*t.w]
	for x := s.X0; x < s.X1; {
		m := mask[x]
		end := x + 1
		for end < s.X1 && mask[end] == m {
			end++
		}
		if m > 0 {
			alpha := s.Alpha
			if m < 0xff {
				alpha = alpha * uint32(m) / 0xff
			}
			t.lay(raster.Span{Y: s.Y, X0: x, X1: end, Alpha: alpha})
		}
		x = end
	}
}

// lay lays one span.
func (t *painter) lay(s raster.Span) {
	row := t.pix[s.Y*t.stride+s.X0*4 : s.Y*t.stride+s.X1*4]
	if t.texture != nil {
		t.layTexture(row, s)
		return
	}
	layColour(row, t.now, s.Alpha)
}

// layColour lays a colour over a row, with a cover of 0 to 0xffff.
func layColour(row []uint8, c tint, cover uint32) {
	if cover == 0xffff && c.a == 0xff {
		for i := 0; i+3 < len(row); i += 4 {
			row[i], row[i+1], row[i+2], row[i+3] = uint8(c.r), uint8(c.g), uint8(c.b), 0xff
		}
		return
	}
	// In 1/0xffff of a step, so that faint layers over each other do not drift.
	r, g, b := c.r*cover, c.g*cover, c.b*cover
	keep := 0xffff - c.a*cover/0xff
	for i := 0; i+3 < len(row); i += 4 {
		row[i] = uint8((r + uint32(row[i])*keep + 0x7fff) / 0xffff)
		row[i+1] = uint8((g + uint32(row[i+1])*keep + 0x7fff) / 0xffff)
		row[i+2] = uint8((b + uint32(row[i+2])*keep + 0x7fff) / 0xffff)
		row[i+3] = uint8((c.a*cover + uint32(row[i+3])*keep + 0x7fff) / 0xffff)
	}
}

// layTexture lays the texture over a row.
func (t *painter) layTexture(row []uint8, s raster.Span) {
	step := 1 / t.perMM
	x := (float64(s.X0) + 0.5 - t.origin.X) * step
	y := (t.origin.Y - float64(t.top+s.Y) - 0.5) * step
	if s.Alpha == 0xffff && t.texture.Opaque() {
		t.texture.Row(row, x, y, step)
		return
	}
	src := t.row[:len(row)]
	t.texture.Row(src, x, y, step)
	cover := s.Alpha
	for i := 0; i+3 < len(row); i += 4 {
		a := uint32(src[i+3])
		if a == 0 {
			continue
		}
		keep := 0xffff - a*cover/0xff
		row[i] = uint8((uint32(src[i])*cover + uint32(row[i])*keep + 0x7fff) / 0xffff)
		row[i+1] = uint8((uint32(src[i+1])*cover + uint32(row[i+1])*keep + 0x7fff) / 0xffff)
		row[i+2] = uint8((uint32(src[i+2])*cover + uint32(row[i+2])*keep + 0x7fff) / 0xffff)
		row[i+3] = uint8((a*cover + uint32(row[i+3])*keep + 0x7fff) / 0xffff)
	}
}

// each asks a texture for one place after the other.
type each struct{ scene.Texture }

// Opaque is not known.
func (e each) Opaque() bool { return false }

// Row writes a row of colours.
func (e each) Row(dst []uint8, x, y, step float64) {
	for i := 0; i+3 < len(dst); i += 4 {
		c := tintOf(e.At(x, y, step))
		dst[i], dst[i+1], dst[i+2], dst[i+3] = uint8(c.r), uint8(c.g), uint8(c.b), uint8(c.a)
		x += step
	}
}

package raster

import (
	"encoding/binary"
	"math"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
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
	cells  cells

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

// on turns the painter to the band of h rows from top on of a picture that is w
// pixels wide and whole rows high.
func (t *painter) on(pix []uint8, stride, w, h, top, whole int, p scene.Page) {
	t.cells.resize(w, h)
	if len(t.row) != 4*w {
		t.row = make([]uint8, 4*w)
	}
	t.pix, t.stride, t.w, t.h, t.top = pix, stride, w, h, top
	// Geometry is cut off at the whole picture, not at the band: cutting moves
	// ends by a rounding, which must not depend on the band.
	t.keep = geom.Box{
		Min: geom.Vec{X: -margin, Y: -margin},
		Max: geom.Vec{X: float64(w) + margin, Y: float64(whole) + margin},
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
	case scene.Picture:
		t.picture(item)
	}
}

// pointOf is a place of the page for the rasterizer, whose first row is the
// page's row top. Whole rows lie between them, so a shape meets the same pixels
// with the same cover whatever band it is painted in.
func pointOf(p geom.Vec, top int) fixedPoint {
	return fixedPoint{int(math.Floor(p.X*one + 0.5)), int(math.Floor(p.Y*one+0.5)) - top*one}
}

// gather adds a closed loop to what is painted next.
func (t *painter) gather(l []geom.Vec) { t.cells.polygon(l, t.top) }

// paint paints what was gathered with a colour.
func (t *painter) paint(c scene.Colour) {
	t.now, t.texture = tintOf(c), nil
	t.sweep()
}

// sweep lays what was gathered.
func (t *painter) sweep() {
	switch {
	case t.masking:
		t.cells.sweep(t.layMask)
	case t.masked:
		t.cells.sweep(t.throughMask)
	default:
		t.cells.sweep(t.lay)
	}
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
		t.sweep()
	}
}

// gatherAll gathers what can be painted of loops, and reports whether anything
// was.
func (t *painter) gatherAll(loops []geom.Loop) bool {
	some := false
	for _, l := range loops {
		if !finite(l) {
			continue
		}
		if cut := clipLoop(l, t.keep); len(cut) > 2 && t.inBand(cut) {
			t.gather(cut)
			some = true
		}
	}
	return some
}

// inBand reports whether a loop reaches into the band.
func (t *painter) inBand(l []geom.Vec) bool {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range l {
		lo, hi = math.Min(lo, p.Y), math.Max(hi, p.Y)
	}
	return hi >= float64(t.top-1) && lo <= float64(t.top+t.h+1)
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
	t.sweep()
	t.masking, t.masked = false, true
	return true
}

// layMask sets the mask to the cover of a span.
func (t *painter) layMask(s span) {
	run := t.mask[s.y*t.w+s.x0 : s.y*t.w+s.x1]
	for i := range run {
		run[i] = uint8(s.cover >> 8)
	}
}

// throughMask lays a span in runs of equal mask.
func (t *painter) throughMask(s span) {
	mask := t.mask[s.y*t.w : (s.y+1)*t.w]
	for x := s.x0; x < s.x1; {
		m := mask[x]
		end := x + 1
		for end < s.x1 && mask[end] == m {
			end++
		}
		if m > 0 {
			cover := s.cover
			if m < 0xff {
				cover = cover * uint32(m) / 0xff
			}
			t.lay(span{s.y, x, end, cover})
		}
		x = end
	}
}

// lay lays one span.
func (t *painter) lay(s span) {
	row := t.pix[s.y*t.stride+s.x0*4 : s.y*t.stride+s.x1*4]
	if t.texture != nil {
		t.layTexture(row, s)
		return
	}
	layColour(row, t.now, s.cover)
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
func (t *painter) layTexture(row []uint8, s span) {
	step := 1 / t.perMM
	x := (float64(s.x0) + 0.5 - t.origin.X) * step
	y := (t.origin.Y - float64(t.top+s.y) - 0.5) * step
	if s.cover == 0xffff && t.texture.Opaque() {
		t.texture.Row(row, x, y, step)
		return
	}
	src := t.row[:len(row)]
	t.texture.Row(src, x, y, step)
	layRow(row, src, s.cover)
}

// layRow lays premultiplied colours over a row.
func layRow(row, src []uint8, cover uint32) {
	if cover == 0xffff {
		layWhole(row, src)
		return
	}
	for len(row) >= 4 && len(src) >= 4 {
		if a := uint32(src[3]); a != 0 {
			keep := 0xffff - a*cover/0xff
			row[0] = uint8((uint32(src[0])*cover + uint32(row[0])*keep + 0x7fff) / 0xffff)
			row[1] = uint8((uint32(src[1])*cover + uint32(row[1])*keep + 0x7fff) / 0xffff)
			row[2] = uint8((uint32(src[2])*cover + uint32(row[2])*keep + 0x7fff) / 0xffff)
			row[3] = uint8((a*cover + uint32(row[3])*keep + 0x7fff) / 0xffff)
		}
		row, src = row[4:], src[4:]
	}
}

// layWhole is layRow at full cover: two bytes of a pixel at a time, each in 16
// bits of its own.
func layWhole(row, src []uint8) {
	const even = 0x00ff00ff
	for len(row) >= 4 && len(src) >= 4 {
		if len(src) >= 8 && len(row) >= 8 && binary.LittleEndian.Uint64(src) == 0 {
			row, src = row[8:], src[8:]
			continue
		}
		s := binary.LittleEndian.Uint32(src)
		switch a := s >> 24; a {
		case 0:
		case 0xff:
			binary.LittleEndian.PutUint32(row, s)
		default:
			d, keep := binary.LittleEndian.Uint32(row), 0xff-a
			lo, hi := (d&even)*keep+0x00800080, (d>>8&even)*keep+0x00800080
			lo, hi = (lo+(lo>>8&even))>>8&even, (hi+(hi>>8&even))&^even // x/255, rounded
			binary.LittleEndian.PutUint32(row, s+(lo|hi))
		}
		row, src = row[4:], src[4:]
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

package room

import (
	"image"
	"image/color"
	"math"
	"strings"

	"fyne.io/fyne/v2"

	"example.org/castwright/export/raster"
	"example.org/castwright/export/room"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	look "example.org/castwright/ui/theme"
)

// The colours of what lies on a photograph, which may be of any colour: light lines
// on a dark rim.
var (
	white  = scene.Colour{R: 255, G: 255, B: 255, A: 255}
	rim    = scene.Colour{A: 0x90}
	accent = scene.Colour{R: 0x6f, G: 0xdc, B: 0xf5, A: 255}
	wrong  = scene.Colour{R: 0xff, G: 0x8a, B: 0x80, A: 255}
	plate  = scene.Colour{R: 0x16, G: 0x16, B: 0x16, A: 0xd8}
)

// paint paints what is seen.
func (s *stage) paint(f *finished) {
	s.ground()
	at := image.Pt(int(s.fit.box.Min.X), int(s.fit.box.Min.Y))
	if !s.p.result {
		blit(s.out, s.base, at, 0, s.base.Rect.Dx())
		s.marks()
		return
	}
	n := s.base.Rect.Dx()
	cut := 0 // to the left of it the room is as it was
	switch {
	case f == nil || s.p.hold || s.p.see == seeRoom:
		cut = n
	case s.p.see == seeBoth:
		x := s.fit.screen(geom.Vec{X: s.p.wipe * float64(s.p.photo.w)}).X - s.fit.box.Min.X
		cut = int(math.Round(math.Max(0, math.Min(float64(n), x))))
	}
	blit(s.out, s.base, at, 0, cut)
	if cut < n {
		blit(s.out, s.over, at, cut, n)
	}
	items := s.label(nil, f)
	if f != nil && s.p.see == seeBoth && !s.p.hold {
		x, y := s.fit.box.Min.X+float64(cut), (s.fit.box.Min.Y+s.fit.box.Max.Y)/2
		line := []geom.Vec{{X: x, Y: s.fit.box.Min.Y}, {X: x, Y: s.fit.box.Max.Y}}
		u := s.px
		items = append(items, s.stroke(rim, 4, false, line), s.stroke(white, 1.5, false, line),
			scene.Fill{Loops: []geom.Loop{ring(geom.Vec{X: x, Y: y}, 13*u)}, Paint: scene.Paint{Colour: plate}},
			s.stroke(white, 1.5, true, ring(geom.Vec{X: x, Y: y}, 13*u)),
			s.stroke(white, 1.8, false, []geom.Vec{{X: x - 3*u, Y: y - 4*u}, {X: x - 7*u, Y: y}, {X: x - 3*u, Y: y + 4*u}}),
			s.stroke(white, 1.8, false, []geom.Vec{{X: x + 3*u, Y: y - 4*u}, {X: x + 7*u, Y: y}, {X: x + 3*u, Y: y + 4*u}}))
	}
	s.items(items)
}

// label says what of a picture is seen.
func (s *stage) label(items []scene.Item, f *finished) []scene.Item {
	words := ""
	switch {
	case f == nil:
		words = "Setting the top in…"
	case s.p.hold || s.p.see == seeRoom:
		words = "The room as it is"
	}
	if words == "" {
		return items
	}
	at := s.fit.box.Min.Add(geom.Vec{X: 14 * s.px, Y: 24 * s.px})
	return s.note(items, at, scene.AnchorStart, words, white)
}

// ground lays the ground.
func (s *stage) ground() { s.lay(image.Rectangle{}) }

// margins lays the ground about the photograph again.
func (s *stage) margins() {
	b := s.fit.box
	s.lay(image.Rect(int(b.Min.X), int(b.Min.Y), int(b.Max.X), int(b.Max.Y)))
}

// lay lays the ground everywhere but in a hole.
func (s *stage) lay(hole image.Rectangle) {
	th := fyne.CurrentApp().Settings()
	c := color.NRGBAModel.Convert(th.Theme().Color(look.Ground, th.ThemeVariant())).(color.NRGBA)
	row := make([]uint8, s.out.Stride)
	for i := 0; i < len(row); i += 4 {
		row[i], row[i+1], row[i+2], row[i+3] = c.R, c.G, c.B, 255
	}
	for y := range s.out.Rect.Dy() {
		line := s.out.Pix[y*s.out.Stride : (y+1)*s.out.Stride]
		if y < hole.Min.Y || y >= hole.Max.Y {
			copy(line, row)
			continue
		}
		copy(line[:4*hole.Min.X], row)
		copy(line[4*hole.Max.X:], row)
	}
}

// blit copies the columns from a to b of a picture to a place.
func blit(dst, src *image.RGBA, at image.Point, a, b int) {
	if src == nil || b <= a {
		return
	}
	for y := range src.Rect.Dy() {
		d := dst.PixOffset(at.X+a, at.Y+y)
		copy(dst.Pix[d:d+4*(b-a)], src.Pix[y*src.Stride+4*a:y*src.Stride+4*b])
	}
}

// items paints things over the picture.
func (s *stage) items(items []scene.Item) {
	raster.Draw(s.out, scene.Page{W: float64(s.out.Rect.Dx()), H: float64(s.out.Rect.Dy()), Items: items})
}

func (s *stage) stroke(c scene.Colour, points float64, closed bool, lines ...[]geom.Vec) scene.Stroke {
	return scene.Stroke{Lines: lines, Closed: closed, Width: points * s.px, Colour: c}
}

// both is a line with its rim.
func (s *stage) both(items []scene.Item, c scene.Colour, points float64, closed bool, lines ...[]geom.Vec) []scene.Item {
	if len(lines) == 0 {
		return items
	}
	return append(items, s.stroke(rim, points+2, closed, lines...), s.stroke(c, points, closed, lines...))
}

func ring(at geom.Vec, r float64) geom.Loop {
	const n = 40
	out := make(geom.Loop, n)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		out[i] = geom.Vec{X: at.X + r*cos, Y: at.Y + r*sin}
	}
	return out
}

// marks paints the corners, and the new top as a wire.
func (s *stage) marks() {
	h := s.handles()
	fault := s.p.fault()
	var items []scene.Item
	if fault == nil { // what is seen of the wire ends with the photograph
		s.items(s.wire(nil))
		s.margins()
	}
	edge := white
	if fault != nil {
		edge = wrong
	}
	items = s.both(items, edge, 1.5, true, h[:])
	var mid geom.Vec
	for _, p := range h {
		mid = mid.Add(p.Mul(0.25))
	}
	at, words, bad := s.p.faultAt()
	for i, p := range h {
		items = s.handle(items, i, p, mid, fault != nil, !bad || p.Dist(s.fit.screen(at)) > 1)
	}
	if bad {
		items = s.words(items, s.fit.screen(at), words)
	}
	s.items(items)
	if s.loupe {
		s.magnify(h)
	}
}

// wire paints the new top's edges.
func (s *stage) wire(items []scene.Item) []scene.Item {
	ph := s.p.photo
	o := s.p.order(ph.full)
	k := float64(ph.w) / float64(ph.full.Rect.Dx()) * s.fit.scale
	w, err := room.WireOf(s.p.s.Report().Solid, o)
	if err != nil {
		return items
	}
	lay := func(lines [][]geom.Vec) (out [][]geom.Vec) {
		for _, l := range lines {
			line := make([]geom.Vec, len(l))
			for i, p := range l {
				line[i] = s.fit.box.Min.Add(p.Mul(k))
			}
			out = append(out, line)
		}
		return out
	}
	if w.Face != nil {
		face := lay([][]geom.Vec{w.Face})
		tint := accent
		tint.A = 0x26
		items = append(items, scene.Fill{Loops: []geom.Loop{face[0]}, Paint: scene.Paint{Colour: tint}})
		items = s.both(items, accent, 1.5, true, face...)
	}
	items = s.both(items, accent, 1, true, lay(w.Openings)...)
	items = s.both(items, accent, 1, false, lay(w.Foot)...)
	return s.both(items, accent, 1, false, lay(w.Upright)...)
}

// handle paints one corner, and where it is to be named its name beside it, away from
// the middle.
func (s *stage) handle(items []scene.Item, i int, p, mid geom.Vec, bad, named bool) []scene.Item {
	r, c := 7.0, white
	if i == s.p.corner {
		r, c = 9, accent
	}
	if i == s.over4 || i == s.p.corner && s.p.drag != nil {
		r += 2
	}
	if bad {
		c = wrong
	}
	u := s.px
	items = append(items, s.stroke(rim, 5, true, ring(p, r*u)), s.stroke(c, 2.5, true, ring(p, r*u)))
	if i == s.p.corner && s.focused {
		items = append(items, s.stroke(c, 1.2, true, ring(p, (r+4)*u)))
	}
	items = append(items, scene.Fill{Loops: []geom.Loop{ring(p, 1.5*u)}, Paint: scene.Paint{Colour: c}})
	if !named || i == s.p.corner && s.loupe {
		return items
	}
	away := p.Sub(mid)
	at := p.Add(geom.Vec{Y: 24 * u * math.Copysign(1, away.Y)})
	at.Y = math.Max(14*u, math.Min(float64(s.out.Rect.Dy())-14*u, at.Y))
	return s.note(items, at, scene.AnchorMiddle, cornerName(i), c)
}

const typeSize = 12.0 // points

// note is a short text on a plate.
func (s *stage) note(items []scene.Item, at geom.Vec, anchor scene.Anchor, words string, c scene.Colour) []scene.Item {
	t := scene.Text{At: at, Anchor: anchor, Size: typeSize * s.px, Colour: c, Text: words}
	w := t.Width()/2 + 6*s.px
	mid := at
	if anchor == scene.AnchorStart {
		mid.X += t.Width() / 2
	}
	// Within the stage.
	shift := math.Max(0, w-mid.X) - math.Max(0, mid.X+w-float64(s.out.Rect.Dx()))
	mid.X += shift
	t.At.X += shift
	return append(items, scene.Fill{Loops: []geom.Loop{box(mid, w, 10*s.px)}, Paint: scene.Paint{Colour: plate}}, t)
}

func box(mid geom.Vec, w, h float64) geom.Loop {
	return geom.Loop{{X: mid.X - w, Y: mid.Y - h}, {X: mid.X + w, Y: mid.Y - h}, {X: mid.X + w, Y: mid.Y + h}, {X: mid.X - w, Y: mid.Y + h}}
}

// words says beside a corner what is wrong with it, on a plate that stays in sight.
func (s *stage) words(items []scene.Item, at geom.Vec, text string) []scene.Item {
	u := s.px
	const most, line = 250.0, 17.0
	lines := wrapped(text, typeSize*u, most*u)
	w, h := 0.0, float64(len(lines))*line*u/2+8*u
	for _, l := range lines {
		w = math.Max(w, scene.Text{Size: typeSize * u, Text: l}.Width()/2+10*u)
	}
	W, H := float64(s.out.Rect.Dx()), float64(s.out.Rect.Dy())
	// Above or below, where it covers less of the corners and their names.
	var mid geom.Vec
	best := math.Inf(1)
	for _, dy := range [2]float64{-h - 20*u, h + 20*u} {
		m := geom.Vec{X: math.Max(w, math.Min(W-w, at.X)), Y: math.Max(h, math.Min(H-h, at.Y+dy))}
		covered := math.Abs(m.Y - at.Y - dy)
		for _, p := range s.handles() {
			if p != at && math.Abs(p.X-m.X) < w+34*u && math.Abs(p.Y-m.Y) < h+34*u {
				covered += 100 * u
			}
		}
		if s.loupe && dy < 0 { // where the loupe lies
			covered += 1000 * u
		}
		if covered < best {
			mid, best = m, covered
		}
	}
	solid := plate
	solid.A = 0xff
	items = append(items, scene.Fill{Loops: []geom.Loop{box(mid, w, h)}, Paint: scene.Paint{Colour: solid}},
		s.stroke(wrong, 1.5, true, box(mid, w, h)))
	for i, l := range lines {
		y := mid.Y + (float64(i)-float64(len(lines)-1)/2)*line*u
		items = append(items, scene.Text{At: geom.Vec{X: mid.X, Y: y}, Size: typeSize * u, Colour: white, Text: l})
	}
	return items
}

// wrapped breaks a text into lines of at most a width.
func wrapped(text string, size, width float64) (out []string) {
	line := ""
	for _, word := range strings.Fields(text) {
		next := strings.TrimSpace(line + " " + word)
		if line != "" && (scene.Text{Size: size, Text: next}).Width() > width {
			out = append(out, line)
			next = word
		}
		line = next
	}
	return append(out, line)
}

// magnify shows the photograph about the corner in hand, larger.
func (s *stage) magnify(h [4]geom.Vec) {
	ph, i := s.p.photo, s.p.corner
	side := loupeSide * s.px
	w, hgt := s.out.Rect.Dx(), s.out.Rect.Dy()
	if float64(w) < side || float64(hgt) < side {
		return
	}
	at := loupeAt(h[i], side, loupeOff*s.px, w, hgt)
	n := int(side)
	x0, y0 := int(at.X), int(at.Y)
	// A place of the loupe in pixels of the photograph that is in hand.
	full := ph.full
	fk := float64(full.Rect.Dx()) / float64(ph.w)
	middle := s.fit.photo(h[i]).Mul(fk)
	step := fk / (s.fit.scale * loupeZoom)
	for y := range n {
		row := s.out.Pix[s.out.PixOffset(x0, y0+y):]
		for x := range n {
			p := middle.Add(geom.Vec{X: (float64(x) + 0.5 - side/2) * step, Y: (float64(y) + 0.5 - side/2) * step})
			r, g, b := sample(full, p)
			row[4*x], row[4*x+1], row[4*x+2], row[4*x+3] = r, g, b, 255
		}
	}
	c := geom.Vec{X: at.X + side/2, Y: at.Y + side/2}
	reach := func(d geom.Vec, from float64) []geom.Vec {
		m := math.Max(math.Abs(d.X), math.Abs(d.Y))
		if !(m > 0) {
			return []geom.Vec{c, c}
		}
		d = d.Mul(1 / m)
		return []geom.Vec{c.Add(d.Mul(from)), c.Add(d.Mul(side / 2))}
	}
	tone := accent
	if s.p.fault() != nil {
		tone = wrong
	}
	items := s.both(nil, tone, 1, false, reach(h[(i+1)&3].Sub(h[i]), 5*s.px), reach(h[(i+3)&3].Sub(h[i]), 5*s.px))
	items = append(items, s.stroke(rim, 3, true, ring(c, 5*s.px)), s.stroke(tone, 1.2, true, ring(c, 5*s.px)))
	items = append(items, s.stroke(rim, 4, true, box(c, side/2, side/2)), s.stroke(white, 2, true, box(c, side/2, side/2)))
	items = s.note(items, geom.Vec{X: c.X, Y: at.Y + side - 14*s.px}, scene.AnchorMiddle, cornerName(i), tone)
	s.items(items)
}

// sample is the colour at a place of a picture, between its pixels; beyond it, grey.
func sample(img *image.RGBA, p geom.Vec) (r, g, b uint8) {
	w, h := img.Rect.Dx(), img.Rect.Dy()
	if p.X < 0 || p.Y < 0 || p.X >= float64(w) || p.Y >= float64(h) {
		return 0x40, 0x40, 0x40
	}
	x, y := p.X-0.5, p.Y-0.5
	fx, fy := math.Floor(x), math.Floor(y)
	u, v := x-fx, y-fy
	at := func(i, j int) []uint8 {
		i, j = max(0, min(w-1, i)), max(0, min(h-1, j))
		return img.Pix[img.PixOffset(i, j):]
	}
	x0, y0 := int(fx), int(fy)
	a, bb, c, d := at(x0, y0), at(x0+1, y0), at(x0, y0+1), at(x0+1, y0+1)
	mix := func(k int) uint8 {
		return uint8((float64(a[k])*(1-u)+float64(bb[k])*u)*(1-v) + (float64(c[k])*(1-u)+float64(d[k])*u)*v + 0.5)
	}
	return mix(0), mix(1), mix(2)
}

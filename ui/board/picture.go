package board

import (
	"encoding/binary"
	"image"
	"math"

	"example.org/castwright/export/raster"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/look"
	"example.org/castwright/model/scene"
	"example.org/castwright/ui/view"
	"fyne.io/fyne/v2"
)

// picture is the one raster of the board: a base, and a copy of it with what is
// in hand on top. The buffers are reused; the toolkit copies what it is given.
//
// In a gesture the base is drawn at once, the changed part of it alone where
// that will do. At rest it is drawn in the background, and until it is there the
// old one stays in sight, moved and scaled to where the design lies now: however
// long a finish takes to bake, the window goes on.
type picture struct {
	frame *image.RGBA
	base  *image.RGBA
	of    view.View // that the base was drawn for, in pixels
	was   still     // that it was drawn from
	gen   int       // of the design and the looks that it shows
	rough bool      // it is one for a gesture: patched, coarse or without textures

	now     int  // the generation that it should show
	whole   bool // no part of the base can be kept
	foreign bool // the base shows another design altogether
	patched bool // only a part of the base was drawn last
	turn    int  // counts the bases drawn at once, which overtake one under way
	busy    bool // a base is being drawn in the background
	spare   *image.RGBA

	inked     bool // the colours fit the theme
	over      overlay
	baseDraws int // for tests: how often the base was drawn
}

// maxPixels bounds a picture: two screens of 8K.
const maxPixels = 2 * 7680 * 4320

// draw makes the picture of w by h pixels. It runs on the main goroutine in the
// toolkit's paint.
func (b *Board) draw(w, h int) image.Image {
	if w < 1 || h < 1 || w > maxPixels/h {
		return image.NewRGBA(image.Rect(0, 0, 1, 1))
	}
	p := &b.picture
	p.frame = sized(p.frame, w, h)
	if !p.inked {
		p.over.ink, p.inked = newInk(), true
	}
	px := float64(w) / b.view.W
	v := b.view.Pixels(px)
	b.updateBase(v, px)
	p.show(v)
	if !p.foreign {
		b.drawOver(p.frame, v, px)
	}
	return p.frame
}

// Away lets the pictures go while another page lies over the board: two or three of
// the window's size, and the toolkit's own. They are drawn anew once it is seen again.
func (b *Board) Away() {
	p := &b.picture
	p.frame, p.base, p.spare, p.over.brush.img = nil, nil, nil, nil
	p.turn++
	b.raster.Refresh()
}

// sized is a picture of a size: img, or a new one.
func sized(img *image.RGBA, w, h int) *image.RGBA {
	if img == nil || img.Rect.Dx() != w || img.Rect.Dy() != h {
		return image.NewRGBA(image.Rect(0, 0, w, h))
	}
	return img
}

// fits reports whether the base lies as a picture of a view does.
func (p *picture) fits(v view.View) bool {
	return p.base != nil && p.of == v && p.base.Rect == p.frame.Rect
}

// updateBase draws the base, or has it drawn, where it is not what it should be.
func (b *Board) updateBase(v view.View, px float64) {
	p := &b.picture
	gesture := b.hand.Busy()
	if p.gen == p.now && !p.whole && p.fits(v) && (gesture || !p.rough) {
		return
	}
	textures := look.Baked(b.s.Design().Finish)
	switch {
	case gesture:
		b.drawGesture(v, px, textures)
	case b.background == nil:
		b.drawNow(v, b.still(v, px))
		p.rough = false
	default:
		if p.base == nil || p.foreign && !textures {
			s := b.still(v, px)
			s.view.Show.Textures = s.view.Show.Textures && textures
			b.drawNow(v, s)
		}
		b.drawSoon(v, px)
	}
}

// still is what the base shows now, as package draw takes it.
func (b *Board) still(v view.View, px float64) still {
	d, r := b.s.Seen()
	return still{design: d, report: r, solid: r.Solid, view: b.planView(v, px)}
}

// page is the drawing of a scene; the scene keeps its dimensions.
func (s *still) page() scene.Page {
	page := draw.Base(s.design, s.report, s.view)
	if s.view.Show.Dimensions {
		s.dims = draw.Dimensions(s.design, s.report, s.view).Items
		page.Items = append(page.Items, s.dims...)
	}
	return page
}

// drawNow draws the whole base at once. What it shows may be rough.
func (b *Board) drawNow(v view.View, s still) {
	p := &b.picture
	p.base = sized(p.base, p.frame.Rect.Dx(), p.frame.Rect.Dy())
	raster.Draw(p.base, s.page())
	p.take(v, s, p.now)
	p.rough = true
	p.turn++
}

// take notes what the base shows.
func (p *picture) take(v view.View, s still, gen int) {
	p.of, p.was, p.gen = v, s, gen
	p.whole, p.foreign = false, false
	p.patched = false
	p.baseDraws++
}

// drawGesture draws the base for a moment of a gesture: only the part that has
// changed, where that can be told.
func (b *Board) drawGesture(v view.View, px float64, textures bool) {
	p := &b.picture
	s := b.still(v, px)
	s.view.Draft = !b.fine
	s.view.Show.Textures = s.view.Show.Textures && textures
	if p.fits(v) && !p.whole {
		page := s.page()
		if box, whole := damage(p.was, s); !whole {
			patch(p.base, page, box)
			p.take(v, s, p.now)
			p.rough, p.patched = true, true
			p.turn++
			return
		}
	}
	b.drawNow(v, s)
}

// drawSoon draws the base in the background, unless it is at it already; a base
// that is overtaken meanwhile is dropped.
func (b *Board) drawSoon(v view.View, px float64) {
	p := &b.picture
	if p.busy {
		return
	}
	p.busy = true
	s, gen, turn := b.still(v, px), p.now, p.turn
	img := sized(p.spare, p.frame.Rect.Dx(), p.frame.Rect.Dy())
	p.spare = nil
	b.background(func() func() {
		raster.Draw(img, s.page())
		return func() {
			p.busy = false
			switch {
			case p.frame == nil: // nobody sees it any more
				return
			case p.turn != turn:
				p.spare = img
			default:
				p.base, p.spare = img, p.base
				p.take(v, s, gen)
				p.rough = false
			}
			b.raster.Refresh()
		}
	})
}

// show copies the base to the frame. A base of another view is moved and scaled
// to where the design lies in v; one of another design stays as it is.
func (p *picture) show(v view.View) {
	switch {
	case p.base == nil:
		clear(p.frame.Pix)
	case p.fits(v), p.foreign && p.base.Rect == p.frame.Rect:
		copy(p.frame.Pix, p.base.Pix)
	default:
		c := p.was.view.Theme.Ground
		moveOnto(p.frame, p.base, v, p.of, tintOf(uint32(c.R), uint32(c.G), uint32(c.B), uint32(c.A)))
	}
}

// moveOnto paints a picture src of the design in a view of, in pixels, on dst as
// it lies in another view: the nearest pixel for each, the ground where there is
// none.
func moveOnto(dst, src *image.RGBA, v, of view.View, ground tint) {
	w, h := dst.Rect.Dx(), dst.Rect.Dy()
	sw, sh := src.Rect.Dx(), src.Rect.Dy()
	k := of.Scale / v.Scale
	from := func(x int, origin, ofOrigin float64) float64 { return (float64(x)+0.5-origin)*k + ofOrigin }
	// first and last are the pixels of dst between which src lies.
	span := func(n, most int, origin, ofOrigin float64) (first, last int) {
		first = int(math.Ceil(math.Max(0, math.Min(float64(n), origin-ofOrigin/k-0.5))))
		last = int(math.Ceil(math.Max(0, math.Min(float64(n), origin+(float64(most)-ofOrigin)/k-0.5))))
		return first, max(first, last)
	}
	x0, x1 := span(w, sw, v.Origin.X, of.Origin.X)
	y0, y1 := span(h, sh, v.Origin.Y, of.Origin.Y)
	empty := make([]uint32, w)
	for i := range empty {
		empty[i] = ground.r | ground.g<<8 | ground.b<<16 | ground.a<<24
	}
	columns := make([]int, x1-x0)
	for i := range columns {
		columns[i] = 4 * max(0, min(sw-1, int(from(x0+i, v.Origin.X, of.Origin.X))))
	}
	lay := func(row []uint8, first, last int) {
		for x := first; x < last; x++ {
			binary.LittleEndian.PutUint32(row[4*x:], empty[x])
		}
	}
	for y := range h {
		row := dst.Pix[y*dst.Stride : y*dst.Stride+4*w]
		if y < y0 || y >= y1 {
			lay(row, 0, w)
			continue
		}
		j := max(0, min(sh-1, int(from(y, v.Origin.Y, of.Origin.Y))))
		line := src.Pix[j*src.Stride : j*src.Stride+4*sw]
		lay(row, 0, x0)
		lay(row, x1, w)
		if len(columns) == 0 {
			continue
		}
		if a := columns[0]; columns[len(columns)-1]-a == 4*(len(columns)-1) {
			copy(row[4*x0:4*x1], line[a:]) // only moved
			continue
		}
		out := row[4*x0:]
		for i, c := range columns {
			copy(out[4*i:4*i+4:4*i+4], line[c:c+4])
		}
	}
}

// drawOver draws what is in hand, the flash and the focus.
func (b *Board) drawOver(img *image.RGBA, v view.View, px float64) {
	l := &b.picture.over
	l.keep = b.zoom.covers(px)
	l.below = b.numbers(l.below[:0])
	l.draw(img, b.hand.Overlay(), v, px)
	if b.flash != nil {
		l.flash(b.flash.at, b.flash.phase)
	}
	if b.keyboard {
		l.frame()
	}
	if len(b.s.Design().Outline.Nodes) == 0 && b.hand.Tool() == Select {
		l.message("There is no top yet", "Pick a shape in the parts row,",
			"or draw an outline: click its corners one after the other.")
	}
}

// planView is the view as package draw takes it; v is in pixels, px of them to
// the point.
func (b *Board) planView(v view.View, px float64) draw.View {
	theme := draw.Light()
	if dark() {
		theme = draw.Dark()
	}
	return draw.View{
		W: v.W, H: v.H, Scale: v.Scale, Centre: v.Design(geom.Vec{X: v.W / 2, Y: v.H / 2}), Point: px,
		Theme: theme, Units: b.s.Job().Units,
		Show: draw.Show{
			Textures: b.show.Textures, Dimensions: b.show.Dimensions, Supports: b.show.Supports,
			Grid: b.show.Grid, Walls: true, Taps: true, ScaleBar: true,
		},
	}
}

// labelAt is the measure whose label lies at a place, in points.
func (b *Board) labelAt(at fyne.Position) (string, bool) {
	px := 1.0
	if b.picture.frame != nil {
		px = float64(b.picture.frame.Rect.Dx()) / b.view.W
	}
	return b.picture.over.at(geom.Vec{X: float64(at.X) * px, Y: float64(at.Y) * px})
}

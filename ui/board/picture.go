package board

import (
	"image"

	"example.org/castwright/export/raster"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/geom"
	"example.org/castwright/ui/view"
	"fyne.io/fyne/v2"
)

// picture is the one raster of the board: a base, and a copy of it with what is
// in hand on top. The buffers are reused; the toolkit copies what it is given.
type picture struct {
	base, frame *image.RGBA
	stale       bool      // the base no longer fits the design
	redo        bool      // nothing of the base can be kept
	patched     bool      // only parts of it were drawn last
	was         still     // that it was drawn from
	of          view.View // that the base was drawn for, in pixels
	inked       bool      // the colours fit the theme
	over        overlay
	baseDraws   int // for tests: how often the base was drawn
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
	if p.frame == nil || p.frame.Rect.Dx() != w || p.frame.Rect.Dy() != h {
		p.base, p.frame = image.NewRGBA(image.Rect(0, 0, w, h)), image.NewRGBA(image.Rect(0, 0, w, h))
		p.redo = true
	}
	if p.patched && !b.hand.Busy() {
		p.redo = true
	}
	if !p.inked {
		p.over.ink, p.inked = newInk(), true
	}
	px := float64(w) / b.view.W
	v := b.view.Pixels(px)
	if p.stale || p.redo || p.of != v {
		b.drawBase(p.base, v, px)
		p.of, p.stale = v, false
		p.baseDraws++
	}
	copy(p.frame.Pix, p.base.Pix)
	b.drawOver(p.frame, v, px)
	return p.frame
}

// drawOver draws what is in hand, the flash and the focus.
func (b *Board) drawOver(img *image.RGBA, v view.View, px float64) {
	l := &b.picture.over
	l.keep = b.zoom.covers(px)
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

// drawBase draws what lies still: ground, top and dimensions. In a gesture only
// the part that has changed is drawn anew; when it is over, all of it.
func (b *Board) drawBase(img *image.RGBA, v view.View, px float64) {
	p := &b.picture
	d, r := b.s.Design(), b.s.Report()
	now := still{solid: r.Solid, design: d, view: b.planView(v, px)}
	page := draw.Base(d, r, now.view)
	if now.view.Show.Dimensions {
		now.dims = draw.Dimensions(d, r, now.view).Items
		page.Items = append(page.Items, now.dims...)
	}
	old := p.was
	p.was = now
	if b.hand.Busy() && !p.redo {
		if box, whole := damage(old, now); !whole {
			patch(img, page, box)
			p.patched = true
			return
		}
	}
	p.redo, p.patched = false, false
	raster.Draw(img, page)
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

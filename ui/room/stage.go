package room

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/export/intake"
	"example.org/castwright/export/room"
	"example.org/castwright/model/geom"
	"example.org/castwright/ui/control"
)

// stage shows the photograph: with four handles while it is marked, or with the top
// in it. One raster holds all of it.
type stage struct {
	widget.BaseWidget
	p      *Page
	raster *canvas.Raster
	out    *image.RGBA
	base   *image.RGBA // the photograph at its size on the screen
	over   *image.RGBA // the picture with the top, likewise
	baseOf *image.RGBA
	overOf *image.NRGBA // the part of it that the top has changed
	partOf geom.Box     // of the photograph that base and over show

	fit     fitting
	px      float64 // device pixels to the point
	over4   int     // the corner under the mouse, -1 for none
	loupe   bool    // is shown at the corner in hand
	grab    geom.Vec
	focused bool
	pressed bool // on a corner, or on the wipe's line
}

// Sizes in points.
const (
	margin    = 14.0
	reach     = 22.0 // of a handle
	loupeSide = 150.0
	loupeOff  = 30.0
	loupeZoom = 5.0
)

func newStage(p *Page) *stage {
	s := &stage{p: p, over4: -1, px: 1}
	s.raster = canvas.NewRaster(s.draw)
	s.ExtendBaseWidget(s)
	return s
}

// again has the stage painted again.
func (s *stage) again() { s.raster.Refresh() }

// forget lets the pictures go.
func (s *stage) forget() {
	s.out, s.base, s.over, s.baseOf, s.overOf = nil, nil, nil, nil, nil
	s.over4, s.loupe, s.pressed = -1, false, false
}

// maxPixels bounds the stage: a screen of 8K.
const maxPixels = 7680 * 4320

func (s *stage) draw(w, h int) image.Image {
	ph := s.p.photo
	if w < 16 || h < 16 || w > maxPixels/h || ph == nil {
		return image.NewRGBA(image.Rect(0, 0, max(1, min(w, 16)), max(1, min(h, 16))))
	}
	s.px = float64(w) / math.Max(1, float64(s.Size().Width))
	part := s.part(w, h)
	edge := margin * s.px
	if s.p.result && s.p.large {
		edge = 0
	}
	s.fit = fit(int(math.Round(part.W())), int(math.Round(part.H())), w, h, edge)
	s.fit.from = part.Min
	if s.out == nil || s.out.Rect.Dx() != w || s.out.Rect.Dy() != h {
		s.out = image.NewRGBA(image.Rect(0, 0, w, h))
	}
	sw, sh := int(s.fit.box.W()), int(s.fit.box.H())
	if part != s.partOf {
		s.base, s.over = nil, nil
	}
	if s.baseOf != ph.full || s.base == nil || s.base.Rect.Dx() != sw || s.base.Rect.Dy() != sh {
		whole := ph.at(nearestWidth(int(float64(sw)*float64(ph.w)/part.W()), ph.full.Rect.Dx()))
		s.base, s.baseOf, s.partOf = intake.Scaled(cut(whole, part, ph.w), sw, sh), ph.full, part
	}
	f := s.p.shown()
	if s.p.result && f != nil && (s.overOf != f.part || s.over == nil || s.over.Rect != s.base.Rect) {
		s.over, s.overOf = f.seen, f.part
		if s.p.large || f.seen == nil || f.seen.Rect != s.base.Rect { // the window was given another size
			s.over = intake.Scaled(cut(f.whole(ph), part, ph.w), sw, sh)
		}
	}
	s.paint(f)
	return s.out
}

// part is what is seen of the photograph, in its pixels: all of it, or the top large.
func (s *stage) part(w, h int) geom.Box {
	ph := s.p.photo
	if !s.p.result || !s.p.large {
		return geom.Box{Max: geom.Vec{X: float64(ph.w), Y: float64(ph.h)}}
	}
	box := geom.EmptyBox()
	k := float64(ph.w) / float64(ph.full.Rect.Dx())
	if wire, err := room.WireOf(s.p.s.Report().Solid, s.p.order(ph.full)); err == nil {
		for _, p := range wire.Face {
			box = box.Include(within(p.Mul(k), ph.w, ph.h))
		}
	}
	for _, c := range room.Marks(s.p.spots(), ph.w, ph.h) {
		box = box.Include(c)
	}
	return near(box, ph.w, ph.h, w, h)
}

// cut is a part of a picture, in pixels of a photograph that is wide pixels wide.
func cut(in interface {
	image.Image
	SubImage(image.Rectangle) image.Image
}, part geom.Box, wide int) image.Image {
	k := float64(in.Bounds().Dx()) / float64(wide)
	at := func(x float64) int { return int(math.Round(x * k)) }
	return in.SubImage(image.Rect(at(part.Min.X), at(part.Min.Y), at(part.Max.X), at(part.Max.Y)))
}

// nearestWidth is the width of a smaller photograph that is scaled to w pixels, of
// those that the stages have: never much less than w.
func nearestWidth(w, full int) int {
	for _, st := range stages {
		if st.width >= w {
			return min(st.width, full)
		}
	}
	return full
}

// handles are the corners on the screen, in device pixels.
func (s *stage) handles() (out [4]geom.Vec) {
	if s.p.photo == nil {
		return out
	}
	for i, c := range room.Marks(s.p.spots(), s.p.photo.w, s.p.photo.h) {
		out[i] = s.fit.screen(c)
	}
	return out
}

// pixel is a place of the widget in device pixels.
func (s *stage) pixel(at fyne.Position) geom.Vec {
	return geom.Vec{X: float64(at.X) * s.px, Y: float64(at.Y) * s.px}
}

// MouseIn does nothing.
func (s *stage) MouseIn(*desktop.MouseEvent) {}

// MouseMoved lights the corner under the mouse.
func (s *stage) MouseMoved(e *desktop.MouseEvent) {
	if s.p.photo == nil || s.p.result || s.p.drag != nil {
		return
	}
	if i := nearest(s.handles(), s.pixel(e.Position), reach*s.px); i != s.over4 {
		s.over4 = i
		s.again()
	}
}

// MouseOut puts the light out.
func (s *stage) MouseOut() {
	if s.over4 >= 0 {
		s.over4 = -1
		s.again()
	}
}

// MouseDown takes the corner under the mouse in hand.
func (s *stage) MouseDown(e *desktop.MouseEvent) {
	s.p.frame.Window.Canvas().Focus(s)
	if s.p.photo == nil || e.Button != desktop.MouseButtonPrimary {
		return
	}
	at := s.pixel(e.Position)
	if s.p.Acted != nil {
		if abs, ok := s.p.Acted(); ok {
			at = s.pixel(abs.Subtract(fyne.CurrentApp().Driver().AbsolutePositionForObject(s)))
		}
	}
	if s.p.result {
		if s.pressed = s.p.see == seeBoth; s.pressed {
			s.wipeTo(at)
		}
		return
	}
	handles := s.handles()
	i := nearest(handles, at, reach*s.px)
	if s.pressed = i >= 0; !s.pressed {
		s.loupe = false
		s.again()
		return
	}
	s.grab = handles[i].Sub(at)
	s.loupe = true
	s.p.take(i)
}

// MouseUp lets a corner go that was not dragged.
func (s *stage) MouseUp(*desktop.MouseEvent) {
	if s.p.drag == nil {
		s.pressed = false
	}
}

// Dragged moves the corner in hand, or the wipe's line.
func (s *stage) Dragged(e *fyne.DragEvent) {
	if !s.pressed || s.p.photo == nil {
		return
	}
	at := s.pixel(e.Position)
	if s.p.result {
		s.wipeTo(at)
		return
	}
	p := within(s.fit.photo(at.Add(s.grab)), s.p.photo.w, s.p.photo.h)
	s.p.drag = &p
	s.loupe = true
	s.p.moved()
	s.again()
}

// DragEnd drops the corner.
func (s *stage) DragEnd() {
	s.pressed = false
	s.loupe = false
	s.p.drop()
}

func (s *stage) wipeTo(at geom.Vec) {
	s.p.wipe = math.Max(0, math.Min(1, s.fit.photo(at).X/float64(s.p.photo.w)))
	s.again()
}

// Cursor says what can be taken hold of.
func (s *stage) Cursor() desktop.Cursor {
	switch {
	case s.p.result && s.p.see == seeBoth:
		return desktop.HResizeCursor
	case !s.p.result && (s.over4 >= 0 || s.p.drag != nil):
		return desktop.CrosshairCursor
	}
	return desktop.DefaultCursor
}

// FocusGained shows which corner the keys move.
func (s *stage) FocusGained() {
	s.focused = true
	s.again()
}

// FocusLost takes the mark away.
func (s *stage) FocusLost() {
	s.focused, s.loupe = false, false
	s.p.hold = false
	s.again()
}

// AcceptsTab lets Tab go through the corners before it goes on.
func (s *stage) AcceptsTab() bool { return !s.p.result && s.p.photo != nil }

// TypedRune does nothing.
func (s *stage) TypedRune(rune) {}

// KeyDown shows the room as it is while Space is held.
func (s *stage) KeyDown(e *fyne.KeyEvent) {
	if e.Name == fyne.KeySpace && s.p.result && !s.p.hold {
		s.p.hold = true
		s.again()
	}
}

// KeyUp shows the top again.
func (s *stage) KeyUp(e *fyne.KeyEvent) {
	if e.Name == fyne.KeySpace && s.p.hold {
		s.p.hold = false
		s.again()
	}
}

// TypedKey moves the corner in hand.
func (s *stage) TypedKey(e *fyne.KeyEvent) {
	if s.p.result || s.p.photo == nil {
		if e.Name != fyne.KeySpace {
			s.p.frame.Key(e)
		}
		return
	}
	step := 1.0
	if control.ShiftHeld() {
		step = 10
	}
	switch e.Name {
	case fyne.KeyTab:
		s.tab(control.ShiftHeld())
	case fyne.KeyLeft:
		s.nudge(-step, 0)
	case fyne.KeyRight:
		s.nudge(step, 0)
	case fyne.KeyUp:
		s.nudge(0, -step)
	case fyne.KeyDown:
		s.nudge(0, step)
	default:
		s.p.frame.Key(e)
	}
}

func (s *stage) nudge(dx, dy float64) {
	s.loupe = true
	s.p.nudge(dx, dy)
	s.again()
}

// tab takes the next corner in hand; after the last one the keyboard goes on.
func (s *stage) tab(back bool) {
	to := s.p.corner + 1
	if back {
		to = s.p.corner - 1
	}
	if to < 0 || to > 3 {
		c := s.p.frame.Window.Canvas()
		if back {
			c.FocusPrevious()
		} else {
			c.FocusNext()
		}
		return
	}
	s.loupe = true
	s.p.take(to)
}

// CreateRenderer makes the widget's renderer.
func (s *stage) CreateRenderer() fyne.WidgetRenderer {
	return control.Painted(s.raster, fyne.NewSize(320, 240), s.again)
}

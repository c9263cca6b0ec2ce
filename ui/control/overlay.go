package control

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	look "example.org/castwright/ui/theme"
)

// overlay is a card over the whole window: in its middle, with the rest dimmed,
// or beside what opened it. The toolkit's own tells nobody when a click
// elsewhere closes it.
type overlay struct {
	widget.BaseWidget
	frame   *Frame
	card    *fyne.Container
	dim     *canvas.Rectangle
	ground  *canvas.Rectangle
	wish    fyne.Size         // of the card, where there is room
	anchor  fyne.CanvasObject // that the card stands below; nil for the middle
	outside func()            // a click beside the card
	moved   func(fyne.Position)
	take    func(*fyne.KeyEvent) bool
	release func()
}

func newOverlay(f *Frame, content fyne.CanvasObject, take func(*fyne.KeyEvent) bool) *overlay {
	o := &overlay{frame: f, take: take, dim: canvas.NewRectangle(color.Transparent),
		ground: canvas.NewRectangle(color.Transparent)}
	o.card = container.NewStack(o.ground, content)
	o.ExtendBaseWidget(o)
	return o
}

// open shows the card and gives it the keyboard.
func (o *overlay) open(first fyne.Focusable) {
	c := o.frame.Window.Canvas()
	o.frame.Settle()
	o.frame.Say("")
	o.release = o.frame.Take(o.take)
	c.Overlays().Add(o)
	o.Resize(c.Size())
	if first != nil {
		c.Focus(first)
	}
	o.frame.covered()
}

// shut hides the card; it reports whether it was open.
func (o *overlay) shut() bool {
	if o.release == nil {
		return false
	}
	o.release()
	o.release = nil
	o.frame.Window.Canvas().Overlays().Remove(o)
	o.frame.Say("")
	o.frame.covered()
	return true
}

// Tapped closes what a click elsewhere closes.
func (o *overlay) Tapped(e *fyne.PointEvent) {
	at, size := o.card.Position(), o.card.Size()
	within := e.Position.X >= at.X && e.Position.Y >= at.Y &&
		e.Position.X < at.X+size.Width && e.Position.Y < at.Y+size.Height
	if !within && o.outside != nil {
		o.outside()
	}
}

// TappedSecondary is as Tapped.
func (o *overlay) TappedSecondary(e *fyne.PointEvent) { o.Tapped(e) }

// MouseIn keeps the mouse from what lies below.
func (o *overlay) MouseIn(*desktop.MouseEvent) {}

// MouseMoved keeps the mouse from what lies below.
func (o *overlay) MouseMoved(e *desktop.MouseEvent) {
	if o.moved != nil {
		o.moved(e.AbsolutePosition)
	}
}

// MouseOut keeps the mouse from what lies below.
func (o *overlay) MouseOut() {}

// Scrolled keeps the wheel from what lies below.
func (o *overlay) Scrolled(*fyne.ScrollEvent) {}

// CreateRenderer makes the widget's renderer.
func (o *overlay) CreateRenderer() fyne.WidgetRenderer {
	r := &overlayRenderer{o}
	r.apply()
	return r
}

type overlayRenderer struct{ o *overlay }

func (r *overlayRenderer) apply() {
	o := r.o
	th, v := o.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	shade := th.Color(theme.ColorNameShadow, v)
	o.dim.FillColor = color.Transparent
	o.ground.FillColor = th.Color(theme.ColorNameOverlayBackground, v)
	o.ground.StrokeColor, o.ground.StrokeWidth = th.Color(theme.ColorNameSeparator, v), 1
	o.ground.CornerRadius = th.Size(theme.SizeNamePopupRadius)
	if o.anchor == nil {
		o.dim.FillColor = shade
	}
	o.ground.Shadow = canvas.Shadow{Color: shade, BlurRadius: 14, Offset: fyne.NewPos(0, 4),
		Variant: canvas.DropShadow}
}

func (r *overlayRenderer) Refresh() {
	r.apply()
	r.Layout(r.o.Size())
	r.o.dim.Refresh()
	r.o.ground.Refresh()
	r.o.card.Refresh()
}

func (r *overlayRenderer) Layout(room fyne.Size) {
	o := r.o
	o.dim.Resize(room)
	most := room.SubtractWidthHeight(2*look.Space, 2*look.Space)
	size := o.card.MinSize().Max(o.wish).Min(most)
	at := fyne.NewPos((room.Width-size.Width)/2, (room.Height-size.Height)/2.5)
	if o.anchor != nil {
		at = fyne.CurrentApp().Driver().AbsolutePositionForObject(o.anchor)
		at.Y += o.anchor.Size().Height + look.Gap
		if at.Y+size.Height > room.Height-look.Space {
			// No room below: above, or else wherever it fits.
			at.Y = fyne.Max(look.Space, fyne.Min(at.Y, room.Height-size.Height-look.Space))
		}
		at.X = fyne.Max(look.Space, fyne.Min(at.X, room.Width-size.Width-look.Space))
	}
	o.card.Move(at)
	o.card.Resize(size)
}

func (r *overlayRenderer) MinSize() fyne.Size { return fyne.NewSize(0, 0) }

func (r *overlayRenderer) Destroy() {}

func (r *overlayRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.o.dim, r.o.card}
}

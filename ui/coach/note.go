package coach

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	look "example.org/castwright/ui/theme"
)

// Sizes of a note, in points.
const (
	padX, padY = 12, 9
	radius     = 8
	tailHalf   = 8  // of the tail's width
	tailLong   = 11 // from the card to its tip
	apart      = 5  // of the tip from the place
	rimRoom    = 8  // of a note from the drawing's rim
)

// note is a card with a tail that points to a place.
type note struct {
	widget.BaseWidget
	frame  *control.Frame
	ground *canvas.Rectangle
	tail   *canvas.ArbitraryPolygon
	lines  []*canvas.Text
	shut   *control.Button
	side   Side
	tip    float32 // of the tail from the left end of the note
}

func newNote(f *control.Frame, lines []string, shut func()) *note {
	n := &note{frame: f, ground: canvas.NewRectangle(color.Transparent)}
	n.tail = canvas.NewArbitraryPolygon(nil, color.Transparent)
	for _, text := range lines {
		n.lines = append(n.lines, canvas.NewText(text, color.Transparent))
	}
	n.shut = control.NewButton(f, control.Face{Icon: icon.Close, Kind: control.Primary,
		Hint: "Puts this note away; Help brings all of them back."}, shut)
	n.ExtendBaseWidget(n)
	return n
}

// point sets the note beside a place of the drawing, and reports whether the place
// is in sight.
func (n *note) point(to Place) bool {
	at, side, room, size := to.At, to.Side, to.Room, n.MinSize()
	if at.X < 0 || at.Y < 0 || at.X > room.Width || at.Y > room.Height ||
		room.Width < size.Width+2*rimRoom || room.Height < size.Height+2*rimRoom {
		return false
	}
	x := fyne.Max(rimRoom, fyne.Min(room.Width-size.Width-rimRoom, at.X-size.Width/2))
	y := at.Y + apart
	if side == Above {
		y = at.Y - apart - size.Height
	}
	if y < 0 || y+size.Height > room.Height {
		return false
	}
	tip := fyne.Max(radius+tailHalf, fyne.Min(size.Width-radius-tailHalf, at.X-x))
	corner := fyne.NewPos(x, y)
	if corner != n.Position() || size != n.Size() || tip != n.tip || side != n.side {
		n.tip, n.side = tip, side
		n.Move(corner)
		n.Resize(size)
		n.Refresh()
	}
	return true
}

// Tapped keeps a click from the drawing.
func (n *note) Tapped(*fyne.PointEvent) {}

// MouseIn keeps the mouse from the drawing.
func (n *note) MouseIn(*desktop.MouseEvent) {}

// MouseMoved keeps the mouse from the drawing.
func (n *note) MouseMoved(*desktop.MouseEvent) {}

// MouseOut keeps the mouse from the drawing.
func (n *note) MouseOut() {}

// Cursor is the plain pointer: nothing is taken hold of here.
func (n *note) Cursor() desktop.Cursor { return desktop.DefaultCursor }

// CreateRenderer makes the widget's renderer.
func (n *note) CreateRenderer() fyne.WidgetRenderer {
	r := &noteRenderer{n}
	r.apply()
	return r
}

type noteRenderer struct{ n *note }

func (r *noteRenderer) apply() {
	n := r.n
	th, v := n.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	ground := th.Color(theme.ColorNamePrimary, v)
	n.ground.FillColor, n.ground.CornerRadius, n.tail.FillColor = ground, radius, ground
	n.ground.Shadow = canvas.Shadow{Color: th.Color(theme.ColorNameShadow, v), BlurRadius: 10,
		Offset: fyne.NewPos(0, 3), Variant: canvas.DropShadow}
	for _, l := range n.lines {
		l.Color, l.TextSize = th.Color(theme.ColorNameForegroundOnPrimary, v), th.Size(theme.SizeNameText)
	}
}

func (r *noteRenderer) MinSize() fyne.Size {
	var w, h float32
	for _, l := range r.n.lines {
		size := l.MinSize()
		w, h = fyne.Max(w, size.Width), h+size.Height
	}
	return fyne.NewSize(w+2*padX+look.Target, fyne.Max(h, look.Target)+2*padY+tailLong)
}

func (r *noteRenderer) Layout(size fyne.Size) {
	n := r.n
	top := float32(0)
	if n.side == Below {
		top = tailLong
	}
	high := size.Height - tailLong
	n.ground.Move(fyne.NewPos(0, top))
	n.ground.Resize(fyne.NewSize(size.Width, high))
	// The tail's root reaches a little into the card.
	n.tail.Resize(fyne.NewSize(2*tailHalf, tailLong+1))
	if n.side == Below {
		n.tail.Move(fyne.NewPos(n.tip-tailHalf, 0))
		n.tail.Points = []fyne.Position{{X: tailHalf}, {X: 2 * tailHalf, Y: tailLong + 1}, {Y: tailLong + 1}}
	} else {
		n.tail.Move(fyne.NewPos(n.tip-tailHalf, high-1))
		n.tail.Points = []fyne.Position{{}, {X: 2 * tailHalf}, {X: tailHalf, Y: tailLong + 1}}
	}
	var text float32
	for _, l := range n.lines {
		text += l.MinSize().Height
	}
	y := top + (high-text)/2
	for _, l := range n.lines {
		least := l.MinSize()
		l.Move(fyne.NewPos(padX, y))
		l.Resize(least)
		y += least.Height
	}
	n.shut.Resize(fyne.NewSquareSize(look.Target))
	n.shut.Move(fyne.NewPos(size.Width-look.Target-4, top+(high-look.Target)/2))
}

func (r *noteRenderer) Refresh() {
	r.apply()
	r.Layout(r.n.Size())
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r *noteRenderer) Destroy() {}

func (r *noteRenderer) Objects() []fyne.CanvasObject {
	out := []fyne.CanvasObject{r.n.ground, r.n.tail, r.n.shut}
	for _, l := range r.n.lines {
		out = append(out, l)
	}
	return out
}

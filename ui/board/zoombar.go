package board

import (
	"example.org/castwright/model/geom"
	"example.org/castwright/ui/icon"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// zoomBar is the plain buttons for zoom and for moving the paper in the board's
// corner, for hands without a wheel and for fingers.
type zoomBar struct {
	box *fyne.Container
	pan *zoomButton
}

// zoomSide is the side of a button in points, above the 24 of WCAG 2.2.
const (
	zoomSide    = 36
	zoomEdge    = 12
	zoomButtons = 4
)

func newZoomBar(b *Board) *zoomBar {
	pan := newZoomButton(b, icon.Pan, "Dragging moves the paper until this is clicked again or Esc is pressed (Ctrl+Space; Space held does it for one drag).", b.TogglePan)
	box := container.NewGridWithColumns(zoomButtons, pan,
		newZoomButton(b, theme.ZoomOutIcon(), "Zoom out (key -).", b.ZoomOut),
		newZoomButton(b, theme.ZoomFitIcon(), "Show the whole top (key F or 0).", b.Fit),
		newZoomButton(b, theme.ZoomInIcon(), "Zoom in (key +).", b.ZoomIn),
	)
	return &zoomBar{box, pan}
}

// follow shows whether the paper is being moved.
func (z *zoomBar) follow(t Tool) {
	look := widget.MediumImportance
	if t == Pan {
		look = widget.HighImportance
	}
	if z.pan.Importance != look {
		z.pan.Importance = look
		z.pan.Refresh()
	}
}

func (z *zoomBar) layout(board fyne.Size) {
	size := fyne.NewSize(zoomButtons*zoomSide+(zoomButtons-1)*theme.Padding(), zoomSide)
	z.box.Resize(size)
	z.box.Move(fyne.NewPos(board.Width-size.Width-zoomEdge, board.Height-size.Height-zoomEdge))
	if board.Width < size.Width+2*zoomEdge || board.Height < size.Height+2*zoomEdge {
		z.box.Hide()
	} else {
		z.box.Show()
	}
}

// covers is the part of the picture that lies under the buttons, in pixels.
func (z *zoomBar) covers(px float64) geom.Box {
	if !z.box.Visible() {
		return geom.EmptyBox()
	}
	p, s := z.box.Position(), z.box.Size()
	at := geom.Vec{X: float64(p.X) * px, Y: float64(p.Y) * px}
	return geom.Box{Min: at, Max: at.Add(geom.Vec{X: float64(s.Width) * px, Y: float64(s.Height) * px})}
}

// zoomButton is a button that says in the hint line what it does and gives the
// keyboard back to the board.
type zoomButton struct {
	widget.Button
	b    *Board
	name string
}

func newZoomButton(b *Board, icon fyne.Resource, name string, do func()) *zoomButton {
	z := &zoomButton{b: b, name: name}
	z.Icon = icon
	z.OnTapped = func() {
		do()
		b.focus()
	}
	z.ExtendBaseWidget(z)
	return z
}

// MouseIn says what the button does.
func (z *zoomButton) MouseIn(e *desktop.MouseEvent) {
	z.Button.MouseIn(e)
	z.b.tell(z.name)
}

// MouseOut takes the words back.
func (z *zoomButton) MouseOut() {
	z.Button.MouseOut()
	z.b.tell(z.b.hand.Hint())
}

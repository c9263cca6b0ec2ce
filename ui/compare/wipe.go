package compare

import (
	"fmt"
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
)

// Steps of the wipe by keys, as shares of the width.
const (
	smallStep = 0.02
	largeStep = 0.10
)

// column is the first pixel column, of so many, in which the second side is seen
// when the wipe stands at a share of the width.
func column(share float64, width int) int {
	return int(math.Round(clamped(share) * float64(width)))
}

// shareAt is where a wipe stands whose line lies x from the left of a width.
func shareAt(x, width float64) float64 {
	if !(width > 0) {
		return 0.5
	}
	return clamped(x / width)
}

// clamped is a share within its bounds; what is no number is the middle.
func clamped(share float64) float64 {
	if math.IsNaN(share) {
		return 0.5
	}
	return math.Max(0, math.Min(1, share))
}

// wiped lays a left of column x and b from there on in dst; all are of one size.
func wiped(dst, a, b *image.RGBA, x int) {
	w := dst.Rect.Dx()
	x = max(0, min(w, x))
	for y := range dst.Rect.Dy() {
		row := y * dst.Stride
		copy(dst.Pix[row:row+4*x], a.Pix[y*a.Stride:])
		copy(dst.Pix[row+4*x:row+4*w], b.Pix[y*b.Stride+4*x:y*b.Stride+4*w])
	}
}

// wiper is the line between two sides that lie over each other, with a grip. It is
// moved by the mouse and, having the keyboard, by the arrow keys.
type wiper struct {
	widget.BaseWidget
	frame *control.Frame
	share float64
	moved func() // told of each move
	zoom  func(at fyne.Position, e *fyne.ScrollEvent)

	hovered, focused bool
	hold             float32 // where from its middle it was taken hold of
	across           float32 // width of the picture below
}

// wiperSide is the width that can be taken hold of, in points.
const wiperSide = 44

func newWiper(f *control.Frame, moved func()) *wiper {
	w := &wiper{frame: f, share: 0.5, moved: moved}
	w.ExtendBaseWidget(w)
	return w
}

// set moves the line.
func (w *wiper) set(share float64) {
	if share = clamped(share); share != w.share {
		w.share = share
		w.place()
		w.moved()
	}
}

// lay sets the wiper on a picture of a size.
func (w *wiper) lay(size fyne.Size) {
	w.across = size.Width
	w.Resize(fyne.NewSize(wiperSide, size.Height))
	w.place()
}

func (w *wiper) place() { w.Move(fyne.NewPos(float32(w.share)*w.across-wiperSide/2, 0)) }

// said is what the hint line says of it.
func (w *wiper) said() string {
	return fmt.Sprintf("Drag, or press the arrow keys, to lay the one over the other: the left one has %.0f %%.", 100*w.share)
}

// Key moves the line by a key that means something to it.
func (w *wiper) key(e *fyne.KeyEvent, large bool) bool {
	step := smallStep
	if large {
		step = largeStep
	}
	switch e.Name {
	case fyne.KeyLeft, fyne.KeyDown:
		w.set(w.share - step)
	case fyne.KeyRight, fyne.KeyUp:
		w.set(w.share + step)
	case fyne.KeyPageDown:
		w.set(w.share - largeStep)
	case fyne.KeyPageUp:
		w.set(w.share + largeStep)
	case fyne.KeyHome:
		w.set(0)
	case fyne.KeyEnd:
		w.set(1)
	default:
		return false
	}
	if w.focused || w.hovered {
		w.frame.Say(w.said())
	}
	return true
}

// TypedKey moves the line; other keys go on to the window.
func (w *wiper) TypedKey(e *fyne.KeyEvent) {
	if !w.key(e, control.ShiftHeld()) {
		w.frame.Key(e)
	}
}

// TypedRune does nothing.
func (w *wiper) TypedRune(rune) {}

// FocusGained shows the focus and says what can be done.
func (w *wiper) FocusGained() {
	w.focused = true
	w.frame.Say(w.said())
	w.Refresh()
}

// FocusLost takes the focus's mark away.
func (w *wiper) FocusLost() {
	w.focused = false
	w.frame.Say("")
	w.Refresh()
}

// AccessibilityLabel is its name.
func (w *wiper) AccessibilityLabel() string { return w.said() }

// AccessibilityRole is that of a button: the toolkit has none for a slider.
func (w *wiper) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// MouseIn says what can be done.
func (w *wiper) MouseIn(*desktop.MouseEvent) {
	w.hovered = true
	w.frame.Say(w.said())
	w.Refresh()
}

// MouseMoved does nothing.
func (w *wiper) MouseMoved(*desktop.MouseEvent) {}

// MouseOut gives the hint line back.
func (w *wiper) MouseOut() {
	w.hovered = false
	w.frame.Say("")
	w.Refresh()
}

// MouseDown takes hold of the line, and of the keyboard.
func (w *wiper) MouseDown(e *desktop.MouseEvent) {
	if e.Button == desktop.MouseButtonPrimary {
		w.hold = e.Position.X - wiperSide/2
		w.frame.Window.Canvas().Focus(w)
	}
}

// MouseUp does nothing.
func (w *wiper) MouseUp(*desktop.MouseEvent) {}

// Dragged has the line follow the mouse.
func (w *wiper) Dragged(e *fyne.DragEvent) {
	if w.across > 0 {
		x := w.Position().X + e.Position.X - w.hold
		w.set(shareAt(float64(x), float64(w.across)))
		w.frame.Say(w.said())
	}
}

// DragEnd leaves the line where it is.
func (w *wiper) DragEnd() {}

// Scrolled zooms what lies below.
func (w *wiper) Scrolled(e *fyne.ScrollEvent) {
	if w.zoom != nil {
		w.zoom(w.Position().Add(e.Position), e)
	}
}

// Cursor says that it goes from side to side.
func (w *wiper) Cursor() desktop.Cursor { return desktop.HResizeCursor }

// CreateRenderer makes the widget's renderer.
func (w *wiper) CreateRenderer() fyne.WidgetRenderer {
	r := &wiperRenderer{w: w, rim: canvas.NewRectangle(nil), line: canvas.NewRectangle(nil), knob: canvas.NewCircle(nil),
		arrows: [2]*canvas.Image{{FillMode: canvas.ImageFillContain}, {FillMode: canvas.ImageFillContain}}}
	r.Refresh()
	return r
}

type wiperRenderer struct {
	w         *wiper
	rim, line *canvas.Rectangle
	knob      *canvas.Circle
	arrows    [2]*canvas.Image
}

func (r *wiperRenderer) Refresh() {
	ink, paper := theme.Color(theme.ColorNameForeground), theme.Color(theme.ColorNameBackground)
	r.rim.FillColor, r.line.FillColor = paper, ink
	r.knob.FillColor, r.knob.StrokeColor, r.knob.StrokeWidth = paper, ink, 2
	if r.w.focused {
		r.line.FillColor = theme.Color(theme.ColorNamePrimary)
		r.knob.StrokeColor, r.knob.StrokeWidth = theme.Color(theme.ColorNamePrimary), 4
	}
	for i, res := range [...]fyne.Resource{icon.Left, icon.Right} {
		r.arrows[i].Resource = theme.NewColoredResource(res, theme.ColorNameForeground)
	}
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r *wiperRenderer) Layout(size fyne.Size) {
	put := func(o fyne.CanvasObject, x, y, w, h float32) {
		o.Move(fyne.NewPos(x, y))
		o.Resize(fyne.NewSize(w, h))
	}
	mid, knob := size.Width/2, float32(36)
	put(r.rim, mid-2, 0, 4, size.Height)
	put(r.line, mid-1, 0, 2, size.Height)
	y := size.Height / 2
	put(r.knob, mid-knob/2, y-knob/2, knob, knob)
	put(r.arrows[0], mid-16, y-8, 16, 16)
	put(r.arrows[1], mid, y-8, 16, 16)
}

func (r *wiperRenderer) MinSize() fyne.Size { return fyne.NewSize(wiperSide, wiperSide) }
func (r *wiperRenderer) Destroy()           {}
func (r *wiperRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.rim, r.line, r.knob, r.arrows[0], r.arrows[1]}
}

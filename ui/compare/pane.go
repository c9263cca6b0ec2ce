package compare

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/model/geom"
	"example.org/castwright/ui/control"
)

// pane shows one side, or both wiped over each other. Dragging pans and the wheel
// zooms, in all panes of the page at once.
type pane struct {
	widget.BaseWidget
	page   *Page
	raster *canvas.Raster
	shows  []int // sides: one, or two that lie over each other

	painted [2]*image.RGBA // as the sides are seen
	fresh   [2]bool
	both    *image.RGBA
}

func newPane(p *Page, shows ...int) *pane {
	n := &pane{page: p, shows: shows}
	n.raster = canvas.NewRaster(n.draw)
	n.ExtendBaseWidget(n)
	return n
}

// renew has the sides painted again.
func (n *pane) renew() {
	n.fresh = [2]bool{}
	n.raster.Refresh()
}

// forget lets what was painted go.
func (n *pane) forget() { n.painted, n.fresh, n.both = [2]*image.RGBA{}, [2]bool{}, nil }

// maxPane bounds a pane, in device pixels.
const maxPane = 1 << 26

func (n *pane) draw(w, h int) image.Image {
	if w < 8 || h < 8 || w > maxPane/h {
		return image.NewRGBA(image.Rect(0, 0, 1, 1))
	}
	size := image.Rect(0, 0, w, h)
	for _, i := range n.shows {
		if n.painted[i] == nil || n.painted[i].Rect != size {
			n.painted[i], n.fresh[i] = image.NewRGBA(size), false
		}
		if !n.fresh[i] {
			n.fresh[i] = true
			n.page.paint(n.painted[i], i, n.px(w))
		}
	}
	if len(n.shows) == 1 {
		return n.painted[n.shows[0]]
	}
	if n.both == nil || n.both.Rect != size {
		n.both = image.NewRGBA(size)
	}
	wiped(n.both, n.painted[n.shows[0]], n.painted[n.shows[1]], column(n.page.wiper.share, w))
	return n.both
}

// px is the device pixels to the point, for a raster w pixels wide.
func (n *pane) px(w int) float64 { return float64(w) / math.Max(1, float64(n.Size().Width)) }

func (n *pane) place(p fyne.Position) geom.Vec { return geom.Vec{X: float64(p.X), Y: float64(p.Y)} }

// Dragged moves both sides.
func (n *pane) Dragged(e *fyne.DragEvent) {
	n.page.pan(geom.Vec{X: float64(e.Dragged.DX), Y: float64(e.Dragged.DY)})
}

// DragEnd leaves the sides where they are.
func (n *pane) DragEnd() {}

// Scrolled zooms both sides at the mouse.
func (n *pane) Scrolled(e *fyne.ScrollEvent) { n.zoom(e.Position, e) }

func (n *pane) zoom(at fyne.Position, e *fyne.ScrollEvent) {
	d := float64(e.Scrolled.DY)
	if d == 0 {
		d = float64(e.Scrolled.DX) // Shift swaps the axes
	}
	// 25 units are a notch: a step and a bit.
	n.page.zoom(n.place(at), math.Exp(math.Max(-200, math.Min(200, d))*0.009))
}

// MouseIn says what can be done.
func (n *pane) MouseIn(*desktop.MouseEvent) {
	n.page.frame.Say("Drag to move both sides, turn the wheel to zoom both (+ and -); F shows the whole.")
}

// MouseMoved does nothing.
func (n *pane) MouseMoved(*desktop.MouseEvent) {}

// MouseOut gives the hint line back.
func (n *pane) MouseOut() { n.page.frame.Say("") }

// MouseDown gives the keys to the page.
func (n *pane) MouseDown(*desktop.MouseEvent) { n.page.frame.Window.Canvas().Unfocus() }

// MouseUp does nothing.
func (n *pane) MouseUp(*desktop.MouseEvent) {}

// Cursor is that of something to be taken hold of.
func (n *pane) Cursor() desktop.Cursor { return desktop.PointerCursor }

// Resize shows the same on a pane of another size.
func (n *pane) Resize(size fyne.Size) {
	was := n.Size()
	n.BaseWidget.Resize(size)
	if size != was && n.Visible() {
		n.page.resized(size)
	}
}

// CreateRenderer makes the widget's renderer.
func (n *pane) CreateRenderer() fyne.WidgetRenderer {
	return control.Painted(n.raster, fyne.NewSize(200, 140), n.renew)
}

package control

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Column sets things below each other, with a gap between.
func Column(gap float32, objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(layout.NewCustomPaddedVBoxLayout(gap), objects...)
}

// Row sets things beside each other, with a gap between.
func Row(gap float32, objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(layout.NewCustomPaddedHBoxLayout(gap), objects...)
}

// Pad leaves room around a thing: above and below, left and right.
func Pad(vertical, horizontal float32, o fyne.CanvasObject) *fyne.Container {
	return container.New(layout.NewCustomPaddedLayout(vertical, vertical, horizontal, horizontal), o)
}

// Middle sets a thing in the middle of its height, as wide as there is room.
func Middle(o fyne.CanvasObject) *fyne.Container { return container.New(middle{}, o) }

type middle struct{}

func (middle) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[0].MinSize() }

func (middle) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	h := objects[0].MinSize().Height
	objects[0].Resize(fyne.NewSize(size.Width, h))
	objects[0].Move(fyne.NewPos(0, (size.Height-h)/2))
}

// Sized gives a thing at least a size.
func Sized(w, h float32, o fyne.CanvasObject) *fyne.Container {
	return container.New(sized{fyne.NewSize(w, h)}, o)
}

type sized struct{ least fyne.Size }

func (s sized) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().Max(s.least)
}

func (s sized) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(size)
}

// Rule is a thin line between sections.
func Rule() fyne.CanvasObject { return widget.NewSeparator() }

// Ground paints a colour of the theme behind a thing.
func Ground(name fyne.ThemeColorName, o fyne.CanvasObject) *fyne.Container {
	return container.NewStack(NewPaint(name, 0), o)
}

// Paint is a rectangle in a colour of the theme that follows the theme.
type Paint struct {
	widget.BaseWidget
	name   fyne.ThemeColorName
	rim    fyne.ThemeColorName
	width  float32 // of the rim
	radius float32
}

// NewPaint is a rectangle with corners of a radius; no name paints nothing.
func NewPaint(name fyne.ThemeColorName, radius float32) *Paint {
	p := &Paint{name: name, radius: radius}
	p.ExtendBaseWidget(p)
	return p
}

// Set takes another colour, and a rim of another colour and width.
func (p *Paint) Set(name, rim fyne.ThemeColorName, width float32) {
	if name != p.name || rim != p.rim || width != p.width {
		p.name, p.rim, p.width = name, rim, width
		p.Refresh()
	}
}

// CreateRenderer makes the widget's renderer.
func (p *Paint) CreateRenderer() fyne.WidgetRenderer {
	r := &paintRenderer{p: p, box: canvas.NewRectangle(color.Transparent)}
	r.apply()
	return r
}

type paintRenderer struct {
	p   *Paint
	box *canvas.Rectangle
}

func (r *paintRenderer) apply() {
	th, v := r.p.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	r.box.FillColor, r.box.StrokeWidth = color.Transparent, 0
	if r.p.name != "" {
		r.box.FillColor = th.Color(r.p.name, v)
	}
	if r.p.rim != "" {
		r.box.StrokeColor, r.box.StrokeWidth = th.Color(r.p.rim, v), r.p.width
	}
	r.box.CornerRadius = r.p.radius
}

func (r *paintRenderer) Refresh() {
	r.apply()
	r.box.Refresh()
}

func (r *paintRenderer) Layout(size fyne.Size)        { r.box.Resize(size) }
func (r *paintRenderer) MinSize() fyne.Size           { return fyne.NewSize(0, 0) }
func (r *paintRenderer) Destroy()                     {}
func (r *paintRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.box} }

// Icon is a picture of the family in a colour of the theme.
func Icon(res fyne.Resource, name fyne.ThemeColorName) *widget.Icon {
	if name == "" {
		name = theme.ColorNameForeground
	}
	return widget.NewIcon(theme.NewColoredResource(res, name))
}

// Lines is text that runs over several lines as there is room.
func Lines(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	return l
}

// SmallLines is small text over several lines.
func SmallLines(text string) *widget.Label {
	l := Lines(text)
	l.SizeName = theme.SizeNameCaptionText
	return l
}

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
	return container.NewStack(NewFill(name, 0), o)
}

// Rimmed draws the rim of an input around a thing that has none.
func Rimmed(o fyne.CanvasObject) *fyne.Container {
	rim := NewFill("", 4)
	rim.rim, rim.width = theme.ColorNameInputBorder, 1
	return container.NewStack(o, rim)
}

// Fill is a rectangle in a colour of the theme that follows the theme.
type Fill struct {
	widget.BaseWidget
	name   fyne.ThemeColorName
	rim    fyne.ThemeColorName
	width  float32 // of the rim
	radius float32
}

// NewFill is a rectangle with corners of a radius; no name paints nothing.
func NewFill(name fyne.ThemeColorName, radius float32) *Fill {
	p := &Fill{name: name, radius: radius}
	p.ExtendBaseWidget(p)
	return p
}

// Set takes another colour, and a rim of another colour and width.
func (p *Fill) Set(name, rim fyne.ThemeColorName, width float32) {
	if name != p.name || rim != p.rim || width != p.width {
		p.name, p.rim, p.width = name, rim, width
		p.Refresh()
	}
}

// SetRadius takes another radius of the corners.
func (p *Fill) SetRadius(r float32) {
	if r != p.radius {
		p.radius = r
		p.Refresh()
	}
}

// CreateRenderer makes the widget's renderer.
func (p *Fill) CreateRenderer() fyne.WidgetRenderer {
	r := &fillRenderer{p: p, box: canvas.NewRectangle(color.Transparent)}
	r.apply()
	return r
}

type fillRenderer struct {
	p   *Fill
	box *canvas.Rectangle
}

func (r *fillRenderer) apply() {
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

func (r *fillRenderer) Refresh() {
	r.apply()
	r.box.Refresh()
}

func (r *fillRenderer) Layout(size fyne.Size)        { r.box.Resize(size) }
func (r *fillRenderer) MinSize() fyne.Size           { return fyne.NewSize(0, 0) }
func (r *fillRenderer) Destroy()                     {}
func (r *fillRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.box} }

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

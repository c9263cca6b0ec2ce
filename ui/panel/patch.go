package panel

import (
	"image/color"

	"example.org/castwright/model/design"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// patch is a plain area of a material's colour.
type patch struct {
	widget.BaseWidget
	box *canvas.Rectangle
}

func newPatch() *patch {
	p := &patch{box: canvas.NewRectangle(color.Transparent)}
	p.box.CornerRadius, p.box.StrokeWidth = 3, 1
	p.ExtendBaseWidget(p)
	return p
}

func (p *patch) set(c design.Colour) {
	fill := color.NRGBA{c.R, c.G, c.B, 0xff}
	if p.box.FillColor != fill {
		p.box.FillColor = fill
		p.box.Refresh()
	}
}

// CreateRenderer makes the widget's renderer.
func (p *patch) CreateRenderer() fyne.WidgetRenderer {
	r := &patchRenderer{widget.NewSimpleRenderer(p.box), p}
	r.rim()
	return r
}

type patchRenderer struct {
	fyne.WidgetRenderer
	p *patch
}

func (r *patchRenderer) rim() {
	r.p.box.StrokeColor = r.p.Theme().Color(theme.ColorNameInputBorder,
		fyne.CurrentApp().Settings().ThemeVariant())
}

func (r *patchRenderer) Refresh() {
	r.rim()
	r.p.box.Refresh()
}

package control

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Picture shows what paint gives for a size in device pixels. It is painted
// again only when it is renewed, resized or the theme changes.
type Picture struct {
	widget.BaseWidget
	raster *canvas.Raster
	paint  func(w, h int) *image.RGBA
	done   *image.RGBA
	stale  bool
	least  fyne.Size
}

// maxPicture bounds a picture, in device pixels.
const maxPicture = 1 << 26

// NewPicture is a picture of at least a size.
func NewPicture(w, h float32, paint func(w, h int) *image.RGBA) *Picture {
	p := &Picture{paint: paint, stale: true, least: fyne.NewSize(w, h)}
	p.raster = canvas.NewRaster(p.draw)
	p.ExtendBaseWidget(p)
	return p
}

// Renew has the picture painted again.
func (p *Picture) Renew() {
	p.stale = true
	p.raster.Refresh()
}

func (p *Picture) draw(w, h int) image.Image {
	if w < 1 || h < 1 || w > maxPicture/h {
		return image.NewRGBA(image.Rect(0, 0, 1, 1))
	}
	if p.stale || p.done == nil || p.done.Rect.Dx() != w || p.done.Rect.Dy() != h {
		p.done, p.stale = p.paint(w, h), false
	}
	return p.done
}

// CreateRenderer makes the widget's renderer.
func (p *Picture) CreateRenderer() fyne.WidgetRenderer { return &pictureRenderer{p} }

type pictureRenderer struct{ p *Picture }

func (r *pictureRenderer) Layout(size fyne.Size) { r.p.raster.Resize(size) }
func (r *pictureRenderer) MinSize() fyne.Size    { return r.p.least }
func (r *pictureRenderer) Destroy()              {}

// Refresh follows the theme.
func (r *pictureRenderer) Refresh() { r.p.Renew() }

func (r *pictureRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.p.raster} }

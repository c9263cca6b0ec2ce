package control

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Paint makes a picture. It may run off the main goroutine.
type Paint func() *image.RGBA

// Picture shows what is painted for a size in device pixels. It is painted in
// the background, once and again when it is renewed, resized or the theme
// changes; until then it shows what it showed before.
type Picture struct {
	widget.BaseWidget
	frame   *Frame
	raster  *canvas.Raster
	prepare func(w, h int) Paint
	done    *image.RGBA
	stale   bool
	busy    bool
	least   fyne.Size
}

// maxPicture bounds a picture, in device pixels.
const maxPicture = 1 << 26

// NewPicture is a picture of at least a size in points. prepare runs on the main
// goroutine and takes with it what the painting needs.
func NewPicture(f *Frame, w, h float32, prepare func(w, h int) Paint) *Picture {
	p := &Picture{frame: f, prepare: prepare, stale: true, least: fyne.NewSize(w, h)}
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
	fits := p.done != nil && p.done.Rect.Dx() == w && p.done.Rect.Dy() == h
	if (p.stale || !fits) && !p.busy {
		p.stale, p.busy = false, true
		paint := p.prepare(w, h)
		p.frame.Background(func() func() {
			img := paint()
			return func() {
				p.done, p.busy = img, false
				p.raster.Refresh()
			}
		})
		fits = p.done != nil && p.done.Rect.Dx() == w && p.done.Rect.Dy() == h
	}
	if !fits {
		return image.NewRGBA(image.Rect(0, 0, w, h))
	}
	return p.done
}

// CreateRenderer makes the widget's renderer.
func (p *Picture) CreateRenderer() fyne.WidgetRenderer {
	return Painted(p.raster, p.least, p.Renew)
}

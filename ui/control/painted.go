package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Painted is the renderer of a widget that is one raster, at least a size in points.
// renew has it painted again, as when the theme changes.
func Painted(raster *canvas.Raster, least fyne.Size, renew func()) fyne.WidgetRenderer {
	return &painted{raster, least, renew}
}

type painted struct {
	raster *canvas.Raster
	least  fyne.Size
	renew  func()
}

func (r *painted) Layout(size fyne.Size)        { r.raster.Resize(size) }
func (r *painted) MinSize() fyne.Size           { return r.least }
func (r *painted) Refresh()                     { r.renew() }
func (r *painted) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.raster} }
func (r *painted) Destroy()                     {}

package showing

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/castwright/ui/control"
)

// grown is what makes the bar's buttons as large as the type of the page: on a large
// screen, which is seen from further away, they grow, and they are never smaller than
// for a finger.
type grown struct {
	by   float32 // times their own size, from 1
	over *container.ThemeOverride
	card *control.Fill
}

// larger is the window's theme, whichever that is, with larger type, icons and rounding.
type larger struct{ g *grown }

func window() fyne.Theme { return fyne.CurrentApp().Settings().Theme() }

// Size is a size of the window's theme, larger.
func (l larger) Size(name fyne.ThemeSizeName) float32 { return l.g.by * window().Size(name) }

// Color, Font and Icon are those of the window's theme.
func (l larger) Color(name fyne.ThemeColorName, v fyne.ThemeVariant) color.Color {
	return window().Color(name, v)
}
func (l larger) Font(style fyne.TextStyle) fyne.Resource    { return window().Font(style) }
func (l larger) Icon(name fyne.ThemeIconName) fyne.Resource { return window().Icon(name) }

// to makes the bar larger by a factor.
func (g *grown) to(by float32) {
	if by = fyne.Max(1, by); by == g.by {
		return
	}
	g.by = by
	g.card.SetRadius(by * touch / 2)
	g.over.Refresh()
}

// sized holds a thing to at least a size, in points before it grows.
func (g *grown) sized(w, h float32, o fyne.CanvasObject) *fyne.Container {
	return container.New(grownSize{g, fyne.NewSize(w, h)}, o)
}

type grownSize struct {
	g     *grown
	least fyne.Size
}

func (s grownSize) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().Max(fyne.NewSize(s.g.by*s.least.Width, s.g.by*s.least.Height))
}

func (s grownSize) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(size)
}

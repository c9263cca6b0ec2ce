package showing

import (
	"image/color"
	"sort"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"example.org/castwright/model/geom"
	"example.org/castwright/ui/control"
	look "example.org/castwright/ui/theme"
)

// unit is the measure of everything on the page: a point at 1280 x 800, more where
// there is more room, since a large screen is seen from further away.
func unit(w, h float32) float32 {
	return fyne.Max(0.75, fyne.Min(2.25, fyne.Min(w/1280, h/800)))
}

// Room around the top, in units.
const (
	margin      = 44.0 // of texts and bar from the rim
	titleRoom   = 132.0
	barRoom     = 112.0
	sideRoom    = 96.0
	dimsRoom    = 88.0 // more of it where there are dimensions
	letterSide  = 46.0
	captionRoom = 30.0
)

// area is where the top may lie on a picture of w by h pixels, u to the unit.
func area(w, h, u float64, dimensions bool) geom.Box {
	more := 0.0
	if dimensions {
		more = dimsRoom * u
	}
	b := geom.Box{
		Min: geom.Vec{X: sideRoom*u + more, Y: titleRoom*u + more},
		Max: geom.Vec{X: w - sideRoom*u - more, Y: h - barRoom*u - more},
	}
	if b.W() < w/4 || b.H() < h/4 { // a window too small for all that
		b = geom.Box{Min: geom.Vec{X: w / 4, Y: h / 4}, Max: geom.Vec{X: 3 * w / 4, Y: 3 * h / 4}}
	}
	return b
}

// layout sets drawing and picture, the title, the caption and the bar.
type layout struct{ grown *grown }

func (*layout) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(320, 240) }

func (l *layout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	u := unit(size.Width, size.Height)
	stage, photo, title, caption, bar := objects[0], objects[1], objects[2], objects[3], objects[4]
	stage.Resize(size)
	photo.Resize(size)
	title.Move(fyne.NewPos(margin*u, 0.8*margin*u))
	title.Resize(fyne.NewSize(size.Width-2*margin*u, titleRoom*u))
	l.grown.to(u)
	least := bar.MinSize()
	bar.Resize(least)
	bar.Move(fyne.NewPos((size.Width-least.Width)/2, size.Height-least.Height-0.75*margin*u))
	caption.Resize(fyne.NewSize(size.Width, captionRoom*u))
	caption.Move(fyne.NewPos(0, size.Height-captionRoom*u))
}

// title is the option's letter, its title, and what it is in a line.
type title struct {
	box          *fyne.Container
	ground       *control.Fill // where a picture lies behind
	chip         *canvas.Rectangle
	letter       *canvas.Text
	name, detail *canvas.Text
	full         string // the name, if there is room for it
}

func newTitle() *title {
	t := &title{ground: control.NewFill(look.Veil, 0), chip: canvas.NewRectangle(color.Black), letter: canvas.NewText("", color.Black),
		name: canvas.NewText("", color.Black), detail: canvas.NewText("", color.Black)}
	t.letter.TextStyle.Bold, t.name.TextStyle.Bold = true, true
	t.letter.Alignment = fyne.TextAlignCenter
	t.box = container.New(t, t.ground, t.chip, t.letter, t.name, t.detail)
	return t
}

// plate lays a ground behind the words, or none.
func (t *title) plate(on bool) { show(t.ground, on) }

func show(o fyne.CanvasObject, on bool) {
	if on {
		o.Show()
	} else {
		o.Hide()
	}
}

// show shows an option.
func (t *title) show(letter, name, detail string) {
	if name == "" {
		name = "Option " + letter
	}
	t.letter.Text, t.full, t.detail.Text = letter, name, detail
	text := theme.Color(theme.ColorNameForeground)
	t.chip.FillColor, t.letter.Color = text, theme.Color(theme.ColorNameBackground)
	t.name.Color, t.detail.Color = text, text
	t.box.Refresh()
}

// MinSize asks for nothing: what has no room is cut off by the window.
func (t *title) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.Size{} }

// Layout sets the letter before two lines of text.
func (t *title) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	u := size.Height / titleRoom
	side := float32(letterSide) * u
	t.letter.TextSize, t.name.TextSize, t.detail.TextSize = 24*u, 27*u, 14*u
	// A letter that is a word makes the chip wider.
	wide := fyne.Max(side, fyne.MeasureText(t.letter.Text, t.letter.TextSize, t.letter.TextStyle).Width+18*u)
	t.chip.CornerRadius = 9 * u
	t.chip.Resize(fyne.NewSize(wide, side))
	words := t.letter.MinSize()
	t.letter.Resize(fyne.NewSize(wide, words.Height))
	t.letter.Move(fyne.NewPos(0, (side-words.Height)/2))
	x := wide + 16*u
	t.name.Text, t.name.TextSize = within(t.full, t.name.TextSize, t.name.TextStyle, size.Width-x)
	name, detail := t.name.MinSize(), t.detail.MinSize()
	t.name.Move(fyne.NewPos(x, side/2-name.Height*0.80))
	t.detail.Move(fyne.NewPos(x+1, side/2+name.Height*0.20+1*u))
	t.name.Resize(fyne.NewSize(size.Width-x, name.Height))
	t.detail.Resize(fyne.NewSize(size.Width-x, detail.Height))
	pad := 14 * u
	t.ground.SetRadius(letterSide/4*u + pad/2)
	t.ground.Move(fyne.NewPos(-pad, -pad))
	t.ground.Resize(fyne.NewSize(fyne.Min(size.Width, x+fyne.Max(name.Width, detail.Width)+pad)+pad, side+2*pad))
}

// within is a text and its size, smaller or cut where it would be wider than a width.
func within(text string, size float32, style fyne.TextStyle, width float32) (string, float32) {
	const least = 0.62 // of the size
	wide := func(text string) float32 { return fyne.MeasureText(text, size, style).Width }
	if w := wide(text); w <= width || width <= 0 {
		return text, size
	} else if k := width / w; k > least {
		return text, 0.99 * k * size
	}
	size *= least
	if wide(text) <= width {
		return text, size
	}
	runes := []rune(text)
	n := sort.Search(len(runes), func(n int) bool { return wide(string(runes[:n+1])+"…") > width })
	return strings.TrimRight(string(runes[:n]), " ") + "…", size
}

// caption says what a button does, or what can be done.
type caption struct {
	box    *fyne.Container
	ground *control.Fill // where a picture lies behind
	text   *canvas.Text
}

func newCaption() *caption {
	c := &caption{ground: control.NewFill(look.Veil, 0), text: canvas.NewText("", color.Black)}
	c.box = container.New(c, c.ground, c.text)
	return c
}

func (c *caption) plate(on bool) { show(c.ground, on) }

func (c *caption) say(text string) {
	c.text.Text, c.text.Color = text, theme.Color(theme.ColorNameForeground)
	c.box.Refresh()
}

// MinSize asks for nothing, as that of the title.
func (c *caption) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.Size{} }

// Layout sets the words in the middle of the page's foot.
func (c *caption) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	u := size.Height / captionRoom
	c.text.TextSize = 12 * fyne.Max(1, 0.8*u)
	words := c.text.MinSize()
	c.text.Resize(words)
	c.text.Move(fyne.NewPos((size.Width-words.Width)/2, (size.Height-words.Height)/2))
	pad := fyne.NewSize(20*u, 3*u)
	c.ground.SetRadius(words.Height/2 + pad.Height)
	c.ground.Resize(words.Add(pad).AddWidthHeight(0, pad.Height))
	c.ground.Move(c.text.Position().SubtractXY(pad.Width/2, pad.Height))
}

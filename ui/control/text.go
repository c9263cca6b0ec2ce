package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	look "example.org/castwright/ui/theme"
)

// Text is one line of text. It is lighter than the toolkit's label, and setting
// it to what it says already costs nothing.
type Text struct {
	widget.BaseWidget
	text   string
	size   fyne.ThemeSizeName
	colour fyne.ThemeColorName
	style  fyne.TextStyle
	align  fyne.TextAlign
	cut    bool // ends in an ellipsis where there is no room
}

// NewText is body text.
func NewText(text string) *Text {
	t := &Text{text: text, size: theme.SizeNameText, colour: theme.ColorNameForeground}
	t.ExtendBaseWidget(t)
	return t
}

// Caption makes the text small.
func (t *Text) Caption() *Text { t.size = theme.SizeNameCaptionText; return t }

// Heading makes the text the heading of a section.
func (t *Text) Heading() *Text {
	t.size, t.style.Bold = theme.SizeNameSubHeadingText, true
	return t
}

// Figure makes the text as large as the number that counts.
func (t *Text) Figure() *Text { t.size, t.style.Bold = theme.SizeNameHeadingText, true; return t }

// Bold makes the text bold.
func (t *Text) Bold() *Text { t.style.Bold = true; return t }

// Muted makes the text step back.
func (t *Text) Muted() *Text { t.colour = look.Muted; return t }

// Colour gives the text a colour of the theme.
func (t *Text) Colour(name fyne.ThemeColorName) *Text { t.colour = name; return t }

// Right sets the text at the right.
func (t *Text) Right() *Text { t.align = fyne.TextAlignTrailing; return t }

// Centred sets the text in the middle.
func (t *Text) Centred() *Text { t.align = fyne.TextAlignCenter; return t }

// Cut lets the text end in an ellipsis where there is no room for all of it.
func (t *Text) Cut() *Text { t.cut = true; return t }

// Text is what it says.
func (t *Text) Text() string { return t.text }

// Whole is the width of all of it, also of what is cut.
func (t *Text) Whole() float32 {
	return fyne.MeasureText(t.text, t.Theme().Size(t.size), t.style).Width
}

// SetText says something else.
func (t *Text) SetText(text string) {
	if text != t.text {
		t.text = text
		t.Refresh()
	}
}

// SetColour takes another colour of the theme.
func (t *Text) SetColour(name fyne.ThemeColorName) {
	if name != t.colour {
		t.colour = name
		t.Refresh()
	}
}

// SetBold makes it bold or not.
func (t *Text) SetBold(bold bool) {
	if bold != t.style.Bold {
		t.style.Bold = bold
		t.Refresh()
	}
}

// CreateRenderer makes the widget's renderer.
func (t *Text) CreateRenderer() fyne.WidgetRenderer {
	r := &textRenderer{t: t, label: canvas.NewText("", nil)}
	r.apply()
	return r
}

type textRenderer struct {
	t     *Text
	label *canvas.Text
}

func (r *textRenderer) apply() {
	th, v := r.t.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	l := r.label
	l.TextSize, l.TextStyle, l.Alignment = th.Size(r.t.size), r.t.style, r.t.align
	l.Color = th.Color(r.t.colour, v)
	l.Text = r.t.text
	if r.t.cut {
		l.Text = fit(r.t.text, r.t.Size().Width, l.TextSize, l.TextStyle)
	}
}

// fit cuts a text to a width, with an ellipsis at its end.
func fit(text string, width, size float32, style fyne.TextStyle) string {
	if width <= 0 || fyne.MeasureText(text, size, style).Width <= width {
		return text
	}
	runes := []rune(text)
	low, high := 0, len(runes) // the most that fits
	for low < high {
		mid := (low + high + 1) / 2
		if fyne.MeasureText(string(runes[:mid])+"…", size, style).Width <= width {
			low = mid
		} else {
			high = mid - 1
		}
	}
	return string(runes[:low]) + "…"
}

func (r *textRenderer) Layout(size fyne.Size) {
	r.apply()
	r.label.Resize(size)
}

func (r *textRenderer) MinSize() fyne.Size {
	th := r.t.Theme()
	size := fyne.MeasureText(r.t.text, th.Size(r.t.size), r.t.style)
	if r.t.cut {
		size.Width = fyne.Min(size.Width, th.Size(r.t.size))
	}
	return size
}

func (r *textRenderer) Refresh() {
	r.apply()
	r.label.Refresh()
}

func (r *textRenderer) Destroy() {}

func (r *textRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.label} }

package control

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	look "example.org/castwright/ui/theme"
)

// Kind is how much a button stands out.
type Kind uint8

// The kinds of button.
const (
	Plain   Kind = iota // an icon or word on the ground
	Raised              // a button as such
	Primary             // what is most likely wanted
	Danger              // what takes something away
)

// Face is what a button shows and says.
type Face struct {
	Icon fyne.Resource
	Text string
	Hint string // what it does, in the hint line
	Kind Kind
	Wide bool // the icon is large and the text starts at the left
	// Quiet lets a plain button step back, where many stand below each other.
	Quiet bool
}

// Button is a button that says in the hint line what it does and can be worked
// by keys. It can be switched on.
type Button struct {
	widget.DisableableWidget
	frame    *Frame
	face     Face
	on       bool
	OnTapped func()

	hovered, focused bool
}

// NewButton is a button.
func NewButton(f *Frame, face Face, tapped func()) *Button {
	b := &Button{frame: f, face: face, OnTapped: tapped}
	b.ExtendBaseWidget(b)
	return b
}

// Face is what the button shows.
func (b *Button) Face() Face { return b.face }

// SetFace shows something else.
func (b *Button) SetFace(face Face) {
	if face == b.face {
		return
	}
	b.face = face
	b.Refresh()
	if b.hovered {
		b.frame.Say(face.Hint)
	}
}

// On reports whether the button is switched on.
func (b *Button) On() bool { return b.on }

// SetOn switches the button on or off; it is not tapped by that.
func (b *Button) SetOn(on bool) {
	if on != b.on {
		b.on = on
		b.Refresh()
	}
}

// SetEnabled enables or disables the button.
func (b *Button) SetEnabled(enabled bool) {
	switch {
	case enabled && b.Disabled():
		b.Enable()
	case !enabled && !b.Disabled():
		b.Disable()
	}
}

// Tapped does what the button is for.
func (b *Button) Tapped(*fyne.PointEvent) {
	if !b.Disabled() && b.OnTapped != nil {
		b.OnTapped()
	}
}

// Cursor is the pointer over what can be clicked.
func (b *Button) Cursor() desktop.Cursor {
	if b.Disabled() {
		return desktop.DefaultCursor
	}
	return desktop.PointerCursor
}

// MouseIn says what the button does.
func (b *Button) MouseIn(*desktop.MouseEvent) {
	b.hovered = true
	b.frame.Say(b.face.Hint)
	b.Refresh()
}

// MouseMoved does nothing.
func (b *Button) MouseMoved(*desktop.MouseEvent) {}

// MouseOut gives the hint line back.
func (b *Button) MouseOut() {
	b.hovered = false
	b.frame.Say("")
	b.Refresh()
}

// FocusGained shows the focus and says what the button does.
func (b *Button) FocusGained() {
	b.focused = true
	b.frame.reveal(b)
	b.frame.Say(b.face.Hint)
	b.Refresh()
}

// FocusLost takes the focus's mark away.
func (b *Button) FocusLost() {
	b.focused = false
	b.frame.Say("")
	b.Refresh()
}

// TypedKey works the button by Enter or Space; other keys go on to the window.
func (b *Button) TypedKey(e *fyne.KeyEvent) {
	if isEnter(e) || e.Name == fyne.KeySpace {
		b.Tapped(nil)
		return
	}
	b.frame.Key(e)
}

// TypedRune does nothing.
func (b *Button) TypedRune(rune) {}

// AccessibilityLabel is the text, or what the icon is for.
func (b *Button) AccessibilityLabel() string {
	if b.face.Text != "" {
		return b.face.Text
	}
	return b.face.Hint
}

// AccessibilityRole is that of a button.
func (b *Button) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// CreateRenderer makes the widget's renderer.
func (b *Button) CreateRenderer() fyne.WidgetRenderer {
	r := &buttonRenderer{
		b: b, ground: canvas.NewRectangle(color.Transparent), over: canvas.NewRectangle(color.Transparent),
		icon: &canvas.Image{FillMode: canvas.ImageFillContain}, text: canvas.NewText("", color.Black),
	}
	r.Refresh()
	return r
}

type buttonRenderer struct {
	b            *Button
	ground, over *canvas.Rectangle
	icon         *canvas.Image
	text         *canvas.Text
	drawn        fyne.Resource // the icon that the present resource was made of
	tone         fyne.ThemeColorName
}

// tones are the colours of ground and content.
func (b *Button) tones() (ground, content fyne.ThemeColorName) {
	switch {
	case b.Disabled() && b.face.Kind == Plain:
		return "", theme.ColorNameDisabled
	case b.Disabled():
		return theme.ColorNameDisabledButton, theme.ColorNameDisabled
	case b.on:
		return look.Selected, theme.ColorNamePrimary
	case b.face.Kind == Primary:
		return theme.ColorNamePrimary, theme.ColorNameForegroundOnPrimary
	case b.face.Kind == Danger:
		return theme.ColorNameError, theme.ColorNameForegroundOnError
	case b.face.Kind == Raised:
		return theme.ColorNameButton, theme.ColorNameForeground
	case b.face.Quiet:
		return "", look.Muted
	}
	return "", theme.ColorNameForeground
}

func (r *buttonRenderer) Refresh() {
	b := r.b
	th, v := b.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	ground, content := b.tones()
	r.ground.FillColor = color.Transparent
	if ground != "" {
		r.ground.FillColor = th.Color(ground, v)
	}
	r.ground.CornerRadius = th.Size(theme.SizeNameButtonRadius)
	r.over.CornerRadius = r.ground.CornerRadius
	r.over.FillColor, r.over.StrokeWidth = color.Transparent, 0
	if b.hovered && !b.Disabled() {
		r.over.FillColor = th.Color(theme.ColorNameHover, v)
	}
	if b.focused {
		r.over.StrokeColor, r.over.StrokeWidth = th.Color(theme.ColorNamePrimary, v), 2
	}
	r.text.Text, r.text.Color = b.face.Text, th.Color(content, v)
	r.text.TextSize, r.text.TextStyle = th.Size(theme.SizeNameText), fyne.TextStyle{Bold: b.face.Kind >= Primary}
	if b.face.Icon == nil {
		r.icon.Hide()
	} else {
		if r.drawn != b.face.Icon || r.tone != content {
			r.drawn, r.tone = b.face.Icon, content
			r.icon.Resource = theme.NewColoredResource(b.face.Icon, content)
		}
		r.icon.Translucency = 0
		if b.Disabled() {
			r.icon.Translucency = 0.4
		}
		r.icon.Show()
	}
	r.Layout(b.Size())
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r *buttonRenderer) iconSide() float32 {
	side := r.b.Theme().Size(theme.SizeNameInlineIcon)
	if r.b.face.Wide {
		side += 6
	}
	return side
}

func (r *buttonRenderer) Layout(size fyne.Size) {
	r.ground.Resize(size)
	r.over.Resize(size)
	words := fyne.Size{}
	if r.b.face.Text != "" {
		words = fyne.MeasureText(r.text.Text, r.text.TextSize, r.text.TextStyle)
	}
	side, gap := float32(0), float32(0)
	if r.b.face.Icon != nil {
		side = r.iconSide()
		if r.b.face.Text != "" {
			gap = look.Gap + 2
		}
	}
	x := (size.Width - side - gap - words.Width) / 2
	if r.b.face.Wide {
		x = look.Space
	}
	r.icon.Move(fyne.NewPos(x, (size.Height-side)/2))
	r.icon.Resize(fyne.NewSquareSize(side))
	r.text.Move(fyne.NewPos(x+side+gap, (size.Height-words.Height)/2))
	r.text.Resize(words)
}

func (r *buttonRenderer) MinSize() fyne.Size {
	th := r.b.Theme()
	w := float32(0)
	if r.b.face.Icon != nil {
		w += r.iconSide()
	}
	if r.b.face.Text != "" {
		style := fyne.TextStyle{Bold: r.b.face.Kind >= Primary}
		w += fyne.MeasureText(r.b.face.Text, th.Size(theme.SizeNameText), style).Width
		if r.b.face.Icon != nil {
			w += look.Gap + 2
		}
		w += 2 * look.Space
	} else {
		w += look.Space + 2
	}
	return fyne.NewSize(fyne.Max(w, look.Target), look.Target)
}

func (r *buttonRenderer) Destroy() {}

func (r *buttonRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.icon, r.text, r.over}
}

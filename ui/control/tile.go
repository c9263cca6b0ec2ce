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

// Tile is content that can be clicked as a whole: a card, a line of a list. It
// shows when it is chosen, and says in the hint line what a click does.
type Tile struct {
	widget.BaseWidget
	frame       *Frame
	content     fyne.CanvasObject
	hint        string
	ground      fyne.ThemeColorName
	on          bool
	OnTapped    func()
	OnDouble    func()
	OnSecondary func(*fyne.PointEvent)
	// OnPoint hears that the mouse or the keyboard has come to the tile, or has left.
	OnPoint func(bool)
	// Held are the modifiers that were held at the press of a click.
	Held fyne.KeyModifier
	// OnKey may take a key before the tile does, and reports whether it has.
	OnKey func(*fyne.KeyEvent) bool

	hovered, focused bool
}

// NewTile makes a tile of some content.
func NewTile(f *Frame, hint string, content fyne.CanvasObject, tapped func()) *Tile {
	t := &Tile{frame: f, hint: hint, content: content, OnTapped: tapped}
	t.ExtendBaseWidget(t)
	return t
}

// OnGround paints a colour of the theme behind the content.
func (t *Tile) OnGround(name fyne.ThemeColorName) *Tile { t.ground = name; return t }

// On reports whether it shows as chosen.
func (t *Tile) On() bool { return t.on }

// SetOn shows it as chosen or not.
func (t *Tile) SetOn(on bool) {
	if on != t.on {
		t.on = on
		t.Refresh()
	}
}

// SetHint says another thing.
func (t *Tile) SetHint(hint string) { t.hint = hint }

// Hint is what it says in the hint line.
func (t *Tile) Hint() string { return t.hint }

// AccessibilityLabel is the hint: a tile has no one word.
func (t *Tile) AccessibilityLabel() string { return t.hint }

// AccessibilityRole is that of a button.
func (t *Tile) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// Tapped does what the tile is for.
func (t *Tile) Tapped(*fyne.PointEvent) {
	if t.OnTapped != nil {
		t.OnTapped()
	}
}

// TappedSecondary opens what belongs to the tile.
func (t *Tile) TappedSecondary(e *fyne.PointEvent) {
	if t.OnSecondary != nil {
		t.OnSecondary(e)
	}
}

// Cursor is the pointer over what can be clicked.
func (t *Tile) Cursor() desktop.Cursor { return desktop.PointerCursor }

// MouseDown notes the modifiers: when the click is told they may be let go already.
func (t *Tile) MouseDown(e *desktop.MouseEvent) { t.Held = e.Modifier }

// MouseUp does nothing.
func (t *Tile) MouseUp(*desktop.MouseEvent) {}

// MouseIn says what a click does.
func (t *Tile) MouseIn(*desktop.MouseEvent) {
	t.hovered = true
	t.frame.Say(t.hint)
	t.point(true)
	t.Refresh()
}

// MouseMoved does nothing.
func (t *Tile) MouseMoved(*desktop.MouseEvent) {}

// MouseOut gives the hint line back.
func (t *Tile) MouseOut() {
	t.hovered = false
	t.frame.Say("")
	t.point(false)
	t.Refresh()
}

func (t *Tile) point(on bool) {
	if t.OnPoint != nil {
		t.OnPoint(on)
	}
}

// FocusGained shows the focus.
func (t *Tile) FocusGained() {
	t.focused = true
	t.frame.reveal(t)
	t.frame.Say(t.hint)
	t.point(true)
	t.Refresh()
}

// FocusLost takes the focus's mark away.
func (t *Tile) FocusLost() {
	t.focused = false
	t.frame.Say("")
	t.point(false)
	t.Refresh()
}

// TypedKey works the tile by Enter or Space; other keys go on to the window.
func (t *Tile) TypedKey(e *fyne.KeyEvent) {
	if t.OnKey != nil && t.OnKey(e) {
		return
	}
	if isEnter(e) || e.Name == fyne.KeySpace {
		t.Held = 0
		t.Tapped(nil)
		return
	}
	t.frame.Key(e)
}

// TypedRune does nothing.
func (t *Tile) TypedRune(rune) {}

// CreateRenderer makes the widget's renderer.
func (t *Tile) CreateRenderer() fyne.WidgetRenderer {
	r := &tileRenderer{t: t, ground: canvas.NewRectangle(color.Transparent),
		rim: canvas.NewRectangle(color.Transparent)}
	r.apply()
	return r
}

type tileRenderer struct {
	t           *Tile
	ground, rim *canvas.Rectangle
}

func (r *tileRenderer) apply() {
	th, v := r.t.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	r.ground.CornerRadius = th.Size(theme.SizeNameButtonRadius)
	r.rim.CornerRadius = r.ground.CornerRadius
	r.ground.FillColor = color.Transparent
	if r.t.ground != "" {
		r.ground.FillColor = th.Color(r.t.ground, v)
	}
	r.rim.FillColor, r.rim.StrokeWidth = color.Transparent, 0
	switch {
	case r.t.on:
		r.rim.FillColor = th.Color(look.Selected, v)
	case r.t.hovered:
		r.rim.FillColor = th.Color(theme.ColorNameHover, v)
	}
	if r.t.on || r.t.focused {
		r.rim.StrokeColor, r.rim.StrokeWidth = th.Color(theme.ColorNamePrimary, v), 2
	}
	if r.t.on && r.t.focused { // it has the rim already
		r.rim.StrokeColor, r.rim.StrokeWidth = th.Color(theme.ColorNameForeground, v), 3
	}
}

func (r *tileRenderer) Refresh() {
	r.apply()
	r.ground.Refresh()
	r.rim.Refresh()
}

func (r *tileRenderer) Layout(size fyne.Size) {
	r.ground.Resize(size)
	r.rim.Resize(size)
	r.t.content.Resize(size)
}

func (r *tileRenderer) MinSize() fyne.Size { return r.t.content.MinSize() }

func (r *tileRenderer) Destroy() {}

func (r *tileRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.rim, r.t.content}
}

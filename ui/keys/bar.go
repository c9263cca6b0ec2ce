package keys

import (
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// Bar is the menu bar: a title for each menu, which opens its actions. It
// belongs to the main goroutine.
type Bar struct {
	Object fyne.CanvasObject

	d      *Dispatcher
	frame  *control.Frame
	titles []*control.Button
	card   *control.Popover
	open   int // the menu that is open, -1 for none
	lines  []*control.Tile
}

// NewBar is a bar that runs its actions by a dispatcher.
func NewBar(f *control.Frame, d *Dispatcher) *Bar {
	b := &Bar{d: d, frame: f, open: -1}
	row := control.Row(0)
	for i, title := range Menus {
		t := control.NewButton(f, control.Face{Text: title, Hint: "Opens the menu " + title + "."},
			func() { b.Open(i) })
		b.titles = append(b.titles, t)
		row.Add(t)
	}
	b.Object = row
	return b
}

// Open opens a menu, in place of one that is open.
func (b *Bar) Open(i int) {
	b.shut()
	if b.frame.Busy() {
		return
	}
	b.open, b.lines = i, nil
	list := control.Column(0)
	var first fyne.Focusable
	for _, a := range Table {
		if a.Menu != Menus[i] {
			continue
		}
		if a.Group {
			list.Add(control.Pad(look.Gap, 0, control.Rule()))
		}
		t := b.line(a)
		if b.d.Enabled(a.ID) {
			b.lines = append(b.lines, t)
			if first == nil {
				first = t
			}
		}
		list.Add(t)
	}
	b.titles[i].SetOn(true)
	b.card = control.ShowPopover(b.frame, b.titles[i], list, first, func() {
		b.titles[i].SetOn(false)
		b.open = -1
	})
	b.card.OnKey, b.card.OnMoved = b.key, b.moved
}

func (b *Bar) shut() {
	if b.open >= 0 {
		b.card.Close()
	}
}

// line is one action in a menu.
func (b *Bar) line(a Action) *control.Tile {
	name := control.NewText(b.d.Name(a.ID))
	hint := a.Does
	if why := b.d.Why(a.ID); why != "" {
		hint = "Not now: " + why + ". " + a.Does
	}
	var do func()
	if b.d.Enabled(a.ID) {
		do = func() {
			b.shut()
			b.d.Run(a.ID)
		}
	} else {
		name.Colour(theme.ColorNameDisabled)
	}
	var sign fyne.CanvasObject = control.NewFill("", 0)
	if b.d.Checked(a.ID) {
		sign = control.Middle(control.Icon(icon.Check, theme.ColorNamePrimary))
	}
	key := control.NewText(a.Key.String()).Muted().Right()
	body := container.NewBorder(nil, nil, control.Sized(20, 18, sign),
		control.Pad(0, look.Section, key), name)
	return control.NewTile(b.frame, hint, control.Sized(220, 0,
		control.Pad(look.Gap, look.Gap, body)), do)
}

// key walks through the lines and the menus.
func (b *Bar) key(e *fyne.KeyEvent) bool {
	switch e.Name {
	case fyne.KeyDown:
		b.walk(1)
	case fyne.KeyUp:
		b.walk(-1)
	case fyne.KeyLeft:
		b.Open((b.open + len(b.titles) - 1) % len(b.titles))
	case fyne.KeyRight:
		b.Open((b.open + 1) % len(b.titles))
	default:
		return false
	}
	return true
}

// walk gives the keyboard to a line further down or up.
func (b *Bar) walk(by int) {
	if len(b.lines) == 0 {
		return
	}
	c, at := b.frame.Window.Canvas(), 0
	for i, l := range b.lines {
		if c.Focused() == fyne.Focusable(l) {
			at = (i + by + len(b.lines)) % len(b.lines)
		}
	}
	c.Focus(b.lines[at])
}

// moved opens the menu whose title the mouse passes while one is open.
func (b *Bar) moved(at fyne.Position) {
	for i, t := range b.titles {
		p := fyne.CurrentApp().Driver().AbsolutePositionForObject(t)
		if i != b.open && at.X >= p.X && at.Y >= p.Y && at.X < p.X+t.Size().Width && at.Y < p.Y+t.Size().Height {
			b.Open(i)
			return
		}
	}
}

package keys

import (
	"example.org/castwright/ui/control"
	"fyne.io/fyne/v2"
)

// Binding is what an action means in a window. All but Do may be nil.
type Binding struct {
	Do      func()
	Enabled func() bool
	Checked func() bool
	Name    func() string // in place of the table's, such as "Undo move corner"
}

// Dispatcher runs the actions of one window. It belongs to the main goroutine.
type Dispatcher struct {
	frame    *control.Frame
	bindings map[ID]Binding
	menu     *fyne.MainMenu
	items    map[ID]*fyne.MenuItem
}

// NewDispatcher runs actions in a window by their bindings; each action of the
// table needs one.
func NewDispatcher(f *control.Frame, bindings map[ID]Binding) *Dispatcher {
	d := &Dispatcher{frame: f, bindings: bindings, items: map[ID]*fyne.MenuItem{}}
	for _, a := range Table {
		if bindings[a.ID].Do == nil {
			panic("keys: nothing bound to " + string(a.ID))
		}
	}
	d.build()
	return d
}

// Run does an action if it may be done now.
func (d *Dispatcher) Run(id ID) {
	b := d.bindings[id]
	if d.frame.Busy() || b.Enabled != nil && !b.Enabled() {
		return
	}
	switch ByID(id).Guard {
	case Text:
		if d.toText(id) {
			return
		}
		d.frame.Settle()
	case Settles:
		d.frame.Settle()
	}
	b.Do()
}

// toText gives undo and redo to a text that is being typed.
func (d *Dispatcher) toText(id ID) bool {
	focused := d.frame.Window.Canvas().Focused()
	text, ok := focused.(interface {
		Undo()
		Redo()
	})
	if !ok {
		return false
	}
	// A value's entry in which nothing is pending has nothing to undo: the
	// change before it is meant.
	if p, ok := focused.(interface{ Pending() (string, bool) }); ok {
		if _, pending := p.Pending(); !pending {
			return false
		}
	}
	if id == Undo {
		text.Undo()
	} else {
		text.Redo()
	}
	return true
}

// Key runs the action of a key that the menu does not get, and reports whether
// there is one.
func (d *Dispatcher) Key(e *fyne.KeyEvent) bool {
	for _, a := range Table {
		if a.Key == (Key{Name: e.Name}) {
			d.Run(a.ID)
			return true
		}
	}
	return false
}

// Enabled reports whether an action may be done now.
func (d *Dispatcher) Enabled(id ID) bool {
	b := d.bindings[id]
	return b.Enabled == nil || b.Enabled()
}

// Name is the action as it reads now.
func (d *Dispatcher) Name(id ID) string {
	if f := d.bindings[id].Name; f != nil {
		return f()
	}
	return ByID(id).Name
}

// Menu is the window's menu.
func (d *Dispatcher) Menu() *fyne.MainMenu { return d.menu }

func (d *Dispatcher) build() {
	d.menu = fyne.NewMainMenu()
	for _, title := range Menus {
		m := fyne.NewMenu(title)
		for _, a := range Table {
			if a.Menu != title {
				continue
			}
			if a.Group && len(m.Items) > 0 {
				m.Items = append(m.Items, fyne.NewMenuItemSeparator())
			}
			i := fyne.NewMenuItem(d.Name(a.ID), func() { d.Run(a.ID) })
			i.Shortcut, i.IsQuit = a.Key.shortcut(), a.ID == Quit
			d.items[a.ID] = i
			m.Items = append(m.Items, i)
		}
		d.menu.Items = append(d.menu.Items, m)
	}
	d.update()
	// Further keys for an action, where the menu does not show them.
	for _, a := range Table {
		for _, k := range a.Also {
			d.frame.Window.Canvas().AddShortcut(k.shortcut(), func(fyne.Shortcut) { d.Run(a.ID) })
		}
	}
}

// update writes the state of the actions into the menu's items and reports
// whether anything changed.
func (d *Dispatcher) update() (changed bool) {
	for _, a := range Table {
		i, b := d.items[a.ID], d.bindings[a.ID]
		name, disabled, checked := d.Name(a.ID), !d.Enabled(a.ID), b.Checked != nil && b.Checked()
		if name != i.Label || disabled != i.Disabled || checked != i.Checked {
			i.Label, i.Disabled, i.Checked = name, disabled, checked
			changed = true
		}
	}
	return changed
}

// Update brings the menu up to date.
func (d *Dispatcher) Update() {
	if d.update() {
		d.menu.Refresh()
	}
}

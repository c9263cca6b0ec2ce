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
	// Why says in the middle of a sentence what is in the way, "" for nothing: the
	// action may not be done then.
	Why func() string
}

// Dispatcher runs the actions of one window. It belongs to the main goroutine.
type Dispatcher struct {
	// OnRefused hears what is in the way of an action whose key was pressed, in a
	// sentence.
	OnRefused func(string)

	frame     *control.Frame
	bindings  map[ID]Binding
	shortcuts map[string]ID // by the toolkit's name for them
}

// NewDispatcher runs actions in a window by their bindings; each action of the
// table needs one.
func NewDispatcher(f *control.Frame, bindings map[ID]Binding) *Dispatcher {
	d := &Dispatcher{frame: f, bindings: bindings}
	for _, a := range Table {
		if bindings[a.ID].Do == nil {
			panic("keys: nothing bound to " + string(a.ID))
		}
	}
	d.listen()
	return d
}

// Run does an action if it may be done now.
func (d *Dispatcher) Run(id ID) {
	b := d.bindings[id]
	if d.frame.Busy() {
		return
	}
	d.frame.Say("") // what comes of it is told, not what lies under the mouse
	if !d.Enabled(id) {
		if why := d.Why(id); why != "" && d.OnRefused != nil {
			d.OnRefused(d.Name(id) + ": " + why + ".")
		}
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

// Key runs the action of a key that is pressed alone, and reports whether there
// is one.
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
	return (b.Enabled == nil || b.Enabled()) && d.Why(id) == ""
}

// Why is what is in the way of an action, in the middle of a sentence; "" for
// nothing, or where there is no more to say than that it can't be done.
func (d *Dispatcher) Why(id ID) string {
	if b := d.bindings[id]; b.Why != nil && (b.Enabled == nil || b.Enabled()) {
		return b.Why()
	}
	return ""
}

// Name is the action as it reads now.
func (d *Dispatcher) Name(id ID) string {
	if f := d.bindings[id].Name; f != nil {
		return f()
	}
	return ByID(id).Name
}

// Checked reports whether what an action switches is on.
func (d *Dispatcher) Checked(id ID) bool {
	b := d.bindings[id]
	return b.Checked != nil && b.Checked()
}

// listen takes the keys that are pressed with Ctrl or Alt, wherever the keyboard
// is.
func (d *Dispatcher) listen() {
	d.shortcuts = map[string]ID{}
	for _, a := range Table {
		for _, k := range append([]Key{a.Key}, a.Also...) {
			if k.Plain() {
				continue
			}
			s := k.shortcut()
			d.shortcuts[s.ShortcutName()] = a.ID
			d.frame.Window.Canvas().AddShortcut(s, func(fyne.Shortcut) { d.Run(a.ID) })
		}
	}
	// A text that has the keyboard gets the shortcuts in the canvas's place.
	d.frame.OnShortcut = d.Shortcut
}

// Shortcut runs the action of a shortcut, and reports whether there is one.
func (d *Dispatcher) Shortcut(s fyne.Shortcut) bool {
	id, ok := d.shortcuts[s.ShortcutName()]
	if ok {
		d.Run(id)
	}
	return ok
}

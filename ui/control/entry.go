package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// Entry is a line to type a value in. Enter or leaving it hands the text to
// Commit; Esc restores what was there. A text that Commit refuses stays as it
// was typed, with the reason, until it is mended or restored.
type Entry struct {
	widget.Entry
	frame *Frame
	hint  string

	// Commit takes the text as the new value, or says why not; without it any
	// text is the value.
	Commit func(text string) error
	// Nudge moves the value by arrow keys, in steps; nil leaves them alone.
	Nudge func(steps int)
	// EscLeaves gives Esc to the dialog at once, without restoring first.
	EscLeaves bool
	// OnFault hears why the text was refused, nil when that is over.
	OnFault func(error)

	shown   string // the value, as shown
	fault   error
	clicked bool
	busy    bool
	told    bool // SetValue has said how what is being committed is shown
	entered bool // Enter is being handled, after which the window has the key
}

// NewEntry is an entry whose hint says what the value is.
func NewEntry(f *Frame, hint string) *Entry {
	e := &Entry{frame: f, hint: hint}
	e.AlwaysShowValidationError = true
	e.ExtendBaseWidget(e)
	e.OnSubmitted = func(string) { e.entered = e.commit() }
	return e
}

// SetValue shows a value that was set elsewhere. What is being typed, or was typed
// and refused, stays.
func (e *Entry) SetValue(value string) {
	e.told = true
	if value == e.shown && (e.Text == value || e.pending()) {
		return
	}
	pending := e.pending()
	e.shown = value
	if !pending && e.Text != value {
		e.SetText(value)
	}
}

// SetHint says another thing in the hint line.
func (e *Entry) SetHint(hint string) { e.hint = hint }

// Hint is what it says in the hint line.
func (e *Entry) Hint() string { return e.hint }

// Keep puts a text back that was typed and refused before.
func (e *Entry) Keep(text string) {
	e.SetText(text)
	e.commit()
}

// Pending is a text that was typed and is not the value yet.
func (e *Entry) Pending() (text string, ok bool) { return e.Text, e.pending() }

func (e *Entry) pending() bool { return e.Text != e.shown }

// Fault is why the text was refused, nil when it was not.
func (e *Entry) Fault() error { return e.fault }

// commit hands the text over and reports whether it is the value now.
func (e *Entry) commit() bool {
	if e.busy || !e.pending() {
		return true
	}
	typed := e.Text
	if e.Commit == nil {
		e.shown = typed
		return true
	}
	e.busy, e.told = true, false
	defer func() { e.busy = false }()
	err := e.Commit(typed)
	e.setFault(err)
	if err != nil {
		return false
	}
	switch {
	case e.Text != typed: // SetValue has shown it already
	case e.told: // the value may be shown otherwise than it was typed
		e.SetText(e.shown)
	default:
		e.shown = typed
	}
	return true
}

func (e *Entry) setFault(err error) {
	if err == nil && e.fault == nil {
		return
	}
	e.fault = err
	e.SetValidationError(err)
	if e.OnFault != nil {
		e.OnFault(err)
	}
}

// Settle hands over what was typed, as leaving the entry does.
func (e *Entry) Settle() { e.commit() }

// Restore drops what was typed.
func (e *Entry) Restore() {
	e.setFault(nil)
	if e.pending() {
		e.SetText(e.shown)
	}
}

// TypedKey handles Enter, Esc and the arrows; other keys edit.
func (e *Entry) TypedKey(k *fyne.KeyEvent) {
	switch {
	case isEsc(k):
		if e.pending() && !e.EscLeaves {
			e.Restore()
			e.selectAll()
			return
		}
		e.frame.Key(k)
	case isEnter(k) && !e.MultiLine:
		e.entered = false
		e.Entry.TypedKey(k)
		if e.entered {
			e.selectAll()
			e.frame.Key(k)
		}
	case e.Nudge != nil && (k.Name == fyne.KeyUp || k.Name == fyne.KeyDown):
		if !e.commit() {
			return
		}
		steps := 1
		if ShiftHeld() {
			steps = 10
		}
		if k.Name == fyne.KeyDown {
			steps = -steps
		}
		e.Nudge(steps)
		e.selectAll()
	default:
		e.Entry.TypedKey(k)
	}
}

// AcceptsTab lets Tab go on to the next control, from a text of several lines too.
func (e *Entry) AcceptsTab() bool { return false }

// TypedShortcut keeps the shortcuts of editing a text and hands others on. Undo
// and redo are for the text only while something in it is pending.
func (e *Entry) TypedShortcut(s fyne.Shortcut) {
	switch s.(type) {
	case *fyne.ShortcutCut, *fyne.ShortcutCopy, *fyne.ShortcutPaste, *fyne.ShortcutSelectAll:
	default:
		if e.frame.OnShortcut != nil && e.frame.OnShortcut(s) {
			return
		}
	}
	e.Entry.TypedShortcut(s)
}

// FocusGained takes the whole text, so that typing replaces it.
func (e *Entry) FocusGained() {
	e.Entry.FocusGained()
	e.frame.reveal(e)
	e.frame.Say(e.hint)
	if !e.clicked {
		e.selectAll()
	}
}

// FocusLost commits.
func (e *Entry) FocusLost() {
	e.Entry.FocusLost()
	e.frame.Say("")
	e.commit()
}

// MouseDown notes that the focus comes by the mouse.
func (e *Entry) MouseDown(m *desktop.MouseEvent) {
	first := e.frame.Window.Canvas().Focused() != fyne.Focusable(e)
	e.clicked = true
	e.Entry.MouseDown(m)
	e.clicked = false
	if first {
		e.selectAll()
	}
}

// MouseIn says what the value is.
func (e *Entry) MouseIn(*desktop.MouseEvent) { e.frame.Say(e.hint) }

// MouseMoved does nothing.
func (e *Entry) MouseMoved(*desktop.MouseEvent) {}

// MouseOut gives the hint line back.
func (e *Entry) MouseOut() { e.frame.Say("") }

// selectAll takes the whole text. With none, the toolkit would go on to take what
// is typed next for selected, and lose it.
func (e *Entry) selectAll() {
	if e.Text != "" {
		e.TypedShortcut(&fyne.ShortcutSelectAll{})
	}
}

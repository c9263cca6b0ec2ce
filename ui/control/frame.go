package control

import (
	"slices"

	"fyne.io/fyne/v2"
)

// Frame is what the controls of one window share: the hint line that they speak
// in, and where keys go that mean nothing to them. It belongs to the main
// goroutine.
type Frame struct {
	Window fyne.Window
	// OnSay hears what the hint line is to say; "" gives the line back.
	OnSay func(text string)
	// OnKey hears the keys that nobody else has taken.
	OnKey func(*fyne.KeyEvent)
	// OnShortcut is offered the shortcuts that a text does not want, and reports
	// whether it took one.
	OnShortcut func(fyne.Shortcut) bool
	// OnCover hears that something has come over the window, or has gone.
	OnCover func()
	// Inline does at once what else is done in the background, for tests.
	Inline bool

	takers []*taker
	works  works
}

// taker takes keys before the window does, such as a dialog.
type taker struct{ take func(*fyne.KeyEvent) bool }

// NewFrame is the frame of a window; keys that go to no control come to it.
func NewFrame(w fyne.Window) *Frame {
	f := &Frame{Window: w}
	w.Canvas().SetOnTypedKey(f.Key)
	return f
}

// Say says something in the hint line; "" gives the line back.
func (f *Frame) Say(text string) {
	if f.OnSay != nil {
		f.OnSay(text)
	}
}

// Background does a work off the main goroutine, and then on it what the work
// gives back.
func (f *Frame) Background(work func() (then func())) {
	if f.Inline {
		work()()
		return
	}
	go func() {
		then := work()
		fyne.Do(then)
	}()
}

// Key is a key that meant nothing to the control that had it.
func (f *Frame) Key(e *fyne.KeyEvent) {
	for i := len(f.takers) - 1; i >= 0; i-- {
		if f.takers[i].take(e) {
			return
		}
	}
	if len(f.takers) == 0 && f.OnKey != nil {
		f.OnKey(e)
	}
}

// Take lets someone have the keys before all others, until release is called.
func (f *Frame) Take(take func(*fyne.KeyEvent) bool) (release func()) {
	t := &taker{take}
	f.takers = append(f.takers, t)
	return func() { f.takers = slices.DeleteFunc(f.takers, func(o *taker) bool { return o == t }) }
}

// covered says that something has come over the window, or has gone.
func (f *Frame) covered() {
	if f.OnCover != nil {
		f.OnCover()
	}
}

// Busy reports whether a dialog or popover is open, so that the window's own
// actions must wait.
func (f *Frame) Busy() bool {
	return len(f.takers) > 0 || f.Window.Canvas().Overlays().Top() != nil
}

// Settle hands over what is being typed in the control that has the keyboard.
func (f *Frame) Settle() {
	if s, ok := f.Window.Canvas().Focused().(interface{ Settle() }); ok {
		s.Settle()
	}
}

// Enter and Esc, whichever key they came by.
func isEnter(e *fyne.KeyEvent) bool { return e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter }
func isEsc(e *fyne.KeyEvent) bool   { return e.Name == fyne.KeyEscape }

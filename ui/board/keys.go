package board

import (
	"example.org/castwright/ui/tool"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

var keyOf = map[fyne.KeyName]tool.Key{
	fyne.KeyEscape:    tool.KeyEscape,
	fyne.KeyReturn:    tool.KeyEnter,
	fyne.KeyEnter:     tool.KeyEnter,
	fyne.KeyTab:       tool.KeyTab,
	fyne.KeyDelete:    tool.KeyDelete,
	fyne.KeyBackspace: tool.KeyBackspace,
	fyne.KeyLeft:      tool.KeyLeft,
	fyne.KeyRight:     tool.KeyRight,
	fyne.KeyUp:        tool.KeyUp,
	fyne.KeyDown:      tool.KeyDown,
}

var modOf = map[fyne.KeyName]tool.Mod{
	desktop.KeyShiftLeft: tool.Shift, desktop.KeyShiftRight: tool.Shift,
	desktop.KeyControlLeft: tool.Control, desktop.KeyControlRight: tool.Control,
	desktop.KeyAltLeft: tool.Alt, desktop.KeyAltRight: tool.Alt,
}

// FocusGained shows the focus when it came by the keyboard.
func (b *Board) FocusGained() {
	b.keyboard = !b.press.active
	b.raster.Refresh()
}

// FocusLost keeps what keys have in hand. A drag goes on: the toolkit takes the
// focus away before it ends one outside.
func (b *Board) FocusLost() {
	b.keyboard, b.space, b.held = false, false, 0
	if !b.press.active {
		b.hand.Settle()
	}
	b.after()
}

// AcceptsTab keeps Tab for the next measure while something is in hand.
func (b *Board) AcceptsTab() bool { return b.hand.WantsTab() }

// TypedKey is a key. Those that mean nothing here go to whom [Board.OnKey] has
// set.
func (b *Board) TypedKey(e *fyne.KeyEvent) {
	b.keyboard = false
	if k, ok := keyOf[e.Name]; ok && b.hand.Key(k, b.mods()) {
		b.keepInSight() // a number that was typed may have drawn the top out of it
		b.after()
		return
	}
	if b.onKey != nil {
		b.onKey(e)
	}
}

// TypedRune is a character: of a number for what is in hand or selected, else a
// key of the view.
func (b *Board) TypedRune(r rune) {
	if b.hand.Rune(r) {
		b.after()
		return
	}
	switch r {
	case 'f', 'F', '0':
		b.Fit()
	case '1':
		b.ZoomActual()
	case '+', '=':
		b.ZoomIn()
	case '-', '_':
		b.ZoomOut()
	}
}

// KeyDown follows Space and the modifiers.
func (b *Board) KeyDown(e *fyne.KeyEvent) { b.keyChanged(e.Name, true) }

// KeyUp follows Space and the modifiers.
func (b *Board) KeyUp(e *fyne.KeyEvent) { b.keyChanged(e.Name, false) }

func (b *Board) keyChanged(name fyne.KeyName, down bool) {
	if name == fyne.KeySpace {
		b.space = down && !b.hand.Busy()
		return
	}
	m, ok := modOf[name]
	if !ok {
		return
	}
	b.held &^= m
	if down {
		b.held |= m
	}
	// The snap is freed or holds again at once.
	if b.hand.Follow(b.mods()) {
		b.after()
	}
}

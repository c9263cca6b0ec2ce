package board

import (
	"math"
	"time"

	"example.org/castwright/model/geom"
	"example.org/castwright/ui/tool"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// press is a button that is down.
type press struct {
	active  bool
	button  desktop.MouseButton
	pan     bool // it moves the paper
	free    bool // it moves the paper once it is dragged
	dragged bool // the toolkit has begun a drag: it ends with DragEnd
	label   bool // it opened a number
	at      fyne.Position
}

// click is the last press, to tell a double click.
type click struct {
	at   fyne.Position
	when time.Time
}

// A second press this soon and this near is a double click.
const (
	doubleTime  = 400 * time.Millisecond
	doublePoint = 4
)

// pointer is a toolkit's position as the hand takes it.
func (b *Board) pointer(p fyne.Position) tool.Pointer {
	at := b.view.Design(geom.Vec{X: float64(p.X), Y: float64(p.Y)})
	return tool.Pointer{At: at, PerMM: b.view.Scale, Mod: b.mods()}
}

// mods are the modifiers held. Events of moves and drags carry none.
func (b *Board) mods() tool.Mod {
	d, ok := fyne.CurrentApp().Driver().(desktop.Driver)
	if !ok {
		return b.held
	}
	return modsOf(d.CurrentKeyModifiers())
}

func modsOf(m fyne.KeyModifier) tool.Mod {
	var out tool.Mod
	if m&fyne.KeyModifierShift != 0 {
		out |= tool.Shift
	}
	if m&fyne.KeyModifierAlt != 0 {
		out |= tool.Alt
	}
	if m&fyne.KeyModifierControl != 0 {
		out |= tool.Control
	}
	return out
}

// Acted sets who knows where in the window, in points, a press, a release or a
// turn of the wheel was made that the toolkit tells of: it may tell of it where
// the mouse was a frame before or after. ok is false where nobody knows.
func (b *Board) Acted(where func() (at fyne.Position, ok bool)) { b.acted = where }

// Late sets who knows that a press or a release was made of which the board is still
// to be told: nothing goes on by itself until then.
func (b *Board) Late(late func() bool) { b.late = late }

// exact is where on the board something was done of which the toolkit says that
// it was done at a place of the board and of the window.
func (b *Board) exact(at, inWindow fyne.Position) fyne.Position {
	if b.acted != nil {
		if p, ok := b.acted(); ok {
			return at.Add(p.Subtract(inWindow))
		}
	}
	return at
}

// MouseDown takes hold of what lies under the mouse.
func (b *Board) MouseDown(e *desktop.MouseEvent) {
	e.Position = b.exact(e.Position, e.AbsolutePosition)
	b.focus()
	if b.press.active { // the release was lost, or a second button came down
		b.release(b.press.at)
	}
	b.press = press{active: true, button: e.Button, at: e.Position}
	switch {
	case e.Button == desktop.MouseButtonTertiary, b.space && e.Button == desktop.MouseButtonPrimary:
		b.press.pan = true
	case e.Button == desktop.MouseButtonPrimary:
		b.pressPrimary(e)
	}
	b.reachFrom(e.Position)
	b.after()
}

func (b *Board) pressPrimary(e *desktop.MouseEvent) {
	if field, ok := b.labelAt(e.Position); ok && b.hand.TakeField(field) {
		b.press.label = true
		return
	}
	if b.takeDimension(e.Position) {
		b.press.label = true
		return
	}
	p := b.pointer(e.Position)
	p.Mod |= modsOf(e.Modifier)
	now := b.now()
	p.Double = now.Sub(b.last.when) <= doubleTime && between(b.last.at, e.Position) <= doublePoint
	b.last = click{e.Position, now}
	if p.Double {
		b.last = click{} // a third press is a first one
	}
	b.press.free = b.hand.Down(p)
}

func between(p, q fyne.Position) float64 { return math.Hypot(float64(p.X-q.X), float64(p.Y-q.Y)) }

// MouseUp lets go, unless the toolkit is dragging: then DragEnd does.
func (b *Board) MouseUp(e *desktop.MouseEvent) {
	if b.press.active && e.Button == b.press.button && !b.press.dragged {
		b.release(b.exact(e.Position, e.AbsolutePosition))
	}
}

// Dragged drags what is in hand, or the paper.
func (b *Board) Dragged(e *fyne.DragEvent) {
	if !b.press.active {
		return
	}
	b.press.dragged = true
	b.follow(e.Position)
}

// DragEnd ends a drag; it comes when the button is let go anywhere, even after
// the focus was lost.
func (b *Board) DragEnd() {
	if b.acted != nil && b.press.active {
		if p, ok := b.acted(); ok {
			b.follow(p.Subtract(fyne.CurrentApp().Driver().AbsolutePositionForObject(b)))
		}
	}
	b.release(b.press.at)
	b.focus()
}

// follow goes along with a mouse whose button is down.
func (b *Board) follow(at fyne.Position) {
	by := geom.Vec{X: float64(at.X - b.press.at.X), Y: float64(at.Y - b.press.at.Y)}
	switch {
	case b.press.label:
		return
	case b.press.pan:
		b.press.at = at
		b.look(b.view.Pan(by))
	case b.press.free:
		// Nothing was taken: the paper is moved, from a little way on, so that
		// a shaky click stays a click.
		if by.Norm() >= 3 {
			b.press.pan = true
			b.hand.Panned()
		}
	case b.press.button == desktop.MouseButtonPrimary:
		b.press.at = at
		b.hand.Move(b.pointer(at))
		b.reachTo(at)
		b.after()
	}
}

// release ends a press.
func (b *Board) release(at fyne.Position) {
	was := b.press
	b.press = press{}
	b.stopScroll()
	if was.active && was.button == desktop.MouseButtonPrimary && !was.pan && !was.label {
		b.hand.Up(b.pointer(at))
		b.hand.Move(b.pointer(at)) // what lies under the mouse now
	}
	b.keepInSight()
	b.after()
}

// MouseIn is a mouse that comes onto the board.
func (b *Board) MouseIn(e *desktop.MouseEvent) {
	if !b.press.active {
		b.reachFrom(e.Position)
	}
	b.MouseMoved(e)
}

// MouseMoved is a mouse that moves, or that starts a drag.
func (b *Board) MouseMoved(e *desktop.MouseEvent) {
	if b.press.active {
		if e.Button == 0 && !b.press.dragged {
			b.release(e.Position) // it was let go outside
		} else {
			b.follow(e.Position)
			return
		}
	}
	changed := b.hand.Move(b.pointer(e.Position))
	b.reachTo(e.Position)
	b.number = b.overNumber(e.Position)
	if _, typing := b.Typing(); b.number && !typing {
		b.tell("Click to type a new value for this measure.")
		return
	}
	if changed {
		b.after()
	} else {
		b.tell(b.hand.Hint())
	}
}

// MouseOut is a mouse that leaves the board.
func (b *Board) MouseOut() {
	if b.press.active {
		return
	}
	b.number = false
	b.stopScroll()
	b.hand.Out()
	b.after()
}

// Scrolled zooms at the mouse.
func (b *Board) Scrolled(e *fyne.ScrollEvent) {
	d := float64(e.Scrolled.DY)
	if d == 0 {
		d = float64(e.Scrolled.DX) // Shift swaps the axes
	}
	p := b.exact(e.Position, e.AbsolutePosition)
	at := geom.Vec{X: float64(p.X), Y: float64(p.Y)}
	// 25 units are a notch: a step and a bit.
	b.zoomBy(at, math.Exp(math.Max(-200, math.Min(200, d))*0.009))
}

// Cursor is the shape of the mouse pointer.
func (b *Board) Cursor() desktop.Cursor {
	if b.press.pan || b.space {
		return desktop.PointerCursor
	}
	if b.number {
		return desktop.TextCursor
	}
	switch b.hand.Cursor() {
	case tool.CursorCross:
		return desktop.CrosshairCursor
	case tool.CursorHand:
		return desktop.PointerCursor
	case tool.CursorEastWest:
		return desktop.HResizeCursor
	case tool.CursorNorthSouth:
		return desktop.VResizeCursor
	case tool.CursorRising:
		return desktop.NESWResizeCursor
	case tool.CursorFalling:
		return desktop.NWSEResizeCursor
	}
	return desktop.DefaultCursor
}

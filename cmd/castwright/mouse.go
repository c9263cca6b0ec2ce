package main

import (
	"fyne.io/fyne/v2"
	"github.com/go-gl/glfw/v3.4/glfw"
)

// mouse mends what the toolkit does to presses. It looks at moves once in a
// frame, after everything else that came in it, so a press after a quick move, or
// in a slow frame, lands where the pointer was a frame ago, and a release leaves
// the last of a drag out. Here a press, a release or a turn of the wheel that
// comes after a move waits until that move has been looked at, and the place where
// it was made is kept for whoever asks. Keys that come after such a press wait for
// it: a number that is typed right after a click is for what was clicked.
//
// All of it belongs to the main goroutine.
type mouse struct {
	win    *glfw.Window
	move   glfw.CursorPosCallback // the toolkit's
	x, y   float64                // pixels of the window
	waits  bool                   // a move has not been looked at yet
	late   int                    // acts that wait for it
	queued int                    // these, and keys that wait for them
	acting bool                   // the toolkit is told of a press made at x0, y0
	x0, y0 float64
}

// Attach takes the mouse of the window that is being painted.
func (m *mouse) Attach() {
	m.win = glfw.GetCurrentContext()
	if m.win == nil {
		return
	}
	m.move = m.win.SetCursorPosCallback(nil)
	m.win.SetCursorPosCallback(func(w *glfw.Window, x, y float64) {
		m.x, m.y = x, y
		if !m.waits {
			m.waits = true
			fyne.Do(func() { m.waits = false }) // after this frame
		}
		m.move(w, x, y)
	})
	button := m.win.SetMouseButtonCallback(nil)
	m.win.SetMouseButtonCallback(func(w *glfw.Window, b glfw.MouseButton, a glfw.Action, mods glfw.ModifierKey) {
		m.act(func() { button(w, b, a, mods) })
	})
	wheel := m.win.SetScrollCallback(nil)
	m.win.SetScrollCallback(func(w *glfw.Window, dx, dy float64) {
		m.act(func() { wheel(w, dx, dy) })
	})
	key := m.win.SetKeyCallback(nil)
	m.win.SetKeyCallback(func(w *glfw.Window, k glfw.Key, code int, a glfw.Action, mods glfw.ModifierKey) {
		m.inTurn(m.queued > 0, func() { key(w, k, code, a, mods) })
	})
	char := m.win.SetCharCallback(nil)
	m.win.SetCharCallback(func(w *glfw.Window, c rune) {
		m.inTurn(m.queued > 0, func() { char(w, c) })
	})
}

// inTurn does something now, or after what waits already.
func (m *mouse) inTurn(wait bool, do func()) {
	if !wait {
		do()
		return
	}
	m.queued++
	fyne.Do(func() { m.queued--; do() })
}

// act tells the toolkit of something that was done where the mouse is now.
func (m *mouse) act(tell func()) {
	x, y := m.x, m.y
	do := func() {
		m.acting, m.x0, m.y0 = true, x, y
		tell()
		m.acting = false
	}
	if m.waits || m.queued > 0 {
		m.late++
		m.inTurn(true, func() { m.late--; do() })
	} else {
		do()
	}
}

// Acted is where in the window, in pixels, the press, release or turn of the
// wheel that the toolkit tells of was made; ok is false at all other times.
func (m *mouse) Acted() (x, y float64, ok bool) { return m.x0, m.y0, m.acting }

// Late reports whether a press, a release or a turn of the wheel was made that the
// toolkit has not been told of yet.
func (m *mouse) Late() bool { return m.late > 0 }

// Again has the toolkit look at what lies under the mouse, as it does of itself
// only when that moves.
func (m *mouse) Again() {
	if m.move != nil && m.x != 0 && m.y != 0 {
		m.move(m.win, m.x, m.y)
	}
}

package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// follow has the window follow a mouse more closely than the toolkit does.
func (w *window) follow(m Mouse) {
	if m == nil {
		return
	}
	w.mouse = m
	acted := func() (fyne.Position, bool) {
		x, y, ok := m.Acted()
		if !ok {
			return fyne.Position{}, false
		}
		scale := w.win.Canvas().Scale()
		return fyne.NewPos(float32(int(x))/scale, float32(int(y))/scale), true
	}
	w.board.Acted(acted)
	w.room.Acted = acted
	w.board.Late(m.Late)
	w.frame.OnCover = m.Again
	w.onFirstPicture(m.Attach)
}

// lookAgain has the mouse's shape and what is lit under it follow a change of
// what lies there.
func (w *window) lookAgain() {
	if w.mouse != nil {
		w.mouse.Again()
	}
}

// onFirstPicture does something while the first picture is being painted.
func (w *window) onFirstPicture(do func()) {
	done := false
	dot := canvas.NewRaster(func(int, int) image.Image {
		if !done {
			done = true
			do()
		}
		return image.NewRGBA(image.Rect(0, 0, 1, 1))
	})
	dot.Resize(fyne.NewSize(1, 1))
	w.ready.Add(dot)
}

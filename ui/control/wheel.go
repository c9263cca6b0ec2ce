package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// wheel lies over an entry and gives the mouse's wheel to what scrolls around it.
// The toolkit's own entry keeps it for a text that has nothing to scroll, so that a
// column of entries could only be scrolled between them.
type wheel struct {
	widget.BaseWidget
	entry *Entry
}

func newWheel(e *Entry) *wheel {
	w := &wheel{entry: e}
	w.ExtendBaseWidget(w)
	return w
}

// Scrolled hands the wheel on.
func (w *wheel) Scrolled(e *fyne.ScrollEvent) {
	scrolls, _ := w.entry.frame.around(w.entry)
	if n := len(scrolls); n > 0 {
		scrolls[n-1].Scrolled(e)
	}
}

// CreateRenderer makes the widget's renderer: nothing is seen of it.
func (w *wheel) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewWithoutLayout())
}

// CreateRenderer makes the widget's renderer: the toolkit's, and the wheel's on top.
func (e *Entry) CreateRenderer() fyne.WidgetRenderer {
	r := &entryRenderer{WidgetRenderer: e.Entry.CreateRenderer()}
	if !e.MultiLine {
		r.wheel = newWheel(e)
	}
	return r
}

type entryRenderer struct {
	fyne.WidgetRenderer
	wheel *wheel // nil over a text of several lines, which scrolls itself
}

func (r *entryRenderer) Layout(size fyne.Size) {
	r.WidgetRenderer.Layout(size)
	if r.wheel != nil {
		r.wheel.Resize(size)
	}
}

func (r *entryRenderer) Objects() []fyne.CanvasObject {
	objects := r.WidgetRenderer.Objects()
	if r.wheel != nil {
		return append(objects[:len(objects):len(objects)], r.wheel)
	}
	return objects
}

package ui

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/ui/coach"
	"example.org/castwright/ui/keys"
	"fyne.io/fyne/v2"
)

// The steps that a first job teaches, by the names that the settings keep.
const (
	lessonSize   = "size"
	lessonSink   = "sink"
	lessonFinish = "finish"
	lessonShow   = "show"
)

// nounMiddle is how far from its left end a noun of the parts row has its middle, in
// points.
const nounMiddle = 56

// newCoach is who shows a maker's first steps on the drawing.
func (w *window) newCoach() *coach.Coach {
	below := func(id keys.ID) func() (coach.Place, bool) {
		return func() (coach.Place, bool) {
			noun := w.parts.Noun(id)
			at, ok := w.onDrawing(noun)
			if ok { // its picture and its word stand at its left
				at.X += fyne.Min(0, nounMiddle-noun.Size().Width/2)
			}
			return coach.Place{At: fyne.NewPos(at.X, w.onNotes(w.board).Y), Side: coach.Below, Room: w.coach.Object.Size()}, ok
		}
	}
	steps := []coach.Step{
		{ID: lessonSize, Lines: []string{"Drag an edge or a corner,", "or click a number and type it."},
			Done:  coach.Changed(func(d design.Design) design.Outline { return d.Outline }),
			Where: w.frontEdge},
		{ID: lessonSink, Lines: []string{"Pick a sink here,", "then click where it goes."},
			Done:  func(start, now design.Design) bool { return len(now.Sinks) > len(start.Sinks) },
			Where: below(keys.PartSink)},
		{ID: lessonFinish, Lines: []string{"Choose colour and polish", "under Finish."},
			Done: coach.Changed(func(d design.Design) design.Finish { return d.Finish }),
			Where: func() (coach.Place, bool) {
				at, ok := below(keys.PartFinish)()
				// It lies over the head of the panel, which is read while something is selected.
				return at, ok && len(w.session.Selection()) == 0
			}},
		{ID: lessonShow, Lines: []string{"Turn the screen round: this shows", "the top alone to your client (F12)."},
			After: []string{lessonSize, lessonSink, lessonFinish},
			Where: func() (coach.Place, bool) {
				at, ok := w.onDrawing(w.strip.Button(keys.Showing))
				room := w.drawingRoom()
				return coach.Place{At: fyne.NewPos(at.X, room.Height), Side: coach.Above, Room: room}, ok
			}},
	}
	c := coach.New(w.session, w.frame, steps, w.settings.Learned, w.board.Resting, func(learned []string) {
		w.settings.Learned = learned
		w.settings.Save()
	})
	w.board.OnMoved(c.Look)
	return c
}

// onDrawing is the middle of a thing, relative to what the notes lie on.
func (w *window) onDrawing(o fyne.CanvasObject) (at fyne.Position, ok bool) {
	if o == nil || !o.Visible() || w.covered() {
		return at, false
	}
	size := o.Size()
	return w.onNotes(o).AddXY(size.Width/2, size.Height/2), true
}

// onNotes is the corner of a thing, relative to what the notes lie on.
func (w *window) onNotes(o fyne.CanvasObject) fyne.Position {
	d := fyne.CurrentApp().Driver()
	return d.AbsolutePositionForObject(o).Subtract(d.AbsolutePositionForObject(w.coach.Object))
}

// drawingRoom is the drawing's far corner, relative to what the notes lie on.
func (w *window) drawingRoom() fyne.Size {
	at, size := w.onNotes(w.board), w.board.Size()
	return fyne.NewSize(at.X+size.Width, at.Y+size.Height)
}

// frontEdge is a place on the front edge of the top, with room for a note behind it.
func (w *window) frontEdge() (coach.Place, bool) {
	box := w.session.Report().Solid.Outline.Bounds()
	if box.Empty() || w.covered() {
		return coach.Place{}, false
	}
	p := w.board.View().Point(geom.Vec{X: box.Centre().X, Y: box.Min.Y})
	at := w.onNotes(w.board).AddXY(float32(p.X), float32(p.Y))
	return coach.Place{At: at, Side: coach.Above, Room: w.drawingRoom()}, true
}

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

// newCoach is who shows a maker's first steps on the drawing.
func (w *window) newCoach() *coach.Coach {
	below := func(id keys.ID) func() (fyne.Position, coach.Side, bool) {
		return func() (fyne.Position, coach.Side, bool) {
			at, ok := w.onBoard(w.parts.Noun(id))
			// A noun may stand further right than the drawing reaches.
			return fyne.NewPos(fyne.Min(at.X, w.board.Size().Width-1), 0), coach.Below, ok
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
			Done:  coach.Changed(func(d design.Design) design.Finish { return d.Finish }),
			Where: below(keys.PartFinish)},
		{ID: lessonShow, Lines: []string{"Turn the screen round: this shows", "the top alone to your client (F12)."},
			After: []string{lessonSize, lessonSink, lessonFinish},
			Where: func() (fyne.Position, coach.Side, bool) {
				at, ok := w.onBoard(w.strip.Button(keys.Showing))
				return fyne.NewPos(at.X, w.board.Size().Height), coach.Above, ok
			}},
	}
	c := coach.New(w.session, w.frame, steps, w.settings.Learned, w.board.Resting, func(learned []string) {
		w.settings.Learned = learned
		w.settings.Save()
	})
	w.board.OnMoved(c.Place)
	return c
}

// onBoard is the middle of a thing, relative to the drawing.
func (w *window) onBoard(o fyne.CanvasObject) (at fyne.Position, ok bool) {
	if o == nil || !o.Visible() || w.covered() {
		return at, false
	}
	d := fyne.CurrentApp().Driver()
	size := o.Size()
	at = d.AbsolutePositionForObject(o).AddXY(size.Width/2, size.Height/2)
	return at.Subtract(d.AbsolutePositionForObject(w.board)), true
}

// frontEdge is a place on the front edge of the top, with room for a note behind it.
func (w *window) frontEdge() (at fyne.Position, side coach.Side, ok bool) {
	box := w.session.Report().Solid.Outline.Bounds()
	if box.Empty() || w.covered() {
		return at, coach.Above, false
	}
	p := w.board.View().Point(geom.Vec{X: box.Centre().X, Y: box.Min.Y})
	return fyne.NewPos(float32(p.X), float32(p.Y)), coach.Above, true
}

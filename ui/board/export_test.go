package board

import (
	"image"
	"time"

	"fyne.io/fyne/v2"
)

// Draw makes the board's picture as the toolkit asks for it.
func (b *Board) Draw(w, h int) image.Image { return b.draw(w, h) }

// BaseDraws is how often the base has been drawn.
func (b *Board) BaseDraws() int { return b.picture.baseDraws }

// SetClock sets the clock by which double clicks are told.
func (b *Board) SetClock(now func() time.Time) { b.now = now }

// LabelOf is where the label of a measure was drawn, in points, when the
// picture has one pixel to the point.
func (b *Board) LabelOf(field string) (fyne.Position, bool) {
	for _, l := range b.picture.over.labels {
		if l.field == field {
			c := l.box.Centre()
			return fyne.NewPos(float32(c.X), float32(c.Y)), true
		}
	}
	return fyne.Position{}, false
}

// Stale makes the next picture draw its base anew.
func (b *Board) Stale() { b.picture.redo = true }

// Patched reports whether only a part of the base was drawn last.
func (b *Board) Patched() bool { return b.picture.patched }

// Base is the base picture.
func (b *Board) Base() *image.RGBA { return b.picture.base }

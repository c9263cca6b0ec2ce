package board

import (
	"example.org/castwright/model/scene"
	"image"
	"image/color"
	"time"

	"example.org/castwright/ui/view"
	"fyne.io/fyne/v2"
)

// Draw makes the board's picture as the toolkit asks for it.
func (b *Board) Draw(w, h int) image.Image { return b.draw(w, h) }

// BaseDraws is how often the base has been drawn.
func (b *Board) BaseDraws() int { return b.picture.baseDraws }

// SetClock sets the clock by which double clicks are told.
func (b *Board) SetClock(now func() time.Time) { b.now = now }

// SetTicks sets who ticks before each picture until it is stopped.
func (b *Board) SetTicks(ticks func(tick func()) (stop func())) { b.ticks = ticks }

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
func (b *Board) Stale() { b.picture.whole = true }

// Patched reports whether only a part of the base was drawn last.
func (b *Board) Patched() bool { return b.picture.patched }

// Fine has gestures drawn as finely as what rests.
func (b *Board) Fine() { b.fine = true }

// Base is the base picture.
func (b *Board) Base() *image.RGBA { return b.picture.base }

// Held is how many bytes its pictures take.
func (b *Board) Held() (n int) {
	for _, img := range []*image.RGBA{b.picture.frame, b.picture.base, b.picture.spare, b.picture.over.brush.img} {
		if img != nil {
			n += len(img.Pix)
		}
	}
	return n
}

// TestGround is the ground that [MoveOnto] lays.
var TestGround = color.RGBA{1, 2, 3, 0xff}

// MoveOnto moves a picture of one view to another.
func MoveOnto(dst, src *image.RGBA, v, of view.View) {
	moveOnto(dst, src, v, of, tintOf(1, 2, 3, 0xff))
}

// DimensionSaying is where one of the dimensions around the top has its number,
// when the picture has one pixel to the point.
func (b *Board) DimensionSaying(text string) (fyne.Position, bool) {
	for _, item := range b.picture.was.dims {
		if t, ok := item.(scene.Text); ok && t.Text == text {
			c := textBox(t, 0).Centre()
			return fyne.NewPos(float32(c.X), float32(c.Y)), true
		}
	}
	return fyne.Position{}, false
}

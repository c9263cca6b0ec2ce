package board

import (
	"time"

	"example.org/castwright/model/geom"
	"example.org/castwright/ui/view"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// autoscroll moves the paper under a hand that reaches for what lies beyond the
// board's edge with something in it: the faster, the further the mouse is past a
// strip along the edge, and by the time that goes by, not by the number of
// pictures. A hand that took hold within the strip has to go nearer to the edge
// first; one without a button down has to rest there.
type autoscroll struct {
	at    geom.Vec   // where the mouse is, points
	strip view.Edges // how wide the strip is at each edge, points
	since time.Time  // when the mouse came into the strip
	last  time.Time  // when the paper was moved last
	stop  func()     // ends the ticks; nil while there are none
}

// The strip along the edge in points, and how fast the paper goes: common
// practice, no source; tried by hand.
const (
	scrollStrip = 28
	scrollGain  = 16  // points a second for each point past the strip
	scrollMost  = 900 // points a second
	scrollRest  = 400 * time.Millisecond
	scrollStep  = 50 * time.Millisecond // the most that one step makes up for
)

// reachFrom says that the mouse has taken hold, or come onto the board, at a
// point.
func (b *Board) reachFrom(p fyne.Position) {
	at := geom.Vec{X: float64(p.X), Y: float64(p.Y)}
	b.scroll.strip = b.view.Edges(at).Within(scrollStrip)
	b.reachTo(p)
}

// reachTo says that the mouse is at a point: the paper begins to move, or stops.
func (b *Board) reachTo(p fyne.Position) {
	a := &b.scroll
	a.at = geom.Vec{X: float64(p.X), Y: float64(p.Y)}
	a.strip = a.strip.Furthest(b.view.Edges(a.at).Within(scrollStrip))
	switch {
	case !b.reaches():
		b.stopScroll()
	case a.stop == nil:
		a.since, a.last = b.now(), b.now()
		a.stop = b.ticks(b.scrollOn)
	}
}

// reaches reports whether the mouse is past the strip with something in hand.
func (b *Board) reaches() bool {
	if b.scroll.speed(b.view) == (geom.Vec{}) || b.w.Canvas().Overlays().Top() != nil {
		return false
	}
	if b.press.active {
		return b.press.button == desktop.MouseButtonPrimary && !b.press.pan && !b.press.free && !b.press.label &&
			b.hand.Dragging()
	}
	return b.hand.Carrying()
}

// speed is how fast the hand goes over the paper, in points a second.
func (a *autoscroll) speed(v view.View) geom.Vec {
	by := v.Edges(a.at).Past(a.strip).Mul(scrollGain)
	if n := by.Norm(); n > scrollMost {
		by = by.Mul(scrollMost / n)
	}
	return by
}

// scrollOn is a tick.
func (b *Board) scrollOn() {
	a := &b.scroll
	if a.stop == nil {
		return // a tick that was under way
	}
	if !b.reaches() {
		b.stopScroll()
		return
	}
	now := b.now()
	step := min(now.Sub(a.last), scrollStep)
	a.last = now
	if step <= 0 || b.late != nil && b.late() || !b.press.active && now.Sub(a.since) < scrollRest {
		return
	}
	b.view = b.view.Pan(a.speed(b.view).Mul(-step.Seconds()))
	b.hand.Move(b.pointer(fyne.NewPos(float32(a.at.X), float32(a.at.Y))))
	b.after()
}

// stopScroll leaves the paper where it is.
func (b *Board) stopScroll() {
	if b.scroll.stop != nil {
		b.scroll.stop()
		b.scroll.stop = nil
	}
}

// ticksOf calls tick before each picture until it is stopped.
func ticksOf(tick func()) (stop func()) {
	run := fyne.NewAnimation(time.Second, func(float32) { tick() })
	run.RepeatCount = fyne.AnimationRepeatForever
	run.Start()
	return run.Stop
}

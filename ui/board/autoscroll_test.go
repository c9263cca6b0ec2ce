package board_test

import (
	"math"
	"testing"
	"time"

	"example.org/castwright/model/geom"
	"example.org/castwright/ui/board"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// ticker is a loop of pictures by the desk's clock.
type ticker struct {
	*desk
	tick  func()
	begun int
}

// newTicker is a desk whose pictures are counted, zoomed in so that the top goes
// beyond the board: the left end of the top is seen.
func newTicker(t *testing.T) *ticker {
	k := &ticker{desk: newDesk(t, plain())}
	k.b.SetTicks(func(tick func()) func() {
		if k.tick != nil {
			t.Error("two tickers at once")
		}
		k.tick, k.begun = tick, k.begun+1
		return func() { k.tick = nil }
	})
	for range 5 {
		k.b.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: k.pos(0, 250)},
			Scrolled: fyne.Delta{DY: 25}})
	}
	return k
}

// run lets pictures go by, a sixtieth of a second each.
func (k *ticker) run(d time.Duration) {
	const frame = time.Second / 60
	for range int(d / frame) {
		k.clock = k.clock.Add(frame)
		if k.tick != nil {
			k.tick()
		}
	}
}

// left is the place of the design at the board's left edge.
func (k *ticker) left() float64 { return k.b.View().Visible().Min.X }

func (k *ticker) dragTo(p fyne.Position) {
	k.b.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: p}})
}

const button = desktop.MouseButtonPrimary

// TestAutoscrollMovesWhatIsDragged drags a sink to the right edge and waits: the
// paper goes by under it, and the sink goes along.
func TestAutoscrollMovesWhatIsDragged(t *testing.T) {
	k := newTicker(t)
	undo := k.s.UndoName()
	start := k.pos(400, 250)
	k.press(start, button)
	k.pull(start, fyne.NewPos(500, 300), button)
	k.run(time.Second)
	if k.begun != 0 {
		t.Fatal("the paper moves under a mouse in the middle")
	}
	before := k.left()
	k.dragTo(fyne.NewPos(990, 300))
	k.run(time.Second / 2)
	after := k.left()
	if after <= before {
		t.Fatalf("the paper did not move: left edge at %g, then %g mm", before, after)
	}
	at := vec(k.s.Design().Sinks[0].At)
	under := k.b.View().Design(geom.Vec{X: 990, Y: 300})
	if math.Abs(at.X-under.X) > 30 {
		t.Errorf("the sink is at %v, the mouse at %v", at, under)
	}

	k.dragTo(fyne.NewPos(900, 300))
	if k.tick != nil {
		t.Error("the paper goes on when the mouse has come back")
	}
	k.dragTo(fyne.NewPos(1010, 300)) // beyond the edge, as the toolkit tells
	if k.tick == nil {
		t.Error("the paper does not move again")
	}
	k.b.DragEnd()
	if k.tick != nil {
		t.Error("a ticker is left behind when the button is up")
	}
	k.s.Undo()
	k.want()
	if got := k.s.UndoName(); got != undo {
		t.Errorf("one undo leaves %q, want %q", got, undo)
	}
}

// TestAutoscrollIsProportional holds the speed to the distance and to the time,
// whatever the number of pictures.
func TestAutoscrollIsProportional(t *testing.T) {
	gone := func(x float32, frames int) float64 {
		k := newTicker(t)
		p := k.pos(400, 250)
		k.press(p, button)
		k.pull(p, fyne.NewPos(500, 300), button)
		k.dragTo(fyne.NewPos(x, 300))
		before := k.left()
		for range frames {
			k.clock = k.clock.Add(600 * time.Millisecond / time.Duration(frames))
			k.tick()
		}
		return (k.left() - before) * k.b.View().Scale
	}
	slow, fast := gone(979, 36), gone(986, 36) // 7 and 14 points into the strip of 28
	if math.Abs(fast-2*slow) > 0.5 {
		t.Errorf("twice as far past the strip the paper goes %g instead of %g points", fast, 2*slow)
	}
	if few := gone(979, 18); math.Abs(few-slow) > 0.5 {
		t.Errorf("in half as many pictures the paper goes %g instead of %g points", few, slow)
	}
	if far, further := gone(1500, 36), gone(9000, 36); math.Abs(far-further) > 0.5 {
		t.Errorf("the speed has no bound: %g and %g points", far, further)
	}
}

// TestAutoscrollAfterAPressAtTheEdge leaves the paper alone while what was taken
// near the edge is not dragged nearer to it.
func TestAutoscrollAfterAPressAtTheEdge(t *testing.T) {
	k := newTicker(t)
	k.b.Put(board.Put{})
	p := k.pos(400, 250)
	// Shift the paper until the sink's middle is 10 points from the right edge.
	for range 40 {
		if p = k.pos(400, 250); p.X >= 980 {
			break
		}
		k.press(fyne.NewPos(500, 600), desktop.MouseButtonTertiary)
		k.b.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(500+min(100, 985-p.X), 600)}})
		k.b.DragEnd()
	}
	p = k.pos(400, 250)
	if p.X < 975 || p.X > 995 {
		t.Fatalf("the sink is at %v of the board", p)
	}
	k.press(p, button)
	k.b.MouseMoved(mouse(p.AddXY(0, 1), button))
	k.dragTo(p.AddXY(0, 60))
	k.dragTo(p.AddXY(-5, 60))
	if k.tick != nil {
		t.Error("the paper moves though the mouse goes along the edge")
	}
	k.dragTo(p.AddXY(4, 60))
	if k.tick == nil {
		t.Error("the paper does not move though the mouse goes to the edge")
	}
	k.b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	k.run(time.Second / 10)
	if k.tick != nil {
		t.Error("the paper moves after Esc")
	}
	k.want()
	k.b.DragEnd()
}

// TestAutoscrollOfAFrame draws a frame over more than the board shows.
func TestAutoscrollOfAFrame(t *testing.T) {
	k := newTicker(t)
	start := k.pos(180, 430) // on the bare face
	k.press(start, button)
	k.pull(start, fyne.NewPos(990, 690), button)
	k.run(3 * time.Second)
	k.b.DragEnd()
	if k.tick != nil {
		t.Error("a ticker is left behind")
	}
	if sel := k.s.Selection(); len(sel) != 1 || sel[0].Part != "sink-1" {
		t.Errorf("the frame selects %v, want the sink", sel)
	}
	k.want()
}

// TestAutoscrollOfAStroke draws a river by hand that is longer than the board.
func TestAutoscrollOfAStroke(t *testing.T) {
	k := newTicker(t)
	k.b.SetTool(board.Freehand)
	start := k.pos(20, 50)
	seen := k.b.View().Visible().Max.X
	k.press(start, button)
	k.pull(start, fyne.NewPos(992, start.Y), button)
	k.run(time.Second / 2)
	k.b.DragEnd()
	if k.tick != nil {
		t.Error("a ticker is left behind")
	}
	d := k.s.Design()
	if len(d.Channels) != 1 {
		t.Fatalf("%d channels, want 1: %s", len(d.Channels), k.hint)
	}
	nodes := d.Channels[0].Rivers[0].Nodes
	if end := vec(nodes[len(nodes)-1].At).X; end <= seen {
		t.Errorf("the river ends at %g mm, within what was seen at its start, %g", end, seen)
	}
	k.s.Undo()
	k.want()
}

// TestAutoscrollOfAPoint sets a point of an outline where the board did not reach:
// without a button the mouse has to rest at the edge first.
func TestAutoscrollOfAPoint(t *testing.T) {
	k := newTicker(t)
	k.b.SetTool(board.Outline)
	k.b.MouseIn(mouse(fyne.NewPos(2, 300), 0))
	k.hover(fyne.NewPos(3, 300))
	if k.tick != nil {
		t.Error("the paper moves before there is a point")
	}
	k.click(fyne.NewPos(300, 300))
	before := k.left()
	k.hover(fyne.NewPos(990, 300))
	k.run(time.Second / 3)
	if k.left() != before {
		t.Error("the paper moves under a mouse that has only come by")
	}
	k.run(time.Second)
	if k.left() <= before {
		t.Error("the paper does not move under a mouse that rests at the edge")
	}
	k.b.MouseOut()
	if k.tick != nil {
		t.Error("the paper moves when the mouse is elsewhere")
	}
	k.b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	k.want()
}

// TestAutoscrollAsideOfTheWork leaves the paper alone when nothing is in hand:
// the paper itself, a number of the drawing, a click.
func TestAutoscrollAsideOfTheWork(t *testing.T) {
	k := newTicker(t)
	k.hover(fyne.NewPos(995, 300))
	k.run(time.Second)
	k.b.SetTool(board.Pan)
	p := fyne.NewPos(500, 300)
	k.press(p, button)
	k.pull(p, fyne.NewPos(995, 300), button)
	k.run(time.Second)
	k.b.DragEnd()
	if k.begun != 0 {
		t.Error("the paper moves by itself with nothing in hand")
	}
	k.want()
}

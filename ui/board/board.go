// Package board is the canvas in the middle of the window: the top to scale, and
// what the hand does to it. It turns the toolkit's events into those of package
// tool and draws one picture: a base that changes with the design, the view and
// the size, and over it what is in hand.
package board

import (
	"example.org/castwright/model/design"
	"math"
	"time"

	"example.org/castwright/model/geom"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/tool"
	"example.org/castwright/ui/view"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Tool is what a press on the board means; see package tool.
type Tool = tool.Tool

// The tools.
const (
	Select  = tool.Select
	Pan     = tool.Pan
	Outline = tool.Outline
	River   = tool.River
	Region  = tool.Region
	Glass   = tool.Glass
	Support = tool.Support
	Through = tool.Through

	Freehand = tool.Freehand
	Brush    = tool.Brush
	Eraser   = tool.Eraser
	Bank     = tool.Bank
	Flood    = tool.Flood
)

// Put is a new part to be placed; see [Board.Put].
type Put = tool.Put

// Show says what the base picture holds besides the top.
type Show struct {
	Dimensions bool // overall dimensions
	Textures   bool // of concrete, stone and glass; else plain colours
	Supports   bool // dashed below the top
	Grid       bool // that the snap holds
}

// Board is the widget. It belongs to the main goroutine.
type Board struct {
	widget.BaseWidget
	s    *session.Session
	w    fyne.Window
	hand *tool.Hand

	view    view.View
	fitted  bool // the view is that of Fit, and follows the size
	show    Show
	raster  *canvas.Raster
	zoom    *zoomBar
	picture picture

	press    press
	last     click
	space    bool // held: a press moves the paper
	held     tool.Mod
	number   bool // the mouse is on a number that can be typed
	keyboard bool // the focus came by the keyboard: it is shown
	flash    *flash
	scroll   autoscroll

	hint   string
	onHint func(string)
	onKey  func(*fyne.KeyEvent)
	onMove func()
	now    func() time.Time
	ticks  func(tick func()) (stop func()) // before each picture
	acted  func() (fyne.Position, bool)    // see [Board.Acted]
	late   func() bool                     // see [Board.Late]

	background func(work func() (then func())) // nil to do it at once
	fine       bool                            // gestures are drawn as finely as the rest, for tests
}

// New is a board on a session, in a window.
func New(s *session.Session, w fyne.Window) *Board {
	b := &Board{
		s: s, w: w, hand: tool.New(s), view: view.New(1, 1), fitted: true, now: time.Now, ticks: ticksOf,
		show: Show{Dimensions: true, Textures: true, Supports: true},
	}
	b.raster = canvas.NewRaster(b.draw)
	b.zoom = newZoomBar(b)
	b.ExtendBaseWidget(b)
	s.OnChange(b.changed)
	return b
}

// changed redraws after a change of the session.
func (b *Board) changed(c session.Change) {
	if c.Design || c.Option || c.Job {
		b.picture.now++
		b.picture.foreign = b.picture.foreign || c.Option
		if c.Option && (c.Job || !b.mostlySeen()) { // another job, or an option that lies elsewhere
			b.Fit()
		}
		b.keepInSight()
	}
	b.after()
}

// keepInSight fits the view again when what it showed has grown out of it, but
// never under a hand that holds something. A view chosen by hand is left alone
// as long as it shows anything of the top.
func (b *Board) keepInSight() {
	if b.press.active || b.hand.Busy() {
		return
	}
	all, seen := b.extent(), b.view.Visible()
	inside := seen.Grow(-b.view.Length(inSight))
	if b.fitted && !(inside.Contains(all.Min) && inside.Contains(all.Max)) || !meet(all, seen) {
		b.Fit()
	}
}

// mostlySeen reports whether the view shows at least half of what is drawn, or
// is filled by it to at least half.
func (b *Board) mostlySeen() bool {
	all, seen := b.extent(), b.view.Visible()
	both := geom.Box{
		Min: geom.Vec{X: math.Max(all.Min.X, seen.Min.X), Y: math.Max(all.Min.Y, seen.Min.Y)},
		Max: geom.Vec{X: math.Min(all.Max.X, seen.Max.X), Y: math.Min(all.Max.Y, seen.Max.Y)},
	}
	area := func(b geom.Box) float64 { return b.W() * b.H() }
	return !both.Empty() && 2*area(both) >= math.Min(area(all), area(seen))
}

// meet reports whether two boxes have a point in common.
func meet(a, b geom.Box) bool {
	return a.Min.X <= b.Max.X && b.Min.X <= a.Max.X && a.Min.Y <= b.Max.Y && b.Min.Y <= a.Max.Y
}

// SetTool takes another tool.
func (b *Board) SetTool(t Tool) {
	b.hand.SetTool(t)
	b.focus()
	b.after()
}

// TogglePan takes the tool that moves the paper, or puts it back.
func (b *Board) TogglePan() {
	if b.Tool() == Pan {
		b.SetTool(Select)
	} else {
		b.SetTool(Pan)
	}
}

// Beneath selects what lies under what is selected or under the mouse, and
// reports whether there is anything.
func (b *Board) Beneath() bool {
	found := b.hand.Beneath()
	b.after()
	return found
}

// Remove takes away what is selected, as the key on the board does, and reports
// whether there was anything.
func (b *Board) Remove() bool {
	done := b.hand.Key(tool.KeyDelete, 0)
	b.after()
	return done
}

// Note says something in the hint's place until the next press or change.
func (b *Board) Note(words string) {
	b.hand.Note(words)
	b.after()
}

// Tool is the tool in use.
func (b *Board) Tool() Tool { return b.hand.Tool() }

// Put takes a new part in hand: it follows the mouse as a ghost until a click
// sets it down; Esc backs out.
func (b *Board) Put(p Put) {
	b.hand.Put(p)
	b.focus()
	b.after()
}

// SetStock says what newly drawn rivers, glass beds and supports start from.
func (b *Board) SetStock(s tool.Stock) { b.hand.SetStock(s) }

// SetRounding says which step the snap rounds to.
func (b *Board) SetRounding(r tool.Rounding) {
	b.hand.SetRounding(r)
	b.after()
}

// Rounding is which step the snap rounds to.
func (b *Board) Rounding() tool.Rounding { return b.hand.Rounding() }

// Background sets who does a work off the main goroutine, and then on it what the
// work gives back. Without it all is drawn at once.
func (b *Board) Background(run func(work func() (then func()))) { b.background = run }

// Busy reports whether a gesture is open: a drag, or a number being typed.
func (b *Board) Busy() bool { return b.hand.Busy() }

// Dragging reports whether something is being dragged.
func (b *Board) Dragging() bool { return b.press.active || b.hand.Dragging() }

// BackOut takes an open gesture back. Call it before undo, save and whatever
// else needs a settled design.
func (b *Board) BackOut() {
	b.hand.BackOut()
	b.after()
}

// Settle keeps what keys have in hand: nudges, and a typed number that can be
// used; an open drag stays open.
func (b *Board) Settle() {
	b.hand.Settle()
	b.after()
}

// SetShow says what the base picture holds.
func (b *Board) SetShow(s Show) {
	b.show = s
	b.picture.now++
	b.after()
}

// Shown is what the base picture holds.
func (b *Board) Shown() Show { return b.show }

// OnHint sets who hears what the next click or key does, in words.
func (b *Board) OnHint(f func(string)) {
	b.onHint = f
	b.hint = ""
	b.after()
}

// OnMoved sets who hears that the view or what is in hand may have changed.
func (b *Board) OnMoved(f func()) { b.onMove = f }

// Resting reports whether the hand rests: nothing is drawn, set down, dragged or
// typed.
func (b *Board) Resting() bool {
	return !b.press.active && b.hand.Tool() == Select && b.hand.Idle() && !b.hand.Busy()
}

// OnKey sets who hears the keys that mean nothing on the board.
func (b *Board) OnKey(f func(*fyne.KeyEvent)) { b.onKey = f }

// ZoomIn zooms in by a step about the middle.
func (b *Board) ZoomIn() { b.zoomBy(b.middle(), zoomStep) }

// ZoomOut zooms out by a step about the middle.
func (b *Board) ZoomOut() { b.zoomBy(b.middle(), 1/zoomStep) }

// ZoomActual shows the top at its own size on a screen of 96 points to the inch.
func (b *Board) ZoomActual() { b.look(b.view.Actual()) }

// Fit shows the whole top; the view follows the window's size until it is
// zoomed or moved.
func (b *Board) Fit() {
	b.fitted = true
	b.setView(b.wholeTop())
}

// wholeTop is the view that shows the whole top.
func (b *Board) wholeTop() view.View {
	return b.view.Fit(b.extent(), max(fitMargin, fitShare*b.view.W))
}

// Reveal brings a place of the design into sight.
func (b *Board) Reveal(at geom.Vec) {
	if v := b.view.Show(at, placeMargin); v != b.view {
		b.look(v)
	}
}

// Point shows which part something else on the window speaks of, "" for none.
func (b *Board) Point(part design.ID) {
	b.hand.Point(part)
	b.after()
}

// Place brings a place of the design into sight and flashes it.
func (b *Board) Place(at geom.Vec) {
	if v := b.view.Show(at, placeMargin); v != b.view {
		b.look(v)
	}
	b.startFlash(at)
}

// Geometry is where the board and the design lie in the window.
type Geometry struct {
	X, Y, W, H float64  // the board, in pixels of the window
	PerMM      float64  // pixels to the millimetre
	Origin     geom.Vec // the pixel of the design's (0, 0)
}

// Geometry is where the board and the design lie in the window as it is now.
func (b *Board) Geometry() Geometry {
	c := b.w.Canvas()
	pos := fyne.CurrentApp().Driver().AbsolutePositionForObject(b)
	x, y := c.PixelCoordinateForPosition(pos)
	w, h := c.PixelCoordinateForPosition(pos.Add(b.Size()))
	g := Geometry{X: float64(x), Y: float64(y), W: float64(w - x), H: float64(h - y)}
	px := b.view.Pixels(g.W / b.view.W)
	g.PerMM = px.Scale
	g.Origin = px.Origin.Add(geom.Vec{X: g.X, Y: g.Y})
	return g
}

// View is how the board looks at the top, in points.
func (b *Board) View() view.View { return b.view }

const (
	zoomStep    = 1.25
	fitMargin   = 84   // room for the dimensions, points
	fitShare    = 0.06 // of the width at least: a hand that draws an edge out has room on a large screen too
	inSight     = 24   // a fitted view is fitted again when less room than this is left
	placeMargin = 60
)

func (b *Board) middle() geom.Vec { return geom.Vec{X: b.view.W / 2, Y: b.view.H / 2} }

func (b *Board) zoomBy(at geom.Vec, factor float64) { b.look(b.view.Zoom(at, factor)) }

// look takes another view, chosen by hand.
func (b *Board) look(v view.View) {
	b.fitted = false
	b.setView(v)
}

func (b *Board) setView(v view.View) {
	b.view = v
	b.hand.SetScale(v.Scale)
	b.after()
}

// extent is all that is drawn: outline, bowls and supports; for an empty design
// a counter's size.
func (b *Board) extent() geom.Box {
	s := b.s.Report().Solid
	box := s.Outline.Bounds()
	for _, k := range s.Bowls {
		box = box.Union(k.Loop.Bounds())
	}
	if b.show.Supports {
		for _, k := range s.Bearings {
			for _, l := range k.Loops {
				box = box.Union(l.Bounds())
			}
		}
	}
	if box.Empty() {
		box = geom.Box{Max: geom.Vec{X: 1500, Y: 600}}
	}
	return box
}

// after tells the hint and redraws, as after every event.
func (b *Board) after() {
	b.tell(b.hand.Hint())
	b.zoom.follow(b.hand.Tool())
	b.raster.Refresh()
	if b.onMove != nil {
		b.onMove()
	}
}

func (b *Board) tell(hint string) {
	if hint == b.hint {
		return
	}
	b.hint = hint
	if b.onHint != nil {
		b.onHint(hint)
	}
}

// focus takes the keyboard.
func (b *Board) focus() {
	if c := b.w.Canvas(); c != nil && c.Focused() != b {
		c.Focus(b)
	}
	b.keyboard = false
}

// MinSize is the least that a top can be worked on.
func (b *Board) MinSize() fyne.Size { return fyne.NewSize(240, 180) }

// CreateRenderer makes the widget's renderer.
func (b *Board) CreateRenderer() fyne.WidgetRenderer { return &renderer{b} }

type renderer struct{ b *Board }

func (r *renderer) Destroy() {}

func (r *renderer) MinSize() fyne.Size { return r.b.MinSize() }

func (r *renderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.b.raster, r.b.zoom.box}
}

func (r *renderer) Layout(size fyne.Size) {
	r.b.raster.Resize(size)
	r.b.zoom.layout(size)
	r.b.view = r.b.view.Resize(float64(size.Width), float64(size.Height))
	if r.b.fitted {
		r.b.view = r.b.wholeTop()
	}
	r.b.hand.SetScale(r.b.view.Scale)
}

// Refresh follows the theme.
func (r *renderer) Refresh() {
	r.b.picture.now++
	r.b.picture.inked = false
	r.b.zoom.box.Refresh()
	r.b.raster.Refresh()
}

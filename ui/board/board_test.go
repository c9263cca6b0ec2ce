package board_test

import (
	"image"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/session"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/google/go-cmp/cmp"
)

const mm = units.Millimetre

// desk is a board in a test window, with the mouse's own view of events.
type desk struct {
	*testing.T
	s     *session.Session
	b     *board.Board
	w     fyne.Window
	start design.Design
	clock time.Time
	hint  string
}

func newDesk(t *testing.T, d design.Design) *desk {
	t.Helper()
	test.NewTempApp(t)
	s := session.New(design.Job{Options: []design.Option{{Name: "A", Design: d}, {Name: "B", Design: plain()}}}, "")
	k := &desk{T: t, s: s, start: d, clock: time.Unix(0, 0)}
	k.w = test.NewTempWindow(t, widget.NewLabel(""))
	k.b = board.New(s, k.w)
	k.b.SetClock(func() time.Time { return k.clock })
	k.b.OnHint(func(h string) { k.hint = h })
	k.w.SetPadded(false)
	k.w.SetContent(container.NewStack(k.b))
	k.w.Resize(fyne.NewSize(1000, 700))
	k.b.Draw(1000, 700)
	return k
}

func plain() design.Design {
	return design.Design{
		Outline:   edit.Rectangle(1200*mm, 500*mm),
		Thickness: 40 * mm,
		Sinks: []design.Sink{{ID: "sink-1", At: at(400, 250),
			Shape: design.Shape{Kind: design.ShapeCircle, Width: 300 * mm}}},
	}
}

func at(x, y float64) design.Point {
	return design.Point{X: units.FromMM(x), Y: units.FromMM(y)}
}

func vec(p design.Point) geom.Vec { return geom.Vec{X: p.X.MM(), Y: p.Y.MM()} }

// pos is where a place of the design lies on the board.
func (k *desk) pos(x, y float64) fyne.Position {
	p := k.b.View().Point(geom.Vec{X: x, Y: y})
	return fyne.NewPos(float32(p.X), float32(p.Y))
}

func mouse(p fyne.Position, b desktop.MouseButton) *desktop.MouseEvent {
	return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: p}, Button: b}
}

func (k *desk) hover(p fyne.Position) { k.b.MouseMoved(mouse(p, 0)) }

func (k *desk) press(p fyne.Position, b desktop.MouseButton) {
	k.clock = k.clock.Add(time.Second)
	k.hover(p)
	k.b.MouseDown(mouse(p, b))
}

func (k *desk) click(p fyne.Position) {
	k.press(p, desktop.MouseButtonPrimary)
	k.b.MouseUp(mouse(p, desktop.MouseButtonPrimary))
	k.b.Draw(1000, 700)
}

// pull sends what the toolkit sends for a button held and moved: a move below
// its threshold of 2 units, then drag events.
func (k *desk) pull(from, to fyne.Position, b desktop.MouseButton) {
	k.b.MouseMoved(mouse(from.AddXY(1, 0), b))
	for i := 1; i <= 4; i++ {
		p := from.Add(fyne.NewDelta((to.X-from.X)*float32(i)/4, (to.Y-from.Y)*float32(i)/4))
		k.b.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: p}})
	}
}

func (k *desk) drag(from, to fyne.Position, b desktop.MouseButton) {
	k.press(from, b)
	k.pull(from, to, b)
	k.b.MouseUp(mouse(to, b))
	k.b.DragEnd()
}

func (k *desk) want(edits ...edit.Edit) {
	k.Helper()
	want := k.start
	for _, e := range edits {
		var err error
		if want, err = e.Apply(want); err != nil {
			k.Fatalf("%s: %v", e.Name, err)
		}
	}
	if diff := cmp.Diff(want, k.s.Design()); diff != "" {
		k.Errorf("design (-want +got):\n%s", diff)
	}
}

// typeKey sends a key as the toolkit does: the key first, then its character.
func (k *desk) typeText(s string) {
	for _, r := range s {
		k.b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyName(strings.ToUpper(string(r)))})
		k.b.TypedRune(r)
	}
}

func TestDragCorner(t *testing.T) {
	k := newDesk(t, plain())
	k.drag(k.pos(1200, 500), k.pos(1320, 580), desktop.MouseButtonPrimary)
	k.want(edit.MoveNode(2, at(1320, 580)))
	if got := k.s.UndoName(); got != "Move corner" {
		t.Errorf("undo would take back %q", got)
	}
	if k.b.Busy() {
		t.Error("the hand is still busy")
	}
}

// Let go outside over nothing, the toolkit takes the focus, then ends the drag,
// and sends no release.
func TestDragEndsOutside(t *testing.T) {
	k := newDesk(t, plain())
	from := k.pos(1200, 500)
	k.press(from, desktop.MouseButtonPrimary)
	k.pull(from, k.pos(1320, 580), desktop.MouseButtonPrimary)
	k.w.Canvas().Unfocus()
	if !k.b.Busy() {
		t.Error("the loss of focus ended the drag")
	}
	k.b.DragEnd()
	k.want(edit.MoveNode(2, at(1320, 580)))
	if k.w.Canvas().Focused() != fyne.Focusable(k.b) {
		t.Error("the board did not take the focus back")
	}
	k.hover(k.pos(100, 100))
	k.want(edit.MoveNode(2, at(1320, 580)))
}

// A press whose release was lost ends at the next move without a button.
func TestLostRelease(t *testing.T) {
	k := newDesk(t, plain())
	k.press(k.pos(1200, 500), desktop.MouseButtonPrimary)
	k.b.MouseOut()
	k.hover(k.pos(900, 300))
	k.hover(k.pos(800, 300))
	k.want()
	if k.b.Busy() {
		t.Error("the hand is still busy")
	}
}

func TestClickTakesTheFocus(t *testing.T) {
	k := newDesk(t, plain())
	k.click(k.pos(400, 250))
	if k.w.Canvas().Focused() != fyne.Focusable(k.b) {
		t.Error("a press on the board does not focus it")
	}
	if diff := cmp.Diff([]session.Pick{{Part: "sink-1", Node: -1}}, k.s.Selection()); diff != "" {
		t.Errorf("selection (-want +got):\n%s", diff)
	}
}

func TestTypeInADrag(t *testing.T) {
	k := newDesk(t, plain())
	from := k.pos(1200, 500)
	k.press(from, desktop.MouseButtonPrimary)
	k.pull(from, k.pos(1320, 500), desktop.MouseButtonPrimary)
	k.typeText("1351.5")
	k.b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnter})
	k.b.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: k.pos(700, 200)}})
	k.b.DragEnd()
	k.want(edit.MoveNode(2, at(1351.5, 500)))
}

func TestEscapeInADrag(t *testing.T) {
	k := newDesk(t, plain())
	from := k.pos(1200, 500)
	k.press(from, desktop.MouseButtonPrimary)
	k.pull(from, k.pos(1320, 580), desktop.MouseButtonPrimary)
	k.b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	k.b.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: k.pos(700, 200)}})
	k.b.DragEnd()
	k.want()
	if k.s.UndoName() != "" {
		t.Errorf("history holds %q", k.s.UndoName())
	}
}

// With nothing selected the keys of the view work; with something selected the
// same characters begin a number.
func TestKeysOfTheView(t *testing.T) {
	k := newDesk(t, plain())
	fit := k.b.View()
	k.typeText("+")
	if got := k.b.View().Scale; got <= fit.Scale {
		t.Errorf("+ gives scale %g from %g", got, fit.Scale)
	}
	k.typeText("0")
	if k.b.View() != fit {
		t.Errorf("0 gives %+v, want %+v", k.b.View(), fit)
	}
	k.typeText("1")
	if got := k.b.View().Scale * 25.4; math.Abs(got-96) > 1e-6 {
		t.Errorf("1 gives %g points to the inch", got)
	}
	k.typeText("f")
	k.click(k.pos(400, 250))
	k.typeText("0")
	if !k.b.Busy() {
		t.Error("0 with a sink selected begins no number")
	}
}

func TestKeysPassedOn(t *testing.T) {
	k := newDesk(t, plain())
	var got []fyne.KeyName
	k.b.OnKey(func(e *fyne.KeyEvent) { got = append(got, e.Name) })
	k.b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyF5})
	k.b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape}) // nothing to back out of
	k.click(k.pos(400, 250))
	k.b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if diff := cmp.Diff([]fyne.KeyName{fyne.KeyF5, fyne.KeyEscape}, got); diff != "" {
		t.Errorf("keys passed on (-want +got):\n%s", diff)
	}
}

func TestZoomAtTheMouse(t *testing.T) {
	k := newDesk(t, plain())
	p := k.pos(300, 100)
	k.b.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: p}, Scrolled: fyne.Delta{DY: 25}})
	q := k.pos(300, 100)
	if d := math.Hypot(float64(p.X-q.X), float64(p.Y-q.Y)); d > 0.01 {
		t.Errorf("the place under the mouse moved by %g points", d)
	}
	nan := float32(math.NaN())
	k.b.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(nan, 0)}, Scrolled: fyne.Delta{DY: nan}})
	for range 500 {
		k.b.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: p}, Scrolled: fyne.Delta{DY: 5000}})
	}
	k.b.Draw(1000, 700)
	for range 500 {
		k.b.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: p}, Scrolled: fyne.Delta{DY: -5000}})
	}
	k.b.Draw(1000, 700)
}

func TestPan(t *testing.T) {
	for _, tt := range []struct {
		name   string
		button desktop.MouseButton
		space  bool
		tool   board.Tool
		from   [2]float64
	}{
		{"middle button on a sink", desktop.MouseButtonTertiary, false, board.Select, [2]float64{400, 250}},
		{"Space on a sink", desktop.MouseButtonPrimary, true, board.Select, [2]float64{400, 250}},
		{"the pan tool on a sink", desktop.MouseButtonPrimary, false, board.Pan, [2]float64{400, 250}},
		{"the pan tool on the ground", desktop.MouseButtonPrimary, false, board.Pan, [2]float64{-80, -80}},
		{"the pan tool on the face", desktop.MouseButtonPrimary, false, board.Pan, [2]float64{900, 250}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			k := newDesk(t, plain())
			k.b.SetTool(tt.tool)
			if tt.space {
				k.b.KeyDown(&fyne.KeyEvent{Name: fyne.KeySpace})
			}
			from := k.pos(tt.from[0], tt.from[1])
			k.drag(from, from.AddXY(60, -40), tt.button)
			to := k.pos(tt.from[0], tt.from[1])
			if math.Abs(float64(to.X-from.X)-60) > 0.01 || math.Abs(float64(to.Y-from.Y)+40) > 0.01 {
				t.Errorf("the place went from %v to %v, want 60, -40 on", from, to)
			}
			k.want()
		})
	}
}

func TestDoubleClickByTheClock(t *testing.T) {
	k := newDesk(t, plain())
	p := k.pos(700, 0)
	k.click(p)
	k.clock = k.clock.Add(-900 * time.Millisecond) // so that the next press comes 0.1 s on
	k.click(p)
	k.want(edit.InsertNode(0, at(700, 0)))

	k = newDesk(t, plain())
	k.click(p)
	k.click(p) // a second later
	k.want()
}

func TestClickOnALabelOpensItsNumber(t *testing.T) {
	k := newDesk(t, plain())
	k.click(k.pos(400, 250))
	p, ok := k.b.LabelOf("Rail in front")
	if !ok {
		t.Fatal("the rail in front of a selected sink has no label")
	}
	k.hover(p)
	if !strings.Contains(k.hint, "type a new value") {
		t.Errorf("hint over the label: %q", k.hint)
	}
	k.click(p)
	k.typeText("80")
	k.b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	k.want(edit.MovePart("sink-1", at(0, -20)))
}

func TestHints(t *testing.T) {
	k := newDesk(t, plain())
	if k.hint == "" {
		t.Error("no hint at the start")
	}
	k.b.Put(board.Put{Hole: &design.Hole{Diameter: 45 * mm}})
	k.hover(k.pos(900, 200))
	if !strings.HasPrefix(k.hint, "Click sets the drain hole down") {
		t.Errorf("hint with a hole in hand: %q", k.hint)
	}
	k.b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if strings.Contains(k.hint, "drain hole") {
		t.Errorf("hint after Esc: %q", k.hint)
	}
}

// The toolkit hands the pixels to the screen as they lie: the picture must be
// exactly as large as asked and packed tightly.
func TestPictureIsExact(t *testing.T) {
	k := newDesk(t, plain())
	for _, size := range [][2]int{{1000, 700}, {665, 333}, {1, 1}, {1300, 910}, {2000, 1400}, {1000, 700}} {
		img, ok := k.b.Draw(size[0], size[1]).(*image.RGBA)
		if !ok || img.Rect != image.Rect(0, 0, size[0], size[1]) || img.Stride != 4*size[0] || len(img.Pix) != 4*size[0]*size[1] {
			t.Errorf("%v: %T %v stride %d", size, img, img.Rect, img.Stride)
		}
	}
	for _, size := range [][2]int{{0, 0}, {-1, 5}, {1 << 30, 1 << 30}} {
		if img := k.b.Draw(size[0], size[1]); img == nil || img.Bounds().Empty() {
			t.Errorf("%v: %v", size, img)
		}
	}
}

// The base is drawn when design, view, size or theme changed, not when the mouse
// moves or something is selected.
func TestBaseIsKept(t *testing.T) {
	k := newDesk(t, plain())
	draws := func(what string, want int, do func()) {
		t.Helper()
		before := k.b.BaseDraws()
		do()
		k.b.Draw(1000, 700)
		if got := k.b.BaseDraws() - before; got != want {
			t.Errorf("%s: base drawn %d times, want %d", what, got, want)
		}
	}
	draws("hover", 0, func() { k.hover(k.pos(1200, 500)) })
	draws("selection", 0, func() { k.click(k.pos(400, 250)) })
	draws("edit", 1, func() { k.s.Do(edit.MoveNode(2, at(1300, 600))) })
	draws("zoom", 1, func() { k.b.ZoomIn() })
	draws("show", 1, func() { k.b.SetShow(board.Show{Grid: true}) })
	draws("another option", 1, func() { k.s.SetOption("B") })
}

func TestPlaceBringsIntoSight(t *testing.T) {
	k := newDesk(t, plain())
	k.b.ZoomActual()
	k.b.Place(geom.Vec{X: 1190, Y: 10})
	p := k.pos(1190, 10)
	if p.X < 0 || p.Y < 0 || p.X > 1000 || p.Y > 700 {
		t.Errorf("the place lies at %v", p)
	}
	k.b.Place(geom.Vec{X: math.NaN()})
	k.b.Draw(1000, 700)
}

func TestGeometry(t *testing.T) {
	k := newDesk(t, plain())
	g := k.b.Geometry()
	origin := k.pos(0, 0)
	if g.W != 1000 || g.H != 700 || math.Abs(g.Origin.X-float64(origin.X)-g.X) > 0.01 ||
		math.Abs(g.PerMM-k.b.View().Scale) > 1e-9 {
		t.Errorf("geometry %+v, view %+v", g, k.b.View())
	}
}

func TestFitFollowsTheSizeUntilZoomed(t *testing.T) {
	k := newDesk(t, plain())
	k.w.Resize(fyne.NewSize(600, 500))
	if p := k.pos(1200, 0); p.X > 600-60 {
		t.Errorf("after the window shrank the right corner lies at %v", p)
	}
	k.b.ZoomIn()
	scale := k.b.View().Scale
	k.w.Resize(fyne.NewSize(1000, 700))
	if k.b.View().Scale != scale {
		t.Error("a zoomed view was fitted again")
	}
}

// A view that was fitted follows a top that grows out of it, but not in a drag;
// one that does not grow out of it leaves the view alone.
func TestFitFollowsTheTop(t *testing.T) {
	k := newDesk(t, plain())
	fit := k.b.View()
	k.s.Do(edit.MovePart("sink-1", at(50, 0)))
	k.s.Do(edit.MoveEdge(1, at(20, 0)))
	if k.b.View() != fit {
		t.Error("a small change moved the view")
	}
	k.s.Do(edit.MoveEdge(1, at(900, 0)))
	if p := k.pos(2120, 0); p.X > 1000-60 {
		t.Errorf("after the top grew its right corner lies at %v", p)
	}
	k.b.ZoomIn()
	near := k.b.View()
	k.s.Do(edit.MoveEdge(1, at(900, 0)))
	if k.b.View() != near {
		t.Error("a view chosen by hand was changed")
	}
}

// A number that is typed on the drawing has the view follow too, and is told of
// wherever the mouse is.
func TestFitFollowsATypedNumber(t *testing.T) {
	k := newDesk(t, plain())
	k.b.Draw(1000, 700)
	k.s.Select(session.Pick{Node: -1})
	k.b.Draw(1000, 700)
	labels := k.b.Labels()
	if len(labels) == 0 {
		t.Fatal("the selected top has no measures")
	}
	for _, c := range "2600" {
		k.b.TypedRune(c)
	}
	k.b.Draw(1000, 700)
	v, typing := k.b.Typing()
	if !typing {
		t.Fatal("no number is being typed")
	}
	for _, l := range labels {
		k.hover(fyne.NewPos(float32(l.At.X), float32(l.At.Y)))
		if !strings.HasPrefix(k.hint, v.Name+": Enter") {
			t.Errorf("over the label of %s while the number is typed: %q", l.Name, k.hint)
		}
	}
	k.b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if w := k.s.Report().Measures.Bounds.W(); w != 2600 {
		t.Fatalf("the top is %g mm wide, want 2600", w)
	}
	if p := k.pos(2600, 0); p.X > 1000-60 {
		t.Errorf("after the width was typed the right corner lies at %v", p)
	}
}

// Designs that are empty or broken are drawn, and say how to start.
func TestOddDesigns(t *testing.T) {
	far := plain()
	far.Outline.Nodes[2].At = design.Point{X: units.MaxLength, Y: units.MaxLength}
	twisted := plain()
	twisted.Outline.Nodes[0], twisted.Outline.Nodes[1] = twisted.Outline.Nodes[1], twisted.Outline.Nodes[0]
	flat := design.Design{Outline: design.Outline{Nodes: []design.Node{{At: at(0, 0)}, {At: at(0, 0)}}}}
	for name, d := range map[string]design.Design{
		"empty": {}, "far": far, "twisted": twisted, "flat": flat,
	} {
		t.Run(name, func(t *testing.T) {
			k := newDesk(t, d)
			k.b.Fit()
			k.click(fyne.NewPos(500, 350))
			k.drag(fyne.NewPos(400, 300), fyne.NewPos(480, 330), desktop.MouseButtonPrimary)
			k.b.Draw(1000, 700)
			if name == "empty" && !strings.Contains(k.hint, "no top yet") {
				t.Errorf("hint %q", k.hint)
			}
		})
	}
}

func TestThemesAndScales(t *testing.T) {
	k := newDesk(t, plain())
	k.click(k.pos(400, 250))
	k.b.Refresh()
	one := k.b.Draw(1000, 700)
	if one.Bounds().Dx() != 1000 {
		t.Error("no picture after a refresh")
	}
	k.b.Draw(2000, 1400) // a screen of two pixels to the point
	if p, ok := k.b.LabelOf("Rail in front"); !ok || p.X < 600 {
		t.Errorf("at two pixels to the point the label lies at %v", p)
	}
}

// TestOptionInSight: an option that lies where the view hardly reaches is shown
// whole; a view that shows enough of it stays.
func TestOptionInSight(t *testing.T) {
	far := plain()
	for i := range far.Outline.Nodes {
		far.Outline.Nodes[i].At.X += 1100 * mm
	}
	far.Sinks = nil
	for name, tt := range map[string]struct {
		view func(k *desk)
		fits bool
	}{
		"zoomed to the left end": {func(k *desk) {
			at := k.pos(0, 250)
			k.b.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: at}, Scrolled: fyne.Delta{DY: 100}})
		}, true},
		"zoomed out": {func(k *desk) { k.b.ZoomOut(); k.b.ZoomOut() }, false},
	} {
		k := newDesk(t, plain())
		if err := k.s.DoJob(edit.AddOption("Far", far)); err != nil {
			t.Fatal(err)
		}
		tt.view(k)
		old := k.b.View()
		k.s.SetOption("C")
		if k.s.Option().Name != "C" || (k.b.View() != old) != tt.fits {
			t.Errorf("%s: the view of option %s went from %v to %v", name, k.s.Option().Name, old, k.b.View())
		}
	}
}

// TestDimensionsCanBeTyped: a click on a number that stands around the top opens
// it, whatever was selected.
func TestDimensionsCanBeTyped(t *testing.T) {
	d := plain()
	d.Outline.Nodes[1].Corner = design.Corner{Kind: design.CornerRounded, Size: 60 * mm}
	for text, tt := range map[string]struct {
		typed string
		want  func(d design.Design) bool
	}{
		"1200 mm": {"1300", func(d design.Design) bool { return edit.Bounds(d.Outline).W() == 1300 }},
		"500 mm":  {"550", func(d design.Design) bool { return edit.Bounds(d.Outline).H() == 550 }},
		"R 60 mm": {"45", func(d design.Design) bool { return d.Outline.Nodes[1].Corner.Size == 45*mm }},
	} {
		k := newDesk(t, d)
		at, ok := k.b.DimensionSaying(text)
		if !ok {
			t.Fatalf("no dimension says %s", text)
		}
		k.hover(at)
		if k.b.Cursor() != desktop.TextCursor || !strings.Contains(k.hint, "type") {
			t.Errorf("over %s the hint is %q", text, k.hint)
		}
		k.click(at)
		for _, r := range tt.typed {
			k.b.TypedRune(r)
		}
		k.b.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
		if !tt.want(k.s.Design()) {
			t.Errorf("%s typed for %s: %+v", tt.typed, text, k.s.Design().Outline)
		}
	}
}

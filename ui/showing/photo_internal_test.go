package showing

import (
	"context"
	"image"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/castwright/export/picture"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// shooter stands in for the renderer: it counts, and lets the hand do something in
// the middle of a picture.
type shooter struct {
	started, given, finished int
	views                    []picture.View
	qualities                []picture.Quality
	sizes                    []image.Point
	meanwhile                func()
}

func (k *shooter) take(ctx context.Context, _ *picture.Set, v picture.View, q picture.Quality, w, h int,
	show func(string, float64, *image.NRGBA)) (*image.NRGBA, error) {
	k.started++
	k.views, k.qualities, k.sizes = append(k.views, v), append(k.qualities, q), append(k.sizes, image.Pt(w, h))
	if do := k.meanwhile; do != nil {
		k.meanwhile = nil
		do()
	}
	if err := ctx.Err(); err != nil {
		k.given++
		return nil, err
	}
	k.finished++
	return image.NewNRGBA(image.Rect(0, 0, w, h)), nil
}

// shown is the page with the picture, taken by a shooter.
func shown(t *testing.T) (*Page, *shooter) {
	t.Helper()
	p, _ := rig(t)
	p.frame.Window.Resize(fyne.NewSize(800, 500))
	k := &shooter{}
	p.SetRenderer(k.take)
	p.ShowPicture()
	return p, k
}

// A picture comes as a first look, clearer, clear.
func TestStages(t *testing.T) {
	_, k := shown(t)
	if k.finished != 3 || k.qualities[0] != picture.First || k.qualities[1] != picture.Quick || k.qualities[2] != picture.Good {
		t.Errorf("%d pictures, of %v", k.finished, k.qualities)
	}
	if n := k.sizes[0].X * k.sizes[0].Y; n > firstPixels*11/10 || k.sizes[2] != image.Pt(800, 500) {
		t.Errorf("sizes %v", k.sizes)
	}
}

// A camera that moves while a clear picture is taken has that picture given up, and
// none of the old view is taken afterwards.
func TestMoveCancels(t *testing.T) {
	p, k := shown(t)
	for stage, q := range []picture.Quality{picture.Quick, picture.Good} {
		*k = shooter{}
		moved := false
		var second picture.View
		k.meanwhile = func() { // in the first look: arm the stage that is meant
			var arm func()
			arm = func() {
				if k.qualities[len(k.qualities)-1] != q {
					k.meanwhile = arm
					return
				}
				moved = true
				p.Walk(1, 0)
				second = p.photo.view
			}
			k.meanwhile = arm
		}
		p.Walk(1, 0)
		if !moved {
			t.Fatalf("stage %d was not reached: %v", stage, k.qualities)
		}
		if k.given != 1 {
			t.Errorf("moving in the middle of stage %d gave up %d pictures, want 1", stage+1, k.given)
		}
		// The new view has its three pictures; the old one got no further.
		if want := stage + 2 + 3; k.started != want {
			t.Errorf("%d pictures were begun, want %d", k.started, want)
		}
		for i, v := range k.views[stage+2:] {
			if v != second {
				t.Errorf("picture %d after the move shows %+v, want %+v", i, v, second)
			}
		}
	}
}

// A camera that moves while the first look is taken lets it be finished, and takes
// the newest view alone next, however often it moved.
func TestMoveInTheFirstLook(t *testing.T) {
	p, k := shown(t)
	*k = shooter{}
	k.meanwhile = func() {
		for range 20 {
			p.Walk(1, 0)
		}
	}
	p.Walk(1, 0)
	if k.started != 4 || k.given != 0 || k.views[1] != p.photo.view {
		t.Errorf("%d begun, %d given up, second %+v", k.started, k.given, k.views[1])
	}
}

// Leaving the picture, or showing the drawing, gives it up.
func TestLeavingCancels(t *testing.T) {
	for name, leave := range map[string]func(*Page){"closed": (*Page).Close, "drawing": (*Page).ShowDrawing} {
		p, k := shown(t)
		*k = shooter{}
		k.meanwhile = func() { k.meanwhile = func() { leave(p) } }
		p.Walk(1, 0)
		p.photo.Resize(fyne.NewSize(640, 360)) // as the window leaves the whole screen
		if k.given != 1 || k.started != 2 || p.photo.shot != nil {
			t.Errorf("%s: %d begun, %d given up, picture kept %v", name, k.started, k.given, p.photo.shot != nil)
		}
	}
}

// The eye by keys and by mouse: the same ways, within bounds.
func TestWalk(t *testing.T) {
	p, _ := shown(t)
	key := func(names ...fyne.KeyName) picture.View {
		for _, n := range names {
			if !p.Key(&fyne.KeyEvent{Name: n}) {
				t.Errorf("%s does nothing", n)
			}
		}
		return p.photo.view
	}
	start := p.photo.turning()
	if v := key(fyne.KeyRight, fyne.KeyUp); v.Kind != picture.Orbit || v.Turn != start.Turn+turnStep || v.Rise != start.Rise+riseStep {
		t.Errorf("from %+v the keys lead to %+v", start, v)
	}
	if p.photo.which() != -1 {
		t.Error("a given view is still marked")
	}
	before := p.photo.view
	if v := key(fyne.KeyPlus, fyne.KeyPlus, fyne.KeyMinus); math.Abs(v.Away-before.Away/zoomStep) > 1e-9 {
		t.Errorf("away %g, was %g", v.Away, before.Away)
	}
	for range 25 {
		key(fyne.KeyDown, fyne.KeyPlus)
	}
	if v := p.photo.view; v.Rise != lowRise || v.Away != nearAway {
		t.Errorf("the bounds are passed: %+v", v)
	}
	if v := key(fyne.KeyHome); v.Away != 1 {
		t.Errorf("home is %g away", v.Away)
	}
	before = p.photo.view
	p.photo.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(-10, 20)})
	if v := p.photo.view; math.Abs(v.Turn-before.Turn-3.5) > 1e-6 || math.Abs(v.Rise-before.Rise-7) > 1e-6 {
		t.Errorf("dragged from %+v to %+v", before, v)
	}
	p.photo.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, 25)})
	if v := p.photo.view; !(v.Away < 1) {
		t.Errorf("the wheel leads away: %+v", v)
	}
	if key(fyne.Key2); p.photo.view.Kind != picture.Top {
		t.Error("2 does not look from above")
	}
	if v := key(fyne.KeyLeft); v.Kind != picture.Orbit || v.Rise != highRise {
		t.Errorf("from above the arrow leads to %+v", v)
	}
	if key(fyne.Key1); p.photo.view != (picture.View{Kind: picture.Quarter}) {
		t.Errorf("1 leads to %+v", p.photo.view)
	}
}

// Straight down, the top lies between title and bar, and the wheel keeps the place
// under the pointer.
func TestAbove(t *testing.T) {
	p, k := shown(t)
	*k = shooter{}
	p.Key(&fyne.KeyEvent{Name: fyne.Key2})
	v := k.views[len(k.views)-1]
	box, room := p.s.Report().Solid.Outline.Bounds(), area(800, 500, float64(unit(800, 500)), false)
	mm := v.Span / 800
	at := func(x, y float64) (px, py float64) { return 400 + (x-v.At.X)/mm, 250 - (y-v.At.Y)/mm }
	x0, y1 := at(box.Min.X, box.Min.Y)
	x1, y0 := at(box.Max.X, box.Max.Y)
	if x0 < room.Min.X-0.1 || x1 > room.Max.X+0.1 || y0 < room.Min.Y-0.1 || y1 > room.Max.Y+0.1 {
		t.Errorf("the top lies at %.0f..%.0f, %.0f..%.0f, its room is %v", x0, x1, y0, y1, room)
	}
	if p.photo.view != (picture.View{Kind: picture.Top}) {
		t.Errorf("what would be saved is %+v", p.photo.view)
	}
	place := func(v picture.View, x, y float64) (float64, float64) {
		mm := v.Span / 800
		return v.At.X + (x-400)*mm, v.At.Y - (y-250)*mm
	}
	bx, by := place(v, 600, 120)
	p.photo.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(600, 120)}, Scrolled: fyne.NewDelta(0, 100)})
	w := p.photo.view
	if ax, ay := place(w, 600, 120); w.Kind != picture.Top || !(w.Span < v.Span) || math.Hypot(ax-bx, ay-by) > 1e-3 {
		t.Errorf("the wheel leads to %+v, where %g, %g lies under the pointer, was %g, %g", w, ax, ay, bx, by)
	}
	if p.WholeTop(); p.photo.view != (picture.View{Kind: picture.Top}) {
		t.Errorf("the whole top is %+v", p.photo.view)
	}
}

// A click looks at the place that was clicked, from near; Esc goes back to where the
// eye was, and only then out.
func TestCloseLook(t *testing.T) {
	p, _ := shown(t)
	p.Key(&fyne.KeyEvent{Name: fyne.KeyRight})
	was := p.photo.view
	// Two places of the top that are in sight.
	var spots []fyne.Position
	for x := float32(100); x < 700 && len(spots) < 2; x += 150 {
		for y := float32(100); y < 400; y += 40 {
			if _, ok := p.photo.shotOf.Place(p.photo.shotAt, 800, 500, float64(x), float64(y)); ok {
				spots = append(spots, fyne.NewPos(x, y))
				break
			}
		}
	}
	p.photo.Tapped(&fyne.PointEvent{Position: spots[1]})
	v := p.photo.view
	b := p.s.Report().Solid.Outline.Bounds()
	if v.Kind != picture.Close || !b.Contains(v.At) {
		t.Fatalf("the click leads to %+v", v)
	}
	if !strings.Contains(p.caption.text.Text, "Esc goes back to the whole top") {
		t.Errorf("the caption says %q", p.caption.text.Text)
	}
	p.Key(&fyne.KeyEvent{Name: fyne.KeyLeft})
	if w := p.photo.view; w.Kind != picture.Close || w.At != v.At || w.Turn == v.Turn {
		t.Errorf("near to, the arrow leads to %+v", w)
	}
	p.photo.Tapped(&fyne.PointEvent{Position: fyne.NewPos(430, 250)})
	if w := p.photo.view; w.At == v.At || w.Kind != picture.Close {
		t.Errorf("a second click leads to %+v", w)
	}
	if !p.BackOut() || p.photo.view != was {
		t.Errorf("back leads to %+v, was %+v", p.photo.view, was)
	}
	if p.BackOut() {
		t.Error("there is a second way back")
	}
	// A click into the room stays.
	p.photo.Tapped(&fyne.PointEvent{Position: fyne.NewPos(1, 1)})
	if p.photo.view != was {
		t.Errorf("a click beside the top leads to %+v", p.photo.view)
	}
}

// Walls, cabinet and legs: one thing below or nothing.
func TestAbout(t *testing.T) {
	p, _ := shown(t)
	if !p.Wall() || p.Below() != picture.BelowCabinet || !p.cabinet.On() || p.legs.On() {
		t.Fatalf("at first wall %v, below %d", p.Wall(), p.Below())
	}
	for _, step := range []struct {
		key  fyne.KeyName
		want picture.SetOptions
	}{
		{fyne.KeyL, picture.SetOptions{Below: picture.BelowLegs}},
		{fyne.KeyL, picture.SetOptions{Below: picture.BelowNothing}},
		{fyne.KeyC, picture.SetOptions{Below: picture.BelowCabinet}},
		{fyne.KeyW, picture.SetOptions{Below: picture.BelowCabinet, NoWall: true}},
	} {
		p.Key(&fyne.KeyEvent{Name: step.key})
		if p.photo.about != step.want {
			t.Errorf("%s gives %+v, want %+v", step.key, p.photo.about, step.want)
		}
	}
	if p.wall.On() || !p.cabinet.On() || p.legs.On() {
		t.Error("the buttons do not follow")
	}
}

// A picture is saved as it is seen, in the size and quality asked for; a width that
// is none is refused and stays as typed.
func TestSave(t *testing.T) {
	p, k := shown(t)
	dir := t.TempDir()
	p.Later = func(time.Duration, func()) {}
	set := files.LoadSettings(filepath.Join(dir, "settings.json"))
	set.Folder = dir
	p.Files = files.New(p.s, p.frame, set, p.Later)
	p.Key(&fyne.KeyEvent{Name: fyne.KeyRight})
	*k = shooter{}
	p.SavePicture()
	card := p.frame.Window.Canvas().Overlays().Top()
	width, path := entry(t, card, "Width"), entry(t, card, "A name in this folder")
	width.SetText("99999")
	out := filepath.Join(dir, "out.png")
	path.SetText(out)
	press(t, card, "Save")
	if _, err := os.Stat(out); err == nil || width.Text != "99999" || !p.frame.Busy() {
		t.Fatalf("a width of 99999 is taken: %v, %q", err, width.Text)
	}
	width.SetText("3840")
	press(t, card, "4:3")
	press(t, card, "Quick")
	press(t, card, "Save")
	f, err := os.Open(out)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	c, err := png.DecodeConfig(f)
	if err != nil || c.Width != 3840 || c.Height != 2880 {
		t.Errorf("%v, %d x %d", err, c.Width, c.Height)
	}
	if k.qualities[0] != picture.Quick || k.views[0] != p.photo.view {
		t.Errorf("taken as %v from %+v", k.qualities[0], k.views[0])
	}
	if p.wish != (wish{3840, picture.FourThirds, picture.Quick}) {
		t.Errorf("the next one starts from %+v", p.wish)
	}
}

// Stop ends the saving in the middle of the picture: nothing is written, and the page
// goes on with its own picture.
func TestStopSaving(t *testing.T) {
	p, k := shown(t)
	dir, ticks := t.TempDir(), 0
	p.Later = func(_ time.Duration, do func()) {
		if ticks++; ticks == 1 { // the progress is shown at once, and not again
			do()
		}
	}
	set := files.LoadSettings(filepath.Join(dir, "settings.json"))
	set.Folder = dir
	p.Files = files.New(p.s, p.frame, set, p.Later)
	ticks = 0
	*k = shooter{}
	p.SavePicture()
	card := p.frame.Window.Canvas().Overlays().Top()
	out := filepath.Join(dir, "out.png")
	entry(t, card, "A name in this folder").SetText(out)
	k.meanwhile = func() { press(t, p.frame.Window.Canvas().Overlays().Top(), "Stop") }
	press(t, card, "Save")
	if _, err := os.Stat(out); err == nil {
		t.Error("a picture that was stopped is written")
	}
	if left, _ := filepath.Glob(filepath.Join(dir, "*.png*")); len(left) > 0 {
		t.Errorf("there is left %v", left)
	}
	if k.given != 1 || k.finished != 3 || p.frame.Busy() {
		t.Errorf("%d given up, %d taken for the page, a dialog is open: %v", k.given, k.finished, p.frame.Busy())
	}
}

// children is what an object shows.
func children(o fyne.CanvasObject) []fyne.CanvasObject {
	switch o := o.(type) {
	case *fyne.Container:
		return o.Objects
	case fyne.Widget:
		return test.WidgetRenderer(o).Objects()
	}
	return nil
}

// entry is the entry on a card whose hint starts with some words.
func entry(t *testing.T, card fyne.CanvasObject, hint string) *control.Entry {
	t.Helper()
	var found *control.Entry
	var walk func(fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		if e, ok := o.(*control.Entry); ok && strings.HasPrefix(e.Hint(), hint) {
			found = e
		}
		for _, c := range children(o) {
			walk(c)
		}
	}
	walk(card)
	if found == nil {
		t.Fatalf("no entry %q", hint)
	}
	return found
}

// press presses the button on a card that says some words.
func press(t *testing.T, card fyne.CanvasObject, words string) {
	t.Helper()
	var walk func(fyne.CanvasObject) bool
	walk = func(o fyne.CanvasObject) bool {
		if b, ok := o.(*control.Button); ok && b.Face().Text == words {
			b.Tapped(nil)
			return true
		}
		for _, c := range children(o) {
			if walk(c) {
				return true
			}
		}
		return false
	}
	if !walk(card) {
		t.Fatalf("no button %q", words)
	}
}

package board_test

import (
	"bytes"
	"image"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/view"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
)

// shop is a board whose background works wait until they are run.
type shop struct {
	*desk
	works []func() func()
}

func newShop(t *testing.T, d design.Design) *shop {
	k := &shop{desk: newDesk(t, d)}
	k.b.Background(func(work func() func()) { k.works = append(k.works, work) })
	return k
}

// run does the works that wait, as the window would after a while, and those
// that come of them.
func (k *shop) run() {
	for len(k.works) > 0 {
		work := k.works[0]
		k.works = k.works[1:]
		work()()
		k.b.Draw(1000, 700)
	}
}

func (k *shop) frame() *image.RGBA { return clone(k.b.Draw(1000, 700).(*image.RGBA)) }

// TestRestIsDrawnInTheBackground: a change at rest costs the window nothing but a
// copy of the old picture, and comes to what drawing at once gives.
func TestRestIsDrawnInTheBackground(t *testing.T) {
	k := newShop(t, full())
	old, draws := k.frame(), k.b.BaseDraws()
	f := full().Finish
	f.Colour = design.Colour{R: 0x40, G: 0x50, B: 0x60}
	if err := k.s.Do(edit.SetFinish(f)); err != nil {
		t.Fatal(err)
	}
	if got := k.frame(); k.b.BaseDraws() != draws || !bytes.Equal(got.Pix, old.Pix) {
		t.Error("the base was drawn on the main goroutine")
	}
	k.run()
	once := newDesk(t, full())
	if err := once.s.Do(edit.SetFinish(f)); err != nil {
		t.Fatal(err)
	}
	if want := once.b.Draw(1000, 700).(*image.RGBA); !bytes.Equal(k.frame().Pix, want.Pix) {
		t.Error("the picture drawn in the background is another than that drawn at once")
	}
	if draws := k.b.BaseDraws(); k.frame() == nil || k.b.BaseDraws() != draws || len(k.works) > 0 {
		t.Error("the base is drawn again without need")
	}
}

// TestFirstPictureIsPlain: a window that opens shows the top at once, in the mean
// colours of its materials.
func TestFirstPictureIsPlain(t *testing.T) {
	test.NewTempApp(t)
	d := full()
	d.Finish.Colour = design.Colour{R: 0xa0, G: 0x50, B: 0x30}
	s := session.New(design.Job{Options: []design.Option{{Name: "A", Design: d}}}, "")
	w := test.NewTempWindow(t, nil)
	b := board.New(s, w)
	var works []func() func()
	b.Background(func(work func() func()) { works = append(works, work) })
	w.SetPadded(false)
	w.SetContent(b)
	w.Resize(fyne.NewSize(1000, 700))
	at := b.View().Point(geom.Vec{X: 660, Y: 1350}) // bare concrete
	plain := b.Draw(1000, 700).(*image.RGBA).RGBAAt(int(at.X), int(at.Y))
	if plain.R != 0xa0 || plain.G != 0x50 || plain.B != 0x30 {
		t.Errorf("the first picture is %v on the face", plain)
	}
	if len(works) != 1 {
		t.Fatalf("%d works are under way", len(works))
	}
	works[0]()()
	img := b.Draw(1000, 700).(*image.RGBA)
	same := 0
	for x := int(at.X) - 8; x < int(at.X)+8; x++ {
		if img.RGBAAt(x, int(at.Y)) == plain {
			same++
		}
	}
	if same > 12 {
		t.Error("the second picture is as plain as the first")
	}
}

// TestAway: a board that is covered keeps no picture, nor takes one that was under way,
// and what is seen of it again is what was seen before, at once.
func TestAway(t *testing.T) {
	k := newShop(t, full())
	k.frame()
	k.run()
	before := k.frame()
	k.b.Stale()
	k.b.Draw(1000, 700)
	if len(k.works) != 1 {
		t.Fatalf("%d works are under way", len(k.works))
	}
	k.b.Away()
	k.works[0]()()
	k.works = nil
	if k.b.Held() != 0 {
		t.Errorf("a board that nobody sees holds %d bytes of pictures", k.b.Held())
	}
	if !bytes.Equal(k.frame().Pix, before.Pix) {
		t.Error("seen again, it is another picture")
	}
	if k.run(); !bytes.Equal(k.frame().Pix, before.Pix) {
		t.Error("drawn again in the background, it is another picture")
	}
}

// TestGestureOvertakes: what a drag draws is not put back by a picture that was
// begun before it.
func TestGestureOvertakes(t *testing.T) {
	k := newShop(t, plain())
	k.b.ZoomIn()
	k.b.ZoomOut()
	k.b.SetShow(board.Show{Dimensions: true})
	k.b.Draw(1000, 700)
	if len(k.works) != 1 {
		t.Fatalf("%d works are under way", len(k.works))
	}
	from := k.pos(400, 250)
	k.press(from, desktop.MouseButtonPrimary)
	k.pull(from, k.pos(600, 250), desktop.MouseButtonPrimary)
	k.b.Draw(1000, 700)
	drag := clone(k.b.Base())
	k.run()
	if !bytes.Equal(drag.Pix, k.b.Base().Pix) {
		t.Error("an older picture has taken the place of the drag's")
	}
	k.b.DragEnd()
	k.b.Draw(1000, 700)
	k.run()
	if k.b.Patched() || len(k.works) > 0 {
		t.Error("after the drag the base is not drawn whole")
	}
}

// TestOtherOptionAppearsWhole: until the other option is drawn the old one stays
// as it is, without the other's handles on it.
func TestOtherOptionAppearsWhole(t *testing.T) {
	k := newShop(t, plain())
	old := k.frame()
	k.s.SetOption("B")
	k.s.Select(session.Pick{Node: -1})
	if got := k.frame(); !bytes.Equal(got.Pix, old.Pix) {
		t.Error("the old option is drawn over before the other is there")
	}
	k.run()
	if got := k.frame(); bytes.Equal(got.Pix, old.Pix) {
		t.Error("the other option does not appear")
	}
}

// TestMoved: a picture moved to another view shows each place of the design in
// the colour that it had.
func TestMoved(t *testing.T) {
	const w, h = 60, 40
	src := image.NewRGBA(image.Rect(0, 0, w, h))
	for i := range src.Pix {
		src.Pix[i] = uint8(i*7 + i/240*13 | 1)
	}
	of := view.New(w, h)
	for name, v := range map[string]view.View{
		"still": of, "moved": of.Pan(geom.Vec{X: 7, Y: -5}), "far": of.Pan(geom.Vec{X: 700}),
		"nearer": of.Zoom(geom.Vec{X: 20, Y: 10}, 2), "further": of.Zoom(geom.Vec{X: 31, Y: 12}, 0.4),
		"larger": of.Resize(80, 30),
	} {
		dst := image.NewRGBA(image.Rect(0, 0, int(v.W), int(v.H)))
		board.MoveOnto(dst, src, v, of)
		for y := range dst.Rect.Dy() {
			for x := range dst.Rect.Dx() {
				p := of.Point(v.Design(geom.Vec{X: float64(x) + 0.5, Y: float64(y) + 0.5}))
				if edge(p.X) || edge(p.Y) {
					continue // between two pixels
				}
				want := image.NewUniform(board.TestGround).C
				if p.X > 0 && p.Y > 0 && p.X < w && p.Y < h {
					want = src.RGBAAt(int(p.X), int(p.Y))
				}
				if got := dst.RGBAAt(x, y); got != want {
					t.Fatalf("%s: (%d, %d) is %v, want %v", name, x, y, got, want)
				}
			}
		}
	}
}

func edge(x float64) bool { f := x - float64(int(x)); return f < 1e-6 && f > -1e-6 || f > 1-1e-6 }

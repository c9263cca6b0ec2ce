package showing

import (
	"context"
	"fmt"
	"image"
	"math"

	"example.org/castwright/export/picture"
	"example.org/castwright/model/slab"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/session"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
	"golang.org/x/image/draw"
)

// photo is the photo-like picture: a first one at once, better ones while nothing
// moves. Dragging walks the eye round the top.
type photo struct {
	widget.BaseWidget
	s      *session.Session
	frame  *control.Frame
	say    func(string) // progress
	walked func()       // told that the hand has left the given views
	raster *canvas.Raster

	view   picture.View
	set    *picture.Set // of the design as it is, nil until it is built
	shot   image.Image  // the best so far
	scaled *image.RGBA  // shot at the raster's size

	turn   int // counts what was asked for, so that late pictures are dropped
	first  bool
	again  bool
	cancel context.CancelFunc
}

// The eye of the view from the front, as degrees; see package picture.
const startTurn, startRise = -15, 34

func newPhoto(s *session.Session, f *control.Frame, say func(string)) *photo {
	p := &photo{s: s, frame: f, say: say, cancel: func() {}}
	p.raster = canvas.NewRaster(p.draw)
	p.ExtendBaseWidget(p)
	p.Hide()
	return p
}

// stages are the pictures that follow each other, with their share of the size.
var stages = [...]struct {
	quality picture.Quality
	share   float64
	words   string
}{{picture.First, 0.5, "first look"}, {picture.Quick, 1, "clearer"}, {picture.Good, 1, "clear"}}

// take takes one of the given views: from the front, from above, close.
func (p *photo) take(i int) {
	p.view = picture.View{Kind: [...]picture.Kind{picture.Quarter, picture.Top, picture.Close}[i]}
	p.ask()
}

// changed forgets the set of a design that is no longer in hand.
func (p *photo) changed() { p.set = nil }

// stop gives up what is being worked at.
func (p *photo) stop() {
	p.turn++
	p.cancel()
}

// forget gives up, and lets the pictures and the set go.
func (p *photo) forget() {
	p.stop()
	p.set, p.shot, p.scaled = nil, nil, nil
}

// ask has the picture taken again. A first look that is under way is finished, so
// that something is seen while the hand moves; better ones are given up.
func (p *photo) ask() {
	if p.first {
		p.again = true
		return
	}
	p.stop()
	p.start(0)
}

// start works at one stage in the background, then at the next.
func (p *photo) start(stage int) {
	size := p.raster.Size()
	scale := float32(1)
	if c := fyne.CurrentApp().Driver().CanvasForObject(p); c != nil {
		scale = c.Scale()
	}
	st := stages[stage]
	w := int(math.Round(float64(size.Width*scale) * st.share))
	h := int(math.Round(float64(size.Height*scale) * st.share))
	if w < 32 || h < 32 || w > picture.MaxSide || h > picture.MaxSide {
		return
	}
	ctx, cancel := context.WithCancel(context.Background())
	p.cancel = cancel
	p.first = stage == 0
	turn, set, view, d := p.turn, p.set, p.view, p.s.Design()
	p.frame.Background(func() func() {
		if set == nil {
			set = picture.Build(d, slab.Resolve(d), picture.SetOptions{})
		}
		told := -1
		img, err := picture.Render(ctx, set, view, st.quality, w, h, func(_ string, done float64, _ *image.NRGBA) {
			if percent := int(20*done) * 5; percent != told && stage > 0 {
				told = percent
				fyne.Do(func() {
					if p.turn == turn {
						p.say(fmt.Sprintf("Picture %s: %d %%", st.words, percent))
					}
				})
			}
		})
		cancel()
		return func() {
			if stage == 0 {
				p.first = false
			}
			again := p.again
			p.again = false
			if p.turn != turn {
				if again && p.Visible() {
					p.ask()
				}
				return
			}
			if err == nil {
				if !again {
					p.set = set
				}
				p.shot, p.scaled = img, nil
				p.raster.Refresh()
			}
			switch {
			case again:
				p.ask()
			case err == nil && stage+1 < len(stages):
				p.start(stage + 1)
			default:
				p.say("")
			}
		}
	})
}

// draw gives the best picture so far at the raster's size.
func (p *photo) draw(w, h int) image.Image {
	if w < 1 || h < 1 || w > picture.MaxSide || h > picture.MaxSide {
		return image.NewRGBA(image.Rect(0, 0, 1, 1))
	}
	if p.scaled != nil && p.scaled.Rect.Dx() == w && p.scaled.Rect.Dy() == h {
		return p.scaled
	}
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	if p.shot != nil {
		draw.ApproxBiLinear.Scale(out, out.Rect, p.shot, p.shot.Bounds(), draw.Src, nil)
	}
	p.scaled = out
	return out
}

// walk leaves the given views for one that turns.
func (p *photo) walk() {
	if p.view.Kind != picture.Orbit {
		p.view = picture.View{Kind: picture.Orbit, Turn: startTurn, Rise: startRise, Away: 1}
		p.walked()
	}
}

// Dragged walks the eye round the top.
func (p *photo) Dragged(e *fyne.DragEvent) {
	p.walk()
	p.view.Turn = math.Mod(p.view.Turn-0.35*float64(e.Dragged.DX), 360)
	p.view.Rise = min(86, max(5, p.view.Rise+0.35*float64(e.Dragged.DY)))
	p.ask()
}

// DragEnd leaves the picture to grow clearer.
func (p *photo) DragEnd() {}

// Scrolled brings the eye nearer or farther.
func (p *photo) Scrolled(e *fyne.ScrollEvent) {
	p.walk()
	p.view.Away = min(3, max(0.3, p.view.Away*math.Exp(-0.004*float64(e.Scrolled.DY))))
	p.ask()
}

// Cursor is that of something to be taken hold of.
func (p *photo) Cursor() desktop.Cursor { return desktop.PointerCursor }

// Resize has the picture taken anew at another size.
func (p *photo) Resize(size fyne.Size) {
	was := p.Size()
	p.BaseWidget.Resize(size)
	if size != was && p.Visible() {
		p.ask()
	}
}

// CreateRenderer makes the widget's renderer.
func (p *photo) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(p.raster) }

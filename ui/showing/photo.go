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
	walked func()       // told that another view is taken
	render Renderer
	raster *canvas.Raster

	view   picture.View
	whole  picture.View // what a close look goes back to
	about  picture.SetOptions
	set    *picture.Set // of the design as it is, nil until it is built
	shot   *image.NRGBA // the best so far
	shotAt picture.View // what it shows
	shotOf *picture.Set
	scaled *image.RGBA // shot at the raster's size
	turn   int         // counts what was asked for, so that late pictures are dropped
	first  bool
	again  bool
	cancel context.CancelFunc
}

// Renderer takes a picture, as [picture.Render] does.
type Renderer func(ctx context.Context, set *picture.Set, v picture.View, q picture.Quality, w, h int,
	show func(stage string, done float64, img *image.NRGBA)) (*image.NRGBA, error)

func newPhoto(s *session.Session, f *control.Frame, say func(string)) *photo {
	p := &photo{s: s, frame: f, say: say, cancel: func() {}, render: picture.Render, walked: func() {}}
	p.view = picture.View{Kind: picture.Quarter}
	p.raster = canvas.NewRaster(p.draw)
	p.ExtendBaseWidget(p)
	p.Hide()
	return p
}

// stages are the pictures that follow each other.
var stages = [...]struct {
	quality picture.Quality
	words   string
}{{picture.First, "first look"}, {picture.Quick, "clearer"}, {picture.Good, "clear"}}

// firstPixels bounds the first look, so that it follows the hand on a large screen
// too.
const firstPixels = 640 * 360

// size is that of the picture of a stage, in pixels; ok is false where there is none.
func (p *photo) size(stage int) (w, h int, ok bool) {
	size := p.raster.Size()
	scale := float32(1)
	if c := fyne.CurrentApp().Driver().CanvasForObject(p); c != nil {
		scale = c.Scale()
	}
	fw, fh := float64(size.Width*scale), float64(size.Height*scale)
	if stage == 0 && fw > 0 && fh > 0 {
		k := math.Min(0.5, math.Sqrt(firstPixels/(fw*fh)))
		fw, fh = fw*k, fh*k
	}
	w, h = int(math.Round(fw)), int(math.Round(fh))
	return w, h, w >= 32 && h >= 32 && w <= picture.MaxSide && h <= picture.MaxSide
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
	p.set, p.shot, p.shotOf, p.scaled = nil, nil, nil, nil
}

// ask has the picture taken again. A first look that is under way is finished, so
// that something is seen while the hand moves; better ones are given up at once.
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
	w, h, ok := p.size(stage)
	if !ok {
		return
	}
	st := stages[stage]
	fullW, fullH, _ := p.size(len(stages) - 1)
	ctx, cancel := context.WithCancel(context.Background())
	p.cancel = cancel
	p.first = stage == 0
	turn, set, view, about, d := p.turn, p.set, p.framed(p.view), p.about, p.s.Design()
	p.frame.Long(func() func() {
		if set == nil {
			set = picture.Build(d, slab.Resolve(d), about)
		}
		told := -1
		img, err := p.render(ctx, set, view, st.quality, w, h, func(_ string, done float64, _ *image.NRGBA) {
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
		var ready *image.RGBA
		if err == nil {
			ready = fitted(img, fullW, fullH)
		}
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
				p.shot, p.shotAt, p.shotOf, p.scaled = img, view, set, ready
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
	if p.shot == nil {
		return image.NewRGBA(image.Rect(0, 0, w, h)) // the window's ground, for a moment
	}
	p.scaled = fitted(p.shot, w, h)
	return p.scaled
}

// fitted is a picture without holes at a size.
func fitted(img *image.NRGBA, w, h int) *image.RGBA {
	// Without transparency the two models are the same bytes.
	opaque := &image.RGBA{Pix: img.Pix, Stride: img.Stride, Rect: img.Rect}
	if img.Rect.Dx() == w && img.Rect.Dy() == h {
		return opaque
	}
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.ApproxBiLinear.Scale(out, out.Rect, opaque, opaque.Rect, draw.Src, nil)
	return out
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

package showing

import (
	"encoding/binary"
	"image"
	"math"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/model/scene"
	"example.org/castwright/ui/control"
)

// stage shows the picture of an option. It is painted in the background; a new
// one is faded in over the old one. A finger that is drawn across asks for
// another option.
type stage struct {
	widget.BaseWidget
	frame   *control.Frame
	raster  *canvas.Raster
	prepare func(w, h int, px float64) func(*image.RGBA)
	swiped  func(right bool)

	now   *image.RGBA // what is seen, or fades out
	next  *image.RGBA // what fades in
	mixed *image.RGBA
	phase float64 // of the fading, 0 to 1
	fade  *fyne.Animation
	stale bool
	busy  bool
	turn  int // counts what was forgotten
	drawn float32
}

const (
	fadeTime = 260 * time.Millisecond
	// swipe is how far a finger is drawn, in points, to ask for another option.
	swipe = 90
)

func newStage(f *control.Frame, prepare func(w, h int, px float64) func(*image.RGBA), swiped func(bool)) *stage {
	s := &stage{frame: f, prepare: prepare, swiped: swiped, stale: true}
	s.raster = canvas.NewRaster(s.draw)
	s.ExtendBaseWidget(s)
	return s
}

// renew has the picture painted again.
func (s *stage) renew() {
	s.stale = true
	s.raster.Refresh()
}

// forget lets the pictures go.
func (s *stage) forget() {
	s.stop()
	s.now, s.next, s.mixed, s.stale = nil, nil, nil, true
	s.busy = false
	s.turn++
}

func (s *stage) stop() {
	if s.fade != nil {
		s.fade.Stop()
		s.fade = nil
	}
	if s.next != nil {
		s.now, s.next = s.next, nil
	}
}

// maxPixels bounds a picture: two screens of 8K.
const maxPixels = 2 * 7680 * 4320

func (s *stage) draw(w, h int) image.Image {
	if w < 1 || h < 1 || w > maxPixels/h {
		return image.NewRGBA(image.Rect(0, 0, 1, 1))
	}
	size := image.Rect(0, 0, w, h)
	if (s.stale || s.now == nil || s.now.Rect != size) && !s.busy {
		s.begin(size)
	}
	switch {
	case s.now == nil || s.now.Rect != size:
		return image.NewRGBA(size) // the window's ground, for a moment
	case s.next == nil:
		return s.now
	}
	if s.mixed == nil || s.mixed.Rect != size {
		s.mixed = image.NewRGBA(size)
	}
	mix(s.mixed.Pix, s.now.Pix, s.next.Pix, s.phase)
	return s.mixed
}

// begin has a picture painted.
func (s *stage) begin(size image.Rectangle) {
	s.stale, s.busy = false, true
	px := float64(size.Dx()) / math.Max(1, float64(s.Size().Width))
	paint, turn := s.prepare(size.Dx(), size.Dy(), px), s.turn
	s.frame.Background(func() func() {
		img := image.NewRGBA(size)
		paint(img)
		return func() {
			if s.turn == turn {
				s.busy = false
				s.take(img)
			}
		}
	})
}

// take shows a picture that has been painted.
func (s *stage) take(img *image.RGBA) {
	s.stop()
	if s.now == nil || s.now.Rect != img.Rect || s.frame.Inline {
		s.now = img
		s.raster.Refresh()
		return
	}
	s.next, s.phase = img, 0
	s.fade = fyne.NewAnimation(fadeTime, func(done float32) {
		if s.next != img {
			return
		}
		if s.phase = float64(done); done >= 1 {
			s.now, s.next, s.fade = img, nil, nil
		}
		s.raster.Refresh()
	})
	s.fade.Start()
}

// mix writes a and b with the share f of b.
func mix(dst, a, b []uint8, f float64) {
	k := uint64(math.Round(256 * math.Max(0, math.Min(1, f))))
	const even = 0x00ff00ff00ff00ff
	for i := 0; i+8 <= len(dst); i += 8 {
		p, q := binary.LittleEndian.Uint64(a[i:]), binary.LittleEndian.Uint64(b[i:])
		lo := ((p&even)*(256-k) + (q&even)*k) >> 8 & even
		hi := ((p>>8&even)*(256-k) + (q>>8&even)*k) & (even << 8)
		binary.LittleEndian.PutUint64(dst[i:], lo|hi)
	}
	for i := len(dst) &^ 7; i < len(dst); i++ {
		dst[i] = uint8((uint64(a[i])*(256-k) + uint64(b[i])*k) >> 8)
	}
}

// light lays the ground: neutral, a little brighter about the middle, as under a
// lamp. Its steps are scattered so that no band shows.
func light(img *image.RGBA, ground scene.Colour) {
	w, h := img.Rect.Dx(), img.Rect.Dy()
	const bright, dim = 5.0, -7.0 // of 255, in the middle and in the corners
	across := make([]float64, w)
	for x := range across {
		t := 2*(float64(x)+0.5)/float64(w) - 1
		across[x] = t * t
	}
	seed := uint32(1)
	for y := range h {
		t := 2*(float64(y)+0.5)/float64(h) - 1
		row := img.Pix[y*img.Stride:]
		for x, s := range across {
			seed = seed*1664525 + 1013904223 // Numerical Recipes, 3rd ed., 7.1
			v := float64(ground.R) + bright + (dim-bright)*math.Min(1, (s+t*t)/2) + float64(seed>>8)/(1<<24)
			g := uint8(math.Max(0, math.Min(255, v)))
			row[4*x], row[4*x+1], row[4*x+2], row[4*x+3] = g, g, g, 0xff
		}
	}
}

// Dragged follows a finger.
func (s *stage) Dragged(e *fyne.DragEvent) { s.drawn += e.Dragged.DX }

// DragEnd asks for another option when the finger went far enough.
func (s *stage) DragEnd() {
	by := s.drawn
	s.drawn = 0
	if by > swipe || by < -swipe {
		s.swiped(by > 0)
	}
}

// CreateRenderer makes the widget's renderer.
func (s *stage) CreateRenderer() fyne.WidgetRenderer {
	return control.Painted(s.raster, fyne.NewSize(1, 1), s.renew)
}

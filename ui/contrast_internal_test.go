package ui

import (
	"fmt"
	"image/color"
	"math"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
)

// over is a colour as it is seen over an opaque one.
func over(top, below color.NRGBA) color.NRGBA {
	mix := func(t, b uint8) uint8 {
		return uint8(math.Round((float64(t)*float64(top.A) + float64(b)*float64(0xff-top.A)) / 0xff))
	}
	return color.NRGBA{mix(top.R, below.R), mix(top.G, below.G), mix(top.B, below.B), 0xff}
}

// contrast is the contrast ratio of two opaque colours as WCAG 2.2 defines it
// (W3C Recommendation of 12 December 2024, "relative luminance", "contrast ratio").
func contrast(a, b color.NRGBA) float64 {
	luminance := func(c color.NRGBA) float64 {
		linear := func(v uint8) float64 {
			if x := float64(v) / 255; x > 0.04045 {
				return math.Pow((x+0.055)/1.055, 2.4)
			} else {
				return x / 12.92
			}
		}
		return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
	}
	x, y := luminance(a), luminance(b)
	return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
}

// The contrast formula gives its extremes and a value that WCAG's own
// understanding document names: #777777 on white just fails 4.5 to 1.
func TestContrastFormula(t *testing.T) {
	black, white := color.NRGBA{0, 0, 0, 255}, color.NRGBA{255, 255, 255, 255}
	grey := color.NRGBA{0x77, 0x77, 0x77, 255}
	if got := contrast(black, white); math.Abs(got-21) > 1e-9 {
		t.Errorf("black on white is %g, want 21", got)
	}
	if got := contrast(grey, white); got >= 4.5 || got < 4.47 {
		t.Errorf("#777777 on white is %g, want 4.48", got)
	}
}

// layer is what has been painted so far: rectangles, and pictures of unknown colour.
type layer struct {
	at      fyne.Position
	size    fyne.Size
	colour  color.NRGBA
	picture bool
}

// eye looks at what is painted, in the order in which it is painted.
type eye struct {
	t      *testing.T
	clip   *layer // what scrolls is seen here alone
	where  string
	below  []layer
	texts  map[string]float64 // the least contrast met, by what was met
	onPics int
}

// ground is the colour under a point; ok is false on a picture.
func (e *eye) ground(p fyne.Position) (color.NRGBA, bool) {
	c := nrgba(theme.Color(theme.ColorNameBackground))
	known := true
	for _, l := range e.below {
		if p.X < l.at.X || p.Y < l.at.Y || p.X > l.at.X+l.size.Width || p.Y > l.at.Y+l.size.Height {
			continue
		}
		switch {
		case l.picture:
			known = false
		case l.colour.A == 0xff:
			c, known = l.colour, true
		default:
			c = over(l.colour, c)
		}
	}
	return c, known
}

func nrgba(c color.Color) color.NRGBA { return color.NRGBAModel.Convert(c).(color.NRGBA) }

// judge holds what is painted at a place to a contrast.
func (e *eye) judge(what string, c color.NRGBA, at fyne.Position, size fyne.Size, least float64) {
	mid := at.AddXY(size.Width/2, size.Height/2)
	if c := e.clip; c != nil && (mid.X < c.at.X || mid.Y < c.at.Y || mid.X > c.at.X+c.size.Width || mid.Y > c.at.Y+c.size.Height) {
		return
	}
	on, known := e.ground(mid)
	if !known {
		e.onPics++
		return
	}
	got := contrast(over(c, on), on)
	key := fmt.Sprintf("%v on %v", c, on)
	if _, met := e.texts[key]; met {
		return
	}
	e.texts[key] = got
	if got < least {
		e.t.Errorf("%s: %s is %v on %v, a contrast of %.2f, want %g", e.where, what, c, on, got, least)
	}
}

// paint lays something over what is painted, as far as it is seen.
func (e *eye) paint(l layer) {
	if c := e.clip; c != nil {
		far := fyne.NewPos(fyne.Min(l.at.X+l.size.Width, c.at.X+c.size.Width), fyne.Min(l.at.Y+l.size.Height, c.at.Y+c.size.Height))
		l.at = fyne.NewPos(fyne.Max(l.at.X, c.at.X), fyne.Max(l.at.Y, c.at.Y))
		l.size = fyne.NewSize(far.X-l.at.X, far.Y-l.at.Y)
	}
	e.below = append(e.below, l)
}

func (e *eye) look(o fyne.CanvasObject, from fyne.Position) {
	if o == nil || !o.Visible() {
		return
	}
	at, size := from.Add(o.Position()), o.Size()
	switch k := o.(type) {
	case *canvas.Rectangle:
		if k.FillColor != nil {
			e.paint(layer{at: at, size: size, colour: nrgba(k.FillColor)})
		}
	case *canvas.Raster:
		e.paint(layer{at: at, size: size, picture: true})
	case *canvas.Text:
		if k.Text != "" && k.Color != nil {
			e.judge(fmt.Sprintf("%q", k.Text), nrgba(k.Color), at, k.MinSize(), 4.5)
		}
	case *canvas.Image:
		r, themed := k.Resource.(fyne.ThemedResource)
		switch {
		case themed && strings.HasSuffix(r.Name(), "check-box-fill.svg"): // the ground of a tick, no sign
		case themed && k.Translucency == 0:
			e.judge("the icon "+r.Name(), nrgba(theme.Color(r.ThemeColorName())), at, size, 3)
		case k.Image != nil:
			e.paint(layer{at: at, size: size, picture: true})
		}
	}
	if _, scrolls := o.(fyne.Scrollable); scrolls {
		was := e.clip
		e.clip = &layer{at: at, size: size}
		defer func() { e.clip = was }()
	}
	for _, child := range children(o) {
		e.look(child, at)
	}
}

// TestContrastOfAllThatIsSeen holds every text in the window to a contrast of 4.5
// to 1 with what it really stands on, and every icon to 3 to 1 (WCAG 2.2, success
// criteria 1.4.3 and 1.4.11): the window itself, each card that an action opens and
// each page, in both themes, at rest and under the mouse. Unlike WCAG it lets off
// no text that is disabled; disabled icons are let off. Texts on pictures of tops
// stand on grounds of their own there; see ui/board.
func TestContrastOfAllThatIsSeen(t *testing.T) {
	for _, choice := range []look.Choice{look.Light, look.Dark} {
		t.Run(string(choice), func(t *testing.T) {
			w := newRig(t)
			w.app.Settings().SetTheme(look.New(choice))
			met := map[string]float64{}
			see := func(where string, o fyne.CanvasObject) {
				e := &eye{t: t, where: where, texts: met}
				e.look(o, fyne.Position{})
			}
			see("at rest", w.win.Content())
			d := w.session.Design()
			for _, p := range append([]session.Pick{{Node: -1}, {Node: 0, Edge: true}}, parts(d)...) {
				w.session.Select(p)
				see(fmt.Sprintf("with %v selected", p), w.win.Content())
			}
			for id := range w.bindings() {
				if id == keys.Quit || id == keys.FullScreen || id == keys.Theme || id == keys.Units {
					continue
				}
				w.keys.Run(id)
				see("page of "+string(id), w.win.Content())
				for _, o := range w.win.Canvas().Overlays().List() {
					see("card of "+string(id), o)
					hoverAll(o, func(under fyne.CanvasObject) { see("card of "+string(id)+" under the mouse", o) })
				}
				for w.win.Canvas().Overlays().Top() != nil {
					w.press(fyne.KeyEscape)
				}
				if w.covered() {
					w.backOut()
				}
			}
			hoverAll(w.win.Content(), func(fyne.CanvasObject) { see("under the mouse", w.win.Content()) })
			if len(met) < 20 {
				t.Errorf("only %d pairs of colours were met", len(met))
			}
			t.Logf("%d pairs of colours", len(met))
		})
	}
}

func parts(d design.Design) (out []session.Pick) {
	for _, id := range edit.Parts(d) {
		out = append(out, session.Pick{Part: id, Node: -1})
	}
	return out
}

// hoverAll moves the mouse onto each control below an object, and says so.
func hoverAll(o fyne.CanvasObject, seen func(fyne.CanvasObject)) {
	if h, ok := o.(desktop.Hoverable); ok {
		h.MouseIn(&desktop.MouseEvent{})
		if len(children(o)) < 12 { // a control, no room full of them
			seen(o)
		}
		h.MouseOut()
	}
	for _, child := range children(o) {
		hoverAll(child, seen)
	}
}

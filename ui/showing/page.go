// Package showing is the view for the client's eyes: the whole screen for one
// option after the other, as a drawing to scale with large type or as a photo-like
// picture that turns under the hand. Nothing can be changed in it, and it says
// nothing of the maker's costs.
package showing

import (
	"fmt"
	"image"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"example.org/castwright/export/raster"
	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
)

// Page is the showing view of a session. It belongs to the main goroutine.
type Page struct {
	Object *fyne.Container

	s     *session.Session
	frame *control.Frame
	step  func(by int)

	stage   *stage
	photo   *photo
	title   *title
	caption *caption
	letters *fyne.Container
	names   []string // of the options that letters has
	before  *control.Button
	after   *control.Button
	mode    *control.Segments
	from    *fyne.Container // the views of the picture
	views   *control.Segments
	lines   *control.Button
	colours *control.Button
	plan    *fyne.Container // what is for the drawing alone

	picture    bool // is shown, not the drawing
	dimensions bool
	textures   bool
	progress   string // of the picture
	said       string // what a button does
}

// Up to this many options have a button each; more are gone through.
const maxLetters = 6

// touch is the side of a button in points: it is for a finger at arm's length.
const touch = 40

// New is a page on a session. close leaves it; step takes another option in hand.
func New(s *session.Session, f *control.Frame, close func(), step func(by int)) *Page {
	p := &Page{s: s, frame: f, step: step, textures: true, title: newTitle(), caption: newCaption(),
		letters: control.Row(look.Gap)}
	p.stage = newStage(f, p.prepare, func(right bool) {
		if right {
			step(-1)
		} else {
			step(1)
		}
	})
	p.photo = newPhoto(s, f, func(text string) {
		p.progress = text
		p.tell()
	})
	p.photo.walked = func() { p.views.SetPicked(-1) }
	button := func(res fyne.Resource, hint string, do func()) *control.Button {
		return control.NewButton(f, control.Face{Icon: res, Hint: hint}, do)
	}
	p.before = button(icon.Left, "The option before this one (left arrow).", func() { step(-1) })
	p.after = button(icon.Right, "The option after this one (right arrow).", func() { step(1) })
	p.mode = control.NewSegments(f, []control.Face{
		{Text: "Drawing", Hint: "The top from above, to scale (P changes over)."},
		{Text: "Picture", Hint: "The top as it will look; drag to walk round it, turn the wheel to come nearer (P)."},
	}, func(i int) { p.show(i == 1) })
	p.views = control.NewSegments(f, []control.Face{
		{Text: "Front", Hint: "The picture from the front and above."},
		{Text: "Above", Hint: "The picture from straight above."},
		{Text: "Near", Hint: "The picture from close by."},
	}, p.view)
	p.from = control.Sized(204, 0, p.views.Container)
	p.lines = button(icon.Dimension, "Dimension lines on the drawing, or none (D).", p.ToggleDimensions)
	p.colours = button(icon.Texture, "The finish as it looks, or plain colours (F).", p.ToggleTextures)
	leave := button(icon.Close, "Back to work (Esc).", close)
	side := func(b *control.Button) fyne.CanvasObject { return control.Sized(touch, touch, b) }
	p.plan = control.Row(look.Gap, side(p.lines), side(p.colours))
	bar := control.Row(look.Gap, side(p.before), p.letters, side(p.after), gap(),
		control.Sized(176, 0, p.mode.Container), gap(), p.plan, p.from, gap(), side(leave))
	card := container.NewStack(control.NewFill(look.Surface, touch/2), control.Pad(look.Gap+2, look.Space+look.Gap, bar))
	p.Object = container.New(&layout{}, p.stage, p.photo, p.title.box, p.caption.box, card)
	p.Object.Hide()
	s.OnChange(func(c session.Change) {
		p.photo.changed()
		if p.Object.Visible() && (c.Design || c.Option || c.Job) {
			p.Refresh()
		}
	})
	return p
}

func gap() fyne.CanvasObject {
	return control.Pad(look.Space, look.Gap, control.Sized(1, 0, control.NewFill(theme.ColorNameSeparator, 0)))
}

// Open shows the option in hand as a drawing.
func (p *Page) Open() {
	p.Object.Show()
	p.show(false)
}

// Close leaves the page, stops what it works at and lets its pictures go.
func (p *Page) Close() {
	p.Object.Hide()
	p.photo.forget()
	p.stage.forget()
}

// Shown reports whether the page is open.
func (p *Page) Shown() bool { return p.Object.Visible() }

// Dimensions reports whether the drawing has dimension lines.
func (p *Page) Dimensions() bool { return p.dimensions }

// Textures reports whether the drawing has the finish's colours.
func (p *Page) Textures() bool { return p.textures }

// ToggleDimensions shows dimension lines on the drawing, or none.
func (p *Page) ToggleDimensions() {
	p.dimensions = !p.dimensions
	p.Refresh()
}

// ToggleTextures shows the finish as it looks, or in plain colours.
func (p *Page) ToggleTextures() {
	p.textures = !p.textures
	p.Refresh()
}

// Key works the page by keys that a hand finds without looking. It reports
// whether it took the key.
func (p *Page) Key(e *fyne.KeyEvent) bool {
	switch e.Name {
	case fyne.KeyLeft, fyne.KeyUp, fyne.KeyPageUp, fyne.KeyBackspace:
		p.step(-1)
	case fyne.KeyRight, fyne.KeyDown, fyne.KeyPageDown, fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		p.step(1)
	case fyne.KeyD:
		if !p.picture {
			p.ToggleDimensions()
		}
	case fyne.KeyF:
		if !p.picture {
			p.ToggleTextures()
		}
	case fyne.KeyP:
		p.show(!p.picture)
	default:
		return false
	}
	return true
}

// Say says what a button does, "" when it is done.
func (p *Page) Say(text string) {
	p.said = text
	p.tell()
}

// tell says what is most worth saying.
func (p *Page) tell() {
	switch {
	case p.said != "":
		p.caption.say(p.said)
	case p.picture && p.progress != "":
		p.caption.say(p.progress)
	default:
		var words []string
		if len(p.s.Job().Options) > 1 {
			words = append(words, "Arrow keys go through the options.")
		}
		if p.picture {
			words = append(words, "Drag to walk round the top.")
		} else {
			words = append(words, "D shows or hides the dimensions.")
		}
		p.caption.say(strings.Join(append(words, "Esc goes back to work."), " "))
	}
}

// show takes the picture or the drawing.
func (p *Page) show(picture bool) {
	p.picture = picture
	show(p.stage, !picture)
	show(p.plan, !picture)
	show(p.from, picture)
	if picture {
		p.mode.SetPicked(1)
		p.stage.forget()
		p.photo.Show()
		p.view(0)
	} else {
		p.mode.SetPicked(0)
		p.photo.Hide()
		p.photo.forget()
		p.progress = ""
	}
	p.title.plate(picture)
	p.caption.plate(picture)
	p.Refresh()
}

// view takes one of the given views of the picture.
func (p *Page) view(i int) {
	p.views.SetPicked(i)
	p.photo.take(i)
}

// Refresh shows the option as it is.
func (p *Page) Refresh() {
	o, j := p.s.Option(), p.s.Job()
	at := 0
	for i, other := range j.Options {
		if other.Name == o.Name {
			at = i
		}
	}
	p.title.show(o.Name, o.Title, subtitle(o.Design, p.s.Report(), j.Units))
	p.fillLetters(j.Options, at)
	p.before.SetEnabled(at > 0)
	p.after.SetEnabled(at+1 < len(j.Options))
	p.lines.SetOn(p.dimensions)
	p.colours.SetOn(p.textures)
	p.tell()
	if p.picture {
		p.photo.ask()
	} else {
		p.stage.renew()
	}
	p.Object.Refresh()
}

// subtitle is what a client asks first: how large, of what, how heavy. The
// maker's costs are nobody else's.
func subtitle(d design.Design, r report.Report, sys units.System) string {
	var parts []string
	if box := r.Measures.Bounds; !box.Empty() {
		parts = append(parts, units.Format(units.FromMM(box.W()), sys)+" × "+units.Format(units.FromMM(box.H()), sys),
			units.Format(d.Thickness, sys)+" thick")
	}
	face, polish := draw.FinishWords(d.Finish)
	parts = append(parts, strings.ToLower(face)+", "+strings.ToLower(polish))
	if r.Takeoff.WeightDry.Value > 0 {
		parts = append(parts, amount.Figure(r.Takeoff.WeightDry, sys))
	}
	return strings.Join(parts, "   ·   ")
}

// fillLetters has a button for each option, or says which of how many is shown.
func (p *Page) fillLetters(options []design.Option, at int) {
	var names []string
	for _, o := range options {
		names = append(names, o.Name+"\n"+o.Title)
	}
	if strings.Join(names, "\n") != strings.Join(p.names, "\n") || len(options) > maxLetters {
		p.names = names
		p.letters.RemoveAll()
		if len(options) > maxLetters {
			p.letters.Add(control.Middle(control.Pad(0, look.Space,
				control.NewText(fmt.Sprintf("%d of %d", at+1, len(options))))))
		}
		for _, o := range options {
			if len(options) == 1 || len(options) > maxLetters {
				break // nothing to choose, or too many for a button each
			}
			hint := "Shows option " + o.Name + "."
			if o.Title != "" {
				hint = "Shows option " + o.Name + ": " + o.Title + "."
			}
			b := control.NewButton(p.frame, control.Face{Text: o.Name, Hint: hint}, func() { p.s.SetOption(o.Name) })
			p.letters.Add(control.Sized(touch, touch, b))
		}
	}
	if n := len(options); n > 1 && n <= maxLetters {
		for i, sized := range p.letters.Objects {
			sized.(*fyne.Container).Objects[0].(*control.Button).SetOn(i == at)
		}
	}
}

// placed is the view of w by h pixels that shows a box of the design, in mm, in the
// middle of a room, in pixels.
func placed(box geom.Box, w, h float64, room geom.Box) draw.View {
	v := draw.Fit(box, room.W(), room.H(), 0)
	v.W, v.H = w, h
	// The page's middle is not the room's: the place that lies there is another.
	off := room.Centre()
	v.Centre.X += (w/2 - off.X) / v.Scale
	v.Centre.Y -= (h/2 - off.Y) / v.Scale
	return v
}

// prepare takes what the picture needs; it is painted in the background.
func (p *Page) prepare(w, h int, px float64) func(*image.RGBA) {
	d, r, sys := p.s.Design(), p.s.Report(), p.s.Job().Units
	dark := look.IsDark()
	u := float64(unit(float32(float64(w)/px), float32(float64(h)/px))) * px
	room := area(float64(w), float64(h), u, p.dimensions)
	v := placed(r.Solid.Outline.Bounds(), float64(w), float64(h), room)
	v.Point, v.Units = 1.5*u, sys
	v.Theme = draw.Light()
	if dark {
		v.Theme = draw.Dark()
	}
	ground := v.Theme.Ground
	v.Theme.Ground.A, v.Theme.Halo.A = 0, 0xb4 // the ground is not the same everywhere
	v.Show = draw.Show{Textures: p.textures, Taps: true, Dimensions: p.dimensions, Walls: p.dimensions}
	return func(img *image.RGBA) {
		light(img, ground)
		raster.Draw(img, draw.Plan(d, r, v))
	}
}

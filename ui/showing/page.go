// Package showing is the view for the client's eyes: the whole screen for one
// option after the other, as a drawing to scale with large type or as a photo-like
// picture that turns under the hand. Nothing can be changed in it, and it says
// nothing of the maker's costs.
package showing

import (
	"fmt"
	"image"
	"math"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"example.org/castwright/export/picture"
	"example.org/castwright/export/raster"
	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/keys"
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
	grown   *grown
	title   *title
	caption *caption
	letters *fyne.Container
	names   []string // of the options that letters has
	many    bool     // too many for a button each
	before  *control.Button
	after   *control.Button
	mode    *control.Segments
	from    *fyne.Container // the views of the picture
	views   *control.Segments
	wall    *control.Button
	cabinet *control.Button
	legs    *control.Button
	lines   *control.Button
	colours *control.Button
	plan    *fyne.Container // what is for the drawing alone

	// Run does an action of the table, Files and Later are the window's; none in a
	// test that does not need them.
	Run   func(keys.ID)
	Files *files.Files
	Later func(time.Duration, func())
	wish  wish // of the picture saved last

	picture    bool // is shown, not the drawing
	dimensions bool
	textures   bool
	progress   string // of the picture
	said       string // what a button does
}

// Up to this many options have a button each, fewer beside a picture; more are gone
// through.
const maxLetters, maxByPicture = 6, 3

func (p *Page) mostLetters() int {
	if p.picture {
		return maxByPicture
	}
	return maxLetters
}

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
	p.photo.walked = func() {
		p.views.SetPicked(p.photo.which())
		p.tell()
	}
	button := func(res fyne.Resource, hint string, do func()) *control.Button {
		return control.NewButton(f, control.Face{Icon: res, Hint: hint}, do)
	}
	p.before = button(icon.Left, "The option before this one (left arrow).", func() { step(-1) })
	p.after = button(icon.Right, "The option after this one (right arrow).", func() { step(1) })
	p.mode = control.NewSegments(f, []control.Face{
		{Text: "Drawing", Hint: "The top from above, to scale (P changes over)."},
		{Text: "Picture", Hint: "The top as it will look; drag to walk round it, click to look from near (P)."},
	}, func(i int) { p.show(i == 1) })
	p.views = control.NewSegments(f, []control.Face{
		{Text: "Front", Hint: keys.Hint(keys.PictureFront)},
		{Text: "Above", Hint: keys.Hint(keys.PictureAbove)},
		{Text: "Near", Hint: keys.Hint(keys.PictureNear)},
	}, p.View)
	act := func(id keys.ID, res fyne.Resource) *control.Button {
		return button(res, keys.Hint(id), func() { p.Run(id) })
	}
	p.wall, p.cabinet, p.legs = act(keys.PictureWall, icon.Wall), act(keys.PictureCabinet, icon.Cabinet), act(keys.PictureLegs, icon.Legs)
	p.lines = button(icon.Dimension, "Dimension lines on the drawing, or none (D).", p.ToggleDimensions)
	p.colours = button(icon.Texture, "The finish as it looks, or plain colours (F).", p.ToggleTextures)
	leave := button(icon.Close, "Back to work (Esc).", close)
	p.grown = &grown{by: 1}
	side := func(b *control.Button) fyne.CanvasObject { return p.grown.sized(touch, touch, b) }
	p.plan = control.Row(look.Gap, side(p.lines), side(p.colours))
	p.from = control.Row(look.Gap, p.grown.sized(192, 0, p.views.Container), gap(),
		side(act(keys.ZoomOut, icon.ZoomOut)), side(act(keys.ZoomIn, icon.ZoomIn)), gap(),
		side(p.wall), side(p.cabinet), side(p.legs), gap(), side(act(keys.SavePhoto, icon.Export)))
	bar := control.Row(look.Gap, side(p.before), p.letters, side(p.after), gap(),
		p.grown.sized(176, 0, p.mode.Container), gap(), p.plan, p.from, gap(), side(leave))
	p.grown.card = control.NewFill(look.Surface, touch/2)
	card := container.NewThemeOverride(container.NewStack(p.grown.card, control.Pad(look.Gap+2, look.Space+look.Gap, bar)), larger{p.grown})
	p.grown.over = card
	p.Object = container.New(&layout{p.grown}, p.stage, p.photo, p.title.box, p.caption.box, card)
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
	p.photo.Hide() // the window may yet be given another size
	p.photo.forget()
	p.stage.forget()
	p.frame.LetGo()
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
	if p.picture && p.pictureKey(e.Name) {
		return true
	}
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

// pictureKey works the picture.
func (p *Page) pictureKey(name fyne.KeyName) bool {
	switch name {
	case fyne.KeyLeft:
		p.photo.walk(-turnStep, 0)
	case fyne.KeyRight:
		p.photo.walk(turnStep, 0)
	case fyne.KeyUp:
		p.photo.walk(0, riseStep)
	case fyne.KeyDown:
		p.photo.walk(0, -riseStep)
	case fyne.KeyPlus, fyne.KeyEqual:
		p.photo.nearer(zoomStep)
	case fyne.KeyMinus:
		p.photo.nearer(1 / zoomStep)
	case fyne.Key0, fyne.KeyHome:
		p.photo.wholeTop()
	case fyne.Key1, fyne.Key2, fyne.Key3:
		p.View(int(name[0] - '1'))
	case fyne.KeyW:
		p.ToggleWall()
	case fyne.KeyC:
		p.ToggleBelow(picture.BelowCabinet)
	case fyne.KeyL:
		p.ToggleBelow(picture.BelowLegs)
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
		p.caption.say(p.manual())
	}
}

// manual says what can be done.
func (p *Page) manual() string {
	several := len(p.s.Job().Options) > 1
	switch {
	case p.picture && p.photo.which() == 2:
		return "A click looks at another place, dragging or the arrow keys walk round it. Esc goes back to the whole top."
	case p.picture && several:
		return "Drag or use the arrow keys to walk round the top, click a place to look from near. Page down shows the next option, Esc goes back to work."
	case p.picture:
		return "Drag or use the arrow keys to walk round the top, click a place to look from near. Esc goes back to work."
	case several:
		return "Arrow keys go through the options. D shows or hides the dimensions. Esc goes back to work."
	}
	return "D shows or hides the dimensions. Esc goes back to work."
}

// show takes the picture or the drawing.
func (p *Page) show(inPicture bool) {
	p.picture = inPicture
	show(p.stage, !inPicture)
	show(p.plan, !inPicture)
	show(p.from, inPicture)
	if inPicture {
		p.mode.SetPicked(1)
		p.stage.forget()
		p.photo.Show()
		p.photo.view = picture.View{Kind: picture.Quarter}
		p.photo.walked()
	} else {
		p.mode.SetPicked(0)
		p.photo.Hide()
		p.photo.forget()
		p.progress = ""
	}
	p.title.plate(inPicture)
	p.caption.plate(inPicture)
	p.Refresh()
}

// View takes one of the given views of the picture: 0 from the front, 1 from above,
// 2 from near.
func (p *Page) View(i int) { p.photo.take(i) }

// Walk takes the eye round the top, by steps to its right and up.
func (p *Page) Walk(right, up float64) { p.photo.walk(right*turnStep, up*riseStep) }

// Nearer brings the eye a step nearer or, below 0, farther.
func (p *Page) Nearer(steps float64) { p.photo.nearer(math.Pow(zoomStep, steps)) }

// WholeTop shows all of the top again.
func (p *Page) WholeTop() { p.photo.wholeTop() }

// SetRenderer has pictures taken by another one than [picture.Render], for tests.
func (p *Page) SetRenderer(r Renderer) { p.photo.render = r }

// InPicture reports whether the page is open with the picture.
func (p *Page) InPicture() bool { return p.Shown() && p.picture }

// Seen says which view of the picture is on the screen, "" while none is: for tests of
// the real window.
func (p *Page) Seen() string {
	if !p.InPicture() || p.photo.shot == nil {
		return ""
	}
	v := p.photo.shotAt
	kind := [...]string{picture.Top: "above", picture.Quarter: "front", picture.Close: "near", picture.Orbit: "round"}[v.Kind]
	return fmt.Sprintf("%s %.0f %.0f at %.0f %.0f", kind, v.Turn, v.Rise, v.At.X, v.At.Y)
}

// ShowPicture takes the picture, ShowDrawing the drawing.
func (p *Page) ShowPicture() { p.show(true) }

// ShowDrawing takes the drawing.
func (p *Page) ShowDrawing() { p.show(false) }

// BackOut goes back from a close look; it reports whether there was one.
func (p *Page) BackOut() bool { return p.picture && p.photo.back() }

// Wall reports whether walls stand at wall edges in the picture.
func (p *Page) Wall() bool { return !p.photo.about.NoWall }

// ToggleWall puts the walls at wall edges into the picture or takes them out.
func (p *Page) ToggleWall() {
	about := p.photo.about
	about.NoWall = !about.NoWall
	p.photo.setAbout(about)
	p.showAbout()
}

// Below is what the top stands on in the picture.
func (p *Page) Below() picture.Below {
	if b := p.photo.about.Below; b != picture.BelowDesigned {
		return b
	}
	if picture.HasLegs(p.s.Report().Solid) {
		return picture.BelowLegs
	}
	return picture.BelowCabinet
}

// ToggleBelow puts a cabinet or legs below the top, or nothing.
func (p *Page) ToggleBelow(what picture.Below) {
	about := p.photo.about
	if p.Below() == what {
		what = picture.BelowNothing
	}
	about.Below = what
	p.photo.setAbout(about)
	p.showAbout()
}

// showAbout shows on the buttons what stands about the top.
func (p *Page) showAbout() {
	walls := picture.HasWalls(p.s.Report().Solid)
	p.wall.SetEnabled(walls)
	p.wall.SetOn(walls && p.Wall())
	p.cabinet.SetOn(p.Below() == picture.BelowCabinet)
	p.legs.SetOn(p.Below() == picture.BelowLegs)
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
	p.showAbout()
	p.tell()
	p.grown.over.Refresh() // what is new in the bar has its theme too
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
	many := len(options) > p.mostLetters()
	if strings.Join(names, "\n") != strings.Join(p.names, "\n") || many != p.many || many {
		p.many = many
		p.names = names
		p.letters.RemoveAll()
		if many {
			p.letters.Add(control.Middle(control.Pad(0, look.Space,
				control.NewText(fmt.Sprintf("%d of %d", at+1, len(options))))))
		}
		for _, o := range options {
			if len(options) == 1 || many {
				break // nothing to choose, or too many for a button each
			}
			hint := "Shows option " + o.Name + "."
			if o.Title != "" {
				hint = "Shows option " + o.Name + ": " + o.Title + "."
			}
			b := control.NewButton(p.frame, control.Face{Text: o.Name, Hint: hint}, func() { p.s.SetOption(o.Name) })
			p.letters.Add(p.grown.sized(touch, touch, b))
		}
	}
	if len(options) > 1 && !many {
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

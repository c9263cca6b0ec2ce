// Package showing is the view for the client's eyes: the whole window for the
// option in hand, as a drawing to scale with large type or as a photo-like
// picture that turns under the hand. Nothing can be changed in it.
package showing

import (
	"image"

	"example.org/castwright/export/raster"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/scene"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// Page is the showing view of a session. It belongs to the main goroutine.
type Page struct {
	Object fyne.CanvasObject

	s     *session.Session
	frame *control.Frame

	title, sub, progress *control.Text
	drawing              *control.Picture
	photo                *photo
	mode                 *control.Segments
	from                 *control.Segments
	dims, colours        *control.Button
	before, after        *control.Button
	dimensions, textures bool
}

// Large is how much larger than on the board the type of the drawing is.
const large = 1.7

// New is a page on a session. close leaves it; step takes another option in hand.
func New(s *session.Session, f *control.Frame, close func(), step func(by int)) *Page {
	p := &Page{s: s, frame: f, dimensions: true, textures: true}
	p.title, p.sub = control.NewText("").Figure().Cut(), control.NewText("").Muted().Cut()
	p.progress = control.NewText("").Muted().Caption().Right()
	p.drawing = control.NewPicture(f, 200, 140, p.paint)
	p.photo = newPhoto(s, f, p.progress.SetText)
	button := func(face control.Face, do func()) *control.Button { return control.NewButton(f, face, do) }
	p.before = button(control.Face{Icon: icon.Left, Hint: "The option before this one (Ctrl+PageUp)."}, func() { step(-1) })
	p.after = button(control.Face{Icon: icon.Right, Hint: "The option after this one (Ctrl+PageDown)."}, func() { step(1) })
	p.photo.walked = func() { p.from.SetPicked(-1) }
	p.mode = control.NewSegments(f, []control.Face{
		{Text: "Drawing", Hint: "The top from above, to scale."},
		{Text: "Picture", Hint: "The top as it will look; drag to walk round it, turn the wheel to come nearer."},
	}, p.show)
	p.from = control.NewSegments(f, []control.Face{
		{Text: "From the front", Hint: "The picture from the front and above."},
		{Text: "From above", Hint: "The picture from straight above."},
		{Text: "Close", Hint: "The picture from close by."},
	}, func(i int) { p.photo.take(i) })
	p.dims = button(control.Face{Icon: icon.Dimension, Text: "Sizes", Hint: "Dimension lines on the drawing, or none."}, func() {
		p.dimensions = !p.dimensions
		p.Refresh()
	})
	p.colours = button(control.Face{Icon: icon.Texture, Text: "Finish", Hint: "The colours of the finish on the drawing, or plain ones."}, func() {
		p.textures = !p.textures
		p.Refresh()
	})
	back := button(control.Face{Icon: icon.Close, Text: "Back to work", Hint: "Leaves the view for the client (Esc).",
		Kind: control.Raised}, close)
	head := container.NewBorder(nil, nil, control.Row(look.Gap, p.before, p.after),
		nil, control.Pad(0, look.Section, control.Column(0, p.title, p.sub)))
	foot := container.NewBorder(nil, nil,
		control.Row(look.Space, control.Sized(200, 0, p.mode.Container), p.dims, p.colours, control.Sized(360, 0, p.from.Container)),
		back, control.Pad(0, look.Section, control.Middle(p.progress)))
	pictures := container.NewStack(p.drawing, p.photo)
	p.Object = control.Ground(look.Ground, container.NewBorder(control.Pad(look.Section, look.Section, head),
		control.Pad(look.Space, look.Section, foot), nil, nil, pictures))
	p.Object.Hide()
	s.OnChange(func(session.Change) {
		p.photo.changed()
		if p.Object.Visible() {
			p.Refresh()
		}
	})
	return p
}

// Open shows the option in hand as a drawing.
func (p *Page) Open() {
	p.Object.Show()
	p.show(0)
}

// Close leaves the page and stops what it works at.
func (p *Page) Close() {
	p.photo.stop()
	p.Object.Hide()
}

// show takes the drawing (0) or the picture (1).
func (p *Page) show(mode int) {
	p.mode.SetPicked(mode)
	if mode == 1 {
		p.drawing.Hide()
		p.dims.Hide()
		p.colours.Hide()
		p.from.Container.Show()
		p.from.SetPicked(0)
		p.photo.Show()
		p.photo.take(0)
	} else {
		p.photo.stop()
		p.photo.Hide()
		p.from.Container.Hide()
		p.progress.SetText("")
		p.drawing.Show()
		p.dims.Show()
		p.colours.Show()
	}
	p.Refresh()
}

// Refresh shows the option as it is.
func (p *Page) Refresh() {
	o := p.s.Option()
	title := o.Title
	if title == "" {
		title = "Option " + o.Name
	}
	p.title.SetText(title)
	sub := "Option " + o.Name
	if c := p.s.Job().Client; c != "" {
		sub += "  ·  " + c
	}
	p.sub.SetText(sub)
	options := p.s.Job().Options
	p.before.SetEnabled(len(options) > 1 && options[0].Name != o.Name)
	p.after.SetEnabled(len(options) > 1 && options[len(options)-1].Name != o.Name)
	p.dims.SetOn(p.dimensions)
	p.colours.SetOn(p.textures)
	p.drawing.Renew()
	if p.photo.Visible() {
		p.photo.ask()
	}
}

// paint draws the plan, as large as fits with room for its dimensions.
func (p *Page) paint(w, h int) control.Paint {
	px := float64(w) / float64(max(1, p.drawing.Size().Width))
	o, r := p.s.Option(), p.s.Report()
	room := 48.0
	if p.dimensions {
		room = 62 * large
	}
	v := draw.Fit(r.Solid.Outline.Bounds(), float64(w), float64(h), room*px)
	v.Point, v.Units = large*px, p.s.Job().Units
	v.Theme = draw.Light()
	if look.IsDark() {
		v.Theme = draw.Dark()
	}
	v.Theme.Ground = scene.Colour{}
	v.Show = draw.Show{Textures: p.textures, Dimensions: p.dimensions, Walls: true, Taps: true}
	return func() *image.RGBA { return raster.Image(draw.Plan(o.Design, r, v)) }
}

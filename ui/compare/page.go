package compare

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/export/raster"
	"example.org/castwright/model/amount"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
)

// Page is the comparison of two options of a session. It belongs to the main
// goroutine.
type Page struct {
	Object fyne.CanvasObject
	// OnExport is asked to write the two options as a page; nil for nobody.
	OnExport func(a, b string)

	s       *session.Session
	frame   *control.Frame
	close   func()
	a, b    string // names of the options
	chooseA *control.Choice
	chooseB *control.Choice
	picA    *control.Picture
	picB    *control.Picture
	titleA  *control.Text
	titleB  *control.Text
	table   *fyne.Container
	only    *control.Check
	same    bool // rows that are the same are shown too
}

// New is a page on a session; close leaves it.
func New(s *session.Session, f *control.Frame, close func()) *Page {
	p := &Page{s: s, frame: f, close: close, same: true}
	p.titleA, p.titleB = control.NewText("").Bold().Cut(), control.NewText("").Bold().Cut()
	p.picA = control.NewPicture(f, 200, 140, func(w, h int) control.Paint { return p.paint(p.a, w, h) })
	p.picB = control.NewPicture(f, 200, 140, func(w, h int) control.Paint { return p.paint(p.b, w, h) })
	p.chooseA = control.NewChoice(f, "The option at the left.", nil, func(i int) { p.pick(&p.a, i) })
	p.chooseB = control.NewChoice(f, "The option at the right.", nil, func(i int) { p.pick(&p.b, i) })
	p.only = control.NewCheck(f, "Only what differs", "Leaves out what is the same in both.",
		func(on bool) {
			p.same = !on
			p.fill()
		})
	back := control.NewButton(f, control.Face{Icon: icon.Close, Text: "Back to drawing",
		Hint: "Leaves the comparison (Esc).", Kind: control.Raised}, close)
	export := control.NewButton(f, control.Face{Icon: icon.Export, Text: "Export…",
		Hint: "Writes the two as one page, with what differs.", Kind: control.Raised}, func() {
		if p.OnExport != nil {
			p.OnExport(p.a, p.b)
		}
	})
	head := container.NewBorder(nil, nil,
		control.Middle(control.NewText("Two options side by side").Heading()),
		control.Row(look.Space, p.only, export, back))
	side := func(choice *control.Choice, title *control.Text,
		picture *control.Picture) fyne.CanvasObject {
		top := container.NewBorder(nil, nil, control.Sized(104, 0, control.Rimmed(choice)), nil,
			control.Pad(0, look.Space, control.Middle(title)))
		return container.NewBorder(control.Pad(look.Gap, 0, top), nil, nil, nil,
			control.Ground(look.Ground, picture))
	}
	pictures := container.NewGridWithColumns(2, side(p.chooseA, p.titleA, p.picA),
		side(p.chooseB, p.titleB, p.picB))
	p.table = control.Column(0)
	p.Object = control.Ground(theme.ColorNameBackground, control.Pad(look.Space, look.Section,
		container.NewBorder(head, nil, nil, nil, container.New(halves{}, pictures,
			control.Ground(look.Surface,
				container.NewVScroll(control.Pad(look.Space, look.Section, p.table)))))))
	s.OnChange(func(session.Change) {
		if p.Object.Visible() {
			p.Refresh()
		}
	})
	p.Object.Hide()
	return p
}

// halves gives the pictures a little more than half of the height.
type halves struct{}

func (halves) MinSize(objects []fyne.CanvasObject) fyne.Size {
	a, b := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(fyne.Max(a.Width, b.Width), a.Height+120)
}

func (halves) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	h := fyne.Max(objects[0].MinSize().Height, size.Height*0.5)
	objects[0].Move(fyne.NewPos(0, 0))
	objects[0].Resize(fyne.NewSize(size.Width, h))
	objects[1].Move(fyne.NewPos(0, h+look.Space))
	objects[1].Resize(fyne.NewSize(size.Width, size.Height-h-look.Space))
}

// Open shows the option in hand beside the one next to it.
func (p *Page) Open() {
	options := p.s.Job().Options
	p.a, p.b = p.s.Option().Name, ""
	for i, o := range options {
		if o.Name == p.a {
			j := i + 1
			if j == len(options) {
				j = i - 1
			}
			if j >= 0 {
				p.b = options[j].Name
			}
			if j < i {
				p.a, p.b = p.b, p.a // in the order of the strip
			}
			break
		}
	}
	p.Object.Show()
	p.Refresh()
}

// Shown is the names of the two options.
func (p *Page) Shown() (a, b string) { return p.a, p.b }

func (p *Page) pick(which *string, i int) {
	if options := p.s.Job().Options; i >= 0 && i < len(options) {
		*which = options[i].Name
		p.Refresh()
	}
}

// Refresh shows the options as they are.
func (p *Page) Refresh() {
	options := p.s.Job().Options
	var names []string
	at := map[string]int{p.a: -1, p.b: -1}
	for i, o := range options {
		names = append(names, "Option "+o.Name)
		at[o.Name] = i
	}
	p.chooseA.Options, p.chooseB.Options = names, names
	p.chooseA.SetPicked(at[p.a])
	p.chooseB.SetPicked(at[p.b])
	p.fill()
	p.picA.Renew()
	p.picB.Renew()
}

func (p *Page) side(name string) Side {
	o, _ := p.s.Job().Option(name)
	r, _ := p.s.ReportOf(name)
	return Side{o, r}
}

// margin is the room for the dimensions around a top, in points.
const margin = 72

// paint draws an option's plan, both at the same scale.
func (p *Page) paint(name string, w, h int) control.Paint {
	px := float32(w) / fyne.Max(1, p.picA.Size().Width)
	var scales []float64
	var box geom.Box
	for _, n := range []string{p.a, p.b} {
		r, ok := p.s.ReportOf(n)
		if !ok {
			continue
		}
		b := r.Solid.Outline.Bounds()
		scales = append(scales, draw.Fit(b, float64(w), float64(h), margin*float64(px)).Scale)
		if n == name {
			box = b
		}
	}
	o, ok := p.s.Job().Option(name)
	r, _ := p.s.ReportOf(name)
	if !ok {
		return func() *image.RGBA { return image.NewRGBA(image.Rect(0, 0, w, h)) }
	}
	v := draw.Fit(box, float64(w), float64(h), margin*float64(px))
	for _, s := range scales {
		v.Scale = math.Min(v.Scale, s)
	}
	v.Point, v.Units = float64(px), p.s.Job().Units
	v.Theme = draw.Light()
	if look.IsDark() {
		v.Theme = draw.Dark()
	}
	v.Theme.Ground = scene.Colour{}
	v.Show.ScaleBar = false // it would run into the dimensions, which say more
	return func() *image.RGBA { return raster.Image(draw.Plan(o.Design, r, v)) }
}

// fill shows the lines of the comparison.
func (p *Page) fill() {
	a, b := p.side(p.a), p.side(p.b)
	p.titleA.SetText(a.Option.Title)
	p.titleB.SetText(b.Option.Title)
	lines := Lines(a, b, p.s.Job().Materials, p.s.Job().Units)
	p.table.RemoveAll()
	head := newLine(Line{What: "", A: "Option " + p.a, B: "Option " + p.b,
		Change: "From " + p.a + " to " + p.b}, true)
	p.table.Add(head)
	n := 0
	for _, l := range lines {
		if l.Differs {
			n++
		}
		if l.Differs || p.same {
			p.table.Add(control.Rule())
			p.table.Add(newLine(l, false))
		}
	}
	if n == 0 {
		p.table.Add(control.SmallLines("The two are the same."))
	}
	p.only.SetText("Only what differs (" + amount.Count(n, "line") + ")")
}

// newLine is a row of the table. What differs has a mark, what is the same steps
// back.
func newLine(l Line, head bool) fyne.CanvasObject {
	cell := func(text string, strong bool) *widget.Label {
		w := control.Lines(text)
		w.TextStyle.Bold = strong
		if !head && !l.Differs {
			w.Importance = widget.LowImportance
		}
		return w
	}
	mark := ""
	if l.Differs {
		mark = "≠"
	}
	return container.New(columns{}, cell(mark, true), cell(l.What, head), cell(l.A, head),
		cell(l.B, head), cell(l.Change, head))
}

// columns are the table's: mark, name, two values, change.
type columns struct{}

func (columns) widths(w float32) [5]float32 {
	mark, name, change := float32(28), float32(148), float32(136)
	rest := fyne.Max(100, w-mark-name-change) / 2
	return [5]float32{mark, name, rest, rest, change}
}

func (c columns) MinSize(objects []fyne.CanvasObject) fyne.Size {
	h := float32(0)
	for _, o := range objects {
		h = fyne.Max(h, o.MinSize().Height)
	}
	return fyne.NewSize(480, h)
}

func (c columns) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	x := float32(0)
	for i, w := range c.widths(size.Width) {
		objects[i].Move(fyne.NewPos(x, 0))
		objects[i].Resize(fyne.NewSize(w, objects[i].MinSize().Height))
		x += w
	}
}

package panel

import (
	"fmt"

	"example.org/castwright/model/design"
	"example.org/castwright/ui/control"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// row shows one field: its label, its control, and below it what is wrong with a
// text that was refused.
type row struct {
	p   *Panel
	f   field
	key string // of a text that was refused, among all that were
	box *fyne.Container

	entry   *control.Entry
	reading *control.Text
	choice  *control.Choice
	check   *control.Check
	dye     *dye
	fault   *widget.Label
}

// The width of the labels' column and the height of a line, in points.
const (
	labelWidth = 92
	lineHeight = 26
)

func (p *Panel) newRow(f field, key string) *row {
	r := &row{p: p, f: f, key: key}
	var o fyne.CanvasObject
	switch f.kind {
	case kindHeading:
		r.box = control.Pad(look.Gap, 0, control.NewText(f.label).Bold().Cut())
		return r
	case kindText, kindNotes:
		r.entry = control.NewEntry(p.frame, f.hint)
		r.entry.Commit = r.commit
		r.entry.OnFault = r.showFault
		if f.nudge != nil {
			r.entry.Nudge = r.nudge
		}
		if f.kind == kindNotes {
			r.entry.MultiLine, r.entry.Wrapping = true, fyne.TextWrapWord
			r.entry.SetMinRowsVisible(2)
		}
		o = r.entry
	case kindReading:
		r.reading = control.NewText(f.text).Cut()
		o = control.Pad(0, look.Space, control.Sized(0, lineHeight, control.Middle(r.reading)))
	case kindChoice:
		r.choice = control.NewChoice(p.frame, f.hint, f.words, func(i int) {
			if i >= 0 && i != r.f.at {
				r.do(func() error { return p.s.Do(r.f.pick(i)) })
			}
		})
		o = control.Sized(0, lineHeight, control.Rimmed(r.choice))
	case kindTick:
		r.check = control.NewCheck(p.frame, "", f.hint,
			func(on bool) { r.do(func() error { return p.s.Do(r.f.tick(on)) }) })
		o = r.check
	case kindColour:
		r.dye = newDye(p.frame, f.hint, f.palette,
			func(c design.Colour) { r.do(func() error { return p.s.Do(r.f.dye(c)) }) })
		o = r.dye.Tile // itself: what embeds it would be another widget to the toolkit
	}
	r.fault = control.SmallLines("")
	r.fault.Importance = widget.DangerImportance
	r.fault.Hide()
	label := control.NewText(f.label).Muted().Cut()
	r.box = control.Column(0, container.New(line{}, label, o), r.fault)
	r.update(f)
	if text, ok := p.kept[key]; ok && r.entry != nil {
		r.entry.Keep(text)
	}
	return r
}

// update shows the field as it is now.
func (r *row) update(f field) {
	r.f = f
	switch {
	case r.entry != nil:
		r.entry.SetHint(f.hint)
		if f.empty != "" {
			r.entry.SetPlaceHolder(f.empty)
		}
		r.entry.SetValue(f.text)
	case r.reading != nil:
		r.reading.SetText(f.text)
	case r.choice != nil:
		r.choice.SetPicked(f.at)
	case r.check != nil:
		r.check.SetTicked(f.text == "yes")
	case r.dye != nil:
		r.dye.set(f.colour)
	}
}

func (r *row) commit(text string) error {
	e, err := r.f.parse(text)
	if err != nil {
		return err
	}
	if err := r.p.s.Do(e); err != nil {
		return err
	}
	if r.entry != nil {
		r.entry.SetValue(r.f.text) // also where the edit changed nothing
	}
	return nil
}

// nudge moves the value; nudges that follow each other are one step of undo.
func (r *row) nudge(steps int) {
	r.do(func() error {
		if r.p.nudging != r {
			r.p.s.BeginGesture()
		}
		r.p.ownNudge = true
		err := r.p.s.DoGesture(r.f.nudge(steps))
		r.p.ownNudge, r.p.nudging = false, r
		return err
	})
}

// do shows why an edit was refused.
func (r *row) do(edit func() error) {
	err := edit()
	r.showFault(err)
	if err != nil {
		r.update(r.f)
	}
}

// showFault says below the field what is wrong, in words.
func (r *row) showFault(err error) {
	switch {
	case err == nil:
		delete(r.p.kept, r.key)
		if r.fault.Visible() {
			r.fault.Hide()
			r.p.relayout()
		}
		return
	case r.entry != nil:
		if text, pending := r.entry.Pending(); pending {
			r.p.kept[r.key] = text
		}
	}
	r.fault.SetText(control.Sentence(err.Error()))
	r.fault.Show()
	r.p.relayout()
}

// line sets a label and a control beside each other.
type line struct{}

func (line) MinSize(objects []fyne.CanvasObject) fyne.Size {
	label, o := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(labelWidth+o.Width, fyne.Max(label.Height, o.Height))
}

func (line) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	label, o := objects[0], objects[1]
	h := label.MinSize().Height
	label.Move(fyne.NewPos(0, (fyne.Min(size.Height, lineHeight)-h)/2))
	label.Resize(fyne.NewSize(labelWidth-look.Space, h))
	least := o.MinSize().Height
	o.Move(fyne.NewPos(labelWidth, (size.Height-least)/2))
	o.Resize(fyne.NewSize(size.Width-labelWidth, least))
}

// dye is a button that shows a colour and opens the palette for another one.
type dye struct {
	*control.Tile
	frame   *control.Frame
	palette palette
	picked  func(design.Colour)
	colour  design.Colour
	patch   *patch
	name    *control.Text
}

func newDye(f *control.Frame, hint string, p palette, picked func(design.Colour)) *dye {
	d := &dye{frame: f, palette: p, picked: picked, patch: newPatch(), name: control.NewText("").Cut()}
	body := container.NewBorder(nil, nil, control.Sized(28, 18, d.patch), nil,
		control.Pad(0, look.Gap, control.Middle(d.name)))
	d.Tile = control.NewTile(f, hint, control.Pad(look.Gap, look.Gap+2, body),
		d.open).OnGround(theme.ColorNameButton)
	return d
}

func (d *dye) set(c design.Colour) {
	d.colour = c
	d.patch.set(c)
	name := ColourName(d.palette.swatches(), c)
	if name == "" {
		name = Hex(c)
	}
	d.name.SetText(name)
}

// open offers the palette.
func (d *dye) open() {
	var card *control.Popover
	pick := func(c design.Colour) {
		card.Close()
		d.picked(c)
	}
	grid := Swatches(d.frame, d.palette.swatches(), d.colour, pick)
	own := control.NewEntry(d.frame, "Any colour as #rrggbb; Enter takes it.")
	own.SetValue(Hex(d.colour))
	fault := control.SmallLines("")
	fault.Importance = widget.DangerImportance
	own.OnFault = func(err error) {
		if err != nil {
			fault.SetText(control.Sentence(err.Error()))
		} else {
			fault.SetText("")
		}
	}
	own.Commit = func(text string) error {
		c, err := ReadHex(text)
		if err == nil {
			pick(c)
		}
		return err
	}
	typed := container.New(line{}, control.NewText("Own colour").Muted(), own)
	card = control.ShowPopover(d.frame, d,
		control.Column(look.Space, grid, typed, control.Narrow(280, fault)), nil, nil)
}

// Swatches is a grid of colours with their names; the present one is marked.
func Swatches(f *control.Frame, list []Swatch, present design.Colour,
	pick func(design.Colour)) fyne.CanvasObject {
	grid := container.NewGridWithColumns(4)
	for _, s := range list {
		p := newPatch()
		p.set(s.Colour)
		t := control.NewTile(f, fmt.Sprintf("%s, %s. A click takes it.", s.Name, Hex(s.Colour)),
			control.Pad(look.Gap, look.Gap,
				control.Column(2, control.Sized(62, 28, p),
					control.NewText(s.Name).Caption().Centred())), func() { pick(s.Colour) })
		t.SetOn(s.Colour == present)
		grid.Add(t)
	}
	return grid
}

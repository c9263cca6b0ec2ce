package ui

import (
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/keys"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// bar is the compact bar at the top: the menus, what is in hand, undo and redo,
// what is seen.
type bar struct {
	menus      *keys.Bar
	object     fyne.CanvasObject
	name       *control.Text
	option     *control.Text
	title      *fyne.Container
	undo, redo *control.Button
	looks      map[keys.ID]*control.Button
	units      *control.Segments
	theme      *control.Button
}

func (w *window) newBar() *bar {
	b := &bar{name: control.NewText("").Bold().Cut(), option: control.NewText("").Muted().Cut(),
		looks: map[keys.ID]*control.Button{}}
	button := func(id keys.ID, res fyne.Resource) *control.Button {
		return control.NewButton(w.frame, control.Face{Icon: res, Hint: keys.Hint(id)},
			func() { w.keys.Run(id) })
	}
	b.undo, b.redo = button(keys.Undo, icon.Undo), button(keys.Redo, icon.Redo)
	show := control.Row(2)
	for _, l := range []struct {
		id  keys.ID
		res fyne.Resource
	}{
		{keys.Dimensions, icon.Dimension}, {keys.Textures, icon.Texture}, {keys.Supports,
			icon.Supports}, {keys.Grid, icon.Grid},
	} {
		b.looks[l.id] = button(l.id, l.res)
		show.Add(b.looks[l.id])
	}
	b.units = control.NewSegments(w.frame, []control.Face{
		{Text: "mm", Hint: "Metric: " + keys.Hint(keys.Units)}, {Text: "in",
			Hint: "Inches with fractions: " + keys.Hint(keys.Units)},
	}, func(int) { w.keys.Run(keys.Units) })
	b.theme = button(keys.Theme, icon.Moon)
	b.menus = keys.NewBar(w.frame, w.keys)
	left := control.Row(look.Gap, b.menus.Object, gap(),
		button(keys.NewJob, icon.New), button(keys.Open, icon.Open), button(keys.Save,
			icon.Save), button(keys.ExportPicture, icon.Export),
		gap(), b.undo, b.redo, gap(), button(keys.JobSettings, icon.Settings), gap())
	right := control.Row(look.Gap, show, gap(), control.Sized(92, 0, b.units.Container), gap(), b.theme,
		button(keys.Showing, icon.Show), button(keys.Actions, icon.Keys))
	b.title = container.New(titled{}, b.name, b.option)
	b.object = control.Pad(look.Gap, look.Space, container.NewBorder(nil, nil, left, right,
		b.title))
	return b
}

// titled sets the job's name and the option beside each other; where there is no room
// for both the option goes, which the strip shows too.
type titled struct{}

// optionLeast is the least room in which an option's words say something.
const optionLeast = 64

func (titled) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(optionLeast, objects[0].MinSize().Height)
}

func (titled) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	name, option := objects[0].(*control.Text), objects[1]
	w := fyne.Min(size.Width, fyne.MeasureText(name.Text(), look.Body, fyne.TextStyle{Bold: true}).Width+2)
	h := name.MinSize().Height
	name.Move(fyne.NewPos(0, (size.Height-h)/2))
	name.Resize(fyne.NewSize(w, h))
	left := size.Width - w - look.Space
	option.Move(fyne.NewPos(w+look.Space, (size.Height-h)/2))
	if left < optionLeast {
		option.Hide()
		return
	}
	option.Show()
	option.Resize(fyne.NewSize(left, h))
}

// gap is a thin line between groups of buttons.
func gap() fyne.CanvasObject {
	return control.Pad(look.Gap, look.Gap, control.Sized(1, 0,
		control.NewFill(theme.ColorNameSeparator, 0)))
}

// show shows the state of the window.
func (b *bar) show(w *window) {
	b.name.SetText(w.jobName())
	o := w.session.Option()
	words := "· Option " + o.Name
	if o.Title != "" {
		words += ": " + o.Title
	}
	b.option.SetText(words)
	b.title.Refresh()
	step := func(button *control.Button, id keys.ID, name string) {
		button.SetEnabled(name != "")
		face := button.Face()
		face.Hint = keys.Hint(id)
		if name != "" {
			face.Hint = w.keys.Name(id) + " (" + keys.ByID(id).Key.String() + ")"
		}
		button.SetFace(face)
	}
	step(b.undo, keys.Undo, w.session.UndoName())
	step(b.redo, keys.Redo, w.session.RedoName())
	if w.session.Job().Units == units.Imperial {
		b.units.SetPicked(1)
	} else {
		b.units.SetPicked(0)
	}
	s := w.board.Shown()
	for id, on := range map[keys.ID]bool{keys.Dimensions: s.Dimensions, keys.Textures: s.Textures,
		keys.Supports: s.Supports, keys.Grid: s.Grid} {
		b.looks[id].SetOn(on)
	}
	face := b.theme.Face()
	face.Icon = icon.Moon
	if look.IsDark() {
		face.Icon = icon.Sun
	}
	b.theme.SetFace(face)
}

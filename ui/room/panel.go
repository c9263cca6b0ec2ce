package room

import (
	"fmt"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/export/room"
	"example.org/castwright/model/design"
	"example.org/castwright/model/pose"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	look "example.org/castwright/ui/theme"
)

// The panel's width and what its scroll bar takes of it, in points.
const (
	panelWidth = 304
	barWidth   = 12
)

var closeIcon = icon.Close

// panel is what is set beside the photograph.
type panel struct {
	object fyne.CanvasObject
	p      *Page

	name          *control.Text
	marks         *control.Segments
	size          *control.Entry
	sheet         *control.Choice
	sheetRow      fyne.CanvasObject
	right, back   *control.Entry
	rightL, backL *control.Text
	turn, old     *control.Entry
	brighter      *stepper
	warmer        *stepper
	from          *control.Choice
	bad           *widget.Label
	notes         *widget.Label
	compose       *control.Button
	see           *control.Segments
	save, marking *control.Button
	bar           *widget.ProgressBar
	stage         *control.Text
	stop          *control.Button
	working       *fyne.Container
	shown         *fyne.Container // what is for the picture alone
	entries       []*control.Entry
}

// sheets are those that lie on many a desk: ISO 216 and ANSI/ASME Y14.1.
var sheets = []struct{ name, size string }{
	{"A4 along the back", "A4"}, {"A4 front to back", "A4 upright"},
	{"Letter along the back", "Letter"}, {"Letter front to back", "Letter upright"},
	{"A3 along the back", "A3"}, {"Another size", ""},
}

func newPanel(p *Page) *panel {
	n := &panel{p: p}
	f := p.frame
	n.name = control.NewText("").Muted().Cut()
	other := control.NewButton(f, control.Face{Icon: icon.Open, Text: "Another…", Hint: "Chooses another photograph of the room.", Kind: control.Raised}, p.Choose)
	n.marks = control.NewSegments(f, []control.Face{
		{Text: "Present top", Hint: "The four corners are those of the present top's face."},
		{Text: "Sheet of paper", Hint: "The four corners are those of a white sheet that lies on the top; it tells size and light exactly."},
	}, n.mark)
	n.size = n.entry("Width along the back and depth of what is marked, such as 60 × 22 in; or the name of a sheet.", n.setSize)
	n.sheet = control.NewChoice(f, "Which sheet of paper lies there, and whether its long side runs along the back or from front to back.", nil, n.pickSheet)
	for _, s := range sheets {
		n.sheet.Options = append(n.sheet.Options, s.name)
	}
	n.right = n.entry("", n.setRight)
	n.back = n.entry("", n.setBack)
	n.rightL, n.backL = control.NewText("").Muted().Cut(), control.NewText("").Muted().Cut()
	n.turn = n.entry("By how much the new top is turned about its back left corner, counter-clockwise.", n.setTurn)
	n.old = n.entry("How thick the present top is; with nothing, as thick as the new one.", n.setOld)
	n.old.SetPlaceHolder("as the new one")
	n.brighter = newStepper(f, "light on the top", "Darker", "Brighter", 25*units.Percent, design.MaxBrighter, func(s units.Share) error {
		return p.change(func(r *design.Room) { r.Lit.Brighter = s })
	})
	n.warmer = newStepper(f, "colour of the light on the top", "Cooler", "Warmer", 10*units.Percent, units.Whole, func(s units.Share) error {
		return p.change(func(r *design.Room) { r.Lit.Warmer = s })
	})
	n.from = control.NewChoice(f, "Where most of the light comes from.", []string{"as judged", "left", "right", "front", "above"},
		func(i int) { n.set(func(r *design.Room) { r.Lit.From = design.LightFrom(i) }) })
	n.bad = control.SmallLines("")
	n.bad.Importance = widget.DangerImportance
	n.bad.Hide()
	n.notes = control.SmallLines("")

	line := func(label *control.Text, o fyne.CanvasObject) fyne.CanvasObject {
		return container.New(row{}, label, o)
	}
	named := func(label string, o fyne.CanvasObject) fyne.CanvasObject {
		return line(control.NewText(label).Muted().Cut(), o)
	}
	section := func(title string, rest ...fyne.CanvasObject) []fyne.CanvasObject {
		return append([]fyne.CanvasObject{control.Pad(look.Space, 0, control.Rule()), control.NewText(title).Bold()}, rest...)
	}
	n.sheetRow = named("Sheet", control.Rimmed(n.sheet))
	body := []fyne.CanvasObject{control.NewText("Photograph").Bold(),
		container.NewBorder(nil, nil, nil, other, control.Middle(n.name))}
	body = append(body, section("The corners are those of", n.marks.Container, n.sheetRow, named("Its size", n.size))...)
	body = append(body, section("The new top", line(n.rightL, n.right), line(n.backL, n.back), named("Turned", n.turn), named("Old top's thickness", n.old))...)
	body = append(body, section("Light", named("Strength", n.brighter.object), named("Colour", n.warmer.object), named("Comes from", control.Rimmed(n.from)))...)
	scroll := container.NewVScroll(container.New(layout.NewCustomPaddedLayout(0, 0, look.Gap, barWidth), control.Column(look.Gap, body...)))

	n.compose = control.NewButton(f, control.Face{Icon: icon.Picture, Text: "Set the top in", Kind: control.Primary,
		Hint: "Sets the option in hand into the photograph (Enter)."}, p.Compose)
	n.see = control.NewSegments(f, []control.Face{
		{Text: "New top", Hint: "The room with the new top."},
		{Text: "As it is", Hint: "The room as it is; holding Space shows it too."},
		{Text: "Both", Hint: "A line to drag across the picture: the room as it is to its left (W)."},
	}, func(i int) { p.look(seen(i)) })
	n.save = control.NewButton(f, control.Face{Icon: icon.Export, Text: "Save picture…", Kind: control.Raised,
		Hint: "Writes the picture as a PNG that holds nothing of where it was taken."}, p.Save)
	n.marking = control.NewButton(f, control.Face{Text: "Corners", Kind: control.Raised,
		Hint: "Back to the corners and the wire (Esc)."}, p.marks)
	n.bar = widget.NewProgressBar()
	n.stage = control.NewText("").Muted().Cut()
	n.stop = control.NewButton(f, control.Face{Icon: icon.Close, Hint: "Stops here; the picture stays as it is (Esc)."}, p.halt)
	n.working = control.Column(look.Gap, n.stage, container.NewBorder(nil, nil, nil, n.stop, control.Middle(control.Sized(0, 18, n.bar))))
	large := control.NewButton(f, control.Face{Icon: icon.Full, Text: "Larger", Kind: control.Raised,
		Hint: "Shows the top large, over the room of this panel too (F); Esc takes it back."}, func() { p.enlarge(true) })
	n.shown = control.Column(look.Space, n.see.Container, container.NewGridWithColumns(2, large, n.marking), n.save)
	foot := control.Column(look.Space, control.Rule(), n.bad, n.notes, n.working, n.compose, n.shown)
	n.object = container.NewBorder(nil, container.New(layout.NewCustomPaddedLayout(0, 0, look.Gap, barWidth), foot), nil, nil, scroll)
	return n
}

// entry is an entry whose text is read by commit; a fault is said at the foot.
func (n *panel) entry(hint string, commit func(string) error) *control.Entry {
	e := control.NewEntry(n.p.frame, hint)
	e.Commit = commit
	e.OnFault = func(error) { n.tell() }
	n.entries = append(n.entries, e)
	return e
}

// refused is why a text that was typed is no value, nil when all are.
func (n *panel) refused() error {
	for _, e := range n.entries {
		if err := e.Fault(); err != nil {
			return err
		}
	}
	return nil
}

// tell says at the foot what keeps the top from being set in; what is wrong with a
// corner is said beside it.
func (n *panel) tell() {
	err := n.refused()
	if err == nil && n.p.fault() == nil {
		err = n.p.Able()
	}
	n.fault(err)
	n.compose.SetEnabled(err == nil && n.p.fault() == nil)
}

// fault says what is wrong, nil that nothing is.
func (n *panel) fault(err error) {
	if err == nil {
		if n.bad.Visible() {
			n.bad.Hide()
			n.object.Refresh()
		}
		return
	}
	n.bad.SetText(control.Sentence(err.Error()))
	n.bad.Show()
	n.object.Refresh()
}

// set changes the room and says why not.
func (n *panel) set(change func(*design.Room)) {
	if err := n.p.change(change); err != nil {
		n.fault(err)
	}
}

func (n *panel) mark(i int) {
	p := n.p
	n.set(func(r *design.Room) {
		if r.Marks = design.Marked(i); r.Marks == design.MarkedTop {
			r.Width, r.Depth = p.extent()
			r.At = design.Point{}
			return
		}
		size := "A4"
		if p.s.Job().Units == units.Imperial {
			size = "Letter"
		}
		r.Width, r.Depth, _ = pose.ParseSize(size, p.s.Job().Units)
		r.At = p.centred(r.Width, r.Depth)
	})
}

// centred is where the new top lies with its middle at that of a sheet.
func (p *Page) centred(w, d units.Length) design.Point {
	at := room.Standing(p.s.Report().Solid, w.MM(), d.MM(), true, 0)
	round := func(x float64) units.Length { return units.FromMM(x) / units.Millimetre * units.Millimetre }
	return design.Point{X: round(at.X), Y: round(at.Y)}
}

func (n *panel) pickSheet(i int) {
	if i < 0 || i >= len(sheets) || sheets[i].size == "" {
		n.p.frame.Window.Canvas().Focus(n.size)
		return
	}
	if err := n.setSize(sheets[i].size); err != nil {
		n.fault(err)
	}
}

func (n *panel) setSize(text string) error {
	w, d, err := pose.ParseSize(text, n.p.s.Job().Units)
	if err != nil {
		return err
	}
	return n.p.change(func(r *design.Room) {
		if r.Marks == design.MarkedSheet && r.At == n.p.centred(r.Width, r.Depth) {
			r.At = n.p.centred(w, d)
		}
		r.Width, r.Depth = w, d
	})
}

// setRight and setBack read where the new top lies; beside a sheet they read where
// the sheet lies on it.
func (n *panel) setRight(text string) error {
	l, err := units.Parse(text, n.p.s.Job().Units)
	if err != nil {
		return err
	}
	return n.p.change(func(r *design.Room) {
		if r.Marks == design.MarkedSheet {
			l = -l
		}
		r.At.X = l
	})
}

func (n *panel) setBack(text string) error {
	l, err := units.Parse(text, n.p.s.Job().Units)
	if err != nil {
		return err
	}
	return n.p.change(func(r *design.Room) { r.At.Y = l })
}

func (n *panel) setTurn(text string) error {
	a, err := units.ParseAngle(text)
	if err != nil {
		return err
	}
	return n.p.change(func(r *design.Room) { r.Turn = a })
}

func (n *panel) setOld(text string) error {
	var l units.Length
	if text != "" {
		var err error
		if l, err = units.Parse(text, n.p.s.Job().Units); err != nil {
			return err
		}
	}
	return n.p.change(func(r *design.Room) { r.Old = l })
}

// sizeText is a size as it can be typed again.
func sizeText(w, d units.Length, sys units.System) string {
	return units.FormatExact(w, sys) + " × " + units.FormatExact(d, sys)
}

// show shows the room as it is.
func (n *panel) show() {
	p := n.p
	r, sys := p.room(), p.s.Job().Units
	n.name.SetText(filepath.Base(r.Photo))
	n.marks.SetPicked(int(r.Marks))
	n.size.SetValue(sizeText(r.Width, r.Depth, sys))
	sheet := r.Marks == design.MarkedSheet
	if sheet {
		n.sheetRow.Show()
		n.sheet.SetPicked(sheetOf(r.Width, r.Depth))
		n.rightL.SetText("Sheet from its left")
		n.backL.SetText("Sheet from its back")
		n.right.SetHint("How far the sheet's back left corner lies from the new top's left end.")
		n.back.SetHint("How far the sheet's back left corner lies from the new top's back edge.")
		n.right.SetValue(units.FormatExact(-r.At.X, sys))
	} else {
		n.sheetRow.Hide()
		n.rightL.SetText("Moved right")
		n.backL.SetText("Moved back")
		n.right.SetHint("How far to the right of the present top's back left corner the new one has its own.")
		n.back.SetHint("How far behind the present top's back left corner the new one has its own.")
		n.right.SetValue(units.FormatExact(r.At.X, sys))
	}
	n.back.SetValue(units.FormatExact(r.At.Y, sys))
	n.turn.SetValue(units.FormatAngle(r.Turn))
	old := ""
	if r.Old != 0 {
		old = units.FormatExact(r.Old, sys)
	}
	n.old.SetValue(old)
	n.brighter.show(r.Lit.Brighter)
	n.warmer.show(r.Lit.Warmer)
	n.from.SetPicked(int(r.Lit.From))
	n.see.SetPicked(int(p.see))

	n.tell()
	visible(n.compose, !p.result)
	visible(n.shown, p.result)
	f := p.shown()
	words := ""
	if p.result && f != nil {
		for _, note := range f.notes {
			words += note + " "
		}
	}
	visible(n.notes, words != "")
	if n.notes.Text != words {
		n.notes.SetText(words)
	}
	n.progress()
	n.object.Refresh()
}

// progress shows how far the picture is.
func (n *panel) progress() {
	w := n.p.work
	visible(n.working, w != nil)
	if w == nil {
		return
	}
	n.stage.SetText(fmt.Sprintf("%s picture", w.words))
	if w.words == stages[0].words {
		n.stage.SetText(w.words)
	}
	n.bar.SetValue(w.done)
}

func visible(o fyne.CanvasObject, on bool) {
	if on != o.Visible() {
		if on {
			o.Show()
		} else {
			o.Hide()
		}
	}
}

// sheetOf is the sheet of a size, the last when it is another.
func sheetOf(w, d units.Length) int {
	for i, s := range sheets {
		if s.size == "" {
			continue
		}
		if a, b, err := pose.ParseSize(s.size, units.Metric); err == nil && a == w && b == d {
			return i
		}
	}
	return len(sheets) - 1
}

// row sets a label before a control.
type row struct{}

const labelWidth = 128

func (row) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(labelWidth+100, fyne.Max(look.Target, o[1].MinSize().Height))
}

func (row) Layout(o []fyne.CanvasObject, size fyne.Size) {
	h := o[0].MinSize().Height
	o[0].Move(fyne.NewPos(0, (size.Height-h)/2))
	o[0].Resize(fyne.NewSize(labelWidth-look.Gap, h))
	o[1].Move(fyne.NewPos(labelWidth, 0))
	o[1].Resize(fyne.NewSize(size.Width-labelWidth, size.Height))
}

// stepper moves a share by steps from a button at either side.
type stepper struct {
	object fyne.CanvasObject
	value  *control.Text
	now    units.Share
	less   *control.Button
	more   *control.Button
	most   units.Share
	words  [2]string
}

func newStepper(f *control.Frame, what, less, more string, step, most units.Share, set func(units.Share) error) *stepper {
	s := &stepper{most: most, words: [2]string{less, more}, value: control.NewText("").Centred()}
	by := func(d units.Share) func() {
		return func() { _ = set(min(most, max(-most, s.now+d))) }
	}
	s.less = control.NewButton(f, control.Face{Text: "−", Hint: less + " " + what + ".", Kind: control.Raised}, by(-step))
	s.more = control.NewButton(f, control.Face{Text: "+", Hint: more + " " + what + ".", Kind: control.Raised}, by(step))
	s.object = container.NewBorder(nil, nil, control.Sized(look.Target, look.Target, s.less), control.Sized(look.Target, look.Target, s.more),
		control.Middle(s.value))
	return s
}

func (s *stepper) show(v units.Share) {
	s.now = v
	words := "as judged"
	switch {
	case v > 0:
		words = fmt.Sprintf("%s %s", s.words[1], units.FormatShare(v))
	case v < 0:
		words = fmt.Sprintf("%s %s", s.words[0], units.FormatShare(-v))
	}
	s.value.SetText(words)
	s.less.SetEnabled(v > -s.most)
	s.more.SetEnabled(v < s.most)
}

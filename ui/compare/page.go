package compare

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/export/comparison"
	"example.org/castwright/export/picture"
	"example.org/castwright/model/change"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/geom"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
)

// Page is the comparison of two sides of a session's job: options, or an option as
// it was approved. It belongs to the main goroutine.
type Page struct {
	Object *fyne.Container
	// OnExport is asked to write the two as a page, as they are shown; nil for nobody.
	OnExport func(comparison.Order)
	// About says what stands about the tops in pictures; nil for what is usual.
	About func() picture.SetOptions
	// Later runs something on the main goroutine after a while; nil at once.
	Later func(time.Duration, func())

	s     *session.Session
	frame *control.Frame
	run   func(keys.ID)

	a, b    string // names of the sides; both "" where there is nothing to compare
	sides   sides
	of      [2]side
	changes []change.Change
	names   []string // of what may be chosen

	picture bool // photo-like pictures, not drawings
	above   bool // these are taken from straight above
	over    bool // one lies over the other
	fitted  bool // each is as large as fits
	marks   bool
	plain   [2]bool // no dimension lines: side by side, over each other
	same    bool    // what is the same is listed too
	picked  int     // of the changes, -1 for none

	plan, eye lock // of drawings and pictures from above; of pictures from the front
	eyes      eyes
	size      fyne.Size
	px        float64
	kept      kept
	shots     *shots
	asked     [2]ask // pictures that are taken, or would be
	stopped   bool
	busy      [2]bool // a drawing is being made

	body    *fyne.Container
	nothing *fyne.Container
	panes   [2]*pane
	one     *pane
	wiper   *wiper
	chooseA *control.Choice
	chooseB *control.Choice
	as      *control.Segments
	from    *control.Segments
	how     *control.Segments
	scale   *control.Segments
	fromBox *fyne.Container
	marked  *control.Button
	lines   *control.Button
	also    *control.Check
	words   *control.Text // of the scale
	doing   *control.Text // of the pictures
	bar     *widget.ProgressBar
	barBox  *fyne.Container
	halt    *control.Button
	lists   *lists
	area    *fyne.Container
}

// New is a page on a session. close leaves it; run does an action of the table.
func New(s *session.Session, f *control.Frame, close func(), run func(keys.ID)) *Page {
	p := &Page{s: s, frame: f, run: run, marks: true, plain: [2]bool{false, true}, picked: -1, sides: sides{s: s}, px: 1}
	later := func(d time.Duration, do func()) {
		if p.Later != nil {
			p.Later(d, do)
		}
	}
	p.shots = &shots{frame: f, later: later, kept: &p.kept, about: p.about, told: p.progress, took: p.renew, bad: func(err error) {
		p.stopped = true
		p.progress("", 1)
		p.doing.SetText("No picture: " + err.Error())
	}}
	p.chooseA = control.NewChoice(f, "What stands at the left: an option, or one as it was approved.", nil, func(i int) { p.choose(&p.a, &p.b, i) })
	p.chooseB = control.NewChoice(f, "What stands at the right: an option, or one as it was approved.", nil, func(i int) { p.choose(&p.b, &p.a, i) })
	p.panes = [2]*pane{newPane(p, 0), newPane(p, 1)}
	p.one = newPane(p, 0, 1)
	p.wiper = newWiper(f, func() { p.one.raster.Refresh() })
	p.wiper.zoom = p.one.zoom
	p.lists = newLists(f, p.find)
	swap := p.icon(icon.Swap, keys.CompareSwap)
	chosen := container.New(ends{}, control.Rimmed(p.chooseA), swap, control.Rimmed(p.chooseB))
	p.area = container.New(&sheet{p}, control.NewFill(look.Ground, 0), p.panes[0], p.panes[1], p.one, p.wiper)
	p.words, p.doing = control.NewText("").Muted().Cut(), control.NewText("").Muted().Right()
	p.bar = widget.NewProgressBar()
	p.bar.TextFormatter = func() string { return "" }
	p.barBox = control.Sized(120, 0, control.Pad(9, 0, control.Sized(120, 10, p.bar)))
	p.halt = control.NewButton(f, control.Face{Text: "Stop", Hint: keys.Hint(keys.CompareStop), Kind: control.Raised}, p.StopOrGoOn)
	p.also = control.NewCheck(f, "What is the same too", keys.Hint(keys.CompareSame), func(bool) { p.ToggleSame() })
	status := container.NewBorder(nil, nil, nil, control.Row(look.Space, control.Middle(p.doing), p.barBox, p.halt, p.also), control.Middle(p.words))
	p.body = container.NewBorder(control.Column(look.Gap, p.tools(close), chosen), nil, nil, nil,
		container.New(&stacked{p}, p.area, status, p.lists.object))
	p.nothing = container.NewStack(p.empty(close))
	p.Object = control.Ground(theme.ColorNameBackground, control.Pad(look.Space, look.Section, container.NewStack(p.body, p.nothing)))
	s.OnChange(func(c session.Change) {
		if p.Object.Visible() && (c.Design || c.Job || c.Option) {
			p.Refresh()
		}
	})
	p.Object.Hide()
	return p
}

func (p *Page) about() picture.SetOptions {
	if p.About == nil {
		return picture.SetOptions{}
	}
	return p.About()
}

// icon is a button with a picture alone that does an action of the table.
func (p *Page) icon(res fyne.Resource, id keys.ID) *control.Button {
	return control.NewButton(p.frame, control.Face{Icon: res, Hint: keys.Hint(id), Kind: control.Raised}, func() { p.run(id) })
}

// tools is the row of what can be done.
func (p *Page) tools(close func()) fyne.CanvasObject {
	two := func(id keys.ID, first, second string) *control.Segments {
		hint := keys.Hint(id)
		return control.NewSegments(p.frame, []control.Face{{Text: first, Hint: hint}, {Text: second, Hint: hint}}, func(int) { p.run(id) })
	}
	p.as = two(keys.ComparePicture, "Drawing", "Picture")
	p.from = two(keys.CompareFrom, "Front", "Above")
	p.how = two(keys.CompareOver, "Side by side", "Over each other")
	p.scale = two(keys.CompareScale, "One scale", "Each fitted")
	p.fromBox = control.Sized(128, 0, p.from.Container)
	p.marked, p.lines = p.icon(icon.Mark, keys.CompareMarks), p.icon(icon.Dimension, keys.Dimensions)
	export := control.NewButton(p.frame, control.Face{Icon: icon.Export, Text: "Export…",
		Hint: "Writes the two as one page or picture, as they are shown, with what differs.", Kind: control.Raised}, func() {
		if p.OnExport != nil {
			p.OnExport(p.Shown())
		}
	})
	left := control.Row(look.Space, control.Sized(152, 0, p.as.Container), p.fromBox, control.Sized(232, 0, p.how.Container),
		control.Sized(190, 0, p.scale.Container),
		control.Row(look.Gap, p.icon(icon.ZoomOut, keys.ZoomOut), p.icon(icon.Fit, keys.Fit), p.icon(icon.ZoomIn, keys.ZoomIn)),
		control.Row(look.Gap, p.marked, p.lines))
	return container.NewBorder(nil, nil, left, control.Row(look.Space, export, p.back(close)))
}

func (p *Page) back(close func()) *control.Button {
	return control.NewButton(p.frame, control.Face{Icon: icon.Close, Text: "Back", Hint: "Leaves the comparison (Esc).", Kind: control.Raised}, close)
}

// empty is what stands there when there is nothing to compare.
func (p *Page) empty(close func()) fyne.CanvasObject {
	do := func(id keys.ID, text string, kind control.Kind) *control.Button {
		return control.NewButton(p.frame, control.Face{Text: text, Hint: keys.Hint(id), Kind: kind}, func() { p.run(id) })
	}
	return container.NewCenter(control.Column(look.Section,
		control.NewText("There is one option, so there is nothing beside it yet").Heading().Centred(),
		control.Sized(520, 0, control.Lines("Duplicate it to try something else on the copy. Or mark it as approved: from then on it can be compared with what the client agreed to.")),
		container.NewCenter(control.Row(look.Space, do(keys.OptionDuplicate, "Duplicate option", control.Primary),
			do(keys.MarkApproved, "Mark as approved…", control.Raised), p.back(close)))))
}

// ends sets two choices at the ends of a line and a button between.
type ends struct{}

func (ends) MinSize(objects []fyne.CanvasObject) fyne.Size { return fyne.NewSize(300, look.Target+4) }

func (ends) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	side := float32(look.Target + 8)
	w := (size.Width - side - 2*look.Gap) / 2
	for i, at := range [...][2]float32{{0, w}, {w + look.Gap, side}, {w + side + 2*look.Gap, w}} {
		objects[i].Move(fyne.NewPos(at[0], 0))
		objects[i].Resize(fyne.NewSize(at[1], size.Height))
	}
}

// mostLists is the height of the lists, in points, beyond which room is better given to
// the sides.
const mostLists = 340

// stacked sets the sides above, a line, and the lists below.
type stacked struct{ p *Page }

func (*stacked) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(objects[2].MinSize().Width, objects[0].MinSize().Height+look.Target+objects[2].MinSize().Height+2*look.Gap)
}

func (s *stacked) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	const line = look.Target + 2 // whatever stands in it: the sides must not change their size
	share := float32(0.36)
	if s.p.over {
		share = 0.30
	}
	lists := fyne.Max(objects[2].MinSize().Height, fyne.Min(mostLists, (size.Height-line)*share))
	area := size.Height - line - lists - 2*look.Gap
	y := float32(0)
	for i, h := range [...]float32{area, line, lists} {
		objects[i].Move(fyne.NewPos(0, y))
		objects[i].Resize(fyne.NewSize(size.Width, h))
		y += h + look.Gap
	}
}

// sheet sets the panes on their ground: two beside each other, or one with its wiper.
type sheet struct{ p *Page }

func (s *sheet) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(400, 140) }

func (s *sheet) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	p := s.p
	objects[0].Resize(fyne.NewSize(0, 0))
	half := float32(int((size.Width - look.Gap) / 2))
	for i, n := range p.panes {
		n.Move(fyne.NewPos(float32(i)*(size.Width-half), 0))
		n.Resize(fyne.NewSize(half, size.Height))
	}
	p.one.Resize(size)
	p.wiper.lay(size)
}

// Open shows what is likeliest to be compared.
func (p *Page) Open() {
	p.a, p.b = first(p.s.Job(), p.s.Option().Name)
	p.stopped, p.picked = false, -1
	p.Object.Show()
	p.Refresh()
}

// Close leaves the page, stops what it works at and lets its pictures go.
func (p *Page) Close() {
	p.Object.Hide()
	p.shots.forget()
	p.kept, p.eyes = kept{}, eyes{}
	for _, n := range [...]*pane{p.panes[0], p.panes[1], p.one} {
		n.forget()
	}
	p.asked = [2]ask{}
	p.frame.LetGo()
}

// Shown is the two sides and how they are shown.
func (p *Page) Shown() comparison.Order {
	return comparison.Order{A: p.a, B: p.b, Pictures: p.picture, Above: p.picture && p.above, About: p.about()}
}

// Empty reports whether there is nothing to compare.
func (p *Page) Empty() bool { return p.a == "" }

// choose puts another thing at one side; what stands at the other side changes with
// it when it is that.
func (p *Page) choose(one, other *string, i int) {
	if i < 0 || i >= len(p.names) {
		return
	}
	if p.names[i] == *other {
		*other = *one
	}
	*one = p.names[i]
	p.picked = -1
	p.frame.Window.Canvas().Unfocus()
	p.Refresh()
}

// Refresh shows the sides as they are.
func (p *Page) Refresh() {
	j := p.s.Job()
	list := choices(j)
	p.names = p.names[:0]
	var words []string
	at := map[string]int{}
	for i, c := range list {
		at[c.name] = i
		p.names = append(p.names, c.name)
		words = append(words, c.words)
	}
	_, okA := at[p.a]
	_, okB := at[p.b]
	if !okA || !okB {
		p.a, p.b = first(j, p.s.Option().Name)
	}
	show(p.body, !p.Empty())
	show(p.nothing, p.Empty())
	if p.Empty() {
		p.shots.stop()
		return
	}
	p.chooseA.Options, p.chooseB.Options = words, words
	p.chooseA.SetPicked(at[p.a])
	p.chooseB.SetPicked(at[p.b])
	p.of[0] = p.sides.find(0, p.a, p.b)
	p.of[1] = p.sides.find(1, p.b, p.a)
	p.sides.job = j
	p.changes = nil
	if p.of[0].err == nil && p.of[1].err == nil {
		p.changes = change.Between(p.of[0].Option.Design, p.of[1].Option.Design, j.Units)
	}
	if p.picked >= len(p.changes) {
		p.picked = -1
	}
	p.fill()
	p.look()
}

// fill shows the lists.
func (p *Page) fill() {
	var values []draw.Contrast
	if p.of[0].err == nil && p.of[1].err == nil {
		// A price takes the place of what the materials cost: the client may look on.
		cost := !draw.Priced(p.of[0].Side, p.of[1].Side)
		values = draw.Contrasts(p.s.Job(), p.of[0].Side, p.of[1].Side, cost)
	}
	p.lists.show(called(p.of[0], p.of[1]), p.changes, values, p.same)
	p.lists.pick(p.picked)
}

// look shows the sides in the way that is chosen.
func (p *Page) look() {
	pick := func(s *control.Segments, second bool) {
		if second {
			s.SetPicked(1)
		} else {
			s.SetPicked(0)
		}
	}
	pick(p.as, p.picture)
	pick(p.from, p.above)
	pick(p.how, p.over)
	pick(p.scale, p.fitted && !p.over)
	show(p.fromBox, p.picture)
	p.marked.SetOn(p.marks)
	p.lines.SetOn(p.Dimensions())
	p.lines.SetEnabled(!p.picture)
	p.scale.SetEnabled(!p.over)
	p.also.SetTicked(p.same)
	for _, n := range p.panes {
		show(n, !p.over)
	}
	show(p.one, p.over)
	show(p.wiper, p.over)
	if p.over {
		p.size = p.one.Size()
		p.panes[0].forget()
		p.panes[1].forget()
	} else {
		p.size = p.panes[0].Size()
		p.one.forget()
	}
	if !p.picture {
		p.shots.stop()
		p.asked = [2]ask{}
	}
	p.aim()
	p.renew()
	p.Object.Refresh()
}

func show(o fyne.CanvasObject, on bool) {
	if on {
		o.Show()
	} else {
		o.Hide()
	}
}

// TogglePicture shows photo-like pictures, or drawings.
func (p *Page) TogglePicture() { p.picture, p.stopped = !p.picture, false; p.look() }

// ToggleFrom takes the pictures from the front, or from straight above.
func (p *Page) ToggleFrom() {
	if !p.picture {
		p.picture, p.above = true, true
	} else {
		p.above = !p.above
	}
	p.stopped = false
	p.look()
}

// ToggleOver lays the two over each other, or side by side.
func (p *Page) ToggleOver() {
	p.over = !p.over
	p.look()
	if p.over && p.Object.Visible() {
		p.frame.Window.Canvas().Focus(p.wiper)
	} else {
		p.frame.Window.Canvas().Unfocus()
	}
}

// ToggleScale shows each as large as fits, or both at one scale.
func (p *Page) ToggleScale() {
	if !p.over {
		p.fitted = !p.fitted
		p.look()
	}
}

// ToggleMarks marks what differs, or not.
func (p *Page) ToggleMarks() { p.marks = !p.marks; p.look() }

// ToggleDimensions shows dimension lines on the drawings, or none.
func (p *Page) ToggleDimensions() {
	if !p.picture {
		plain := p.plainness()
		*plain = !*plain
		p.look()
	}
}

// ToggleSame lists what is the same too, or not.
func (p *Page) ToggleSame() { p.same = !p.same; p.fill(); p.look() }

// Swap puts the left one at the right.
func (p *Page) Swap() { p.a, p.b, p.picked = p.b, p.a, -1; p.Refresh() }

// Pictures, Above, Over, Fitted, Marked, Same and Dimensions are what is chosen.
func (p *Page) Pictures() bool   { return p.picture }
func (p *Page) Above() bool      { return p.above }
func (p *Page) Over() bool       { return p.over }
func (p *Page) Fitted() bool     { return p.fitted && !p.over }
func (p *Page) Marked() bool     { return p.marks }
func (p *Page) Same() bool       { return p.same }
func (p *Page) Dimensions() bool { return !*p.plainness() && !p.picture }

// plainness is whether drawings have no dimension lines. Two that lie over each other
// start without: their numbers would be cut by the line between them.
func (p *Page) plainness() *bool {
	if p.over {
		return &p.plain[1]
	}
	return &p.plain[0]
}

// letters are what a key alone does on the page.
var letters = map[fyne.KeyName]keys.ID{
	fyne.KeyP: keys.ComparePicture, fyne.KeyV: keys.CompareFrom, fyne.KeyO: keys.CompareOver, fyne.KeyS: keys.CompareScale,
	fyne.KeyM: keys.CompareMarks, fyne.KeyL: keys.CompareSame, fyne.KeyX: keys.CompareSwap, fyne.KeyD: keys.Dimensions,
	fyne.KeyF: keys.Fit, fyne.Key0: keys.Fit, fyne.KeyPlus: keys.ZoomIn, fyne.KeyEqual: keys.ZoomIn, fyne.KeyMinus: keys.ZoomOut,
}

// Key works the page by keys pressed alone, and reports whether it took one.
func (p *Page) Key(e *fyne.KeyEvent) bool {
	if p.Empty() {
		return false
	}
	if id, ok := letters[e.Name]; ok {
		p.run(id)
		return true
	}
	if p.over && p.wiper.key(e, control.ShiftHeld()) {
		return true
	}
	const step = 48 // points
	switch e.Name {
	case fyne.KeyLeft:
		p.pan(geom.Vec{X: step})
	case fyne.KeyRight:
		p.pan(geom.Vec{X: -step})
	case fyne.KeyUp:
		p.pan(geom.Vec{Y: step})
	case fyne.KeyDown:
		p.pan(geom.Vec{Y: -step})
	default:
		return false
	}
	return true
}

package panel

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
)

// Panel shows the state of a session. It belongs to the main goroutine.
type Panel struct {
	Object fyne.CanvasObject
	// OnPlace is asked to show a place of the drawing, in millimetres.
	OnPlace func(geom.Vec)
	// OnPoint is asked to show which part is pointed at in the list, "" for none, and
	// OnReveal to bring a place into sight.
	OnPoint  func(design.ID)
	OnReveal func(geom.Vec)
	// OnRun is asked to run an action of the window.
	OnRun func(keys.ID)

	s     *session.Session
	frame *control.Frame

	name    *control.Text
	list    *partsList
	lock    *control.Button
	hide    *control.Button
	keep    *control.Button // offers what to keep to, nil when no part is selected
	tied    []tied          // what is shown of relations
	locks   []design.ID     // parts that are shown as locked
	copy    *control.Button
	remove  *control.Button
	fields  *fyne.Container
	scroll  *container.Scroll
	shown   string // what the fields are about
	rows    []*row
	all     *control.Button // the same for all corners or edges
	allDo   func() edit.Edit
	numbers *quantities
	risks   *warnings
	column  *fyne.Container

	listed   int               // warnings
	kept     map[string]string // texts that were typed and refused
	nudging  *row
	ownNudge bool
}

// Width is the width of the panel, in points.
const Width = 328

// New is a panel on a session.
func New(s *session.Session, f *control.Frame) *Panel {
	p := &Panel{s: s, frame: f, kept: map[string]string{}}
	p.name = control.NewText("").Heading().Cut()
	p.list = newPartsList(p)
	p.lock = control.NewButton(f, control.Face{Icon: icon.Unlock}, p.ToggleLock)
	p.hide = control.NewButton(f, control.Face{Icon: icon.Show}, p.ToggleHidden)
	p.copy = control.NewButton(f, control.Face{Icon: icon.Copy,
		Hint: "Puts a copy of the part beside it (Ctrl+D)."}, func() { p.Duplicate() })
	p.remove = control.NewButton(f, control.Face{Icon: icon.Remove}, func() { p.Remove() })
	p.all = control.NewButton(f, control.Face{Kind: control.Raised},
		func() { p.report(p.s.Do(p.allDo())) })
	p.fields = control.Column(look.Gap - 1)
	p.scroll = container.NewVScroll(inset(p.fields))
	p.numbers, p.risks = newQuantities(p), newWarnings(p)

	head := container.NewBorder(nil, nil, nil, control.Row(0, p.lock, p.hide, p.copy, p.remove), control.Middle(p.name))
	warnScroll := container.NewVScroll(inset(p.risks.list))
	p.column = container.New(&stack{}, p.list.head, p.list.scroll, p.list.hidden, control.Rule(),
		control.Pad(look.Gap, 0, head), p.scroll, control.Rule(),
		inset(p.numbers.box), control.Rule(), control.Pad(look.Gap, 0, p.risks.head), warnScroll)
	p.Object = control.Ground(look.Surface,
		container.New(width{Width}, control.Pad(look.Gap, look.Space+look.Gap, p.column)))
	s.OnChange(p.changed)
	p.rebuild()
	p.showNumbers()
	return p
}

// inset leaves room for the scroll bar.
func inset(o fyne.CanvasObject) fyne.CanvasObject {
	return container.New(rightInset{}, o)
}

func (p *Panel) changed(c session.Change) {
	if !p.ownNudge {
		p.nudging = nil
	}
	p.list.show()
	if c.Selection || c.Option || !slices.Equal(p.tied, p.ties()) || !slices.Equal(p.locks, p.lockedNow()) {
		p.rebuild()
	} else {
		p.refresh()
	}
	if c.Design || c.Job || c.Option {
		p.showNumbers()
	}
}

// refresh shows the fields' values, and makes the rows anew where there are
// other fields now.
func (p *Panel) refresh() {
	name, fields := fieldsOf(p.s)
	if len(fields) != len(p.rows) {
		p.rebuild()
		return
	}
	p.showHandling()
	for i, r := range p.rows {
		if !r.f.same(fields[i]) {
			p.rebuild()
			return
		}
	}
	p.name.SetText(name)
	for i, r := range p.rows {
		r.update(fields[i])
	}
}

// rebuild makes the rows of what is selected.
func (p *Panel) rebuild() {
	name, fields := fieldsOf(p.s)
	p.name.SetText(name)
	focus := p.focusedLabel()
	p.rows = nil
	p.fields.RemoveAll()
	about := p.about()
	p.addLocked()
	p.addTies()
	p.addArranging()
	for i, f := range fields {
		r := p.newRow(f, fmt.Sprintf("%s%d %s", about, i, f.label))
		p.rows = append(p.rows, r)
		p.fields.Add(r.box)
	}
	p.offerAll()
	if about != p.shown {
		p.shown = about
		p.scroll.ScrollToTop()
	}
	p.showHandling()
	p.relayout()
	p.refocus(focus)
}

// focusedLabel is the field that has the keyboard, "" when none has.
func (p *Panel) focusedLabel() string {
	focused := p.frame.Window.Canvas().Focused()
	for _, r := range p.rows {
		if r.entry != nil && focused == fyne.Focusable(r.entry) {
			return r.key
		}
	}
	return ""
}

// refocus gives the keyboard back to a field that was made anew.
func (p *Panel) refocus(key string) {
	if key == "" {
		return
	}
	for _, r := range p.rows {
		if r.key == key && r.entry != nil {
			p.frame.Window.Canvas().Focus(r.entry)
			return
		}
	}
	p.frame.Window.Canvas().Unfocus()
}

// about tells what is selected apart from all else.
func (p *Panel) about() string {
	key := p.s.Path() + "|" + p.s.Option().Name
	for _, k := range p.s.Selection() {
		key += fmt.Sprintf("|%s %d %v", k.Part, k.Node, k.Edge)
	}
	return key + "|"
}

func (p *Panel) hasPart() bool {
	for _, k := range p.s.Selection() {
		if k.Part != "" {
			return true
		}
	}
	return false
}

func (p *Panel) isCorner() bool {
	sel := p.s.Selection()
	return len(sel) == 1 && sel[0].Part == "" && sel[0].Node >= 0 && !sel[0].Edge
}

// offerAll offers to treat all corners or edges as the one that is selected.
func (p *Panel) offerAll() {
	p.allDo = nil
	sel := p.s.Selection()
	if len(sel) != 1 || sel[0].Part != "" || sel[0].Node < 0 {
		return
	}
	face := control.Face{Kind: control.Raised}
	if i := sel[0].Node; sel[0].Edge {
		face.Text, face.Hint = "Same for all seen edges", "Gives every seen edge the profile of this one."
		p.allDo = func() edit.Edit { return edit.SetSeenProfiles(p.s.Design().Outline.Nodes[i].Edge.Profile) }
	} else {
		face.Text, face.Hint = "Same for all corners", "Treats every corner as this one."
		p.allDo = func() edit.Edit { return edit.SetAllCorners(p.s.Design().Outline.Nodes[i].Corner) }
	}
	p.all.SetFace(face)
	p.fields.Add(control.Pad(look.Gap, 0, p.all))
}

// showNumbers shows quantities and warnings.
func (p *Panel) showNumbers() {
	j, r := p.s.Job(), p.s.Report()
	p.numbers.show(quantitiesOf(p.s.Design(), j.Materials, r, j.Units))
	items := itemsOf(r, j.Units)
	p.risks.show(items)
	if len(items) != p.listed { // their section wants another height
		p.listed = len(items)
		p.relayout()
	}
}

// goTo selects a part and shows a place.
func (p *Panel) goTo(part design.ID, at geom.Vec) {
	if part != "" {
		p.s.Select(session.Pick{Part: part, Node: -1})
	} else {
		p.s.Select()
	}
	if p.OnPlace != nil {
		p.OnPlace(at)
	}
}

// Duplicate puts copies of the selected parts beside them.
func (p *Panel) Duplicate() {
	by := 60 * units.Millimetre
	if p.s.Job().Units == units.Imperial {
		by = 2 * units.Inch
	}
	ids, before := p.s.SelectedParts(), p.s.Design()
	if len(ids) > 0 && p.report(p.s.Do(edit.DuplicateParts(ids, design.Point{X: by, Y: -by}))) {
		p.s.SelectParts(edit.NewParts(before, p.s.Design()))
	}
}

// Remove takes away what is selected.
func (p *Panel) Remove() {
	var e edit.Edit
	switch ids := p.s.SelectedParts(); {
	case len(ids) > 0:
		e = edit.RemoveParts(ids)
	case p.isCorner():
		e = edit.RemoveNode(p.s.Selection()[0].Node)
	default:
		return
	}
	if p.report(p.s.Do(e)) {
		p.s.Select()
	}
}

func (p *Panel) report(err error) bool {
	if err != nil {
		control.Warn(p.frame, "That can't be done", err)
	}
	return err == nil
}

// relayout gives the sections their heights anew.
func (p *Panel) relayout() {
	if p.column != nil {
		p.column.Refresh()
	}
}

// Settle hands over what is being typed in a field.
func (p *Panel) Settle() {
	for _, r := range p.rows {
		if r.entry != nil {
			r.entry.Settle()
		}
	}
}

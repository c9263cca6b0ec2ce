package panel

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
	"example.org/castwright/ui/words"
)

// partsList is the fold with all parts of the design by name, so that each can be
// reached without the drawing, and the line that says what is hidden.
type partsList struct {
	p      *Panel
	head   *control.Tile
	sign   *widget.Icon
	count  *control.Text
	scroll *container.Scroll
	column *fyne.Container
	hidden *fyne.Container
	gone   *control.Text
	rows   []*partRow
	ids    []design.ID // of the rows after the first, which is the top's
	anchor int         // the row that was picked last
}

// partRow is one part, or the top.
type partRow struct {
	box        *fyne.Container
	tile       *control.Tile
	name, size *control.Text
	lock, hide *control.Button
}

const partRowHeight = look.Target

func newPartsList(p *Panel) *partsList {
	l := &partsList{p: p, count: control.NewText("").Muted(), sign: control.Icon(icon.Right, look.Muted),
		column: control.Column(0), gone: control.NewText("").Caption().Cut()}
	head := container.NewBorder(nil, nil, control.Row(look.Gap, control.Sized(16, 16, control.Middle(l.sign)),
		control.Middle(control.NewText("Parts").Heading())), control.Middle(l.count))
	l.head = control.NewTile(p.frame, "", control.Pad(3, look.Gap, head), p.ToggleList)
	l.scroll = container.NewVScroll(inset(l.column))
	l.scroll.Hide()
	show := control.NewButton(p.frame, control.Face{Text: "Show all", Kind: control.Raised,
		Hint: keys.Hint(keys.ShowHidden)}, p.ShowAll)
	l.hidden = control.Pad(look.Gap/2, look.Gap, container.NewBorder(nil, nil,
		control.Row(look.Gap, control.Sized(18, 18, control.Middle(control.Icon(icon.Hide, theme.ColorNameWarning))), nothing()),
		show, control.Middle(l.gone)))
	l.hidden.Hide()
	l.show()
	return l
}

func nothing() fyne.CanvasObject { return control.NewFill("", 0) }

// ListOpen reports whether the list of parts is open.
func (p *Panel) ListOpen() bool { return p.list.scroll.Visible() }

// ToggleList opens the list of parts and gives it the keyboard, or closes it.
func (p *Panel) ToggleList() {
	l := p.list
	if p.ListOpen() && l.focused() >= 0 {
		p.frame.Window.Canvas().Unfocus()
	}
	p.ShowList(!p.ListOpen())
	if p.ListOpen() && len(l.rows) > 0 {
		p.frame.Window.Canvas().Focus(l.rows[max(0, l.picked())].tile)
	}
}

// ShowList opens the list of parts, or closes it.
func (p *Panel) ShowList(open bool) {
	l, sign := p.list, icon.Right
	if open {
		sign = icon.Down
		l.scroll.Show()
	} else {
		l.scroll.Hide()
	}
	l.sign.SetResource(theme.NewColoredResource(sign, look.Muted))
	l.show()
	p.relayout()
}

// picked is the first row that is selected, -1 for none.
func (l *partsList) picked() int {
	for i, r := range l.rows {
		if r.tile.On() {
			return i
		}
	}
	return -1
}

// focused is the row that has the keyboard, -1 for none.
func (l *partsList) focused() int {
	at := l.p.frame.Window.Canvas().Focused()
	for i, r := range l.rows {
		if at == fyne.Focusable(r.tile) || at == fyne.Focusable(r.lock) || at == fyne.Focusable(r.hide) {
			return i
		}
	}
	return -1
}

// show shows the parts as they are.
func (l *partsList) show() {
	s := l.p.s
	ids := edit.Parts(s.Design())
	locked, hidden := len(s.LockedParts()), len(s.Option().HiddenParts())
	text := fmt.Sprint(len(ids))
	if locked > 0 {
		text += fmt.Sprintf(" · %d locked", locked)
	}
	if hidden > 0 {
		text += fmt.Sprintf(" · %d hidden", hidden)
	}
	l.count.SetText(text)
	l.gone.SetText(amount.Count(hidden, "part") + " hidden: still cast and counted")
	if (hidden > 0) != l.hidden.Visible() {
		if hidden > 0 {
			l.hidden.Show()
		} else {
			l.hidden.Hide()
		}
		l.p.relayout()
	}
	if !l.scroll.Visible() {
		l.head.SetHint("Lists all parts by name, to select, lock or hide them (" + keys.ByID(keys.PartsList).Key.String() + ").")
		return
	}
	l.head.SetHint("Closes the list of parts (" + keys.ByID(keys.PartsList).Key.String() + ").")
	if l.rows == nil || !slices.Equal(ids, l.ids) {
		l.remake(ids)
	}
	d, sys := s.Design(), s.Job().Units
	for i, r := range l.rows {
		if i == 0 {
			on := slices.Contains(s.Selection(), session.Pick{Node: -1})
			r.tile.SetOn(on)
			r.size.SetText(topSize(s))
			continue
		}
		id := l.ids[i-1]
		r.tile.SetOn(slices.Contains(s.SelectedParts(), id))
		name := words.Part(d, id)
		r.name.SetText(name)
		r.size.SetText(words.PartSize(d, id, sys))
		h := s.Option().HandlingOf(id)
		colour := theme.ColorNameForeground
		if h.Hidden {
			colour = look.Muted
		}
		r.name.SetColour(colour)
		lock, hide := lockFace(h.Locked, "the "+words.Lower(name), ""), hideFace(h.Hidden, "the "+words.Lower(name), "")
		lock.Quiet, hide.Quiet = !h.Locked, !h.Hidden
		r.lock.SetFace(lock)
		r.lock.SetOn(h.Locked)
		r.hide.SetFace(hide)
		r.hide.SetOn(h.Hidden)
		r.tile.SetHint("Click selects the " + words.Lower(name) + ", Ctrl+click adds it or takes it out, Shift+click all between; " +
			"the arrow keys walk, Enter selects.")
	}
}

func topSize(s *session.Session) string {
	b := s.Report().Measures.Bounds
	if b.Empty() {
		return ""
	}
	return words.Size(b.W(), b.H(), s.Job().Units)
}

// remake makes the rows of other parts.
func (l *partsList) remake(ids []design.ID) {
	at := l.focused()
	l.ids = slices.Clone(ids)
	l.rows = []*partRow{l.newRow(icon.Shape, 0)}
	l.rows[0].name.SetText("Top")
	l.rows[0].tile.SetHint("Click selects the top as a whole; the arrow keys walk, Enter selects.")
	l.rows[0].lock.Hide()
	l.rows[0].hide.Hide()
	d := l.p.s.Design()
	for i, id := range ids {
		l.rows = append(l.rows, l.newRow(signOf(d, id), i+1))
	}
	l.column.RemoveAll()
	tiles := make([]*control.Tile, len(l.rows))
	for i, r := range l.rows {
		tiles[i] = r.tile
		l.column.Add(r.box)
	}
	walkable(l.p.frame, tiles)
	for i, t := range tiles {
		walk := t.OnKey
		t.OnKey = func(e *fyne.KeyEvent) bool {
			if walk(e) {
				return true
			}
			if e.Name == fyne.KeySpace { // adds, as Ctrl and a click
				l.pick(i, fyne.KeyModifierControl)
				return true
			}
			return false
		}
	}
	l.anchor = min(l.anchor, len(l.rows)-1)
	l.p.relayout()
	if at >= 0 {
		l.p.frame.Window.Canvas().Focus(l.rows[min(at, len(l.rows)-1)].tile)
	}
}

func (l *partsList) newRow(sign fyne.Resource, i int) *partRow {
	r := &partRow{name: control.NewText(""), size: control.NewText("").Muted().Right().Cut()}
	body := container.NewBorder(nil, nil, control.Row(look.Gap, control.Middle(control.Sized(18, 18, control.Icon(sign, look.Muted))),
		control.Middle(r.name)), nil, control.Pad(0, look.Gap, control.Middle(r.size)))
	r.tile = control.NewTile(l.p.frame, "", control.Sized(0, partRowHeight, control.Pad(0, look.Gap, body)),
		func() { l.pick(i, r.tile.Held) })
	r.tile.OnPoint = func(on bool) {
		id := design.ID("")
		if on && i > 0 {
			id = l.ids[i-1]
		}
		if l.p.OnPoint != nil {
			l.p.OnPoint(id)
		}
	}
	of := func() []design.ID { return []design.ID{l.ids[i-1]} }
	r.lock = control.NewButton(l.p.frame, control.Face{Icon: icon.Unlock}, func() { l.p.setLocked(of()) })
	r.hide = control.NewButton(l.p.frame, control.Face{Icon: icon.Show}, func() { l.p.setHidden(of()) })
	r.box = container.NewBorder(nil, nil, nil, control.Row(0, r.lock, r.hide), r.tile)
	return r
}

// pick selects a row's part: alone, with Ctrl beside what is selected, with Shift all
// from the row that was picked last.
func (l *partsList) pick(i int, mods fyne.KeyModifier) {
	s := l.p.s
	if i == 0 {
		l.anchor = 0
		s.Select(session.Pick{Node: -1})
		return
	}
	ids := s.SelectedParts()
	switch id := l.ids[i-1]; {
	case mods&fyne.KeyModifierShift != 0 && l.anchor > 0:
		s.SelectParts(l.ids[min(i, l.anchor)-1 : max(i, l.anchor)])
		return
	case mods&(fyne.KeyModifierControl|fyne.KeyModifierSuper) == 0:
		ids = []design.ID{id}
		if at, ok := edit.Centre(s.Design(), id); ok && l.p.OnReveal != nil {
			l.p.OnReveal(geom.Vec{X: at.X.MM(), Y: at.Y.MM()})
		}
	case slices.Contains(ids, id):
		ids = slices.DeleteFunc(ids, func(o design.ID) bool { return o == id })
	default:
		ids = append(ids, id)
	}
	l.anchor = i
	s.SelectParts(ids)
}

// signOf is the sign of a part's kind.
func signOf(d design.Design, id design.ID) fyne.Resource {
	switch kind, _ := d.Find(id); kind {
	case design.PartSink:
		return icon.Sink
	case design.PartTaps:
		return icon.Taps
	case design.PartHole:
		return icon.Hole
	case design.PartChannel:
		return icon.Channel
	case design.PartGlass:
		return icon.Glass
	}
	return icon.Supports
}

// walkable lets the arrow keys, Home and End walk through lines.
func walkable(f *control.Frame, lines []*control.Tile) {
	for i, t := range lines {
		t.OnKey = func(e *fyne.KeyEvent) bool {
			to := i
			switch e.Name {
			case fyne.KeyUp:
				to = max(0, i-1)
			case fyne.KeyDown:
				to = min(len(lines)-1, i+1)
			case fyne.KeyHome:
				to = 0
			case fyne.KeyEnd:
				to = len(lines) - 1
			default:
				return false
			}
			f.Window.Canvas().Focus(lines[to])
			return true
		}
	}
}

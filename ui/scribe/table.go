package scribe

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
	"example.org/castwright/ui/words"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Scribe opens the table. It belongs to the main goroutine, and keeps what was
// typed for an edge until that edge is scribed.
type Scribe struct {
	Session *session.Session
	Frame   *control.Frame
	Beside  fyne.CanvasObject // what the table may cover: not the drawing
	Folder  func() string     // where scans are looked for first; nil for anywhere

	kept     []row
	keptFor  [2]design.Point // the ends of the edge that they were typed for
	keptFlip bool
}

// table is the open table.
type table struct {
	s       *Scribe
	edge    int
	ends    [2]design.Point
	length  units.Length
	flip    bool // measured from the end of the edge, which runs the other way
	entries []*[2]*control.Entry
	grid    *fyne.Container
	scroll  *container.Scroll
	fault   *widget.Label
	from    *control.Segments
	card    *control.Popover
	done    bool
	open    bool // the preview stands in the session
}

// Show opens the table for an edge of the outline.
func (s *Scribe) Show(edge int) *table {
	nodes := s.Session.Design().Outline.Nodes
	if edge < 0 || edge >= len(nodes) {
		return nil
	}
	a, b := nodes[edge].At, nodes[(edge+1)%len(nodes)].At
	t := &table{s: s, edge: edge, ends: [2]design.Point{a, b},
		length: units.FromMM(geom.Vec{X: (b.X - a.X).MM(), Y: (b.Y - a.Y).MM()}.Norm())}
	// By rights from the left, or from the front.
	names := [2]string{"Left end", "Right end"}
	if math.Abs((b.X - a.X).MM()) >= math.Abs((b.Y - a.Y).MM()) {
		t.flip = b.X < a.X
	} else {
		names, t.flip = [2]string{"Front end", "Back end"}, b.Y < a.Y
	}
	first := t.flip
	rows := []row{{}, {}, {}}
	picked := 0
	if s.keptFor == t.ends && len(s.kept) > 0 {
		rows = s.kept
		if s.keptFlip != t.flip {
			t.flip, picked = s.keptFlip, 1
		}
	}
	t.from = control.NewSegments(s.Frame, []control.Face{
		{Text: names[0], Hint: "Distances are measured from this end of the edge."},
		{Text: names[1], Hint: "Distances are measured from this end of the edge."}}, func(i int) {
		t.flip = first == (i == 0)
		t.from.SetPicked(i)
		t.preview()
	})
	t.from.SetPicked(picked)
	t.build(rows)
	return t
}

func (t *table) build(rows []row) {
	f := t.s.Frame
	t.fault = control.SmallLines("")
	t.fault.Importance = widget.DangerImportance
	t.grid = control.Column(2)
	for _, r := range rows {
		t.add(r)
	}
	t.scroll = container.NewVScroll(t.grid)
	head := container.NewGridWithColumns(2, control.NewText("Along the edge").Caption().Muted(),
		control.NewText("Gap to the wall").Caption().Muted())
	paste := control.NewButton(f, control.Face{Text: "Paste a list", Kind: control.Raised,
		Hint: "Takes a list from the clipboard: a line for each measurement, how far along and the gap."}, t.paste)
	scan := control.NewButton(f, control.Face{Text: "From a scan", Kind: control.Raised,
		Hint: "Takes the wall from an open line in an SVG or DXF file."}, t.askForScan)
	cancel := control.NewButton(f, control.Face{Text: "Cancel", Kind: control.Raised,
		Hint: "Leaves the edge as it was (Esc)."}, func() { t.card.Close() })
	apply := control.NewButton(f, control.Face{Text: "Scribe", Kind: control.Primary,
		Hint: "Draws the edge along the wall."}, func() { t.apply() })
	body := control.Column(look.Space,
		control.NewText("Scribe the "+lower(words.Edge(t.s.Session.Design().Outline, t.edge))).Bold(),
		control.Sized(300, 0, control.SmallLines("Hold a straight edge from corner to corner. The gap is how far the "+
			"wall stands away from it; below zero where the wall comes in. The edge is "+
			units.Format(t.length, t.s.Session.Job().Units)+" long.")),
		control.Row(look.Space, control.Middle(control.NewText("Measured from").Muted()), control.Sized(190, 0, t.from.Container)),
		head, control.Sized(0, 180, t.scroll), control.Sized(300, 34, t.fault),
		control.Row(look.Space, control.Sized(146, 28, paste), control.Sized(146, 28, scan)),
		control.Row(look.Space, control.Sized(146, 32, cancel), control.Sized(146, 32, apply)))
	t.card = control.ShowPopover(f, t.s.Beside, body, t.entries[0][0], t.closed)
	t.preview()
}

// add appends a row.
func (t *table) add(r row) {
	if len(t.entries) >= mostRows {
		return
	}
	f := t.s.Frame
	pair := &[2]*control.Entry{
		control.NewEntry(f, "How far along the edge; Enter goes on to the gap."),
		control.NewEntry(f, "How far the wall stands away there, below zero where it comes in; Enter goes on to the next row."),
	}
	i := len(t.entries)
	for k, text := range [...]string{r.along, r.gap} {
		e := pair[k]
		e.EscLeaves = true
		e.SetValue(text)
		e.OnChanged = func(string) { t.changed() }
		e.OnSubmitted = func(string) { t.next(i, k) }
	}
	t.entries = append(t.entries, pair)
	t.grid.Add(container.NewGridWithColumns(2, pair[0], pair[1]))
}

// next goes on after Enter: from the place to the gap, from there to the next row;
// in an empty row all has been typed.
func (t *table) next(i, k int) {
	c := t.s.Frame.Window.Canvas()
	switch {
	case k == 0 && strings.TrimSpace(t.entries[i][0].Text) == "" && i > 0:
		t.apply()
	case k == 0:
		c.Focus(t.entries[i][1])
	default:
		if i+1 == len(t.entries) {
			t.add(row{})
		}
		if i+1 < len(t.entries) {
			c.Focus(t.entries[i+1][0])
			t.scroll.ScrollToBottom()
		}
	}
}

func (t *table) rows() []row {
	var out []row
	for _, p := range t.entries {
		out = append(out, row{p[0].Text, p[1].Text})
	}
	return out
}

// changed keeps an empty row at the end and shows what has been typed.
func (t *table) changed() {
	if last := t.entries[len(t.entries)-1]; last[0].Text != "" || last[1].Text != "" {
		t.add(row{})
	}
	t.preview()
}

// preview shows the edge along the wall as far as it has been typed.
func (t *table) preview() {
	list, fault := offsets(t.rows(), t.length, t.s.Session.Job().Units)
	if len(list) == 0 {
		t.drop()
		t.say(fault)
		return
	}
	if t.flip {
		list = turned(list, t.length)
	}
	if !t.open {
		t.s.Session.BeginGesture()
	}
	if err := t.s.Session.DoGesture(edit.ScribeEdge(t.edge, list)); err != nil {
		if fault == nil {
			fault = err
		}
	} else {
		t.open = true
	}
	t.say(fault)
}

func (t *table) drop() {
	if t.open {
		t.s.Session.CancelGesture()
		t.open = false
	}
}

func (t *table) say(err error) {
	text := ""
	if err != nil {
		text = control.Sentence(err.Error())
	}
	if t.fault.Text != text {
		t.fault.SetText(text)
	}
}

// apply makes the preview final, unless something can't be used.
func (t *table) apply() {
	t.preview()
	if t.fault.Text != "" {
		return
	}
	if !t.open {
		t.say(errors.New("nothing has been typed yet: measure the wall at a few places"))
		return
	}
	t.done = true
	t.card.Close()
}

// closed takes the preview back, unless it was applied; what was typed is kept for
// the next time.
func (t *table) closed() {
	if t.done {
		t.s.kept = nil
		t.s.Session.Select(session.Pick{Node: t.edge, Edge: true})
		return
	}
	t.drop()
	t.s.kept, t.s.keptFor, t.s.keptFlip = nil, t.ends, t.flip
	for _, r := range t.rows() {
		if !r.empty() {
			t.s.kept = append(t.s.kept, r)
		}
	}
	if len(t.s.kept) > 0 {
		t.s.kept = append(t.s.kept, row{})
	}
}

// paste takes a list from the clipboard in place of what stands there.
func (t *table) paste() {
	list, err := pasted(fyne.CurrentApp().Clipboard().Content(), t.s.Session.Job().Units)
	if err != nil {
		t.say(fmt.Errorf("this can't be pasted: %w", err))
		return
	}
	t.fill(list)
}

// fill puts rows in the place of those that stand there.
func (t *table) fill(list []row) {
	t.entries = nil
	t.grid.RemoveAll()
	for _, r := range list {
		t.add(r)
	}
	t.add(row{})
	t.preview()
}

func lower(s string) string { return strings.ToLower(s[:1]) + s[1:] }

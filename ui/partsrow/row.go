package partsrow

import (
	"errors"
	"image"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/book"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/board"
	own "example.org/castwright/ui/book"
	"example.org/castwright/ui/bring"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/icon"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/panel"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
	"example.org/castwright/ui/words"
)

// Hands is who takes what is picked: the board.
type Hands interface {
	Put(board.Put)
	SetTool(board.Tool)
}

// Row is the row of nouns. It belongs to the main goroutine.
type Row struct {
	Object fyne.CanvasObject
	// OnBring hears that an outline is wanted from a file.
	OnBring func(bring.As)
	// Book is the maker's own book of parts, nil for none.
	Book *own.Book

	s     *session.Session
	frame *control.Frame
	hands Hands
	nouns map[keys.ID]*noun
	card  *control.Popover
}

// noun is one button of the row and what it says of the design in hand.
type noun struct {
	tile    *control.Tile
	summary *control.Text
	say     func(design.Design) string
	open    func() fyne.CanvasObject
}

// New is the row on a session; what is picked goes to hands.
func New(s *session.Session, f *control.Frame, hands Hands) *Row {
	r := &Row{s: s, frame: f, hands: hands, nouns: map[keys.ID]*noun{}}
	grid := container.New(nounsLayout{})
	add := func(id keys.ID, name string, res fyne.Resource, say func(design.Design) string,
		open func() fyne.CanvasObject) {
		n := &noun{say: say, open: open, summary: control.NewText("").Caption().Muted().Cut()}
		sign := control.Sized(26, 26, control.Icon(res, theme.ColorNameForeground))
		body := container.NewBorder(nil, nil, control.Middle(sign), nil,
			control.Pad(0, look.Gap+2, control.Middle(control.Column(0,
				control.NewText(name).Bold().Cut(), n.summary))))
		n.tile = control.NewTile(f, keys.Hint(id), control.Pad(look.Gap, look.Space, body),
			func() { r.Open(id) })
		r.nouns[id] = n
		grid.Add(n.tile)
	}
	add(keys.PartShape, "Shape", icon.Shape, r.sayShape, r.openShape)
	add(keys.PartEdge, "Edge", icon.Edge, r.sayEdge, r.openEdge)
	add(keys.PartSink, "Sink", icon.Sink, func(d design.Design) string { return number(len(d.Sinks)) },
		r.kept(r.tiles(kit.sinks), book.KindSink))
	add(keys.PartTaps, "Taps", icon.Taps, func(d design.Design) string { return number(len(d.Taps)) },
		r.kept(r.tiles(kit.taps), book.KindTaps))
	add(keys.PartHole, "Hole", icon.Hole, func(d design.Design) string { return number(len(d.Holes)) },
		r.tiles(kit.holes))
	add(keys.PartChannel, "Channel", icon.Channel,
		func(d design.Design) string { return number(len(d.Channels)) }, r.tiles(kit.channels))
	add(keys.PartGlass, "Glass", icon.Glass,
		func(d design.Design) string { return number(len(d.Glass)) }, r.tiles(kit.glass))
	add(keys.PartFinish, "Finish", icon.Finish, sayFinish, r.openFinish)
	add(keys.PartSupports, "Supports", icon.Supports,
		func(d design.Design) string { return number(len(d.Supports)) }, r.tiles(kit.supports))
	r.Object = grid
	s.OnChange(func(c session.Change) {
		if c.Design || c.Option || c.Job {
			r.refresh()
		}
	})
	r.refresh()
	return r
}

func (r *Row) refresh() {
	d := r.s.Design()
	for _, n := range r.nouns {
		n.summary.SetText(n.say(d))
	}
}

// Noun is the button of a noun.
func (r *Row) Noun(id keys.ID) fyne.CanvasObject { return r.nouns[id].tile }

// Open opens a noun's starters.
func (r *Row) Open(id keys.ID) {
	n := r.nouns[id]
	n.tile.SetOn(true)
	r.card = control.ShowPopover(r.frame, n.tile, n.open(), nil, func() { n.tile.SetOn(false) })
}

func (r *Row) close() {
	if r.card != nil {
		r.card.Close()
	}
}

func (r *Row) kit() kit {
	d := r.s.Design()
	return kit{r.s.Job().Units, d, edit.Bounds(d.Outline)}
}

// kept adds what the maker has kept of a kind to what a noun opens.
func (r *Row) kept(open func() fyne.CanvasObject, kind book.Kind) func() fyne.CanvasObject {
	return func() fyne.CanvasObject { return r.withBook(open(), kind, -1) }
}

// tiles opens a grid of starters.
func (r *Row) tiles(list func(kit) []starter) func() fyne.CanvasObject {
	return func() fyne.CanvasObject {
		l := list(r.kit())
		return r.grid(l, min(4, len(l)))
	}
}

func (r *Row) grid(list []starter, columns int) *fyne.Container {
	g := container.NewGridWithColumns(columns)
	for _, s := range list {
		g.Add(r.tile(s))
	}
	return g
}

// The size of a starter's picture, in points.
const pictureW, pictureH = 116, 72

// tile is one starter to pick.
func (r *Row) tile(s starter) *control.Tile {
	var picture fyne.CanvasObject
	switch {
	case s.tool != nil || s.bring != nil:
		sign := s.icon
		if sign == nil {
			sign = icon.Pen
		}
		picture = container.NewCenter(control.Sized(32, 32, control.Icon(sign, look.Muted)))
	default:
		picture = r.pictureOf(s)
	}
	body := control.Column(look.Gap, control.Sized(pictureW, pictureH, picture),
		control.Sized(pictureW, 0, control.NewText(s.name).Centred().Cut()))
	return control.NewTile(r.frame, s.hint, control.Pad(look.Space, look.Space, body),
		func() { r.pick(s) }).OnGround(look.Ground)
}

// pick takes a starter.
func (r *Row) pick(s starter) {
	r.close()
	switch {
	case s.put != nil:
		r.hands.Put(*s.put)
	case s.tool != nil:
		r.hands.SetTool(*s.tool)
	case s.bring != nil:
		r.OnBring(*s.bring)
	case s.edit != nil:
		if err := r.s.Do(*s.edit); err != nil {
			control.Warn(r.frame, "That can't be done", err)
		}
	}
}

// nounsLayout sets the nouns beside each other; the first one, which says a size,
// gets a little more room.
type nounsLayout struct{}

const firstShare = 1.2

func (nounsLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := fyne.Size{}
	for _, o := range objects {
		size = size.Max(o.MinSize())
	}
	return fyne.NewSize(size.Width*(float32(len(objects))-1+firstShare), size.Height)
}

func (nounsLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	each := size.Width / (float32(len(objects)) - 1 + firstShare)
	x := float32(0)
	for i, o := range objects {
		w := each
		if i == 0 {
			w *= firstShare
		}
		o.Move(fyne.NewPos(x, 0))
		o.Resize(fyne.NewSize(w-look.Gap, size.Height))
		x += w
	}
}

func number(n int) string {
	switch n {
	case 0:
		return "none"
	case 1:
		return "1"
	}
	return amount.Of(float64(n), "", units.Metric)
}

func (r *Row) sayShape(d design.Design) string {
	box := edit.Bounds(d.Outline)
	if box.Empty() {
		return "none"
	}
	return strings.TrimSuffix(words.Size(box.W(), box.H(), r.s.Job().Units), " mm")
}

func (r *Row) sayEdge(d design.Design) string {
	kinds := map[design.ProfileKind]bool{}
	last := design.Profile{}
	for _, n := range d.Outline.Nodes {
		if n.Edge.Side == design.SideSeen {
			kinds[n.Edge.Profile.Kind], last = true, n.Edge.Profile
		}
	}
	switch len(kinds) {
	case 0:
		return "none seen"
	case 1:
		return words.Of(words.Profiles, int(last.Kind))
	}
	return amount.Count(len(kinds), "profile")
}

func sayFinish(d design.Design) string {
	return words.Of(words.Exposures, int(d.Finish.Exposure))
}

// openShape offers outlines at the typed size.
func (r *Row) openShape() fyne.CanvasObject {
	k := r.kit()
	w, d := k.size(1500, 61), k.size(550, 22)
	if !k.box.Empty() {
		w, d = units.FromMM(k.box.W()), units.FromMM(k.box.H())
	}
	// An L keeps the depth of its runs, not that of the whole box.
	if d > k.size(900, 36) {
		d = k.size(600, 24)
	}
	holder := container.NewStack()
	wide := panel.NewLengthEntry(r.frame, "Width over all.", k.sys, w, "")
	deep := panel.NewLengthEntry(r.frame, "Depth, front to back; of an L or a U that of each run.", k.sys, d, "")
	fill := func() {
		g := r.grid(k.shapes(wide.Length(), deep.Length()), 4)
		holder.Objects = []fyne.CanvasObject{g}
		holder.Refresh()
	}
	after(wide, fill)
	after(deep, fill)
	fill()
	fault := control.SmallLines("")
	fault.Importance = widget.DangerImportance
	tell := func(error) {
		text := ""
		for _, e := range []*panel.LengthEntry{wide, deep} {
			if err := e.Fault(); err != nil && text == "" {
				text = control.Sentence(err.Error()) + " The shapes keep the size before."
			}
		}
		fault.SetText(text)
		if text == "" {
			fault.Hide()
		} else {
			fault.Show()
		}
	}
	wide.OnFault, deep.OnFault = tell, tell
	tell(nil)
	size := control.Row(look.Space, control.Middle(control.NewText("Width").Muted()),
		control.Sized(110, 0, wide.Entry),
		control.Middle(control.NewText("Depth").Muted()), control.Sized(110, 0, deep.Entry))
	return control.Column(look.Space, size, fault, holder)
}

// after has something done when a length was read.
func after(e *panel.LengthEntry, do func()) {
	commit := e.Commit
	e.Commit = func(text string) error {
		err := commit(text)
		if err == nil && e.Length() <= 0 {
			err = errTooSmall
		}
		if err == nil {
			do()
		}
		return err
	}
	nudge := e.Nudge
	e.Nudge = func(steps int) {
		nudge(steps)
		do()
	}
}

// openEdge offers profiles for the selected edge, or for all that are seen.
func (r *Row) openEdge() fyne.CanvasObject {
	at, title := -1, "For all seen edges"
	d := r.s.Design()
	if sel := r.s.Selection(); len(sel) == 1 && sel[0].Part == "" && sel[0].Edge && sel[0].Node >= 0 && sel[0].Node < len(d.Outline.Nodes) {
		at = sel[0].Node
		title = "For the " + lower(words.Edge(d.Outline, at))
	}
	list := r.kit().profiles(at)
	for i := range list {
		p := *list[i].profile
		list[i].name = words.Profile(p, func() string { return units.Format(p.Size, r.s.Job().Units) })
		list[i].hint = "A click gives it. Select one edge on the drawing to treat it alone."
	}
	return r.withBook(control.Column(look.Space, control.NewText(title).Bold(), r.grid(list, 4)), book.KindProfile, at)
}

// openFinish offers colours, exposure and polish.
func (r *Row) openFinish() fyne.CanvasObject {
	do := func(e edit.Edit) {
		if err := r.s.Do(e); err != nil {
			control.Warn(r.frame, "That can't be done", err)
		}
	}
	set := func(change func(*design.Finish)) {
		f := r.s.Design().Finish
		change(&f)
		do(edit.SetFinish(f))
	}
	f := r.s.Design().Finish
	k := r.kit()
	grid := container.NewGridWithColumns(3)
	for i, name := range words.Exposures {
		sample := k.swatch(k.size(150, 6), k.size(80, 3))
		sample.Finish.Exposure = design.Exposure(i)
		picture := control.NewPicture(r.frame, pictureW, 56, func(w, h int) control.Paint {
			return func() *image.RGBA { return paintDesign(sample, false, w, h) }
		})
		t := control.NewTile(r.frame, "What makes up most of the ground face; the grind goes with it, unless it is one of your own.",
			control.Pad(look.Space, look.Space, control.Column(look.Gap, picture,
				control.NewText(name).Centred())), func() {
				r.close()
				do(edit.SetExposure(design.Exposure(i), r.s.Job().Units))
			}).OnGround(look.Ground)
		t.SetOn(int(f.Exposure) == i)
		grid.Add(t)
	}
	var faces []control.Face
	for i, name := range words.Polishes {
		faces = append(faces, control.Face{Text: name,
			Hint: "Level " + number(i+1) + " of 4: how much the face mirrors."})
	}
	polish := control.NewSegments(r.frame, faces, func(i int) {
		r.close()
		set(func(f *design.Finish) { f.Polish = i + 1 })
	})
	polish.SetPicked(f.Polish - 1)
	colours := panel.Swatches(r.frame, panel.ConcreteColours, f.Colour, func(c design.Colour) {
		r.close()
		set(func(f *design.Finish) { f.Colour = c })
	})
	return r.withBook(control.Column(look.Space, control.NewText("Face").Bold(), grid,
		control.NewText("Polish").Bold(), polish.Container,
		control.NewText("Colour").Bold(), colours), book.KindFinish, -1)
}

// errTooSmall refuses a size that nothing can be drawn at.
var errTooSmall = errors.New("a top needs a size above zero: type its width and depth")

func lower(s string) string { return strings.ToLower(s[:1]) + s[1:] }

package ui

import (
	"path/filepath"

	"example.org/castwright/model/design"
	"example.org/castwright/ui/approval"
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/book"
	"example.org/castwright/ui/bring"
	"example.org/castwright/ui/coach"
	"example.org/castwright/ui/compare"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/panel"
	"example.org/castwright/ui/partsrow"
	"example.org/castwright/ui/room"
	"example.org/castwright/ui/scribe"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/showing"
	"example.org/castwright/ui/strip"
	look "example.org/castwright/ui/theme"
	"example.org/castwright/ui/tool"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
)

// window is one window with its rooms. It belongs to the main goroutine.
type window struct {
	app   fyne.App
	win   fyne.Window
	host  host
	frame *control.Frame
	keys  *keys.Dispatcher

	session  *session.Session
	settings *files.Settings
	files    *files.Files
	board    *board.Board
	panel    *panel.Panel
	strip    *strip.Strip
	parts    *partsrow.Row
	bring    *bring.Bring
	scribe   *scribe.Scribe
	compare  *compare.Page
	showing  *showing.Page
	room     *room.Page
	rooms    [2]fyne.CanvasObject // bar and hint line, away while the top is shown
	wasFull  bool                 // the window had the whole screen before that
	desk     *approval.Desk
	coach    *coach.Coach
	bar      *bar
	hint     *hintLine
	welcome  *fyne.Container
	ready    *fyne.Container // holds what tells of the first picture
	mouse    Mouse           // nil where the toolkit alone tells of it
	main     fyne.CanvasObject

	forwarding bool

	clip clips             // parts that were copied
	kept []design.Relation // what held when the hand rested last
}

// The size of the window where none is remembered and nothing is known of the
// screen, in points, and its share of a large screen.
const (
	startW, startH           = 1280, 800
	tallEnough               = 1000 // for the list of parts to be open at the start
	startShareW, startShareH = 0.84, 0.88
)

// startSize is the size that the window opens with: the one that it had last, or
// most of the screen.
func (w *window) startSize() fyne.Size {
	var room fyne.Size
	if w.host.screen != nil {
		room = w.host.screen()
	}
	size := fyne.NewSize(startW, startH).Max(fyne.NewSize(room.Width*startShareW, room.Height*startShareH))
	if s := w.settings; s.Width >= 640 && s.Height >= 480 {
		size = fyne.NewSize(s.Width, s.Height)
	}
	if room.Width >= 640 && room.Height >= 480 {
		size = size.Min(room)
	}
	return size
}

// newWindow builds the window; it is not shown yet.
func newWindow(a fyne.App, settings *files.Settings, h host) *window {
	w := &window{app: a, host: h, settings: settings}
	a.Settings().SetTheme(look.New(look.Choice(settings.Theme)))
	w.win = a.NewWindow("Castwright")
	w.win.SetMaster()
	w.frame = control.NewFrame(w.win)

	job, demo := firstJob(settings)
	w.session = session.New(job, "")
	w.files = files.New(w.session, w.frame, settings, h.later)
	w.files.OnOpen = w.opened
	w.files.OnKept = func() { w.hint.saved(w.savedWords()) }
	w.board = board.New(w.session, w.win)
	w.board.Background(w.frame.Background)
	w.board.SetRounding(tool.Rounding(min(max(settings.Step, 0), 255)))
	w.compare = compare.New(w.session, w.frame, w.closeCompare, func(id keys.ID) { w.keys.Run(id) })
	w.compare.Later = h.later
	w.showing = showing.New(w.session, w.frame, w.closeShowing, w.stepOption)
	w.room = room.New(w.session, w.frame, w.files, h.later, w.closeRoom)
	w.room.OnHint = func(text string) { w.hint.over(text) }
	w.showing.Files, w.showing.Later = w.files, h.later
	w.compare.About = w.showing.About
	w.keys = keys.NewDispatcher(w.frame, w.bindings())
	w.showing.Run = w.keys.Run
	w.panel = panel.New(w.session, w.frame)
	w.panel.OnPlace = w.board.Place
	w.panel.OnPoint, w.panel.OnReveal = w.board.Point, w.board.Reveal
	w.panel.OnRun = w.keys.Run
	w.keys.OnRefused = w.board.Note
	w.strip = strip.New(w.session, w.frame, w.keys.Run, h.later)
	w.parts = partsrow.New(w.session, w.frame, w.board)
	w.bring = &bring.Bring{Session: w.session, Frame: w.frame, Hands: w.board, Later: h.later}
	w.parts.OnBring = w.bringIn
	w.parts.Book = book.New(w.frame, settings.BookPath())
	w.scribe = &scribe.Scribe{Session: w.session, Frame: w.frame, Beside: w.panel.Object, Folder: w.files.Folder}
	w.files.OnDrawing = w.dropDrawing
	w.coach = w.newCoach()
	w.bar = w.newBar()
	w.desk = approval.New(w.session, w.frame, w.files, w.keys.Run, h.later)
	w.compare.OnExport = w.desk.ExportComparison
	w.hint = newHintLine(w.desk.Chip)

	w.frame.OnSay = w.say
	w.frame.OnKey = w.key
	w.board.OnHint(w.hint.base)
	w.board.OnKey(w.frame.Key)
	w.welcome = w.newWelcome()
	if !demo {
		w.welcome.Hide()
	}
	w.win.SetContent(w.layout())
	w.win.SetPadded(false)
	w.win.SetOnDropped(func(_ fyne.Position, uris []fyne.URI) { w.files.Dropped(uris) })
	w.win.SetCloseIntercept(w.quit)
	w.session.OnChange(w.changed)
	w.changed(session.Change{Job: true})
	w.win.Resize(w.startSize())
	w.panel.ShowList(w.startSize().Height >= tallEnough)
	w.listen()
	return w
}

// listen gives what is typed while nothing has the keyboard to the drawing.
func (w *window) listen() {
	c := w.win.Canvas()
	c.SetOnTypedRune(func(r rune) {
		if !w.frame.Busy() && !w.covered() {
			w.board.TypedRune(r)
		}
	})
	if d, ok := c.(desktop.Canvas); ok {
		d.SetOnKeyDown(w.board.KeyDown)
		d.SetOnKeyUp(w.board.KeyUp)
	}
}

// layout puts the rooms together.
func (w *window) layout() fyne.CanvasObject {
	bar := control.Ground(theme.ColorNameBackground, w.bar.object)
	parts := control.Ground(theme.ColorNameBackground, control.Column(0,
		control.Pad(0, look.Space, w.parts.Object), control.Pad(look.Gap/2, 0,
			control.NewFill("", 0)), control.Rule()))
	middle := container.NewBorder(w.welcome, container.NewBorder(control.Rule(), nil, nil, nil,
		w.strip.Object), nil, nil, w.board)
	side := container.NewBorder(nil, nil, vertical(), nil, w.panel.Object)
	below := container.New(tight{}, nothing(), nothing(), side, middle)
	w.main = container.New(tight{}, parts, nothing(), nothing(), container.NewStack(below, w.coach.Object))
	w.ready = container.NewWithoutLayout()
	w.rooms = [2]fyne.CanvasObject{bar, w.hint.object}
	return container.New(tight{}, bar, w.hint.object, nothing(),
		container.NewStack(w.main, w.compare.Object, w.room.Object, w.showing.Object, w.ready))
}

func nothing() fyne.CanvasObject { return control.NewFill("", 0) }

func vertical() fyne.CanvasObject {
	return control.Sized(1, 0, control.NewFill(theme.ColorNameSeparator, 0))
}

// tight sets top, bottom, right and middle beside each other without gaps.
type tight struct{}

func (tight) MinSize(objects []fyne.CanvasObject) fyne.Size {
	top, bottom := objects[0].MinSize(), objects[1].MinSize()
	right, middle := objects[2].MinSize(), objects[3].MinSize()
	return fyne.NewSize(fyne.Max(top.Width, right.Width+middle.Width),
		top.Height+bottom.Height+fyne.Max(right.Height, middle.Height))
}

func (tight) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	top, bottom, right := float32(0), float32(0), objects[2].MinSize().Width
	if objects[0].Visible() {
		top = objects[0].MinSize().Height
	}
	if objects[1].Visible() {
		bottom = objects[1].MinSize().Height
	}
	put := func(o fyne.CanvasObject, x, y, w, h float32) {
		o.Move(fyne.NewPos(x, y))
		o.Resize(fyne.NewSize(w, h))
	}
	h := size.Height - top - bottom
	put(objects[0], 0, 0, size.Width, top)
	put(objects[1], 0, size.Height-bottom, size.Width, bottom)
	put(objects[2], size.Width-right, top, right, h)
	put(objects[3], 0, top, size.Width-right, h)
}

// key is a key that no control took: an action's, or one for the drawing.
func (w *window) key(e *fyne.KeyEvent) {
	defer w.lookAgain()
	if w.showing.Shown() && !w.frame.Busy() && w.showing.Key(e) {
		return
	}
	if w.rooming() && !w.frame.Busy() && w.room.Key(e) {
		return
	}
	if w.comparing() && !w.frame.Busy() && w.compare.Key(e) {
		return
	}
	if w.keys.Key(e) || w.forwarding || w.covered() || w.win.Canvas().Focused() == fyne.Focusable(w.board) {
		return
	}
	if _, typed := w.win.Canvas().Focused().(*control.Entry); typed && (e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter) {
		return // it has taken what was typed there, and opens no number on the drawing
	}
	w.forwarding = true
	w.board.TypedKey(e)
	w.forwarding = false
}

// changed follows the session where no room does.
func (w *window) changed(c session.Change) {
	if w.session.Path() != "" {
		w.welcome.Hide()
	}
	w.tellEnded(c)
	if c.Job || c.Design || c.Option {
		w.win.SetTitle(w.title())
		w.bar.show(w)
		w.hint.saved(w.savedWords())
	}
}

// jobName is the job's file, or that it has none.
func (w *window) jobName() string {
	if p := w.session.Path(); p != "" {
		return filepath.Base(p)
	}
	if c := w.session.Job().Client; c != "" {
		return c
	}
	return "New job"
}

func (w *window) title() string {
	mark := ""
	if w.session.Dirty() {
		mark = "*"
	}
	return w.jobName() + mark + " – Castwright"
}

func (w *window) savedWords() string {
	also := ""
	if w.files.Shared() {
		also = ". Another window has this job open too"
	}
	switch {
	case w.session.Dirty() && w.files.Unkept() != nil:
		return "! Changes not saved, and no copy can be kept: " + w.files.Unkept().Error()
	case w.session.Dirty():
		return "Changes not saved" + also
	case w.session.Path() == "":
		return "Not saved yet"
	}
	return "Saved" + also
}

// opened is that another job is in hand.
func (w *window) opened() {
	w.welcome.Hide()
	w.board.SetTool(board.Select)
	w.board.Fit()
	w.desk.Verify()
	w.hint.saved(w.savedWords()) // whether another window has it open is known now
	if w.session.Path() == "" {
		w.coach.Start() // a job of the maker's own
	}
}

// quit ends the program, after asking about changes.
func (w *window) quit() {
	w.settle()
	w.files.Guard("Quitting", func() {
		size := w.win.Canvas().Size()
		if !w.win.FullScreen() {
			w.settings.Width, w.settings.Height = size.Width, size.Height
		}
		w.settings.Save()
		w.files.Close()
		w.app.Quit()
	})
}

// settle keeps what is being typed and takes back a drag that is still open, so
// that the design is what the maker sees.
func (w *window) settle() {
	w.frame.Settle()
	w.board.Settle()
	w.board.BackOut()
}

func (w *window) comparing() bool { return w.compare.Object.Visible() }

// say says something where the maker looks.
func (w *window) say(text string) {
	w.hint.say(text)
	if w.showing.Shown() {
		w.showing.Say(text)
	}
}

// covered reports whether another page lies over the drawing.
func (w *window) covered() bool { return w.comparing() || w.rooming() || w.showing.Object.Visible() }

// stepOption takes the option in hand that stands by places further.
func (w *window) stepOption(by int) {
	if to := w.optionPlace() + by; to >= 0 && to < len(w.session.Job().Options) {
		w.session.SetOption(w.session.Job().Options[to].Name)
	}
}

// cover hides the drawing for another page.
func (w *window) cover() {
	w.main.Hide()
	w.board.MouseOut()
	w.board.Away()
}

// openShowing gives the whole screen to the option in hand.
func (w *window) openShowing() {
	w.cover()
	for _, room := range w.rooms {
		room.Hide()
	}
	w.wasFull = w.win.FullScreen()
	w.coach.Learn(lessonShow)
	w.showing.Open()
	w.win.SetFullScreen(true)
	w.win.Canvas().Unfocus()
	w.win.Content().Refresh()
	w.lookAgain()
}

// closeShowing goes back to the drawing.
func (w *window) closeShowing() {
	w.showing.Close()
	for _, room := range w.rooms {
		room.Show()
	}
	w.main.Show()
	w.win.SetFullScreen(w.wasFull)
	w.win.Content().Refresh()
	w.hint.say("")
	w.lookAgain()
}

func (w *window) openCompare() {
	w.cover()
	w.compare.Open()
	if w.compare.Empty() {
		w.hint.over("One option alone has nothing beside it; Esc goes back to the drawing.")
	} else {
		w.hint.over("Choose what stands at each side; P pictures, O one over the other, S scale, M marks; Esc goes back to the drawing.")
	}
	w.win.Canvas().Unfocus()
	w.lookAgain()
}

func (w *window) closeCompare() {
	w.compare.Close()
	w.hint.over("")
	w.main.Show()
	w.lookAgain()
}

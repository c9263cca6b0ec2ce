// Package room is the page that sets the option in hand into a photograph of the
// client's room: the photograph is chosen, four corners are marked in it, and the
// new top is set in, first roughly, then better, while the window goes on.
package room

import (
	"image"
	"reflect"
	"sync"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"

	"example.org/castwright/export/room"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
)

// Page is the client's room of a session. It belongs to the main goroutine.
type Page struct {
	Object *fyne.Container
	// OnHint hears what the next click or key does.
	OnHint func(string)
	// Acted is where in the window a press was made that is being told of; nil where
	// nobody knows more than the toolkit tells.
	Acted func() (fyne.Position, bool)

	s     *session.Session
	frame *control.Frame
	files *files.Files
	later func(time.Duration, func())
	close func()

	stage *stage
	empty *empty
	panel *panel
	side  fyne.CanvasObject
	title *control.Text

	photo  *photograph // nil while there is none or it is being read
	lost   error       // why the photograph that the job names is not there
	asked  string      // sum of the photograph that was read or is being read
	beside string      // the job's file that it was looked for beside
	turn   int         // counts what was asked to be read
	corner int         // in hand, 0 the back left one
	drag   *geom.Vec   // where the corner in hand is held, pixels of the whole photograph
	nudged int         // the corner that the open gesture nudges, -1 for none
	fine   geom.Vec    // where that one lies, pixels of the whole photograph

	result bool // the picture with the top is shown, not the marks
	work   *work
	halted key // of the picture whose work the maker stopped
	kept   []finished
	see    seen
	wipe   float64 // share of the picture's width that shows the room as it was
	hold   bool    // the room as it was is shown while a key is held
	large  bool    // the top is shown large, with the panel's room too
}

// seen says what of a finished picture is shown.
type seen uint8

const (
	seeTop seen = iota
	seeRoom
	seeBoth
)

// photograph is the photograph that is in hand.
type photograph struct {
	sum     string
	w, h    int // of the whole one, upright
	focal35 float64
	ext     string      // of its file
	full    *image.RGBA // upright, its longer side at most mostRoom
	mu      sync.Mutex
	small   []*image.RGBA // smaller ones
}

// New is a page on a session; close leaves it.
func New(s *session.Session, f *control.Frame, fs *files.Files, later func(time.Duration, func()), close func()) *Page {
	p := &Page{s: s, frame: f, files: fs, later: later, close: close, nudged: -1, wipe: 0.5}
	p.title = control.NewText("").Heading().Cut()
	p.stage = newStage(p)
	p.empty = newEmpty(p)
	p.panel = newPanel(p)
	leave := control.NewButton(f, control.Face{Icon: closeIcon, Text: "Back to drawing",
		Hint: "Leaves the room (Esc).", Kind: control.Raised}, close)
	head := container.NewBorder(nil, nil, nil, leave, control.Middle(p.title))
	p.side = container.New(layout.NewCustomPaddedLayout(0, 0, look.Space, 0), control.Sized(panelWidth, 0, p.panel.object))
	body := container.NewBorder(nil, nil, nil, p.side, container.NewStack(p.stage, p.empty.object))
	p.Object = control.Ground(theme.ColorNameBackground, control.Pad(look.Space, look.Section,
		container.NewBorder(control.Pad(look.Gap, 0, head), nil, nil, nil, body)))
	p.Object.Hide()
	s.OnChange(func(session.Change) {
		if p.Shown() {
			p.Refresh()
		} else {
			p.stop()
		}
	})
	return p
}

// Open shows the room.
func (p *Page) Open() {
	p.result, p.see, p.hold, p.large, p.corner = false, seeTop, false, false, 0
	p.Object.Show()
	p.Refresh()
}

// Close leaves the page, stops what it works at and lets its pictures go.
func (p *Page) Close() {
	p.stop()
	p.Object.Hide()
	p.kept, p.photo, p.asked, p.drag = nil, nil, "", nil
	p.turn++
	p.stage.forget()
	p.frame.LetGo()
}

// Shown reports whether the page is open.
func (p *Page) Shown() bool { return p.Object.Visible() }

// BackOut backs out of one thing within the page: a drag, the work at a picture, the
// picture. It reports whether there was one.
func (p *Page) BackOut() bool {
	switch {
	case p.drag != nil:
		p.drag = nil
		p.Refresh()
	case p.result && p.large:
		p.enlarge(false)
	case p.work != nil:
		p.halt()
	case p.result:
		p.marks()
	default:
		return false
	}
	return true
}

// room is the job's room.
func (p *Page) room() design.Room { return p.s.Job().Room }

// Refresh shows the room as it is.
func (p *Page) Refresh() {
	r := p.room()
	p.read(r)
	if !r.None() && p.photo != nil && p.result {
		p.follow()
	}
	words := "In the client's room"
	if o := p.s.Option(); len(p.s.Job().Options) > 1 || o.Title != "" {
		words += ": option " + o.Name
		if o.Title != "" {
			words += ", " + o.Title
		}
	}
	p.title.SetText(words)
	p.empty.show(r)
	if p.photo == nil {
		p.stage.Hide()
		p.side.Hide()
	} else {
		p.stage.Show()
		visible(p.side, !p.result || !p.large)
		p.panel.show()
	}
	p.stage.again()
	p.hint()
	p.Object.Refresh()
}

// hint says what the next click or key does.
func (p *Page) hint() {
	if p.OnHint == nil {
		return
	}
	switch {
	case p.photo == nil:
		p.OnHint("Choose a photograph of the room; Esc goes back to the drawing.")
	case p.result:
		words := "Hold Space to see the room as it is; W wipes between the two, F shows it large."
		if p.see == seeBoth {
			words = "Drag the line across the picture."
		}
		if len(p.s.Job().Options) > 1 {
			words += " Left and right arrows take the other options;"
		}
		p.OnHint(words + " Esc goes back to the corners.")
	default:
		p.OnHint("Drag the " + cornerName(p.corner) + " corner onto that of " + p.marked() +
			"; Tab takes the next, arrows move it by a pixel, with Shift by ten. Enter sets the top in.")
	}
}

// marked is what the corners mark, in words.
func (p *Page) marked() string {
	if p.room().Marks == design.MarkedSheet {
		return "the sheet of paper"
	}
	return "the present top"
}

// marks goes back from the picture to the corners.
func (p *Page) marks() {
	p.stop()
	p.result, p.hold, p.large = false, false, false
	p.Refresh()
	p.frame.Window.Canvas().Focus(p.stage)
}

// Key works the page by keys that no control took. It reports whether it took the
// key.
func (p *Page) Key(e *fyne.KeyEvent) bool {
	if p.photo == nil {
		return false
	}
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		on := p.frame.Window.Canvas().Focused()
		if p.result || on != nil && on != fyne.Focusable(p.stage) { // a value's entry keeps its Enter
			return false
		}
		p.Compose()
	case fyne.KeyLeft, fyne.KeyUp:
		if !p.result {
			return false
		}
		p.step(-1)
	case fyne.KeyRight, fyne.KeyDown:
		if !p.result {
			return false
		}
		p.step(1)
	case fyne.KeyF:
		if !p.result {
			return false
		}
		p.enlarge(!p.large)
	case fyne.KeyW:
		if !p.result {
			return false
		}
		if p.see == seeBoth {
			p.look(seeTop)
		} else {
			p.look(seeBoth)
		}
	default:
		return false
	}
	return true
}

// step takes the option in hand that stands by places further.
func (p *Page) step(by int) {
	options := p.s.Job().Options
	for i, o := range options {
		if to := i + by; o.Name == p.s.Option().Name && to >= 0 && to < len(options) {
			p.s.SetOption(options[to].Name)
			return
		}
	}
}

// enlarge shows the top large, with the panel's room too, or all of the photograph.
func (p *Page) enlarge(large bool) {
	p.large = large
	p.Refresh()
	p.frame.Window.Canvas().Focus(p.stage)
}

// look shows the top, the room as it was, or both.
func (p *Page) look(s seen) {
	p.see = s
	p.panel.show()
	p.stage.again()
	p.hint()
}

// change edits the room as one step of undo.
func (p *Page) change(change func(*design.Room)) error {
	r := p.room()
	change(&r)
	if r == p.room() {
		return nil
	}
	p.nudged = -1
	p.s.BeginGesture()
	return p.s.DoJobGesture(edit.SetRoom(r))
}

// spots are the corners as they are seen now: that in hand where it is held.
func (p *Page) spots() [4]design.Spot {
	out := p.room().Corners
	if p.drag != nil && p.photo != nil {
		out[p.corner] = room.SpotAt(*p.drag, p.photo.w, p.photo.h)
	}
	return out
}

// take takes a corner in hand.
func (p *Page) take(i int) {
	p.corner = i & 3
	p.nudged = -1
	p.stage.again()
	p.hint()
}

// drop puts the corner that is held where it is.
func (p *Page) drop() {
	if p.drag == nil || p.photo == nil {
		return
	}
	at := room.SpotAt(*p.drag, p.photo.w, p.photo.h)
	p.drag, p.nudged = nil, -1
	if at != p.room().Corners[p.corner] {
		p.s.BeginGesture()
		if err := p.s.DoJobGesture(edit.PlaceRoomCorner(p.corner, at)); err != nil {
			control.Warn(p.frame, "The corner can't lie there", err)
		}
	}
	p.Refresh()
}

// nudge moves the corner in hand by pixels of the photograph. What one corner is
// nudged by in a row is one step of undo.
func (p *Page) nudge(dx, dy float64) {
	if p.photo == nil || p.result {
		return
	}
	w, h := p.photo.w, p.photo.h
	now := p.room().Corners[p.corner]
	if p.nudged != p.corner || room.SpotAt(p.fine, w, h) != now {
		p.nudged, p.fine = p.corner, room.Pixel(now, w, h)
		p.s.BeginGesture()
	}
	// Reckoned from where it began, so that there and back again is where it was.
	p.fine = within(p.fine.Add(geom.Vec{X: dx, Y: dy}), w, h)
	if err := p.s.DoJobGesture(edit.PlaceRoomCorner(p.corner, room.SpotAt(p.fine, w, h))); err != nil {
		control.Warn(p.frame, "The corner can't lie there", err)
	}
}

// moved follows the corner that is held.
func (p *Page) moved() { p.panel.tell() }

// same reports whether two designs are one.
func same(a, b design.Design) bool { return reflect.DeepEqual(a, b) }

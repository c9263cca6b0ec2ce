package coach

import (
	"reflect"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/castwright/model/design"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/session"
)

// Step is one thing to learn.
type Step struct {
	ID    string
	Lines []string // what to do, in one or two lines
	// After are the steps that come before it, by ID.
	After []string
	// Done reports whether it has been done, by the design in hand and the one
	// that the hand began with; nil when only [Coach.Learn] tells.
	Done func(start, now design.Design) bool
	// Where is the place that the note points to; ok is false while there is none.
	Where func() (at Place, ok bool)
}

// Place is where a note points to.
type Place struct {
	At   fyne.Position // relative to the coach's object
	Side Side          // of the place, where the note stands
	Room fyne.Size     // that the note keeps within, from the object's corner
}

// Side is where a note stands beside the place that it points to.
type Side uint8

// The sides.
const (
	Above Side = iota
	Below
)

// Coach shows the notes over the drawing. It belongs to the main goroutine.
type Coach struct {
	Object *fyne.Container // lies over the drawing and what is beside it

	s       *session.Session
	frame   *control.Frame
	steps   []Step
	learned []string
	save    func(learned []string)
	notes   []*note
	start   design.Design
	option  string
	on      bool
	rests   func() bool // nothing is being drawn or dragged
}

// New is a coach who teaches steps on a session, but for those learned already;
// save keeps what has been learned. rests reports whether the hand rests: while it
// does not, no note is in its way.
func New(s *session.Session, f *control.Frame, steps []Step, learned []string, rests func() bool,
	save func(learned []string)) *Coach {
	c := &Coach{s: s, frame: f, steps: steps, learned: learned, save: save, rests: rests}
	var notes []fyne.CanvasObject
	for _, step := range steps {
		n := newNote(f, step.Lines, func() { c.Learn(step.ID) })
		n.Hide()
		c.notes = append(c.notes, n)
		notes = append(notes, n)
	}
	c.Object = container.New(placing{c}, notes...)
	s.OnChange(func(change session.Change) {
		if change.Option && change.Job {
			c.Stop() // another job
		}
		c.Look()
	})
	return c
}

// placing sets the notes anew when the drawing has another size.
type placing struct{ c *Coach }

func (p placing) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.Size{} }

func (p placing) Layout([]fyne.CanvasObject, fyne.Size) { p.c.place() }

// Start begins to teach what has not been learned yet.
func (c *Coach) Start() {
	c.start, c.option, c.on = c.s.Design(), c.s.Option().Name, true
	c.Look()
}

// Again begins to teach everything anew.
func (c *Coach) Again() {
	c.learned = nil
	c.save(nil)
	c.Start()
}

// Stop puts the notes away until the next start.
func (c *Coach) Stop() {
	c.on = false
	c.place()
}

// Teaching reports whether a note is shown, or waits for its turn.
func (c *Coach) Teaching() bool {
	for _, s := range c.steps {
		if c.on && !slices.Contains(c.learned, s.ID) {
			return true
		}
	}
	return false
}

// Learn takes a step for learned.
func (c *Coach) Learn(id string) {
	if !slices.Contains(c.learned, id) {
		c.learned = append(c.learned, id)
		c.save(c.learned)
	}
	c.place()
}

// Look finds out what has been done, and sets the notes to where they point now.
// Call it when the drawing has moved or the hand has taken or let go of something.
func (c *Coach) Look() {
	if c.Object == nil {
		return // it is being made
	}
	if c.on && c.rests() {
		c.learnDone()
	}
	c.place()
}

// learnDone takes for learned what the design shows to be done.
func (c *Coach) learnDone() {
	if c.s.Option().Name != c.option { // another option: done is what changes from now on
		c.start, c.option = c.s.Design(), c.s.Option().Name
	}
	now := c.s.Design()
	for _, s := range c.steps {
		if s.Done != nil && !slices.Contains(c.learned, s.ID) && s.Done(c.start, now) {
			c.Learn(s.ID)
		}
	}
}

// place sets the notes to where they point now.
func (c *Coach) place() {
	rests := c.on && c.rests()
	for i, s := range c.steps {
		n := c.notes[i]
		turn := rests && !slices.Contains(c.learned, s.ID)
		for _, before := range s.After {
			turn = turn && slices.Contains(c.learned, before)
		}
		if turn {
			at, ok := s.Where()
			turn = ok && n.point(at)
		}
		if turn != n.Visible() {
			if turn {
				n.Show()
			} else {
				n.Hide()
			}
		}
	}
}

// Changed reports whether a part of the design is another; for [Step.Done].
func Changed[T any](part func(design.Design) T) func(start, now design.Design) bool {
	return func(start, now design.Design) bool { return !reflect.DeepEqual(part(start), part(now)) }
}

// Package session holds what one window works on: the job and its history, the
// option in hand, the selection and the report. It belongs to the main
// goroutine. It knows no widgets.
package session

import (
	"reflect"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/report"
)

// Session is the state behind one window. Every change goes through it, and
// everyone who shows it listens with [Session.OnChange].
type Session struct {
	history   *edit.History
	option    string
	place     int // of the option among the job's count
	count     int
	path      string // file of the job, "" when never saved
	saved     design.Job
	dirty     bool
	selection []Pick
	report    report.Report
	seen      *derived           // what the board shows where parts are hidden, nil when not made yet
	others    map[string]derived // reports of options not in hand
	listeners []func(Change)
	gesture   int
}

// Pick is what is selected: a part, or a corner or edge of the outline.
type Pick struct {
	Part design.ID // a part, "" for the outline
	Node int       // corner, or first corner of the edge; -1 for the part or top as a whole
	Edge bool      // the edge that leaves Node, not the corner
}

// Change says what has changed, so that listeners redraw no more than they must.
type Change struct {
	Design    bool // the design in hand or its numbers
	Job       bool // options, client, materials, units, path or saved state
	Option    bool // another option is in hand
	Selection bool
}

// New starts a session on a job; path is "" for one that was never saved.
func New(j design.Job, path string) *Session {
	s := &Session{}
	s.load(j, path)
	return s
}

// Load takes another job in hand, with a history of its own.
func (s *Session) Load(j design.Job, path string) {
	s.load(j, path)
	s.tell(Change{Design: true, Job: true, Option: true, Selection: true})
}

func (s *Session) load(j design.Job, path string) {
	s.history, s.path, s.saved, s.dirty = edit.NewHistory(j), path, j, false
	s.option, s.selection = "", nil
	if len(j.Options) > 0 {
		s.option = j.Options[0].Name
	}
	s.derive()
}

// OnChange adds a listener; it is called on the main goroutine.
func (s *Session) OnChange(f func(Change)) { s.listeners = append(s.listeners, f) }

// Job is the job as it stands.
func (s *Session) Job() design.Job { return s.history.Job() }

// Option is the option in hand.
func (s *Session) Option() design.Option {
	o, _ := s.Job().Option(s.option)
	return o
}

// Design is the design in hand.
func (s *Session) Design() design.Design { return s.Option().Design }

// Report is the report of the design in hand.
func (s *Session) Report() report.Report { return s.report }

// Selection is what is selected, in the order of picking.
func (s *Session) Selection() []Pick { return s.selection }

// SelectedParts is the parts that are selected, each once.
func (s *Session) SelectedParts() []design.ID {
	var out []design.ID
	for _, k := range s.selection {
		if k.Part != "" && !slices.Contains(out, k.Part) {
			out = append(out, k.Part)
		}
	}
	return out
}

// SelectParts selects these parts.
func (s *Session) SelectParts(ids []design.ID) {
	picks := make([]Pick, len(ids))
	for i, id := range ids {
		picks[i] = Pick{Part: id, Node: -1}
	}
	s.Select(picks...)
}

// Select replaces the selection.
func (s *Session) Select(picks ...Pick) {
	s.selection = picks
	s.tell(Change{Selection: true})
}

// SetOption takes another option in hand and empties the selection.
func (s *Session) SetOption(name string) {
	if _, ok := s.Job().Option(name); !ok || name == s.option {
		return
	}
	s.option, s.selection = name, nil
	s.derive()
	s.tell(Change{Design: true, Option: true, Selection: true})
}

// Do applies an edit of the design in hand as one undo step.
func (s *Session) Do(e edit.Edit) error { return s.do(edit.On(s.option, e), 0, Change{Design: true}) }

// DoJob applies an edit of the job as one undo step.
func (s *Session) DoJob(e edit.JobEdit) error {
	return s.do(e, 0, Change{Design: true, Job: true})
}

// BeginGesture opens a gesture, such as a drag: all [Session.DoGesture] until
// the next one merge into one undo step, each applied to the design as it was
// when the gesture began.
func (s *Session) BeginGesture() { s.gesture++ }

// DoGesture applies an edit as the present state of the open gesture.
func (s *Session) DoGesture(e edit.Edit) error {
	return s.do(edit.On(s.option, e), s.gesture, Change{Design: true})
}

// DoJobGesture is as [Session.DoGesture] for an edit of the job that no design hangs
// on.
func (s *Session) DoJobGesture(e edit.JobEdit) error {
	return s.do(e, s.gesture, Change{Job: true})
}

// CancelGesture takes the open gesture back and leaves no trace.
func (s *Session) CancelGesture() {
	if s.history.Cancel(s.gesture) {
		s.compare()
		s.settle(Change{Design: true, Job: true, Selection: true})
	}
}

func (s *Session) do(e edit.JobEdit, gesture int, c Change) error {
	if err := s.history.Do(e, gesture); err != nil {
		return err
	}
	s.dirty = true
	s.settle(c)
	return nil
}

// Undo takes the last step back.
func (s *Session) Undo() {
	if _, ok := s.history.Undo(); ok {
		s.compare()
		s.settle(Change{Design: true, Job: true, Selection: true})
	}
}

// Redo does the next step again.
func (s *Session) Redo() {
	if _, ok := s.history.Redo(); ok {
		s.compare()
		s.settle(Change{Design: true, Job: true, Selection: true})
	}
}

// compare finds out whether the job, after steps back or forth, is the one that
// was saved.
func (s *Session) compare() { s.dirty = !reflect.DeepEqual(s.saved, s.Job()) }

// UndoName is the edit that Undo would take back, "" for none.
func (s *Session) UndoName() string { return s.history.UndoName() }

// RedoName is the edit that Redo would do again, "" for none.
func (s *Session) RedoName() string { return s.history.RedoName() }

// Path is the job's file, "" when it was never saved.
func (s *Session) Path() string { return s.path }

// Dirty reports whether there are changes that the file has not.
func (s *Session) Dirty() bool { return s.dirty }

// MarkSaved says that the job now stands in the file at path.
func (s *Session) MarkSaved(path string) {
	s.path, s.saved, s.dirty = path, s.Job(), false
	s.tell(Change{Job: true})
}

// MarkSavedAs says that the job was saved in another file in another form, such as
// with its photograph under another name. That is no step of undo.
func (s *Session) MarkSavedAs(path string, j design.Job) {
	s.history.Amend(j)
	s.MarkSaved(path)
}

// MarkChanged says that what is in hand stands in no file, whatever its path.
func (s *Session) MarkChanged() {
	s.saved, s.dirty = design.Job{}, true
	s.tell(Change{Job: true})
}

// settle makes option, selection and report fit the job after a change.
func (s *Session) settle(c Change) {
	options := s.Job().Options
	if _, ok := s.Job().Option(s.option); !ok && len(options) > 0 {
		// Renamed, it is where it was; gone, its neighbour takes its place.
		renamed := len(options) == s.count
		s.option = options[min(s.place, len(options)-1)].Name
		if !renamed {
			s.selection = nil
			c.Option, c.Selection = true, true
		}
	}
	s.derive()
	s.tell(c)
}

func (s *Session) derive() {
	s.count = len(s.Job().Options)
	for i, o := range s.Job().Options {
		if o.Name == s.option {
			s.place = i
		}
	}
	s.report = report.Derive(s.Design(), s.Job().Materials, s.Job().Site)
	s.seen = nil
}

func (s *Session) tell(c Change) {
	for _, f := range s.listeners {
		f(c)
	}
}

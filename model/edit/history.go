package edit

import "example.org/castwright/model/design"

// maxSteps bounds the history; old steps fall off. Versions share what is
// equal, so a step costs little.
const maxSteps = 500

// History is the past and future of a job. The zero value is not usable: start
// with [NewHistory].
type History struct {
	steps []step
	at    int
}

type step struct {
	job     design.Job
	name    string // of the edit that led here
	gesture int    // steps of one gesture merge; 0 never does
}

// NewHistory starts a history at j.
func NewHistory(j design.Job) *History { return &History{steps: []step{{job: j}}} }

// Job is the job as it stands.
func (h *History) Job() design.Job { return h.steps[h.at].job }

// Do applies e as one step. Steps of the same non-zero gesture, such as the
// moves of one drag, merge into one: e is then applied to the job as it was
// before the gesture began, so a drag always works from its start.
func (h *History) Do(e JobEdit, gesture int) error {
	base := h.at
	if gesture != 0 && h.at > 0 && h.steps[h.at].gesture == gesture {
		base--
	}
	j, err := e.Apply(h.steps[base].job)
	if err != nil {
		return err
	}
	h.steps = append(h.steps[:base+1:base+1], step{j, e.Name, gesture})
	if over := len(h.steps) - maxSteps; over > 0 {
		h.steps = append([]step(nil), h.steps[over:]...)
	}
	h.at = len(h.steps) - 1
	return nil
}

// Amend puts another form of the job as it stands in its place, without a step.
func (h *History) Amend(j design.Job) {
	steps := append([]step(nil), h.steps...)
	steps[h.at].job = j
	h.steps = steps
}

// Cancel takes back the gesture in hand, if it has made a step, and leaves no
// trace of it.
func (h *History) Cancel(gesture int) bool {
	if gesture == 0 || h.at == 0 || h.steps[h.at].gesture != gesture {
		return false
	}
	h.at--
	h.steps = h.steps[:h.at+1]
	return true
}

// Undo steps back and gives the name of what was undone.
func (h *History) Undo() (name string, ok bool) {
	if h.at == 0 {
		return "", false
	}
	name = h.steps[h.at].name
	h.at--
	return name, true
}

// Redo steps forward and gives the name of what was done again.
func (h *History) Redo() (name string, ok bool) {
	if h.at+1 >= len(h.steps) {
		return "", false
	}
	h.at++
	return h.steps[h.at].name, true
}

// UndoName and RedoName are the names of the edits that the next undo or redo
// would touch, "" when there is none.
func (h *History) UndoName() string {
	if h.at == 0 {
		return ""
	}
	return h.steps[h.at].name
}

// RedoName is the name of the edit that the next redo would do again.
func (h *History) RedoName() string {
	if h.at+1 >= len(h.steps) {
		return ""
	}
	return h.steps[h.at+1].name
}

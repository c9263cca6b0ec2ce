package ui

import (
	"fmt"
	"strings"

	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/words"
)

// tellEnded says in the hint line which relations a change has ended, whichever way
// it was made. A drag says it while it lasts; what was cut or removed on purpose, and
// steps back, say nothing.
func (w *window) tellEnded(c session.Change) {
	if !c.Design && !c.Option {
		return
	}
	d, before := w.session.Design(), w.kept
	w.kept = d.Relations
	if len(d.Relations) > len(before) {
		w.board.Note("") // moved back, or kept anew
	}
	if c.Option || w.board.Dragging() || w.session.RedoName() != "" || len(d.Relations) >= len(before) ||
		strings.HasPrefix(w.session.UndoName(), "Cut ") || strings.HasPrefix(w.session.UndoName(), "Remove ") {
		return
	}
	sys := w.session.Job().Units
	ended := words.Ended(d, before, d.Relations, func(l units.Length) string { return units.Format(l, sys) })
	if len(ended) == 0 {
		return
	}
	said, more := strings.Join(ended[:min(len(ended), 2)], ", "), ""
	if n := len(ended) - 2; n > 0 {
		more = fmt.Sprintf(", and %d more", n)
	}
	w.board.Note("No longer kept: " + said + more + ". Ctrl+Z brings it back")
}

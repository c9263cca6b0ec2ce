package tool

import (
	"slices"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/words"
)

// showLocks marks the locked parts among what is selected or under the mouse.
func (h *Hand) showLocks(o *Overlay) {
	d, s := h.s.Design(), h.s.Report().Solid
	mark := func(id design.ID) {
		if id == "" || !h.s.Locked(id) {
			return
		}
		if at, ok := (grip{kind: gripPart, part: id}).anchor(d, s, h.at.PerMM); ok && !slices.Contains(o.Locks, at) {
			o.Locks = append(o.Locks, at)
		}
	}
	for _, k := range h.s.Selection() {
		mark(k.Part)
	}
	if h.here && h.hold == nil {
		mark(h.over.part)
	}
}

// cutWords say which relations the gesture in hand has ended.
func (h *Hand) cutWords(k *hold) string {
	d := h.s.Design()
	cut := words.Ended(k.d0, k.d0.Relations, d.Relations, func(l units.Length) string { return h.length(l.MM()) })
	if len(cut) == 0 {
		return ""
	}
	return "This ends that " + strings.Join(cut[:min(len(cut), 2)], " and that ") + ". "
}

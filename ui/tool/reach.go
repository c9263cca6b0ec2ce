package tool

import (
	"slices"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/ui/words"
)

// pile is what lies at a place, what a press takes first: no handles, and each
// thing once.
func (h *Hand) pile(p Pointer) []grip {
	var out []grip
	for _, g := range h.under(p) {
		if g = g.whole(); !slices.Contains(out, g) {
			out = append(out, g)
		}
	}
	return out
}

// next selects what lies under what is selected, and from the lowest thing goes
// back to the uppermost.
func (h *Hand) next(p Pointer) bool {
	found := h.pile(p)
	for i, g := range found {
		if slices.Contains(h.s.Selection(), g.pick()) {
			if len(found) > 1 {
				h.choose(found[(i+1)%len(found)])
			}
			return len(found) > 1
		}
	}
	return false
}

// Beneath selects what lies under what is selected: at the mouse, where that is
// over what is selected, else at the selected thing's own place. With nothing
// selected it takes the second thing under the mouse.
func (h *Hand) Beneath() bool {
	if h.put != nil || h.pen != nil || h.free != nil || h.Busy() || h.tool != Select {
		return false
	}
	h.Settle()
	if h.here {
		if len(h.s.Selection()) == 0 {
			if found := h.pile(h.at); len(found) > 1 {
				h.choose(found[1])
				return true
			}
			return false
		}
		if h.next(h.at) {
			return true
		}
	}
	g, _, ok := h.selected()
	if !ok {
		return false
	}
	at, ok := g.anchor(h.s.Design(), h.s.Report().Solid, h.at.PerMM)
	return ok && h.next(Pointer{At: at, PerMM: h.at.PerMM})
}

// beneathWords name what a further click at the mouse would take, "" for nothing.
func (h *Hand) beneathWords() string {
	found := h.pile(h.at)
	for i, g := range found {
		if slices.Contains(h.s.Selection(), g.pick()) && len(found) > 1 {
			return h.nameOf(found[(i+1)%len(found)])
		}
	}
	return ""
}

// nameOf is a thing in the middle of a sentence, with its article.
func (h *Hand) nameOf(g grip) string {
	d := h.s.Design()
	switch g.kind {
	case gripTop:
		return "the top"
	case gripCorner:
		return "the " + cornerName(d.Outline.Nodes, g.node)
	case gripEdge:
		return "the " + edgeName(d.Outline.Nodes, g.node)
	}
	return "the " + partName(d, g.part)
}

// lockedOf is the first locked part among grips.
func (h *Hand) lockedOf(gs ...grip) (design.ID, bool) {
	for _, g := range gs {
		if g.part != "" && h.s.Locked(g.part) {
			return g.part, true
		}
	}
	return "", false
}

// Note says something in the hint's place until the next press or change.
func (h *Hand) Note(text string) { h.note = strings.TrimSuffix(text, ".") }

// refuseLocked says that a part is locked, if one of the grips is of such.
func (h *Hand) refuseLocked(gs ...grip) bool {
	id, locked := h.lockedOf(gs...)
	if locked {
		h.note = capital(partName(h.s.Design(), id)) + " " + words.IsAre(h.s.Design(), id) + " locked: Ctrl+Alt+L or the panel unlocks what is selected"
	}
	return locked
}

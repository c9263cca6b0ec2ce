package tool

import (
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/words"
)

// Hint is what the next click or key does, and what the snap holds, in words.
func (h *Hand) Hint() string {
	switch {
	case h.put != nil:
		return h.putHint()
	case h.pen != nil:
		return h.penHint()
	case h.free != nil:
		return h.free.hint(h)
	case h.hold != nil && h.hold.fault != "":
		return h.hold.fault + ". " + h.afterFault()
	case h.hold != nil && h.hold.typed != nil:
		return h.typeHint(h.hold.typed, h.fieldsOf(h.hold, h.at.PerMM), h.hold.pins)
	case h.hold != nil && h.hold.pressed:
		return h.dragHint()
	case h.band != nil && h.band.begun:
		return h.bandHint()
	case h.note != "":
		return h.note + "."
	case h.tool == Pan:
		return "Drag to move the paper; scroll to zoom at the mouse; Esc goes back to selecting."
	case len(h.s.Design().Outline.Nodes) == 0:
		return "There is no top yet: pick a shape in the parts row, or draw an outline point by point."
	}
	if words := h.bondHint(); words != "" {
		return words
	}
	if words := h.overHint(); words != "" {
		return words
	}
	if words := h.selectedHint(); words != "" {
		return words
	}
	return "Click a part, an edge or a corner to select it; drag a frame round several; scroll to zoom, Space and drag (or the middle button) move the paper."
}

func (h *Hand) afterFault() string {
	if h.hold.typed != nil {
		return "Mend the number and press Enter, or Esc takes it back."
	}
	return "Esc takes it back."
}

func (h *Hand) putHint() string {
	if h.put.fault != "" {
		return h.put.fault + ". Esc puts the " + h.put.name + " back."
	}
	if h.put.typed != nil {
		return h.typeHint(h.put.typed, h.putFields(h.put, h.put.at), h.put.pins)
	}
	if len(h.put.pins) > 0 {
		var held []string
		for _, p := range h.put.pins {
			held = append(held, small(p.name)+" "+h.length(p.value))
		}
		return capital(strings.Join(held, ", ")) + ", as typed. Click or Enter sets the " + h.put.name +
			" down" + h.put.keptWords() + "; Tab goes to the next measure, Esc takes the number back."
	}
	if !h.put.shown {
		return "Move over the top and click to set the " + h.put.name + " down, or press Enter for the middle; Esc puts it back."
	}
	return "Click sets the " + h.put.name + " down" + h.put.keptWords() + ". " + h.put.snap.words + ". A number sets its place" + h.put.turnWords() + "; " + freeWords + "; Esc ends."
}

func (h *Hand) penHint() string {
	k := h.pen
	if k.fault != "" {
		return k.fault + "."
	}
	if k.typed != nil {
		return h.typeHint(k.typed, h.penFields(), nil)
	}
	if len(k.pins) > 0 {
		return "Enter or a click sets the point, as typed; Tab goes to the next measure, Esc takes the numbers back."
	}
	if h.tool == Through {
		return h.throughHint()
	}
	n := len(k.points)
	thing := map[Tool]string{Outline: "outline", River: "river", Region: "channel", Glass: "glass bed",
		Support: "support"}[h.tool]
	if n == 0 {
		place := "Esc goes back to selecting."
		if h.tool != Outline {
			place = "or type how far from the left, Tab, from the front; " + place
		}
		return "Click where the " + thing + " starts; " + place
	}
	parts := []string{"click sets the next point"}
	if h.tool == Support {
		parts = []string{"click sets the other end"}
	}
	switch {
	case n >= h.tool.need() && h.tool.closes():
		parts = append(parts, "a click on the first point or Enter closes the shape")
	case n >= h.tool.need() && h.tool == River:
		parts = append(parts, "a double click or Enter ends the river")
	}
	parts = append(parts, "a number sets its length, Tab its other measures", "Backspace takes the last point back")
	held := ""
	if k.snap.words != "" {
		held = k.snap.words + ". "
	}
	return held + capital(strings.Join(parts, "; ")) + "; " + freeWords + "."
}

// typeHint says what to do with a number that is being typed.
func (h *Hand) typeHint(t *typed, fs []field, pins []pin) string {
	words := t.field.name + ": Enter sets it"
	next := nextField(fs, t.field.id(), pins, t.text != "" && h.pen == nil)
	if f, ok := activeOf(fs, next); ok && next != t.field.id() {
		words += ", Tab sets it and goes on with \u201c" + small(f.name) + "\u201d"
	}
	return words + ", Esc takes it back. Fractions, units and sums may be mixed: " + h.sample(t.field) + "."
}

// sample is a number such as may be typed.
func (h *Hand) sample(f field) string {
	switch {
	case f.angle:
		return "22.5 or 90/4"
	case h.s.Job().Units == units.Imperial:
		return "60 - 2*3/4 or 2' 3 1/2\" or 65 cm"
	}
	return "650 - 2*18 or 65 cm or 25 1/2\""
}

func (h *Hand) dragHint() string {
	k := h.hold
	if !k.begun {
		return h.tellGrip(k.grip)
	}
	words := k.snap.words
	if words != "" {
		words += ". "
	}
	words += h.cutWords(k)
	if active, ok := k.active(h.fieldsOf(k, h.at.PerMM)); ok {
		words += active.name + " " + h.amount(active) + ": type a number for it, Tab for the next measure. "
	}
	return words + capital(freeWords) + ", Esc takes it back."
}

// freeWords says which keys suspend the snap.
const freeWords = "Ctrl or Alt frees the snap"

// overHint says what a press on what lies under the mouse does.
func (h *Hand) overHint() string {
	if h.over.kind == gripNone || !h.here || !h.over.exists(h.s.Design()) {
		return ""
	}
	for _, p := range h.s.Selection() {
		if p == h.over.pick() && !h.isHandle(h.over) {
			return "" // said at more length
		}
	}
	return h.tellGrip(h.over)
}

func (h *Hand) tellGrip(g grip) string {
	d := h.s.Design()
	switch g.kind {
	case gripTop:
		return "Click selects the top; drag a frame to select what lies wholly inside."
	case gripCorner:
		return "Drag moves the corner; a click selects it and shows the handle that rounds it."
	case gripEdge:
		return "Drag moves the " + edgeName(d.Outline.Nodes, g.node) + bends(d, g.node, "; the diamond in its middle bends it") +
			"; a double click adds a corner."
	case gripBend:
		return "Drag bends the " + edgeName(d.Outline.Nodes, g.node) + " into an arc."
	case gripRadius:
		if d.Outline.Nodes[g.node].Corner.Kind == design.CornerChamfered {
			return "Drag changes the corner's cut."
		}
		return "Drag rounds the corner."
	case gripControl:
		return "Drag shapes the curve."
	case gripPart:
		if h.s.Locked(g.part) {
			return "The " + partName(d, g.part) + " " + words.IsAre(d, g.part) + " locked: a click selects, and the panel or Ctrl+Alt+L unlocks."
		}
		return "Click selects the " + partName(d, g.part) + ", Shift+click adds it; drag moves it." + h.below(g)
	case gripRiver:
		return "Drag moves the river here; Delete takes this point out."
	case gripWidth:
		return "Drag makes the river wider or narrower here."
	case gripSize:
		return "Drag changes the size of the bowl about its middle."
	case gripTurn:
		return "Drag turns the " + partName(d, g.part) + "."
	case gripNode, gripEnd:
		return "Drag moves this point of the " + partName(d, g.part) + "; Delete takes it out."
	}
	return ""
}

// selectedHint says what can be done with what is selected.
func (h *Hand) selectedHint() string {
	d := h.s.Design()
	sel := h.s.Selection()
	if len(sel) == 0 {
		return ""
	}
	if len(sel) > 1 {
		if h.refused(sel) {
			return "Some of these are locked: unlock them to move or change them; Shift+click takes one out; Esc lets go."
		}
		noun := "thing"
		if len(h.pickedParts()) == len(sel) {
			noun = "part"
		}
		return countOf(len(sel), noun) + ": drag or arrow keys move them together, a number by how much to the right; " +
			"Shift+click adds or takes one out; Delete removes them; Esc lets go."
	}
	g := gripOf(sel[0])
	if !g.exists(d) {
		return ""
	}
	const common = "type a number for a measure (Enter, Tab for others), arrow keys nudge (Shift: ten steps), "
	switch g.kind {
	case gripTop:
		return "The top is selected: type its width, Tab, its depth; drag its corners and edges; Esc lets go."
	case gripCorner:
		return "Corner: the ring rounds it, " + common + "Delete removes it, Esc lets go."
	case gripEdge:
		return capital(edgeName(d.Outline.Nodes, g.node)) + ": " + shapes(d, g.node) + common + "Esc lets go."
	}
	if h.s.Hidden(g.part) {
		return capital(partName(d, g.part)) + " " + words.IsAre(d, g.part) + " hidden: still cast and counted; Ctrl+Alt+H or the panel shows it again; Esc lets go."
	}
	under := ""
	if below := h.beneathWords(); below != "" && h.here {
		under = "click again, Alt+click or Page down takes " + below + " under it, "
	}
	if h.s.Locked(g.part) {
		return capital(partName(d, g.part)) + " " + words.IsAre(d, g.part) + " locked: " + under + "Ctrl+Alt+L or the panel unlocks; Esc lets go."
	}
	return capital(partName(d, g.part)) + ": " + under + common + "Delete removes it, Esc lets go."
}

// pickedParts are the parts that are selected.
func (h *Hand) pickedParts() []design.ID {
	var out []design.ID
	for _, k := range h.s.Selection() {
		if k.Part != "" {
			out = append(out, k.Part)
		}
	}
	return out
}

// refused reports whether one of what is selected is locked.
func (h *Hand) refused(sel []session.Pick) bool {
	for _, k := range sel {
		if _, locked := h.lockedOf(gripOf(k)); locked {
			return true
		}
	}
	return false
}

// below says how to reach what lies under the thing that a press would take.
func (h *Hand) below(g grip) string {
	found := h.pile(h.at)
	if len(found) < 2 || found[0] != g {
		return ""
	}
	return " Alt+click or Page down: " + h.nameOf(found[1]) + " under it."
}

// bends is words, unless the edge is a spline: that has handles of its own.
func bends(d design.Design, node int, words string) string {
	if d.Outline.Nodes[node].Edge.Curve == design.CurveSpline {
		return ""
	}
	return words
}

// shapes says how the selected edge is shaped.
func shapes(d design.Design, node int) string {
	if d.Outline.Nodes[node].Edge.Curve == design.CurveSpline {
		return "its two handles shape it, a double click adds a point, Alt+F3 draws it through points, "
	}
	return "the diamond bends it, Alt+F3 draws it through points, "
}

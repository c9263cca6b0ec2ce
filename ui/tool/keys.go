package tool

import (
	"cmp"
	"fmt"
	"slices"
	"unicode"
	"unicode/utf8"

	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/ui/session"
)

// Key is a key press; mods are the modifiers held. It reports whether the key
// meant something.
func (h *Hand) Key(k Key, mods Mod) bool {
	switch k {
	case KeyEscape:
		return h.Cancel()
	case KeyEnter:
		return h.accept()
	case KeyTab:
		return h.tab()
	case KeyBackspace:
		return h.backspace()
	case KeyDelete:
		return h.remove()
	case KeyLeft:
		return h.nudge(geom.Vec{X: -1}, mods)
	case KeyRight:
		return h.nudge(geom.Vec{X: 1}, mods)
	case KeyUp:
		return h.nudge(geom.Vec{Y: 1}, mods)
	case KeyDown:
		return h.nudge(geom.Vec{Y: -1}, mods)
	}
	return false
}

// Rune is a character. It reports whether it went into a number.
func (h *Hand) Rune(r rune) bool {
	if !unicode.IsPrint(r) {
		return false
	}
	if h.free != nil {
		return h.free.rune(h, r)
	}
	if h.put != nil && h.put.typed == nil && h.putRune(r) {
		return true
	}
	if t, start := h.typedNow(); t == nil {
		if !begins(r) && r != '=' || !start() {
			return false
		}
	}
	t, _ := h.typedNow()
	if utf8.RuneCountInString(t.text) < maxTyped {
		h.retype(t.text + string(r))
	}
	return true
}

// typedNow is the number that is being typed, with how to start one.
func (h *Hand) typedNow() (*typed, func() bool) {
	switch {
	case h.put != nil:
		return h.put.typed, h.putStart
	case h.pen != nil:
		return h.pen.typed, h.penStart
	case h.hold != nil && h.hold.typed != nil:
		return h.hold.typed, nil
	}
	return nil, h.startHeld
}

// startHeld opens a number for the thing being dragged, else for what is
// selected.
func (h *Hand) startHeld() bool {
	k := h.holdForTyping()
	if k == nil || !h.startTyping(k) {
		return false
	}
	h.hold = k
	return true
}

// retype makes text the number typed so far. It changes nothing yet: on the way
// to 1200 a top is not to become 1 mm wide.
func (h *Hand) retype(text string) {
	t, _ := h.typedNow()
	t.text, t.bad = text, false
	switch {
	case h.put != nil:
		h.put.fault = ""
	case h.pen != nil:
		h.pen.fault = ""
	default:
		h.hold.fault = ""
	}
}

// maxTyped bounds a number being typed.
const maxTyped = 40

// holdForTyping is what a typed number goes to: the thing being dragged, else
// what is selected.
func (h *Hand) holdForTyping() *hold {
	if h.hold != nil && h.hold.pressed {
		return h.hold
	}
	h.Settle()
	g, others, ok := h.selected()
	if !ok || h.refuseLocked(append(others, g)...) {
		return nil
	}
	k, ok := h.take(g, others, h.at)
	if !ok {
		return nil
	}
	return k
}

// Idle reports whether nothing is drawn, set down or pressed.
func (h *Hand) Idle() bool {
	return h.band == nil && h.pen == nil && h.put == nil && h.free == nil && (h.hold == nil || !h.hold.pressed)
}

// TakeField opens a number for a measure of what is selected, as a click on its
// label does.
func (h *Hand) TakeField(name string) bool {
	if !h.Idle() {
		return false
	}
	k := h.holdForTyping()
	if k == nil {
		return false
	}
	k.field = name
	if f, ok := k.active(h.fieldsOf(k, h.at.PerMM)); !ok || f.id() != name || !h.startTyping(k) {
		return false
	}
	h.hold = k
	return true
}

// selected is the grip of what is selected, with what is selected beside it.
func (h *Hand) selected() (g grip, others []grip, ok bool) {
	sel := h.s.Selection()
	if len(sel) == 0 {
		return grip{}, nil, false
	}
	g = gripOf(sel[0])
	if h.sub.kind != gripNone && len(sel) == 1 && h.sub.pick() == sel[0] {
		g = h.sub
	}
	for _, p := range sel[1:] {
		others = append(others, gripOf(p))
	}
	return g, others, g.exists(h.s.Design())
}

// Cancel backs out of one thing: a number being typed, a drag, a drawing, a
// part in hand, a tool, the selection. It reports whether there was one.
func (h *Hand) Cancel() bool {
	h.note = ""
	switch {
	case h.armed != nil:
		h.armed = nil
		return true
	case h.band != nil && h.band.begun:
		h.done = true
		h.dropBand()
		return true
	case h.hold != nil && h.hold.typed != nil:
		h.dropNumber()
		return true
	case h.holding():
		h.done = h.hold.pressed
		h.revert()
		return true
	case h.free != nil && h.free.back():
		return true
	case h.hold != nil:
		h.hold = nil
	}
	switch {
	case h.pen != nil && h.pen.typed != nil:
		h.pen.typed, h.pen.fault = nil, ""
	case h.pen != nil && len(h.pen.pins) > 0:
		h.pen.pins = nil
	case h.put != nil && h.put.putBack():
	case h.pen != nil && len(h.pen.points) > 0:
		h.pen = &pen{edge: h.pen.edge}
	case h.put != nil:
		h.put = nil
	case h.tool != Select:
		h.SetTool(Select)
	case len(h.s.Selection()) > 0:
		h.choose()
	default:
		return false
	}
	h.lookUnder()
	return true
}

// dropNumber forgets a number that is being typed. A drag goes on under the
// mouse; one that is over stays.
func (h *Hand) dropNumber() {
	k := h.hold
	k.typed, k.fault = nil, ""
	if k.pressed {
		k.pins = nil
		h.drag(k, h.at)
		return
	}
	h.release()
}

// accept is Enter: a typed number, or the end of a drawing.
func (h *Hand) accept() bool {
	switch {
	case h.hold != nil && h.hold.typed != nil:
		if h.hold.typed.text == "" {
			h.hold.typed = nil // what was set before it stays
			h.done = h.hold.pressed
			h.release()
		} else if h.commit(h.hold) {
			h.done = h.hold.pressed
			h.release()
		}
		return true
	case h.put != nil && h.put.typed != nil && h.put.typed.text == "":
		h.put.typed = nil
		return true
	case h.put != nil && h.put.typed != nil:
		h.putPin()
		return true
	case h.put != nil:
		if p := h.putPointer(); p.At.Finite() {
			h.setDown(p)
		}
		return true
	case h.pen != nil && (h.pen.typed != nil || len(h.pen.pins) > 0):
		h.penSet()
		return true
	case h.pen != nil:
		h.finish(h.at)
		return true
	case h.free != nil:
		h.free.enter(h)
		return true
	case h.hold == nil || !h.hold.pressed:
		return h.startHeld()
	}
	return false
}

// WantsTab reports whether Tab goes to the next measure rather than to the next
// widget.
func (h *Hand) WantsTab() bool {
	return h.Busy() || h.free != nil || h.put != nil && h.put.shown || h.pen != nil && (h.pen.shown || len(h.pen.points) > 0)
}

func (h *Hand) tab() bool {
	switch {
	case h.put != nil:
		return h.putTab()
	case h.pen != nil:
		return h.penTab()
	case h.free != nil:
		return h.free.tab(h)
	case !h.holding():
		return false
	}
	k := h.hold
	if k.typed != nil {
		// A number begun is set, and the next measure is up.
		if k.typed.text != "" && !h.commit(k) {
			return true
		}
		begun := k.typed.text != ""
		k.field, k.typed = k.typed.field.id(), nil
		k.field = nextField(h.fieldsOf(k, h.at.PerMM), k.field, k.pins, begun)
		h.startTyping(k)
		return true
	}
	h.stepField(k)
	return true
}

func (h *Hand) backspace() bool {
	switch k := h.hold; {
	case k != nil && k.typed != nil:
		if k.typed.text == "" {
			return h.Cancel()
		}
		h.retype(dropLast(k.typed.text))
		return true
	case h.put != nil && h.put.typed != nil, h.pen != nil && h.pen.typed != nil:
		t, _ := h.typedNow()
		if t.text == "" {
			return h.Cancel()
		}
		h.retype(dropLast(t.text))
		return true
	case h.pen != nil && len(h.pen.points) > 0:
		n := len(h.pen.points) - 1
		h.pen.points, h.pen.widths, h.pen.fault = h.pen.points[:n], h.pen.widths[:n], ""
		return true
	case h.free != nil:
		return h.free.backspace()
	case h.pen == nil && h.put == nil:
		return h.remove()
	}
	return false
}

func dropLast(s string) string {
	r := []rune(s)
	return string(r[:max(0, len(r)-1)])
}

// remove takes away what is selected.
func (h *Hand) remove() bool {
	if h.put != nil || h.pen != nil || h.free != nil || h.Busy() {
		return false
	}
	h.Settle()
	if h.armed != nil && h.hasBond(*h.armed) {
		h.cutBond()
		return true
	}
	g, others, ok := h.selected()
	if !ok || g.kind == gripTop {
		return false
	}
	all := append([]grip{g}, others...)
	if h.refuseLocked(all...) {
		return true
	}
	// Corners go from the last to the first, so that the numbers of those
	// still to go hold.
	slices.SortStableFunc(all, func(a, b grip) int { return cmp.Compare(b.node, a.node) })
	d := h.s.Design()
	var steps []edit.Edit
	for _, g := range all {
		e, err := g.remove(d)
		if err != nil {
			h.note = capital(err.Error())
			return true
		}
		steps = append(steps, e)
	}
	e := steps[0]
	if ids, ok := onlyParts(all); ok {
		e = edit.RemoveParts(ids)
	} else if len(steps) > 1 {
		e = edit.Together(fmt.Sprintf("Remove %d things", len(steps)), steps...)
	}
	sub := h.sub.kind != gripNone
	if h.do(e) {
		h.sub, h.over = grip{}, grip{}
		if sub {
			h.s.Select(session.Pick{Part: g.part, Node: -1})
		} else {
			h.s.Select()
		}
	}
	return true
}

// nudge moves what is selected by a grid step, with Shift by ten. Nudges that
// follow each other are one gesture.
func (h *Hand) nudge(dir geom.Vec, mods Mod) bool {
	if h.put != nil || h.pen != nil || h.free != nil || h.Busy() {
		return false
	}
	k := h.hold
	if k == nil {
		g, others, ok := h.selected()
		if !ok || g.kind == gripTop {
			return false
		}
		if g.own() {
			g = g.whole()
		}
		if h.refuseLocked(append(others, g)...) {
			return true
		}
		if k, ok = h.take(g, others, h.at); !ok {
			return false
		}
		h.hold = k
	}
	step := h.StepNow().MM()
	if mods&Shift != 0 {
		step *= 10
	}
	by := dir.Mul(step)
	if k.dir != (geom.Vec{}) {
		by = k.dir.Mul(by.Dot(k.dir))
	}
	h.moveTo(k, k.target.Add(by))
	return true
}

package tool

import (
	"cmp"
	"fmt"
	"slices"
	"unicode"

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
	if !unicode.IsPrint(r) || h.put != nil {
		return false
	}
	if h.pen != nil {
		if len(h.pen.points) == 0 || h.pen.text == "" && !begins(r) || len(h.pen.text) >= maxTyped {
			return false
		}
		h.pen.text += string(r)
		h.pen.bad, h.pen.fault = false, ""
		return true
	}
	k := h.hold
	if k == nil || k.typed == nil {
		if !begins(r) {
			return false
		}
		if k = h.holdForTyping(); k == nil || !h.startTyping(k) {
			return false
		}
		h.hold = k
	}
	if len(k.typed.text) < maxTyped {
		k.retype(k.typed.text + string(r))
	}
	return true
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
	if !ok || len(others) > 0 {
		return nil
	}
	k, ok := h.take(g, nil, h.at)
	if !ok {
		return nil
	}
	return k
}

// TakeField opens a number for a measure of what is selected, as a click on its
// label does.
func (h *Hand) TakeField(name string) bool {
	if h.pen != nil || h.put != nil || h.hold != nil && h.hold.pressed {
		return false
	}
	k := h.holdForTyping()
	if k == nil {
		return false
	}
	k.field = name
	if f, ok := k.active(h.fieldsOf(k, h.at.PerMM)); !ok || f.name != name || !h.startTyping(k) {
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
	return g, others, g.kind != gripTop && g.exists(h.s.Design())
}

// Cancel backs out of one thing: a number being typed, a drag, a drawing, a
// part in hand, a tool, the selection. It reports whether there was one.
func (h *Hand) Cancel() bool {
	h.note = ""
	switch {
	case h.hold != nil && h.hold.typed != nil:
		h.dropNumber()
		return true
	case h.Busy():
		h.done = h.hold.pressed
		h.revert()
		return true
	case h.hold != nil:
		h.hold = nil
	}
	switch {
	case h.pen != nil && h.pen.text != "":
		h.pen.text, h.pen.bad, h.pen.fault = "", false, ""
	case h.pen != nil && len(h.pen.points) > 0:
		h.pen = &pen{}
	case h.put != nil:
		h.put = nil
	case h.tool != Select:
		h.SetTool(Select)
	case len(h.s.Selection()) > 0:
		h.choose()
	default:
		return false
	}
	return true
}

// dropNumber forgets a number that is being typed. A drag goes on under the
// mouse; one that is over stays.
func (h *Hand) dropNumber() {
	k := h.hold
	k.typed, k.fault = nil, ""
	if k.pressed {
		h.drag(k, h.at)
		return
	}
	h.release()
}

// accept is Enter: a typed number, or the end of a drawing.
func (h *Hand) accept() bool {
	switch {
	case h.hold != nil && h.hold.typed != nil:
		if h.commit(h.hold) {
			h.done = h.hold.pressed
			h.release()
		}
		return true
	case h.put != nil:
		p := h.at
		if !h.put.shown {
			p.At = h.s.Report().Solid.Outline.Bounds().Centre()
		}
		if p.At.Finite() {
			h.setDown(p)
		}
		return true
	case h.pen != nil && h.pen.text != "":
		h.setTyped()
		return true
	case h.pen != nil:
		h.finish(h.at)
		return true
	}
	return false
}

// WantsTab reports whether Tab goes to the next measure rather than to the next
// widget.
func (h *Hand) WantsTab() bool { return h.Busy() }

func (h *Hand) tab() bool {
	k := h.hold
	if !h.Busy() {
		return false
	}
	if k.typed != nil {
		if k.typed.text != "" {
			return true // a number begun stays with its measure
		}
		k.typed = nil
	}
	h.nextField(k)
	if !k.pressed {
		h.startTyping(k)
	}
	return true
}

func (h *Hand) backspace() bool {
	switch k := h.hold; {
	case k != nil && k.typed != nil:
		if k.typed.text == "" {
			return h.Cancel()
		}
		k.retype(dropLast(k.typed.text))
		return true
	case h.pen != nil && h.pen.text != "":
		h.pen.text, h.pen.bad, h.pen.fault = dropLast(h.pen.text), false, ""
		return true
	case h.pen != nil && len(h.pen.points) > 0:
		h.pen.points, h.pen.fault = h.pen.points[:len(h.pen.points)-1], ""
		return true
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
	if h.put != nil || h.pen != nil || h.Busy() {
		return false
	}
	h.Settle()
	g, others, ok := h.selected()
	if !ok {
		return false
	}
	all := append([]grip{g}, others...)
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
	if len(steps) > 1 {
		e = sequence(fmt.Sprintf("Remove %d things", len(steps)), steps)
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
	if h.put != nil || h.pen != nil || h.Busy() {
		return false
	}
	k := h.hold
	if k == nil {
		g, others, ok := h.selected()
		if !ok {
			return false
		}
		if g.own() {
			g = g.whole()
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

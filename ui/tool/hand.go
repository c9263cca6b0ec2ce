package tool

import (
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
)

// Hand is the hand on the board: the tool in use and what it holds. It belongs
// to the session's goroutine.
type Hand struct {
	s     *session.Session
	tool  Tool
	stock *Stock // as set, nil for the plain one

	rounding Rounding // which grid step the snap holds

	at   Pointer // where the mouse was last
	here bool    // it is on the board
	over grip    // what a press would take
	sub  grip    // the node of the selected part that was taken last

	put  *inHand
	pen  *pen
	free *free
	hold *hold
	band *band

	armed    *bond // a relation that was taken by a click on its chain
	overBond *bond // one whose chain is under the mouse

	pointed design.ID // a part that something else on the window speaks of

	last     geom.Vec // where the last press was, for reaching what is under
	held     bool     // the press is on a locked part
	again    bool     // this press was at the place of the last one
	done     bool     // a number was entered while the button is down
	applying bool     // a change of the session is our own
	note     string   // why something could not be done
}

// New is a hand on a session.
func New(s *session.Session) *Hand {
	h := &Hand{s: s, at: Pointer{PerMM: 1}}
	s.OnChange(h.changed)
	return h
}

// changed lets go of what no longer fits after a change made elsewhere.
func (h *Hand) changed(c session.Change) {
	if c.Design || c.Option || c.Selection {
		h.armed, h.overBond = nil, nil
	}
	if h.applying || !(c.Design || c.Option) {
		return
	}
	h.hold, h.band, h.note = nil, nil, ""
	h.keepsEdge()
	if h.free != nil {
		h.free.drop()
	}
	if c.Option {
		h.put, h.pen, h.free = nil, nil, nil
		if h.tool.draws() || h.tool.strokes() {
			h.tool = Select
		}
	}
}

// Tool is the tool in use.
func (h *Hand) Tool() Tool { return h.tool }

// SetTool takes another tool; what is in hand is put back.
func (h *Hand) SetTool(t Tool) {
	h.BackOut()
	edge := h.selectedEdge()
	h.tool, h.put, h.pen, h.free, h.note = t, nil, nil, nil, ""
	switch {
	case t.draws():
		h.pen = &pen{edge: edge}
		h.s.Select()
	case t.strokes():
		h.free = &free{craft: craftOf(t)}
	}
	h.lookUnder()
}

// SetRounding says which grid step the snap holds; one that is not known is by
// the zoom.
func (h *Hand) SetRounding(r Rounding) {
	if !r.Known() {
		r = ByZoom
	}
	h.rounding = r
}

// Rounding is which grid step the snap holds.
func (h *Hand) Rounding() Rounding { return h.rounding }

// StepNow is the grid step that the snap holds at the zoom of now.
func (h *Hand) StepNow() units.Length { return h.rounding.Step(h.s.Job().Units, h.at.PerMM) }

// SetStock says what newly drawn parts start from.
func (h *Hand) SetStock(s Stock) { h.stock = &s }

// stockNow is what newly drawn parts start from.
func (h *Hand) stockNow() Stock {
	if h.stock != nil {
		return *h.stock
	}
	return StockOf(h.s.Job().Units)
}

// Busy reports whether a gesture is open that [Hand.BackOut] would take back.
func (h *Hand) Busy() bool { return h.holding() || h.free.busy() || h.band != nil && h.band.begun }

// holding reports whether a grip is in hand, by the mouse or for a number.
func (h *Hand) holding() bool { return h.hold != nil && (h.hold.pressed || h.hold.typed != nil) }

// Dragging reports whether a press drags something along: a part, a frame, a
// stroke, a point being set.
func (h *Hand) Dragging() bool {
	return h.hold != nil && h.hold.pressed && h.hold.begun && h.hold.typed == nil ||
		h.band != nil && h.band.begun || h.free != nil && h.free.pressed && h.free.typed == nil || h.Carrying()
}

// Carrying reports whether something follows the mouse without a button: a part
// in hand, or the next point of a drawing.
func (h *Hand) Carrying() bool {
	return h.put != nil && h.put.shown && h.put.typed == nil ||
		h.pen != nil && h.pen.shown && h.pen.typed == nil && len(h.pen.points) > 0
}

// BackOut takes back an open gesture; a drawing under way and a part in hand
// stay. Call it before undo, save and whatever else needs a settled design.
func (h *Hand) BackOut() {
	h.held = false
	h.dropBand()
	if h.holding() {
		h.done = h.hold.pressed
		h.revert()
		return
	}
	if h.free != nil {
		h.free.drop()
	}
	h.hold = nil
}

// Down is a press. It reports whether the press took hold of nothing, so that
// dragging may move the paper.
func (h *Hand) Down(p Pointer) (free bool) {
	if !h.enter(&p) {
		return false
	}
	h.done, h.held, h.note = false, false, ""
	switch {
	case h.put != nil:
		h.setDown(p)
		return false
	case h.pen != nil:
		h.point(p)
		return false
	case h.free != nil:
		h.free.press(h, p)
		return false
	case h.tool == Pan:
		return true
	}
	h.Settle()
	return h.grasp(p)
}

// grasp selects and takes hold of what lies under a press.
func (h *Hand) grasp(p Pointer) (free bool) {
	if b := h.bondUnder(p); b != nil {
		h.pressBond(b)
		return false
	}
	h.armed = nil
	found, was := h.under(p), h.s.Selection()
	h.again = (h.last.Dist(p.At) <= p.reach(reachAgain) || p.Mod&Alt != 0) && !p.Double
	h.last = p.At
	if len(found) == 0 {
		if p.Mod&Shift == 0 {
			h.choose()
		}
		if len(h.s.Design().Outline.Nodes) == 0 {
			return true
		}
		h.startBand(p, was)
		return false
	}
	if p.Double && h.split(found, p) {
		return false
	}
	g := found[0]
	chosen := h.chosen(found)
	switch {
	case p.Mod&Shift != 0 && g.kind == gripTop:
		h.again = false
		h.startBand(p, was)
		return false
	case p.Mod&Shift != 0:
		h.toggle(g.whole())
		return false
	case chosen.kind == gripTop && (g.kind == gripCorner || g.kind == gripEdge):
		// A press on the rim of the selected top is meant for the rim.
		h.again = false
		h.choose(g)
	case chosen.kind != gripNone && !h.isHandle(g):
		// What is selected is dragged even from under something else; a click
		// without a drag goes on to the next (see Up).
		g = chosen
	default:
		h.again = p.Mod&Alt != 0
		h.choose(g)
	}
	if g.kind == gripTop {
		h.startBand(p, was)
		return false
	}
	var others []grip
	if sel := h.s.Selection(); len(sel) > 1 && slices.Contains(sel, g.pick()) {
		for _, pick := range sel {
			if o := gripOf(pick); o != g.whole() && o.kind != gripTop {
				others = append(others, o)
			}
		}
		g = g.whole()
	}
	if h.refuseLocked(append(others, g)...) {
		h.held = true
		return false
	}
	if k, ok := h.take(g, others, p); ok {
		k.pressed = true
		h.hold = k
	}
	return false
}

// chosen is the first of the grips that is selected already.
func (h *Hand) chosen(found []grip) grip {
	for _, g := range found {
		if slices.Contains(h.s.Selection(), g.pick()) {
			return g
		}
	}
	return grip{}
}

// isHandle reports whether g is a handle of what is selected.
func (h *Hand) isHandle(g grip) bool {
	return g.kind != gripCorner && g.kind != gripEdge && g.kind != gripPart && g.kind != gripTop
}

// choose selects what the grips belong to.
func (h *Hand) choose(gs ...grip) {
	h.sub = grip{}
	picks := make([]session.Pick, len(gs))
	for i, g := range gs {
		picks[i] = g.pick()
		if h.isHandle(g) && g.part != "" {
			h.sub = g
		}
	}
	if !slices.Equal(picks, h.s.Selection()) {
		h.s.Select(picks...)
	}
}

// toggle adds to the selection or takes from it.
func (h *Hand) toggle(g grip) {
	sel := slices.Clone(h.s.Selection())
	if i := slices.Index(sel, g.pick()); i >= 0 {
		sel = slices.Delete(sel, i, i+1)
	} else {
		sel = append(sel, g.pick())
	}
	h.sub = grip{}
	h.s.Select(sel...)
}

// split puts a corner into the edge, or a node into the river, under a double
// click.
func (h *Hand) split(found []grip, p Pointer) bool {
	for _, g := range found {
		switch g.kind {
		case gripEdge, gripBend:
			sn := h.snapper(nil, p).plane(p.At)
			if h.do(edit.InsertNode(g.node, point(sn.at))) {
				h.choose(grip{kind: gripCorner, node: g.node + 1})
			}
			return true
		case gripPart:
			if part, ok := find(h.s.Design(), g.part); ok && part.channel != nil && !h.refuseLocked(g) {
				if e, sub, ok := splitRiver(*part.channel, p); ok {
					if h.do(e) {
						h.choose(sub)
					}
					return true
				}
			}
		}
	}
	return false
}

// Move is a move of the mouse, with or without a button. It reports whether
// what is shown over the top may have changed.
func (h *Hand) Move(p Pointer) (changed bool) {
	if !h.enter(&p) {
		return false
	}
	switch {
	case h.put != nil:
		h.carry(p)
	case h.pen != nil:
		h.aim(p)
	case h.free != nil:
		h.free.move(h, p)
	case h.hold != nil && h.hold.pressed:
		h.drag(h.hold, p)
	case h.band != nil:
		h.dragBand(p)
	case h.held:
		return false
	case h.hold == nil && h.tool == Select:
		was, link := h.over, h.overBond
		h.lookUnder()
		if h.overBond != nil {
			return link == nil || *link != *h.overBond
		}
		return h.over != was || link != nil
	default:
		return false
	}
	return true
}

// lookUnder finds what a press would take hold of where the mouse is: nothing
// while the hand has something else to do.
func (h *Hand) lookUnder() {
	h.over, h.overBond = grip{}, nil
	if !h.here || h.put != nil || h.pen != nil || h.free != nil || h.hold != nil || h.tool != Select {
		return
	}
	if h.overBond = h.bondUnder(h.at); h.overBond != nil {
		return
	}
	if found := h.under(h.at); len(found) > 0 {
		h.over = found[0]
	}
}

// Follow says that other modifiers are held now: the snap is freed or holds
// again at once.
func (h *Hand) Follow(mods Mod) (changed bool) {
	p := h.at
	p.Mod = mods
	if !h.here || h.put == nil && h.pen == nil && h.free == nil && (h.hold == nil || !h.hold.pressed) {
		return false
	}
	return h.Move(p)
}

// Up lets go of the button.
func (h *Hand) Up(p Pointer) {
	if !h.enter(&p) {
		p = h.at
	}
	if h.free != nil {
		h.free.release(h, p)
		return
	}
	if b := h.band; b != nil {
		if b.begun {
			h.closeBand()
			h.again, h.done = false, false
			return
		}
		h.band = nil
	}
	h.held = false
	k := h.hold
	if k == nil || !k.pressed {
		if k == nil && h.again && !h.done && h.tool == Select {
			h.next(p)
		}
		h.again, h.done = false, false
		return
	}
	if k.typed != nil {
		k.pressed = false // the number goes on being typed
		return
	}
	moved := k.begun
	h.release()
	if !moved && h.again {
		h.next(p)
	}
	h.again = false
}

// Point shows which part something else on the window speaks of, "" for none.
func (h *Hand) Point(part design.ID) { h.pointed = part }

// Panned says that a free press has moved the paper, so that letting go is no
// click.
func (h *Hand) Panned() { h.again = false }

// Out says that the mouse has left the board.
func (h *Hand) Out() {
	h.here, h.over, h.overBond = false, grip{}, nil
	if h.put != nil {
		h.put.shown = false
	}
	if h.pen != nil {
		h.pen.shown = false
	}
	if h.free != nil {
		h.free.shown = false
	}
}

// Settle ends what keys have in hand, as when the eye goes elsewhere: nudges
// stay, and so does a typed number that can be used; any other is taken back.
func (h *Hand) Settle() {
	k := h.hold
	switch {
	case k == nil || k.pressed:
	case k.typed != nil && !h.commit(k):
		h.dropNumber()
	default:
		h.release()
	}
}

// SetScale says how many points a millimetre has now, after a zoom.
func (h *Hand) SetScale(perMM float64) {
	if perMM > 0 && !math.IsInf(perMM, 0) {
		h.at.PerMM = perMM
	}
}

// do applies an edit as one undo step and says so when it can't be done.
func (h *Hand) do(e edit.Edit) bool {
	h.note = ""
	h.applying = true
	err := h.s.Do(e)
	h.applying = false
	if err != nil {
		h.note = capital(err.Error())
	}
	return err == nil
}

// length is a length in the maker's system.
func (h *Hand) length(mm float64) string {
	return units.Format(units.FromMM(mm), h.s.Job().Units)
}

// parse reads a length that was typed.
func (h *Hand) parse(text string) (units.Length, error) {
	return units.Parse(text, h.s.Job().Units)
}

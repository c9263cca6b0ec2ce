package tool

import (
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/words"
)

// bond is a relation as the drawing shows it: the one with this number in the
// design, or tap holes that keep to their sink.
type bond struct {
	rel  int // -1 for tap holes
	taps design.ID
}

// maxLinks bounds the links shown at once: more could not be told apart.
const maxLinks = 16

// Where the chain of a link is drawn, in points.
const (
	chainLeast = 27.0 // a shorter line has it beside its end
	chainOff   = 16.0
)

// bonded is a link with the relation that it shows.
type bonded struct {
	bond
	Link
}

// bonds are what holds the things that are selected, and what they hold.
func (h *Hand) bonds() []bonded {
	d := h.s.Design()
	var out []bonded
	seen := map[bond]bool{}
	var taken []geom.Vec // where a chain would be taken for something else
	add := func(b bond, from, to design.Point) {
		if len(out) == 0 {
			taken = h.handlePlaces()
		}
		l := h.link(vec(from), vec(to), taken)
		taken = append(taken, l.Chain)
		out = append(out, bonded{b, l})
	}
	for _, k := range h.s.Selection() {
		if k.Part == "" {
			continue
		}
		for _, i := range append(d.RelationsOf(k.Part), d.RelationsTo(k.Part)...) {
			b := bond{rel: i}
			if tie, ok := edit.TieOf(d, d.Relations[i]); ok && !seen[b] {
				seen[b] = true
				for _, to := range tie.To {
					add(b, tie.At, to)
				}
			}
		}
		for _, t := range d.Taps {
			b := bond{rel: -1, taps: t.ID}
			if t.Sink == "" || t.ID != k.Part && t.Sink != k.Part || seen[b] {
				continue
			}
			from, ok1 := edit.Centre(d, t.ID)
			to, ok2 := edit.Centre(d, t.Sink)
			if ok1 && ok2 {
				seen[b] = true
				add(b, from, to)
			}
		}
	}
	return out[:min(len(out), maxLinks)]
}

// handlePlaces are where the selected part can be taken by a handle.
func (h *Hand) handlePlaces() []geom.Vec {
	var out []geom.Vec
	for _, g := range h.grips(h.at.PerMM) {
		if at, ok := g.anchor(h.s.Design(), h.s.Report().Solid, h.at.PerMM); ok && g.part != "" {
			out = append(out, at)
		}
	}
	return out
}

// chainStops are the places along a line at which its chain is tried.
var chainStops = [...]float64{0.5, 0.62, 0.38, 0.74, 0.26, 0.86}

// link is a link with its chain: about the middle of its line, clear of what is taken
// already, or beside the end of a line that is too short for it.
func (h *Hand) link(from, to geom.Vec, taken []geom.Vec) Link {
	l := Link{From: from, To: to, Chain: from.Lerp(to, 0.5), Along: to.Sub(from).Unit()}
	for _, t := range chainStops {
		at := from.Lerp(to, t)
		if !slices.ContainsFunc(taken, func(o geom.Vec) bool { return o.Dist(at) < h.at.reach(2*reachGrip) }) {
			l.Chain = at
			break
		}
	}
	if from.Dist(to) < h.at.reach(chainLeast) {
		off := h.at.reach(chainOff)
		l.Chain, l.Along = to.Add(geom.Vec{X: off, Y: off}), geom.Vec{X: 1}
	}
	return l
}

// showLinks shows what holds the things that are selected, and what they hold.
func (h *Hand) showLinks(o *Overlay) {
	for _, b := range h.bonds() {
		l := b.Link
		l.Words = h.bondWords(b.bond)
		l.Armed = h.armed != nil && *h.armed == b.bond
		l.Hover = h.overBond != nil && *h.overBond == b.bond
		o.Links = append(o.Links, l)
	}
}

// bondUnder is the relation whose chain lies at a place, unless a handle of what is
// selected lies there.
func (h *Hand) bondUnder(p Pointer) *bond {
	if h.tool != Select || h.put != nil || h.pen != nil || h.free != nil {
		return nil
	}
	var best *bond
	near := p.reach(reachGrip)
	for _, b := range h.bonds() {
		if dist := b.Chain.Dist(p.At); dist <= near {
			near, best = dist, &b.bond
		}
	}
	if best == nil {
		return nil
	}
	d, s := h.s.Design(), h.s.Report().Solid
	for _, g := range h.grips(p.PerMM) {
		if at, ok := g.anchor(d, s, p.PerMM); ok && at.Dist(p.At) < near {
			return nil
		}
	}
	return best
}

// pressBond is a press on a chain: the first one takes it, the second one cuts it.
func (h *Hand) pressBond(b *bond) {
	h.held, h.again = true, false
	if h.armed != nil && *h.armed == *b {
		h.cutBond()
		return
	}
	h.armed = b
}

// cutBond cuts the relation that was taken.
func (h *Hand) cutBond() {
	b, words := *h.armed, h.bondWords(*h.armed)
	h.armed, h.overBond = nil, nil
	e := edit.FreeTaps(b.taps)
	if b.rel >= 0 {
		e = edit.CutRelation(b.rel)
	}
	if h.do(e) {
		h.note = "Cut: " + small(words) + ". All stays where it is; Ctrl+Z brings it back"
	}
}

// bondWords says what a relation keeps, without a full stop.
func (h *Hand) bondWords(b bond) string {
	d := h.s.Design()
	for _, t := range d.Taps {
		if b.rel < 0 && t.ID == b.taps {
			return words.TapsKept(d, t)
		}
	}
	if b.rel < 0 || b.rel >= len(d.Relations) {
		return ""
	}
	return words.Relation(d, d.Relations[b.rel], func(l units.Length) string { return h.length(l.MM()) })
}

// bondHint says what a click on a chain does, "" when there is none under the mouse
// or taken.
func (h *Hand) bondHint() string {
	switch {
	case h.armed != nil && h.hasBond(*h.armed):
		return h.bondWords(*h.armed) + ": Delete or a second click cuts it, Esc leaves it."
	case h.overBond != nil && h.here && h.hasBond(*h.overBond):
		return h.bondWords(*h.overBond) + ": click its chain to cut it or leave it."
	}
	return ""
}

func (h *Hand) hasBond(b bond) bool {
	return slices.ContainsFunc(h.bonds(), func(o bonded) bool { return o.bond == b })
}

package tool

import (
	"slices"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/words"
)

// maxLinks bounds the links shown at once: more could not be told apart.
const maxLinks = 16

// showLinks shows what holds the things that are selected, and what they hold.
func (h *Hand) showLinks(o *Overlay) {
	d := h.s.Design()
	seen := map[int]bool{}
	for _, k := range h.s.Selection() {
		if k.Part == "" {
			continue
		}
		for _, i := range append(d.RelationsOf(k.Part), d.RelationsTo(k.Part)...) {
			if tie, ok := edit.TieOf(d, d.Relations[i]); ok && !seen[i] {
				seen[i] = true
				for _, to := range tie.To {
					o.Links = append(o.Links, Link{From: vec(tie.At), To: vec(to)})
				}
			}
		}
		for _, t := range d.Taps {
			if t.Sink != "" && (t.ID == k.Part || t.Sink == k.Part) {
				from, ok1 := edit.Centre(d, t.ID)
				to, ok2 := edit.Centre(d, t.Sink)
				if link := (Link{From: vec(from), To: vec(to)}); ok1 && ok2 && !slices.Contains(o.Links, link) {
					o.Links = append(o.Links, link)
				}
			}
		}
	}
	o.Links = o.Links[:min(len(o.Links), maxLinks)]
}

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
	var cut []string
	for _, r := range k.d0.Relations {
		if !slices.ContainsFunc(d.Relations, func(o design.Relation) bool { return sameHold(r, o) }) {
			cut = append(cut, small(words.Relation(k.d0, r, func(l units.Length) string { return h.length(l.MM()) })))
		}
	}
	if len(cut) == 0 {
		return ""
	}
	return "This ends that " + strings.Join(cut[:min(len(cut), 2)], " and that ") + ". "
}

// sameHold reports whether two relations hold the same part to the same thing,
// wherever along it.
func sameHold(a, b design.Relation) bool {
	a.Distance, a.Edge, a.Along = 0, 0, 0
	b.Distance, b.Edge, b.Along = 0, 0, 0
	return a == b
}

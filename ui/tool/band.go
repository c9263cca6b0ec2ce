package tool

import (
	"slices"
	"strconv"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/ui/session"
)

// band is a frame that is drawn with the mouse from empty ground or from the bare
// face, to select what lies wholly inside it.
type band struct {
	from, to geom.Vec
	was      []session.Pick // selected before the press
	add      bool           // to what is selected
	begun    bool           // it is a frame, not a click
}

// startBand begins a frame at a press.
func (h *Hand) startBand(p Pointer, was []session.Pick) {
	h.band = &band{from: p.At, to: p.At, was: was, add: p.Mod&Shift != 0}
}

func (h *Hand) dragBand(p Pointer) {
	b := h.band
	b.to = p.At
	b.begun = b.begun || p.At.Dist(b.from) >= p.reach(dragStart)
}

// dropBand takes a frame back, with what the press had selected.
func (h *Hand) dropBand() {
	b := h.band
	h.band = nil
	if b != nil && b.begun && !slices.Equal(b.was, h.s.Selection()) {
		h.s.Select(b.was...)
	}
}

// closeBand selects what the frame holds.
func (h *Hand) closeBand() {
	b := h.band
	h.band, h.sub = nil, grip{}
	picks := h.framed(b)
	if b.add {
		all := slices.DeleteFunc(slices.Clone(b.was), func(k session.Pick) bool {
			return k.Part == "" && k.Node < 0 // the top is no part beside others
		})
		for _, k := range picks {
			if !slices.Contains(all, k) {
				all = append(all, k)
			}
		}
		picks = all
	}
	if !slices.Equal(picks, h.s.Selection()) {
		h.s.Select(picks...)
	}
}

// framed is what lies wholly inside a frame: parts, less those that are locked or
// hidden; where there is none, corners of the outline.
func (h *Hand) framed(b *band) []session.Pick {
	box := geom.EmptyBox().Include(b.from).Include(b.to)
	_, r := h.s.Seen()
	var out []session.Pick
	for _, id := range h.s.Free() {
		if wholly(box, loopsOf(r.Solid, id)) {
			out = append(out, session.Pick{Part: id, Node: -1})
		}
	}
	if len(out) > 0 {
		return out
	}
	for i, n := range h.s.Design().Outline.Nodes {
		if box.Contains(vec(n.At)) {
			out = append(out, session.Pick{Node: i})
		}
	}
	return out
}

// wholly reports whether a box holds all points of loops, of which there are some.
func wholly(box geom.Box, loops []geom.Loop) bool {
	some := false
	for _, l := range loops {
		for _, p := range l {
			if !box.Contains(p) {
				return false
			}
			some = true
		}
	}
	return some
}

// showBand shows the frame and what it holds.
func (h *Hand) showBand(o *Overlay) {
	b := h.band
	_, r := h.s.Seen()
	o.Frame = &geom.Box{}
	*o.Frame = geom.EmptyBox().Include(b.from).Include(b.to)
	if !b.add {
		o.Selected, o.Handles, o.Links = nil, nil, nil
	}
	for _, k := range h.framed(b) {
		o.Selected = append(o.Selected, linesOf(h.s.Design(), r.Solid, gripOf(k))...)
		if k.Part == "" {
			at := vec(h.s.Design().Outline.Nodes[k.Node].At)
			o.Handles = append(o.Handles, Handle{Kind: HandleCorner, At: at, Stalk: at, Active: true})
		}
	}
}

// bandHint says what letting go selects.
func (h *Hand) bandHint() string {
	picks, what := h.framed(h.band), ""
	switch {
	case len(picks) == 0:
		what = "Nothing lies wholly inside the frame yet"
	case picks[0].Part == "":
		what = capital(countOf(len(picks), "corner")) + " inside"
	case len(picks) == 1:
		what = capital(partName(h.s.Design(), picks[0].Part)) + " inside"
	default:
		what = countOf(len(picks), "part") + " inside"
	}
	words := what + ": letting go selects what lies wholly inside"
	if h.band.add {
		words += ", beside what is selected"
	}
	if h.lockedAny() {
		words += "; locked parts stay out"
	}
	return words + "; Esc backs out."
}

func (h *Hand) lockedAny() bool {
	return slices.ContainsFunc(h.s.Option().Handling, func(k design.Handling) bool { return k.Locked })
}

func countOf(n int, noun string) string {
	if n != 1 {
		noun += "s"
	}
	return strconv.Itoa(n) + " " + noun
}

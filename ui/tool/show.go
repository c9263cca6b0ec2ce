package tool

import (
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// maxDims bounds the dimensions shown at once.
const maxDims = 8

// Overlay is what the hand shows over the top as it stands.
func (h *Hand) Overlay() Overlay {
	var o Overlay
	d, s := h.s.Design(), h.s.Report().Solid
	switch {
	case h.put != nil:
		h.showPut(&o)
		return o
	case h.pen != nil:
		h.showPen(&o)
		return o
	case h.free != nil:
		h.free.show(h, &o)
		return o
	}
	h.showSelection(&o, d, s)
	h.showLinks(&o)
	h.showLocks(&o)
	if h.pointed != "" {
		o.Hover = linesOf(d, s, grip{kind: gripPart, part: h.pointed})
	}
	switch {
	case h.band != nil && h.band.begun:
		h.showBand(&o)
	case h.hold != nil:
		h.showHold(&o)
	case h.over.kind != gripNone && h.here:
		o.Hover = linesOf(d, s, h.over.whole())
		h.showSelectedDims(&o)
	default:
		h.showSelectedDims(&o)
	}
	return o
}

// showSelection outlines what is selected and offers its handles.
func (h *Hand) showSelection(o *Overlay, d design.Design, s slab.Solid) {
	onOutline := h.over.part == "" && h.over.kind != gripNone
	selected := map[grip]bool{}
	for _, p := range h.s.Selection() {
		g := gripOf(p)
		selected[g] = true
		o.Selected = append(o.Selected, linesOf(d, s, g)...)
		onOutline = onOutline || p.Part == ""
	}
	add := func(g grip) {
		at, ok := g.anchor(d, s, h.at.PerMM)
		if !ok {
			return
		}
		held := h.hold != nil && h.hold.grip == g
		o.Handles = append(o.Handles, Handle{Kind: g.handleKind(), At: at, Stalk: g.stalk(d, at),
			Active: held || h.hold == nil && h.over == g || h.sub == g || selected[g]})
	}
	if onOutline && len(d.Outline.Nodes) <= maxNodeHandles {
		for i := range d.Outline.Nodes {
			add(grip{kind: gripCorner, node: i})
		}
	}
	for _, g := range h.grips(h.at.PerMM) {
		add(g)
	}
}

// showHold shows the measures of the thing in hand, the guides of the snap and
// the number being typed.
func (h *Hand) showHold(o *Overlay) {
	k := h.hold
	o.Guides = k.snap.guides
	fs := h.fieldsOf(k, h.at.PerMM)
	active, ok := k.active(fs)
	if k.pressed && !k.grip.own() {
		// Sizes do not change in a move: they are left out, but for the one
		// that is being typed.
		fs = slices.DeleteFunc(fs, func(f field) bool { return f.set != nil && f.id() != active.id() })
	}
	o.Dims = append(h.dims(fs, active.id(), ok), h.narrowest(k.grip, fs)...)
	if k.typed == nil {
		return
	}
	at := h.at.At
	if !h.here || !k.pressed {
		at = active.from.Lerp(active.to, 0.5)
	}
	o.Value = &Value{At: at, Name: k.typed.field.name, Text: k.typed.text, Bad: k.typed.bad}
}

// showSelectedDims shows the measures of what is selected while nothing is in
// hand; a click on one opens it for typing.
func (h *Hand) showSelectedDims(o *Overlay) {
	g, others, ok := h.selected()
	if !ok || len(others) > 0 {
		return
	}
	fs := g.fields(h.s.Design(), h.s.Report().Solid, h.at.PerMM)
	o.Dims = append(h.dims(fs, "", false), h.narrowest(g, fs)...)
}

func (h *Hand) dims(fs []field, active string, ok bool) []Dim {
	var out []Dim
	for _, f := range fs {
		if len(out) == maxDims {
			break
		}
		on := ok && f.id() == active
		if f.hidden && !on {
			continue
		}
		d := Dim{From: f.from, To: f.to, Beside: f.beside, Text: h.amount(f),
			Active: on, Field: f.id(), Bare: f.bare, Tag: f.tag, Low: f.low != low{}, Severe: f.low.severe}
		d.Text = measureWord(f.name) + d.Text
		switch words := f.low.words(h.s.Job().Units); {
		case f.low.over:
			d.Text = h.length(-f.value) + " " + words
		case words != "":
			d.Text += ", " + words
		}
		if f.read {
			d.Field = ""
		}
		out = append(out, d)
	}
	return out
}

// amount is a field's value as the maker reads it.
func (h *Hand) amount(f field) string {
	if f.angle {
		return units.FormatAngle(units.FromDegrees(math.Round(f.value*10) / 10))
	}
	return h.length(f.value)
}

// measureWord goes before the number of a measure that its place alone does not
// explain.
func measureWord(name string) string {
	switch name {
	case "Radius":
		return "R "
	case "Rise":
		return "rise "
	case "Chamfer":
		return "cut "
	case "Diameter":
		return "Ø "
	}
	return ""
}

// narrowest shows where a part comes nearer to an edge or another opening than
// any of the gaps shown, if that is under its limit.
func (h *Hand) narrowest(g grip, fs []field) []Dim {
	if g.kind != gripPart && g.kind != gripSize {
		return nil
	}
	least := math.Inf(1)
	for _, f := range fs {
		if f.set == nil {
			least = math.Min(least, f.value)
		}
	}
	for _, w := range h.s.Report().Warnings {
		if w.Part != g.part || !nearness[w.Code] {
			continue
		}
		value := w.Value
		low := lowOf(w.Code, value, h.s.Report().Solid.Thickness)
		if value < least-1 && low.limit > 0 {
			return []Dim{{From: w.At, To: w.At, Text: "narrowest " + h.length(value) + ", " + low.words(h.s.Job().Units),
				Low: true, Severe: low.severe}}
		}
	}
	return nil
}

func (h *Hand) showPut(o *Overlay) {
	k := h.put
	if !k.shown {
		return
	}
	o.Guides = k.snap.guides
	for _, l := range k.ghost {
		o.Ghost = append(o.Ghost, Line{Points: l, Closed: true})
	}
	fs := h.putFields(k, k.at)
	active, ok := h.putActive(k)
	if k.typed == nil && len(k.pins) == 0 {
		ok = false
	}
	o.Dims = h.dims(fs, active.id(), ok)
	for i := range o.Dims {
		o.Dims[i].Field = ""
	}
	if k.typed != nil {
		o.Value = &Value{At: h.at.At, Name: k.typed.field.name, Text: k.typed.text, Bad: k.typed.bad}
	}
}

func (h *Hand) showPen(o *Overlay) {
	k := h.pen
	pts := append([]geom.Vec(nil), k.points...)
	for i, q := range k.points {
		o.Handles = append(o.Handles, Handle{Kind: HandleNode, At: q, Stalk: q, Active: i == 0 && h.tool.closes()})
	}
	next, _ := h.penPlace(k.pins)
	shown := k.shown || len(k.pins) > 0 || k.typed != nil
	if shown {
		o.Guides = k.snap.guides
		pts = append(pts, next)
	}
	if h.tool == Through {
		h.showThrough(o, pts)
	} else if len(pts) > 1 {
		o.Ghost = append(o.Ghost, Line{Points: pts})
	}
	if !shown {
		return
	}
	fs := h.penFields()
	active, ok := activeOf(fs, k.field)
	o.Dims = h.dims(fs, active.id(), ok)
	for i := range o.Dims {
		o.Dims[i].Field = ""
	}
	if k.typed != nil {
		o.Value = &Value{At: next, Name: k.typed.field.name, Text: k.typed.text, Bad: k.typed.bad}
	}
}

// linesOf are the lines that show what a grip speaks of.
func linesOf(d design.Design, s slab.Solid, g grip) []Line {
	var out []Line
	switch g.kind {
	case gripTop:
		return []Line{{Points: s.Outline, Closed: true}}
	case gripCorner:
		for _, side := range s.Sides {
			if side.Corner == g.node {
				out = append(out, Line{Points: side.Points})
			}
		}
	case gripEdge:
		for _, side := range s.Sides {
			if side.Corner < 0 && side.Node == g.node {
				out = append(out, Line{Points: side.Points})
			}
		}
	case gripPart:
		for _, l := range loopsOf(s, g.part) {
			out = append(out, Line{Points: l, Closed: true})
		}
	}
	return out
}

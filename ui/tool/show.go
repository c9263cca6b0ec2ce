package tool

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// maxDims bounds the dimensions shown at once.
const maxDims = 6

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
	}
	h.showSelection(&o, d, s)
	switch {
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
	o.Dims = h.dims(fs, active.name, ok)
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
	o.Dims = h.dims(fs, "", false)
}

func (h *Hand) dims(fs []field, active string, ok bool) []Dim {
	var out []Dim
	for _, f := range fs {
		if len(out) == maxDims {
			break
		}
		d := Dim{From: f.from, To: f.to, Beside: f.beside, Text: h.length(f.value),
			Active: ok && f.name == active, Field: f.name, Bare: f.bare, Tag: f.tag}
		if f.own || f.from == f.to || f.name == "Radius" || f.name == "Rise" {
			d.Text = measureWord(f.name) + d.Text
		}
		if f.read {
			d.Field = ""
		}
		out = append(out, d)
	}
	return out
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
	}
	return ""
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
	if k.put.Sink != nil || k.put.Hole != nil || k.put.Taps != nil {
		o.Dims = h.dims(gaps(h.s.Report().Solid, putID, farthestOf(k.ghost)), "", false)
		for i := range o.Dims {
			o.Dims[i].Field = ""
		}
	}
}

func (h *Hand) showPen(o *Overlay) {
	k := h.pen
	pts := append([]geom.Vec(nil), k.points...)
	for i, q := range k.points {
		o.Handles = append(o.Handles, Handle{Kind: HandleNode, At: q, Stalk: q, Active: i == 0 && h.tool.closes()})
	}
	next := k.at
	if k.text != "" {
		if at, err := h.typedPoint(); err == nil {
			next = at
		}
	}
	if k.shown {
		o.Guides = k.snap.guides
		pts = append(pts, next)
	}
	if len(pts) > 1 {
		o.Ghost = append(o.Ghost, Line{Points: pts})
	}
	n := len(k.points)
	if n == 0 || !k.shown {
		return
	}
	last := k.points[n-1]
	along := next.Sub(last)
	if along.Norm() > 0 {
		o.Dims = append(o.Dims, Dim{From: last, To: next, Text: h.length(along.Norm()), Active: true,
			Beside: along.Unit().Left(), Bare: true})
	}
	if k.text != "" {
		o.Value = &Value{At: next, Name: "Length", Text: k.text, Bad: k.bad}
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

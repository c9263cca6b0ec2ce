package tool

import (
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
)

// selectedEdge is the edge of the outline that is selected alone, -1 for none.
func (h *Hand) selectedEdge() int {
	if sel := h.s.Selection(); len(sel) == 1 && sel[0].Part == "" && sel[0].Edge &&
		sel[0].Node >= 0 && sel[0].Node < len(h.s.Design().Outline.Nodes) {
		return sel[0].Node
	}
	return -1
}

// throughEdge is the edge that is drawn through points: the one that was selected,
// else the one nearest to the first point.
func (h *Hand) throughEdge(points []geom.Vec) (int, bool) {
	d := h.s.Design()
	if e := h.pen.edge; e >= 0 && e < len(d.Outline.Nodes) {
		return e, true
	}
	if len(points) == 0 {
		return -1, false
	}
	e, _, _, ok := edit.NearestEdge(d, point(points[0]))
	return e, ok
}

// throughEdit draws the edge through points: through one as an arc, through more as
// a smooth curve. They may be set from either end of the edge. Edge is the first
// edge of what it makes.
func (h *Hand) throughEdit(points []geom.Vec) (e edit.Edit, edge int, ok bool) {
	edge, ok = h.throughEdge(points)
	if !ok || len(points) == 0 {
		return e, edge, false
	}
	if len(points) == 1 {
		return edit.PullEdgeThrough(edge, point(points[0])), edge, true
	}
	nodes := h.s.Design().Outline.Nodes
	a, b := vec(nodes[edge].At), vec(nodes[(edge+1)%len(nodes)].At)
	first, last := points[0], points[len(points)-1]
	way := slices.Clone(points)
	if a.Dist(last)+b.Dist(first) < a.Dist(first)+b.Dist(last) {
		slices.Reverse(way)
	}
	through := make([]design.Point, len(way))
	for i, p := range way {
		through[i] = point(p)
	}
	return edit.SplineThrough(edge, through), edge, true
}

// showThrough shows the edge as it is, and as it would be through points.
func (h *Hand) showThrough(o *Overlay, points []geom.Vec) {
	edge, ok := h.throughEdge(points)
	if !ok {
		return
	}
	d, s := h.s.Design(), h.s.Report().Solid
	o.Selected = append(o.Selected, linesOf(d, s, grip{kind: gripEdge, node: edge})...)
	// A mouse that rests where it set a point adds none.
	points = slices.CompactFunc(slices.Clone(points), func(p, q geom.Vec) bool { return p.Dist(q) < 1e-6 })
	e, _, ok := h.throughEdit(points)
	if !ok {
		return
	}
	out, err := e.Apply(d)
	if err != nil {
		return
	}
	made := len(out.Outline.Nodes) - len(d.Outline.Nodes)
	var line []geom.Vec
	for i := range made + 1 {
		const steps = 24
		for k := range steps {
			if p, ok := edit.OnEdge(out, edge+i, float64(k)/steps); ok {
				line = append(line, vec(p))
			}
		}
	}
	if p, ok := edit.OnEdge(out, edge+made, 1); ok {
		line = append(line, vec(p))
	}
	o.Ghost = append(o.Ghost, Line{Points: line})
}

// throughHint says what the next click does.
func (h *Hand) throughHint() string {
	k := h.pen
	d := h.s.Design()
	if len(d.Outline.Nodes) == 0 {
		return "There is no edge yet: pick a shape in the parts row first. Esc goes back to selecting."
	}
	points := k.points
	if len(points) == 0 && k.shown {
		points = []geom.Vec{k.at}
	}
	name := "edge"
	if e, ok := h.throughEdge(points); ok {
		name = edgeName(d.Outline.Nodes, e)
	}
	held := ""
	if k.snap.words != "" {
		held = k.snap.words + ". "
	}
	switch len(k.points) {
	case 0:
		return held + "Click a point that the " + name + " is to go through, or type how far from the left, Tab, from the front; " +
			freeWords + "; Esc ends."
	case 1:
		return held + "Enter or a double click bends the " + name + " through this point as an arc; more clicks make a smooth curve " +
			"through them; Backspace takes the point back; " + freeWords + "."
	}
	return held + "Click sets the next point of the " + name + "; Enter or a double click ends the curve; a number sets how far " +
		"from the left, Tab from the front; Backspace takes the last point back; " + freeWords + "."
}

// keepsEdge forgets the edge in hand when the outline has lost it.
func (h *Hand) keepsEdge() {
	if h.pen != nil && h.tool == Through && h.pen.edge >= len(h.s.Design().Outline.Nodes) {
		h.pen.edge = -1
	}
}

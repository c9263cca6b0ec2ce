package draw

import (
	"fmt"
	"math"
	"slices"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// maxStations bounds the stations of one chain; a top with more is measured by
// its overall size alone.
const maxStations = 7

// Dimensions is the dimension lines alone, on a ground that is not painted, to
// be drawn over a base. Below the top stand its width and that of its legs, to
// the left its depth, behind it the places of sinks from side to side, to the
// right those of sinks and taps from the back edge.
func Dimensions(d design.Design, r report.Report, v View) scene.Page {
	p := v.page(scene.Colour{})
	m, ok := measured(d, r.Solid, v)
	if !ok {
		return p
	}
	for e := range m.rows {
		m.sketch.rows(edge(e), m.rows[e], m.extra[e])
	}
	m.sketch.sinkSizes(d, r.Solid)
	m.sketch.corners(r.Solid, d)
	p.Items = m.sketch.finished()
	return p
}

// measures is the rows of dimensions beside each edge of a top.
type measures struct {
	sketch *sketch
	rows   [4][]row
	extra  [4]float64 // points that the rows keep clear of the top
}

// measured works out which dimensions a plan needs; ok is false when there is
// nothing to measure.
func measured(d design.Design, s slab.Solid, v View) (m measures, ok bool) {
	if !v.usable() || len(s.Outline) < 3 {
		return m, false
	}
	b := s.Outline.Bounds()
	if b.Empty() || !b.Min.Finite() || !b.Max.Finite() {
		return m, false
	}
	k := &sketch{View: v, bounds: b}
	m.sketch = k
	for e, wall := range wallEdges(s, b) {
		if wall && v.Show.Walls {
			m.extra[e] = wallWidth - 4
		}
	}
	m.rows[front] = []row{k.outlineRow(d, s, front), k.overall(s.Outline, front)}
	m.rows[left] = []row{k.overhang(s), k.outlineRow(d, s, left), k.overall(s.Outline, left)}
	m.rows[back] = []row{k.spreads(d, s), k.across(d, s)}
	m.rows[right] = []row{k.fromBack(d, s)}
	return m, true
}

// room is how far the dimensions reach out from the top, in points.
func room(d design.Design, s slab.Solid, v View) (out [4]float64) {
	if m, ok := measured(d, s, v); ok {
		for e := range out {
			out[e] = m.sketch.room(m.rows[e], m.extra[e])
		}
	}
	return out
}

// wallEdges tells along which sides of the bounds a wall lies.
func wallEdges(s slab.Solid, b geom.Box) (out [4]bool) {
	for _, side := range s.Sides {
		if !side.Wall {
			continue
		}
		for _, p := range side.Points {
			out[front] = out[front] || p.Y < b.Min.Y+1
			out[back] = out[back] || p.Y > b.Max.Y-1
			out[left] = out[left] || p.X < b.Min.X+1
			out[right] = out[right] || p.X > b.Max.X-1
		}
	}
	// A wall that only touches a side with its end does not lie along it.
	along := func(e edge) bool {
		for _, side := range s.Sides {
			if !side.Wall || len(side.Points) < 2 {
				continue
			}
			u := side.Points[len(side.Points)-1].Sub(side.Points[0])
			if flat := math.Abs(u.X) > math.Abs(u.Y); flat == (e == front || e == back) {
				return true
			}
		}
		return false
	}
	for e := range out {
		out[e] = out[e] && along(edge(e))
	}
	return out
}

// overall is the whole width or depth, from the points that reach furthest.
func (k *sketch) overall(l geom.Loop, e edge) row {
	b := k.bounds
	// The extreme points nearest to the edge's side.
	var lo, hi geom.Vec
	first := true
	for _, p := range l {
		if e == left || e == right {
			p.X, p.Y = p.Y, p.X
		}
		if first || p.X < lo.X-1e-6 || p.X < lo.X+1e-6 && p.Y < lo.Y {
			lo = p
		}
		if first || p.X > hi.X+1e-6 || p.X > hi.X-1e-6 && p.Y < hi.Y {
			hi = p
		}
		first = false
	}
	length := b.W()
	if e == left || e == right {
		length = b.H()
	}
	return row{{lo.X, hi.X, lo.Y, hi.Y, k.length(length)}}
}

// outlineRow is the chain of the outline's corners, if there are any between
// those of its bounds.
func (k *sketch) outlineRow(d design.Design, s slab.Solid, e edge) row {
	b := k.bounds
	lo, hi := b.Min.X, b.Max.X
	if e == left || e == right {
		lo, hi = b.Min.Y, b.Max.Y
	}
	at := []float64{lo, hi}
	foot := map[float64]float64{}
	// First the corners that end a straight side square to the line, then
	// others with room for a text. Where two curves meet smoothly is no place
	// to measure from.
	smooth := smoothNodes(s)
	for _, straight := range [...]bool{true, false} {
		for i, n := range d.Outline.Nodes {
			p := geom.Vec{X: n.At.X.MM(), Y: n.At.Y.MM()}
			x, across := p.X, p.Y
			if e == left || e == right {
				x, across = p.Y, p.X
			}
			apart := k.pt(40) / k.Scale
			if straight {
				apart = 0.5
			}
			if smooth[i] || endsStraight(d.Outline.Nodes, i, e) != straight || !farFrom(at, x, apart) {
				if f, ok := foot[x]; ok && across < f {
					foot[x] = across
				}
				continue
			}
			at = append(at, x)
			foot[x] = across
		}
	}
	slices.Sort(at)
	if len(at) < 3 || len(at) > maxStations || at[0] < lo || at[len(at)-1] > hi {
		return nil
	}
	edgeFoot := b.Min.Y
	if e == left {
		edgeFoot = b.Min.X
	}
	return k.chain(at, func(x float64) float64 {
		f, ok := foot[x]
		between := geom.Vec{X: x, Y: (f + edgeFoot) / 2}
		if e == left {
			between = geom.Vec{X: between.Y, Y: x}
		}
		if !ok || s.Outline.Contains(between) { // no line across the concrete
			return edgeFoot
		}
		return f
	})
}

// smoothNodes is the nodes at which the outline hardly turns.
func smoothNodes(s slab.Solid) map[int]bool {
	out := map[int]bool{}
	n := len(s.Sides)
	for i, next := range s.Sides {
		prev := s.Sides[(i+n-1)%n]
		if prev.Corner >= 0 || next.Corner >= 0 || len(prev.Points) < 2 || len(next.Points) < 2 {
			continue
		}
		u := prev.Points[len(prev.Points)-1].Sub(prev.Points[len(prev.Points)-2])
		w := next.Points[1].Sub(next.Points[0])
		if math.Abs(math.Atan2(u.Cross(w), u.Dot(w))) < 0.15 {
			out[next.Node] = true
		}
	}
	return out
}

// endsStraight reports whether one of the edges that meet at a corner is straight
// and square to dimension lines along e.
func endsStraight(nodes []design.Node, i int, e edge) bool {
	n := len(nodes)
	for _, j := range [...]int{(i + n - 1) % n, i} {
		p, q := nodes[j].At, nodes[(j+1)%n].At
		d := p.X - q.X
		if e == left || e == right {
			d = p.Y - q.Y
		}
		if nodes[j].Edge.Curve == design.CurveStraight && d == 0 {
			return true
		}
	}
	return false
}

// farFrom reports whether x is more than apart from all values.
func farFrom(values []float64, x, apart float64) bool {
	for _, v := range values {
		if math.Abs(v-x) <= apart {
			return false
		}
	}
	return true
}

// overhang is how far the front stands out beyond the cabinet.
func (k *sketch) overhang(s slab.Solid) row {
	if !k.Show.Supports {
		return nil
	}
	cabinet := geom.EmptyBox()
	for _, b := range s.Bearings {
		if b.Kind == design.SupportGable || b.Kind == design.SupportRail {
			for _, l := range b.Loops {
				cabinet = cabinet.Union(l.Bounds())
			}
		}
	}
	if over := cabinet.Min.Y - k.bounds.Min.Y; cabinet.Empty() || !(over > 1 && over < 0.5*k.bounds.H()) {
		return nil
	}
	x := k.bounds.Min.X
	return row{{k.bounds.Min.Y, cabinet.Min.Y, x, math.Max(x, cabinet.Min.X), k.length(cabinet.Min.Y - k.bounds.Min.Y)}}
}

// spreads is the distances of the outer holes of tap sets that lie level.
func (k *sketch) spreads(d design.Design, s slab.Solid) row {
	var r row
	for _, t := range d.Taps {
		box := geom.EmptyBox()
		count := 0
		for _, o := range s.Openings {
			if o.Kind == slab.OpeningTap && o.Part == t.ID {
				box = box.Include(o.Centre)
				count++
			}
		}
		if count > 1 && box.H() < 0.5 && box.W() > 1 {
			r = append(r, span{box.Min.X, box.Max.X, box.Max.Y, box.Max.Y, k.length(box.W())})
		}
	}
	slices.SortFunc(r, func(a, b span) int {
		switch {
		case a.from < b.from:
			return -1
		case a.from > b.from:
			return 1
		}
		return 0
	})
	for i := 1; i < len(r); i++ { // those that overlap can't share a line
		if r[i].from < r[i-1].to {
			r = slices.Delete(r, i, i+1)
			i--
		}
	}
	return r
}

// across is the chain of sink centres from side to side.
func (k *sketch) across(d design.Design, s slab.Solid) row {
	b := k.bounds
	at := []float64{b.Min.X, b.Max.X}
	foot := map[float64]float64{}
	mark := func(p geom.Vec) {
		if p.X > b.Min.X+0.5 && p.X < b.Max.X-0.5 {
			at = append(at, p.X)
			foot[p.X] = math.Max(p.Y, foot[p.X])
		}
	}
	for _, n := range d.Sinks {
		mark(geom.Vec{X: n.At.X.MM(), Y: n.At.Y.MM()})
	}
	for _, o := range s.Openings {
		if o.Kind == slab.OpeningHole {
			mark(o.Centre)
		}
	}
	at = stations(at)
	if len(at) < 3 || len(at) > maxStations {
		return nil
	}
	return k.chain(at, func(x float64) float64 {
		if f, ok := foot[x]; ok {
			return f
		}
		return b.Max.Y
	})
}

// fromBack is the chain of tap lines and sink centres from the back edge to the
// front edge, as they lie behind and before the last sink to the right.
func (k *sketch) fromBack(d design.Design, s slab.Solid) row {
	b := k.bounds
	ends := [2]geom.Vec{{X: b.Max.X, Y: b.Min.Y}, {X: b.Max.X, Y: b.Max.Y}}
	var at []float64
	foot := map[float64]float64{}
	mark := func(p geom.Vec) {
		for _, y := range at {
			if math.Abs(y-p.Y) <= 0.5 {
				foot[y] = math.Max(foot[y], p.X)
				return
			}
		}
		at = append(at, p.Y)
		foot[p.Y] = p.X
	}
	last := math.Inf(-1)
	for _, n := range d.Sinks {
		c := geom.Vec{X: n.At.X.MM(), Y: n.At.Y.MM()}
		if !b.Contains(c) {
			continue
		}
		mark(c)
		if c.X > last {
			last = c.X
			ends = [2]geom.Vec{{X: c.X, Y: crossingBelow(s.Outline, c, b.Min.Y)}, {X: b.Max.X, Y: b.Max.Y}}
		}
	}
	for _, t := range d.Taps {
		c, count := geom.Vec{X: math.Inf(-1)}, 0
		for _, o := range s.Openings {
			if o.Kind == slab.OpeningTap && o.Part == t.ID {
				c = geom.Vec{X: math.Max(c.X, o.Centre.X), Y: c.Y + o.Centre.Y}
				count++
			}
		}
		if c.Y /= float64(max(1, count)); count > 0 && b.Contains(c) {
			mark(c)
		}
	}
	if len(at) == 0 {
		return nil
	}
	mark(ends[0])
	mark(ends[1])
	at = stations(at)
	if len(at) < 3 || len(at) > maxStations {
		return nil
	}
	return k.chain(at, func(y float64) float64 { return foot[y] })
}

// crossingBelow is the y of the nearest crossing of the loop before p, or y0.
func crossingBelow(l geom.Loop, p geom.Vec, y0 float64) float64 {
	best := math.Inf(-1)
	for i, a := range l {
		c := l[(i+1)%len(l)]
		if (a.X <= p.X) == (c.X <= p.X) {
			continue
		}
		if y := a.Y + (c.Y-a.Y)*(p.X-a.X)/(c.X-a.X); y < p.Y {
			best = math.Max(best, y)
		}
	}
	if math.IsInf(best, 0) {
		return y0
	}
	return best
}

// sinkSizes writes each basin's size into it.
func (k *sketch) sinkSizes(d design.Design, s slab.Solid) {
	for _, n := range d.Sinks {
		bowl, ok := bowlOf(s, n.ID)
		if !ok || len(bowl.Loop) < 3 {
			continue
		}
		w, h := n.Shape.Width.MM(), n.Shape.Depth.MM()
		text := k.length(w) + " × " + k.length(h)
		switch n.Shape.Kind {
		case design.ShapeCircle:
			text = "Ø " + k.length(w)
		case design.ShapePath:
			box := bowl.Loop.Bounds()
			text = k.length(box.W()) + " × " + k.length(box.H())
		}
		box := bowl.Loop.Bounds()
		at := geom.Vec{X: box.Centre().X, Y: box.Min.Y + 0.24*box.H()}
		t := scene.Text{At: k.ToPage(at), Size: k.pt(smallSize), Text: text, Colour: scene.Colour{R: 0x2a, G: 0x2d, B: 0x30, A: 0xff}}
		if t.Width() > 0.78*box.W()*k.Scale || box.H()*k.Scale < k.pt(56) {
			continue
		}
		k.plate(t, scene.Colour{R: 0xf4, G: 0xf3, B: 0xf0, A: 0xb0})
	}
}

// corners names the sizes of the outline's rounded and cut corners, one label
// for each size.
func (k *sketch) corners(s slab.Solid, d design.Design) {
	type treatment struct {
		kind design.CornerKind
		size units.Length
	}
	count := map[treatment]int{}
	first := map[treatment]int{}
	var order []treatment
	drawn := map[int]bool{}
	for _, side := range s.Sides {
		if side.Corner >= 0 && side.Corner < len(d.Outline.Nodes) && !drawn[side.Corner] {
			drawn[side.Corner] = true
			c := d.Outline.Nodes[side.Corner].Corner
			t := treatment{c.Kind, c.Size}
			if count[t]++; count[t] == 1 {
				first[t] = side.Corner
				order = append(order, t)
			}
		}
	}
	if len(order) > maxStations {
		return
	}
	for _, t := range order {
		at, in, ok := cornerPlace(s, first[t])
		if !ok {
			continue
		}
		text := "R " + units.Format(t.size, k.Units)
		if t.kind == design.CornerChamfered {
			text = units.Format(t.size, k.Units) + " cut"
		}
		if count[t] > 1 {
			text = fmt.Sprintf("%d × %s", count[t], text)
		}
		// Within the concrete, or in the free space before an inside corner; on
		// the other side where a part would be covered.
		if insideCorner(d, first[t]) {
			in = in.Mul(-1)
		}
		for _, dir := range [...]geom.Vec{in, in.Mul(-1)} {
			label, line := k.cornerLabel(at, dir, text)
			if k.covers(s, label) {
				continue
			}
			k.items = append(k.items, line)
			ground := k.Theme.Halo
			ground.A = 0xc8
			k.plate(label, ground)
			break
		}
	}
}

// cornerLabel is a text that stands off from a corner toward dir, and the line
// that leads to it.
func (k *sketch) cornerLabel(at, dir geom.Vec, text string) (scene.Text, scene.Stroke) {
	page := k.ToPage(at)
	dir.Y = -dir.Y
	end := page.Add(dir.Mul(k.pt(15)))
	label := scene.Text{Size: k.pt(smallSize), Text: text, Colour: k.Theme.Ink}
	label.At = end.Add(geom.Vec{X: math.Copysign(label.Width()/2+k.pt(4), dir.X), Y: dir.Y * k.pt(3)})
	return label, scene.Stroke{Lines: [][]geom.Vec{{page, end}}, Width: k.pt(0.8), Colour: k.Theme.Ink}
}

// covers reports whether a text would cover part of a basin, opening, channel or
// of another text.
func (k *sketch) covers(s slab.Solid, t scene.Text) bool {
	for _, other := range k.texts {
		if meets(k.extent(t), k.extent(other)) {
			return true
		}
	}
	half := geom.Vec{X: t.Width()/2 + k.pt(4), Y: 0.7 * t.Size}
	box := geom.EmptyBox().Include(k.ToDesign(t.At.Sub(half))).Include(k.ToDesign(t.At.Add(half)))
	for _, b := range s.Bowls {
		if c := b.Loop.Bounds(); !c.Empty() && meets(box, c) {
			return true
		}
	}
	for _, o := range s.Openings {
		if c := o.Loop.Bounds(); !c.Empty() && meets(box, c) {
			return true
		}
	}
	for _, r := range s.Recesses {
		for _, l := range r.Loops {
			for _, p := range l {
				if box.Contains(p) {
					return true
				}
			}
		}
	}
	return false
}

// meets reports whether two boxes overlap.
func meets(a, b geom.Box) bool {
	return a.Min.X < b.Max.X && a.Max.X > b.Min.X && a.Min.Y < b.Max.Y && a.Max.Y > b.Min.Y
}

// insideCorner reports whether the outline turns to the right at a corner.
func insideCorner(d design.Design, i int) bool {
	nodes := d.Outline.Nodes
	n := len(nodes)
	at := func(i int) geom.Vec { p := nodes[(i+n)%n].At; return geom.Vec{X: p.X.MM(), Y: p.Y.MM()} }
	return at(i).Sub(at(i-1)).Cross(at(i+1).Sub(at(i))) < 0
}

// cornerPlace is the middle of a corner's cut and the unit vector from it into
// the concrete.
func cornerPlace(s slab.Solid, corner int) (at, in geom.Vec, ok bool) {
	var pts []geom.Vec
	n := len(s.Sides)
	for i, side := range s.Sides {
		// The half that arrives comes before the half that leaves, round the
		// end of the list too.
		if side.Corner == corner && s.Sides[(i+n-1)%n].Corner != corner {
			pts = append(pts, side.Points...)
			if next := s.Sides[(i+1)%n]; n > 1 && next.Corner == corner {
				pts = append(pts, next.Points...)
				at = side.Points[len(side.Points)-1]
			} else {
				at = side.Points[len(side.Points)/2]
			}
		}
	}
	if len(pts) < 2 {
		return at, in, false
	}
	in = pts[len(pts)-1].Sub(pts[0]).Unit().Left()
	return at, in, in != geom.Vec{}
}

package draw

import (
	"maps"
	"math"
	"slices"
	"strconv"

	"example.org/castwright/model/change"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edging"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/slab"
)

const (
	// maxChanges is the most changes that are listed: options that have little in
	// common are told apart by their numbers.
	maxChanges = 12
	// maxMarks is the most that are numbered on the drawings too.
	maxMarks = 9
	// badgeSize is the radius of a number's disc on a drawing, mm.
	badgeSize = 2.1
)

// marks is how the changes are numbered where they lie on a drawing, off its texts.
func (l *layout) marks(v View) Marks {
	return Marks{Place: v.ToPage, Unit: l.unit, Theme: l.theme, Marked: func(i int) bool { return i < maxMarks }, Picked: -1,
		clear: func(at geom.Vec) bool { return l.clear(at, badgeSize*l.unit) }}
}

// Marks says how changes are marked on a drawing or a picture.
type Marks struct {
	Place func(geom.Vec) geom.Vec // where a place of the design, mm, lies on the page
	Unit  float64                 // page units in a millimetre of paper, or as large as that seems
	Theme Theme
	// Marked says whether the change number i is marked; nil for all. What is of the top
	// itself is marked when it is picked.
	Marked func(i int) bool
	// Picked is the change that stands out, -1 for none.
	Picked int
	// clear reports whether a number has room at a place of the page; nil for all.
	clear func(geom.Vec) bool
}

// Items are the marks on a side, which shows what was or, after, what is: a dashed
// line round what is small, along what is large, and a disc with the number of the
// change in its list, from 1.
func (m Marks) Items(s Side, list []change.Change, after bool) []scene.Item {
	return append(m.lines(s, list, after), m.numbers(s, list, after)...)
}

// lines are the dashed lines of the marks, numbers their discs, which lie above.
func (m Marks) lines(s Side, list []change.Change, after bool) []scene.Item {
	lines, _ := m.items(s, list, after)
	return lines
}

func (m Marks) numbers(s Side, list []change.Change, after bool) []scene.Item {
	_, numbers := m.items(s, list, after)
	return numbers
}

func (m Marks) items(s Side, list []change.Change, after bool) (lines, numbers []scene.Item) {
	var taken []geom.Vec
	l := &layout{unit: m.Unit, theme: m.Theme}
	badges := &layout{unit: m.Unit, theme: m.Theme}
	top := s.Report.Solid.Outline.Bounds()
	for i, c := range list {
		box, edges := c.Was, c.EdgesWas
		if after {
			box, edges = c.Is, c.EdgesIs
		}
		whole := c.Part == "" && edges == nil // of the top itself
		if m.Marked != nil && !m.Marked(i) || whole && i != m.Picked || box.Empty() {
			continue
		}
		around := geom.EmptyBox()
		for _, p := range [...]geom.Vec{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}} {
			around = around.Include(m.Place(p))
		}
		around = around.Grow(1.4 * l.unit)
		rings := [][]geom.Vec{rounded(around, 1.4*l.unit)}
		spots := []geom.Vec{{X: around.Min.X, Y: around.Min.Y}, {X: around.Max.X, Y: around.Min.Y},
			{X: around.Max.X, Y: around.Max.Y}, {X: around.Min.X, Y: around.Max.Y}}
		loops := partLoops(s, c.Part)
		if whole {
			loops = []geom.Loop{s.Report.Solid.Outline}
		}
		if len(loops) > 0 && box.W()*box.H() > 0.1*top.W()*top.H() {
			rings, spots = nil, nil
			for _, loop := range loops {
				ring := make([]geom.Vec, len(loop))
				for k, at := range loop {
					ring[k] = m.Place(at)
				}
				rings = append(rings, ring)
				for k := 0; k < len(ring); k += max(1, len(ring)/12) {
					spots = append(spots, ring[k])
				}
			}
		}
		if edges != nil {
			rings, spots = l.runs(m, s, edges)
		}
		wide := 1.0
		if i == m.Picked {
			wide = 2
		}
		for _, pen := range [...]struct {
			width float64
			c     scene.Colour
		}{{0.55 + 0.35*wide, l.theme.Halo}, {0.35 * wide, l.theme.Ink}} {
			l.items = append(l.items, scene.Stroke{Lines: rings, Closed: edges == nil, Width: pen.width * l.unit,
				Dash: []float64{1.6 * l.unit, 1.2 * l.unit}, Colour: pen.c})
		}
		if m.clear != nil {
			if free := slices.DeleteFunc(slices.Clone(spots), func(at geom.Vec) bool { return !m.clear(at) }); len(free) > 0 {
				spots = free
			}
		}
		at := clearest(spots, taken)
		taken = append(taken, at)
		badges.badge(at, badgeSize*(0.75+0.25*wide), i+1)
	}
	return l.items, badges.items
}

// runs is some edges of a side, by their nodes, as lines on the page, and places for a
// number on them.
func (l *layout) runs(m Marks, s Side, nodes []int) (lines [][]geom.Vec, spots []geom.Vec) {
	for _, e := range edging.Edges(s.Report.Solid.Sides) {
		if !slices.Contains(nodes, e.Node) {
			continue
		}
		line := make([]geom.Vec, len(e.Points))
		for i, p := range e.Points {
			line[i] = m.Place(p)
		}
		lines = append(lines, line)
		for _, share := range [...]float64{0.5, 0.3, 0.7, 0.15, 0.85} {
			at, _ := along(e.Points, share)
			spots = append(spots, m.Place(at))
		}
	}
	return lines, spots
}

// clearest is the first of some places that is well away from those taken, or the
// farthest from them.
func clearest(spots, taken []geom.Vec) geom.Vec {
	best, far := geom.Vec{}, -1.0
	for _, s := range spots {
		near := math.Inf(1)
		for _, t := range taken {
			near = min(near, s.Sub(t).Norm())
		}
		if math.IsInf(near, 1) {
			return s
		}
		if near > far {
			best, far = s, near
		}
	}
	return best
}

// partLoops is the outlines of a part in plan.
func partLoops(s Side, part design.ID) []geom.Loop {
	var out []geom.Loop
	for _, b := range s.Report.Solid.Bowls {
		if b.Part == part {
			out = append(out, b.Loop)
		}
	}
	for _, r := range s.Report.Solid.Recesses {
		if r.Part == part {
			out = append(out, r.Loops...)
		}
	}
	for _, b := range s.Report.Solid.Beds {
		if b.Part == part {
			out = append(out, b.Loops...)
		}
	}
	for _, b := range s.Report.Solid.Bearings {
		if b.Part == part {
			out = append(out, b.Loops...)
		}
	}
	return out
}

// numberEdges puts the numbers of the edges, by their nodes, on a drawing, each within the top along
// its edge, where no words are.
func (l *layout) numberEdges(v View, s slab.Solid, numbered map[int]int) {
	const inside, radius = 4.2, 1.9 // mm
	numbers := maps.Clone(numbered)
	for _, side := range s.Sides {
		n, ok := numbers[side.Node]
		if !ok || side.Corner >= 0 || len(side.Points) < 2 {
			continue
		}
		delete(numbers, side.Node)
		p := l.freeBeside(v, s, side.Points, inside, radius)
		ring := circle(p, radius*l.unit)
		l.items = append(l.items,
			scene.Fill{Loops: []geom.Loop{ring}, Paint: scene.Paint{Colour: l.theme.Halo}},
			scene.Stroke{Lines: [][]geom.Vec{ring}, Closed: true, Width: 0.25 * l.unit, Colour: l.theme.Ink},
			scene.Text{At: p, Size: 1.2 * radius * l.unit, Bold: true, Colour: l.theme.Ink, Text: strconv.Itoa(n)})
	}
}

// freeBeside is a place for a disc of a radius beside an edge, mm: inside the top at a
// distance from it, or where no place there is free of words and openings, outside or
// farther in.
func (l *layout) freeBeside(v View, s slab.Solid, edge []geom.Vec, inside, radius float64) geom.Vec {
	var first geom.Vec
	for n, far := range [...]float64{inside, -inside, 1.9 * inside} {
		for i, share := range [...]float64{0.5, 0.36, 0.64, 0.22, 0.78} {
			at, in := along(edge, share)
			q := v.ToPage(at).Add(geom.Vec{X: in.X, Y: -in.Y}.Mul(far * l.unit))
			if n == 0 && i == 0 {
				first = q
			}
			if l.clear(q, 1.2*radius*l.unit) && offOpenings(v, s, q, 1.2*radius*l.unit) {
				return q
			}
		}
	}
	return first
}

// offOpenings reports whether a disc of the page lies off the openings of a top and what
// is seen of its bowls.
func offOpenings(v View, s slab.Solid, p geom.Vec, r float64) bool {
	off := func(loop geom.Loop) bool {
		b := loop.Bounds()
		if b.Empty() {
			return true
		}
		box := geom.EmptyBox().Include(v.ToPage(b.Min)).Include(v.ToPage(b.Max)).Grow(r)
		return !box.Contains(p)
	}
	for _, o := range s.Openings {
		if !off(o.Loop) {
			return false
		}
	}
	for _, b := range s.Bowls {
		if !off(b.Loop) {
			return false
		}
	}
	return true
}

// clear reports whether no text of the page comes near to a place.
func (l *layout) clear(p geom.Vec, r float64) bool {
	for _, it := range l.items {
		t, ok := it.(scene.Text)
		if !ok {
			continue
		}
		w, h := t.Width(), t.Size
		mid := t.At
		dir := geom.Vec{X: 1}.Turn(t.Angle)
		switch t.Anchor {
		case scene.AnchorStart:
			mid = mid.Add(dir.Mul(w / 2))
		case scene.AnchorEnd:
			mid = mid.Sub(dir.Mul(w / 2))
		}
		d := p.Sub(mid)
		if math.Abs(d.Dot(dir)) < w/2+r && math.Abs(d.Cross(dir)) < h/2+r {
			return false
		}
	}
	return true
}

// along is the place at a share of a run's length and the unit vector from it to its
// left.
func along(pts []geom.Vec, share float64) (at, left geom.Vec) {
	whole := 0.0
	for i := 1; i < len(pts); i++ {
		whole += pts[i].Dist(pts[i-1])
	}
	to := share * whole
	for i := 1; i < len(pts); i++ {
		d := pts[i].Dist(pts[i-1])
		if d > 0 && (to <= d || i == len(pts)-1) {
			return pts[i-1].Lerp(pts[i], min(1, to/d)), pts[i].Sub(pts[i-1]).Unit().Left()
		}
		to -= d
	}
	return pts[0], geom.Vec{}
}

// circle is a disc's rim.
func circle(at geom.Vec, r float64) geom.Loop {
	out := make(geom.Loop, 32)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(out)))
		out[i] = at.Add(geom.Vec{X: r * cos, Y: r * sin})
	}
	return out
}

// badge is a number in a disc of a radius in mm, at a place of the page.
func (l *layout) badge(at geom.Vec, radius float64, n int) {
	r := radius * l.unit
	disc := circle(at, r)
	l.items = append(l.items,
		scene.Fill{Loops: []geom.Loop{disc}, Paint: scene.Paint{Colour: l.theme.Ink}},
		scene.Text{At: at, Size: 1.24 * r, Bold: true, Colour: l.theme.Halo, Text: strconv.Itoa(n)})
}

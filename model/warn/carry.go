package warn

import (
	"math"
	"slices"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// # How overhang and span are measured
//
// An overhang is measured from the edge of the top to the nearest bearing,
// square to the bearing as a tape would: at a corner that hangs over both ways
// the larger of the two counts, not the diagonal. A straight line of concrete
// between two bearings that are no farther apart than a top may span counts as
// a bearing for this, so that a top on brackets hangs over the line of their
// tips. Only where the top's edge faces away from the bearing is it an
// overhang; an edge that runs on toward another bearing spans.
//
// A spot of the top that does not lie on a bearing spans the shorter of
//
//   - the distance from a bearing to the spot and on to a bearing on the other
//     side, where the two directions make an angle of 165 degrees or more, and
//   - where bearings lie all round the spot, no gap between their directions as
//     wide as 180 degrees, twice the distance to the nearest.
//
// At its largest the first is the clear span between two parallel bearings, the
// second the largest empty circle among several.
//
// Only bearings under the top count, and only those that concrete reaches in a
// straight line: not across a cut-out or a notch. Each spot is carried the
// easier way, the one that uses up less of its limit, and the top is as good as
// its worst spot. (The convex hull of the bearings would be simpler, but the
// hull of an L or a U covers the room in the notch, and an overhang into it
// would pass for a span.) Seen past the ends of the rail that it hangs on, an
// overhang of length c looks like a span of at least 2c / sin 15 degrees =
// 7.7c, well above the limits' ratio of 4, so no overhang passes for a span.

// edge is one straight piece of a bearing's rim under the top.
type edge struct {
	a, b   geom.Vec
	corner [2]geom.Vec // outward normals of the neighbours at a and b
	square [2]bool     // whether the rim turns at a and b by about a right angle
	normal geom.Vec    // outward
}

// hang is how one spot is carried.
type hang struct {
	at       geom.Vec
	reach    float64  // mm to the nearest bearing, square to it
	from     geom.Vec // the bearing's nearest point
	width    float64  // mm of the top in the same direction
	overhang float64  // mm past the bearings or a line between them, 0 for none
	root     geom.Vec // where the overhang starts
	span     float64  // mm, +Inf for none
}

// bearings are the rims of the supports under the top and the places to judge.
type bearings struct {
	top     *check
	edges   []edge
	bridges []edge // lines between bearings
	rims    []*chain
	hull    []geom.Vec // of what carries the top
}

// newBearings cuts the bearings off at the outline and joins what is no farther
// apart than most, mm; nil when none is left.
func newBearings(c *check, most float64) *bearings {
	b := &bearings{top: c}
	for _, s := range c.s.Bearings {
		for _, l := range rims(s) {
			rim := newChain(l)
			if rim == nil {
				continue
			}
			b.rims = append(b.rims, rim)
			for i := range rim.pts {
				b.addEdge(rim, i)
			}
		}
	}
	var carried []geom.Vec
	for _, e := range b.edges {
		carried = append(carried, e.a, e.b)
	}
	for _, p := range c.outline.pts {
		if b.on(p) {
			carried = append(carried, p)
		}
	}
	if len(carried) == 0 {
		return nil
	}
	b.hull = hull(carried)
	b.join(most)
	return b
}

// maxJoined is how many corners of bearings are joined with each other: their
// pairs grow with the square. A cabinet has 10 to 40.
const maxJoined = 100

// join adds the lines over concrete between corners of the bearings.
func (b *bearings) join(most float64) {
	var corners []geom.Vec
	for _, e := range b.edges {
		for _, p := range [...]geom.Vec{e.a, e.b} {
			if !slices.Contains(corners, p) {
				corners = append(corners, p)
			}
		}
		if len(corners) > maxJoined {
			return
		}
	}
	for i, p := range corners {
		for _, q := range corners[:i] {
			d := p.Dist(q)
			if d > most || d <= near || b.on(p.Lerp(q, 0.5)) {
				continue
			}
			// Corners may lie on the outline, from where a line has to start a
			// hair inside.
			in := q.Sub(p).Mul(near / d)
			if b.top.under(p.Lerp(q, 0.5)) && b.top.clear(p.Add(in), q) {
				b.bridges = append(b.bridges, edge{a: p, b: q})
			}
		}
	}
}

// rims gives a bearing's loops, counter-clockwise.
func rims(s slab.Bearing) []geom.Loop {
	loops := slices.Clone(s.Loops)
	for i, l := range loops {
		if l.Area() < 0 {
			loops[i] = l.Reversed()
		}
	}
	return loops
}

// addEdge adds the parts of segment i of a rim that lie under the top.
func (b *bearings) addEdge(rim *chain, i int) {
	n := len(rim.pts)
	p, q := rim.seg(i)
	before, _ := rim.seg((i + n - 1) % n)
	_, after := rim.seg((i + 1) % n)
	out := func(u, v geom.Vec) geom.Vec { return v.Sub(u).Left().Unit().Mul(-1) }
	whole := edge{a: p, b: q, normal: out(p, q)}
	whole.corner = [2]geom.Vec{out(before, p), out(q, after)}
	for k := range 2 {
		// Between 45 and 135 degrees; a pointed or a round rim has no square.
		whole.square[k] = whole.corner[k] != geom.Vec{} &&
			math.Abs(whole.normal.Dot(whole.corner[k])) < math.Sqrt2/2
	}
	if p.Dist(q) == 0 {
		return
	}
	ts := b.top.outline.crossings(p, q, []float64{0, 1})
	slices.Sort(ts)
	for k := 1; k < len(ts); k++ {
		part := whole
		part.a, part.b = p.Lerp(q, ts[k-1]), p.Lerp(q, ts[k])
		part.square[0] = whole.square[0] && ts[k-1] == 0
		part.square[1] = whole.square[1] && ts[k] == 1
		if part.a != part.b && b.top.under(part.a.Lerp(part.b, 0.5)) {
			b.edges = append(b.edges, part)
		}
	}
}

// under reports whether p lies within the outline or on it.
func (c *check) under(p geom.Vec) bool {
	if c.outline.contains(p) {
		return true
	}
	_, near := c.outline.fromSegment(p, p, near)
	return near
}

// on reports whether p lies on a bearing.
func (b *bearings) on(p geom.Vec) bool {
	for _, r := range b.rims {
		if r.contains(p) {
			return true
		}
	}
	return false
}

// reach is the distance from p to a foot on the edge, square to the bearing.
func (e edge) reach(p, foot geom.Vec) float64 {
	d := p.Dist(foot)
	for k, end := range [2]geom.Vec{e.a, e.b} {
		if foot == end && e.square[k] {
			v := p.Sub(end)
			return min(d, max(v.Dot(e.normal), v.Dot(e.corner[k])))
		}
	}
	return d
}

// hangs measures the spots of the top that may be badly carried: those farther
// from a bearing than least, mm.
func (b *bearings) hangs(least float64) []hang {
	var found []hang
	for _, p := range b.top.spots() {
		if h, ok := b.hang(p, least); ok {
			found = append(found, h)
		}
	}
	return found
}

// hang measures how one spot is carried; false if it lies on a bearing or not
// farther from one than least.
func (b *bearings) hang(p place, least float64) (hang, bool) {
	if b.on(p.at) {
		return hang{}, false
	}
	e, f := b.nearest(p)
	h := hang{at: p.at, from: f, reach: e.reach(p.at, f)}
	if !(h.reach > least) {
		return hang{}, false
	}
	h.width = b.top.widthAlong(p.inner, f.Sub(p.at))
	h.span = b.span(p)
	if p.out == [2]geom.Vec{} {
		return h, true
	}
	h.root, h.overhang = f, h.reach
	for _, br := range b.bridges {
		g := foot(p.at, br.a, br.b)
		if d := p.at.Dist(g); d < h.overhang && b.top.clear(p.inner, g) {
			h.root, h.overhang = g, d
		}
	}
	if !p.facing(p.at.Sub(h.root).Unit()) {
		h.overhang = 0
	}
	return h, true
}

// widen climbs from a spot to where the span is largest, to 0.01 mm.
func (b *bearings) widen(h hang) hang {
	bounds := b.top.outline.bounds()
	step := math.Hypot(bounds.x1-bounds.x0, bounds.y1-bounds.y0) / 32
	for step > 0.005 {
		moved := false
		for _, u := range [...]geom.Vec{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}} {
			at := h.at.Add(u.Mul(step))
			if !b.top.concrete(at) {
				continue
			}
			if n, ok := b.hang(place{at: at, inner: at}, 0); ok && !math.IsInf(n.span, 1) && n.span > h.span*(1+1e-9) {
				h, moved = n, true
			}
		}
		if !moved {
			step /= 2
		}
	}
	return h
}

// nearest is the nearest bearing that concrete reaches in a straight line, and
// its point. When there is none, it is the nearest one, whatever lies between:
// the true way round is longer still.
func (b *bearings) nearest(p place) (edge, geom.Vec) {
	best := math.Inf(1)
	var at edge
	var ft geom.Vec
	for _, e := range b.edges {
		f := foot(p.at, e.a, e.b)
		if d := p.at.Dist(f); d < best {
			best, at, ft = d, e, f
		}
	}
	if math.IsInf(best, 1) || b.top.clear(p.inner, ft) {
		return at, ft
	}
	far := math.Inf(1)
	for _, e := range b.edges {
		for _, g := range [...]geom.Vec{foot(p.at, e.a, e.b), e.a, e.b, e.a.Lerp(e.b, 0.5)} {
			if d := p.at.Dist(g); d < far && b.top.clear(p.inner, g) {
				far, at, ft = d, e, g
			}
		}
	}
	return at, ft
}

// widthAlong is how wide the top is through p along v, from edge to edge.
func (c *check) widthAlong(p, v geom.Vec) float64 {
	u := v.Unit()
	if u == (geom.Vec{}) {
		return math.Inf(1)
	}
	b := c.outline.bounds()
	far := u.Mul(math.Hypot(b.x1-b.x0, b.y1-b.y0) + 1)
	length := far.Norm()
	ahead, behind := 1.0, 1.0
	for _, t := range c.outline.crossings(p, p.Add(far), nil) {
		ahead = min(ahead, t)
	}
	for _, t := range c.outline.crossings(p, p.Sub(far), nil) {
		behind = min(behind, t)
	}
	return (ahead + behind) * length
}

// sectors is into how many parts the directions round a spot are divided, so
// that what lies in opposite ones makes an angle of 165 degrees or more.
const sectors = 24

// glance is a spot of a bearing as seen from a place.
type glance struct {
	to     geom.Vec
	d      float64
	sector int
}

var rays = func() (r [sectors]geom.Vec) {
	for k := range r {
		r[k] = geom.Vec{X: 1}.Turn(2 * math.Pi * float64(k) / sectors)
	}
	return r
}()

// span is the length of the span that carries the place, +Inf for none.
func (b *bearings) span(p place) float64 {
	var seen []glance
	for _, e := range b.edges {
		seen = e.glances(p.at, seen)
	}
	slices.SortFunc(seen, func(u, v glance) int {
		switch {
		case u.d < v.d:
			return -1
		case u.d > v.d:
			return 1
		}
		return u.sector - v.sector
	})
	// Walk outward and keep the nearest spot that can be seen in each sector. A
	// spot as far as the best span so far can end no shorter one.
	var nearest [sectors]float64
	for k := range nearest {
		nearest[k] = math.Inf(1)
	}
	best, first := math.Inf(1), 0.0
	for _, g := range seen {
		if g.d >= best {
			break
		}
		if nearest[g.sector] <= g.d || !b.top.clear(p.inner, g.to) {
			continue
		}
		if first == 0 {
			first = g.d
		}
		nearest[g.sector] = g.d
		best = min(best, g.d+nearest[(g.sector+sectors/2)%sectors])
		if surrounded(nearest) {
			return min(best, 2*first)
		}
	}
	return best
}

// surrounded reports whether no gap between the directions in which something
// is seen can be as wide as a half turn. What is seen right on a ray counts in
// both its sectors, so that two empty sectors are kept in hand.
func surrounded(nearest [sectors]float64) bool {
	run := 0
	for k := range sectors + sectors/2 {
		if math.IsInf(nearest[k%sectors], 1) {
			run++
		} else {
			run = 0
		}
		if run >= sectors/2-2 {
			return false
		}
	}
	return true
}

// glances appends, for each sector that the edge passes as seen from p, its
// nearest spot in it: the foot, an end, or where it leaves the sector.
func (e edge) glances(p geom.Vec, seen []glance) []glance {
	add := func(q geom.Vec, sector int) {
		seen = append(seen, glance{q, p.Dist(q), (sector + sectors) % sectors})
	}
	from, to := sectorOf(e.a.Sub(p)), sectorOf(e.b.Sub(p))
	add(e.a, from)
	add(e.b, to)
	if f := foot(p, e.a, e.b); f != e.a && f != e.b {
		add(f, sectorOf(f.Sub(p)))
	}
	v, w := e.b.Sub(e.a), e.a.Sub(p)
	turn := w.Cross(v)
	if turn < 0 { // seen from p it runs clockwise
		from, to = to, from
	}
	for k := from; k != to; k = (k + 1) % sectors {
		if t := turn / rays[(k+1)%sectors].Cross(v); t > 0 && !math.IsInf(t, 1) {
			q := p.Add(rays[(k+1)%sectors].Mul(t))
			add(q, k)
			add(q, k+1)
		}
	}
	return seen
}

// sectorOf gives the sector of a direction: sector k runs from ray k to ray k+1.
func sectorOf(v geom.Vec) int {
	a := math.Atan2(v.Y, v.X)
	if a < 0 {
		a += 2 * math.Pi
	}
	return int(a/(2*math.Pi)*sectors) % sectors
}

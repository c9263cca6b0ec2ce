package geom

import (
	"cmp"
	"math"
	"slices"
)

// MaxLayers is how many layers a [Sweep] can tell apart.
const MaxLayers = 64

// Sweep measures every boolean combination of regions in one pass over the
// plane. Regions are given as closed chains of straight edges on layers; a point
// belongs to a layer where the layer's winding number is not zero. The result is
// the area and the first moments of every set of layers that occurs, and any
// boolean combination is a sum of such [Part]s.
//
// The plane is cut into beams at the ends of the edges and at their crossings,
// so that within a beam no two edges cross. Coincident edges, edges that touch
// and overlapping pieces need no care, because what they could confuse has no
// area. There is no snapping and no topology. The time is bounded by the number of
// edges and crossings times the edges met by one beam; a sweep that would take
// more than about a tenth of a second gives up, see [Sweep.Spent].
//
// The zero value is ready. A Sweep may be used again after [Sweep.Reset]; it
// keeps its memory. It is not safe for concurrent use.
type Sweep struct {
	origin Vec
	swap   bool // sweep along x instead of y
	paths  []sweepPath
	points []Vec
	chains []sweepChain
	active []activeEdge
	order  []int32 // of active, from left to right
	free   []int32
	parts  []Part
	counts [MaxLayers]int32
	trace  *trace // nil unless boundaries are wanted
	tracer *trace // keeps its memory
	visits int    // of active edges; see maxVisits
	watch  bool   // for a crossing, at which the run ends
	met    bool
	metAt  Vec
	odd    bool // a point belongs to a layer where its winding number is odd
}

// Label says how crossing an edge changes the winding numbers: by By on Layer
// and, unless Also is zero, by Also on the layer Second.
type Label struct {
	Layer, Second int8
	By, Also      int8
}

// Part is what one set of layers covers, and no other layer.
type Part struct {
	Layers uint64 // bit k is layer k
	Area   float64
	Moment Vec // integral of the position over the area
}

type sweepPath struct {
	from, to int // points[from:to]
	label    Label
}

// sweepChain is a part of a path that rises all the way.
type sweepChain struct {
	at, end int32 // points[at] is the lowest, points[end] the highest
	step    int32 // from one point to the next, 1 or -1
	y       float64
	label   Label
}

type activeEdge struct {
	// What every beam looks at comes first, in one line of the cache.
	next, x    float64 // at the head and at the foot of the beam
	topX, topY float64 // head of the edge
	fx, fy     float64 // foot of the edge
	slope      float64 // dx/dy

	x0, y0         float64 // start of what is not yet added up
	area, mx, my   float64 // added up since the parts beside it changed
	left, right    int32   // parts beside it, -1 where there is no layer
	at, end, step  int32
	layers, others uint64 // sets of layers beside it, as last seen
	label          Label
	seg            int32 // of the trace, -1 for none
	fresh          bool  // of the trace: a new edge since the beam below
}

// Reset empties the sweep. Coordinates are taken relative to origin, which
// should lie near the regions; results are not.
func (s *Sweep) Reset(origin Vec) {
	s.origin = origin
	s.paths, s.points = s.paths[:0], s.points[:0]
}

// Add adds a closed loop to a layer; a point inside a counter-clockwise loop is
// wound once more.
func (s *Sweep) Add(layer int, l Loop) {
	if len(l) < 3 {
		return
	}
	s.AddChain(Label{Layer: int8(layer), By: 1}, l...)
	s.AddPoint(l[0])
}

// AddChain begins an open chain of edges and adds its first points. On each layer
// all chains together must close.
func (s *Sweep) AddChain(label Label, points ...Vec) {
	s.paths = append(s.paths, sweepPath{len(s.points), len(s.points), label})
	for _, p := range points {
		s.AddPoint(p)
	}
}

// AddPoint carries the last chain on to p. A point that is not finite is left
// out.
func (s *Sweep) AddPoint(p Vec) {
	if !p.Finite() {
		return
	}
	p = p.Sub(s.origin)
	s.points = append(s.points, Vec{onGrid(p.X), onGrid(p.Y)})
	s.paths[len(s.paths)-1].to++
}

// Len is how many points were added, AddAgain adds the point with that number to
// the last chain once more: with Len from before its first point it closes it.
func (s *Sweep) Len() int { return len(s.points) }

// AddAgain adds a point that was added before to the last chain.
func (s *Sweep) AddAgain(n int) {
	if n < len(s.points) {
		s.points = append(s.points, s.points[n])
		s.paths[len(s.paths)-1].to++
	}
}

// onGrid rounds to a grid of 2^-26 mm, a sixty-seventh of a nanometre. Points that
// are level but for rounding are then level, so that an edge either bounds a beam
// or lies between two, and where an edge that is nearly level crosses another can
// be told within micrometres.
func onGrid(x float64) float64 {
	const cells = 1 << 26
	return math.RoundToEven(x*cells) / cells
}

// Parts runs the sweep and gives the parts, in no particular but always the
// same order. It uses up what was added: reset the sweep before the next run.
// The slice is good until then.
func (s *Sweep) Parts() []Part {
	s.prepare()
	s.run()
	for i := range s.parts {
		p := &s.parts[i]
		if s.swap {
			p.Moment.X, p.Moment.Y = p.Moment.Y, p.Moment.X
		}
		p.Moment = p.Moment.Add(s.origin.Mul(p.Area))
	}
	return s.parts
}

// prepare chooses the direction in which a beam meets fewer edges and cuts the
// paths into rising chains.
func (s *Sweep) prepare() {
	s.parts, s.chains = s.parts[:0], s.chains[:0]
	s.active, s.order, s.free = s.active[:0], s.order[:0], s.free[:0]
	box, dx, dy := EmptyBox(), 0.0, 0.0
	for _, p := range s.paths {
		for i := p.from; i < p.to; i++ {
			q := s.points[i]
			if i > p.from {
				d := q.Sub(s.points[i-1])
				dx, dy = dx+math.Abs(d.X), dy+math.Abs(d.Y)
			}
			// Plain comparisons: this is the hot path, and no point is NaN.
			if q.X < box.Min.X {
				box.Min.X = q.X
			}
			if q.X > box.Max.X {
				box.Max.X = q.X
			}
			if q.Y < box.Min.Y {
				box.Min.Y = q.Y
			}
			if q.Y > box.Max.Y {
				box.Max.Y = q.Y
			}
		}
	}
	s.swap = dx*box.H() < dy*box.W()
	if s.swap {
		for i, p := range s.points {
			s.points[i] = Vec{p.Y, p.X}
		}
	}
	for _, p := range s.paths {
		s.cutPath(p)
	}
	slices.SortFunc(s.chains, func(a, b sweepChain) int {
		if c := cmp.Compare(a.y, b.y); c != 0 {
			return c
		}
		return cmp.Compare(a.at, b.at)
	})
}

// cutPath adds the rising chains of a path. Level edges are left out: they bound
// no beam. Crossed from left to right, a falling edge enters what it winds
// about, a rising one leaves it.
func (s *Sweep) cutPath(p sweepPath) {
	down, up := p.label, p.label
	up.By, up.Also = -p.label.By, -p.label.Also
	for i := p.from + 1; i < p.to; {
		dir := rise(s.points[i-1], s.points[i])
		j := i + 1
		for dir != 0 && j < p.to && rise(s.points[j-1], s.points[j]) == dir {
			j++
		}
		switch dir {
		case 1:
			s.chains = append(s.chains, sweepChain{int32(i - 1), int32(j - 1), 1, s.points[i-1].Y, up})
		case -1:
			s.chains = append(s.chains, sweepChain{int32(j - 1), int32(i - 1), -1, s.points[j-1].Y, down})
		}
		i = j
	}
}

// rise is 1 for an edge that rises, -1 for one that falls, 0 for one that is
// level.
func rise(a, b Vec) int { return cmp.Compare(b.Y, a.Y) }

// maxVisits is how many looks at active edges a sweep may take: some 3 ns each.
// Ten thousand vertices take some hundred thousand; only chains that cross
// themselves all over come near.
const maxVisits = 20_000_000

// Spent reports whether the last run gave up, because there were too many
// crossings: what it gave is then of no use.
func (s *Sweep) Spent() bool { return s.visits > maxVisits }

// Visits is how many looks the last run took.
func (s *Sweep) Visits() int { return s.visits }

// run walks the beams from the lowest point to the highest.
func (s *Sweep) run() {
	s.visits = 0
	next := 0
	var y float64
	for (next < len(s.chains) || len(s.order) > 0) && !s.met && !s.Spent() {
		changed := false
		if len(s.order) == 0 {
			y = s.chains[next].y
		}
		for next < len(s.chains) && s.chains[next].y <= y {
			s.enter(s.chains[next])
			next++
			changed = true
		}
		head := math.Inf(1)
		if next < len(s.chains) {
			head = s.chains[next].y
		}
		for _, id := range s.order {
			if t := s.active[id].topY; t < head {
				head = t
			}
		}
		if changed {
			s.rescan(y)
		}
		y = s.climb(y, head)
		if s.trace != nil && len(s.order) == 0 && (next == len(s.chains) || s.chains[next].y > y) {
			s.trace.leave(s, y)
		}
	}
}

// enter puts the first edge of a chain into its place among the active ones.
func (s *Sweep) enter(c sweepChain) {
	var id int32
	if n := len(s.free); n > 0 {
		id, s.free = s.free[n-1], s.free[:n-1]
	} else {
		id = int32(len(s.active))
		s.active = append(s.active, activeEdge{})
	}
	e := &s.active[id]
	*e = activeEdge{left: -1, right: -1, seg: -1, at: c.at, end: c.end, step: c.step, label: c.label}
	s.load(e)
	i := len(s.order)
	s.order = append(s.order, id)
	for ; i > 0; i-- {
		f := &s.active[s.order[i-1]]
		if f.x < e.x || f.x == e.x && f.slope <= e.slope {
			break
		}
		s.order[i] = s.order[i-1]
	}
	s.order[i] = id
}

// load starts the edge that leaves the point at which e stands.
func (s *Sweep) load(e *activeEdge) {
	p, q := s.points[e.at], s.points[e.at+e.step]
	e.x, e.x0, e.y0, e.fx, e.fy = p.X, p.X, p.Y, p.X, p.Y
	e.topX, e.topY = q.X, q.Y
	e.slope = (q.X - p.X) / (q.Y - p.Y)
	e.fresh = true
}

// climb goes from y up to head, or only to the first crossing below it, and
// gives the height that it reached. No chain begins in between.
func (s *Sweep) climb(y, head float64) float64 {
	s.visits += len(s.order) + 1
	sorted := true
	prev := math.Inf(-1)
	for _, id := range s.order {
		e := &s.active[id]
		if e.topY == head {
			e.next = e.topX
		} else {
			e.next = e.fx + (head-e.fy)*e.slope
		}
		sorted = sorted && e.next >= prev
		prev = e.next
	}
	if !sorted {
		if at := s.firstCrossing(y, head); at < head {
			return at
		}
	}
	if s.trace != nil {
		s.trace.leave(s, y)
		s.trace.arrive(s)
	}
	// Step to the head; edges that end there hand on to the next of their chain.
	gone, touched := 0, false
	prev = math.Inf(-1)
	for i, id := range s.order {
		e := &s.active[id]
		e.x = e.next
		if e.topY <= head {
			e.sum(e.topX, e.topY)
			e.at += e.step
			if e.at == e.end {
				s.settle(e)
				s.free = append(s.free, id)
				gone++
				continue
			}
			s.load(e)
			touched = touched || e.x <= prev
			if i+1 < len(s.order) && s.active[s.order[i+1]].next <= e.x {
				touched = true
			}
		}
		prev = e.x
		s.order[i-gone] = id
	}
	s.order = s.order[:len(s.order)-gone]
	if touched {
		s.sort()
	}
	if gone > 0 || touched {
		s.rescan(head)
	}
	return head
}

// firstCrossing puts edges right that change places at the foot of the beam
// already, and gives the height of the first crossing within the beam, at which
// it exchanges the two edges; head when there is none.
func (s *Sweep) firstCrossing(y, head float64) float64 {
	exchanged := false
	for {
		s.visits += 2 * len(s.order)
		if s.Spent() {
			return head
		}
		first, pair := head, -1
		again := false
		for i := 1; i < len(s.order); i++ {
			a, b := &s.active[s.order[i-1]], &s.active[s.order[i]]
			if a.next <= b.next {
				continue
			}
			if s.watch && s.crossesProperly(a, b) {
				return head
			}
			gap := b.x - a.x
			at := y + (head-y)*(gap/(gap+a.next-b.next))
			if gap <= 0 || at <= y {
				s.order[i-1], s.order[i] = s.order[i], s.order[i-1]
				exchanged, again = true, true
			} else if at < first {
				first, pair = at, i
			}
		}
		if again {
			continue
		}
		if exchanged {
			s.rescan(y)
		}
		if pair < 0 {
			return head
		}
		for _, id := range s.order {
			e := &s.active[id]
			e.next = e.fx + (first-e.fy)*e.slope
		}
		a, b := &s.active[s.order[pair-1]], &s.active[s.order[pair]]
		if math.Abs(a.slope) < math.Abs(b.slope) {
			b.next = a.next // the steeper edge knows its place better
		} else {
			a.next = b.next
		}
		if s.trace != nil {
			s.trace.leave(s, y)
			s.trace.arrive(s)
		}
		for _, id := range s.order {
			e := &s.active[id]
			e.x = e.next
		}
		s.order[pair-1], s.order[pair] = s.order[pair], s.order[pair-1]
		s.rescan(first)
		return first
	}
}

// properly is how far, in mm, two edges must reach beyond their crossing on every
// side for it to be one, and no touch or rounding.
const properly = 1e-6

// crossesProperly reports whether two edges do, and notes where.
func (s *Sweep) crossesProperly(a, b *activeEdge) bool {
	p, q := Vec{a.fx, a.fy}, Vec{a.topX, a.topY}
	v, w := Vec{b.fx, b.fy}, Vec{b.topX, b.topY}
	d, e := q.Sub(p), w.Sub(v)
	side := func(d, from, x Vec) float64 { return d.Cross(x.Sub(from)) / d.Norm() }
	v0, w0, p0, q0 := side(d, p, v), side(d, p, w), side(e, v, p), side(e, v, q)
	if math.Min(math.Abs(v0), math.Abs(w0)) < properly || math.Min(math.Abs(p0), math.Abs(q0)) < properly ||
		(v0 > 0) == (w0 > 0) || (p0 > 0) == (q0 > 0) {
		return false
	}
	s.met, s.metAt = true, v.Lerp(w, v0/(v0-w0))
	return true
}

// Crossing gives a place at which the loop crosses itself; false when there is
// none. A loop that only touches itself does not cross. The sweep is used up.
func (s *Sweep) Crossing(l Loop) (at Vec, crosses bool) {
	// Level edges are in no beam; few drawings are level at this angle.
	const angle = 0.7371
	c := l.Bounds().Centre()
	s.Reset(Vec{})
	turned := make(Loop, len(l))
	for i, p := range l {
		turned[i] = p.Sub(c).Turn(angle)
	}
	s.Add(0, turned)
	s.watch, s.met = true, false
	s.prepare()
	s.run()
	at, crosses = s.metAt, s.met
	s.watch, s.met = false, false
	if s.swap {
		at = Vec{at.Y, at.X}
	}
	return at.Turn(-angle).Add(c), crosses
}

// sort puts the active edges in order at the foot of the next beam; they are
// nearly so already.
func (s *Sweep) sort() {
	for i := 1; i < len(s.order); i++ {
		id := s.order[i]
		e := &s.active[id]
		j := i
		for ; j > 0; j-- {
			f := &s.active[s.order[j-1]]
			if f.x < e.x || f.x == e.x && f.slope <= e.slope {
				break
			}
			s.order[j] = s.order[j-1]
		}
		s.order[j] = id
	}
}

// rescan finds the layers on either side of each active edge from y upward.
// Where they have changed, what the edge has bounded so far is put down to the
// parts that it bounded.
func (s *Sweep) rescan(y float64) {
	var layers uint64
	clear(s.counts[:])
	for _, id := range s.order {
		e := &s.active[id]
		before := layers
		layers = s.cross(layers, e.label.Layer, e.label.By)
		if e.label.Also != 0 {
			layers = s.cross(layers, e.label.Second, e.label.Also)
		}
		if before == e.layers && layers == e.others {
			continue
		}
		if y > e.y0 {
			e.sum(e.fx+(y-e.fy)*e.slope, y)
		}
		s.settle(e)
		e.layers, e.others = before, layers
		e.left, e.right = s.part(before), s.part(layers)
	}
}

func (s *Sweep) cross(layers uint64, layer, by int8) uint64 {
	c := &s.counts[layer]
	*c += int32(by)
	if s.odd && *c&1 != 0 || !s.odd && *c != 0 {
		return layers | 1<<layer
	}
	return layers &^ (1 << layer)
}

// part is the index of the part with these layers, -1 for none.
func (s *Sweep) part(layers uint64) int32 {
	if layers == 0 {
		return -1
	}
	for i := range s.parts {
		if s.parts[i].Layers == layers {
			return int32(i)
		}
	}
	s.parts = append(s.parts, Part{Layers: layers})
	return int32(len(s.parts) - 1)
}

// sum adds the edge up to (x, y) to what it has bounded: the integrals of x,
// x²/2 and x y over dy.
func (e *activeEdge) sum(x, y float64) {
	dy := y - e.y0
	e.area += dy * (e.x0 + x) / 2
	e.mx += dy * (e.x0*e.x0 + e.x0*x + x*x) / 6
	e.my += dy * (e.x0*(2*e.y0+y) + x*(e.y0+2*y)) / 6
	e.x0, e.y0 = x, y
}

// settle puts what the edge has bounded down to the parts beside it.
func (s *Sweep) settle(e *activeEdge) {
	if e.left >= 0 {
		p := &s.parts[e.left]
		p.Area += e.area
		p.Moment.X += e.mx
		p.Moment.Y += e.my
	}
	if e.right >= 0 {
		p := &s.parts[e.right]
		p.Area -= e.area
		p.Moment.X -= e.mx
		p.Moment.Y -= e.my
	}
	e.area, e.mx, e.my = 0, 0, 0
}

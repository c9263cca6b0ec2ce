package geom

import "math"

// sliver is the area, in mm2, below which a traced loop is dropped, and slit the
// width, in mm, of a gap or overlap that is closed: both are rounding, far below
// anything that is cast.
const (
	sliver = 1e-6
	slit   = 1e-7
)

// Loops runs the sweep and gives the boundary of the region of all points whose
// set of layers keep accepts: outer loops counter-clockwise, holes clockwise.
// keep must not accept the empty set. Like [Sweep.Parts] it uses up what was
// added.
func (s *Sweep) Loops(keep func(layers uint64) bool) []Loop {
	if s.tracer == nil {
		s.tracer = new(trace)
	}
	t := s.tracer
	t.keep, t.segs, t.below = keep, t.segs[:0], t.below[:0]
	s.trace = t
	s.prepare()
	s.run()
	s.trace, t.keep = nil, nil
	if s.Spent() {
		return nil
	}
	loops := t.loops()
	for _, l := range loops {
		for i, p := range l {
			if s.swap {
				p = Vec{p.Y, p.X}
			}
			l[i] = p.Add(s.origin)
		}
		if s.swap {
			for i, j := 0, len(l)-1; i < j; i, j = i+1, j-1 {
				l[i], l[j] = l[j], l[i]
			}
		}
	}
	return loops
}

// Union is the union of loops, by the non-zero rule.
func Union(loops ...Loop) []Loop {
	var s Sweep
	return s.Union(loops...)
}

// Union is the union of loops, by the non-zero rule; the sweep's memory is used. If
// it gives up, the loops stay as they are.
func (s *Sweep) Union(loops ...Loop) []Loop {
	if len(loops) == 0 {
		return nil
	}
	if !s.begin(loops) {
		return nil
	}
	if out := s.Loops(func(uint64) bool { return true }); !s.Spent() {
		return out
	}
	return loops
}

// begin starts anew with loops, about their middle; false when there is nothing of
// them.
func (s *Sweep) begin(loops []Loop) bool {
	box := EmptyBox()
	for _, l := range loops {
		box = box.Union(l.Bounds())
	}
	if box.Empty() {
		return false
	}
	s.Reset(box.Centre())
	for _, l := range loops {
		s.Add(0, l)
	}
	return true
}

// EvenOdd is what loops cover by the even-odd rule; the sweep's memory is used. If
// it gives up, see [Sweep.Spent], the result is empty.
func (s *Sweep) EvenOdd(loops ...Loop) []Loop {
	if !s.begin(loops) {
		return nil
	}
	s.odd = true
	defer func() { s.odd = false }()
	return s.Loops(func(uint64) bool { return true })
}

// trace follows the boundary of a region through a sweep. A boundary consists of
// parts of active edges and of level pieces between them. At each level the
// boundary edges that come from below and those that go on above are compared:
// where only one of the two beams is inside, a level piece runs; whatever meets
// at a point is linked there.
type trace struct {
	keep  func(uint64) bool
	segs  []bound
	below []boundary
	above []boundary
	meet  []meeting
}

// bound is a directed piece of boundary with the region to its left.
type bound struct {
	from, to Vec
	dir      Vec   // of travel, of any length
	next     int32 // the piece that goes on from to
	up       bool  // it rises, or runs to the right when level: from is known first
}

// boundary is an active edge that bounds the region at one level.
type boundary struct {
	x    float64
	edge int32
	seg  int32
	up   bool // the region lies to the left of the rising edge
}

// meeting is an end of a piece at a point: one that comes in or goes out.
type meeting struct {
	seg int32
	out bool
}

// arrive notes the boundary edges at the head of the beam, before edges end
// there.
func (t *trace) arrive(s *Sweep) {
	t.below = t.below[:0]
	x := math.Inf(-1)
	for _, id := range s.order {
		e := &s.active[id]
		e.fresh = false
		if e.seg >= 0 {
			x = math.Max(x, e.next)
			t.below = append(t.below, boundary{x, id, e.seg, t.segs[e.seg].up})
		}
	}
}

// leave compares what came from below with what goes on above the level y, whose
// edges lie at x and will lie at next at the head of the coming beam.
func (t *trace) leave(s *Sweep, y float64) {
	t.above = t.above[:0]
	x := math.Inf(-1)
	for _, id := range s.order {
		e := &s.active[id]
		up := t.inside(e.layers)
		if up == t.inside(e.others) {
			e.seg = -1
			continue
		}
		if n := len(t.above); n > 0 && t.above[n-1].up != up {
			p := &s.active[t.above[n-1].edge]
			if e.x-p.x < slit && math.Abs(e.next-p.next) < slit {
				p.seg, e.seg = -1, -1
				t.above = t.above[:n-1]
				continue
			}
		}
		x = math.Max(x, e.x)
		t.above = append(t.above, boundary{x, id, -1, up})
	}
	t.merge(s, y)
	t.below = t.below[:0]
}

func (t *trace) inside(layers uint64) bool { return layers != 0 && t.keep(layers) }

// merge walks both lists from left to right and links what meets at each point.
func (t *trace) merge(s *Sweep, y float64) {
	level := int32(-1) // the level piece under way
	inBelow, inAbove := false, false
	for i, j := 0, 0; i < len(t.below) || j < len(t.above); {
		at := Vec{math.Inf(1), y}
		if i < len(t.below) {
			at.X = t.below[i].x
		}
		if j < len(t.above) {
			at.X = math.Min(at.X, t.above[j].x)
		}
		i1, j1 := i, j
		for i1 < len(t.below) && t.below[i1].x == at.X {
			inBelow, i1 = !inBelow, i1+1
		}
		for j1 < len(t.above) && t.above[j1].x == at.X {
			inAbove, j1 = !inAbove, j1+1
		}
		if level < 0 && inBelow == inAbove && i1 == i+1 && j1 == j+1 && t.goesOn(s, t.below[i], t.above[j]) {
			i, j = i1, j1
			continue
		}
		t.meet = t.meet[:0]
		if level >= 0 {
			t.finish(level, at)
			level = -1
		}
		for _, b := range t.below[i:i1] {
			t.finish(b.seg, at)
		}
		for _, b := range t.above[j:j1] {
			e := &s.active[b.edge]
			e.seg = t.begin(at, Vec{e.slope, 1}, b.up)
		}
		if inBelow != inAbove {
			level = t.begin(at, Vec{1, 0}, inAbove)
		}
		t.link()
		i, j = i1, j1
	}
}

// goesOn reports whether a boundary edge passes the level without a corner.
func (t *trace) goesOn(s *Sweep, below, above boundary) bool {
	return below.edge == above.edge && below.up == above.up && !s.active[below.edge].fresh
}

// begin starts a piece at a point, finish ends it at another. A piece that goes
// up, or level to the right, leaves the first and comes in at the second.
func (t *trace) begin(at, dir Vec, up bool) int32 {
	id := int32(len(t.segs))
	if !up {
		dir = dir.Mul(-1)
	}
	t.segs = append(t.segs, bound{at, at, dir, -1, up})
	t.meet = append(t.meet, meeting{id, up})
	return id
}

func (t *trace) finish(id int32, at Vec) {
	g := &t.segs[id]
	if g.up {
		g.to = at
	} else {
		g.from = at
	}
	t.meet = append(t.meet, meeting{id, !g.up})
}

// link joins every piece that comes in at the point to one that goes out. Where
// several do, the sharpest left turn is taken, so that regions which touch at a
// point stay loops of their own.
func (t *trace) link() {
	if len(t.meet) == 2 {
		a, b := t.meet[0], t.meet[1]
		if a.out {
			a, b = b, a
		}
		t.segs[a.seg].next = b.seg
		return
	}
	for _, in := range t.meet {
		if in.out {
			continue
		}
		best, most := -1, math.Inf(-1)
		for k, out := range t.meet {
			if !out.out || out.seg < 0 {
				continue
			}
			if turn := t.turn(in.seg, out.seg); turn > most {
				best, most = k, turn
			}
		}
		if best >= 0 {
			t.segs[in.seg].next = t.meet[best].seg
			t.meet[best].seg = -1
		}
	}
}

// turn is the angle to the left from one piece to the next; a way straight back
// counts as the sharpest turn to the right.
func (t *trace) turn(in, out int32) float64 {
	a, b := t.segs[in].dir, t.segs[out].dir
	turn := math.Atan2(a.Cross(b), a.Dot(b))
	if turn > math.Pi-1e-9 {
		return -math.Pi
	}
	return turn
}

// loops follows the links.
func (t *trace) loops() []Loop {
	var out []Loop
	seen := make([]bool, len(t.segs))
	all := make(Loop, 0, len(t.segs)) // the loops' common memory
	for first := range t.segs {
		l := all[len(all):]
		for i := int32(first); i >= 0 && !seen[i]; i = t.segs[i].next {
			seen[i] = true
			if p := t.segs[i].from; len(l) == 0 || p.Dist(l[len(l)-1]) > slit {
				l = append(l, p)
			}
		}
		for len(l) > 1 && l[0].Dist(l[len(l)-1]) <= slit {
			l = l[:len(l)-1]
		}
		if len(l) > 2 && math.Abs(l.Area()) > sliver {
			out = append(out, l[:len(l):len(l)])
			all = all[:len(all)+len(l)]
		}
	}
	return out
}

package tool

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// snap is what the snap holds: where, the guides to draw, and in words.
type snap struct {
	at     geom.Vec
	guides []Line
	words  string
	ties   []tie    // the centrelines that hold it
	free   geom.Vec // the way along which it may still move, where one thing holds it or one far better than another
}

// snapOff is said while the snap is suspended.
const snapOff = "The snap is off while Ctrl or Alt is held"

// snapper holds a moving place on or in line with what lies still, else on the
// grid. In a plane the order is: a place (a corner, a middle, where two lines
// cross, where a line touches a round); lines, edges and gaps, two at a time
// where they cross; the grid.
type snapper struct {
	*still
	nodes  []design.Node // of the outline that the marks are taken from
	step   units.Length
	fine   units.Length // of a free hand: no finer than numbers are shown
	grid   string       // the step in words
	reach  float64
	point  float64 // a point of the picture in mm
	off    bool    // suspended
	length func(mm float64) string
}

// snapper is the snap at a zoom, with what it can hold to; nil for the grid alone.
func (h *Hand) snapper(st *still, p Pointer) snapper {
	sys := h.s.Job().Units
	step, fine := h.rounding.Step(sys, p.PerMM), units.Millimetre/10
	if sys == units.Imperial {
		fine = units.Inch / 64
	}
	nodes := h.s.Design().Outline.Nodes
	if h.hold != nil {
		nodes = h.hold.d0.Outline.Nodes
	}
	if st == nil {
		st = &still{}
	}
	return snapper{still: st, nodes: nodes, step: step, fine: fine, grid: h.length(step.MM()),
		reach: p.reach(reachSnap), point: p.reach(1), off: p.Mod&(Alt|Control) != 0, length: h.length}
}

// plane snaps a place that moves freely.
func (s snapper) plane(p geom.Vec) snap {
	if s.off {
		return snap{at: gridPoint(p, s.fine), words: snapOff}
	}
	if out, ok := s.spot(p); ok {
		return out
	}
	ts := s.tracks(p)
	first, ok := s.cheapest(p, ts, nil)
	if !ok {
		return snap{at: gridPoint(p, s.step), words: "On the grid of " + s.grid}
	}
	if second, ok := s.cheapest(p, ts, &first); ok {
		at, _ := first.cross(second, p)
		out := snap{at: at, words: both(first, second), ties: tiesOf(first, second), guides: append(first.guides(at), second.guides(at)...)}
		if first.kind != holdsLine && second.kind == holdsLine {
			out.free = first.dir // what is merely in line is held least of all
		}
		return out
	}
	at := first.nearest(p)
	switch {
	case first.upright() && math.Abs(first.dir.X) > 0.5:
		at.X = onGrid(p.X, s.step)
	case first.upright():
		at.Y = onGrid(p.Y, s.step)
	case first.straight():
		at = first.at.Add(first.dir.Mul(onGrid(at.Sub(first.at).Dot(first.dir), s.step)))
	}
	return snap{at: at, words: first.sentence(), guides: first.guides(at), free: first.dir,
		ties: tiesOf(first)}
}

// spot holds p on a single place.
func (s snapper) spot(p geom.Vec) (snap, bool) {
	best, found := s.reach, -1
	for i, m := range s.marks {
		if dist := m.at.Dist(p); dist < best {
			best, found = dist, i
		}
	}
	if t, ok := s.touching(p); ok && t.at.Dist(p) < best {
		return t, true
	}
	if found < 0 {
		return snap{}, false
	}
	m := s.marks[found]
	out := snap{at: m.at, words: "On " + s.name(m), guides: []Line{{Points: []geom.Vec{m.at}}}}
	if m.kind == markCentre {
		out.ties = []tie{{design.AxisX, m}, {design.AxisY, m}}
	}
	return out, true
}

// tracks are the tracks that could hold p.
func (s snapper) tracks(p geom.Vec) []track {
	var out []track
	for _, u := range [...]geom.Vec{{X: 1}, {Y: 1}} {
		if m, ok := s.best(p, u); ok {
			out = append(out, s.markTrack(m, u.Left()))
		}
		out = append(out, s.gaps(p, u)...)
	}
	out = append(out, s.lines...)
	for _, a := range s.arms {
		if t, ok := s.armTrack(a, p); ok {
			out = append(out, t)
		}
	}
	if s.edges {
		if t, ok := s.edgeNear(p, s.reach); ok {
			out = append(out, t)
		}
	}
	return out
}

// cheapest is the track that holds p best; with another given, the one that
// crosses it best near p.
func (s snapper) cheapest(p geom.Vec, ts []track, other *track) (track, bool) {
	found, best := -1, math.Inf(1)
	for i, t := range ts {
		near := t.nearest(p).Dist(p)
		if near > s.reach+1e-9 {
			continue
		}
		if other != nil {
			q, ok := other.cross(t, p)
			if !ok || q.Dist(p) > s.reach*1.5 {
				continue
			}
		}
		if cost := near + handicap[t.kind]*s.point; cost < best-1e-9 {
			found, best = i, cost
		}
	}
	if found < 0 {
		return track{}, false
	}
	return ts[found], true
}

// guides are drawn for a place that the track holds.
func (t track) guides(at geom.Vec) []Line {
	switch {
	case t.rung != nil:
		return t.rung(at)
	case t.guide != nil:
		return t.guide
	case t.kind == holdsEdge:
		return nil // seen anyway
	}
	return []Line{{Points: []geom.Vec{t.at, at}}}
}

// along snaps a place that moves on the line through p along the unit vector u.
func (s snapper) along(p, u geom.Vec) snap {
	here := p.Dot(u)
	if s.off {
		return snap{at: p.Add(u.Mul(onGrid(here, s.fine) - here)), words: snapOff}
	}
	var ts []track
	if m, ok := s.best(p, u); ok {
		ts = append(ts, s.markTrack(m, u.Left()))
	}
	for _, a := range s.arms {
		ts = append(ts, s.armAlong(a, p, u)...)
	}
	own := track{at: p, dir: u}
	if t, ok := s.cheapest(p, ts, &own); ok {
		at := p.Add(u.Mul(t.at.Dot(u) - here))
		return snap{at: at, guides: t.guides(at), words: t.sentence()}
	}
	return snap{at: p.Add(u.Mul(onGrid(here, s.step) - here)), words: "On the grid of " + s.grid}
}

func (s snapper) name(m mark) string { return m.name(s.nodes) }

// markTrack is the line through a mark along dir.
func (s snapper) markTrack(m mark, dir geom.Vec) track {
	if m.kind == markCentre {
		t := line(m.at, dir, holdsCentre, "the centreline of "+m.what)
		t.of = &m
		return t
	}
	return line(m.at, dir, holdsLine, s.name(m))
}

// size snaps a measure such as a radius: to one that it may equal, else to the
// grid step. perMM is how far the hand moves for a millimetre of it.
func (s snapper) size(x float64) (float64, string) {
	if s.off {
		return onGrid(x, s.fine), snapOff
	}
	found, best := -1, s.reach
	for i, l := range s.likes {
		if d := math.Abs(l.value - x); d < best {
			found, best = i, d
		}
	}
	if found >= 0 {
		l := s.likes[found]
		words := l.words
		if words == "" {
			words = "Equal to that of " + l.name
		}
		return l.value, words + ", " + s.length(l.value)
	}
	return onGrid(x, s.step), "In steps of " + s.grid
}

// turnNear is how near in degrees an angle is held at a multiple of 15.
const turnNear = 3

// turn snaps an angle in degrees: to multiples of 15, else to whole degrees.
func (s snapper) turn(x float64) (float64, string) {
	switch near := math.Round(x/15) * 15; {
	case s.off:
		return math.Round(x*10) / 10, snapOff
	case math.Abs(x-near) <= turnNear:
		return near, "At a multiple of 15°"
	}
	return math.Round(x), "In steps of 1°"
}

// best is the mark nearest to p along u within reach; of equally near ones a
// centre, else the one nearest across.
func (s snapper) best(p, u geom.Vec) (mark, bool) {
	var found mark
	ok := false
	along, across := math.Inf(1), math.Inf(1)
	for _, m := range s.marks {
		d := m.at.Sub(p)
		a := math.Abs(d.Dot(u))
		if a > s.reach+1e-9 {
			continue
		}
		if m.kind == markCentre {
			a -= (handicap[holdsLine] - handicap[holdsCentre]) * s.point
			if m.of == cabinetID {
				a -= 1e-6 // a bowl hangs in a cabinet, wherever the top's middle is
			}
		}
		c := math.Abs(d.Cross(u))
		if a < along-1e-9 || a < along+1e-9 && c < across {
			found, ok, along, across = m, true, math.Min(a, along), c
		}
	}
	return found, ok
}

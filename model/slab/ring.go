package slab

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// ring is a closed flattened chain with the concrete to the left of its
// direction of travel, and what is needed to draw it in: its parallel at any
// distance on that side.
type ring struct {
	bends     []bend
	edges     []ringEdge // edge i runs from bend i to bend i+1
	stretches []stretch
}

// bend is a vertex of a ring.
type bend struct {
	p       geom.Vec
	in, out geom.Vec // to the parallel at distance 1 of the edge that arrives, that leaves
	shared  geom.Vec // to the point that both parallels share, where joint says so
	joint   joint
}

// joint says how the parallels of two edges meet.
type joint uint8

const (
	jointShared joint = iota // in one point: smooth bends, and the mitre of a turn to the left
	jointFan                 // round the vertex: a turn to the right leaves a gap
	jointBack                // through the vertex: a turn to the left too sharp for a mitre
)

// ringEdge is a straight edge of a ring.
type ringEdge struct {
	dir    geom.Vec
	length float64
	limit  float64 // the distance up to which its strip between shared points is sound
}

// stretch is a run of edges with one profile.
type stretch struct {
	profile     design.Profile
	from, count int
	whole       bool    // it is all of the ring, closed
	length      float64 // along the exact curves
	limit       float64 // the least of its edges' limits
}

// ringRun is one smooth curve of a ring, flattened, with its profile.
type ringRun struct {
	vertices []geom.Vertex
	length   float64
	profile  design.Profile
}

// newRing joins runs into a ring; each one's last point is the next one's first.
func newRing(runs []ringRun, thickness float64) *ring {
	n := 0
	for _, u := range runs {
		n += len(u.vertices) - 1
	}
	if n < 2 {
		return nil
	}
	r := &ring{bends: make([]bend, 0, n), edges: make([]ringEdge, n)}
	for k, u := range runs {
		before := runs[(k+len(runs)-1)%len(runs)].vertices
		at := len(r.bends)
		for i, v := range u.vertices[:len(u.vertices)-1] {
			in := v.Off
			if i == 0 {
				in = before[len(before)-1].Off
			}
			r.bends = append(r.bends, bend{p: v.P, in: in, out: v.Off})
		}
		count := len(u.vertices) - 1
		if last := len(r.stretches) - 1; last >= 0 && sameInset(r.stretches[last].profile, u.profile, thickness) {
			r.stretches[last].count += count
			r.stretches[last].length += u.length
		} else {
			r.stretches = append(r.stretches, stretch{profile: u.profile, from: at, count: count, length: u.length})
		}
	}
	r.closeStretches(thickness)
	r.prepare()
	return r
}

// closeStretches joins the last stretch with the first where they are alike.
func (r *ring) closeStretches(thickness float64) {
	if len(r.stretches) == 1 {
		r.stretches[0].whole = true
		return
	}
	first, last := &r.stretches[0], &r.stretches[len(r.stretches)-1]
	if sameInset(first.profile, last.profile, thickness) {
		first.from = last.from
		first.count += last.count
		first.length += last.length
		r.stretches = r.stretches[:len(r.stretches)-1]
	}
}

// prepare finds how the parallels meet at every bend and how far each edge's
// strip between shared points is sound.
func (r *ring) prepare() {
	n := len(r.bends)
	for i := range r.bends {
		r.bends[i].meet()
		d := r.bends[(i+1)%n].p.Sub(r.bends[i].p)
		e := &r.edges[i]
		e.length = d.Norm()
		e.dir = d.Unit()
	}
	for i := range r.edges {
		e := &r.edges[i]
		a, b := &r.bends[i], &r.bends[(i+1)%n]
		e.limit = math.Inf(1)
		if shrink := a.leaving().Sub(b.arriving()).Dot(e.dir); shrink > 0 {
			e.limit = e.length / shrink
		}
	}
	for k := range r.stretches {
		s := &r.stretches[k]
		s.limit = math.Inf(1)
		for i := range s.count {
			s.limit = math.Min(s.limit, r.edges[(s.from+i)%n].limit)
		}
	}
}

// mitreTurn is the turn to the right, in radians, up to which a mitre stands for
// the round fan: it adds d² turn³/24, a millionth of a square millimetre at
// most.
const mitreTurn = 0.5 * math.Pi / 180

// meet sets the joint of a bend.
func (b *bend) meet() {
	cross, dot := b.in.Cross(b.out), b.in.Dot(b.out)
	if b.in == b.out {
		b.shared = b.in
		return
	}
	turn := math.Atan2(cross, dot)
	switch {
	case math.Abs(turn) < 1e-6:
		b.shared = b.in.Lerp(b.out, 0.5)
	case turn < -mitreTurn:
		b.joint = jointFan
	case dot < -0.98:
		b.joint = jointBack
	default:
		// The factor by which a curve's vertex stands off its parallel is kept.
		u, v := b.in.Unit(), b.out.Unit()
		b.shared = u.Add(v).Mul(1 / (1 + u.Dot(v)))
	}
}

// leaving and arriving are the offsets of the bend's two edges, shared or not.
func (b *bend) leaving() geom.Vec {
	if b.joint == jointShared {
		return b.shared
	}
	return b.out
}

func (b *bend) arriving() geom.Vec {
	if b.joint == jointShared {
		return b.shared
	}
	return b.in
}

package slab

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
)

// drawer adds to a sweep what rings look like at one height. It keeps scratch
// memory; it is not safe for concurrent use.
type drawer struct {
	sweep  geom.Sweep
	forced []bool // by index along a stretch: bends through which the strip goes
	fine   bool   // fans have steps of a degree
}

// outline adds the ring to the layer whole and what its profiles take off, at
// the inset of each, to the layer gone.
func (w *drawer) outline(r *ring, whole, gone int8, inset func(design.Profile) float64) {
	n := len(r.bends)
	for k := range r.stretches {
		s := &r.stretches[k]
		label := geom.Label{Layer: whole, By: 1}
		d := inset(s.profile)
		if d > 0 {
			// The strip's front coincides with the outline.
			label.Second, label.Also = gone, 1
		}
		w.sweep.AddChain(label)
		for i := range s.count + 1 {
			w.sweep.AddPoint(r.bends[(s.from+i)%n].p)
		}
		if d > 0 {
			w.sweep.AddChain(geom.Label{Layer: gone, By: 1})
			w.back(r, s, d)
			if !s.whole {
				w.caps(r, k, d, gone, inset)
			}
		}
	}
}

// opening adds an opening, whose ring runs clockwise, grown by its arris
// profile, to the layer gone. Its own region and the strip outside it make one
// chain, the strip's back.
func (w *drawer) opening(r *ring, gone int8, inset func(design.Profile) float64) {
	s := &r.stretches[0]
	w.sweep.AddChain(geom.Label{Layer: gone, By: 1})
	if d := inset(s.profile); d > 0 {
		w.back(r, s, d)
		return
	}
	n := len(r.bends)
	for i := n; i >= 0; i-- {
		w.sweep.AddPoint(r.bends[i%n].p)
	}
}

// back carries the sweep's last chain along the back of a stretch's strip, from
// the stretch's end to its start. The strip is a sum of quadrangles, one to an
// edge, and of fans where a turn leaves a gap, all of them counter-clockwise, so
// that its winding number is nowhere negative.
func (w *drawer) back(r *ring, s *stretch, d float64) {
	w.force(r, s, d)
	if s.whole {
		first := w.sweep.Len()
		for i := s.count - 1; i >= 0; i-- {
			w.pass(r, s, i, d)
		}
		w.sweep.AddAgain(first)
		return
	}
	n := len(r.bends)
	end, start := &r.bends[(s.from+s.count)%n], &r.bends[s.from]
	w.sweep.AddPoint(end.p)
	w.sweep.AddPoint(end.p.Add(w.arriving(r, s, s.count).Mul(d)))
	for i := s.count - 1; i > 0; i-- {
		w.pass(r, s, i, d)
	}
	w.sweep.AddPoint(start.p.Add(w.leaving(r, s, 0).Mul(d)))
	w.sweep.AddPoint(start.p)
}

// pass adds the back's points at the bend i of a stretch, from the edge that
// leaves it to the edge that arrives.
func (w *drawer) pass(r *ring, s *stretch, i int, d float64) {
	b := &r.bends[(s.from+i)%len(r.bends)]
	if b.joint == jointShared && !w.forced[i] {
		w.sweep.AddPoint(b.p.Add(b.shared.Mul(d)))
		return
	}
	u, v := w.leaving(r, s, i), w.arriving(r, s, i)
	if turn := math.Atan2(v.Cross(u), v.Dot(u)); turn < 0 {
		w.fan(b.p, u, -turn, d)
		return
	}
	w.sweep.AddPoint(b.p.Add(u.Mul(d)))
	w.sweep.AddPoint(b.p)
	w.sweep.AddPoint(b.p.Add(v.Mul(d)))
}

// leaving is the offset, for the distance 1, of the edge that leaves the bend i
// where its strip does not share a point with the one before; arriving is that
// of the edge that arrives.
func (w *drawer) leaving(r *ring, s *stretch, i int) geom.Vec {
	k := (s.from + i) % len(r.bends)
	if w.forced[i] {
		return r.edges[k].dir.Left()
	}
	return r.bends[k].out
}

func (w *drawer) arriving(r *ring, s *stretch, i int) geom.Vec {
	n := len(r.bends)
	if w.forced[i] {
		return r.edges[(s.from+i+n-1)%n].dir.Left()
	}
	return r.bends[(s.from+i)%n].in
}

// force finds the edges whose quadrangle would turn over, because the distance
// exceeds what their bends leave, and has the strip go through both their bends:
// the quadrangle is then a rectangle.
func (w *drawer) force(r *ring, s *stretch, d float64) {
	if len(w.forced) < s.count+1 {
		w.forced = make([]bool, s.count+1)
	}
	clear(w.forced[:s.count+1])
	if d < s.limit*0.999999 {
		return
	}
	n := len(r.bends)
	for again := true; again; {
		again = false
		for i := 0; i < s.count; i++ {
			k := (s.from + i) % n
			next := i + 1
			if s.whole {
				next %= s.count
			}
			if w.forced[i] && w.forced[next] {
				continue
			}
			e := &r.edges[k]
			room := e.length
			if !w.forced[i] {
				room -= d * r.bends[k].leaving().Dot(e.dir)
			}
			if !w.forced[next] {
				room += d * r.bends[(k+1)%n].arriving().Dot(e.dir)
			}
			if room <= 1e-9*d {
				w.forced[i], w.forced[next] = true, true
				again = true
				i = max(-1, i-2) // the edge before may have lost its room
			}
		}
	}
}

// caps rounds the ends of the strip of stretch k where its neighbour's is
// narrower: a point near the stretch's last vertex may be nearer to nothing else.
func (w *drawer) caps(r *ring, k int, d float64, gone int8, inset func(design.Profile) float64) {
	m, n := len(r.stretches), len(r.bends)
	s := &r.stretches[k]
	sector := func(b *bend, from geom.Vec, angle float64) {
		w.sweep.AddChain(geom.Label{Layer: gone, By: 1}, b.p)
		w.fan(b.p, from, angle, d)
		w.sweep.AddPoint(b.p)
	}
	if next := &r.stretches[(k+1)%m]; d >= inset(next.profile) {
		b := &r.bends[(s.from+s.count)%n]
		if angle := capAngle(b); angle > 0 {
			v := w.arriving(r, s, s.count)
			sector(b, v.Turn(-angle), angle)
		}
	}
	if before := &r.stretches[(k+m-1)%m]; d > inset(before.profile) {
		b := &r.bends[s.from]
		if angle := capAngle(b); angle > 0 {
			sector(b, w.leaving(r, s, 0), angle)
		}
	}
}

// capAngle is how far a cap at a bend goes round from the square end of its
// strip: over all the concrete there, and a right angle beyond.
func capAngle(b *bend) float64 {
	turn := math.Atan2(b.in.Cross(b.out), b.in.Dot(b.out))
	return clamp(math.Pi-turn, 0, 1.5*math.Pi)
}

// leastStep bounds the steps of a fan; at 150 mm, more than any profile draws in,
// the tolerance asks for as much.
const leastStep = 1.6 * math.Pi / 180

// fan adds the points of an arc of radius d about p, counter-clockwise from the
// direction u through angle, both ends included. It has the arc's area.
func (w *drawer) fan(p, u geom.Vec, angle, d float64) {
	longest := math.Max(leastStep, geom.ArcStep(d, Tolerance))
	if w.fine {
		longest = math.Pi / 180
	}
	n := math.Ceil(angle/longest - 1e-9)
	if n < 2 && angle > mitreTurn {
		n = 2
	}
	n = math.Max(n, 1)
	step := angle / n
	k := geom.ArcFactor(n, step)
	sin, cos := math.Sincos(step)
	u = u.Unit().Mul(d)
	w.sweep.AddPoint(p.Add(u))
	for i := 1.0; i <= n; i++ {
		u = geom.Vec{X: u.X*cos - u.Y*sin, Y: u.X*sin + u.Y*cos}
		if i < n {
			w.sweep.AddPoint(p.Add(u.Mul(k)))
		} else {
			w.sweep.AddPoint(p.Add(u))
		}
	}
}

package warn

import (
	"slices"

	"example.org/castwright/model/geom"
)

// narrow is a place where one chain comes near another: the foot of a valley
// in the distance from it.
type narrow struct {
	pair
	segment int     // of the first chain
	ridge   float64 // the largest distance on the way to the next narrow place
}

// direction is the way from the one chain to the other.
func (n narrow) direction() geom.Vec { return n.to.Sub(n.at).Unit() }

// narrows lists where c comes nearer to o than reach, each place once, in
// order along c. Two places are parted by a rise of the distance between them
// of at least rise, or by any rise where they lie on different sides of o,
// their directions 60 degrees or more apart. What touches or crosses has
// distance 0.
func (c *chain) narrows(o *chain, reach, rise float64) []narrow {
	any := rise / 16
	found := valleys(c.approach(o, reach+rise, any), len(c.pts), reach+rise, any)
	for len(found) > 1 {
		// The valley that is least parted from a neighbour is one with it.
		least, drop := 0.0, -1
		for i, n := range found {
			next := (i + 1) % len(found)
			m := found[next]
			need := rise
			if n.direction().Dot(m.direction()) <= 0.5 {
				need = any
			}
			if lack := n.ridge - max(n.d, m.d) - need; lack < least {
				least, drop = lack, next
				if n.d > m.d {
					drop = i
				}
			}
		}
		if drop < 0 {
			break
		}
		before := (drop + len(found) - 1) % len(found)
		found[before].ridge = max(found[before].ridge, found[drop].ridge)
		found = slices.Delete(found, drop, drop+1)
	}
	found = slices.DeleteFunc(found, func(n narrow) bool { return n.d >= reach })
	slices.SortFunc(found, func(a, b narrow) int { return a.segment - b.segment })
	return found
}

// valleys walks once round a chain of n segments from its narrowest step and
// keeps the lowest step between two rises of at least rise. What is not among
// the steps is far away.
func valleys(steps []step, n int, far, rise float64) []narrow {
	if len(steps) == 0 {
		return nil
	}
	first := 0
	for i, s := range steps {
		if s.d < steps[first].d {
			first = i
		}
	}
	found := []narrow{steps[first].narrow}
	low, high := steps[first].narrow, steps[first].d
	falling := false // whether low is the foot of a new valley
	ridge := high    // the highest since the last valley that was kept
	prev := steps[first]
	for k := 1; k <= len(steps); k++ {
		s := steps[(first+k)%len(steps)]
		high = max(high, prev.end)
		if (prev.segment+1)%n != s.segment {
			high = far
		}
		if falling && high-low.d >= rise {
			found[len(found)-1].ridge = ridge
			found, falling, ridge = append(found, low), false, high
		}
		if !falling {
			ridge = max(ridge, high)
		}
		switch {
		case k == len(steps):
		case falling && s.d < low.d, !falling && high-s.d >= rise:
			low, high, falling = s.narrow, s.d, true
		default:
			high = max(high, s.d)
		}
		prev = s
	}
	found[len(found)-1].ridge = max(ridge, high)
	return found
}

// step is a segment near another chain, and how far its end is from it.
type step struct {
	narrow
	end float64
}

// approach lists the segments of c that come nearer to o than reach, in order.
// The end of a segment shorter than short counts as far as the segment.
func (c *chain) approach(o *chain, reach, short float64) []step {
	var steps []step
	b := o.bounds()
	c.each(1, box{b.x0 - reach, b.y0 - reach, b.x1 + reach, b.y1 + reach}, func(i int) {
		p, q := c.seg(i)
		near, ok := o.fromSegment(p, q, reach)
		if !ok {
			return
		}
		end := near.d
		if apart(p, q) > short {
			far, _ := o.fromSegment(q, q, reach)
			end = far.d
		}
		steps = append(steps, step{narrow{pair: near, segment: i}, end})
	})
	return steps
}

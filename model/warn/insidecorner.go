package warn

import (
	"math"

	"example.org/castwright/model/geom"
)

// sharpTurn is how much a corner must turn to be one: 10 degrees. A flattened
// arc of 3 mm radius or more turns by less at each of its points.
const sharpTurn = 10 * math.Pi / 180

// bend is a corner of a loop: its middle, how far it turns in radians and its
// radius in mm, 0 where two sides just meet.
type bend struct {
	at     geom.Vec
	turn   float64
	radius float64
}

// insideCorners looks at the corners where cracks start: inside corners of the
// outline, and the corners of sink cut-outs, the sharpest of each.
func (c *check) insideCorners() {
	least := limitInsideCorner.Steps[0].Value
	var last geom.Vec
	for i, b := range bends(c.outline.pts, -1, least) {
		if i > 0 && b.at.Dist(last) < 2*least {
			continue // the second corner of a chamfer
		}
		last = b.at
		c.say(limitInsideCorner, b.radius, 1, Warning{At: b.at,
			Title: "Inside corner is sharp",
			Advice: "Round it: cracks start at sharp inside corners; put a bar across the corner too, and never " +
				"saw into it."})
	}
	least = limitCutoutCorner.Steps[0].Value
	for _, o := range c.openings {
		if o.round() || o.Diameter > 0 || o.side == without {
			continue
		}
		sharpest := bend{radius: math.Inf(1)}
		for _, b := range bends(o.pts, 1, least) {
			if b.radius < sharpest.radius-near {
				sharpest = b
			}
		}
		c.say(limitCutoutCorner, sharpest.radius, 1, Warning{Part: o.Part, At: sharpest.at,
			Title:  "Corner of the sink cut-out is sharp",
			Advice: "Round the cut-out's corners: cracks start there."})
	}
}

// blunt is how many times as blunt as it is a point of a rounded corner may seem:
// flattening turns by a tenth less or more beside the ends of an arc.
const blunt = 1.5

// bends finds where a loop turns to the left (sense +1) or to the right (-1) by
// more than sharpTurn on a radius that may be below least.
func bends(l geom.Loop, sense, least float64) []bend {
	n := len(l)
	turn := make([]float64, n) // at each point; 0 where it is no matter
	round := make([]bool, n)   // whether the point seems part of a small arc
	first := -1                // a point that belongs to no arc
	in, inLength := l[0].Sub(l[n-1]), apart(l[n-1], l[0])
	for i := range l {
		next := l[(i+1)%n]
		out, outLength := next.Sub(l[i]), apart(l[i], next)
		cross, dot := sense*in.Cross(out), in.Dot(out)
		chord, lengths := (inLength+outLength)/2, inLength*outLength
		in, inLength = out, outLength
		// Most points turn the other way, or so gently that the arc through
		// them is larger than chord / (root 2 sin turn).
		if cross <= 0 || dot > 0 && cross < math.Sin(sharpTurn)*lengths &&
			chord*lengths > blunt*least*math.Sqrt2*cross {
			first = i
			continue
		}
		turn[i] = math.Atan2(cross, dot)
		if round[i] = chord <= blunt*least*2*math.Sin(turn[i]/2); !round[i] {
			first = i
		}
	}
	if first < 0 {
		return nil // one small round thing
	}
	var found []bend
	keep := func(b bend) {
		if b.turn > sharpTurn && b.radius < least-near {
			found = append(found, b)
		}
	}
	for k := 0; k < n; {
		i := (first + k) % n
		switch {
		case round[i]:
			from := k
			for k < n && round[(first+k)%n] {
				k++
			}
			keep(arc(l, sense, first+from, k-from))
		case turn[i] > sharpTurn:
			keep(bend{l[i], turn[i], 0})
			k++
		default:
			k++
		}
	}
	return found
}

// arc is the bend that count points from index from on make, with the two points
// beside them where it meets straight sides. Its radius is its length over its
// turn, or where it is clearly sharper that of its sharpest three points.
func arc(l geom.Loop, sense float64, from, count int) bend {
	n := len(l)
	at := func(k int) geom.Vec { return l[(k+n)%n] }
	turn := func(k int) float64 {
		in, out := at(k).Sub(at(k-1)), at(k+1).Sub(at(k))
		return sense * math.Atan2(in.Cross(out), in.Dot(out))
	}
	first, last := from, from+count-1
	b := bend{at: at(from + count/2)}
	for k := first; k <= last; k++ {
		b.turn += turn(k)
	}
	if t := turn(first - 1); t > 0 && t < sharpTurn {
		first--
		b.turn += t
	}
	if t := turn(last + 1); t > 0 && t < sharpTurn {
		last++
		b.turn += t
	}
	chord := func(k int) float64 { return apart(at(k), at(k+1)) }
	length := 0.0
	for k := first; k < last; k++ {
		length += chord(k)
	}
	mean := length / b.turn
	b.radius = mean
	for k := first + 2; k <= last-2; k++ {
		s := chord(k-1) + chord(k) + (chord(k-2)+chord(k+1))/2
		if r := s / (turn(k-1) + turn(k) + turn(k+1)); r < 0.94*mean {
			b.radius = min(b.radius, r)
		}
	}
	return b
}

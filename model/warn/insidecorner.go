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

// bends finds where a loop turns to the left (sense +1) or to the right (-1) by
// more than sharpTurn on a radius that may be below least.
func bends(l geom.Loop, sense, least float64) []bend {
	n := len(l)
	turn := make([]float64, n)   // at each point
	radius := make([]float64, n) // at each point, of the arc through its neighbours
	first := -1                  // a point that belongs to no bend
	in, inLength := l[0].Sub(l[n-1]), apart(l[n-1], l[0])
	for i := range l {
		next := l[(i+1)%n]
		out, outLength := next.Sub(l[i]), apart(l[i], next)
		cross, dot := sense*in.Cross(out), in.Dot(out)
		chord, lengths := (inLength+outLength)/2, inLength*outLength
		in, inLength = out, outLength
		radius[i] = math.Inf(1)
		// Most points turn the other way, or so gently that the arc through
		// them is larger than chord / (root 2 sin turn).
		if cross <= 0 || dot > 0 && cross < math.Sin(sharpTurn)*lengths &&
			chord*lengths > 2.2*least*math.Sqrt2*cross {
			first = i
			continue
		}
		turn[i] = math.Atan2(cross, dot)
		// At its ends a rounded corner turns by half, so that it seems twice
		// as blunt there.
		if r := chord / (2 * math.Sin(turn[i]/2)); r <= 2.2*least {
			radius[i] = r
		} else {
			first = i
		}
	}
	var found []bend
	keep := func(b bend) {
		if b.turn > sharpTurn && b.radius < least-near {
			found = append(found, b)
		}
	}
	if first < 0 {
		return nil // one small round thing
	}
	for k := 0; k < n; {
		i := (first + k) % n
		switch {
		case !math.IsInf(radius[i], 1):
			from := k
			for k < n && !math.IsInf(radius[(first+k)%n], 1) {
				k++
			}
			keep(run(l, turn, radius, first+from, k-from))
		case turn[i] > sharpTurn:
			keep(bend{l[i], turn[i], 0})
			k++
		default:
			k++
		}
	}
	return found
}

// run is the bend made by count points from index from on.
func run(l geom.Loop, turn, radius []float64, from, count int) bend {
	n := len(l)
	b := bend{at: l[(from+count/2)%n], radius: math.Inf(1)}
	for k := from; k < from+count; k++ {
		b.turn += turn[k%n]
		if k > from && k < from+count-1 {
			b.radius = min(b.radius, radius[k%n])
		}
	}
	switch count {
	case 1:
		b.radius = radius[from%n]
	case 2:
		b.radius = l[from%n].Dist(l[(from+1)%n]) / (2 * math.Sin(min(b.turn, math.Pi)/2))
	}
	return b
}

package pose

import (
	"fmt"
	"math"

	"example.org/castwright/model/geom"
)

// Corner names a corner of the rectangle, as it is seen from in front of it.
type Corner int

// The corners in their order: clockwise as they are seen from above.
const (
	BackLeft Corner = iota
	BackRight
	FrontRight
	FrontLeft
)

// String is the corner in words.
func (c Corner) String() string {
	return [...]string{"back left", "back right", "front right", "front left"}[c&3]
}

// Corners are the pixels of the four corners in their order.
type Corners [4]geom.Vec

// Fault is what is wrong with a corner.
type Fault struct {
	Corner Corner
	Reason string // what is wrong and what to do
}

// Error says it in words.
func (f *Fault) Error() string { return "the " + f.Corner.String() + " corner " + f.Reason }

// Bounds of what can be measured from.
const (
	leastSide  = 12.0  // pixels
	leastArea  = 900.0 // pixels
	leastShare = 0.001 // of the photograph's area
	leastBend  = 0.03  // sine of the angle by which a corner must bend, 1.7 degrees
)

// Check refuses corners that no rectangle can have in a photograph of w x h
// pixels, with the corner that is to blame.
func (c Corners) Check(w, h int) error {
	for i, p := range c {
		switch {
		case !p.Finite():
			return &Fault{Corner(i), "is no place in the photograph: mark it again"}
		case p.X < 0 || p.Y < 0 || p.X > float64(w) || p.Y > float64(h):
			return &Fault{Corner(i), fmt.Sprintf("at (%.0f, %.0f) lies outside the photograph of %d × %d pixels: mark a corner that is seen", p.X, p.Y, w, h)}
		}
	}
	for i := range c {
		for j := range i {
			if d := c[i].Dist(c[j]); d < leastSide {
				return &Fault{Corner(i), fmt.Sprintf("lies on the %s one, %.0f pixels apart: mark two different corners, from nearer if need be", Corner(j), d)}
			}
		}
	}
	var bend [4]float64 // the sine of the turn at each corner, positive when clockwise
	left, right := 0, 0
	for i := range c {
		before, after := c[i].Sub(c[(i+3)&3]).Unit(), c[(i+1)&3].Sub(c[i]).Unit()
		bend[i] = before.Cross(after)
		// A turn of nearly 180 degrees bends as little as one of 0.
		if math.Abs(bend[i]) < leastBend {
			return &Fault{Corner(i), fmt.Sprintf("lies on one line with the %s and the %s one: a rectangle has no such corner", Corner((i+3)&3), Corner((i+1)&3))}
		}
		if bend[i] > 0 {
			right++
		} else {
			left++
		}
	}
	switch {
	case right == 2:
		// One of the two pairs of sides that face each other crosses.
		if meet(c[0], c[1], c[2], c[3]) {
			return &Fault{BackRight, "and the front right one make sides that cross: swap the two"}
		}
		return &Fault{FrontRight, "and the front left one make sides that cross: swap the two"}
	case right == 1 || right == 3:
		for i := range c {
			if (bend[i] > 0) != (right == 3) {
				return &Fault{Corner(i), "lies inside the other three: pull it outward"}
			}
		}
	case left == 4:
		return &Fault{BackRight, "and the front left one are the wrong way round: swap the two. The corners go clockwise from the back left one"}
	}
	if area := c.area(); area < max(leastArea, leastShare*float64(w)*float64(h)) {
		return &Fault{BackLeft, fmt.Sprintf("and the others enclose only %.0f of %d pixels, too few to measure from: take the photograph from nearer", area, w*h)}
	}
	return nil
}

// area is what the corners enclose, in pixels, positive when they go clockwise.
func (c Corners) area() float64 { return c[2].Sub(c[0]).Cross(c[3].Sub(c[1])) / 2 }

// meet reports whether the line from a to b crosses the one from p to q.
func meet(a, b, p, q geom.Vec) bool {
	side := func(a, b, p geom.Vec) bool { return b.Sub(a).Cross(p.Sub(a)) > 0 }
	return side(a, b, p) != side(a, b, q) && side(p, q, a) != side(p, q, b)
}

// Ordered is the corners in their order when only the first is known to be the
// back left one: the others may come in any order, for a top is seen from above,
// and so they go clockwise.
func Ordered(c [4]geom.Vec) Corners {
	var mid geom.Vec
	for _, p := range c {
		if !p.Finite() {
			return c
		}
		mid = mid.Add(p.Mul(0.25))
	}
	// How far round from the first one, clockwise with y down.
	from := func(p geom.Vec) float64 {
		a, b := c[0].Sub(mid), p.Sub(mid)
		turn := math.Atan2(a.Cross(b), a.Dot(b))
		if turn < 0 {
			turn += 2 * math.Pi
		}
		return turn
	}
	out := Corners(c)
	for i := 2; i < 4; i++ {
		for k := i; k > 1 && from(out[k]) < from(out[k-1]); k-- {
			out[k], out[k-1] = out[k-1], out[k]
		}
	}
	return out
}

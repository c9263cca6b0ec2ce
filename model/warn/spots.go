package warn

import (
	"math"

	"example.org/castwright/model/geom"
)

// place is a spot of the top to judge. Inner is the same spot, a hair inside
// the top, from which sight lines start.
type place struct {
	at, inner geom.Vec
	out       [2]geom.Vec // outward normals of the edge before and after; zero inside
}

// facing reports whether the edge of the top at the place faces along u, within
// 60 degrees.
func (p place) facing(u geom.Vec) bool {
	return u.Dot(p.out[0]) > 0.5 || u.Dot(p.out[1]) > 0.5
}

// How finely a top is looked over for what carries it: about so many spots
// along its outline and over its area. The worst spot of straight bearings and
// straight edges is met exactly, whatever the numbers; a bowed edge is read
// within step^2 / 8 R, under 0.1 mm on a bow of 1 m radius. Twice as many of
// each takes twice the time and moves no value of the tests by 0.1 mm.
const (
	spotsAlong = 120
	spotsOver  = 120
)

// spots gives the places at which the carrying of the top is judged: the
// corners of the outline, evenly along its edges, and a grid over its area.
func (c *check) spots() []place {
	found := make([]place, 0, 2*spotsAlong+spotsOver)
	pts := c.outline.pts
	before, _ := c.outline.seg(len(pts) - 1)
	perimeter := 0.0
	for i := range pts {
		perimeter += apart(c.outline.seg(i))
	}
	step := perimeter / spotsAlong
	walked := step // since the last spot
	in, inLength := pts[0].Sub(before), apart(before, pts[0])
	for i := range pts {
		p, q := c.outline.seg(i)
		out, length := q.Sub(p), apart(p, q)
		if walked >= step || in.Dot(out) < math.Cos(sharpTurn)*inLength*length {
			u, v := in.Unit(), out.Unit()
			inner := p.Add(u.Add(v).Left().Unit().Mul(near))
			found, walked = append(found, place{p, inner, [2]geom.Vec{u.Left().Mul(-1), v.Left().Mul(-1)}}), 0
		}
		in, inLength = out, length
		if length < 2*step {
			walked += length
			continue
		}
		parts := 2 * math.Ceil(length/step/2) // an even number meets the middle
		left := out.Unit().Left()
		for k := 1.0; k < parts; k++ {
			s := p.Lerp(q, k/parts)
			found = append(found, place{s, s.Add(left.Mul(near)), [2]geom.Vec{left.Mul(-1)}})
		}
		walked = length / parts
	}
	b := c.outline.bounds()
	grid := math.Sqrt((b.x1 - b.x0) * (b.y1 - b.y0) / spotsOver)
	if !(grid > 0) {
		return found
	}
	nx, ny := math.Ceil((b.x1-b.x0)/grid), math.Ceil((b.y1-b.y0)/grid)
	if nx*ny > 4*spotsOver { // a needle
		return found
	}
	for iy := 0.5; iy < ny; iy++ {
		for ix := 0.5; ix < nx; ix++ {
			p := geom.Vec{X: b.x0 + ix/nx*(b.x1-b.x0), Y: b.y0 + iy/ny*(b.y1-b.y0)}
			if c.concrete(p) {
				found = append(found, place{at: p, inner: p})
			}
		}
	}
	return found
}

// concrete reports whether p lies in the outline and in no sink cut-out.
func (c *check) concrete(p geom.Vec) bool {
	if !c.outline.contains(p) {
		return false
	}
	for _, o := range c.sinks {
		if o.contains(p) {
			return false
		}
	}
	return true
}

// inside reports whether the line from p to q stays in the outline; q may lie on
// it.
func (c *check) inside(p, q geom.Vec) bool {
	d := apart(p, q)
	return d <= 2*near || !c.outline.cut(p, q.Lerp(p, 2*near/d))
}

// clear reports whether concrete reaches in a straight line from p to q, which
// may itself lie on the outline. Small holes do not part the concrete.
func (c *check) clear(p, q geom.Vec) bool {
	if !c.inside(p, q) {
		return false
	}
	for _, o := range c.sinks {
		if o.cut(p, q) {
			return false
		}
	}
	return true
}

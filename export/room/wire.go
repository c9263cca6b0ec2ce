package room

import (
	"math"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

// Wire is the edges of a top as they are seen in a photograph, in its pixels: what
// can be drawn while a corner is dragged.
type Wire struct {
	Face     []geom.Vec   // the outline of the face, closed
	Foot     [][]geom.Vec // the lower edge of the sides that are seen
	Upright  [][]geom.Vec // where the sides that are seen meet
	Openings [][]geom.Vec // in the face, closed
}

// sharp is the turn from which on two pieces of an outline meet in an edge.
const sharp = 20 * math.Pi / 180

// WireOf is the wire of a top by an order. It fails where the order has no camera.
func WireOf(s slab.Solid, o Order) (Wire, error) {
	cam, err := o.Camera()
	if err != nil {
		return Wire{}, err
	}
	p := cam.Placed(o.Place, s.Outline.Bounds(), s.Thickness)
	see := func(q geom.Vec, z float64) (geom.Vec, bool) {
		var u [3]float64
		for i := range 3 {
			u[i] = p[i][0]*q.X + p[i][1]*q.Y + p[i][2]*z + p[i][3]
		}
		v := geom.Vec{X: u[0] / u[2], Y: u[1] / u[2]}
		return v, u[2] > 1e-6 && v.Finite() && math.Abs(v.X) < 1e6 && math.Abs(v.Y) < 1e6
	}
	var w Wire
	n := len(s.Outline)
	face, foot, ok := make([]geom.Vec, n), make([]geom.Vec, n), make([]bool, n)
	whole := true
	for i, q := range s.Outline {
		var up, down bool
		face[i], up = see(q, s.Thickness)
		foot[i], down = see(q, 0)
		ok[i] = up && down
		whole = whole && up
	}
	if whole {
		w.Face = face
	}
	// The outline runs counter-clockwise, so a side that is seen from outside has its
	// corners clockwise.
	seen := func(i int) bool {
		j := (i + 1) % n
		return ok[i] && ok[j] && foot[j].Sub(face[i]).Cross(foot[i].Sub(face[j])) > 0
	}
	for i := range n {
		j, before := (i+1)%n, (i+n-1)%n
		switch last := len(w.Foot) - 1; {
		case !seen(i):
		case i > 0 && seen(before):
			w.Foot[last] = append(w.Foot[last], foot[j])
		default:
			w.Foot = append(w.Foot, []geom.Vec{foot[i], foot[j]})
		}
		if !ok[i] || !seen(i) && !seen(before) {
			continue
		}
		a, b := s.Outline[i].Sub(s.Outline[before]).Unit(), s.Outline[j].Sub(s.Outline[i]).Unit()
		if turn := math.Abs(math.Atan2(a.Cross(b), a.Dot(b))); turn > sharp || seen(i) != seen(before) {
			w.Upright = append(w.Upright, []geom.Vec{face[i], foot[i]})
		}
	}
	if last := len(w.Foot) - 1; last > 0 && seen(0) && seen(n-1) { // one line over the first corner
		w.Foot[0] = append(w.Foot[last], w.Foot[0][1:]...)
		w.Foot = w.Foot[:last]
	}
	for _, h := range s.Openings {
		line := make([]geom.Vec, 0, len(h.Loop))
		for _, q := range h.Loop {
			if v, ok := see(q, s.Thickness); ok {
				line = append(line, v)
			}
		}
		if len(line) == len(h.Loop) && len(line) > 2 {
			w.Openings = append(w.Openings, line)
		}
	}
	return w, nil
}

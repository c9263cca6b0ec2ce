package picture

import (
	"fmt"
	"math"

	"example.org/castwright/model/geom"
)

// Kind says where a view is taken from.
type Kind uint8

// The kinds of view.
const (
	Top     Kind = iota // straight down, to scale
	Quarter             // from the front and above, the whole top
	Close               // near a chosen place
	Orbit               // from any direction
	Through             // through a camera of its own, such as that of a photograph
)

// View is one view of a set. Angles are degrees.
type View struct {
	Kind Kind
	// At is the place looked at and Span the width of what is seen there, in
	// millimetres: Close, where zero takes a place by the front, and 320; and Top,
	// where a Span of zero is the whole top.
	At   geom.Vec
	Span float64
	// Turn is how far to the right of straight in front the eye stands, Rise
	// how high above the horizon, and Away its distance as a multiple of the
	// one that shows the whole top: Orbit, and Close when Rise is not 0.
	Turn, Rise, Away float64
	// Camera is the projection of a view of kind Through.
	Camera Projection
	// Seed chooses among pictures that differ in their noise alone.
	Seed uint32
}

const fieldOfView = 24.5 // degrees, upright

// MaxSide is the longest side of a picture in pixels.
const MaxSide = 8192

func (v View) check(w, h int) error {
	if w < 8 || h < 8 || w > MaxSide || h > MaxSide {
		return fmt.Errorf("a picture of %d x %d pixels is out of range: give 8 to %d for each side", w, h, MaxSide)
	}
	for _, x := range [...]float64{v.At.X, v.At.Y, v.Span, v.Turn, v.Rise, v.Away} {
		if !(math.Abs(x) < 1e6) {
			return fmt.Errorf("a view with the value %g can't be taken: give a number below a million", x)
		}
	}
	if v.Kind > Through {
		return fmt.Errorf("there is no kind of view %d", v.Kind)
	}
	if v.Kind == Through {
		return v.Camera.check()
	}
	return nil
}

// PlanScale is the scale of a straight-down picture of w x h pixels: its
// millimetres to the pixel, and the place in the design of its middle.
func (s *Set) PlanScale(w, h int) (mmPerPixel float64, middle geom.Vec) {
	b := s.bounds.Grow(0.03 * max(s.bounds.W(), s.bounds.H()))
	return max(b.W()/float64(w), b.H()/float64(h)), b.Centre()
}

func (s *Set) camera(v View, w, h int) camera {
	switch v.Kind {
	case Top:
		k, m := s.PlanScale(w, h)
		if v.Span > 0 {
			k, m = v.Span/float64(w), v.At
		}
		return planCamera(v3{m.X, m.Y, s.body.t + 1500}, k, w, h)
	case Through:
		return v.Camera.camera(w, h)
	}
	mid := s.bounds.Centre()
	target := v3{mid.X, mid.Y, s.body.t - 30}
	turn, rise, away := quarterTurn, quarterRise, 1.0
	if s.flip {
		turn = -turn
	}
	switch v.Kind {
	case Orbit:
		turn, rise = v.Turn, max(lowestRise, min(highestRise, v.Rise))
		if v.Away > 0 {
			away = max(0.1, min(6, v.Away))
		}
	case Close:
		turn, rise = 0.8*turn, closeRise
		if v.Rise != 0 {
			turn, rise = v.Turn, max(lowestRise, min(highestRise, v.Rise))
		}
	}
	st, ct := math.Sincos(turn * math.Pi / 180)
	sr, cr := math.Sincos(rise * math.Pi / 180)
	back := v3{st * cr, -ct * cr, sr} // from the target to the eye
	half := math.Tan(fieldOfView / 2 * math.Pi / 180)
	k := 2 * half / float64(h)
	if v.Kind == Close {
		at, span := v.At, v.Span
		if span <= 0 {
			span = closeSpan
		}
		if at == (geom.Vec{}) {
			at = s.frontSpot()
		}
		target = v3{at.X, at.Y, s.body.t - 8}
		return eyeCamera(target.along(back, max(60, span/(k*float64(w)))), back.mul(-1), k, w, h)
	}
	// Far enough that every corner of the top and its basins is in sight.
	right := back.mul(-1).cross(v3{Z: 1}).unit()
	up := right.cross(back.mul(-1))
	dist := 0.0
	tx, ty := half*float64(w)/float64(h)*0.90, half*0.90
	for _, p := range s.corners() {
		q := p.sub(target)
		z := q.dot(back)
		dist = max(dist, max(math.Abs(q.dot(right))/tx, math.Abs(q.dot(up))/ty)+z)
	}
	return eyeCamera(target.along(back, dist*away), back.mul(-1), k, w, h)
}

// frontSpot is a place by the front edge that shows something: an open end of
// a channel that is at no wall, or the front's left third.
func (s *Set) frontSpot() geom.Vec {
	for i := range s.body.channels {
		c := &s.body.channels[i]
		if c.falls && !s.body.edges[s.body.outline.nearest(c.mouth.X, c.mouth.Y)].wall {
			return c.mouth
		}
	}
	b := s.bounds
	at := geom.Vec{X: b.Min.X + 0.35*b.W(), Y: b.Min.Y}
	for s.body.outline.at(at.X, at.Y) > -20 && at.Y < b.Max.Y {
		at.Y += 5
	}
	return at
}

// PlanHeight is the height in pixels of a straight-down picture of this width
// that fits the top with the same margin all round.
func (s *Set) PlanHeight(w int) int {
	b := s.bounds.Grow(0.03 * max(s.bounds.W(), s.bounds.H()))
	return max(8, min(MaxSide, int(math.Round(float64(w)*b.H()/b.W()))))
}

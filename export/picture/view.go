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
)

// View is one view of a set. Angles are degrees.
type View struct {
	Kind Kind
	// At is the place looked at and Span the width of what is seen there, in
	// millimetres: Close alone. Zero values take a place by the front.
	At   geom.Vec
	Span float64
	// Turn is how far to the right of straight in front the eye stands, Rise
	// how high above the horizon, and Away its distance as a multiple of the
	// one that shows the whole top: Orbit, and Close when Rise is not 0.
	Turn, Rise, Away float64
	// Seed chooses among pictures that differ in their noise alone.
	Seed uint32
}

// camera turns pixels into rays.
type camera struct {
	eye, right, up, fwd v3
	w, h                int
	k                   float64 // width of a pixel at distance 1; in a plan, in mm
	plan                bool
}

const fieldOfView = 24.5 // degrees, upright

// ray is the ray through a place of the picture, in pixels from its upper left
// corner.
func (c *camera) ray(x, y float64) ray {
	a, b := (x-float64(c.w)/2)*c.k, (float64(c.h)/2-y)*c.k
	if c.plan {
		return ray{c.eye.along(c.right, a).along(c.up, b), c.fwd}
	}
	return ray{c.eye, c.fwd.along(c.right, a).along(c.up, b).unit()}
}

// footprint is how wide a pixel is, in mm, at distance t.
func (c *camera) footprint(t float64) float64 {
	if c.plan {
		return c.k
	}
	return c.k * t
}

// project finds the pixel at which a point is seen.
func (c *camera) project(p v3) (x, y float64, ok bool) {
	q := p.sub(c.eye)
	z := q.dot(c.fwd)
	if z <= 1 {
		return 0, 0, false
	}
	s := 1 / c.k
	if !c.plan {
		s /= z
	}
	return float64(c.w)/2 + q.dot(c.right)*s, float64(c.h)/2 - q.dot(c.up)*s, true
}

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
	if v.Kind > Orbit {
		return fmt.Errorf("there is no kind of view %d", v.Kind)
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
	c := camera{w: w, h: h}
	if v.Kind == Top {
		k, m := s.PlanScale(w, h)
		c.plan, c.k = true, k
		c.eye, c.fwd = v3{m.X, m.Y, s.body.t + 1500}, v3{Z: -1}
		c.right, c.up = v3{X: 1}, v3{Y: 1}
		return c
	}
	mid := s.bounds.Centre()
	target := v3{mid.X, mid.Y, s.body.t - 30}
	turn, rise, away := -15.0, 34.0, 1.0
	if s.flip {
		turn = -turn
	}
	switch v.Kind {
	case Orbit:
		turn, rise = v.Turn, max(3, min(88, v.Rise))
		if v.Away > 0 {
			away = max(0.1, min(6, v.Away))
		}
	case Close:
		turn, rise = 0.8*turn, 28
		if v.Rise != 0 {
			turn, rise = v.Turn, max(3, min(88, v.Rise))
		}
	}
	st, ct := math.Sincos(turn * math.Pi / 180)
	sr, cr := math.Sincos(rise * math.Pi / 180)
	back := v3{st * cr, -ct * cr, sr} // from the target to the eye
	c.fwd = back.mul(-1)
	c.right = c.fwd.cross(v3{Z: 1}).unit()
	c.up = c.right.cross(c.fwd)
	half := math.Tan(fieldOfView / 2 * math.Pi / 180)
	c.k = 2 * half / float64(h)
	if v.Kind == Close {
		at, span := v.At, v.Span
		if span <= 0 {
			at, span = s.frontSpot(), 320
		}
		target = v3{at.X, at.Y, s.body.t - 8}
		c.eye = target.along(back, max(60, span/(c.k*float64(w))))
		return c
	}
	// Far enough that every corner of the top and its basins is in sight.
	dist := 0.0
	tx, ty := half*float64(w)/float64(h)*0.90, half*0.90
	for i := range 8 {
		p := v3{s.bounds.Min.X, s.bounds.Min.Y, s.body.t - 90}
		if i&1 > 0 {
			p.X = s.bounds.Max.X
		}
		if i&2 > 0 {
			p.Y = s.bounds.Max.Y
		}
		if i&4 > 0 {
			p.Z = s.body.t + s.height
		}
		q := p.sub(target)
		z := q.dot(back)
		dist = max(dist, max(math.Abs(q.dot(c.right))/tx, math.Abs(q.dot(c.up))/ty)+z)
	}
	c.eye = target.along(back, dist*away)
	return c
}

// frontSpot is a place by the front edge that shows something: an open end of
// a channel, or the front's left third.
func (s *Set) frontSpot() geom.Vec {
	for i := range s.body.channels {
		if c := &s.body.channels[i]; c.falls {
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

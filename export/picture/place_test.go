package picture

import (
	"math"
	"testing"

	"example.org/castwright/model/geom"
)

// A place of the face is found again where a view shows it; the room is no place.
func TestPlace(t *testing.T) {
	d := poured()
	s := built(d, SetOptions{})
	const w, h = 480, 270
	b := s.bounds
	for name, v := range map[string]View{"above": {Kind: Top}, "front": {Kind: Quarter},
		"round": {Kind: Orbit, Turn: 140, Rise: 60, Away: 1}, "close": {Kind: Close, At: geom.Vec{X: b.Min.X + 200, Y: b.Min.Y + 120}}} {
		c, n := s.camera(v, w, h), 0
		for i := range 12 {
			for j := range 8 {
				p := geom.Vec{X: b.Min.X + b.W()*(float64(i)+0.5)/12, Y: b.Min.Y + b.H()*(float64(j)+0.5)/8}
				if s.body.kind(p.X, p.Y) == classMixed {
					continue // not flat face, or none
				}
				x, y, ok := c.project(v3{p.X, p.Y, s.body.t})
				if !ok || x < 0 || y < 0 || x > w || y > h {
					continue
				}
				hit, _ := s.sceneOf(v).hit(c.ray(x, y))
				if math.Abs(hit.p.Z-s.body.t) > 1 {
					continue // something stands before it
				}
				if got, ok := s.Place(v, w, h, x, y); !ok || got.Dist(p) > 0.5 {
					t.Errorf("%s: %v is seen at %.1f, %.1f, where %v (%v) is found", name, p, x, y, got, ok)
				}
				n++
			}
		}
		if n < 5 {
			t.Errorf("%s: only %d places are in sight", name, n)
		}
	}
	if at, ok := s.Place(View{Kind: Top}, w, h, 1, 1); ok {
		t.Errorf("the table is taken for %v", at)
	}
	for _, xy := range [][2]float64{{-1, 5}, {5, 1e9}, {math.NaN(), 5}} {
		if _, ok := s.Place(View{Kind: Top}, w, h, xy[0], xy[1]); ok {
			t.Errorf("%v is a place", xy)
		}
	}
}

// A view that turns sees what the given one saw.
func TestTurning(t *testing.T) {
	s := built(poured(), SetOptions{})
	for _, v := range []View{{Kind: Quarter}, {Kind: Close}, {Kind: Close, At: geom.Vec{X: 300, Y: 200}, Span: 500}} {
		a, b := s.camera(v, 400, 300), s.camera(s.Turning(v), 400, 300)
		if a.eye.sub(b.eye).dot(a.eye.sub(b.eye)) > 1e-12 || a.base.sub(b.base).dot(a.base.sub(b.base)) > 1e-12 {
			t.Errorf("%+v turns from %v, was seen from %v", v, b.eye, a.eye)
		}
	}
	if v := s.Turning(View{Kind: Top}); v.Kind != Orbit || v.Rise != highestRise {
		t.Errorf("straight down turns from %+v", v)
	}
}

// The shapes of pictures; straight down the own one is the top's with its margin.
func TestHeight(t *testing.T) {
	s := built(poured(), SetOptions{})
	for shape, want := range map[Shape]int{Wide: 1080, FourThirds: 1440} {
		if got := s.Height(View{Kind: Quarter}, shape, 1920); got != want {
			t.Errorf("shape %d is %d high, want %d", shape, got, want)
		}
	}
	if got, want := s.Height(View{Kind: Top}, OwnShape, 1000), s.PlanHeight(1000); got != want {
		t.Errorf("straight down %d high, want %d", got, want)
	}
	for _, v := range []View{{Kind: Quarter}, {Kind: Orbit, Turn: 60, Rise: 20, Away: 3}, {Kind: Close}} {
		h := s.Height(v, OwnShape, 1000)
		if h < 400 || h > 1500 {
			t.Errorf("%+v: %d high", v, h)
		}
	}
	// The whole top is in a picture of its own shape.
	v := View{Kind: Quarter}
	h := s.Height(v, OwnShape, 1000)
	c := s.camera(v, 1000, h)
	for _, p := range s.corners() {
		if x, y, ok := c.project(p); !ok || x < 0 || y < 0 || x > 1000 || y > float64(h) {
			t.Errorf("%v lies at %.0f, %.0f of a picture of 1000 x %d", p, x, y, h)
		}
	}
}

// What may be below: legs stand under concrete and clear of what is cut out.
func TestBelow(t *testing.T) {
	d := poured()
	s := built(d, SetOptions{})
	if n := len(s.below(BelowNothing)); n != 0 {
		t.Errorf("nothing has %d triangles", n)
	}
	if len(s.below(BelowCabinet)) == 0 {
		t.Error("the cabinet is missing")
	}
	legs := s.fourLegs(-860)
	if len(legs) == 0 {
		t.Fatal("the legs are missing")
	}
	for i := range legs {
		for _, p := range [...]v3{legs[i].a, legs[i].b, legs[i].c} {
			if s.body.outline.at(p.X, p.Y) > -legInset/2 || s.body.openings.at(p.X, p.Y) < 0 {
				t.Fatalf("a leg stands at %v", p)
			}
		}
	}
	if Build(d, s.solid, SetOptions{Below: BelowLegs}).below(BelowLegs) == nil {
		t.Error("a set with legs has none")
	}
}

package picture

import (
	"context"
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// A window on a view shows what that view shows there: each place of the design lies
// where the view's own camera has it, scaled and shifted (the camera's matrix times
// an affinity of its picture, Hartley and Zisserman, Multiple View Geometry, 6.1).
func TestWindow(t *testing.T) {
	d := design.Design{Outline: edit.Rectangle(1500*units.Millimetre, 550*units.Millimetre), Thickness: 40 * units.Millimetre,
		Finish: design.Finish{Polish: 2}}
	s := Build(d, slab.Resolve(d), SetOptions{})
	const w, h = 800, 500
	for _, v := range []View{{Kind: Quarter}, {Kind: Orbit, Turn: 40, Rise: 20, Away: 1.3}, {Kind: Close}} {
		c := s.camera(v, w, h)
		p := s.Projection(v, w, h)
		win := p.Window(3, -700, 120)
		again := win.camera(w, h)
		for _, q := range []v3{{100, 50, 40}, {1400, 500, 40}, {700, 250, 0}} {
			x, y, _ := c.project(q)
			px, py, ok := p.At(q.X, q.Y, q.Z)
			if !ok || math.Hypot(px-x, py-y) > 1e-6 {
				t.Errorf("%v: %v at (%g, %g), its projection has it at (%g, %g)", v.Kind, q, x, y, px, py)
			}
			if wx, wy, ok := again.project(q); !ok || math.Hypot(wx-(3*x-700), wy-(3*y+120)) > 1e-6 {
				t.Errorf("%v: in the window %v lies at (%g, %g), want (%g, %g)", v.Kind, q, wx, wy, 3*x-700, 3*y+120)
			}
		}
	}
	if _, _, ok := s.Projection(View{Kind: Quarter}, w, h).At(700, -1e5, 4000); ok {
		t.Error("what lies behind the eye is seen")
	}
}

// A part of the plan is to the scale that it says.
func TestPartOfThePlan(t *testing.T) {
	d := design.Design{Outline: edit.Rectangle(1500*units.Millimetre, 550*units.Millimetre), Thickness: 40 * units.Millimetre,
		Finish: design.Finish{Polish: 2}}
	s := Build(d, slab.Resolve(d), SetOptions{})
	v := View{Kind: Top, At: geom.Vec{X: 1500, Y: 0}, Span: 300}
	c := s.camera(v, 600, 400)
	if x, y, _ := c.project(v3{1500, 0, 40}); math.Hypot(x-300, y-200) > 1e-9 {
		t.Errorf("the corner lies at (%g, %g), want the middle", x, y)
	}
	if x, y, _ := c.project(v3{1400, 50, 40}); math.Hypot(x-100, y-100) > 1e-9 {
		t.Errorf("100 mm from it lie at (%g, %g)", x, y)
	}
	img, err := Render(context.Background(), s, v, First, 60, 40, nil)
	if err != nil {
		t.Fatal(err)
	}
	// Concrete in the upper left quarter alone.
	in, out := img.NRGBAAt(15, 10), img.NRGBAAt(45, 30)
	if in == out {
		t.Errorf("top and floor look alike: %v", in)
	}
}

package view_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/model/geom"
	"example.org/castwright/ui/view"
)

const tol = 1e-9

func near(t *testing.T, what string, got, want geom.Vec) {
	t.Helper()
	if got.Dist(want) > tol*(1+want.Norm()) {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

func TestPointAndDesignAreInverse(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range 200 {
		v := view.New(800, 600).Zoom(geom.Vec{X: 100, Y: 200}, math.Exp(r.NormFloat64()))
		v = v.Pan(geom.Vec{X: 300 * r.NormFloat64(), Y: 300 * r.NormFloat64()})
		p := geom.Vec{X: 2000 * r.NormFloat64(), Y: 2000 * r.NormFloat64()}
		near(t, "there and back", v.Design(v.Point(p)), p)
	}
}

// The picture runs down where the design runs back: a square's back left corner
// is above its front left one.
func TestPictureRunsDown(t *testing.T) {
	v := view.New(400, 400)
	front, back := v.Point(geom.Vec{}), v.Point(geom.Vec{Y: 100})
	if back.Y >= front.Y || back.X != front.X {
		t.Errorf("front %v, back %v: want the back above the front", front, back)
	}
}

func TestZoomHoldsThePlace(t *testing.T) {
	v := view.New(800, 600).Pan(geom.Vec{X: -37, Y: 11})
	at := geom.Vec{X: 123, Y: 456}
	p := v.Design(at)
	for _, f := range []float64{1.25, 0.2, 3, 1e9, 1e-12} {
		near(t, "place under the cursor", v.Zoom(at, f).Design(at), p)
	}
}

func TestScaleStaysInBounds(t *testing.T) {
	v := view.New(800, 600)
	for range 200 {
		v = v.Zoom(geom.Vec{X: 10, Y: 10}, 2)
	}
	if v.Scale != view.MaxScale {
		t.Errorf("zoomed in: scale %g, want %g", v.Scale, float64(view.MaxScale))
	}
	for range 200 {
		v = v.Zoom(geom.Vec{X: 10, Y: 10}, 0.5)
	}
	if v.Scale != view.MinScale {
		t.Errorf("zoomed out: scale %g, want %g", v.Scale, float64(view.MinScale))
	}
}

func TestBadNumbersChangeNothing(t *testing.T) {
	v := view.New(800, 600)
	nan, inf := math.NaN(), math.Inf(1)
	for name, got := range map[string]view.View{
		"zoom NaN":       v.Zoom(geom.Vec{}, nan),
		"zoom Inf":       v.Zoom(geom.Vec{}, inf),
		"zoom 0":         v.Zoom(geom.Vec{}, 0),
		"zoom negative":  v.Zoom(geom.Vec{}, -2),
		"zoom at NaN":    v.Zoom(geom.Vec{X: nan}, 2),
		"pan NaN":        v.Pan(geom.Vec{X: nan}),
		"pan Inf":        v.Pan(geom.Vec{Y: inf}),
		"fit nothing":    v.Fit(geom.EmptyBox(), 20),
		"fit NaN":        v.Fit(geom.Box{Max: geom.Vec{X: nan, Y: 1}}, 20),
		"show NaN":       v.Show(geom.Vec{X: nan}, 20),
		"show in sight":  v.Show(geom.Vec{X: 10, Y: 10}, 20),
		"resize to same": v.Resize(800, 600),
	} {
		if got != v {
			t.Errorf("%s: got %+v, want %+v", name, got, v)
		}
	}
	for _, w := range []float64{nan, -1, 0, inf} {
		if got := view.New(w, w); !(got.W >= 1) || got.W > 1<<15 {
			t.Errorf("New(%g): width %g", w, got.W)
		}
	}
}

func TestPanFarStaysFinite(t *testing.T) {
	v := view.New(800, 600)
	for range 100 {
		v = v.Pan(geom.Vec{X: 1e300, Y: -1e300})
	}
	if !v.Origin.Finite() || v.Origin.Norm() > 1e8 {
		t.Errorf("origin %v", v.Origin)
	}
}

func TestFit(t *testing.T) {
	for _, tt := range []struct {
		name string
		box  geom.Box
	}{
		{"wide", geom.Box{Min: geom.Vec{X: -100}, Max: geom.Vec{X: 1900, Y: 500}}},
		{"deep", geom.Box{Min: geom.Vec{}, Max: geom.Vec{X: 400, Y: 2500}}},
		{"a point", geom.Box{Min: geom.Vec{X: 5, Y: 5}, Max: geom.Vec{X: 5, Y: 5}}},
	} {
		v := view.New(800, 600).Fit(tt.box, 40)
		near(t, tt.name+": middle", v.Point(tt.box.Centre()), geom.Vec{X: 400, Y: 300})
		lo, hi := v.Point(tt.box.Min), v.Point(tt.box.Max)
		if lo.X < 40-tol || hi.X > 760+tol || hi.Y < 40-tol || lo.Y > 560+tol {
			t.Errorf("%s: box lies from %v to %v, want 40 points of margin", tt.name, lo, hi)
		}
	}
}

func TestShowBringsIntoSight(t *testing.T) {
	v := view.New(800, 600)
	p := geom.Vec{X: 5000, Y: -4000}
	near(t, "shown place", v.Show(p, 50).Point(p), geom.Vec{X: 750, Y: 550})
}

func TestResizeKeepsTheMiddle(t *testing.T) {
	v := view.New(800, 600).Pan(geom.Vec{X: 17, Y: 4})
	p := v.Design(geom.Vec{X: 400, Y: 300})
	near(t, "middle", v.Resize(1000, 400).Design(geom.Vec{X: 500, Y: 200}), p)
}

func TestPixels(t *testing.T) {
	v := view.New(800, 600).Pan(geom.Vec{X: 17, Y: 4}).Zoom(geom.Vec{}, 1.7)
	p := geom.Vec{X: 31, Y: -12}
	near(t, "at ratio 1.3", v.Pixels(1.3).Point(p), v.Point(p).Mul(1.3))
	if got := v.Length(v.Scale * 25.4); math.Abs(got-25.4) > tol {
		t.Errorf("an inch of points is %g mm", got)
	}
	if got := view.New(100, 100).Actual().Scale * 25.4; math.Abs(got-96) > tol {
		t.Errorf("actual size has %g points to the inch, want 96", got)
	}
}

// Room that differs from edge to edge, by hand: 400 x 200 mm in 500 x 300 points with 60
// free at the left and 40 at the right has a point to the millimetre, and lies in the
// middle of what is left.
func TestFitWithin(t *testing.T) {
	v := view.New(500, 300).FitWithin(geom.Box{Max: geom.Vec{X: 400, Y: 200}}, view.Edges{Left: 60, Right: 40, Top: 30, Bottom: 10})
	if v.Scale != 1 || v.Point(geom.Vec{}) != (geom.Vec{X: 60, Y: 260}) {
		t.Errorf("scale %g, origin at %v", v.Scale, v.Point(geom.Vec{}))
	}
}

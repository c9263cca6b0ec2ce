package room_test

import (
	"image/color"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/export/room"
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/pose"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// A place that is kept as millionths of the picture comes back within half of one,
// and stays what it is when it is kept again.
func TestSpotAt(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range 2000 {
		w, h := 100+r.IntN(8000), 100+r.IntN(8000)
		p := geom.Vec{X: r.Float64() * float64(w), Y: r.Float64() * float64(h)}
		s := room.SpotAt(p, w, h)
		q := room.Pixel(s, w, h)
		if math.Abs(p.X-q.X) > 0.51e-6*float64(w) || math.Abs(p.Y-q.Y) > 0.51e-6*float64(h) || room.SpotAt(q, w, h) != s {
			t.Fatalf("%v of %d x %d: %v, back %v", p, w, h, s, q)
		}
	}
	for p, want := range map[geom.Vec]design.Spot{
		{X: -5, Y: 3}: {X: 0, Y: 30_000}, {X: 900, Y: 1e9}: {X: 1_000_000, Y: 1_000_000}, {X: math.NaN(), Y: 100}: {X: 0, Y: 1_000_000},
	} {
		if got := room.SpotAt(p, 100, 100); got != want {
			t.Errorf("%v: %v, want %v", p, got, want)
		}
	}
}

// A job's room says what an order by hand says.
func TestOrderOf(t *testing.T) {
	s := slab.Resolve(laminate())
	photo := even(small.w, small.h, color.RGBA{120, 120, 120, 255})
	r := design.Room{Width: mm(oldW), Depth: mm(oldD), Old: mm(20), At: design.Point{X: mm(15), Y: mm(-4)}, Turn: 90 * units.Degree,
		Lit: design.RoomLight{Brighter: units.Whole / 2, Warmer: -units.Whole, From: design.LightFromAbove}}
	for i, c := range small.corners() {
		r.Corners[i] = room.SpotAt(c, small.w, small.h)
	}
	o := room.OrderOf(r, photo, 26, s)
	if o.W != oldW || o.D != oldD || o.Paper || o.Focal35 != 26 || o.Place != (pose.Place{X: 15, Y: -4, Turn: math.Pi / 2, Rise: 10}) ||
		o.Light != (room.Light{Brighter: 0.5, Warmer: -1, From: room.FromAbove}) {
		t.Errorf("%+v", o)
	}
	for i, c := range small.corners() {
		if d := o.Corners[i].Dist(c); d > 0.001 {
			t.Errorf("corner %d is %g pixels off", i, d)
		}
	}
	// Beside a sheet the new face lies where the old one did, unless it is known.
	r.Marks, r.Old = design.MarkedSheet, 0
	if o := room.OrderOf(r, photo, 0, s); !o.Paper || o.Place.Rise != 0 {
		t.Errorf("on paper: %+v", o)
	}
}

// The wire lies where the truth's own camera sees the edges of the same top.
func TestWireOf(t *testing.T) {
	s := slab.Resolve(laminate())
	o := room.Order{Photo: even(standing.w, standing.h, color.RGBA{A: 255}), Corners: standing.corners(), W: oldW, D: oldD}
	w, err := room.WireOf(s, o)
	if err != nil {
		t.Fatal(err)
	}
	off := func(p geom.Vec, x, y, z float64) float64 { return p.Dist(standing.see(x, y, z)) }
	for _, c := range [][2]float64{{0, 0}, {oldW, 0}, {oldW, oldD}, {0, oldD}} {
		best := math.Inf(1)
		for _, p := range w.Face {
			best = min(best, off(p, c[0], c[1], oldT))
		}
		if best > 0.01 { // the corners are met exactly
			t.Errorf("no corner of the wire near %v: %g pixels", c, best)
		}
	}
	// The eye stands in front of the top and over it: of the sides only the front is
	// seen, whose foot runs from one end to the other, with an edge up at each.
	if len(w.Foot) != 1 || len(w.Upright) != 2 {
		t.Fatalf("%d runs of the foot, %d edges up", len(w.Foot), len(w.Upright))
	}
	run := w.Foot[0]
	if a, b := off(run[0], 0, 0, 0), off(run[len(run)-1], oldW, 0, 0); a > 1 || b > 1 { // by a fitted focal length
		t.Errorf("the foot's ends are %g and %g pixels off", a, b)
	}
	if _, err := room.WireOf(s, room.Order{Photo: o.Photo, W: oldW, D: oldD}); err == nil {
		t.Error("corners on one place have a wire")
	}
	// Behind the camera nothing is drawn, and nothing hangs.
	far := o
	far.Place = pose.Place{X: 0, Y: -4000}
	if w, err := room.WireOf(s, far); err != nil || w.Face != nil && len(w.Face) != len(s.Outline) {
		t.Error(w, err)
	}
}

package picture

import (
	"math"
	"testing"

	"example.org/castwright/model/geom"
)

// A disc's distance is known everywhere: |p| - r.
func TestFieldOfADisc(t *testing.T) {
	var l geom.Loop
	for i := range 720 {
		l = append(l, geom.Vec{X: 200}.Turn(float64(i)*math.Pi/360))
	}
	f := newField([]geom.Loop{l}, l.Bounds().Grow(40), 1)
	worst, tilt := 0.0, 0.0
	for y := -230.0; y < 230; y += 3.7 {
		for x := -230.0; x < 230; x += 3.1 {
			p := geom.Vec{X: x, Y: y}
			if p.Norm() < 20 {
				continue
			}
			worst = math.Max(worst, math.Abs(f.at(x, y)-(p.Norm()-200)))
			g, u := f.slope(x, y), p.Unit()
			tilt = math.Max(tilt, math.Abs(math.Atan2(g.Cross(u), g.Dot(u))))
		}
	}
	if worst > 0.03 || tilt > 0.7*math.Pi/180 {
		t.Errorf("distance off by up to %.3f mm, gradient by %.2f degrees", worst, tilt*180/math.Pi)
	}
}

// Places beyond the grid are taken at its rim, however far: a ray that runs level but
// for a rounding comes down where no whole number reaches.
func TestFieldFarAway(t *testing.T) {
	l := geom.Loop{{X: -100, Y: -100}, {X: 100, Y: -100}, {X: 100, Y: 100}, {X: -100, Y: 100}}
	f := newField([]geom.Loop{l}, l.Bounds().Grow(20), 1)
	for _, c := range []struct{ x, y, nearX, nearY float64 }{
		{1e4, 0, 120, 0}, {1e19, 0, 120, 0}, {0, -1e300, 0, -120}, {math.Inf(1), math.Inf(-1), 120, -120},
		{-3e18, 7e18, -120, 120}, {math.NaN(), 0, -120, 0},
	} {
		if got, want := f.at(c.x, c.y), f.at(c.nearX, c.nearY); got != want {
			t.Errorf("distance at %g, %g is %g, want %g as at the rim", c.x, c.y, got, want)
		}
	}
}

// A level ray above the top meets nothing of it. The one given here was met with
// while a picture was traced.
func TestLevelRay(t *testing.T) {
	b := built(poured(), SetOptions{}).sceneOf(View{Kind: Quarter}).body
	for _, z := range []float64{-5.7e-17, 5.7e-17, -1e-300, 0} {
		if at, ok := b.hit(ray{v3{0.05, -677.9, 916.5}, v3{0.3372, 0.9375, z}}, far, 0.004); ok {
			t.Errorf("down by %g it is met at %g", z, at)
		}
	}
}

// A square with a square hole: inside, in the hole and outside.
func TestFieldSigns(t *testing.T) {
	sq := func(h float64) geom.Loop {
		return geom.Loop{{X: -h, Y: -h}, {X: h, Y: -h}, {X: h, Y: h}, {X: -h, Y: h}}
	}
	f := newField([]geom.Loop{sq(100), sq(30).Reversed()}, sq(100).Bounds().Grow(20), 1)
	for _, c := range []struct{ x, want float64 }{{0, 30}, {50, -20}, {90, -10}, {115, 15}, {31, -1}} {
		if got := f.at(c.x, 0); math.Abs(got-c.want) > 0.02 {
			t.Errorf("distance at %g is %.3f, want %g", c.x, got, c.want)
		}
	}
	if empty := newField(nil, sq(10).Bounds(), 1); empty.at(0, 0) < 1000 {
		t.Error("an empty region is near")
	}
}

func BenchmarkField(b *testing.B) {
	var l geom.Loop
	for i := range 400 {
		t := float64(i) * math.Pi / 200
		l = append(l, geom.Vec{X: 625 * math.Cos(t), Y: 280 * math.Sin(t)})
	}
	box := l.Bounds().Grow(40)
	b.ReportAllocs()
	for b.Loop() {
		newField([]geom.Loop{l}, box, 1)
	}
}

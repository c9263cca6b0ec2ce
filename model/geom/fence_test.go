package geom_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/castwright/model/geom"
)

// Everything a fence is asked against the plain search over all its edges.
func TestFenceAgainstSearch(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 1))
	for range 60 {
		a := star(r, geom.Vec{X: 100, Y: 50}, 100, 3+r.IntN(120))
		b := star(r, geom.Vec{X: 500 * r.Float64(), Y: 50}, 60, 3+r.IntN(80))
		f, g := geom.NewFence(a), geom.NewFence(b)
		for range 50 {
			p := geom.Vec{X: 300*r.Float64() - 50, Y: 300*r.Float64() - 100}
			if f.Contains(p) != a.Contains(p) {
				t.Fatalf("inside: %v", p)
			}
			want := math.Inf(1)
			for i := range a {
				want = math.Min(want, geom.NearestOnSegment(p, a[i], a[(i+1)%len(a)]).Dist(p))
			}
			q, d := f.Nearest(p)
			near(t, "nearest", d, want, 1e-12)
			near(t, "nearest point", q.Dist(p), d, 1e-12)
			if f.Near(p, d*0.999) || !f.Near(p, d*1.001) {
				t.Fatalf("near is wrong about %g", d)
			}

			u := geom.Vec{X: 1}.Turn(6 * r.Float64())
			var met []float64
			for i := range a {
				x, y := u.Cross(a[i].Sub(p)), u.Cross(a[(i+1)%len(a)].Sub(p))
				if (x <= 0) != (y <= 0) {
					if s := a[i].Lerp(a[(i+1)%len(a)], x/(x-y)).Sub(p).Dot(u); s >= 0 {
						met = append(met, s)
					}
				}
			}
			slices.Sort(met)
			got := f.Ray(p, u)
			if len(got) != len(met) {
				t.Fatalf("ray from %v met %v, want %v", p, got, met)
			}
			for i := range met {
				near(t, "ray", got[i], met[i], 1e-9)
			}
		}
		want := math.Inf(1)
		for _, x := range [][2]geom.Loop{{a, b}, {b, a}} {
			for _, p := range x[0] {
				for i := range x[1] {
					want = math.Min(want, geom.NearestOnSegment(p, x[1][i], x[1][(i+1)%len(x[1])]).Dist(p))
				}
			}
		}
		p, q, d := f.Clearance(g)
		if d > 0 {
			near(t, "clearance", d, want, 1e-12)
		} else {
			want = 0
		}
		near(t, "clearance's ends", p.Dist(q), d, 1e-12)
		if f.Within(g, want+1e-6) != true || want > 1e-6 && f.Within(g, want-1e-6) {
			t.Fatalf("within is wrong about %g", want)
		}
	}
}

func TestFenceEmpty(t *testing.T) {
	f := geom.NewFence()
	if f.Contains(geom.Vec{}) || f.Ray(geom.Vec{}, geom.Vec{X: 1}) != nil {
		t.Error("an empty fence holds something")
	}
	if _, d := f.Nearest(geom.Vec{}); !math.IsInf(d, 1) {
		t.Error("an empty fence is near")
	}
	if _, _, d := f.Clearance(geom.NewFence(geom.Loop{{}, {X: 1}, {Y: 1}})); !math.IsInf(d, 1) {
		t.Error("an empty fence is near another")
	}
	nan := math.NaN()
	geom.NewFence(geom.Loop{{X: nan}, {X: 1}, {Y: math.Inf(1)}}).Nearest(geom.Vec{X: nan})
}

func TestNearestOnLine(t *testing.T) {
	line := []geom.Vec{{}, {X: 10}, {X: 10, Y: 10}}
	q, d, along := geom.NearestOnLine(geom.Vec{X: 13, Y: 4}, line)
	near(t, "point", q.Dist(geom.Vec{X: 10, Y: 4}), 0, 1e-12)
	near(t, "distance", d, 3, 1e-12)
	near(t, "along", along, 14, 1e-12)
}

// A loop's own crossing is found at its place; loops that only touch have none.
func TestCrossing(t *testing.T) {
	var s geom.Sweep
	for _, c := range []struct {
		name    string
		loop    geom.Loop
		crosses bool
		at      geom.Vec
	}{
		{"square", geom.Loop{{}, {X: 10}, {X: 10, Y: 10}, {Y: 10}}, false, geom.Vec{}},
		{"bow tie", geom.Loop{{}, {X: 10, Y: 10}, {X: 10}, {Y: 10}}, true, geom.Vec{X: 5, Y: 5}},
		{"curl outward", geom.Loop{{}, {X: 20}, {X: 20, Y: 10}, {X: 8, Y: 10}, {X: 8, Y: -5}, {X: 12, Y: -5}, {X: 12, Y: 9}, {X: 4, Y: 9}, {Y: 10}}, true, geom.Vec{X: 12}},
		{"pinched", geom.Loop{{}, {X: 10}, {X: 5, Y: 5}, {X: 10, Y: 10}, {Y: 10}, {X: 5, Y: 5}}, false, geom.Vec{}},
		{"spike", geom.Loop{{}, {X: 10}, {X: 10, Y: 10}, {X: 15, Y: 10}, {X: 10, Y: 10}, {Y: 10}}, false, geom.Vec{}},
		{"clockwise", geom.Loop{{}, {Y: 10}, {X: 10, Y: 10}, {X: 10}}, false, geom.Vec{}},
	} {
		for _, turn := range []float64{0, 0.5, math.Pi / 2} {
			l := make(geom.Loop, len(c.loop))
			for i, p := range c.loop {
				l[i] = p.Turn(turn)
			}
			at, crosses := s.Crossing(l)
			if crosses != c.crosses {
				t.Errorf("%s turned %g: crossing %v at %v", c.name, turn, crosses, at)
			} else if crosses && c.name == "bow tie" {
				near(t, c.name, at.Dist(c.at.Turn(turn)), 0, 1e-9)
			}
		}
	}
	r := rand.New(rand.NewPCG(7, 1))
	for i := range 100 {
		l := star(r, geom.Vec{}, 100, 3+r.IntN(200))
		if at, crosses := s.Crossing(l); crosses {
			t.Fatalf("star %d crosses itself at %v", i, at)
		}
	}
}

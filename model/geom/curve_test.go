package geom_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/model/geom"
)

func randomCurves(r *rand.Rand) map[string]geom.Curve {
	p := func() geom.Vec { return geom.Vec{X: 400 * r.Float64(), Y: 300 * r.Float64()} }
	a, b := p(), p()
	d := b.Sub(a)
	side := d.Left().Mul(0.5 * (r.Float64() - 0.5))
	e := geom.EllipseArc{Centre: p(), A: 50 + 200*r.Float64(), B: 40 + 100*r.Float64(), Rot: 6 * r.Float64(),
		Start: 6 * r.Float64(), Sweep: 6 * (r.Float64() - 0.5)}
	return map[string]geom.Curve{
		"line":     geom.Line{A: a, B: b},
		"arc":      geom.ArcByRise(a, b, (r.Float64()-0.4)*a.Dist(b)),
		"circle":   geom.Circle(a, 10+100*r.Float64()),
		"cubic":    geom.Cubic{P0: a, P1: a.Add(d.Mul(0.3)).Add(side), P2: a.Add(d.Mul(0.6)).Sub(side), P3: b},
		"ellipse":  e,
		"parallel": geom.Parallel{Base: e, D: 12 * (r.Float64() - 0.5)},
	}
}

// Derivatives, curvature, parts, reversal and motion of every kind agree with
// what At says, by differences.
func TestCurvesAgreeWithThemselves(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range 50 {
		for name, c := range randomCurves(r) {
			s := 0.05 + 0.9*r.Float64()
			const h = 1e-5
			diff := c.At(s + h).Sub(c.At(s - h)).Mul(1 / (2 * h))
			near(t, name+" derivative", c.Deriv(s).Dist(diff), 0, 1e-5*(1+diff.Norm()))
			u, v := geom.Tangent(c, s-h), geom.Tangent(c, s+h)
			turn := math.Atan2(u.Cross(v), u.Dot(v)) / (2 * h * c.Deriv(s).Norm())
			near(t, name+" curvature", c.Curvature(s), turn, 1e-6)
			a, b := 0.3*r.Float64(), 0.5+0.5*r.Float64()
			near(t, name+" part", c.Sub(a, b).At(s).Dist(c.At(a+(b-a)*s)), 0, 1e-9)
			near(t, name+" reversed", c.Reversed().At(s).Dist(c.At(1-s)), 0, 1e-9)
			near(t, name+" reversed curvature", c.Reversed().Curvature(1-s), -c.Curvature(s), 1e-12)
			d := geom.Vec{X: 5, Y: -7}
			near(t, name+" moved", c.Moved(0.7, d).At(s).Dist(c.At(s).Turn(0.7).Add(d)), 0, 1e-9)
			near(t, name+" lengths", c.Sub(0, s).Length()+c.Sub(s, 1).Length(), c.Length(), 1e-7)
			near(t, name+" at length", geom.Partial(c, geom.AtLength(c, 0.4*c.Length())), 0.4*c.Length(), 1e-7)
			box := c.Bounds().Grow(1e-9)
			for k := range 100 {
				if p := c.At(float64(k) / 99); !box.Contains(p) {
					t.Fatalf("%s: %v outside its box %v", name, p, box)
				}
			}
		}
	}
}

// Perimeters of ellipses: 4 a E(e), from the handbook's table.
func TestEllipseLength(t *testing.T) {
	for _, c := range []struct{ a, b, want float64 }{
		{8.5, 7, 48.8087624311}, {10, 5, 48.4422411027}, {10, 2, 42.0200890794}, {5, 5, 10 * math.Pi},
	} {
		e := geom.EllipseArc{A: c.a, B: c.b, Sweep: 2 * math.Pi}
		near(t, fmt.Sprint(c), e.Length(), c.want, 1e-9)
		// The parallel curve of a convex one is longer by 2 pi d (Steiner).
		near(t, fmt.Sprint(c, " parallel"), geom.Parallel{Base: e, D: -1}.Length(), c.want+2*math.Pi, 1e-8)
	}
}

// Arcs by their rise: the handbook's segments of a circle of radius 10, and a
// bulge of 0.5 over a chord of 10 (DXF's tan of a quarter of the angle).
func TestArcByRise(t *testing.T) {
	for _, c := range []struct{ degrees, chord, rise, radius float64 }{
		{60, 10, 1.339746, 10}, {90, 14.142136, 2.928932, 10}, {120, 17.320508, 5, 10}, {180, 20, 10, 10},
		{106.260205, 10, 2.5, 6.25}, {270, 14.142136, 17.071068, 10},
	} {
		for _, sign := range []float64{1, -1} {
			a, b := geom.Vec{X: 3, Y: 4}, geom.Vec{X: 3 + c.chord, Y: 4}
			arc := geom.ArcByRise(a, b, sign*c.rise).(geom.Arc)
			near(t, "radius", arc.Radius, c.radius, 1e-6)
			near(t, "angle", arc.Sweep*180/math.Pi, sign*c.degrees, 1e-5)
			near(t, "start", arc.At(0).Dist(a), 0, 1e-9)
			near(t, "end", arc.At(1).Dist(b), 0, 1e-9)
			// To the right of travel along +x is down.
			near(t, "middle", arc.At(0.5).Dist(geom.Vec{X: 3 + c.chord/2, Y: 4 - sign*c.rise}), 0, 1e-9)
		}
	}
	if _, ok := geom.ArcByRise(geom.Vec{}, geom.Vec{X: 9}, 0).(geom.Line); !ok {
		t.Error("no rise is no line")
	}
}

// exactBulge is the area between a curve and its chord by Simpson's rule.
func exactBulge(c geom.Curve) float64 {
	sum := 0.0
	p0 := c.At(0)
	const n = 4000
	for i := 0; i <= n; i++ {
		s := float64(i) / n
		w := float64(2 + 2*(i%2))
		if i == 0 || i == n {
			w = 1
		}
		sum += w * c.At(s).Sub(p0).Cross(c.Deriv(s)) / 2
	}
	return sum / (3 * n)
}

// A flattened curve has the curve's area, its ends, and strays by no more than
// the tolerance; so has the parallel polyline that its offsets define.
func TestFlattenKeepsArea(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 1))
	const tol = 0.01
	for i := range 12 {
		for name, c := range randomCurves(r) {
			vs := geom.Flatten(nil, c, tol)
			var l geom.Loop
			for _, v := range vs {
				l = append(l, v.P)
			}
			name = fmt.Sprint(name, " ", i)
			near(t, name+" start", l[0].Dist(c.At(0)), 0, 1e-9)
			near(t, name+" end", l[len(l)-1].Dist(c.At(1)), 0, 1e-9)
			// Neighbours that both stand off by e share e² times the turn.
			near(t, name+" area", l.Area(), exactBulge(c), 3e-4)
			fine := geom.FlattenCoarsely(nil, c, 1e-6, geom.MaxSteps)
			var line []geom.Vec
			for _, v := range fine {
				line = append(line, v.P)
			}
			for k := 1; k < len(l); k++ {
				for _, p := range []geom.Vec{l[k-1], l[k].Lerp(l[k-1], 0.5)} {
					if _, d, _ := geom.NearestOnLine(p, line); d > 1.6*tol {
						t.Errorf("%s: %d of %d strays by %g", name, k, len(l), d)
					}
				}
			}
		}
	}
}

func TestFlattenedParallel(t *testing.T) {
	for _, radius := range []float64{3, 20, 100, 700} {
		for _, sweep := range []float64{0.3, math.Pi / 2, -math.Pi / 2, 2, math.Pi} {
			for _, share := range []float64{0.1, 0.5, -0.8, 0.95} {
				arc := geom.Arc{Centre: geom.Vec{X: 50, Y: 20}, Radius: radius, Start: 0.4, Sweep: sweep}
				d := share * radius
				moved := geom.Loop{arc.Centre}
				for _, v := range geom.Flatten(nil, arc, 0.01) {
					moved = append(moved, v.P.Add(v.Off.Mul(d)))
				}
				r := radius - d*math.Copysign(1, sweep)
				near(t, fmt.Sprint(radius, sweep, share), moved.Area(), r*r*sweep/2, 1e-9*radius*radius)
			}
		}
	}
}

// Fillets: the arc touches both curves, with their directions, and its centre is
// as far from both as its radius.
func TestFillet(t *testing.T) {
	// Between straight edges the tangent points lie r tan(turn/2) from the corner.
	a, b := geom.Line{A: geom.Vec{X: -100}, B: geom.Vec{}}, geom.Line{A: geom.Vec{}, B: geom.Vec{X: 60, Y: 80}}
	ta, tb, arc, ok := geom.Fillet(a, b, 20)
	turn := math.Atan2(80, 60)
	if !ok {
		t.Fatal("no fillet")
	}
	near(t, "before", (1-ta)*100, 20*math.Tan(turn/2), 1e-9)
	near(t, "after", tb*100, 20*math.Tan(turn/2), 1e-9)
	near(t, "sweep", arc.Sweep, turn, 1e-12)
	if _, _, _, ok := geom.Fillet(a, b, 250); ok {
		t.Error("a radius too large was taken")
	}
	if _, _, _, ok := geom.Fillet(a, geom.Line{B: geom.Vec{X: 50}}, 5); ok {
		t.Error("a straight corner was rounded")
	}
	r := rand.New(rand.NewPCG(3, 1))
	found := 0
	for i := range 400 {
		p := geom.Vec{X: 10, Y: 20}
		from := p.Add(geom.Vec{X: -200}.Turn(r.Float64()))
		to := p.Add(geom.Vec{X: 150}.Turn(2 * math.Pi * r.Float64()))
		curve := func(a, b geom.Vec) geom.Curve {
			d := b.Sub(a)
			switch r.IntN(3) {
			case 0:
				return geom.Line{A: a, B: b}
			case 1:
				return geom.ArcByRise(a, b, d.Norm()*0.4*(r.Float64()-0.5))
			}
			return geom.Cubic{P0: a, P1: a.Lerp(b, 0.3).Add(d.Left().Mul(0.4 * (r.Float64() - 0.5))),
				P2: a.Lerp(b, 0.7).Add(d.Left().Mul(0.4 * (r.Float64() - 0.5))), P3: b}
		}
		a, b := curve(from, p), curve(p, to)
		radius := 2 + 15*r.Float64()
		ta, tb, arc, ok := geom.Fillet(a, b, radius)
		if !ok {
			continue
		}
		found++
		name := fmt.Sprint("corner ", i)
		near(t, name+" leaves a", arc.At(0).Dist(a.At(ta)), 0, 1e-7)
		near(t, name+" joins b", arc.At(1).Dist(b.At(tb)), 0, 1e-7)
		near(t, name+" along a", geom.Tangent(arc, 0).Dist(geom.Tangent(a, ta)), 0, 1e-7)
		near(t, name+" along b", geom.Tangent(arc, 1).Dist(geom.Tangent(b, tb)), 0, 1e-7)
		if ta < 0 || tb > 1 || math.Abs(arc.Sweep) > math.Pi {
			t.Errorf("%s: from %g to %g, sweep %g", name, ta, tb, arc.Sweep)
		}
	}
	if found < 300 {
		t.Errorf("only %d of 400 corners were rounded", found)
	}
}

func TestChamfer(t *testing.T) {
	a := geom.ArcByRise(geom.Vec{X: -100, Y: 30}, geom.Vec{}, 12)
	b := geom.Cubic{P1: geom.Vec{X: 10, Y: 40}, P2: geom.Vec{X: 30, Y: 60}, P3: geom.Vec{X: 20, Y: 120}}
	ta, tb, cut, ok := geom.Chamfer(a, b, 25)
	if !ok {
		t.Fatal("no chamfer")
	}
	near(t, "before", a.Sub(ta, 1).Length(), 25, 1e-9)
	near(t, "after", b.Sub(0, tb).Length(), 25, 1e-9)
	near(t, "from", cut.A.Dist(a.At(ta)), 0, 0)
	near(t, "to", cut.B.Dist(b.At(tb)), 0, 0)
	if _, _, _, ok := geom.Chamfer(a, b, 500); ok {
		t.Error("a chamfer longer than its edges was taken")
	}
}

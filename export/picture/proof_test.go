package picture

import (
	"fmt"
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
)

// Under an even sky of radiance 1 nothing looks brighter than 1, by the first
// law of thermodynamics: whole tops with stone, glass, resin, glaze, metal and
// wood, from all sides, by both methods. The quick one is held to a hundredth in
// each pixel, the path tracer on the mean of each picture and of each material.
func TestNothingOutshinesTheSky(t *testing.T) {
	const w, h = 64, 40
	for i, d := range []design.Design{glassy(), terrazzo(), island()} {
		s := built(d, SetOptions{Draft: true})
		g := s.room()
		g.planes = nil
		g.rig = rig{low: 1, top: 1}
		for _, v := range []View{{Kind: Quarter}, {Kind: Close}, {Kind: Orbit, Turn: 70, Rise: 12}} {
			c := s.camera(v, w, h)
			k := shotOver(t, g, c)
			most := map[materialID]float64{}
			sums, ns := map[materialID]float64{}, map[materialID]float64{}
			for y := range h {
				for x := range w {
					rnd := source{seed: hash4(uint32(x), uint32(y), 1, 1)}
					a := k.pixel(float64(x)+0.5, float64(y)+0.5, &rnd)
					most[a.m] = max(most[a.m], a.c.most())
					for n := range 8 {
						rnd := source{seed: hash4(uint32(x), uint32(y), uint32(n), 77)}
						sums[a.m] += g.traced(c.ray(float64(x)+0.5, float64(y)+0.5), c.k, false, &rnd).X
						ns[a.m]++
					}
				}
			}
			for m, x := range most {
				if x > 1.01 {
					t.Errorf("design %d, view %d: material %d shines with %.3f under a sky of 1", i, v.Kind, m, x)
				}
				if mean := sums[m] / ns[m]; mean > 1.02 {
					t.Errorf("design %d, view %d: material %d sends out %.3f of the light on the mean", i, v.Kind, m, mean)
				}
			}
		}
	}
}

// shotOver is a picture of a scene with its light traced.
func shotOver(t *testing.T, g *scene, c camera) *shot {
	t.Helper()
	p := &pool{ctx: t.Context(), workers: 2}
	l, err := g.trace(p, &c, 2, 8, 0)
	if err == nil {
		err = l.filtered(p)
	}
	if err == nil {
		err = g.refined(p, l, &c, 8, 0)
	}
	if err == nil {
		err = l.filteredFine(g, p)
	}
	if err != nil {
		t.Fatal(err)
	}
	return &shot{s: g, c: c, l: l, cover: g.mesh.cover(&c), mirrors: 8}
}

// What falls on a place in the open by gather is what the closed forms say, for
// any normal and coat: the mean over many directions of the studio itself, with
// its window and the coat's pass, drawn by the cosine.
func TestOpenLight(t *testing.T) {
	g := &scene{mesh: newThings(0), rig: rig{low: 0.3, top: 0.7, tilt: 0.22, glow: 2.4}}
	for _, n := range []v3{{Z: 1}, {Y: -1}, {X: 1}, v3{-0.35, -0.9, 0.27}.unit(), v3{0.5, -0.3, -0.6}.unit()} {
		for _, a := range []float64{-1, 0.03, 0.16, 0.45} {
			sum, p := 0.0, passing(a)
			const many = 200000
			for i := range many {
				d := cosineDir(n, (float64(i)+0.5)/many, fract(float64(i)*r2x))
				sum += g.rig.studio(d).X * p.at(d.dot(n))
			}
			rnd := source{seed: 5}
			got, _ := g.gather(v3{}, n, a, 512, &rnd)
			near(t, fmt.Sprintf("light on %.2f through a coat of %g", n, a), got.X, sum/many, 0.004)
		}
	}
	near(t, "the coat's pass on the mean", moments(0.16)[0], 1, 2e-3)
}

// A finer polish mirrors the key light with a narrower rim and no less bright:
// on the face, along the line of the mirror ray, the way from a tenth to nine
// tenths of the brightest shrinks from polish 1 to 4, and the brightest grows.
func TestPolishSharpens(t *testing.T) {
	rim, peak := math.Inf(1), 0.0
	for polish := 1; polish <= 4; polish++ {
		d := design.Design{Thickness: mm(40), Outline: edit.Rectangle(mm(1200), mm(600)),
			Finish: design.Finish{Colour: design.Colour{R: 120, G: 120, B: 120}, Polish: polish}}
		s := built(d, SetOptions{Draft: true, Bare: true})
		g := s.room()
		l := &g.rig.lights[0]
		c := s.camera(View{Kind: Quarter}, 320, 180)
		k := &shot{s: g, c: c}
		// The eye in the mirror direction of the light's middle.
		p := v3{600, 300, 40}
		in := p.sub(l.c).unit()
		eye := p.along(v3{in.X, in.Y, -in.Z}, 1500)
		most, from, to := 0.0, math.NaN(), math.NaN()
		at := func(u float64) float64 {
			q := p.along(v3{X: in.Y, Y: -in.X}.unit(), u) // aside
			w := q.sub(eye).unit()
			return k.highlights(&surface{a: g.concrete.alpha}, q.along(v3{Z: 1}, 0.05), v3{Z: 1}, w).luma()
		}
		for u := 0.0; u < 3000; u += 2 {
			v := at(u)
			most = max(most, v)
			if math.IsNaN(from) && v < 0.9*most {
				from = u
			}
			if math.IsNaN(to) && v < 0.1*most {
				to = u
			}
		}
		if !(to-from < rim) || most < peak {
			t.Errorf("polish %d: rim %.0f mm after %.0f, peak %.3f after %.3f", polish, to-from, rim, most, peak)
		}
		rim, peak = to-from, most
	}
}

// A bowl of each mount and shape stands where the design has it: straight down
// on its middle the waste is met at the bowl's depth, half way out its glaze,
// and beside it concrete. The rim of a vessel stands above the face, that of an
// under-mounted bowl below the top.
func TestBowls(t *testing.T) {
	const thick, deep = 40.0, 140.0
	shapes := map[string]design.Shape{
		"rectangle": {Kind: design.ShapeRectangle, Width: mm(420), Depth: mm(320), CornerRadius: mm(40)},
		"ellipse":   {Kind: design.ShapeEllipse, Width: mm(420), Depth: mm(320)},
		"circle":    {Kind: design.ShapeCircle, Width: mm(360)},
		"D":         {Kind: design.ShapeD, Width: mm(420), Depth: mm(320), Bow: mm(60)},
	}
	for name, shape := range shapes {
		for mount, floor := range map[design.Mount]float64{design.MountUnder: -deep, design.MountOver: thick - deep, design.MountVessel: thick + 10} {
			d := design.Design{Thickness: mm(thick), Outline: edit.Rectangle(mm(1000), mm(600))}
			d.Sinks = []design.Sink{{ID: "s", At: at(500, 300), Mount: mount, Rim: mm(20), Drain: mm(45), BowlDepth: mm(deep), Shape: shape}}
			g := built(d, SetOptions{Draft: true, Bare: true}).room()
			down := func(x, y float64) hit {
				h, ok := g.hit(ray{v3{x, y, 900}, v3{Z: -1}})
				if !ok {
					t.Fatalf("%s, mount %d: nothing at (%g, %g)", name, mount, x, y)
				}
				return h
			}
			what := fmt.Sprintf("%s, mount %d: ", name, mount)
			if h := down(507, 303); h.m != matDark {
				t.Errorf("%sthe middle is material %d", what, h.m)
			} else {
				near(t, what+"height of the waste", h.p.Z, floor, 2)
			}
			if h := down(500+90, 300); h.m != matGlaze {
				t.Errorf("%shalf way out is material %d", what, h.m)
			} else {
				near(t, what+"height of the bottom half way out", h.p.Z, floor, 0.25*deep)
			}
			if h := down(500+260, 300); h.m != matConcrete {
				t.Errorf("%sbeside it is material %d", what, h.m)
			}
			high := math.Inf(-1)
			for x := 500.0; x < 740; x += 0.25 {
				if h := down(x, 300); h.m == matGlaze {
					high = max(high, h.p.Z)
				}
			}
			switch want := map[design.Mount]float64{design.MountUnder: 0, design.MountOver: thick + 7, design.MountVessel: thick + deep + 13}[mount]; mount {
			case design.MountUnder:
				if high > want+1 {
					t.Errorf("%sits rim reaches up to %.1f, into the concrete", what, high)
				}
			default:
				near(t, what+"height of the rim", high, want, 1)
			}
		}
	}
}

// Straight down, a round top with a round cut-out: the dark ring of concrete has
// its area, pi (R² - r²), and its sides lie where the scale says.
func TestPlanOfARing(t *testing.T) {
	d := design.Design{Thickness: mm(30), Outline: edit.Round(mm(800)), Finish: design.Finish{Colour: design.Colour{R: 60, G: 58, B: 55}, Polish: 1}}
	d.Sinks = []design.Sink{{ID: "s", At: at(400, 400), BowlDepth: mm(120), Shape: design.Shape{Kind: design.ShapeCircle, Width: mm(360)}}}
	s := built(d, SetOptions{})
	const w, h = 420, 420
	k, mid := s.PlanScale(w, h)
	img := shotOf(t, s, View{Kind: Top}, Quick, w, h, 2)
	n := 0
	first, last := -1, -1
	for y := range h {
		for x := range w {
			if img.NRGBAAt(x, y).G < 110 {
				if math.Hypot(mid.X+(float64(x)+0.5-w/2.0)*k-400, mid.Y+(h/2.0-float64(y)-0.5)*k-400) < 150 {
					continue // the waste
				}
				n++
				if y == h/2 {
					if first < 0 {
						first = x
					}
					last = x
				}
			}
		}
	}
	near(t, "left side", mid.X+(float64(first)-w/2.0)*k, 0, k)
	near(t, "right side", mid.X+(float64(last+1)-w/2.0)*k, 800, k)
	in, out := first, last
	for img.NRGBAAt(in, h/2).G < 110 {
		in++
	}
	for img.NRGBAAt(out, h/2).G < 110 {
		out--
	}
	near(t, "cut-out's left side", mid.X+(float64(in)-w/2.0)*k, 220, k)
	near(t, "cut-out's right side", mid.X+(float64(out+1)-w/2.0)*k, 580, k)
	want := math.Pi * (400*400 - 180*180)
	near(t, "area in mm²", float64(n)*k*k, want, 2*math.Pi*(400+180)*0.5*k)
}

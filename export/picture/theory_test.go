package picture

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s is %.6g, want %.6g within %g", what, got, want, tolerance)
	}
}

// Fresnel's equations for n = 1.5; the value at 0 is ((n-1)/(n+1))² (Hecht,
// Optics, 4.6).
func TestFresnel(t *testing.T) {
	for _, c := range []struct{ degrees, want float64 }{
		{0, 0.0400}, {45, 0.0502}, {60, 0.0892}, {75, 0.2531}, {85, 0.6128}, {90, 1},
	} {
		near(t, "reflectance", fresnel(math.Cos(c.degrees*math.Pi/180), 1.5), c.want, 6e-5)
	}
	// Beyond the critical angle, asin(1/1.5) = 41.8 degrees, all is mirrored.
	near(t, "total reflection", fresnel(math.Cos(42*math.Pi/180), 1/1.5), 1, 0)
	if r := fresnel(math.Cos(41*math.Pi/180), 1/1.5); r >= 1 {
		t.Error("total reflection before the critical angle")
	}
}

// Snell's law, and the way back.
func TestRefraction(t *testing.T) {
	d := v3{math.Sin(1), 0, -math.Cos(1)}
	in, ok := refracted(d, v3{Z: 1}, resinIndex)
	if !ok {
		t.Fatal("no way in")
	}
	near(t, "sine inside", in.X, math.Sin(1)/resinIndex, 1e-12)
	out, ok := refracted(in.mul(-1), v3{Z: -1}, 1/resinIndex)
	if !ok {
		t.Fatal("no way back")
	}
	near(t, "way back", out.dot(d.mul(-1)), 1, 1e-12)
}

// Diffuse reflectance of a smooth surface of n = 1.53: Simpson's rule over
// 200,000 steps, in a program of its own, gives 0.096164 outside and, by the
// invariance of radiance over n², 0.613894 inside.
func TestDiffuseReflectance(t *testing.T) {
	near(t, "outside", resinOutside, 0.096164, 2e-6)
	near(t, "inside", resinInside, 0.613894, 2e-6)
	near(t, "a white body under resin", lifted(1), 1, 1e-12)
	near(t, "there and back", lifted(sunk(0.3)), 0.3, 1e-12)
	// The inside integral itself.
	sum := 0.0
	const n = 4000
	for i := range n {
		mu := (float64(i) + 0.5) / n
		sum += 2 * mu * fresnel(mu, 1/resinIndex) / n
	}
	near(t, "inside by its own integral", sum, resinInside, 2e-4)
}

// The transfer function of sRGB, IEC 61966-2-1: its threshold, and values from
// its own formula at the ends and in the middle.
func TestTransfer(t *testing.T) {
	for _, c := range []struct{ linear, want float64 }{
		{0, 0}, {0.0031308, 0.04045}, {0.214041, 0.5}, {0.18, 0.461356}, {1, 1},
	} {
		near(t, "encoded", encoded(c.linear), c.want, 2e-5)
	}
	for b := range 256 {
		near(t, "round trip", 255*encoded(decoded(uint8(b))), float64(b), 1e-9)
	}
}

// Form factor of a unit square at distance 1 seen from under its corner, both
// level: Howell, A Catalog of Radiation Heat Transfer Configuration Factors,
// C-11 gives 0.1385. A light half below the horizon shows its upper half alone.
func TestFormFactor(t *testing.T) {
	l := softbox{c: v3{0.5, 0.5, 1}, u: v3{X: 1}, v: v3{Y: 1}, n: v3{Z: -1}, hu: 0.5, hv: 0.5}
	near(t, "corner", l.share(v3{}, v3{Z: 1}), 0.138532, 2e-6)
	wide := softbox{c: v3{0, 0, 1}, u: v3{X: 1}, v: v3{Y: 1}, n: v3{Z: -1}, hu: 1e5, hv: 1e5}
	near(t, "a ceiling", wide.share(v3{}, v3{Z: 1}), 1, 1e-4)
	near(t, "a ceiling beside a wall", wide.share(v3{}, v3{X: 1}), 0.5, 1e-4)
	near(t, "from behind", l.share(v3{Z: 2}, v3{Z: -1}), 0, 0)
}

// furnace is an endless even white sky with a body of nothing in it.
func furnace() *scene {
	s := built(design.Design{}, SetOptions{}).room()
	s.planes = nil
	s.rig = rig{low: 1, top: 1}
	return s
}

// White furnace: a white body under a coat gives back all that falls on it.
func TestWhiteFurnace(t *testing.T) {
	s := furnace()
	for _, a := range []float64{0.03, 0.08, 0.16, 0.45} {
		for _, degrees := range []float64{0, 30, 60, 75} {
			c := math.Cos(degrees * math.Pi / 180)
			d := v3{-math.Sqrt(1 - c*c), 0, -c}
			x := surface{m: matConcrete, kd: v3{1, 1, 1}, a: a, n: v3{Z: 1}}
			h := hit{n: v3{Z: 1}, m: matConcrete}
			const n = 60000
			sum := 0.0
			for i := range n {
				rnd := source{seed: hash4(uint32(i), 3, 7, uint32(degrees))}
				_, r, w, _, alive := s.scattered(&x, &h, ray{d: d}, v3{1, 1, 1}, &rnd)
				if alive {
					sum += w.times(s.rig.studio(r.d)).X
				}
			}
			near(t, "the reference's reflectance", sum/n, 1, 0.01)
			rnd := source{seed: 9}
			light, _ := s.gather(v3{}, v3{Z: 1}, a, 4096, &rnd)
			e := coats().at(a, c)
			near(t, "the quick method's reflectance", light.X*(1-e)+e, 1, 0.01)
		}
	}
}

// No material sends out more than falls on it.
func TestEnergy(t *testing.T) {
	for a := 0.0; a <= 1; a += 0.1 {
		last := 0.0
		for mu := 1.0; mu > 0.02; mu -= 0.02 {
			e := coats().at(a, mu)
			if e < 0 || e > 1 {
				t.Fatalf("a coat of roughness %.1f mirrors %.3f at cosine %.2f", a, e, mu)
			}
			if a < 0.05 {
				near(t, "a smooth coat", e, fresnel(mu, coatIndex), 0.02)
				if e < last-1e-3 {
					t.Errorf("reflectance falls toward grazing at %.2f", mu)
				}
				last = e
			}
		}
	}
	for m := matConcrete; m <= matStoneware; m++ {
		if c := plainColour(m); c.most() > 0.95 {
			t.Errorf("material %d gives back %v", m, c)
		}
	}
}

// pool of clear resin in a level top, deep enough to be seen through.
func filled(depth float64, c design.Colour) *Set {
	d := design.Design{Thickness: mm(60)}
	for _, p := range []geom.Vec{{X: 0, Y: 0}, {X: 600, Y: 0}, {X: 600, Y: 600}, {X: 0, Y: 600}} {
		d.Outline.Nodes = append(d.Outline.Nodes, design.Node{At: at(p.X, p.Y)})
	}
	var r design.Region
	for _, p := range []geom.Vec{{X: 50, Y: 50}, {X: 550, Y: 50}, {X: 550, Y: 550}, {X: 50, Y: 550}} {
		r.Outer = append(r.Outer, design.Node{At: at(p.X, p.Y)})
	}
	d.Channels = []design.Channel{{ID: "c", Regions: []design.Region{r}, Depth: mm(depth), Fill: design.Fill{Resin: true, Colour: c}}}
	d.Finish = design.Finish{Colour: design.Colour{R: 180, G: 180, B: 180}, Polish: 2}
	return Build(d, slab.Resolve(d), SetOptions{Bare: true})
}

// Bouguer, Lambert and Beer: straight down through the real march, light is
// weakened by exp(-sigma depth).
func TestAbsorption(t *testing.T) {
	for _, depth := range []float64{4, 13, 25} {
		s := filled(depth, design.Colour{R: 60, G: 150, B: 200})
		q, way := s.body.bottom(ray{v3{300, 300, 60}, v3{Z: -1}})
		near(t, "way to the floor", way, depth, 0.05)
		near(t, "floor", q.Z, 60-depth, 0.05)
		m := &s.body.channels[0].resin
		got, c := m.clear(way), linearOf(design.Colour{R: 60, G: 150, B: 200})
		near(t, "red", got.X, math.Pow(c.X, depth/tintWay), 0.002)
		near(t, "green", got.Y, math.Pow(c.Y, depth/tintWay), 0.002)
	}
}

// The quick resin against full refraction under an even sky, where both have an
// exact meaning: the share of light that comes back from the pool.
func TestResinAgainstFullRefraction(t *testing.T) {
	for _, c := range []design.Colour{{R: 255, G: 255, B: 255}, {R: 60, G: 150, B: 200}} {
		s := filled(13, c)
		s.room().planes, s.room().rig = nil, rig{low: 1, top: 1}
		for _, degrees := range []float64{0, 35, 60} {
			cos := math.Cos(degrees * math.Pi / 180)
			d := v3{math.Sqrt(1 - cos*cos), 0, -cos}
			var quick, full v3
			const n = 3000
			for i := range n {
				rnd := source{seed: hash4(uint32(i), 11, 5, 2)}
				p := v3{200 + 200*rnd.next(), 200 + 200*rnd.next(), 60}
				h := hit{p: p, n: v3{Z: 1}, m: matResin}
				l := s.body.channels[0].look(s.room(), p, d, v3{Z: 1}, 2)
				quick = quick.add(l.albedo).add(v3{l.f, l.f, l.f})
				if _, w, _, alive := s.room().throughResin(&h, ray{p, d}, v3{1, 1, 1}, 2, &rnd); alive {
					full = full.add(w)
				}
			}
			near(t, "red", quick.X/n, full.X/n, 0.02)
			near(t, "green", quick.Y/n, full.Y/n, 0.02)
			near(t, "blue", quick.Z/n, full.Z/n, 0.02)
		}
	}
}

package picture

import (
	"bytes"
	"image"
	"image/color"
	"math"
	"testing"

	"example.org/castwright/model/design"
)

func matteOf(t testing.TB, s *Set, v View, g Setting, w, h, threads int) *Matte {
	t.Helper()
	m, err := renderMatte(t.Context(), s, v, g, Quick, w, h, threads, nil)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// from is the projection of a camera at eye that looks at a target upright, with
// the focal length f and the principal point (cx, cy) in pixels.
func from(eye, target v3, f, cx, cy float64) Projection {
	fwd := target.sub(eye).unit()
	right := fwd.cross(v3{Z: 1}).unit()
	down := fwd.cross(right)
	row := func(v v3) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }
	return Pinhole(row(eye), [3][3]float64{row(right), row(down), row(fwd)}, f, cx, cy)
}

// A place is seen where the matrix says, also with the principal point far off
// the picture, and whatever the matrix's scale and sign; its ray goes through it.
func TestProjection(t *testing.T) {
	p := from(v3{-300, -1400, 900}, v3{600, 250, 40}, 1100, -150, 480)
	for _, scale := range []float64{1, -2.5e-4, 7e6} {
		q := p
		for i := range q {
			for k := range q[i] {
				q[i][k] *= scale
			}
		}
		c := q.camera(640, 360)
		near(t, "eye", c.eye.sub(v3{-300, -1400, 900}).norm(), 0, 1e-6)
		for _, at := range []v3{{0, 0, 0}, {1250, 0, 45}, {600, 560, 45}, {200, 100, 300}} {
			w := p[2][0]*at.X + p[2][1]*at.Y + p[2][2]*at.Z + p[2][3]
			u := (p[0][0]*at.X + p[0][1]*at.Y + p[0][2]*at.Z + p[0][3]) / w
			v := (p[1][0]*at.X + p[1][1]*at.Y + p[1][2]*at.Z + p[1][3]) / w
			x, y, ok := c.project(at)
			if !ok {
				t.Fatal("not in front")
			}
			near(t, "column", x, u, 1e-6)
			near(t, "row", y, v, 1e-6)
			r := c.ray(x, y)
			off := at.sub(r.o)
			near(t, "ray's distance", off.sub(r.d.mul(off.dot(r.d))).norm(), 0, 1e-6)
			if off.dot(r.d) <= 0 {
				t.Error("the ray goes backward")
			}
		}
	}
}

// The cameras of the views are projections as well: the same picture comes of
// both.
func TestViewThroughItsOwnProjection(t *testing.T) {
	s := built(poured(), SetOptions{Draft: true})
	const w, h = 160, 90
	c := s.camera(View{Kind: Quarter}, w, h)
	var p Projection
	for i, r := range c.rows {
		p[i] = [4]float64{r.X, r.Y, r.Z, -r.dot(c.eye)}
	}
	a := shotOf(t, s, View{Kind: Quarter}, Quick, w, h, 2)
	b := shotOf(t, s, View{Kind: Through, Camera: p}, Quick, w, h, 2)
	if root, _ := rmse(a, b); root > 1 {
		t.Errorf("the pictures differ by %.2f of 255", root)
	}
}

func TestProjectionRefusals(t *testing.T) {
	s := built(poured(), SetOptions{Draft: true})
	good := from(v3{-300, -1400, 900}, v3{600, 250, 40}, 1100, 300, 200)
	flat, none := good, good
	flat[1] = flat[0]
	none[2][1] = math.NaN()
	for _, p := range []Projection{{}, flat, none} {
		if _, err := RenderMatte(t.Context(), s, View{Kind: Through, Camera: p}, Setting{}, Quick, 64, 36, nil); err == nil {
			t.Errorf("the projection %v was taken", p)
		}
	}
	for _, g := range []Setting{{KeySize: -1}, {Gain: [3]float64{1, -1, 1}}, {KeyTurn: math.Inf(1)}} {
		if _, err := RenderMatte(t.Context(), s, View{Kind: Through, Camera: good}, g, Quick, 64, 36, nil); err == nil {
			t.Errorf("the setting %+v was taken", g)
		}
	}
	// Cameras below, inside and behind the top give some picture.
	for _, eye := range []v3{{600, 250, -300}, {600, 250, 20}, {600, 4000, 500}, {600, 250, 3000}} {
		matteOf(t, s, View{Kind: Through, Camera: from(eye, v3{601, 251, 45}, 60, 32, 18)}, Setting{Ground: true}, 64, 36, 2)
	}
}

// The same bytes for any number of threads; the top covers its own outline and
// nothing else; its shadow lies beside it and fades; gain makes it brighter.
func TestMatte(t *testing.T) {
	d := design.Design{Thickness: mm(40), Finish: design.Finish{Colour: design.Colour{R: 120, G: 118, B: 112}, Polish: 1}}
	for _, p := range [][2]float64{{0, 0}, {800, 0}, {800, 500}, {0, 500}} {
		d.Outline.Nodes = append(d.Outline.Nodes, design.Node{At: at(p[0], p[1])})
	}
	s := built(d, SetOptions{})
	const w, h = 240, 160
	v := View{Kind: Through, Camera: from(v3{400, 250, 2400}, v3{400, 250.01, 0}, 400, 120, 80)}
	g := Setting{Ground: true, KeyTurn: -90, KeyRise: 40} // light from the left
	m := matteOf(t, s, v, g, w, h, 1)
	for _, n := range []int{2, 5} {
		o := matteOf(t, s, v, g, w, h, n)
		if !bytes.Equal(m.Top.Pix, o.Top.Pix) || !bytes.Equal(m.Shade.Pix, o.Shade.Pix) {
			t.Errorf("%d threads give another matte", n)
		}
	}
	// Along the middle row: where the cover passes a half.
	cover := func(x int) uint8 { return m.Top.NRGBAAt(x, h/2).A }
	x0, x1 := 0, w-1
	for cover(x0) < 128 {
		x0++
	}
	for cover(x1) < 128 {
		x1--
	}
	// The face's edge, 40 mm up, less the arris that turns away.
	k := 400.0 / (2400 - 40)
	near(t, "left side", float64(x0), 120-400*k, 1)
	near(t, "right side", float64(x1+1), 120+400*k, 1)
	shade := func(x int) int { return int(m.Shade.GrayAt(x, h/2).Y) }
	if shade(x1+3) > 225 || shade(x0-4) < shade(x1+3)+30 {
		t.Errorf("light from the left leaves %d of 255 on the left and %d on the right", shade(x0-4), shade(x1+3))
	}
	if shade(x1+25) < shade(x1+3)+20 {
		t.Errorf("the shadow does not fade: %d beside the top, %d further off", shade(x1+3), shade(x1+25))
	}
	bright := g
	bright.Gain = [3]float64{1.3, 1, 0.7}
	o := matteOf(t, s, v, bright, w, h, 2)
	a, b := m.Top.NRGBAAt(w/2, h/2), o.Top.NRGBAAt(w/2, h/2)
	near(t, "red gain", decoded(b.R)/decoded(a.R), 1.3, 0.05)
	near(t, "green gain", decoded(b.G)/decoded(a.G), 1, 0.03)
	near(t, "blue gain", decoded(b.B)/decoded(a.B), 0.7, 0.05)
	// Over a photograph: untouched far away, the top where it covers.
	photo := image.NewNRGBA(image.Rect(0, 0, w, h))
	for i := range photo.Pix {
		photo.Pix[i] = 200
		if i&3 == 3 {
			photo.Pix[i] = 255
		}
	}
	laid := m.Over(photo)
	if c := laid.NRGBAAt(2, 2); c.R < 190 || c.R > 200 {
		t.Errorf("far from the top the photograph is %v", c)
	}
	want := a
	want.A = 255
	if c := laid.NRGBAAt(w/2, h/2); c != color.NRGBA(want) {
		t.Errorf("the top shows %v, want %v", c, want)
	}
}

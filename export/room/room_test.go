package room_test

import (
	"bytes"
	"context"
	"errors"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/castwright/assets"
	"example.org/castwright/export/picture"
	"example.org/castwright/export/room"
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/pose"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/store"
)

func compose(t testing.TB, d design.Design, o room.Order) *room.Result {
	t.Helper()
	out, err := room.Compose(t.Context(), room.Top{Design: d, Solid: slab.Resolve(d)}, o, picture.Quick, 0, nil)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s is %.5g, want %.5g (within %g)", what, got, want, tol)
	}
}

func even(w, h int, c color.RGBA) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for i := range w * h {
		copy(img.Pix[4*i:], []uint8{c.R, c.G, c.B, 255})
	}
	return img
}

// A top as large as the marked one lies where the truth has it: its outline in the
// picture is met within half a pixel, and lengths within 0.2 %. The truth is a
// pinhole camera that the program is not told; the outline is found in the picture
// as the place where half a pixel is covered.
func TestLandsWhereItShould(t *testing.T) {
	for _, c := range []camera{
		{eye: [3]float64{250, -1500, 980}, target: [3]float64{620, 260, 0}, f: 900, w: 900, h: 675},
		{eye: [3]float64{900, -900, 1500}, target: [3]float64{600, 300, 0}, f: 760, w: 675, h: 900},
		{eye: [3]float64{500, -2300, 640}, target: [3]float64{700, 250, 0}, f: 1300, w: 960, h: 540},
	} {
		photo := even(c.w, c.h, color.RGBA{A: 255}) // black: what is lighter is the top
		out := compose(t, laminate(), room.Order{Photo: photo, Corners: c.corners(), W: oldW, D: oldD})
		// Across the middle of each side of the outline as it is seen: the back, left
		// and right at the face, the front at the underside.
		found := map[string]geom.Vec{}
		for name, at := range map[string][2][3]float64{
			"back":  {{oldW / 2, oldD, oldT}, {oldW/2 + 1, oldD, oldT}},
			"left":  {{0, oldD / 2, oldT}, {0, oldD/2 + 1, oldT}},
			"right": {{oldW, oldD / 2, oldT}, {oldW, oldD/2 - 1, oldT}},
			"front": {{oldW / 2, 0, 0}, {oldW/2 - 1, 0, 0}},
		} {
			p, q := c.see(at[0][0], at[0][1], at[0][2]), c.see(at[1][0], at[1][1], at[1][2])
			// Clockwise with y down, the top lies to the right.
			inward := q.Sub(p).Left().Unit()
			off, ok := edge(out.Image, p, inward)
			if !ok || math.Abs(off) > 0.5 {
				t.Errorf("eye %v: the %s side is %.2f pixels off (%v)", c.eye, name, off, ok)
			}
			found[name] = p.Add(inward.Mul(off))
		}
		// Scale: from the left to the right side, by the truth's own camera.
		a, b := c.onFace(found["left"]), c.onFace(found["right"])
		near(t, "width in the picture", math.Abs(a.X-b.X)/oldW, 1, 0.002)
	}
}

// edge finds how far inward from p a picture of a light thing on black is half
// covered, in pixels.
func edge(img *image.NRGBA, p, inward geom.Vec) (float64, bool) {
	at := func(d float64) float64 { // bilinear
		q := p.Add(inward.Mul(d)).Sub(geom.Vec{X: 0.5, Y: 0.5})
		x, y := math.Floor(q.X), math.Floor(q.Y)
		u, v := q.X-x, q.Y-y
		g := func(i, j float64) float64 {
			l := float64(img.NRGBAAt(int(x+i), int(y+j)).G) / 255
			return math.Pow(l, 2.2)
		}
		return (g(0, 0)*(1-u)+g(1, 0)*u)*(1-v) + (g(0, 1)*(1-u)+g(1, 1)*u)*v
	}
	full := 0.0
	for d := 2.5; d <= 4; d += 0.25 {
		full += at(d) / 7
	}
	for d := -3.0; d < 3; d += 0.02 {
		if at(d) >= full/2 {
			return d, full > 0.01
		}
	}
	return 0, false
}

// onFace is the place of the face, in the old design's axes, that is seen at a
// pixel.
func (c camera) onFace(p geom.Vec) geom.Vec {
	m := c.projection()
	// Two equations for x and y at z = oldT.
	z := [3]float64{}
	for i := range 3 {
		z[i] = m[i][2]*oldT + m[i][3]
	}
	a, b := m[0][0]-p.X*m[2][0], m[0][1]-p.X*m[2][1]
	d, e := m[1][0]-p.Y*m[2][0], m[1][1]-p.Y*m[2][1]
	f, g := p.X*z[2]-z[0], p.Y*z[2]-z[1]
	k := a*e - b*d
	return geom.Vec{X: (f*e - b*g) / k, Y: (a*g - f*d) / k}
}

// face is the mean linear light of the top's middle.
func face(img *image.NRGBA, c camera) (out [3]float64) {
	n := 0.0
	for i := range 40 {
		for j := range 20 {
			p := c.see(oldW*(0.2+0.015*float64(i)), oldD*(0.2+0.03*float64(j)), oldT)
			q := img.NRGBAAt(int(p.X), int(p.Y))
			for k, v := range [3]uint8{q.R, q.G, q.B} {
				out[k] += linearOf(v)
			}
			n++
		}
	}
	for k := range out {
		out[k] /= n
	}
	return out
}

func linearOf(v uint8) float64 { // IEC 61966-2-1
	if x := float64(v) / 255; x > 0.04045 {
		return math.Pow((x+0.055)/1.055, 2.4)
	}
	return float64(v) / 255 / 12.92
}

var small = camera{eye: standing.eye, target: standing.target, f: 420, w: 560, h: 420}

// The same room darker, warmer or cooler: the top follows, and the photograph's
// noise is in it too.
func TestFollowsTheLight(t *testing.T) {
	photo := small.take(t, laminate())
	d := plain(oldW, oldD, oldT, design.Colour{R: 150, G: 150, B: 150})
	order := func(p *image.RGBA) room.Order {
		return room.Order{Photo: p, Corners: small.corners(), W: oldW, D: oldD}
	}
	base := face(compose(t, d, order(photo)).Image, small)
	for _, c := range []struct {
		name  string
		gain  [3]float64
		noise float64
	}{
		{"dark", [3]float64{0.25, 0.25, 0.25}, 2},
		{"warm", [3]float64{0.8, 0.62, 0.42}, 0},
		{"cool", [3]float64{0.5, 0.65, 0.85}, 0},
	} {
		got := face(compose(t, d, order(developed(photo, c.gain, c.noise))).Image, small)
		y := func(v [3]float64) float64 { return 0.2126*v[0] + 0.7152*v[1] + 0.0722*v[2] }
		near(t, c.name+": brightness", y(got)/y(base)/y(c.gain), 1, 0.15)
		// The colour is followed to four fifths, in logarithms.
		near(t, c.name+": red against green", math.Log(got[0]/got[1]/(base[0]/base[1])), 0.8*math.Log(c.gain[0]/c.gain[1]), 0.06)
		near(t, c.name+": blue against green", math.Log(got[2]/got[1]/(base[2]/base[1])), 0.8*math.Log(c.gain[2]/c.gain[1]), 0.06)
	}
}

// On a sheet of white paper the light is known exactly: a top of linear colour k
// shows k/0.85 of the paper's brightness, in its colour.
func TestPaperTellsTheLight(t *testing.T) {
	// A matt top of a middle grey: sRGB 150 is 0.3050 in linear light.
	d := plain(oldW, oldD, oldT, design.Colour{R: 150, G: 150, B: 150})
	white := face(compose(t, d, room.Order{Photo: even(small.w, small.h, color.RGBA{237, 237, 237, 255}), Corners: small.corners(), W: oldW, D: oldD, Paper: true}).Image, small)
	near(t, "grey beside white paper", white[1]/(linearOf(237)/0.85), 0.3050, 0.05)
	warm := face(compose(t, d, room.Order{Photo: even(small.w, small.h, color.RGBA{150, 120, 90, 255}), Corners: small.corners(), W: oldW, D: oldD, Paper: true}).Image, small)
	for k, v := range [3]uint8{150, 120, 90} {
		near(t, "channel in warm light", warm[k]/white[k], linearOf(v)/linearOf(237), 0.03) // the film's curve bends a little
	}
}

// Nothing but the top and its near shadow changes; the photograph stays as it is;
// the same order gives the same bytes.
func TestLeavesTheRest(t *testing.T) {
	photo := small.take(t, laminate())
	before := bytes.Clone(photo.Pix)
	order := room.Order{Photo: photo, Corners: small.corners(), W: oldW, D: oldD}
	d := demo(t)
	out := compose(t, d, order)
	if !bytes.Equal(before, photo.Pix) {
		t.Error("the photograph was changed")
	}
	again := compose(t, d, order)
	if !bytes.Equal(out.Image.Pix, again.Image.Pix) {
		t.Error("the same order gives another picture")
	}
	changed := 0
	for y := range small.h {
		for x := range small.w {
			if out.Image.NRGBAAt(x, y) != color.NRGBA(photo.RGBAAt(x, y)) {
				changed++
				if !image.Pt(x, y).In(out.Part) {
					t.Fatalf("pixel (%d, %d), outside %v, was changed", x, y, out.Part)
				}
				if x < 40 || y < 40 || x > small.w-20 || y > small.h-10 {
					t.Fatalf("pixel (%d, %d), far from the top, was changed", x, y)
				}
			}
		}
	}
	if changed < 10_000 {
		t.Errorf("only %d pixels were changed", changed)
	}
	if out.Part == out.Image.Rect {
		t.Error("it is said that all of the photograph was changed")
	}
	half, err := room.Compose(t.Context(), room.Top{Design: d, Solid: slab.Resolve(d)}, order, picture.Quick, small.w/2, nil)
	if err != nil || half.Image.Rect.Dx() != small.w/2 || half.Image.Rect.Dy() != small.h/2 {
		t.Errorf("half as wide: %v, %v", half, err)
	}
}

func TestNotes(t *testing.T) {
	photo := even(small.w, small.h, color.RGBA{120, 120, 120, 255})
	tell := func(d design.Design, o room.Order) string {
		o.Photo = photo
		return strings.Join(compose(t, d, o).Notes, " ")
	}
	order := room.Order{Corners: small.corners(), W: oldW, D: oldD}
	if s := tell(laminate(), order); s != "" {
		t.Errorf("the same top: %q", s)
	}
	swapped := order
	swapped.W, swapped.D = oldD, oldW
	if s := tell(laminate(), swapped); !strings.Contains(s, "swapped") {
		t.Errorf("another shape: %q", s)
	}
	if s := tell(plain(oldW/2, oldD, oldT, design.Colour{}), order); !strings.Contains(s, "larger") || !strings.Contains(s, "50 %") {
		t.Errorf("half as wide: %q", s)
	}
	away := order
	away.Place = pose.Place{X: -60_000}
	if s := tell(laminate(), away); !strings.Contains(s, "outside") {
		t.Errorf("far away: %q", s)
	}
}

func TestStanding(t *testing.T) {
	s := slab.Resolve(laminate())
	if p := room.Standing(s, 1400, 600, false, 20); p != (pose.Place{Rise: 10}) {
		t.Errorf("on the cabinet: %+v", p)
	}
	if p := room.Standing(s, 297, 210, true, 0); p != (pose.Place{X: (297 - oldW) / 2, Y: (oldD - 210) / 2}) {
		t.Errorf("on paper: %+v", p)
	}
}

func TestRefusalsAndStop(t *testing.T) {
	d := laminate()
	top := room.Top{Design: d, Solid: slab.Resolve(d)}
	good := room.Order{Photo: even(small.w, small.h, color.RGBA{120, 120, 120, 255}), Corners: small.corners(), W: oldW, D: oldD}
	for name, change := range map[string]func(*room.Order, *room.Top){
		"no photograph": func(o *room.Order, _ *room.Top) { o.Photo = nil },
		"no size":       func(o *room.Order, _ *room.Top) { o.W = 0 },
		"no number":     func(o *room.Order, _ *room.Top) { o.D = math.NaN() },
		"crossing":      func(o *room.Order, _ *room.Top) { o.Corners[0], o.Corners[1] = o.Corners[1], o.Corners[0] },
		"no top":        func(_ *room.Order, t *room.Top) { *t = room.Top{Solid: slab.Resolve(design.Design{})} },
		"nowhere":       func(o *room.Order, _ *room.Top) { o.Place.Turn = math.Inf(1) },
	} {
		o, p := good, top
		change(&o, &p)
		if _, err := room.Compose(t.Context(), p, o, picture.Quick, 0, nil); err == nil {
			t.Errorf("%s: taken", name)
		}
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := room.Compose(ctx, top, good, picture.Good, 0, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped: %v", err)
	}
	// As it is laid over, which at 3840 pixels takes half a second, it can be stopped too.
	ctx, cancel = context.WithCancel(t.Context())
	taken := false
	out, err := room.Compose(ctx, top, good, picture.Quick, 0, func(stage string, _ float64) {
		if stage == "laid over" {
			taken = true
			cancel()
		}
	})
	if !taken || !errors.Is(err, context.Canceled) || out != nil {
		t.Errorf("stopped once the top was taken (%v): %v", taken, err)
	}
}

func demo(t testing.TB) design.Design {
	j, err := store.Decode(assets.Demos()[0].Data)
	if err != nil {
		t.Fatal(err)
	}
	return j.Options[0].Design
}

// BenchmarkCompose: the demo's top in a photograph of 1920 x 1440.
func BenchmarkCompose(b *testing.B) {
	c := camera{eye: standing.eye, target: standing.target, f: 1440, w: 1920, h: 1440}
	d := demo(b)
	top := room.Top{Design: d, Solid: slab.Resolve(d)}
	top.Set = room.Build(top)
	o := room.Order{Photo: even(c.w, c.h, color.RGBA{120, 120, 120, 255}), Corners: c.corners(), W: oldW, D: oldD}
	for _, q := range []struct {
		name string
		q    picture.Quality
	}{{"quick", picture.Quick}, {"good", picture.Good}} {
		b.Run(q.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := room.Compose(b.Context(), top, o, q.q, 0, nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// TestLook writes pictures to look at into the folder that ROOM_OUT names.
func TestLook(t *testing.T) {
	dir := os.Getenv("ROOM_OUT")
	if dir == "" {
		t.Skip("ROOM_OUT names no folder")
	}
	keep := func(name string, img image.Image) {
		f, err := os.Create(filepath.Join(dir, name+".png"))
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		if err := png.Encode(f, img); err != nil {
			t.Fatal(err)
		}
	}
	photo := standing.take(t, laminate())
	keep("photo", photo)
	d := demo(t)
	for name, p := range map[string]*image.RGBA{
		"plain": photo, "dark": developed(photo, [3]float64{0.2, 0.2, 0.2}, 3), "warm": developed(photo, [3]float64{1, 0.75, 0.45}, 2),
	} {
		keep("in-"+name, compose(t, d, room.Order{Photo: p, Corners: standing.corners(), W: oldW, D: oldD}).Image)
	}
}

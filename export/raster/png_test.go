package raster

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/png"
	"strings"
	"testing"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
)

func sample(w, h float64, ground scene.Colour) scene.Page {
	p := scene.Page{W: w, H: h, PerMM: 1, Ground: ground}
	for i := range 12 {
		x := float64(i) * w / 14
		p.Items = append(p.Items,
			scene.Fill{Loops: []geom.Loop{box(x, x/3, x+40.5, h-x/2)}, Paint: scene.Paint{Colour: scene.Colour{R: uint8(20 * i), G: 120, B: 77, A: 180}}},
			scene.Fill{Loops: []geom.Loop{box(x/2, h/3, x/2+40.5, h/2)}, Paint: scene.Paint{Texture: ramp{}}},
			scene.Text{At: geom.Vec{X: x, Y: h / 2}, Size: 30, Colour: scene.Colour{A: 255}, Text: "Castwright"})
	}
	return p
}

// TestPNGDecodes reads what is written with the standard library's decoder.
func TestPNGDecodes(t *testing.T) {
	for _, c := range []struct {
		name   string
		page   scene.Page
		opaque bool
	}{
		{"one pixel", sample(1, 1, white), true},
		{"drawing", sample(333, 700, white), true},
		{"thumb", sample(120, 90, scene.Colour{}), false},
	} {
		var buf bytes.Buffer
		if err := PNG(&buf, c.page, Options{}); err != nil {
			t.Fatal(c.name, err)
		}
		got, err := png.Decode(&buf)
		if err != nil {
			t.Fatal(c.name, err)
		}
		if _, alpha := got.(*image.NRGBA); alpha == c.opaque {
			t.Errorf("%s: decoded as %T", c.name, got)
		}
		want := Image(c.page)
		if got.Bounds() != want.Rect {
			t.Fatalf("%s: %v, want %v", c.name, got.Bounds(), want.Rect)
		}
		for y := range want.Rect.Dy() {
			for x := range want.Rect.Dx() {
				w := color.NRGBAModel.Convert(want.At(x, y)).(color.NRGBA)
				g := color.NRGBAModel.Convert(got.At(x, y)).(color.NRGBA)
				// Alpha is taken out with rounding, which two ways may do
				// differently by one.
				if near(w.R, g.R) > 1 || near(w.G, g.G) > 1 || near(w.B, g.B) > 1 || w.A != g.A {
					t.Fatalf("%s: pixel (%d, %d) is %v, want %v", c.name, x, y, g, w)
				}
				if c.opaque && w != g {
					t.Fatalf("%s: pixel (%d, %d) is %v, want %v", c.name, x, y, g, w)
				}
			}
		}
	}
}

func near(a, b uint8) int { return max(int(a)-int(b), int(b)-int(a)) }

func TestPNGSameBytes(t *testing.T) {
	var a, b bytes.Buffer
	for _, w := range []*bytes.Buffer{&a, &b} {
		if err := PNG(w, sample(400, 900, white), Options{}); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("the same page gives other bytes")
	}
}

// TestPNGPhysicalSize reads the pHYs chunk (ISO/IEC 15948, 11.3.5.3: pixels per
// unit in x and y, unit 1 for the metre).
func TestPNGPhysicalSize(t *testing.T) {
	for _, c := range []struct {
		name string
		page scene.Page
		o    Options
		want uint32 // 0 for no chunk
	}{
		{"asked for", scene.Page{W: 9, H: 9}, Options{DotsPerMetre: 11811}, 11811}, // 300 dpi
		{"the page's", scene.Page{W: 9, H: 9, Print: 2000.0 / 297}, Options{}, 6734},
		{"none", scene.Page{W: 9, H: 9}, Options{}, 0},
	} {
		var buf bytes.Buffer
		if err := PNG(&buf, c.page, c.o); err != nil {
			t.Fatal(err)
		}
		i := bytes.Index(buf.Bytes(), []byte("pHYs"))
		if c.want == 0 {
			if i >= 0 {
				t.Errorf("%s: there is a pHYs chunk", c.name)
			}
			continue
		}
		if i < 0 {
			t.Errorf("%s: there is no pHYs chunk", c.name)
			continue
		}
		d := buf.Bytes()[i+4:]
		if x, y := binary.BigEndian.Uint32(d), binary.BigEndian.Uint32(d[4:]); x != c.want || y != c.want || d[8] != 1 {
			t.Errorf("%s: %d x %d to unit %d, want %d to the metre", c.name, x, y, d[8], c.want)
		}
	}
}

func TestPNGRefuses(t *testing.T) {
	var buf bytes.Buffer
	err := PNG(&buf, scene.Page{W: 9000, H: 10}, Options{})
	if err == nil || !strings.Contains(err.Error(), "8192") {
		t.Errorf("9000 pixels: %v", err)
	}
	if err := PNG(&buf, scene.Page{}, Options{}); err == nil {
		t.Error("a page without size was written")
	}
	if buf.Len() > 0 {
		t.Error("a refused page left bytes behind")
	}
}

// failing fails after some bytes.
type failing int

func (f *failing) Write(b []byte) (int, error) {
	if *f -= failing(len(b)); *f < 0 {
		return 0, errFull
	}
	return len(b), nil
}

var errFull = errorString("disk full")

type errorString string

func (e errorString) Error() string { return string(e) }

// TestPNGFullDisk holds that a writer's error comes back, whenever it comes.
func TestPNGFullDisk(t *testing.T) {
	for _, room := range []failing{0, 40, 5000} {
		w := room
		if err := PNG(&w, sample(900, 1500, white), Options{}); err != errFull {
			t.Errorf("after %d bytes: %v", room, err)
		}
	}
}

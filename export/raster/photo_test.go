package raster

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/png"
	"testing"
)

// A photograph is read by the standard library's decoder as it was, and holds the
// chunks of ISO/IEC 15948 that a picture needs and no others.
func TestPhoto(t *testing.T) {
	img := image.NewNRGBA(image.Rect(0, 0, 301, 77))
	for y := range 77 {
		for x := range 301 {
			img.SetNRGBA(x, y, color.NRGBA{uint8(x), uint8(3 * y), uint8(x * y), 255})
		}
	}
	var b bytes.Buffer
	if err := Photo(&b, img); err != nil {
		t.Fatal(err)
	}
	var names []string
	for p := b.Bytes()[8:]; len(p) >= 12; {
		n := binary.BigEndian.Uint32(p)
		name := string(p[4:8])
		if len(names) == 0 || names[len(names)-1] != name {
			names = append(names, name)
		}
		if name == "sRGB" && (n != 1 || p[8] != 0) {
			t.Errorf("sRGB says % x", p[8:8+n])
		}
		p = p[12+n:]
	}
	if got := names; len(got) != 4 || got[0] != "IHDR" || got[1] != "sRGB" || got[2] != "IDAT" || got[3] != "IEND" {
		t.Errorf("the file holds %q", got)
	}
	got, err := png.Decode(&b)
	if err != nil {
		t.Fatal(err)
	}
	for y := range 77 {
		for x := range 301 {
			if g := color.NRGBAModel.Convert(got.At(x, y)); g != img.At(x, y) {
				t.Fatalf("at %d, %d: %v, want %v", x, y, g, img.At(x, y))
			}
		}
	}
	if err := Photo(&b, image.NewNRGBA(image.Rect(0, 0, 0, 5))); err == nil {
		t.Error("a picture without pixels is written")
	}
}

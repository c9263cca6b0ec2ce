package letterhead_test

import (
	"bytes"
	"encoding/binary"
	"errors"
	"image"
	"image/color"
	"image/jpeg"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/castwright/export/letterhead"
	"github.com/google/go-cmp/cmp"
)

// turned is a JPEG of 60 by 20 that lies on its side (EXIF 2.3, tag 0x0112 of 6)
// and says where it was taken.
func turned(t *testing.T) []byte {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, 60, 20))
	for i := range img.Pix {
		img.Pix[i] = 0xff
	}
	for y := range 20 {
		for x := range 20 {
			img.Set(x, y, color.RGBA{200, 0, 0, 255})
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: 100}); err != nil {
		t.Fatal(err)
	}
	exif := []byte("Exif\x00\x00MM\x00*\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01\x00\x06\x00\x00\x00\x00\x00\x00secret place")
	head := binary.BigEndian.AppendUint16([]byte{0xff, 0xd8, 0xff, 0xe1}, uint16(len(exif)+2))
	return append(append(head, exif...), b.Bytes()[2:]...)
}

func TestKeep(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "deep", "letterhead.json")
	if h, err := letterhead.Read(path); err != nil || h.Logo != nil || h.Lines != nil {
		t.Errorf("none by default: %v, %+v", err, h)
	}
	from := filepath.Join(dir, "logo.jpeg")
	if err := os.WriteFile(from, turned(t), 0o600); err != nil {
		t.Fatal(err)
	}
	logo, err := letterhead.ReadLogo(from)
	if err != nil {
		t.Fatal(err)
	}
	l := letterhead.Letterhead{Name: "Κεραμική & Σια 🏺", Address: "3 Kiln Lane\n\nHarbour", Contact: "555 0100"}
	if err := letterhead.Keep(path, l, logo); err != nil {
		t.Fatal(err)
	}
	os.Remove(from)
	h, err := letterhead.Read(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]string{"Κεραμική & Σια 🏺", "3 Kiln Lane", "Harbour", "555 0100"}, h.Lines); diff != "" {
		t.Error(diff)
	}
	// Turned a quarter to the right, the red third at the left comes to lie at the top.
	if b := h.Logo.Bounds(); b.Dx() != 20 || b.Dy() != 60 {
		t.Errorf("the logo is %v", b)
	} else if r, g, _, _ := h.Logo.At(10, 8).RGBA(); r < 0xa000 || g > 0x3000 {
		t.Errorf("at the top it is %v", h.Logo.At(10, 8))
	}
	kept, err := os.ReadFile(filepath.Join(filepath.Dir(path), "letterhead-logo.png"))
	if err != nil || bytes.Contains(kept, []byte("secret")) || bytes.Contains(kept, []byte("Exif")) {
		t.Errorf("%v; metadata came along", err)
	}
	if err := letterhead.Keep(path, l, nil); err != nil {
		t.Fatal(err)
	}
	if h, err := letterhead.Read(path); err != nil || h.Logo != nil {
		t.Errorf("the logo stays: %v", err)
	}
}

func TestRefused(t *testing.T) {
	dir := t.TempDir()
	for name, c := range map[string]struct{ file, logo, want string }{
		"no JSON":          {"{\n\"name\": }", "", "line 2 is not JSON"},
		"another kind":     {`{"name": 7}`, "", "name must be text"},
		"a book":           {`{"name": "` + strings.Repeat("x", 2<<20) + `"}`, "", "1 MB"},
		"logo gone":        {`{"logo": "gone.png"}`, "", "gone.png"},
		"logo of no kind":  {`{"logo": "logo.png"}`, "%PDF-1.7", "JPEG or PNG"},
		"logo of a folder": {`{"logo": "."}`, "", "can't be"},
	} {
		path := filepath.Join(dir, "letterhead.json")
		for file, text := range map[string]string{path: c.file, filepath.Join(dir, "logo.png"): c.logo} {
			if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		if _, err := letterhead.Read(path); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}

// An SVG drawing is refused in words that help, whatever it starts with, before
// anything of it is read as XML.
func TestLogoSVG(t *testing.T) {
	dir := t.TempDir()
	for name, text := range map[string]string{
		"plain":   `<svg xmlns="http://www.w3.org/2000/svg"/>`,
		"heading": "\ufeff<?xml version=\"1.0\"?>\n<!-- made -->\n<svg/>",
		"bomb":    `<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]><SVG>&b;</SVG>`,
		"packed":  "\x1f\x8b\x08\x00",
	} {
		path := filepath.Join(dir, name+".svg")
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := letterhead.ReadLogo(path); !errors.Is(err, letterhead.ErrSVG) || !strings.Contains(err.Error(), "export it as PNG") {
			t.Errorf("%s: %v", name, err)
		}
	}
	path := filepath.Join(dir, "text.png")
	if err := os.WriteFile(path, []byte("<html>"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := letterhead.ReadLogo(path); err == nil || errors.Is(err, letterhead.ErrSVG) {
		t.Errorf("a page of the web: %v", err)
	}
}

package intake

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"runtime"
	"strings"
	"testing"
)

// exif is a TIFF block with tag 0x0112 alone, as EXIF 2.3 lays it out.
func exif(orientation uint16) []byte {
	out := []byte("MM\x00*\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01")
	out = binary.BigEndian.AppendUint16(out, orientation)
	return append(out, 0, 0, 0, 0, 0, 0)
}

// marked is a JPEG with EXIF in its APP1 segment, and a place that must not be
// carried on in a comment.
func marked(t testing.TB, img image.Image, orientation uint16) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: 100}); err != nil {
		t.Fatal(err)
	}
	segment := append([]byte("Exif\x00\x00"), exif(orientation)...)
	head := []byte{0xff, 0xd8, 0xff, 0xe1}
	head = binary.BigEndian.AppendUint16(head, uint16(len(segment)+2))
	return append(append(head, segment...), b.Bytes()[2:]...)
}

// chunk is a PNG chunk (ISO/IEC 15948, 5.3).
func chunk(kind string, data []byte) []byte {
	out := binary.BigEndian.AppendUint32(nil, uint32(len(data)))
	out = append(append(out, kind...), data...)
	return binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(out[4:]))
}

func pngOf(t testing.TB, img image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// What the corners of a picture are, and where EXIF 2.3, table of tag 0x0112, puts
// them: "the 0th row is at the visual ... of the image, the 0th column ...".
func TestOrientation(t *testing.T) {
	// Blocks of 16 pixels, so that JPEG keeps them apart: as seen, 3 by 2.
	seen := [2][3]color.RGBA{
		{{200, 0, 0, 255}, {0, 200, 0, 255}, {0, 0, 200, 255}},
		{{200, 200, 0, 255}, {0, 200, 200, 255}, {200, 0, 200, 255}},
	}
	for o, at := range map[uint16]func(row, col int) (y, x int){
		1: func(r, c int) (int, int) { return r, c },         // top, left
		2: func(r, c int) (int, int) { return r, 2 - c },     // top, right
		3: func(r, c int) (int, int) { return 1 - r, 2 - c }, // bottom, right
		4: func(r, c int) (int, int) { return 1 - r, c },     // bottom, left
		5: func(r, c int) (int, int) { return c, r },         // left, top
		6: func(r, c int) (int, int) { return c, 2 - r },     // right, top
		7: func(r, c int) (int, int) { return 1 - c, 2 - r }, // right, bottom
		8: func(r, c int) (int, int) { return 1 - c, r },     // left, bottom
	} {
		rows, cols := 2, 3
		if o >= 5 {
			rows, cols = 3, 2
		}
		stored := image.NewRGBA(image.Rect(0, 0, 16*cols, 16*rows))
		for y := range 16 * rows {
			for x := range 16 * cols {
				r, c := at(y/16, x/16)
				stored.SetRGBA(x, y, seen[r][c])
			}
		}
		img, m, err := Read(bytes.NewReader(marked(t, stored, o)), Photo)
		if err != nil || m.Orientation != int(o) || img.Rect.Dx() != 48 || img.Rect.Dy() != 32 {
			t.Errorf("orientation %d: %v, %+v", o, err, m)
			continue
		}
		for r := range seen {
			for c := range seen[r] {
				got := img.RGBAAt(16*c+8, 16*r+8)
				if far(got, seen[r][c]) {
					t.Errorf("orientation %d: %v at row %d, column %d; want %v", o, got, r, c, seen[r][c])
				}
			}
		}
	}
}

func far(a, b color.RGBA) bool {
	d := func(x, y uint8) int { return max(int(x)-int(y), int(y)-int(x)) }
	return d(a.R, b.R) > 30 || d(a.G, b.G) > 30 || d(a.B, b.B) > 30
}

func TestScaled(t *testing.T) {
	img, m, err := Read(bytes.NewReader(pngOf(t, image.NewGray(image.Rect(0, 0, 3000, 40)))), Limits{Side: 100})
	if err != nil || img.Rect.Dx() != 100 || img.Rect.Dy() != 1 || m.Width != 3000 || m.Format != "png" {
		t.Errorf("%v, %+v, %v", err, m, img.Bounds())
	}
}

// Each pixel is the mean of what it covers: of three 0, 90, 180 in a row two are
// (0 + 90/2) / 1.5 and (90/2 + 180) / 1.5, by hand.
func TestMeans(t *testing.T) {
	img := image.NewGray(image.Rect(5, 5, 8, 8))
	for y := range 3 {
		for x := range 3 {
			img.SetGray(5+x, 5+y, color.Gray{Y: uint8(90 * x)})
		}
	}
	got := scaled(img, 2)
	for y := range 2 {
		if a, b := got.RGBAAt(0, y), got.RGBAAt(1, y); a.R != 30 || b.R != 150 || a.A != 255 {
			t.Errorf("row %d: %v, %v", y, a, b)
		}
	}
}

// Hostile files are refused with a word that says what to do, and without
// unpacking what they claim to be.
func TestRefused(t *testing.T) {
	whole := marked(t, image.NewRGBA(image.Rect(0, 0, 64, 64)), 6)
	ihdr := func(w, h uint32) []byte {
		d := binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(nil, w), h)
		return append([]byte("\x89PNG\r\n\x1a\n"), chunk("IHDR", append(d, 8, 6, 0, 0, 0))...)
	}
	huge := append(ihdr(60_000, 60_000), chunk("IDAT", bytes.Repeat([]byte{0x78}, 100))...)
	slow := bytes.Clone(whole) // progressive, 4000 by 4000
	copy(slow[bytes.Index(slow, []byte{0xff, 0xc0}):], []byte{0xff, 0xc2, 0, 17, 8, 0x0f, 0xa0, 0x0f, 0xa0})
	deep := append(append([]byte("\x89PNG\r\n\x1a\n"), chunk("IHDR", []byte{0, 0, 0x0f, 0xa0, 0, 0, 0x0f, 0xa0, 16, 6, 0, 0, 1})...), chunk("IDAT", []byte{0x78})...)
	sof := bytes.Clone(whole)
	i := bytes.Index(sof, []byte{0xff, 0xc0})
	copy(sof[i+5:], []byte{0xff, 0xff, 0xff, 0xff})
	for _, c := range []struct {
		name string
		data []byte
		want error
	}{
		{"nothing", nil, ErrType},
		{"text", []byte("not a picture"), ErrType},
		{"a GIF by another name", []byte("GIF89a\x01\x00\x01\x00"), ErrType},
		{"only a beginning", whole[:4], ErrDamaged},
		{"cut off", whole[:len(whole)-30], ErrDamaged},
		{"PNG that claims 3.6 thousand million pixels", huge, ErrTooLarge},
		{"JPEG that claims 65535 by 65535", sof, ErrTooLarge},
		{"JPEG that keeps its coefficients", slow, ErrTooLarge},
		{"PNG of 16 bits, interlaced", deep, ErrTooLarge},
		{"PNG without a size", ihdr(0, 0), ErrDamaged},
		{"too many bytes", append(bytes.Clone(whole), make([]byte, 9<<20)...), ErrTooLarge},
	} {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, _, err := Read(bytes.NewReader(c.data), Logo)
		runtime.ReadMemStats(&after)
		if !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
		if got := after.TotalAlloc - before.TotalAlloc; got > 48<<20 {
			t.Errorf("%s: %d MB were taken", c.name, got>>20)
		}
	}
}

// A mangled block of metadata leaves the picture as it lies.
func TestMangledMetadata(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 40, 20))
	for _, c := range []struct{ name, old, by string }{
		{"count of thousands of millions", "\x00\x00\x00\x01\x00\x06", "\xff\xff\xff\xff\x00\x06"},
		{"a directory beyond the end", "\x00\x00\x00\x08\x00\x01", "\xff\xff\xff\xf0\x00\x01"},
		{"a turn that does not exist", "\x00\x00\x00\x01\x00\x06", "\x00\x00\x00\x01\x00\x63"},
	} {
		data := strings.Replace(string(marked(t, img, 6)), c.old, c.by, 1)
		got, _, err := Read(strings.NewReader(data), Photo)
		if err != nil || got.Rect.Dx() != 40 {
			t.Errorf("%s: %v, %v", c.name, err, got.Bounds())
		}
	}
}

func FuzzRead(f *testing.F) {
	small := image.NewRGBA(image.Rect(0, 0, 9, 7))
	f.Add(marked(f, small, 5))
	f.Add(pngOf(f, small))
	f.Fuzz(func(t *testing.T, data []byte) {
		img, _, err := Read(bytes.NewReader(data), Limits{Bytes: 1 << 20, Pixels: 1 << 16, Memory: 4 << 20, Side: 64})
		if err == nil && (img.Rect.Dx() > 64 || img.Rect.Dy() > 64 || img.Rect.Empty()) {
			t.Errorf("got %v", img.Rect)
		}
	})
}

// The focal length in terms of 35 mm film (EXIF 2.3, tag 0xA405, in the EXIF
// directory that tag 0x8769 points to) is told, a silly one is not.
func TestFocalLength(t *testing.T) {
	for said, want := range map[uint16]int{26: 26, 0: 0, 5000: 0} {
		tiff := []byte("MM\x00*\x00\x00\x00\x08" + // header
			"\x00\x02" + "\x01\x12\x00\x03\x00\x00\x00\x01\x00\x06\x00\x00" + "\x87\x69\x00\x04\x00\x00\x00\x01\x00\x00\x00\x26" + "\x00\x00\x00\x00" +
			"\x00\x01" + "\xa4\x05\x00\x03\x00\x00\x00\x01")
		tiff = append(binary.BigEndian.AppendUint16(tiff, said), 0, 0, 0, 0, 0, 0)
		var b bytes.Buffer
		if err := jpeg.Encode(&b, image.NewRGBA(image.Rect(0, 0, 40, 20)), nil); err != nil {
			t.Fatal(err)
		}
		segment := append([]byte("Exif\x00\x00"), tiff...)
		data := binary.BigEndian.AppendUint16([]byte{0xff, 0xd8, 0xff, 0xe1}, uint16(len(segment)+2))
		data = append(append(data, segment...), b.Bytes()[2:]...)
		_, m, err := Read(bytes.NewReader(data), Photo)
		if err != nil || m.Focal35 != want || m.Orientation != 6 {
			t.Errorf("%d: %+v, %v", said, m, err)
		}
	}
}

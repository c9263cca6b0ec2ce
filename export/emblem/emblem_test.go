package emblem_test

import (
	"bytes"
	"flag"
	"image"
	"image/png"
	"os"
	"testing"

	"example.org/castwright/export/emblem"
)

var update = flag.Bool("update", false, "write the icon that packages carry")

// The icon that packages carry is the one that is drawn. A few levels are allowed for
// other machines' arithmetic.
func TestPackageIcon(t *testing.T) {
	const path, px = "../../assets/icon.png", 512
	drawn, err := emblem.PNG(px)
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile(path, drawn, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	file, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	want, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	got := emblem.Image(px)
	if got.Bounds() != want.Bounds() {
		t.Fatalf("the file is %v, the drawing %v", want.Bounds(), got.Bounds())
	}
	if n := unlike(got, want); n > px*px/1000 {
		t.Errorf("%d pixels differ: look at it, then run the test with -update", n)
	}
}

// unlike counts the pixels that differ by more than four levels.
func unlike(a, b image.Image) (n int) {
	for y := range a.Bounds().Dy() {
		for x := range a.Bounds().Dx() {
			r, g, bl, al := a.At(x, y).RGBA()
			s, h, c, am := b.At(x, y).RGBA()
			for _, d := range [...][2]uint32{{r, s}, {g, h}, {bl, c}, {al, am}} {
				if max(d[0], d[1])-min(d[0], d[1]) > 4<<8 {
					n++
					break
				}
			}
		}
	}
	return n
}

func TestImageSizes(t *testing.T) {
	for _, tt := range []struct{ ask, want int }{
		{-1, emblem.Least}, {0, emblem.Least}, {16, 16}, {33, 33}, {1 << 40, emblem.Most},
	} {
		m := emblem.Image(tt.ask)
		if got := m.Bounds().Dx(); got != tt.want {
			t.Errorf("asked for %d it is %d wide, want %d", tt.ask, got, tt.want)
		}
		if _, _, _, a := m.At(0, 0).RGBA(); a != 0 {
			t.Errorf("at %d the corner is not clear", tt.ask)
		}
		if _, _, _, a := m.At(tt.want/2, tt.want/2).RGBA(); a != 0xffff {
			t.Errorf("at %d the middle is not whole", tt.ask)
		}
	}
}

func BenchmarkImage(b *testing.B) {
	for b.Loop() {
		emblem.Image(128)
	}
}

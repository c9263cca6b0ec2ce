package scene_test

import (
	"math"
	"strings"
	"testing"

	"example.org/castwright/model/scene"
)

// TestDigitsAlike holds that digits have one width, so that columns of numbers
// stand under each other (the Go fonts have such digits by design).
func TestDigitsAlike(t *testing.T) {
	for _, bold := range []bool{false, true} {
		_, want := scene.Set("0", bold)
		for _, d := range "123456789" {
			if _, w := scene.Set(string(d), bold); w != want {
				t.Errorf("bold %v: %c is %g em wide, 0 is %g", bold, d, w, want)
			}
		}
		if want < 0.4 || want > 0.7 {
			t.Errorf("a digit is %g em wide", want)
		}
	}
}

func TestSet(t *testing.T) {
	for _, c := range []struct {
		name, text string
		glyphs     int
	}{
		{"plain", "25 1/2\"", 7},
		{"sign that only the other face has", "⌀ 35", 4},
		{"beyond the basic plane", "a\U0001f600b", 3},
		{"control characters", "a\x00\n\tb", 5},
		{"broken bytes", "a\xff\xfeb", 3},
		{"empty", "", 0},
		{"longer than is set", strings.Repeat("x", 5000), 2000},
	} {
		glyphs, width := scene.Set(c.text, false)
		if len(glyphs) != c.glyphs {
			t.Errorf("%s: %d glyphs, want %d", c.name, len(glyphs), c.glyphs)
		}
		last := -1.0
		for _, g := range glyphs {
			if g.Index == 0 {
				t.Errorf("%s: a glyph is missing", c.name)
			}
			if g.X <= last {
				t.Errorf("%s: a glyph stands at %g after %g", c.name, g.X, last)
			}
			last = g.X
		}
		if width < last || math.IsNaN(width) {
			t.Errorf("%s: width %g, last glyph at %g", c.name, width, last)
		}
	}
}

// TestSeen holds that right-to-left text is put into the order in which it is
// seen (Unicode Standard Annex 9): the first letter of Hebrew stands rightmost.
func TestSeen(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"Castwright", "Castwright"},
		{"שלום", "םולש"},
		{"a שלום b", "a םולש b"},
		{"A\u202eB\u200eC\u2066D\ufeff\x07", "ABCD "}, // marks of direction, a bell
	} {
		if got := scene.Seen(c.in); got != c.want {
			t.Errorf("%q is seen as %q, want %q", c.in, got, c.want)
		}
	}
}

func TestFitted(t *testing.T) {
	long := "A counter with a river of resin"
	for _, width := range []float64{0, 1, 12, 50, 100, 170, 1000} {
		got := scene.Fitted(long, 10, true, width)
		if _, w := scene.Set(got, true); w*10 > width && got != "" {
			t.Errorf("%g: %q is %g wide", width, got, w*10)
		}
		switch {
		case got == long, got == "":
		case !strings.HasSuffix(got, "…") || !strings.HasPrefix(long, strings.TrimSuffix(got, "…")):
			t.Errorf("%g: %q", width, got)
		}
	}
	if got := scene.Fitted(long, 10, true, 1000); got != long {
		t.Errorf("with room enough: %q", got)
	}
}

func FuzzSet(f *testing.F) {
	f.Add("25 1/2 ⌀ שלום \U0001f600\xff")
	f.Fuzz(func(t *testing.T, s string) {
		glyphs, w := scene.Set(s, len(s)%2 == 0)
		if math.IsNaN(w) || w < 0 || len(glyphs) > 2000 {
			t.Errorf("%q: %d glyphs, %g em", s, len(glyphs), w)
		}
	})
}

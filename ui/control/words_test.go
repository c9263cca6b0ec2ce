package control_test

import (
	"strings"
	"testing"

	"example.org/castwright/ui/control"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// TestWords holds every word of a text in its lines, in their order, and each
// line within its room.
func TestWords(t *testing.T) {
	a := test.NewTempApp(t)
	a.Settings().SetTheme(look.New(look.Light))
	l := control.NewWords()
	const word = "channel "
	for _, tt := range []struct {
		words, way, lines int
		whole             bool
	}{
		{0, 0, 1, true}, {1, 0, 1, true}, {30, 0, 2, true}, {52, 1, 3, true},
		{200, 1, 3, false},
	} {
		text := strings.TrimSpace(strings.Repeat(word, tt.words))
		lines, way, whole := l.Set(text, 900)
		if way != tt.way || len(lines) != tt.lines || whole != tt.whole {
			t.Errorf("%d words: %d lines in way %d, whole %v; want %d, %d, %v", tt.words, len(lines), way, whole,
				tt.lines, tt.way, tt.whole)
		}
		if whole && strings.Join(lines, " ") != text {
			t.Errorf("%d words became %q", tt.words, lines)
		}
		size := []float32{look.Body, look.Caption}[way]
		for _, line := range lines {
			if got := fyne.MeasureText(line, size, fyne.TextStyle{}).Width; got > 900 {
				t.Errorf("%d words: a line is %g wide, more than 900", tt.words, got)
			}
		}
	}
	// A word that is wider than the room is cut, and this is told.
	if _, _, whole := l.Set(strings.Repeat("x", 500), 900); whole {
		t.Error("a word wider than the room is said to be whole")
	}
}

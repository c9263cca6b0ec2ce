package paper_test

import (
	"bytes"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.org/castwright/export/paper"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
)

var ink = scene.Colour{A: 255}

// waves stands for a material's texture.
type waves struct{}

func (waves) At(x, y, _ float64) scene.Colour {
	v := uint8(128 + 60*math.Sin(x/7)*math.Cos(y/9))
	return scene.Colour{R: v, G: v, B: v - 20, A: 255}
}

func page(items ...scene.Item) scene.Page {
	return scene.Page{W: 210, H: 297, PerMM: 0.1, Origin: geom.Vec{X: 20, Y: 200}, Ground: scene.Colour{R: 255, G: 255, B: 255, A: 255}, Items: items}
}

func square(x, y, side float64) geom.Loop {
	return geom.Loop{{X: x, Y: y}, {X: x + side, Y: y}, {X: x + side, Y: y + side}, {X: x, Y: y + side}}
}

func write(t *testing.T, pages ...scene.Page) []byte {
	t.Helper()
	var buf bytes.Buffer
	if err := paper.Write(&buf, pages, paper.Info{Title: "Wash counter"}); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

// full is a page with one of everything.
func full() scene.Page {
	return page(
		scene.Fill{Loops: []geom.Loop{square(20, 20, 100)}, Paint: scene.Paint{Texture: waves{}}},
		scene.Fill{Loops: []geom.Loop{square(40, 40, 50)}, Paint: scene.Paint{Colour: scene.Colour{B: 200, A: 128}}},
		scene.Stroke{Lines: [][]geom.Vec{{{X: 20, Y: 140}, {X: 120, Y: 140}}}, Width: 0.3, Dash: []float64{2, 1}, Colour: ink},
		scene.Text{At: geom.Vec{X: 70, Y: 150}, Size: 5, Colour: ink, Text: `25 1/2" ⌀ 35 ≤ Ωμέγα`},
		scene.Text{At: geom.Vec{X: 10, Y: 80}, Size: 4, Angle: -math.Pi / 2, Bold: true, Colour: ink, Text: "turned"},
	)
}

func TestSameBytes(t *testing.T) {
	a, b := write(t, full(), full()), write(t, full(), full())
	if !bytes.Equal(a, b) {
		t.Error("the same pages gave other bytes")
	}
}

// Names from anywhere are shown or replaced, and never crash; nor do numbers
// that can't be drawn.
func TestHostileContent(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	var items []scene.Item
	for _, s := range []string{"", "😀 Ann", "שלום עולם", "مرحبا", "a\x00b\xffc", strings.Repeat("x", 5000), "日本語", "\U0010ffff"} {
		items = append(items, scene.Text{At: geom.Vec{X: 100, Y: 100}, Size: 4, Colour: ink, Text: s})
	}
	for _, v := range []float64{nan, inf, -inf, 1e300} {
		items = append(items,
			scene.Fill{Loops: []geom.Loop{square(v, 0, 10), square(0, 0, v)}, Paint: scene.Paint{Texture: waves{}}},
			scene.Fill{Loops: []geom.Loop{square(v, 0, 10)}, Paint: scene.Paint{Colour: ink}},
			scene.Stroke{Lines: [][]geom.Vec{{{X: v}, {Y: v}}, {{}}}, Width: 1, Colour: ink},
			scene.Stroke{Lines: [][]geom.Vec{{{}, {X: 1}}}, Width: v, Colour: ink},
			scene.Text{At: geom.Vec{X: v}, Size: 4, Colour: ink, Text: "x"},
			scene.Text{Size: v, Colour: ink, Text: "x"},
			scene.Text{Size: 4, Angle: v, Colour: ink, Text: "x"})
	}
	file := filepath.Join(t.TempDir(), "hostile.pdf")
	if err := os.WriteFile(file, write(t, page(items...)), 0o644); err != nil {
		t.Fatal(err)
	}
	if out := run(t, "qpdf", "--qdf", file, "-"); regexp.MustCompile(`NaN|Inf\b`).MatchString(out) {
		t.Error("a number that is none was written")
	}
}

// run runs a reader that is not ours, or skips the test where it is missing.
func run(t *testing.T, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Skipf("%s is not installed", name)
	}
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		t.Errorf("%s: %v\n%s", name, err, out)
	}
	return string(out)
}

func TestPageSizesAreChecked(t *testing.T) {
	for _, p := range []scene.Page{{}, {W: math.NaN(), H: 10}, {W: 10, H: 1e6}, {W: -1, H: 5}} {
		if err := paper.Write(&bytes.Buffer{}, []scene.Page{p}, paper.Info{}); err == nil {
			t.Errorf("a page of %g x %g was written", p.W, p.H)
		}
	}
	if err := paper.Write(&bytes.Buffer{}, nil, paper.Info{}); err == nil {
		t.Error("no pages were written")
	}
}

// What independent readers make of the file: poppler and qpdf, where installed.
func TestIndependentReaders(t *testing.T) {
	file := filepath.Join(t.TempDir(), "a.pdf")
	if err := os.WriteFile(file, write(t, full(), full()), 0o644); err != nil {
		t.Fatal(err)
	}
	if text := run(t, "pdftotext", file, "-"); !strings.Contains(text, `25 1/2" ⌀ 35 ≤ Ωμέγα`) || !strings.Contains(text, "turned") {
		t.Errorf("the text reads back as %q", text)
	}
	for _, line := range strings.Split(strings.TrimSpace(run(t, "pdffonts", file)), "\n")[2:] {
		if !strings.Contains(line, "yes") {
			t.Errorf("a font is not embedded: %s", line)
		}
	}
	run(t, "qpdf", "--check", file)
}

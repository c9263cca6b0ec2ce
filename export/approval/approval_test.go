package approval_test

import (
	"bytes"
	"context"
	"image"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/castwright/assets"
	"example.org/castwright/export/approval"
	"example.org/castwright/export/picture"
	"example.org/castwright/model/approve"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	qr "github.com/piglig/go-qr"
)

func demo(t testing.TB) design.Job {
	t.Helper()
	j, err := store.Decode(assets.Demos()[0].Data)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func made(t testing.TB, o approval.Order) *approval.Sheet {
	t.Helper()
	o.Quality, o.Dots = picture.First, 40
	s, err := approval.Make(context.Background(), o, nil)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func pdf(t testing.TB, o approval.Order) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := made(t, o).PDF(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// tool runs a tool of poppler, qpdf or zbar on a file, and skips when this
// machine has not got it.
func tool(t *testing.T, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Skipf("%s is not on this machine", name)
	}
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", name, err, out)
	}
	return string(out)
}

// The sheet is a valid PDF with all its fonts in it and its text to be had, by
// readers that are not ours: qpdf, and poppler's pdffonts and pdftotext.
func TestReadByOthers(t *testing.T) {
	j := demo(t)
	j.Client = "Ζωή Ωmega, Ünal & שלום 🏺 陶"
	j.Options[0].Price = design.Price{Amount: j.Materials.Mix.BagPrice, Note: "fitted"}
	for name, size := range map[string]draw.PaperSize{"A4": draw.PaperA4, "Letter": draw.PaperLetter} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "sheet.pdf")
			data := pdf(t, approval.Order{Job: j, Option: "A", Price: true, Date: "26 November 2026", Paper: size,
				Head: draw.Letterhead{Lines: []string{"Clay and Stone", "3 Kiln Lane"}, Logo: image.NewRGBA(image.Rect(0, 0, 300, 80))}})
			if err := os.WriteFile(path, data, 0o600); err != nil {
				t.Fatal(err)
			}
			tool(t, "qpdf", "--check", path)
			for _, line := range strings.Split(tool(t, "pdffonts", path), "\n")[2:] {
				if f := strings.Fields(line); len(f) > 5 && f[len(f)-5] != "yes" {
					t.Errorf("a font is not embedded: %s", line)
				}
			}
			text := tool(t, "pdftotext", "-layout", path, "-")
			for _, want := range []string{
				"Ζωή Ωmega, Ünal &", "Option A", "For approval, revision 1", "1580 mm", "1080 mm", "R 120 mm",
				"Under-mount, D-shaped bowl 460 mm × 350 mm", "Not included", "Care and cautions", "Clay and Stone", "fitted",
				approve.Fingerprint(j.Options[0].Design), "Page 2 of 2",
			} {
				if !strings.Contains(text, want) {
					t.Errorf("the text lacks %q", want)
				}
			}
			info := tool(t, "pdfinfo", path)
			if !strings.Contains(strings.ToLower(info), strings.ToLower(name)) {
				t.Errorf("paper: %s", info)
			}
		})
	}
}

// Lengths of the drawing, read from the paths that poppler finds, are those of the
// design at the scale that the sheet states: top, basin, hole and scale bar. A point
// of PDF is 1/72 in (ISO 32000-1, 8.3.2.3).
func TestScaleByPoppler(t *testing.T) {
	const mm, inch = units.Millimetre, units.Inch
	for _, c := range []struct {
		name           string
		sys            units.System
		paper          draw.PaperSize
		w, d, sink, os units.Length // width, depth, diameters of basin and hole
		bar            float64      // length of the scale bar, mm of the top
		scale          string
	}{
		{"A4", units.Metric, draw.PaperA4, 1500 * mm, 700 * mm, 370 * mm, 50 * mm, 500, "Scale 1:10 printed on A4"},
		{"Letter, metric", units.Metric, draw.PaperLetter, 2200 * mm, 600 * mm, 400 * mm, 60 * mm, 500, "Scale 1:15 printed on Letter"},
		{"Letter", units.Imperial, draw.PaperLetter, 61*inch + inch/2, 22*inch + inch/4, 16 * inch, 2 * inch, 24 * 25.4, "1\" = 1 ft (1:12) printed on Letter"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := demo(t)
			j.Units = c.sys
			d := design.Design{Outline: edit.Rectangle(c.w, c.d), Thickness: 40 * mm, Finish: design.Finish{Polish: 2}}
			d.Sinks = []design.Sink{{ID: "sink-1", At: design.Point{X: c.w / 2, Y: c.d / 2},
				Shape: design.Shape{Kind: design.ShapeCircle, Width: c.sink}}}
			d.Holes = []design.Hole{{ID: "hole-1", At: design.Point{X: c.w / 8, Y: c.d / 2}, Diameter: c.os}}
			j.Options = []design.Option{{Name: "A", Design: d}}
			path := filepath.Join(t.TempDir(), "sheet.pdf")
			if err := os.WriteFile(path, pdf(t, approval.Order{Job: j, Option: "A", Paper: c.paper}), 0o600); err != nil {
				t.Fatal(err)
			}
			if text := tool(t, "pdftotext", path, "-"); !strings.Contains(text, c.scale) {
				t.Fatalf("not drawn at %q:\n%s", c.scale, text)
			}
			one, err := strconv.ParseFloat(regexp.MustCompile(`1:(\d+)`).FindStringSubmatch(c.scale)[1], 64)
			if err != nil {
				t.Fatal(err)
			}
			svg := path + ".svg"
			tool(t, "pdftocairo", "-svg", "-noshrink", "-f", "1", "-l", "1", path, svg)
			data, err := os.ReadFile(svg)
			if err != nil {
				t.Fatal(err)
			}
			box := func(w, h float64) [2]float64 { return [2]float64{w / one / 25.4 * 72, h / one / 25.4 * 72} }
			want := map[string][2]float64{"basin": box(c.sink.MM(), c.sink.MM()), "hole": box(c.os.MM(), c.os.MM())}
			found, wide := map[string]bool{}, false
			var upright, level []float64 // where lines stand: dimensions' extension lines are among them
			// 0.1 mm of the top.
			tol := 0.1 / one / 25.4 * 72
			for _, m := range regexp.MustCompile(` d="([^"]*)"`).FindAllStringSubmatch(string(data), -1) {
				for _, part := range strings.Split(m[1], "M") {
					w, h, x, y := extent(part)
					if w < 0.01 && h > 5 {
						upright = append(upright, x)
					}
					if h < 0.01 && w > 5 {
						level = append(level, y)
					}
					for name, x := range want {
						if math.Abs(w-x[0]) < tol && math.Abs(h-x[1]) < tol {
							found[name] = true
						}
					}
					wide = wide || math.Abs(w-box(c.bar, 0)[0]) < tol && h < 6
				}
			}
			size := box(c.w.MM(), c.d.MM())
			if !apart(upright, size[0], tol) || !apart(level, size[1], tol) {
				t.Errorf("no lines are as far apart as the top is large, %.3f by %.3f pt", size[0], size[1])
			}
			for name, x := range want {
				if !found[name] {
					t.Errorf("no path is as large as the %s, %.3f by %.3f pt", name, x[0], x[1])
				}
			}
			if !wide {
				t.Errorf("no path is as long as a scale bar of %g mm", c.bar)
			}
		})
	}
}

// apart reports whether two of these places are so far from each other.
func apart(at []float64, far, tol float64) bool {
	for _, a := range at {
		for _, b := range at {
			if math.Abs(b-a-far) < tol {
				return true
			}
		}
	}
	return false
}

// extent is the size of a part of a path, of the commands L, C and Z, and its corner.
func extent(d string) (w, h, x, y float64) {
	lo, hi := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	k := 0
	for _, f := range strings.Fields(d) {
		v, err := strconv.ParseFloat(f, 64)
		if err != nil {
			k = 0
			continue
		}
		lo[k%2], hi[k%2] = min(lo[k%2], v), max(hi[k%2], v)
		k++
	}
	return hi[0] - lo[0], hi[1] - lo[1], lo[0], lo[1]
}

// The code on the sheet says what it should to a reader that is not the writer:
// zbar's.
func TestMarkByZbar(t *testing.T) {
	var b bytes.Buffer
	if err := made(t, approval.Order{Job: demo(t), Option: "B"}).PNG(&b, 1654); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "sheet.png")
	if err := os.WriteFile(path, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	got := tool(t, "zbarimg", "--quiet", "--raw", path)
	if want := approve.Fingerprint(demo(t).Options[1].Design); !strings.Contains(got, "Option B") || !strings.Contains(got, want) {
		t.Errorf("read %q, want option B and %s", got, want)
	}
}

// The same by the library's own reader, where zbar is missing.
func TestMark(t *testing.T) {
	const text = "Castwright approval\nΩ\n7K3M-0VXA"
	m, err := approval.Mark(text)
	if err != nil {
		t.Fatal(err)
	}
	const k, quiet = 4, 4
	img := image.NewGray(image.Rect(0, 0, k*(len(m)+2*quiet), k*(len(m)+2*quiet)))
	for i := range img.Pix {
		img.Pix[i] = 255
	}
	for y := range m {
		for x := range m[y] {
			for i := range k * k {
				if m[y][x] {
					img.Pix[(k*(y+quiet)+i/k)*img.Stride+k*(x+quiet)+i%k] = 0
				}
			}
		}
	}
	if got, err := qr.Decode(img); err != nil || got != text {
		t.Errorf("read %q, %v", got, err)
	}
}

func TestSameBytes(t *testing.T) {
	o := approval.Order{Job: demo(t), Option: "B", Date: "26 November 2026"}
	if !bytes.Equal(pdf(t, o), pdf(t, o)) {
		t.Error("two sheets of one job differ")
	}
}

// A revision is printed as it was that day, whatever came after.
func TestRevision(t *testing.T) {
	j := demo(t)
	j.Options[1].Design.Thickness = 50 * units.Millimetre
	j, err := approve.Approve("B", approve.Deal{Date: "2026-11-26", By: "The studio"}).Apply(j)
	if err != nil {
		t.Fatal(err)
	}
	j, err = edit.On("B", edit.SetThickness(60*units.Millimetre)).Apply(j)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(path, pdf(t, approval.Order{Job: j, Revision: 1}), 0o600); err != nil {
		t.Fatal(err)
	}
	text := tool(t, "pdftotext", "-layout", path, "-")
	for _, want := range []string{"Revision 1, agreed 2026-11-26 by The studio", "50 mm thick"} {
		if !strings.Contains(text, want) {
			t.Errorf("the text lacks %q", want)
		}
	}
	j.Approvals[0].Design.Thickness++
	if _, err := approval.Make(context.Background(), approval.Order{Job: j, Revision: 1}, nil); err == nil ||
		!strings.Contains(err.Error(), "not as approved") {
		t.Errorf("a revision that was changed is printed: %v", err)
	}
}

// Wild jobs make sheets, and what can't be made says why.
func TestDifficult(t *testing.T) {
	j := demo(t)
	j.Client = strings.Repeat("verylongname", 40)
	j.Options[0].Title = strings.Repeat("a river of many words ", 40)
	j.Options[0].Design.Notes = strings.Repeat("Notes go on and on, ", 200)
	j.Terms.Care = strings.Repeat("Care for it.\n", 120)
	var b bytes.Buffer
	if err := made(t, approval.Order{Job: j, Option: "A"}).PNG(&b, 3000); err != nil {
		t.Fatal(err)
	}
	if c, err := png.DecodeConfig(&b); err != nil || c.Height > 8192 || c.Width < 500 {
		t.Errorf("%v, %d by %d", err, c.Width, c.Height)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := approval.Make(ctx, approval.Order{Job: j, Option: "A"}, nil); err == nil {
		t.Error("a cancelled sheet was made")
	}
	for _, o := range []approval.Order{{Job: j, Option: "Z"}, {Job: j, Revision: 7}} {
		if _, err := approval.Make(context.Background(), o, nil); err == nil {
			t.Errorf("%q, revision %d: made", o.Option, o.Revision)
		}
	}
}

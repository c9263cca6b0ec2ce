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

// A length of the drawing, read from the paths that poppler finds, is that of the
// design at the sheet's scale. The top is 1500 mm wide, drawn 1:10: 150 mm, which
// is 425.197 points of 1/72 in (ISO 32000-1, 8.3.2.3).
func TestScaleByPoppler(t *testing.T) {
	j := demo(t)
	j.Options = []design.Option{{Name: "A", Design: design.Design{
		Outline: edit.Rectangle(1500*units.Millimetre, 700*units.Millimetre), Thickness: 40 * units.Millimetre,
		Finish: design.Finish{Polish: 2},
	}}}
	dir := t.TempDir()
	path := filepath.Join(dir, "sheet.pdf")
	if err := os.WriteFile(path, pdf(t, approval.Order{Job: j, Option: "A", Paper: draw.PaperA4}), 0o600); err != nil {
		t.Fatal(err)
	}
	if text := tool(t, "pdftotext", path, "-"); !strings.Contains(text, "Scale 1:10 printed on A4") {
		t.Fatalf("not drawn 1:10:\n%s", text)
	}
	svg := filepath.Join(dir, "sheet.svg")
	tool(t, "pdftocairo", "-svg", "-noshrink", "-f", "1", "-l", "1", path, svg)
	data, err := os.ReadFile(svg)
	if err != nil {
		t.Fatal(err)
	}
	want := map[float64]bool{1500. / 10 / 25.4 * 72: false, 700. / 10 / 25.4 * 72: false}
	for _, m := range regexp.MustCompile(` d="([^"]*)"`).FindAllStringSubmatch(string(data), -1) {
		for _, part := range strings.Split(m[1], "M") {
			w, h := extent(part)
			for x := range want {
				// 0.1 mm of the design at 1:10 is 0.01 mm of paper, 0.028 pt.
				if math.Abs(w-x) < 0.028 || math.Abs(h-x) < 0.028 {
					want[x] = true
				}
			}
		}
	}
	for x, found := range want {
		if !found {
			t.Errorf("no path is %.3f pt long", x)
		}
	}
}

// extent is the size of a part of a path, of the commands L, C and Z.
func extent(d string) (w, h float64) {
	lo, hi := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	k := 0
	for _, f := range strings.Fields(d) {
		x, err := strconv.ParseFloat(f, 64)
		if err != nil {
			k = 0
			continue
		}
		lo[k%2], hi[k%2] = min(lo[k%2], x), max(hi[k%2], x)
		k++
	}
	return hi[0] - lo[0], hi[1] - lo[1]
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

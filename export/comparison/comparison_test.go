package comparison_test

import (
	"bytes"
	"context"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"example.org/castwright/assets"
	"example.org/castwright/export/comparison"
	"example.org/castwright/export/picture"
	"example.org/castwright/model/approve"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"github.com/shopspring/decimal"
)

func demo(t testing.TB) design.Job {
	t.Helper()
	j, err := store.Decode(assets.Demos()[0].Data)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func pdf(t *testing.T, o comparison.Order) []byte {
	t.Helper()
	p, err := comparison.Make(context.Background(), o, nil)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := p.PDF(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// text is what poppler reads in a PDF that qpdf finds sound; without them the test
// is skipped.
func text(t *testing.T, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "a.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	var out []byte
	for _, call := range [][]string{{"qpdf", "--check", path}, {"pdftotext", "-layout", path, "-"}} {
		if _, err := exec.LookPath(call[0]); err != nil {
			t.Skipf("%s is not on this machine", call[0])
		}
		var err error
		if out, err = exec.Command(call[0], call[1:]...).CombinedOutput(); err != nil {
			t.Fatalf("%v: %v\n%s", call, err, out)
		}
	}
	return string(out)
}

func TestTwoOptions(t *testing.T) {
	j := demo(t)
	o := comparison.Order{Job: j, A: "A", B: "B", Date: "26 November 2026"}
	data := pdf(t, o)
	if !bytes.Equal(data, pdf(t, o)) {
		t.Error("the same page has other bytes")
	}
	got := text(t, data)
	for _, want := range []string{"Two options side by side", "Scale 1:25", "Half round", "Broken stone", "Weight, dry",
		"26 November 2026"} {
		if !strings.Contains(got, want) {
			t.Errorf("the text lacks %q", want)
		}
	}
	// What the materials cost is the maker's matter, told only when asked for.
	if strings.Contains(got, "Cost of materials") || strings.Contains(got, "€") {
		t.Errorf("the client reads what it costs the maker:\n%s", got)
	}
	o.Cost = true
	if got := text(t, pdf(t, o)); !strings.Contains(got, "Cost of materials") {
		t.Errorf("asked for, the cost is not told:\n%s", got)
	}
	j.Options[0].Price.Amount, j.Options[1].Price.Amount = decimal.New(1450, 0), decimal.New(1200, 0)
	got = text(t, pdf(t, comparison.Order{Job: j, A: "A", B: "B"}))
	if strings.Contains(got, "Cost of materials") || !strings.Contains(got, "−€250.00") {
		t.Errorf("with prices:\n%s", got)
	}
	got = text(t, pdf(t, comparison.Order{Job: j, A: "A", B: "B", Cost: true}))
	if !strings.Contains(got, "Cost of materials") || !strings.Contains(got, "−€250.00") {
		t.Errorf("with prices and cost:\n%s", got)
	}
}

func TestAsApproved(t *testing.T) {
	j := demo(t)
	var err error
	for _, e := range []edit.JobEdit{
		approve.Approve("A", approve.Deal{Date: "2026-11-26"}),
		edit.On("A", edit.MovePart(j.Options[0].Design.Sinks[0].ID, design.Point{X: -40 * units.Millimetre})),
	} {
		if j, err = e.Apply(j); err != nil {
			t.Fatal(err)
		}
	}
	got := text(t, pdf(t, comparison.Order{Job: j, A: comparison.Approved, B: "A"}))
	for _, want := range []string{"As approved and as it is now", "A, revision 1", "as approved 2026-11-26", "Sink moved 40 mm to the left"} {
		if !strings.Contains(got, want) {
			t.Errorf("the text lacks %q", want)
		}
	}
	// Any option may stand beside the revision of another.
	beside, err := comparison.Make(context.Background(), comparison.Order{Job: j, A: comparison.AsApproved("A"), B: "B"}, nil)
	if err != nil || beside == nil {
		t.Errorf("B beside A as approved: %v", err)
	}
	j.Approvals[0].Design.Thickness++
	if _, err := comparison.Make(context.Background(), comparison.Order{Job: j, A: comparison.Approved, B: "A"}, nil); err == nil ||
		!strings.Contains(err.Error(), "not as approved") {
		t.Errorf("a revision that was changed is shown as approved: %v", err)
	}
}

func TestPictures(t *testing.T) {
	stages := 0
	p, err := comparison.Make(context.Background(), comparison.Order{Job: demo(t), A: "A", B: "B", Pictures: true, Quality: picture.First},
		func(string, float64) { stages++ })
	if err != nil || stages == 0 {
		t.Fatalf("%v, told %d times", err, stages)
	}
	var b bytes.Buffer
	if err := p.PNG(&b, 900); err != nil {
		t.Fatal(err)
	}
	if c, err := png.DecodeConfig(bytes.NewReader(b.Bytes())); err != nil || c.Width != 900 {
		t.Errorf("%v, %d wide", err, c.Width)
	}
	above, err := comparison.Make(context.Background(), comparison.Order{Job: demo(t), A: "A", B: "B", Pictures: true, Above: true, Quality: picture.First}, nil)
	if err != nil {
		t.Fatal(err)
	}
	var c bytes.Buffer
	if err := above.PNG(&c, 900); err != nil || bytes.Equal(b.Bytes(), c.Bytes()) {
		t.Errorf("%v; from above it looks as from the front", err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := comparison.Make(ctx, comparison.Order{Job: demo(t), A: "A", B: "B", Pictures: true}, nil); err == nil {
		t.Error("a cancelled page was made")
	}
}

func TestRefuses(t *testing.T) {
	for want, o := range map[string]comparison.Order{
		`no option "Z"`: {A: "A", B: "Z"}, "not been approved": {A: "approved", B: "A"}, "the same": {A: "B", B: "B"},
		`option "B" has not been approved`: {A: "approved:B", B: "A"}, `no option "approvedB"`: {A: "approvedB", B: "A"},
	} {
		o.Job = demo(t)
		if _, err := comparison.Make(context.Background(), o, nil); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
}

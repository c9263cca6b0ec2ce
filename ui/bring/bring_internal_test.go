package bring

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/template"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/board"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

func TestPictureShowsWhatIsPicked(t *testing.T) {
	d, err := template.Read([]byte(`<svg width="300mm" height="200mm" viewBox="0 0 300 200"><rect x="20" y="20" width="200" height="100"/><circle cx="80" cy="70" r="20"/><circle cx="270" cy="150" r="20"/></svg>`), template.UnitUnknown)
	if err != nil {
		t.Fatal(err)
	}
	c := colours{ground: scene.Colour{A: 0xff}, faint: scene.Colour{G: 0xff, A: 0xff}, line: scene.Colour{B: 0xff, A: 0xff},
		body: scene.Colour{R: 0xff, A: 0xff}, words: scene.Colour{R: 0xff, G: 0xff, B: 0xff, A: 0xff}}
	count := func(picked int, turn units.Angle) (red int) {
		img := paint(d, picked, turn, false, units.Metric, c, 420, 380)
		for i := 0; i < len(img.Pix); i += 4 {
			if img.Pix[i] == 0xff && img.Pix[i+1] == 0 && img.Pix[i+2] == 0 {
				red++
			}
		}
		return red
	}
	plate, disc, none := count(0, 0), count(1, 0), count(-1, 0)
	if plate < 8*disc || disc < 100 || none != 0 {
		t.Errorf("%d pixels of the plate are filled, %d of the disc, %d of none", plate, disc, none)
	}
	if turned := count(0, 30*units.Degree); turned < plate/3 || turned > plate {
		t.Errorf("%d pixels filled when turned, %d before", turned, plate)
	}
}

// hands hears what is taken.
type hands struct{ put []board.Put }

func (h *hands) Put(p board.Put) { h.put = append(h.put, p) }

func newRig(t *testing.T) (*Bring, *hands) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Dark))
	w := test.NewTempWindow(t, widget.NewLabel(""))
	w.Resize(fyne.NewSize(1000, 700))
	f := control.NewFrame(w)
	f.Inline = true
	h := &hands{}
	return &Bring{Session: session.New(session.Blank(units.Metric), ""), Frame: f, Hands: h,
		Later: func(time.Duration, func()) {}}, h
}

// sinkFile is a rounded rectangle of 500 x 350 with a disc in it, of no unit
// (testdata/template/make.py).
var sinkFile = filepath.Join("..", "..", "testdata", "template", "sink-R12.dxf")

func TestUnitIsAskedFor(t *testing.T) {
	b, h := newRig(t)
	got, err := read(sinkFile)
	if err != nil || got.says || got.fixed {
		t.Fatalf("says %v, fixed %v, error %v", got.says, got.fixed, err)
	}
	s := b.show(got, Sink)
	if text := s.sizes.Text; !strings.Contains(text, "500 × 350 mm (mm)") || !strings.Contains(text, "12700 × 8890 mm (inches)") {
		t.Errorf("the sizes are told as %q", text)
	}
	if s.take() || len(h.put) > 0 || !strings.Contains(s.fault.Text, "millimetres or in inches") {
		t.Errorf("taken without a unit; the fault says %q", s.fault.Text)
	}
	s.unit = 1
	s.refresh()
	if len(s.tiles) != 1 {
		t.Errorf("%d outlines listed", len(s.tiles))
	}
	s.take()
	if len(h.put) != 1 || h.put[0].Sink == nil || h.put[0].Sink.Shape.Kind != design.ShapePath || b.Frame.Busy() {
		t.Fatalf("taken %+v, dialog open %v", h.put, b.Frame.Busy())
	}
	box := edit.FlatChain(h.put[0].Sink.Shape.Path).Bounds()
	if math.Abs(box.W()-500) > 0.01 || math.Abs(box.H()-350) > 0.01 || box.Centre().Norm() > 0.01 {
		t.Errorf("the sink measures %v", box)
	}
}

func TestEveryKindIsTaken(t *testing.T) {
	for as := Top; as <= Glass; as++ {
		b, h := newRig(t)
		got, err := read(sinkFile)
		if err != nil {
			t.Fatal(err)
		}
		s := b.show(got, as)
		s.unit, s.turn = 2, 90*units.Degree
		s.take()
		if len(h.put) != 1 || !h.put[0].Brought {
			t.Fatalf("%v: taken %+v", as, h.put)
		}
		p := h.put[0]
		if given := []bool{p.Outline != nil, p.Sink != nil, p.Channel != nil, p.Glass != nil}; !given[as] {
			t.Errorf("%s became %v", asWords[as].name, given)
		}
		if p.Outline != nil {
			if box := edit.FlatChain(p.Outline.Outer).Bounds(); math.Abs(box.H()-12700) > 0.1 || len(p.Outline.Islands) != 1 {
				t.Errorf("turned by a quarter, in inches: %v, %d holes", box, len(p.Outline.Islands))
			}
		}
	}
}

// A turn that can't be read stays as typed and is said; Esc changes nothing.
func TestTurnedAndCancelled(t *testing.T) {
	b, h := newRig(t)
	got, err := read(filepath.Join("..", "..", "testdata", "template", "oval-inch.dxf"))
	if err != nil || !got.says || got.fixed {
		t.Fatalf("says %v, fixed %v, error %v", got.says, got.fixed, err)
	}
	s := b.show(got, Top)
	s.turned.SetText("a bit")
	if s.take() || len(h.put) > 0 || s.fault.Text == "" || s.turned.Text != "a bit" {
		t.Errorf("taken %v, fault %q, text %q", h.put, s.fault.Text, s.turned.Text)
	}
	s.dialog.Esc()
	if b.Frame.Busy() || len(h.put) > 0 {
		t.Error("Esc did not back out")
	}
}

func TestWhatCantBeUsed(t *testing.T) {
	b, h := newRig(t)
	dir := t.TempDir()
	for name, text := range map[string]string{
		"empty.svg": "", "open.svg": `<svg width="9mm" height="9mm"><line x1="0" y1="0" x2="5" y2="5"/></svg>`,
		"text.dxf": "hello\nthere\n",
	} {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := read(path); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
		b.Open(path, Top)
		if !b.Frame.Busy() || len(h.put) > 0 {
			t.Errorf("%s: nothing is said", name)
		}
	}
	if _, err := read(filepath.Join(dir, "none.svg")); err == nil {
		t.Error("a file that is not there was read")
	}
	for path, want := range map[string]bool{"a.SVG": true, "b.dxf": true, "c.json": false, "svg": false} {
		if Can(path) != want {
			t.Errorf("Can(%q) = %v", path, !want)
		}
	}
}

package scribe

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/template"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/google/go-cmp/cmp"
)

const mm = units.Millimetre

func newRig(t *testing.T, sys units.System) *Scribe {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	beside := widget.NewLabel("")
	w := test.NewTempWindow(t, beside)
	w.Resize(fyne.NewSize(1000, 700))
	d := design.Design{Outline: edit.Rectangle(1200*mm, 500*mm), Thickness: 40 * mm}
	s := session.New(design.Job{Units: sys, Options: []design.Option{{Name: "A", Design: d}}}, "")
	return &Scribe{Session: s, Frame: control.NewFrame(w), Beside: beside}
}

// back is the wall edge of the rectangle, which runs from right to left.
const back = 2

func (t *table) typed(rows ...string) {
	for i, r := range rows {
		along, gap, _ := strings.Cut(r, "|")
		t.entries[i][0].SetText(along)
		t.entries[i][1].SetText(gap)
	}
}

func want(t *testing.T, s *Scribe, edits ...edit.Edit) {
	t.Helper()
	d := design.Design{Outline: edit.Rectangle(1200*mm, 500*mm), Thickness: 40 * mm}
	for _, e := range edits {
		var err error
		if d, err = e.Apply(d); err != nil {
			t.Fatal(err)
		}
	}
	if diff := cmp.Diff(d, s.Session.Design()); diff != "" {
		t.Errorf("the design differs from the one made in code (-want +got):\n%s", diff)
	}
}

// TestScribe types offsets from the left, in no order: the drawing follows, and
// it is one step of undo.
func TestScribe(t *testing.T) {
	s := newRig(t, units.Metric)
	tab := s.Show(back)
	tab.typed("900|-3", "300|2", "1200|4")
	// Measured from the left end, which is the edge's last.
	e := edit.ScribeEdge(back, []edit.Offset{{Along: 0, Gap: 4 * mm}, {Along: 300 * mm, Gap: -3 * mm}, {Along: 900 * mm, Gap: 2 * mm}})
	want(t, s, e)
	tab.apply()
	want(t, s, e)
	if s.Frame.Busy() || s.Session.UndoName() != "Scribe edge" {
		t.Errorf("the table is open: %v; undo would take back %q", s.Frame.Busy(), s.Session.UndoName())
	}
	s.Session.Undo()
	want(t, s)
	// From the other end, by the button.
	tab = s.Show(back)
	tab.typed("300|2")
	tab.from.SetPicked(1)
	tab.flip = !tab.flip
	tab.apply()
	want(t, s, edit.ScribeEdge(back, []edit.Offset{{Along: 300 * mm, Gap: 2 * mm}}))
}

// TestScribeBacksOut: Esc leaves no trace, and what was typed is there again.
func TestScribeBacksOut(t *testing.T) {
	s := newRig(t, units.Metric)
	tab := s.Show(back)
	tab.typed("300|2", "600|5")
	s.Frame.Key(&fyne.KeyEvent{Name: fyne.KeyEscape})
	want(t, s)
	if s.Frame.Busy() || s.Session.UndoName() != "" {
		t.Errorf("open %v, undo %q", s.Frame.Busy(), s.Session.UndoName())
	}
	tab = s.Show(back)
	if got := tab.rows()[:2]; got[0] != (row{"300", "2"}) || got[1] != (row{"600", "5"}) {
		t.Errorf("typed before: %v", got)
	}
	if s.Session.UndoName() != "Scribe edge" {
		t.Error("what was typed is not shown again")
	}
	tab.card.Close()
	if other := s.Show(0); other.rows()[0] != (row{}) {
		t.Errorf("another edge starts with %v", other.rows())
	}
}

// TestScribeFaults: what can't be used is said and stays as typed; Scribe waits.
func TestScribeFaults(t *testing.T) {
	for _, c := range []struct{ rows, fault string }{
		{"300|2x", "row 1"}, {"|4", "row 1"}, {"300|2;300|3", "two rows"}, {"-5|2", "before the end"},
		{"1300|2", "1300 mm lies beyond"}, {"", "nothing has been typed"},
	} {
		s := newRig(t, units.Metric)
		tab := s.Show(back)
		tab.typed(strings.Split(c.rows, ";")...)
		tab.apply()
		if !s.Frame.Busy() || !strings.Contains(strings.ToLower(tab.fault.Text), c.fault) {
			t.Errorf("%q: open %v, fault %q", c.rows, s.Frame.Busy(), tab.fault.Text)
		}
		tab.card.Close()
		want(t, s)
	}
}

func TestPasted(t *testing.T) {
	for _, c := range []struct {
		sys  units.System
		text string
		want []row
	}{
		{units.Metric, "300\t2\r\n600\t-1,5\r\n", []row{{"300", "2"}, {"600", "-1,5"}}},
		{units.Metric, "along, gap\n300 2\n\n600   5", []row{{"300", "2"}, {"600", "5"}}},
		{units.Metric, "12,5;2\n30 cm; 4", []row{{"12,5", "2"}, {"30 cm", "4"}}},
		{units.Imperial, "25 1/2 1/8\n47 -1/16", []row{{"25 1/2", "1/8"}, {"47", "-1/16"}}},
		{units.Imperial, `12", 1/4`, []row{{`12"`, "1/4"}}},
		{units.Metric, "600", []row{{"600", ""}}},
	} {
		got, err := pasted(c.text, c.sys)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		for i := range got {
			got[i].along = strings.TrimSuffix(got[i].along, ",")
		}
		if diff := cmp.Diff(c.want, got, cmp.AllowUnexported(row{})); diff != "" {
			t.Errorf("%q (-want +got):\n%s", c.text, diff)
		}
	}
	for _, text := range []string{"", "hello\nthere", "300 2\nx y", strings.Repeat("1 2\n", mostRows+1), "300\tx"} {
		if got, err := pasted(text, units.Metric); err == nil {
			t.Errorf("%q was read as %v", text[:min(20, len(text))], got)
		}
	}
}

// TestPasteButton takes a list of inches from the clipboard.
func TestPasteButton(t *testing.T) {
	s := newRig(t, units.Imperial)
	tab := s.Show(back)
	fyne.CurrentApp().Clipboard().SetContent("12\t1/8\n24 1/2\t1/4")
	tab.paste()
	if len(tab.entries) != 3 {
		t.Fatalf("%d rows", len(tab.entries))
	}
	in := units.Inch
	length := 1200 * mm
	want(t, s, edit.ScribeEdge(back, []edit.Offset{{Along: length - 49*in/2, Gap: in / 4}, {Along: length - 12*in, Gap: in / 8}}))
	fyne.CurrentApp().Clipboard().SetContent("nothing of use")
	tab.paste()
	if tab.fault.Text == "" || len(tab.entries) != 3 {
		t.Errorf("fault %q, %d rows", tab.fault.Text, len(tab.entries))
	}
}

// TestScan takes the back edge's offsets from a drawing that does not say its
// unit; the wall bellies away, to the back, by 6 mm in the middle.
func TestScan(t *testing.T) {
	s := newRig(t, units.Metric)
	path := filepath.Join(t.TempDir(), "wall.dxf")
	text := strings.Join(strings.Fields("0 SECTION 2 ENTITIES 0 LWPOLYLINE 70 0 10 1300 20 100 10 700 20 106 10 300 20 104 10 100 20 100 0 ENDSEC 0 EOF"), "\n") + "\n"
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	tab := s.Show(back)
	tab.scan(path)
	data, err := readScan(path)
	if err != nil {
		t.Fatal(err)
	}
	lines, err := template.Walls(data, template.UnitMM)
	tab.takeScan(path, lines, err)
	// From its left end, at x = 100.
	if got := tab.rows()[:2]; got[0] != (row{"200.0", "4.0"}) || got[1] != (row{"600.0", "6.0"}) {
		t.Errorf("rows %v", got)
	}
	want(t, s, edit.ScribeEdge(back, []edit.Offset{{Along: 600 * mm, Gap: 6 * mm}, {Along: 1000 * mm, Gap: 4 * mm}}))
	// Of a front edge, which runs along the wall, the same line is on the inside.
	if got := wallRows(lines[0], 1200*mm, false, units.Metric); got[1].gap != "-6.0" {
		t.Errorf("along the front %v", got)
	}
	tab.takeScan(path, nil, template.ErrUnits)
	if !strings.Contains(tab.fault.Text, "wall.dxf") {
		t.Errorf("the fault says %q", tab.fault.Text)
	}
	// A long scan is thinned until it fits the table.
	var jagged []geom.Vec
	for i := range 2000 {
		jagged = append(jagged, geom.Vec{X: float64(i), Y: float64(i%2) * 4})
	}
	if n := len(wallRows(jagged, 3000*mm, true, units.Metric)); n >= mostRows {
		t.Errorf("%d rows", n)
	}
}

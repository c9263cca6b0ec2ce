package approval

import (
	"bytes"
	"example.org/castwright/export/comparison"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/castwright/assets"
	"example.org/castwright/export/letterhead"
	"example.org/castwright/export/picture"
	"example.org/castwright/model/approve"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// rig is a desk in a window without a screen, on the demo job, in a folder of its own.
type rig struct {
	*testing.T
	dir string
	s   *session.Session
	f   *control.Frame
	d   *Desk
	ran []keys.ID
}

func newRig(t *testing.T) *rig {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	w := test.NewTempWindow(t, widget.NewLabel(""))
	w.Resize(fyne.NewSize(1100, 800))
	frame := control.NewFrame(w)
	frame.Inline = true
	j, err := store.Decode(assets.Demos()[0].Data)
	if err != nil {
		t.Fatal(err)
	}
	r := &rig{T: t, dir: t.TempDir(), s: session.New(j, ""), f: frame}
	set := files.LoadSettings(filepath.Join(r.dir, "config", "settings.json"))
	set.Folder = r.dir
	later := func(d time.Duration, do func()) {
		if d == calm {
			do()
		}
	}
	f := files.New(r.s, frame, set, later)
	f.Now = func() time.Time { return time.Date(2031, 5, 4, 12, 0, 0, 0, time.UTC) }
	r.d = New(r.s, frame, f, func(id keys.ID) { r.ran = append(r.ran, id) }, later)
	r.d.quality = picture.First
	return r
}

// press presses the button of the open card with these words.
func (r *rig) press(words string) {
	r.Helper()
	var said []string
	var walk func(o fyne.CanvasObject) bool
	walk = func(o fyne.CanvasObject) bool {
		if b, ok := o.(*control.Button); ok {
			said = append(said, b.Face().Text)
			if b.Face().Text == words {
				b.Tapped(nil)
				return true
			}
		}
		for _, c := range children(o) {
			if walk(c) {
				return true
			}
		}
		return false
	}
	top := r.f.Window.Canvas().Overlays().Top()
	if top == nil || !walk(top) {
		r.Fatalf("no button %q; there are %q", words, said)
	}
}

func children(o fyne.CanvasObject) []fyne.CanvasObject {
	switch o := o.(type) {
	case *fyne.Container:
		return o.Objects
	case fyne.Widget:
		return test.WidgetRenderer(o).Objects()
	}
	return nil
}

// tick ticks the box of the open card with these words.
func (r *rig) tick(words string) {
	r.Helper()
	found := false
	var walk func(o fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		if c, ok := o.(*control.Check); ok && strings.HasPrefix(c.Text, words) {
			found = true
			c.Tapped(&fyne.PointEvent{Position: fyne.NewPos(10, 10)})
			return
		}
		for _, c := range children(o) {
			walk(c)
		}
	}
	walk(r.f.Window.Canvas().Overlays().Top())
	if !found {
		r.Fatalf("no box %q", words)
	}
}

// pdfText is what poppler reads in a file; the test is skipped without it.
func (r *rig) pdfText(path string) string {
	r.Helper()
	if _, err := exec.LookPath("pdftotext"); err != nil {
		r.Skip("pdftotext is not on this machine")
	}
	out, err := exec.Command("pdftotext", "-layout", path, "-").CombinedOutput()
	if err != nil {
		r.Fatalf("%v: %s", err, out)
	}
	return string(out)
}

// entry is the entry of the open card that is hinted by these words.
func (r *rig) entry(hint string) *control.Entry {
	r.Helper()
	var found *control.Entry
	var walk func(o fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		if e, ok := o.(*control.Entry); ok && strings.HasPrefix(e.Hint(), hint) {
			found = e
			return
		}
		for _, c := range children(o) {
			walk(c)
		}
	}
	walk(r.f.Window.Canvas().Overlays().Top())
	if found == nil {
		r.Fatalf("no entry %q", hint)
	}
	return found
}

// reads is all that the open card says.
func (r *rig) reads() string {
	r.Helper()
	var out []string
	var walk func(o fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		switch o := o.(type) {
		case *control.Text:
			out = append(out, o.Text())
		case *widget.Label:
			out = append(out, o.Text)
		}
		for _, c := range children(o) {
			walk(c)
		}
	}
	if top := r.f.Window.Canvas().Overlays().Top(); top != nil {
		walk(top)
	}
	return strings.Join(out, "\n")
}

func (r *rig) chip(want string) {
	r.Helper()
	if got := r.d.Chip.Face().Text; got != want {
		r.Errorf("the chip says %q, want %q", got, want)
	}
}

// The chip follows: not approved, approved, changed, back by undo, another option.
func TestChip(t *testing.T) {
	r := newRig(t)
	r.chip("Not approved yet")
	r.d.Mark()
	r.entry("Who agreed").SetText("The studio")
	r.press("Mark as approved")
	r.chip("Approved, revision 1")
	if a := r.s.Job().Approvals; len(a) != 1 || a[0].Date != "2031-05-04" || a[0].By != "The studio" {
		t.Errorf("approvals %+v", a)
	}
	if err := r.s.Do(edit.SetThickness(50 * units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	r.chip("Changed since revision 1: 1 change")
	r.s.Undo()
	r.chip("Approved, revision 1")
	r.s.SetOption("B")
	r.chip("Not approved yet")
	r.d.Chip.Tapped(nil)
	if len(r.ran) != 1 || r.ran[0] != keys.ShowApproved {
		t.Errorf("the chip runs %v", r.ran)
	}
}

// A day that is none is said, and the dialog stays with what was typed.
func TestMarkRefuses(t *testing.T) {
	r := newRig(t)
	r.d.Mark()
	r.entry("The day").SetText("yesterday")
	r.press("Mark as approved")
	if !strings.Contains(r.reads(), `"yesterday" is not like 2026-11-26`) || len(r.s.Job().Approvals) > 0 {
		t.Errorf("the dialog says:\n%s", r.reads())
	}
	if r.entry("The day").Text != "yesterday" {
		t.Error("what was typed is gone")
	}
}

// What was approved, what has changed in words and money, and the way back.
func TestShow(t *testing.T) {
	r := newRig(t)
	if err := r.s.DoJob(approve.Approve("A", approve.Deal{Date: "2031-05-04"})); err != nil {
		t.Fatal(err)
	}
	if err := r.s.Do(edit.SetThickness(50 * units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	r.d.Show()
	for _, want := range []string{"Changed since revision 1", "Thickness 50 mm, was 40 mm", "Fingerprint A1B9-", "Weight, dry", "Cost of materials"} {
		if !strings.Contains(r.reads(), want) {
			t.Errorf("the dialog lacks %q:\n%s", want, r.reads())
		}
	}
	r.press("Bring it back")
	r.chip("Approved, revision 1")
	options := r.s.Job().Options
	if n := len(options); n != 3 || options[2].Design.Thickness != 50*units.Millimetre || !strings.Contains(options[2].Title, "changed since revision 1") {
		t.Errorf("%d options", n)
	}
	r.d.Show()
	r.press("Withdraw…")
	r.press("Withdraw")
	r.chip("Not approved yet")
	if a := r.s.Job().Approvals[0]; a.Withdrawn != "2031-05-04" {
		t.Errorf("withdrawn %q", a.Withdrawn)
	}
}

// The sheet is made with what was typed, which the job keeps as one step.
func TestSheet(t *testing.T) {
	r := newRig(t)
	r.d.MakeSheet()
	r.entry("What the client pays").SetText("1450,50")
	r.entry("What the price covers").SetText("All of it")
	r.press("Make the sheet…")
	r.entry("A name in this folder").SetText(filepath.Join(r.dir, "sheet.pdf"))
	r.press("Write")
	data, err := os.ReadFile(filepath.Join(r.dir, "sheet.pdf"))
	if err != nil || !bytes.HasPrefix(data, []byte("%PDF-")) {
		t.Fatalf("%v\n%s", err, r.reads())
	}
	j := r.s.Job()
	if j.Terms.Included != "All of it" || j.Terms.Care != "" || j.Options[0].Price.Amount.String() != "1450.5" {
		t.Errorf("the job keeps %+v, %v", j.Terms, j.Options[0].Price)
	}
	if r.s.UndoName() != "Change the sheet's words" {
		t.Errorf("undo %q", r.s.UndoName())
	}
	if len(j.Approvals) > 0 {
		t.Error("making a sheet froze something")
	}
}

func TestSheetRefuses(t *testing.T) {
	r := newRig(t)
	r.d.MakeSheet()
	r.entry("What the client pays").SetText("a lot")
	r.press("Make the sheet…")
	if !strings.Contains(r.reads(), `"a lot" is no price`) {
		t.Errorf("the dialog says:\n%s", r.reads())
	}
}

func TestLetterhead(t *testing.T) {
	r := newRig(t)
	logo := filepath.Join(r.dir, "logo.png")
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewGray(image.Rect(0, 0, 30, 20))); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(logo, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	told := false
	r.d.EditLetterhead(func() { told = true })
	r.entry("The name of").SetText("Kiln Lane")
	r.entry("Address").SetText("3 Kiln Lane\nHarbourside")
	r.press("Choose a picture…")
	r.entry("A name in this folder").SetText(logo)
	r.press("Choose")
	r.press("Keep")
	h, err := letterhead.Read(r.d.files.Settings.LetterheadPath())
	if err != nil || !told || len(h.Lines) != 3 || h.Logo == nil {
		t.Errorf("%v, told %v, %+v", err, told, h.Lines)
	}
	// A logo that is none leaves what was there and says why.
	if err := os.WriteFile(logo, []byte("<svg/>"), 0o600); err != nil {
		t.Fatal(err)
	}
	r.d.EditLetterhead(nil)
	r.press("Choose a picture…")
	r.entry("A name in this folder").SetText(logo)
	r.press("Choose")
	if !strings.Contains(r.reads(), "export it as PNG") {
		t.Errorf("the dialog says:\n%s", r.reads())
	}
}

func TestComparison(t *testing.T) {
	r := newRig(t)
	r.d.ExportComparison(comparison.Order{A: "A", B: "A"})
	r.press("Export…")
	if !strings.Contains(r.reads(), "the same one") {
		t.Errorf("the dialog says:\n%s", r.reads())
	}
	r.press("Cancel")
	if err := r.s.DoJob(approve.Approve("A", approve.Deal{Date: "2031-05-04"})); err != nil {
		t.Fatal(err)
	}
	if err := r.s.Do(edit.SetThickness(50 * units.Millimetre)); err != nil {
		t.Fatal(err)
	}
	r.d.ExportComparison(comparison.Order{})
	r.press("Export…")
	r.entry("A name in this folder").SetText(filepath.Join(r.dir, "both.pdf"))
	r.press("Write")
	if info, err := os.Stat(filepath.Join(r.dir, "both.pdf")); err != nil || info.Size() < 1000 {
		t.Errorf("%v\n%s", err, r.reads())
	}
	r.press("Close")
	for _, cost := range []bool{false, true} {
		path := filepath.Join(r.dir, map[bool]string{false: "client.pdf", true: "own.pdf"}[cost])
		r.d.ExportComparison(comparison.Order{})
		if cost {
			r.tick("Tell what the materials cost")
		}
		r.press("Export…")
		r.entry("A name in this folder").SetText(path)
		r.press("Write")
		r.press("Close")
		if got := r.pdfText(path); strings.Contains(got, "Cost of materials") != cost || strings.Contains(got, "€") != cost {
			t.Errorf("cost asked for: %v; the page says:\n%s", cost, got)
		}
	}
}

// A revision that was changed in the file is told when the job is opened.
func TestVerify(t *testing.T) {
	r := newRig(t)
	j, err := approve.Approve("A", approve.Deal{Date: "2031-05-04"}).Apply(r.s.Job())
	if err != nil {
		t.Fatal(err)
	}
	r.s.Load(j, "")
	r.d.Verify()
	if r.f.Busy() {
		t.Errorf("a sound job is warned of:\n%s", r.reads())
	}
	j.Approvals[0].Design.Thickness++
	r.s.Load(j, "")
	r.d.Verify()
	if !strings.Contains(r.reads(), "changed outside this program") {
		t.Errorf("the window says:\n%s", r.reads())
	}
	r.chip("Revision 1 is not as signed")
}

// What can't be printed is said when the dialog opens, and once more before the sheet
// is made; then it is made all the same.
func TestSheetSaysWhatIsUnseen(t *testing.T) {
	r := newRig(t)
	j := r.s.Job()
	j.Client = "田中"
	r.s.Load(j, "")
	r.d.MakeSheet()
	if !strings.Contains(r.reads(), "no letters for 田 中") {
		t.Errorf("the dialog says:\n%s", r.reads())
	}
	r.press("Make the sheet…")
	if !strings.Contains(r.reads(), "Pressing again") {
		t.Errorf("the dialog says:\n%s", r.reads())
	}
	r.press("Make the sheet…")
	r.entry("A name in this folder")
}

// Printing the sheet of an approved revision says the same, of what was approved: the
// client may be called otherwise by now.
func TestItsSheetSaysWhatIsUnseen(t *testing.T) {
	r := newRig(t)
	j := r.s.Job()
	j.Client = "田中"
	r.s.Load(j, "")
	if err := r.s.DoJob(approve.Approve("A", approve.Deal{Date: "2031-05-04", By: "שלום"})); err != nil {
		t.Fatal(err)
	}
	j = r.s.Job()
	j.Client = "Tanaka"
	r.s.Load(j, "")
	path := filepath.Join(r.dir, "again.pdf")
	r.d.Show()
	r.press("Its sheet…")
	if !strings.Contains(r.reads(), "no letters for 田 中") || !strings.Contains(r.reads(), "The client's name: ") {
		t.Errorf("the window says:\n%s", r.reads())
	}
	r.press("Cancel")
	if r.f.Busy() {
		t.Errorf("cancelled, the window says:\n%s", r.reads())
	}
	r.d.Show()
	r.press("Its sheet…")
	r.press("Make the sheet all the same")
	r.entry("A name in this folder").SetText(path)
	r.press("Write")
	if info, err := os.Stat(path); err != nil || info.Size() < 1000 {
		t.Errorf("%v\n%s", err, r.reads())
	}
}

// The sheet takes the top in the client's room where the job has a photograph of it, and
// does not offer it where there is none.
func TestSheetInRoom(t *testing.T) {
	r := newRig(t)
	r.d.MakeSheet()
	if said := r.buttons(); slices.Contains(said, "Room") || slices.Contains(said, "Both") || !slices.Contains(said, "None") {
		t.Errorf("without a room there are %q", said)
	}
	r.press("Cancel")
	var photo bytes.Buffer
	if err := png.Encode(&photo, image.NewGray(image.Rect(0, 0, 400, 300))); err != nil {
		t.Fatal(err)
	}
	job := filepath.Join(r.dir, "job.json")
	name, sum, err := store.KeepPhoto(job, photo.Bytes(), ".png")
	if err != nil {
		t.Fatal(err)
	}
	spot := func(x, y units.Share) design.Spot { return design.Spot{X: x * units.Percent, Y: y * units.Percent} }
	j := r.s.Job()
	j.Room = design.Room{Photo: name, SHA256: sum, Corners: [4]design.Spot{spot(25, 30), spot(75, 30), spot(88, 70), spot(12, 70)},
		Width: 500 * units.Millimetre, Depth: 300 * units.Millimetre, At: design.Point{X: 9 * units.Metre}}
	r.s.Load(j, job)
	path := filepath.Join(r.dir, "in-room.pdf")
	r.d.MakeSheet()
	r.press("Room")
	r.press("Make the sheet…")
	r.entry("A name in this folder").SetText(path)
	r.press("Write")
	if !strings.Contains(r.reads(), "is written") || !strings.Contains(r.reads(), "lies outside the photograph") {
		t.Errorf("the window says:\n%s", r.reads())
	}
	if got := r.pdfText(path); !strings.Contains(got, "Set into a photograph of the room.") {
		t.Errorf("the sheet says:\n%s", got)
	}
}

// buttons is the words of the buttons of the open card.
func (r *rig) buttons() []string {
	var said []string
	var walk func(o fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		if b, ok := o.(*control.Button); ok {
			said = append(said, b.Face().Text)
		}
		for _, c := range children(o) {
			walk(c)
		}
	}
	walk(r.f.Window.Canvas().Overlays().Top())
	return said
}

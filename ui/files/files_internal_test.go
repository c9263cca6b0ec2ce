package files

import (
	"fmt"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/castwright/assets"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/session"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// rig is files in a window without a screen, in a folder of their own.
type rig struct {
	t   *testing.T
	dir string
	s   *session.Session
	f   *Files
}

func newRig(t *testing.T) *rig {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	w := test.NewTempWindow(t, widget.NewLabel(""))
	w.Resize(fyne.NewSize(1000, 700))
	frame := control.NewFrame(w)
	frame.Inline = true
	dir := t.TempDir()
	s := session.New(session.Blank(units.Metric), "")
	set := LoadSettings(filepath.Join(dir, "config", "settings.json"))
	set.Folder = dir
	f := New(s, frame, set, func(time.Duration, func()) {})
	f.Now = func() time.Time { return time.Date(2031, 5, 4, 12, 0, 0, 0, time.UTC) }
	return &rig{t, dir, s, f}
}

func (r *rig) change() {
	r.t.Helper()
	if err := r.s.Do(edit.SetThickness(55 * units.Millimetre)); err != nil {
		r.t.Fatal(err)
	}
}

// asking reports whether a dialog is open.
func (r *rig) asking() bool { return r.f.frame.Busy() }

// key presses a key in the dialog that is open.
func (r *rig) key(name fyne.KeyName) {
	r.t.Helper()
	if !r.asking() {
		r.t.Fatalf("no dialog is open to press %s in", name)
	}
	if focused := r.f.frame.Window.Canvas().Focused(); focused != nil {
		focused.TypedKey(&fyne.KeyEvent{Name: name})
		return
	}
	r.f.frame.Key(&fyne.KeyEvent{Name: name})
}

// write types a text in place of what the entry of the open dialog holds.
func (r *rig) write(text string) {
	r.t.Helper()
	e, ok := r.f.frame.Window.Canvas().Focused().(*control.Entry)
	if !ok {
		r.t.Fatalf("%T has the keyboard, no entry", r.f.frame.Window.Canvas().Focused())
	}
	e.SetText(text)
}

func TestGuard(t *testing.T) {
	t.Run("clean", func(t *testing.T) {
		r := newRig(t)
		went := false
		r.f.Guard("Quitting", func() { went = true })
		if !went || r.asking() {
			t.Errorf("nothing to lose: went on %v, asks %v", went, r.asking())
		}
	})
	t.Run("stay", func(t *testing.T) {
		r := newRig(t)
		r.change()
		went := false
		r.f.Guard("Quitting", func() { went = true })
		if went || !r.asking() {
			t.Fatalf("changes: went on %v, asks %v", went, r.asking())
		}
		r.key(fyne.KeyEscape)
		if went || r.asking() || !r.s.Dirty() {
			t.Errorf("Esc: went on %v, asks %v, dirty %v", went, r.asking(), r.s.Dirty())
		}
	})
	t.Run("save", func(t *testing.T) {
		r := newRig(t)
		path := filepath.Join(r.dir, "bench.json")
		r.f.write(path, nil)
		r.change()
		went := false
		r.f.Guard("Quitting", func() { went = true })
		r.key(fyne.KeyReturn)
		if !went || r.s.Dirty() {
			t.Errorf("Enter: went on %v, dirty %v", went, r.s.Dirty())
		}
		if j, err := store.Load(path); err != nil || j.Options[0].Design.Thickness != 55*units.Millimetre {
			t.Errorf("the file holds %v, %v", j.Options, err)
		}
	})
	t.Run("save a new one", func(t *testing.T) {
		r := newRig(t)
		r.change()
		went := false
		r.f.Guard("Quitting", func() { went = true })
		r.key(fyne.KeyReturn)
		if went || !r.asking() {
			t.Fatalf("a job without a file: went on %v, asks for a path %v", went, r.asking())
		}
		r.key(fyne.KeyEscape)
		if went {
			t.Error("it went on though no path was given")
		}
		r.f.Guard("Quitting", func() { went = true })
		r.key(fyne.KeyReturn)
		r.write("mine")
		r.key(fyne.KeyReturn)
		if !went {
			t.Error("saved, it does not go on")
		}
		if _, err := store.Load(filepath.Join(r.dir, "mine.json")); err != nil {
			t.Error(err)
		}
	})
}

// A job that is saved elsewhere takes the photograph of its room along, and one
// that is asked to have a file before something is kept beside it goes on then.
func TestSaveAsTakesThePhotographAlong(t *testing.T) {
	r := newRig(t)
	went := 0
	r.f.WithFile("For the photograph.", func() { went++ })
	r.key(fyne.KeyReturn)
	r.write(filepath.Join(r.dir, "here.json"))
	r.key(fyne.KeyReturn)
	if went != 1 || filepath.Base(r.s.Path()) != "here.json" {
		t.Fatalf("went on %d times, the job is %q", went, r.s.Path())
	}
	name, sum, err := store.KeepPhoto(r.s.Path(), []byte("a photograph"), ".jpg")
	if err != nil {
		t.Fatal(err)
	}
	if err := r.s.DoJob(edit.SetRoom(design.Room{Photo: name, SHA256: sum, Width: units.Metre, Depth: units.Metre})); err != nil {
		t.Fatal(err)
	}
	there := t.TempDir()
	r.f.SaveAs()
	r.write(filepath.Join(there, "there.json"))
	r.key(fyne.KeyReturn)
	j, err := store.Load(filepath.Join(there, "there.json"))
	if err != nil || j.Room.Photo != "there.room.jpg" || r.s.Job().Room != j.Room || r.s.Dirty() {
		t.Fatalf("%v; %+v; in the window %+v", err, j.Room, r.s.Job().Room)
	}
	if data, err := store.Photo(r.s.Path(), j.Room); err != nil || string(data) != "a photograph" {
		t.Error(err)
	}
	if _, err := store.Photo(filepath.Join(r.dir, "here.json"), design.Room{Photo: name, SHA256: sum}); err != nil {
		t.Error("the first one is gone:", err)
	}
	// Without it the job is saved all the same, and that is said.
	os.Remove(filepath.Join(there, "there.room.jpg"))
	r.f.SaveAs()
	r.write(filepath.Join(r.dir, "third.json"))
	r.key(fyne.KeyReturn)
	if _, err := store.Load(filepath.Join(r.dir, "third.json")); err != nil || !r.asking() {
		t.Errorf("%v; told of it %v", err, r.asking())
	}
}

func TestSaveOpenRoundTrip(t *testing.T) {
	r := newRig(t)
	r.change()
	r.f.Save()
	r.write(filepath.Join(r.dir, "a top.json"))
	r.key(fyne.KeyReturn)
	if r.asking() || r.s.Dirty() || filepath.Base(r.s.Path()) != "a top.json" {
		t.Fatalf("after saving: asks %v, dirty %v, path %q", r.asking(), r.s.Dirty(), r.s.Path())
	}
	saved := r.s.Path()
	r.f.NewJob()
	if r.s.Path() != "" || r.s.Design().Thickness == 55*units.Millimetre {
		t.Fatal("a new job is not new")
	}
	opened := 0
	r.f.OnOpen = func() { opened++ }
	r.f.OpenPath(saved)
	if r.s.Design().Thickness != 55*units.Millimetre || r.s.Path() != saved || opened != 1 {
		t.Errorf("opened: %v, %q, told %d times", r.s.Design().Thickness, r.s.Path(), opened)
	}
	if got := r.f.Settings.Recent; len(got) != 1 || got[0] != saved {
		t.Errorf("the jobs of late are %v", got)
	}
}

func TestUnreadableFilesAreLeftAlone(t *testing.T) {
	r := newRig(t)
	r.change()
	path := filepath.Join(r.dir, "bad.json")
	if err := os.WriteFile(path, []byte(`{"format": "castwright-job", "version": 99}`),
		0o644); err != nil {
		t.Fatal(err)
	}
	r.f.load(path)
	if !r.asking() {
		t.Error("nothing says why it can't be opened")
	}
	if r.s.Path() != "" || r.s.Design().Thickness != 55*units.Millimetre {
		t.Error("what was in hand is gone")
	}
	if text, _ := os.ReadFile(path); !strings.Contains(string(text), "99") {
		t.Errorf("the file was touched: %s", text)
	}
}

func TestChooserPaths(t *testing.T) {
	r := newRig(t)
	sub := filepath.Join(r.dir, "sub")
	if err := os.Mkdir(sub, 0o755); err != nil {
		t.Fatal(err)
	}
	old := filepath.Join(r.dir, "old.json")
	if err := os.WriteFile(old, []byte("{}"), 0o644); err != nil {
		t.Fatal(err)
	}
	got := ""
	wish := Wish{Title: "Save", Accept: "Save", Ext: ".json", Write: true,
		Start: filepath.Join(r.dir, "start.json")}
	Choose(r.f.frame, wish, func(path string) { got = path })
	for _, bad := range []string{"", filepath.Join("nowhere", "x.json")} {
		r.write(bad)
		r.key(fyne.KeyReturn)
		if got != "" || !r.asking() {
			t.Fatalf("%q was taken as %q", bad, got)
		}
	}
	r.write("sub")
	r.key(fyne.KeyReturn)
	if got != "" {
		t.Fatalf("a folder was taken as %q", got)
	}
	r.write("new")
	r.key(fyne.KeyReturn)
	if want := filepath.Join(sub, "new.json"); got != want {
		t.Errorf("in the folder, a bare name gives %q, want %q", got, want)
	}

	got = ""
	Choose(r.f.frame, wish, func(path string) { got = path })
	r.write("old.json")
	r.key(fyne.KeyReturn)
	if got != "" {
		t.Fatal("a file that is there is written over without asking")
	}
	r.key(fyne.KeyEscape)
	if got != "" || !r.asking() {
		t.Fatalf("after staying: %q, the path is asked for %v", got, r.asking())
	}
	r.key(fyne.KeyReturn)
	r.key(fyne.KeyReturn)
	if got != old || r.asking() {
		t.Errorf("after saying so: %q, asks %v", got, r.asking())
	}

	got = ""
	Choose(r.f.frame, Wish{Title: "Open", Accept: "Open", Ext: ".json", Start: r.dir},
		func(path string) { got = path })
	r.write("missing.json")
	r.key(fyne.KeyReturn)
	if got != "" {
		t.Errorf("a missing file is opened: %q", got)
	}
	r.write(old)
	r.key(fyne.KeyReturn)
	if got != old {
		t.Errorf("a whole path gives %q", got)
	}
}

func TestExportPicture(t *testing.T) {
	r := newRig(t)
	r.f.Settings.PictureWidth = 640
	r.f.ExportPicture()
	r.write("client")
	r.key(fyne.KeyReturn)
	f, err := os.Open(filepath.Join(r.dir, "client.png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	c, err := png.DecodeConfig(f)
	if err != nil || c.Width != 640 {
		t.Errorf("the picture is %d wide, %v", c.Width, err)
	}
}

func TestExportReport(t *testing.T) {
	r := newRig(t)
	r.f.ExportText()
	r.write("report")
	r.key(fyne.KeyReturn)
	text, err := os.ReadFile(filepath.Join(r.dir, "report.txt"))
	if err != nil || !strings.Contains(string(text), "Option A") {
		t.Errorf("the report reads %.60q, %v", text, err)
	}
	r.key(fyne.KeyReturn) // the note that it is written
	r.f.ExportJSON()
	r.write("report")
	r.key(fyne.KeyReturn)
	if text, err := os.ReadFile(filepath.Join(r.dir,
		"report.json")); err != nil || !strings.Contains(string(text), "weight_kg") {
		t.Errorf("the report reads %.60q, %v", text, err)
	}
}

func TestDrop(t *testing.T) {
	r := newRig(t)
	path := filepath.Join(r.dir, "dropped.json")
	if err := os.WriteFile(path, assets.Demos()[0].Data, 0o644); err != nil {
		t.Fatal(err)
	}
	var drawings []string
	r.f.OnDrawing = func(path string) bool {
		drawings = append(drawings, filepath.Base(path))
		return strings.HasSuffix(path, ".svg")
	}
	r.f.Dropped([]fyne.URI{storage.NewFileURI(filepath.Join(r.dir, "x.svg"))})
	if r.asking() || len(drawings) != 1 || drawings[0] != "x.svg" {
		t.Errorf("a drawing was dropped: %v, a dialog is open: %v", drawings, r.asking())
	}
	r.f.Dropped([]fyne.URI{storage.NewFileURI(filepath.Join(r.dir, "x.pdf"))})
	if !r.asking() {
		t.Error("a file that is no job is dropped in silence")
	}
	r.key(fyne.KeyReturn)
	r.f.Dropped([]fyne.URI{storage.NewFileURI(path)})
	if r.s.Path() != path {
		t.Errorf("dropped, %q is in hand", r.s.Path())
	}
}

func TestRecent(t *testing.T) {
	r := newRig(t)
	r.f.Recent()
	if !r.asking() {
		t.Fatal("with none of late nothing is said")
	}
	r.key(fyne.KeyReturn)
	for _, name := range []string{"a.json", "b.json"} {
		r.f.write(filepath.Join(r.dir, name), nil)
	}
	bad := filepath.Join(r.dir, "bad.json")
	if err := os.WriteFile(bad, []byte("no job"), 0o644); err != nil {
		t.Fatal(err)
	}
	r.f.Settings.Remember(bad)
	r.f.Settings.Remember(filepath.Join(r.dir, "gone.json"))
	r.f.Recent()
	if len(r.f.Settings.Recent) != 3 {
		t.Errorf("remembered are %v", r.f.Settings.Recent)
	}
	r.key(fyne.KeyEscape)
	r.f.Settings.Forget(bad)
	r.f.Recent()
	r.key(fyne.KeyReturn)
	if filepath.Base(r.s.Path()) != "b.json" {
		t.Errorf("Enter opens %q, want the latest", r.s.Path())
	}
}

func TestSettings(t *testing.T) {
	path := filepath.Join(t.TempDir(), "deep", "settings.json")
	s := LoadSettings(path)
	s.Theme, s.Imperial, s.PictureWidth = "dark", true, 1200
	for i := range mostRecent + 5 {
		s.Remember(filepath.Join("/jobs", fmt.Sprintf("%d.json", i)))
	}
	s.Remember("/jobs/7.json")
	if err := s.Save(); err != nil {
		t.Fatal(err)
	}
	got := LoadSettings(path)
	if got.Theme != "dark" || !got.Imperial || got.PictureWidth != 1200 || len(got.Recent) != mostRecent {
		t.Errorf("read back: %+v", got)
	}
	if got.Recent[0] != "/jobs/7.json" || got.Recent[1] != fmt.Sprintf("/jobs/%d.json", mostRecent+4) {
		t.Errorf("the latest are %v", got.Recent[:2])
	}
	if err := os.WriteFile(path, []byte("nonsense"), 0o644); err != nil {
		t.Fatal(err)
	}
	if got := LoadSettings(path); got.Theme != "" || got.path != path {
		t.Errorf("of nonsense: %+v", got)
	}
}

func TestFileName(t *testing.T) {
	for in, want := range map[string]string{
		"Clay room, Harbour Street": "clay-room-harbour-street", "": "job", "  ": "job", "Ωμέγα": "job", "../../etc": "etc", "A2": "a2",
		strings.Repeat("long ", 40): strings.Repeat("long-", 12)[:60],
	} {
		if got := FileName(in, "job"); got != want {
			t.Errorf("FileName(%q) = %q, want %q", in, got, want)
		}
	}
}

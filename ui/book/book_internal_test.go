package book

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"example.org/castwright/model/book"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/store"
	"example.org/castwright/model/store/keep"
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

func newRig(t *testing.T, path string) *Book {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
	w := test.NewTempWindow(t, widget.NewLabel(""))
	w.Resize(fyne.NewSize(900, 600))
	f := control.NewFrame(w)
	f.Inline = true
	return New(f, path)
}

func edge(title string, size units.Length) book.Entry {
	return book.Entry{Title: title, Kind: book.KindProfile, Profile: design.Profile{Kind: design.ProfileRounded, Size: size}}
}

func titles(b *Book) string {
	var out []string
	all, err := b.Entries()
	if err != nil {
		return err.Error()
	}
	for _, e := range all {
		out = append(out, e.Title)
	}
	return strings.Join(out, ", ")
}

func no(t *testing.T) func(error) {
	return func(err error) {
		t.Helper()
		if err != nil {
			t.Error(err)
		}
	}
}

// TestTwoWindows: what one window keeps the other offers, and neither loses what
// the other has kept meanwhile.
func TestTwoWindows(t *testing.T) {
	path := filepath.Join(t.TempDir(), "config", "book.json")
	a := newRig(t, path)
	b := New(a.frame, path)
	if got := titles(b); got != "" {
		t.Errorf("a new book holds %q", got)
	}
	a.Keep(edge("Soft", 8*mm), no(t))
	b.Keep(edge("Sharp", 2*mm), no(t))
	if got := titles(a); got != "Soft, Sharp" {
		t.Errorf("the first window offers %q", got)
	}
	a.Rename("Sharp", "Crisp", no(t))
	b.Forget("Soft", no(t))
	if got := titles(a) + " / " + titles(b); got != "Crisp / Crisp" {
		t.Errorf("then the windows offer %q", got)
	}
	b.Rename("Crisp", " ", func(err error) {
		if err == nil {
			t.Error("a name of blanks was taken")
		}
	})
	// A third one, later.
	if got := titles(New(a.frame, path)); got != "Crisp" {
		t.Errorf("the next start offers %q", got)
	}
}

// TestManyAtOnce keeps parts from many sides at once, as several programs do:
// each change is made to the file as it stands.
func TestManyAtOnce(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.json")
	const sides, each = 4, 6
	var wg sync.WaitGroup
	for s := range sides {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for k := range each {
				err := keep.Locked(path, func() error {
					j, err := read(path)
					if err != nil {
						return err
					}
					if j, err = book.Keep(j, edge(fmt.Sprintf("%d-%d", s, k), 3*mm)); err != nil {
						return err
					}
					return store.Save(path, j)
				})
				if err != nil {
					t.Error(err)
				}
			}
		}()
	}
	wg.Wait()
	j, err := store.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	if n := len(book.Entries(j)); n != sides*each {
		t.Errorf("%d of %d parts were kept", n, sides*each)
	}
}

// TestDamagedBook: a file that can't be read is said and never written over.
func TestDamagedBook(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book.json")
	damaged := []byte(`{"format": "castwright-job", "version": 1, "opti`)
	if err := os.WriteFile(path, damaged, 0o600); err != nil {
		t.Fatal(err)
	}
	b := newRig(t, path)
	if got := titles(b); !strings.Contains(got, "left as it is") {
		t.Errorf("the window says %q", got)
	}
	var failed error
	b.Keep(edge("Soft", 8*mm), func(err error) { failed = err })
	got, _ := os.ReadFile(path)
	if failed == nil || string(got) != string(damaged) {
		t.Errorf("kept with the error %v; the file holds %q", failed, got)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	b.Keep(edge("Soft", 8*mm), no(t))
	if got := titles(b); got != "Soft" {
		t.Errorf("mended, the book offers %q", got)
	}
}

func kitchen() design.Design {
	d := design.Design{Outline: edit.Rectangle(1200*mm, 500*mm), Finish: design.Finish{Polish: 2, Exposure: design.ExposureFine}}
	d.Outline.Nodes[0].Edge.Profile = design.Profile{Kind: design.ProfileRounded, Size: 8 * mm}
	d.Sinks = []design.Sink{{ID: "sink-1", At: design.Point{X: 400 * mm, Y: 250 * mm},
		Shape: design.Shape{Kind: design.ShapeEllipse, Width: 430 * mm, Depth: 350 * mm}}}
	d.Taps = []design.TapSet{{ID: "taps-1", Sink: "sink-1", Pattern: design.TapThree8, Diameter: 35 * mm, SetBack: 60 * mm},
		{ID: "taps-2", Pattern: design.TapSingle, Diameter: 28 * mm}}
	d.Holes = []design.Hole{{ID: "hole-1", Diameter: 45 * mm}}
	return d
}

func TestSelected(t *testing.T) {
	d := kitchen()
	part := func(id design.ID) []session.Pick { return []session.Pick{{Part: id, Node: -1}} }
	for _, c := range []struct {
		sel   []session.Pick
		kind  book.Kind
		taps  int
		title string
	}{
		{part("sink-1"), book.KindSink, 1, "Under-mount, oval, 430 × 350 mm"},
		{part("taps-2"), book.KindTaps, 1, "One hole, 28 mm"},
		{[]session.Pick{{Node: 0, Edge: true}}, book.KindProfile, 0, "Rounded 8 mm"},
		{[]session.Pick{{Node: -1}}, book.KindFinish, 0, "Fine stone, satin"},
		{nil, book.KindFinish, 0, "Fine stone, satin"},
	} {
		e, err := Selected(d, c.sel, units.Metric)
		if err != nil || e.Kind != c.kind || len(e.Taps) != c.taps || e.Title != c.title {
			t.Errorf("%v: %v %q with %d sets of taps, error %v; want %v %q", c.sel, e.Kind, e.Title, len(e.Taps), err, c.kind, c.title)
		}
	}
	for _, sel := range [][]session.Pick{part("hole-1"), {{Node: 2}}, append(part("sink-1"), part("taps-2")...), part("gone")} {
		if e, err := Selected(d, sel, units.Metric); err == nil {
			t.Errorf("%v was taken as %v", sel, e.Title)
		}
	}
}

// TestAskToKeep: the name is asked for, one that is there already is asked about,
// Esc changes nothing.
func TestAskToKeep(t *testing.T) {
	b := newRig(t, filepath.Join(t.TempDir(), "book.json"))
	s := session.New(design.Job{Options: []design.Option{{Name: "A", Design: kitchen()}}}, "")
	key := func(name fyne.KeyName) {
		e := &fyne.KeyEvent{Name: name}
		if f := b.frame.Window.Canvas().Focused(); f != nil {
			f.TypedKey(e)
			return
		}
		b.frame.Key(e)
	}
	s.Select(session.Pick{Part: "sink-1", Node: -1})
	b.AskToKeep(s)
	key(fyne.KeyEscape)
	if got := titles(b); got != "" || b.frame.Busy() {
		t.Errorf("after Esc the book holds %q, a dialog is open: %v", got, b.frame.Busy())
	}
	name := func(text string) {
		b.AskToKeep(s)
		e, _ := b.frame.Window.Canvas().Focused().(*control.Entry)
		if e == nil {
			t.Fatal("no name is asked for")
		}
		e.SetText(text)
		key(fyne.KeyReturn)
	}
	name("The usual oval")
	if got := titles(b); got != "The usual oval" || b.frame.Busy() {
		t.Fatalf("the book holds %q, a dialog is open: %v", got, b.frame.Busy())
	}
	all, _ := b.Entries()
	d := kitchen()
	want := d.Sinks[0]
	want.At = design.Point{}
	if diff := cmp.Diff(want, all[0].Sink); diff != "" || len(all[0].Taps) != 1 {
		t.Errorf("kept with %d sets of taps (-want +got):\n%s", len(all[0].Taps), diff)
	}
	name("The usual oval")
	if !b.frame.Busy() {
		t.Fatal("a name that is there already is not asked about")
	}
	key(fyne.KeyReturn) // replace
	if got := titles(b); got != "The usual oval" || b.frame.Busy() {
		t.Errorf("replaced, the book holds %q, a dialog is open: %v", got, b.frame.Busy())
	}
	name("  ")
	if !b.frame.Busy() {
		t.Error("a name of blanks closes the dialog")
	}
}

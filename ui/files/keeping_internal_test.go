package files

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"example.org/castwright/model/store"
	"example.org/castwright/model/store/keep"
	"example.org/castwright/model/units"
	"fyne.io/fyne/v2"
)

// keepNow keeps a copy at once, as the clock would after a while.
func (r *rig) keepNow() {
	r.t.Helper()
	if err := r.f.keeping.write(store.Encode(r.s.Job())); err != nil {
		r.t.Fatal(err)
	}
}

// crash ends the window as a power cut does: the lock falls, nothing is cleared.
func (r *rig) crash() {
	r.t.Helper()
	if err := r.f.keeping.slot.Release(); err != nil {
		r.t.Fatal(err)
	}
	r.f.keeping.slot = nil
}

// A job that was never saved and whose window was killed is offered at the next
// start, and taken up whole.
func TestLostWorkIsOffered(t *testing.T) {
	r := newRig(t)
	r.change()
	r.keepNow()
	r.crash()

	next := newRig(t)
	next.f.keeping.folder = r.f.keeping.folder
	next.f.OfferLost("")
	next.key(fyne.KeyReturn)
	if got := next.s.Design().Thickness; got != 55*units.Millimetre || !next.s.Dirty() {
		t.Errorf("thickness %v, dirty %v; want the lost 55 mm, not saved yet", got.MM(), next.s.Dirty())
	}
	if left := keep.Orphans("", r.f.keeping.folder); len(left) != 0 {
		t.Errorf("%d lots of lost work are still offered", len(left))
	}
}

// Esc leaves lost work for another time.
func TestLostWorkCanWait(t *testing.T) {
	r := newRig(t)
	r.change()
	r.keepNow()
	r.crash()
	r.f.OfferLost("")
	r.key(fyne.KeyEscape)
	if left := keep.Orphans("", r.f.keeping.folder); len(left) != 1 {
		t.Errorf("%d lots of lost work are left, want 1", len(left))
	}
}

// A file that another window wrote since is not replaced without asking.
func TestSaveOverAnothersWork(t *testing.T) {
	r := newRig(t)
	path := filepath.Join(r.dir, "bench.json")
	r.change()
	r.f.write(path, nil)
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	other := append(before, '\n')
	if err := os.WriteFile(path, other, 0o644); err != nil {
		t.Fatal(err)
	}
	r.f.Save()
	r.key(fyne.KeyEscape)
	if now, _ := os.ReadFile(path); len(now) != len(other) {
		t.Error("the other window's file was replaced")
	}
}

// A saved job leaves nothing behind when its window closes.
func TestNothingIsKeptOfSavedWork(t *testing.T) {
	r := newRig(t)
	r.change()
	r.keepNow()
	r.f.write(filepath.Join(r.dir, "bench.json"), nil)
	r.f.Close()
	for _, dir := range []string{r.dir, r.f.keeping.folder} {
		entries, err := os.ReadDir(dir)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			if e.Name()[0] == '.' {
				t.Errorf("%s is left", e.Name())
			}
		}
	}
}

// Where no copy can be kept (the disk is full, the folder gone) the window says
// so, and says when it is over.
func TestACopyThatCantBeKeptIsTold(t *testing.T) {
	r := newRig(t)
	told := 0
	r.f.OnKept = func() { told++ }
	r.f.Later = func(time.Duration, func()) {}
	r.change()
	if err := os.RemoveAll(r.f.keeping.folder); err != nil {
		t.Fatal(err)
	}
	r.f.keepCopy()
	r.f.keepCopy()
	if r.f.Unkept() == nil || told != 1 {
		t.Errorf("after a copy that failed: %v, told %d times", r.f.Unkept(), told)
	}
	if err := os.MkdirAll(r.f.keeping.folder, 0o755); err != nil {
		t.Fatal(err)
	}
	r.f.keepCopy()
	if r.f.Unkept() != nil || told != 2 {
		t.Errorf("after one that did not: %v, told %d times", r.f.Unkept(), told)
	}
}

// A second window on a job's file knows of the first; windows on jobs without a file
// have none in common.
func TestASecondWindowKnows(t *testing.T) {
	a, b := newRig(t), newRig(t)
	b.f.keeping.folder = a.f.keeping.folder
	b.f.keeping.take("")
	if a.f.Shared() || b.f.Shared() {
		t.Error("jobs without a file count as shared")
	}
	path := filepath.Join(t.TempDir(), "bench.json")
	if err := store.Save(path, a.s.Job()); err != nil {
		t.Fatal(err)
	}
	a.f.OpenPath(path)
	b.f.OpenPath(path)
	if a.f.Shared() || !b.f.Shared() {
		t.Errorf("shared: %v in the first window, %v in the second", a.f.Shared(), b.f.Shared())
	}
	b.f.NewJob()
	if b.f.Shared() {
		t.Error("a new job counts as shared")
	}
}

// Where there is no place for a copy at all, that is told once there is work to keep.
func TestNoPlaceForACopyIsTold(t *testing.T) {
	r := newRig(t)
	r.f.Later = func(time.Duration, func()) {}
	stop := filepath.Join(t.TempDir(), "a file")
	if err := os.WriteFile(stop, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	r.f.keeping.folder = filepath.Join(stop, "unsaved")
	r.f.keeping.take("")
	r.change()
	r.f.keepCopy()
	if r.f.Unkept() == nil {
		t.Error("nothing says that no copy is kept")
	}
}

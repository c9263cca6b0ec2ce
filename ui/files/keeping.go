package files

import (
	"errors"
	"fmt"
	"path/filepath"
	"sync"
	"time"

	"example.org/castwright/model/design"
	"example.org/castwright/model/store"
	"example.org/castwright/model/store/keep"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/session"
)

// keepAfter is how soon after an edit a copy of the work is kept. Edits within
// that time are kept together.
const keepAfter = time.Second

// keepAgain is how soon it is tried again when no copy could be kept.
const keepAgain = 5 * time.Second

// keeping keeps a copy of the work beside the job's file, off the main
// goroutine, until it is saved or dropped.
type keeping struct {
	folder string // for jobs without a file; "" keeps nothing
	mu     sync.Mutex
	slot   *keep.Slot
	why    error // why there is no slot
	also   bool  // another window had the job in hand when the slot was taken
	soon   bool  // a copy is due
}

// unsavedFolder is where copies of jobs without a file lie.
func (s *Settings) unsavedFolder() string {
	if s.path == "" {
		return ""
	}
	return filepath.Join(filepath.Dir(s.path), "unsaved")
}

// take gets a slot for the job that is now in hand. That none can be had must
// not keep anybody from working, but is told once there is work to keep.
func (k *keeping) take(path string) {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.release()
	k.also = false
	if k.folder == "" {
		return
	}
	k.slot, k.why = keep.Take(path, k.folder)
	k.also = k.slot != nil && k.slot.Shared
}

// release gives the slot back; the work in it is saved or was dropped.
func (k *keeping) release() {
	if k.slot != nil {
		k.slot.Clear()
		k.slot.Release()
		k.slot = nil
	}
}

// close gives up what was kept.
func (k *keeping) close() {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.release()
}

// write keeps a state.
func (k *keeping) write(data []byte) error {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.slot == nil {
		return k.why
	}
	return k.slot.Write(data)
}

// save writes the job's file unless it changed behind this window's back.
func (k *keeping) save(path string, j design.Job) error {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.slot == nil {
		return store.Save(path, j)
	}
	return k.slot.Save(func(path string) error { return store.Save(path, j) })
}

// overwrite lets the next save replace what stands in the file.
func (k *keeping) overwrite() {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.slot != nil {
		k.slot.Overwrite()
	}
}

// watch keeps a copy a while after each change.
func (f *Files) watch() {
	f.s.OnChange(func(c session.Change) {
		if (!c.Design && !c.Job) || !f.s.Dirty() || f.keeping.soon || f.keeping.folder == "" {
			return
		}
		f.keeping.soon = true
		f.Later(keepAfter, f.keepCopy)
	})
}

// keepCopy writes the work as it stands to the slot.
func (f *Files) keepCopy() {
	f.keeping.soon = false
	if !f.s.Dirty() {
		return
	}
	j := f.s.Job()
	f.frame.Background(func() func() {
		err := f.keeping.write(store.Encode(j))
		return func() {
			told := f.unkept
			if f.unkept = nil; err != nil {
				f.unkept = plainly(err)
				f.keeping.soon = true
				f.Later(keepAgain, f.keepCopy)
			}
			if (err == nil) != (told == nil) && f.OnKept != nil {
				f.OnKept()
			}
		}
	})
}

// Shared reports whether another window had this job's file open when it was opened
// here.
func (f *Files) Shared() bool { return f.s.Path() != "" && f.keeping.also }

// Unkept is why no copy of the work could be kept lately, such as a full disk; nil
// when one could.
func (f *Files) Unkept() error { return f.unkept }

// OfferLost shows, one after the other, what windows left behind that ended
// without saving: of the job at path, or of jobs without a file when it is "".
func (f *Files) OfferLost(path string) {
	if f.keeping.folder == "" {
		return
	}
	lost := keep.Orphans(path, f.keeping.folder)
	if len(lost) > 0 {
		f.offer(lost)
	}
}

func (f *Files) offer(lost []keep.Orphan) {
	o := lost[0]
	j, err := store.Decode(o.Data)
	if err != nil || len(j.Options) == 0 { // never a whole job: nothing to offer
		f.next(o, lost)
		return
	}
	what := "A job that was never saved"
	if o.Job != "" {
		what = filepath.Base(o.Job)
	}
	if j.Client != "" {
		what += fmt.Sprintf(" (%s)", j.Client)
	}
	control.Ask(f.frame, "Take up the work that was not saved?",
		what+" has changes from a window that ended before they were saved. They are kept until you decide.",
		control.Answer{Text: "Drop them", Kind: control.Danger, Hint: "Loses those changes.", Then: func() { f.next(o, lost) }},
		control.Answer{Text: "Later", Hint: "Asks again at the next start (Esc).", Esc: true},
		control.Answer{Text: "Take up", Kind: control.Primary, Hint: "Goes on with them (Enter).", Enter: true, Then: func() {
			f.s.Load(j, o.Job)
			f.s.MarkChanged()
			f.keeping.take(o.Job)
			f.opened()
			if f.keeping.write(o.Data) == nil {
				f.next(o, lost)
			}
		}})
}

// next discards what was decided on and goes on to the rest.
func (f *Files) next(o keep.Orphan, lost []keep.Orphan) {
	o.Discard()
	if rest := lost[1:]; len(rest) > 0 {
		f.offer(rest)
	}
}

// saveHere saves under the job's own name. Where the file changed behind this
// window's back it asks; nobody's work is lost unless the maker says so.
func (f *Files) saveHere(path string, then func()) {
	err := f.keeping.save(path, f.s.Job())
	if !errors.Is(err, keep.ErrChanged) {
		f.saved(path, err, then)
		return
	}
	control.Ask(f.frame, "The file has changed",
		filepath.Base(path)+" was changed by another window or program since it was opened here.",
		control.Answer{Text: "Replace it", Kind: control.Danger, Hint: "Loses what the other one wrote.", Then: func() {
			f.keeping.overwrite()
			f.saveHere(path, then)
		}},
		control.Answer{Text: "Stay", Hint: "Saves nothing (Esc).", Esc: true},
		control.Answer{Text: "Save as another", Kind: control.Primary, Hint: "Keeps both (Enter).", Enter: true,
			Then: func() { f.saveAs(then) }})
}

package keep

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/gofrs/flock"
)

// maxSlots bounds the windows, and the leavings of windows, that one job may
// have.
const maxSlots = 32

// torn matches the temporary files that a slot is written through.
const torn = ".new-*"

// unsaved is the name that slots of jobs without a file go by.
const unsaved = "unsaved job"

// Slot is a window's place to keep its work. It belongs to one goroutine.
type Slot struct {
	path string // of the slot's file
	job  string // of the job's file, "" when it has none
	lock *flock.Flock
	disk string // fingerprint of the job's file as this window knows it
	// Shared says that another window had this job in hand when the slot was
	// taken.
	Shared bool
}

// Take gives a window a slot for the job in the file at path, or for an unsaved
// job, in folder, when path is "". Where nothing can be written beside the job's
// file, as on a stick that is write-protected, its slot lies in folder too. It fails
// only where no file can be made.
func Take(path, folder string) (*Slot, error) {
	why := errors.New("keeping a copy of the work: there is no folder for it")
	for i, base := range slotBases(path, folder) {
		if dir := filepath.Dir(base); dir == filepath.Clean(folder) {
			os.MkdirAll(dir, 0o700) // if that fails, so does what follows
		}
		s, err := takeAt(base, path)
		if err == nil {
			return s, nil
		}
		if i == 0 {
			why = err
		}
	}
	return nil, why
}

// takeAt takes the first free slot of a job's whose files begin with base.
func takeAt(base, path string) (*Slot, error) {
	s := &Slot{job: path}
	for n := 1; n <= maxSlots; n++ {
		s.path = fmt.Sprintf("%s.slot-%d", base, n)
		s.lock = flock.New(s.path + ".lock")
		held, err := s.lock.TryLock()
		if err != nil {
			return nil, fmt.Errorf("keeping a copy of the work in %s: %w", filepath.Dir(base), err)
		}
		if !held {
			s.Shared = true
			continue
		}
		s.sweep()
		if _, err := os.Stat(s.path); err == nil { // someone's lost work: leave it to be offered
			s.lock.Unlock()
			continue
		}
		s.disk, err = fingerprint(path)
		if err != nil {
			s.lock.Unlock()
			return nil, err
		}
		return s, nil
	}
	return nil, fmt.Errorf("%d copies of lost work wait beside %s: open or discard some first", maxSlots, base)
}

// sweep removes half-written files of a window that was killed.
func (s *Slot) sweep() {
	files, _ := filepath.Glob(s.path + torn)
	for _, f := range files {
		os.Remove(f)
	}
}

// slotBases are what the files of a job's slots begin with, the first choice first:
// beside the job's file, else in the folder for unsaved jobs, where the name tells
// jobs of the same name apart.
func slotBases(path, folder string) (bases []string) {
	if path == "" {
		if folder != "" {
			bases = append(bases, filepath.Join(folder, "."+unsaved))
		}
		return bases
	}
	if whole, err := filepath.Abs(path); err == nil {
		path = whole
	}
	name, sum := filepath.Base(path), sha256.Sum256([]byte(path))
	bases = append(bases, filepath.Join(filepath.Dir(path), "."+name))
	if folder != "" {
		bases = append(bases, filepath.Join(folder, fmt.Sprintf(".%s-%x", name, sum[:6])))
	}
	return bases
}

// Write keeps the work as it stands.
func (s *Slot) Write(data []byte) error { return writeFile(s.path, data, 0o600) }

// Clear says that the work stands in the job's file or is not wanted; nothing
// is left to be offered.
func (s *Slot) Clear() error {
	if err := os.Remove(s.path); err != nil && !errors.Is(err, os.ErrNotExist) {
		return err
	}
	return nil
}

// Release gives the slot back. What was written and not cleared stays and will
// be offered.
func (s *Slot) Release() error {
	_, err := os.Stat(s.path)
	if errors.Is(err, os.ErrNotExist) {
		err = os.Remove(s.lock.Path())
	}
	return errors.Join(s.lock.Unlock(), ignoreMissing(err))
}

func ignoreMissing(err error) error {
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	return err
}

// Orphan is work that a window left behind when it ended without saving.
type Orphan struct {
	Path string // of the slot's file
	Job  string // of the job's file, "" for a job that was never saved
	Data []byte
}

// Orphans lists what was left behind of the job at path, or of unsaved jobs in
// folder when path is "". Slots of living windows are not listed.
func Orphans(path, folder string) []Orphan {
	var out []Orphan
	for _, base := range slotBases(path, folder) {
		for n := 1; n <= maxSlots; n++ {
			slot := fmt.Sprintf("%s.slot-%d", base, n)
			data, err := os.ReadFile(slot)
			if err != nil {
				continue
			}
			lock := flock.New(slot + ".lock")
			if held, err := lock.TryLock(); err != nil || !held {
				continue
			}
			lock.Unlock()
			out = append(out, Orphan{Path: slot, Job: path, Data: data})
		}
	}
	return out
}

// Discard removes lost work that is not wanted, or that was taken over.
func (o Orphan) Discard() error {
	if !strings.Contains(filepath.Base(o.Path), ".slot-") {
		return fmt.Errorf("%s is not kept work", o.Path)
	}
	return errors.Join(ignoreMissing(os.Remove(o.Path)), ignoreMissing(os.Remove(o.Path+".lock")))
}

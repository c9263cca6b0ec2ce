package keep

import (
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
// job, in folder, when path is "". It fails only where no file can be made.
func Take(path, folder string) (*Slot, error) {
	base, err := slotBase(path, folder)
	if err != nil {
		return nil, err
	}
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

func slotBase(path, folder string) (string, error) {
	if path == "" {
		if err := os.MkdirAll(folder, 0o700); err != nil {
			return "", fmt.Errorf("making the folder for unsaved jobs: %w", err)
		}
		return filepath.Join(folder, "."+unsaved), nil
	}
	return filepath.Join(filepath.Dir(path), "."+filepath.Base(path)), nil
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
	base, err := slotBase(path, folder)
	if err != nil {
		return nil
	}
	var out []Orphan
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
	return out
}

// Discard removes lost work that is not wanted, or that was taken over.
func (o Orphan) Discard() error {
	if !strings.Contains(filepath.Base(o.Path), ".slot-") {
		return fmt.Errorf("%s is not kept work", o.Path)
	}
	return errors.Join(ignoreMissing(os.Remove(o.Path)), ignoreMissing(os.Remove(o.Path+".lock")))
}

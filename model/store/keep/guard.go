package keep

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// ErrChanged says that the job's file is not as this window last knew it:
// another window, or something else, has written it since.
var ErrChanged = errors.New("the file was changed by another window or program since it was opened: " +
	"save under another name, or open it again")

// Save writes the job's file, unless it changed since this window read or wrote
// it last. To save under another name, take a slot for that name first.
func (s *Slot) Save(write func(path string) error) error {
	now, err := fingerprint(s.job)
	if err != nil {
		return err
	}
	if now != s.disk {
		return fmt.Errorf("%s: %w", s.job, ErrChanged)
	}
	if err := write(s.job); err != nil {
		return err
	}
	if s.disk, err = fingerprint(s.job); err != nil {
		return err
	}
	return s.Clear()
}

// Overwrite lets the next Save replace whatever stands in the file: the maker
// was asked and said so.
func (s *Slot) Overwrite() (err error) {
	s.disk, err = fingerprint(s.job)
	return err
}

// fingerprint is the hash of a file, "" when there is none.
func fingerprint(path string) (string, error) {
	if path == "" {
		return "", nil
	}
	data, err := os.ReadFile(path)
	if errors.Is(err, os.ErrNotExist) {
		return "", nil
	}
	if err != nil {
		return "", fmt.Errorf("reading %s: %w", path, err)
	}
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:]), nil
}

// writeFile replaces a file in one step: a temporary file beside it is written,
// synced and renamed over it.
func writeFile(path string, data []byte, mode os.FileMode) error {
	f, err := os.CreateTemp(filepath.Dir(path), filepath.Base(path)+torn)
	if err != nil {
		return fmt.Errorf("keeping a copy of the work: %w", err)
	}
	defer os.Remove(f.Name()) // gone already when all went well
	_, err = f.Write(data)
	err = errors.Join(err, f.Chmod(mode), f.Sync(), f.Close())
	if err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		return fmt.Errorf("keeping a copy of the work in %s: %w", path, err)
	}
	return nil
}

package store

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"
)

// A write that fails half way, as on a full disk, leaves the old file as it
// was and nothing beside it.
func TestAFailedWriteLeavesTheOldFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "job.json")
	full := errors.New("no space left on device")
	write := func(text string, fail error) error {
		return replace(path, func(w io.Writer) error {
			if _, err := io.WriteString(w, text); err != nil {
				return err
			}
			return fail
		})
	}
	if err := write("half a fi", full); !errors.Is(err, full) {
		t.Errorf("error %v, want %v", err, full)
	}
	if _, err := os.Stat(path); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("a file came of it: %v", err)
	}
	if err := write("a whole file", nil); err != nil {
		t.Fatal(err)
	}
	if err := write("half a", full); !errors.Is(err, full) {
		t.Errorf("error %v, want %v", err, full)
	}
	if data, err := os.ReadFile(path); err != nil || string(data) != "a whole file" {
		t.Errorf("the file holds %q, %v", data, err)
	}
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != 1 {
		t.Errorf("%d files in the folder, %v", len(entries), err)
	}
}

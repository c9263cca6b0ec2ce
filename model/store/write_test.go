package store_test

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"example.org/castwright/model/store"
)

func TestWriteIsWholeOrNothing(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "top.png")
	put := func(text string, err error) error {
		return store.Write(path, func(w io.Writer) error {
			if _, werr := io.WriteString(w, text); werr != nil {
				t.Fatal(werr)
			}
			return err
		})
	}
	if err := put("first", nil); err != nil {
		t.Fatal(err)
	}
	broken := errors.New("the painter gave up")
	if err := put("half", broken); !errors.Is(err, broken) {
		t.Errorf("got %v, want the writer's own error", err)
	}
	if got, err := os.ReadFile(path); err != nil || string(got) != "first" {
		t.Errorf("the file holds %q, %v; want what was there before", got, err)
	}
	if left, _ := os.ReadDir(dir); len(left) != 1 {
		t.Errorf("%d files are left in the folder, want the one", len(left))
	}
}

// What a killed program left behind a day ago is cleared away, what may still be
// written is not.
func TestLeftBehind(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.json")
	old, young := filepath.Join(dir, ".a.json.saving-1"), filepath.Join(dir, ".a.json.saving-2")
	for _, name := range []string{old, young} {
		if err := os.WriteFile(name, []byte("half"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	yesterday := time.Now().Add(-25 * time.Hour)
	if err := os.Chtimes(old, yesterday, yesterday); err != nil {
		t.Fatal(err)
	}
	err := store.Write(path, func(w io.Writer) error {
		_, err := io.WriteString(w, "whole")
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(old); err == nil {
		t.Error("the old half is still there")
	}
	if _, err := os.Stat(young); err != nil {
		t.Error("the half that may still be written is gone")
	}
	if got, _ := os.ReadFile(path); string(got) != "whole" {
		t.Errorf("wrote %q", got)
	}
}

package store_test

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"

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

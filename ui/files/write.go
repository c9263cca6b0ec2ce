package files

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// WriteWhole writes a file wholly or not at all: beside the old one, which it
// then replaces in one step.
func WriteWhole(path string, write func(io.Writer) error) error {
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".writing-*")
	if err != nil {
		return fmt.Errorf("writing %s: %w", path, plainly(err))
	}
	defer os.Remove(f.Name()) // gone already when all went well
	err = write(f)
	mode := fs.FileMode(0o644)
	if info, statErr := os.Stat(path); statErr == nil {
		mode = info.Mode().Perm()
	}
	err = errors.Join(err, f.Chmod(mode), f.Sync(), f.Close())
	if err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		return fmt.Errorf("writing %s: %w", path, plainly(err))
	}
	return nil
}

// plainly says the usual causes in plain words, without the path that the
// caller says.
func plainly(err error) error {
	var p *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return errors.New("there is no such folder: choose another")
	case errors.Is(err, fs.ErrPermission):
		return errors.New("you may not write there: choose another folder")
	case errors.As(err, &p):
		return p.Err
	}
	return err
}

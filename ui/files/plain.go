package files

import (
	"errors"
	"io/fs"
)

// plainly says the usual causes of a failed write in plain words, without the path
// that the caller says.
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

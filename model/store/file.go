package store

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"time"

	"example.org/castwright/model/design"
)

// Load reads the job in a file. The file is never touched. A file that can't
// be understood gives a [*SyntaxError] in the error's chain.
func Load(path string) (design.Job, error) {
	data, err := read(path)
	if err != nil {
		return design.Job{}, fmt.Errorf("opening %s: %w", path, err)
	}
	j, err := Decode(data)
	if err != nil {
		return design.Job{}, fmt.Errorf("opening %s: %w", path, err)
	}
	return j, nil
}

func read(path string) ([]byte, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, reason(err)
	}
	if !info.Mode().IsRegular() {
		return nil, errors.New("this is not a file: choose a job file")
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, reason(err)
	}
	defer f.Close()
	// One byte more than may be, so that the parser sees and refuses it.
	return io.ReadAll(io.LimitReader(f, MaxBytes+1))
}

// Save writes a job to a file, wholly or not at all: whatever goes wrong, the
// file that was there stays as it was. What a link points to is written, and a
// file keeps its permissions.
//
// The text is read back before it takes the old one's place, so that what was
// saved can be opened again.
func Save(path string, j design.Job) error {
	data := Encode(j)
	if _, err := Decode(data); err != nil {
		return fmt.Errorf("saving %s: the job holds what a file can't: %w", path, err)
	}
	err := replace(path, func(w io.Writer) error {
		_, err := w.Write(data)
		return err
	})
	if err != nil {
		return fmt.Errorf("saving %s: %w", path, err)
	}
	return nil
}

// replace writes a file beside the one at path, makes sure that it is on the
// disk, and puts it in its place.
func replace(path string, write func(io.Writer) error) error {
	path, err := target(path)
	if err != nil {
		return err
	}
	mode := fs.FileMode(0o666) // less what the user's mask takes
	info, err := os.Stat(path)
	switch {
	case err == nil && !info.Mode().IsRegular():
		return errors.New("this is not a file: choose another name")
	case err == nil && info.Mode().Perm()&0o200 == 0:
		return errors.New("the file is read-only: choose another name")
	case err == nil:
		mode = info.Mode().Perm()
	case !errors.Is(err, fs.ErrNotExist):
		return reason(err)
	}
	f, err := beside(path, mode)
	if err != nil {
		return reason(err)
	}
	if err := writeOut(f, mode, info != nil, write); err != nil {
		os.Remove(f.Name())
		return reason(err)
	}
	if err := rename(f.Name(), path); err != nil {
		os.Remove(f.Name())
		return reason(err)
	}
	syncFolder(filepath.Dir(path))
	return nil
}

// writeOut writes the new file out to the disk and closes it.
func writeOut(f *os.File, mode fs.FileMode, exact bool, write func(io.Writer) error) error {
	err := write(f)
	if err == nil && exact {
		err = f.Chmod(mode) // the mask may have taken some away
	}
	if err == nil {
		err = f.Sync()
	}
	return errors.Join(err, f.Close())
}

// target is where a path leads over links, the last of which may lead to a
// file that does not exist yet.
func target(path string) (string, error) {
	const mostLinks = 40
	for range mostLinks {
		info, err := os.Lstat(path)
		if err != nil || info.Mode()&fs.ModeSymlink == 0 {
			return path, nil
		}
		to, err := os.Readlink(path)
		if err != nil {
			return "", reason(err)
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(path), to)
		}
		path = to
	}
	return "", errors.New("the links of this name lead in a circle: choose another name")
}

// left is after how long a file that was being written is taken for one that a
// program left behind when it was killed.
const left = 24 * time.Hour

// beside makes a new file next to path under a name that is free. Those that were
// left behind on the way there are cleared away.
func beside(path string, mode fs.FileMode) (*os.File, error) {
	dir, base := filepath.Split(path)
	var err error
	for n := 1; n <= 1000; n++ {
		var f *os.File
		name := fmt.Sprintf("%s.%s.saving-%d", dir, base, n)
		if info, err := os.Lstat(name); err == nil && info.Mode().IsRegular() && time.Since(info.ModTime()) > left {
			os.Remove(name)
		}
		f, err = os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode|0o200)
		if !errors.Is(err, fs.ErrExist) {
			return f, err
		}
	}
	return nil, err
}

// rename puts the new file in the old one's place. Windows refuses that for
// moments while another program looks at the old one.
func rename(from, to string) error {
	err := os.Rename(from, to)
	for try := 0; err != nil && runtime.GOOS == "windows" && try < 20; try++ {
		time.Sleep(25 * time.Millisecond)
		err = os.Rename(from, to)
	}
	return err
}

// syncFolder makes the new name last through a power cut. Its errors do not
// count: Windows has no such call, some network folders refuse it, and the file
// is in its place by then.
func syncFolder(dir string) {
	if d, err := os.Open(dir); err == nil {
		d.Sync()
		d.Close()
	}
}

// reason says the usual causes in plain words.
func reason(err error) error {
	switch {
	case err == nil:
		return nil
	case errors.Is(err, fs.ErrNotExist):
		return plain{"there is no such file or folder", err}
	case errors.Is(err, fs.ErrPermission):
		return plain{"you may not read or write there: choose another folder", err}
	}
	return bare(err)
}

// plain is an error of the system in plain words.
type plain struct {
	words string
	err   error
}

func (p plain) Error() string { return p.words }
func (p plain) Unwrap() error { return p.err }

// bare is an error without the path that it carries: the caller has said it.
func bare(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	var l *os.LinkError
	if errors.As(err, &l) {
		return l.Err
	}
	return err
}

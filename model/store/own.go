package store

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// OwnPath is where a file of this user's own settings lies.
func OwnPath(name string) (string, error) {
	dir, err := os.UserConfigDir()
	if err != nil {
		return "", err
	}
	return filepath.Join(dir, "castwright", name), nil
}

// MakeFolder makes the folder that a file is to lie in, if it is not there.
func MakeFolder(path string) error { return reason(os.MkdirAll(filepath.Dir(path), 0o755)) }

// Read reads a file of at most limit bytes; a larger one is refused without being
// read. That it is not there is [io/fs.ErrNotExist] in the error's chain.
func Read(path string, limit int64) ([]byte, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, reason(err)
	}
	if !info.Mode().IsRegular() {
		return nil, errors.New("this is not a file")
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, reason(err)
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, limit+1))
	if err != nil {
		return nil, reason(err)
	}
	if int64(len(data)) > limit {
		return nil, fmt.Errorf("the file is larger than %d MB", limit>>20)
	}
	return data, nil
}

package store

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/castwright/model/design"
)

// MaxPhotoBytes bounds a photograph's file.
const MaxPhotoBytes = 64 << 20

// The errors of a photograph that is not as it was.
var (
	ErrPhotoGone    = errors.New("the photograph is not beside the job")
	ErrPhotoChanged = errors.New("the photograph is not the one whose corners were marked")
)

// PhotoSum is the SHA-256 of a photograph as a job writes it.
func PhotoSum(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// KeepPhoto puts a photograph beside the job in the file at path, byte for byte,
// and gives its name there and its sum: "counter.room.jpg" for "counter.json". No
// file is ever overwritten: where another one has that name it takes the next,
// "counter.room-2.jpg", and where the same photograph lies there already, it stays.
// ext is the ending, ".jpg" or ".png".
func KeepPhoto(path string, data []byte, ext string) (name, sum string, err error) {
	if len(data) == 0 || len(data) > MaxPhotoBytes {
		return "", "", fmt.Errorf("a photograph of %d bytes can't be kept: at most %d MB", len(data), MaxPhotoBytes>>20)
	}
	dir := filepath.Dir(path)
	for n := 1; n <= 999; n++ {
		name = photoName(path, n, ext)
		full := filepath.Join(dir, name)
		if there, err := Read(full, MaxPhotoBytes); err == nil && bytes.Equal(there, data) {
			return name, PhotoSum(data), nil
		}
		// The name is taken first, so that nothing that comes there meanwhile is lost.
		f, err := os.OpenFile(full, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return "", "", fmt.Errorf("keeping the photograph in %s: %w", dir, reason(err))
		}
		f.Close()
		err = replace(full, func(w io.Writer) error {
			_, err := w.Write(data)
			return err
		})
		if err != nil {
			os.Remove(full) // it is empty and ours
			return "", "", fmt.Errorf("keeping the photograph in %s: %w", dir, err)
		}
		return name, PhotoSum(data), nil
	}
	return "", "", fmt.Errorf("keeping the photograph in %s: there are too many already: move some elsewhere", dir)
}

// photoName is the n-th name for a photograph of the job at path.
func photoName(path string, n int, ext string) string {
	base := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	for len(base) > design.MaxPhotoName-20 { // a name of any script is cut between characters
		r := []rune(base)
		base = string(r[:len(r)-1])
	}
	base = strings.Trim(base, ". ")
	if base == "" {
		base = "job"
	}
	if n > 1 {
		return fmt.Sprintf("%s.room-%d%s", base, n, ext)
	}
	return base + ".room" + ext
}

// Photo reads the photograph of a job in the file at path. Where the file of that
// name is gone or another one, it is looked for by its sum under the names that
// [KeepPhoto] gives. The errors are [ErrPhotoGone] and [ErrPhotoChanged] in the
// chain of one that says what to do.
func Photo(path string, r design.Room) ([]byte, error) {
	if r.None() {
		return nil, errors.New("there is no photograph of the room: choose one")
	}
	if f := r.Faults(); len(f) > 0 {
		for _, f := range f {
			if f.Field == "room.photo" || f.Field == "room.sha256" {
				return nil, errors.New(f.Detail)
			}
		}
	}
	dir := filepath.Dir(path)
	data, err := Read(filepath.Join(dir, r.Photo), MaxPhotoBytes)
	if err == nil && PhotoSum(data) == r.SHA256 {
		return data, nil
	}
	if found := photoBySum(dir, r.SHA256); found != nil {
		return found, nil
	}
	switch {
	case err == nil:
		return nil, fmt.Errorf("%w: %s has changed since. Put the first one back, or choose this one again and mark its corners anew",
			ErrPhotoChanged, r.Photo)
	case errors.Is(err, fs.ErrNotExist):
		return nil, fmt.Errorf("%w: there is no %s in %s. Put it back there, or choose the photograph again",
			ErrPhotoGone, r.Photo, dir)
	}
	return nil, fmt.Errorf("the photograph %s can't be read: %w", r.Photo, err)
}

// mostPhotos is how many files beside a job are looked through for a photograph.
const mostPhotos = 40

// photoBySum is the photograph with this sum in a folder, nil when it is not there.
func photoBySum(dir, sum string) []byte {
	list, err := os.ReadDir(dir)
	if err != nil {
		return nil
	}
	looked := 0
	for _, e := range list {
		ext := strings.ToLower(filepath.Ext(e.Name()))
		if !strings.Contains(e.Name(), ".room") || !slices.Contains([]string{".jpg", ".jpeg", ".png"}, ext) {
			continue
		}
		if looked++; looked > mostPhotos {
			return nil
		}
		if data, err := Read(filepath.Join(dir, e.Name()), MaxPhotoBytes); err == nil && PhotoSum(data) == sum {
			return data
		}
	}
	return nil
}

// PhotoAlong puts the photograph of a job that is saved under another name beside
// the new file, and gives the room with its name there.
func PhotoAlong(from, to string, r design.Room) (design.Room, error) {
	if r.None() || from == "" || from == to {
		return r, nil
	}
	data, err := Photo(from, r)
	if err != nil {
		return r, err
	}
	ext := strings.ToLower(filepath.Ext(r.Photo))
	name, _, err := KeepPhoto(to, data, ext)
	if err != nil {
		return r, err
	}
	r.Photo = name
	return r, nil
}

package room

import (
	"bytes"
	"errors"
	"fmt"
	"image"

	"example.org/castwright/export/intake"
	"example.org/castwright/model/design"
	"example.org/castwright/model/store"
)

// MaxSide is the longer side, in pixels, that photographs are taken in with.
const MaxSide = 3840

// Kept reads the photograph of a job's room, which lies beside the job's file at path,
// with its focal length (see pose.Photo). The error says what is missing or can't be
// used; a room whose corners lie outside the photograph can't.
func Kept(path string, r design.Room) (img *image.RGBA, focal35 float64, err error) {
	if r.None() {
		return nil, 0, errors.New("this job holds no room: choose a photograph of it and mark its corners first")
	}
	if f := r.Faults(); len(f) > 0 {
		return nil, 0, f[0]
	}
	data, err := store.Photo(path, r)
	if err != nil {
		return nil, 0, err
	}
	limits := intake.Photo
	limits.Side = MaxSide
	img, meta, err := intake.Read(bytes.NewReader(data), limits)
	if err != nil {
		return nil, 0, fmt.Errorf("the photograph %s: %w", r.Photo, err)
	}
	if err := Marks(r.Corners, img.Rect.Dx(), img.Rect.Dy()).Check(img.Rect.Dx(), img.Rect.Dy()); err != nil {
		return nil, 0, err
	}
	return img, float64(meta.Focal35), nil
}

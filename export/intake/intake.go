// Package intake reads pictures that come from outside, a logo or a photograph
// of a room, with care: the size is looked at before anything is unpacked, a
// picture lies upright by its EXIF orientation, and nothing of its metadata (the
// place where it was taken) goes any further.
package intake

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"io"
)

// Limits bounds what is taken in. Zero fields take those of [Photo].
type Limits struct {
	Bytes  int // of the file
	Pixels int // as the file says it unpacks to
	Memory int // bytes that unpacking may take
	Side   int // longer side of the result: a larger picture is scaled down
}

// The limits for a photograph and for a logo.
var (
	Photo = Limits{Bytes: 64 << 20, Pixels: 64 << 20, Memory: 400 << 20, Side: 6000}
	Logo  = Limits{Bytes: 8 << 20, Pixels: 24 << 20, Memory: 100 << 20, Side: 1600}
)

// Meta is what is known of the file.
type Meta struct {
	Format        string // "jpeg" or "png"
	Orientation   int    // EXIF 2.3, tag 0x0112: 1 to 8, 1 when not said
	Width, Height int    // as stored, before it was turned or scaled
	Focal35       int    // focal length in terms of 35 mm film, mm (EXIF 2.3, tag 0xA405), 0 when not said
}

// Upright is the size of the whole picture as it is seen.
func (m Meta) Upright() (w, h int) {
	if m.Orientation >= 5 {
		return m.Height, m.Width
	}
	return m.Width, m.Height
}

// The errors that a caller may tell apart.
var (
	ErrType     = errors.New("this is not a JPEG or PNG picture: save it as one of these")
	ErrTooLarge = errors.New("the picture is too large: save a smaller copy")
	ErrDamaged  = errors.New("the picture is damaged or not whole: take it from the camera again")
)

// Read reads a picture and gives it upright, in 8-bit RGBA, at most Side on its
// longer side. It takes in at most Bytes and refuses a file whose heading says
// more than Pixels before it unpacks anything.
func Read(r io.Reader, l Limits) (*image.RGBA, Meta, error) {
	l = l.filled()
	data, err := io.ReadAll(io.LimitReader(r, int64(l.Bytes)+1))
	if err != nil {
		return nil, Meta{}, fmt.Errorf("the picture can't be read: %w", err)
	}
	if len(data) > l.Bytes {
		return nil, Meta{}, fmt.Errorf("%w (over %d MB)", ErrTooLarge, l.Bytes>>20)
	}
	return decode(data, l)
}

func (l Limits) filled() Limits {
	if l.Bytes <= 0 {
		l.Bytes = Photo.Bytes
	}
	if l.Pixels <= 0 {
		l.Pixels = Photo.Pixels
	}
	if l.Memory <= 0 {
		l.Memory = Photo.Memory
	}
	if l.Side <= 0 {
		l.Side = Photo.Side
	}
	return l
}

func decode(data []byte, l Limits) (*image.RGBA, Meta, error) {
	f, ok := formatOf(data)
	if !ok {
		return nil, Meta{}, ErrType
	}
	c, err := f.config(bytes.NewReader(data))
	if err != nil {
		return nil, Meta{}, fmt.Errorf("%w (%v)", ErrDamaged, err)
	}
	m := Meta{Format: f.name, Orientation: 1, Width: c.Width, Height: c.Height}
	if c.Width < 1 || c.Height < 1 {
		return nil, m, fmt.Errorf("%w (it has no size)", ErrDamaged)
	}
	if c.Width > l.Pixels/c.Height {
		return nil, m, fmt.Errorf("%w (%d by %d pixels; at most %d million)", ErrTooLarge, c.Width, c.Height, l.Pixels>>20)
	}
	if need := int64(c.Width) * int64(c.Height) * f.perPixel(data, c); need > int64(l.Memory) {
		return nil, m, fmt.Errorf("%w (%d by %d pixels stored so that they take %d MB; at most %d)", ErrTooLarge, c.Width, c.Height, need>>20, l.Memory>>20)
	}
	img, err := f.decode(bytes.NewReader(data))
	if err != nil {
		return nil, m, fmt.Errorf("%w (%v)", ErrDamaged, err)
	}
	m.Orientation, m.Focal35 = tagged(data, f.kind)
	return upright(scaled(img, l.Side), m.Orientation), m, nil
}

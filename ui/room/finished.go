package room

import (
	"image"

	"example.org/castwright/export/picture"
	"example.org/castwright/export/room"
	"example.org/castwright/model/slab"
)

// finished is a picture with the top in it. Of the picture only the part is kept that
// the top has changed: the photograph is there anyway, and large.
type finished struct {
	key
	set   *picture.Set // of the design, for the stages after
	solid slab.Solid
	wide  int          // of the whole picture, pixels
	part  *image.NRGBA // at its place in the whole picture
	seen  *image.RGBA  // the whole at the size of the screen
	notes []string
	stage int // of the stages, the last one is the best
}

// take keeps what was made.
func (f *finished) take(r *room.Result) {
	f.wide, f.notes = r.Image.Rect.Dx(), r.Notes
	f.part = image.NewNRGBA(r.Part)
	lay(f.part, r.Image, r.Part)
}

// whole is the whole picture, made anew of its photograph.
func (f *finished) whole(ph *photograph) *image.NRGBA {
	photo := ph.at(f.wide)
	// Without transparency the two models are the same bytes.
	opaque := &image.NRGBA{Pix: photo.Pix, Stride: photo.Stride, Rect: photo.Rect}
	out := image.NewNRGBA(photo.Rect)
	lay(out, opaque, photo.Rect)
	lay(out, f.part, f.part.Rect)
	return out
}

// lay copies a part of a picture to its place in another.
func lay(dst, src *image.NRGBA, part image.Rectangle) {
	part = part.Intersect(src.Rect).Intersect(dst.Rect)
	for y := part.Min.Y; y < part.Max.Y; y++ {
		to, from := dst.PixOffset(part.Min.X, y), src.PixOffset(part.Min.X, y)
		copy(dst.Pix[to:to+4*part.Dx()], src.Pix[from:])
	}
}

package draw

import (
	"image"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
)

// A picture on an approval sheet is at least and at most so high for its width.
const minShare, maxShare = 0.48, 0.66

const (
	besideShare = 0.62 // of the studio's picture beside one in the room
	besideGap   = 4.0  // between the two, mm
	pictureFoot = 6.5  // the room below a picture, for the words under it, mm
)

// PaperWidth is how wide the pictures of an approval sheet may be, mm.
func PaperWidth(job design.Job, o SheetOptions) float64 {
	f := &flow{sys: job.Units, opt: o}
	f.turn()
	return f.width()
}

// PictureShape is the width of the studio's picture on an approval sheet in millimetres,
// and how high it is for its width: as high as the drawing, at the scale that it has
// beside the lowest picture, leaves room for; beside a picture in the room as high as
// that.
func PictureShape(job design.Job, option design.Option, r report.Report, o ApprovalOptions) (width, share float64) {
	if o.Room != nil && !o.Room.Bounds().Empty() {
		f := &flow{sys: job.Units, opt: o.SheetOptions}
		f.opt.Width = 0
		f.turn()
		return f.beside(o.Room) / besideShare, besideShare
	}
	return pictureRoom(job, option, r, o)
}

// pictureRoom is how wide a picture across the page is, mm, and how high at most for its
// width.
func pictureRoom(job design.Job, option design.Option, r report.Report, o ApprovalOptions) (width, share float64) {
	o.Width = 0
	f := &flow{sys: job.Units, opt: o.SheetOptions}
	f.turn()
	f.letterhead(o.Head)
	f.title(job, option, o)
	width = f.width()
	zone := geom.Box{Min: geom.Vec{X: sheetMargin, Y: f.y + minShare*width + pictureFoot}, Max: geom.Vec{X: f.l.w - sheetMargin, Y: f.bottom - 3}}
	b := r.Solid.Outline.Bounds()
	if b.Empty() || !b.Min.Finite() || !b.Max.Finite() {
		return width, minShare
	}
	v, one := f.l.plan(option.Design, r, f.l.view(f.sys), zone)
	around := room(option.Design, r.Solid, v)
	drawing := b.H()/one + v.Point/f.l.unit*(around[front]+around[back])
	return width, max(minShare, min(maxShare, minShare+(zone.H()-drawing-6)/width))
}

// beside is the height, mm, at which a picture in the room and the studio's fill the
// page's width.
func (f *flow) beside(room image.Image) float64 {
	b := room.Bounds()
	return min((f.width()-besideGap)/(1/besideShare+float64(b.Dx())/float64(b.Dy())), maxShare*f.width())
}

// pictures lays the pictures across the page, with the words under them; most is how
// high one alone may be for the page's width.
func (f *flow) pictures(o ApprovalOptions, most float64) {
	studio, room := o.Picture, o.Room
	if studio != nil && studio.Bounds().Empty() {
		studio = nil
	}
	if room != nil && room.Bounds().Empty() {
		room = nil
	}
	share := func(img image.Image) float64 { return float64(img.Bounds().Dy()) / float64(img.Bounds().Dx()) }
	put := func(img image.Image, x, w, h float64) {
		box := geom.Box{Min: f.l.at(x, f.y), Max: f.l.at(x+w, f.y+h)}
		f.l.items = append(f.l.items, scene.Picture{Box: box, Image: img})
	}
	words, h := vary, 0.0
	switch {
	case studio == nil && room == nil:
		return
	case room == nil:
		h = f.width() * max(minShare, min(maxShare, share(studio)))
		put(studio, sheetMargin, f.width(), h)
	case studio == nil:
		h = f.width() * min(most, share(room))
		w := h / share(room)
		put(room, sheetMargin+(f.width()-w)/2, w, h)
		words = "Set into a photograph of the room.   ·   " + vary
	default:
		h = f.beside(room)
		put(studio, sheetMargin, h/besideShare, h)
		put(room, f.l.w-sheetMargin-h/share(room), h/share(room), h)
		words = "At the right: set into a photograph of the room.   ·   " + vary
	}
	f.l.words(sheetMargin, f.y+h+3, scene.AnchorStart, typeSmall, false, f.l.theme.Faint, words)
	f.y += h + pictureFoot
}

// seen names the pictures of a sheet in the words that are signed, "" for none.
func (o ApprovalOptions) seen() string {
	switch {
	case o.Picture != nil && o.Room != nil:
		return "the pictures, "
	case o.Picture != nil || o.Room != nil:
		return "the picture, "
	}
	return ""
}

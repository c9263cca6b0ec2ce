package compare

import (
	"image"
	"math"

	"golang.org/x/image/draw"

	"example.org/castwright/export/picture"
	"example.org/castwright/model/geom"
	"example.org/castwright/ui/view"
)

// layer is a side that is painted, drawing or picture. It may be looked at through
// another view than it was painted for, until one for that is there.
type layer struct {
	of    subject
	view  view.View // in pixels, that it was painted for
	image *image.RGBA
	grade int // of a picture: how far it has come; see grades
}

// subject is what a layer shows, but for the zoom: layers of one subject differ in
// what of it is in sight, and how clear it is.
type subject struct {
	print string // of the design
	drawn drawn  // of a drawing
	// seen is how a picture is taken, before its zoom; Kind Top for one that is to
	// the scale of the drawing.
	photo bool
	seen  picture.View
	// page is the size of the picture before its zoom, pixels, where it has an eye.
	w, h int
}

// drawn is how a drawing is drawn.
type drawn struct {
	dimensions, dark, imperial bool
}

// paint lays the layer on a picture as it is seen through a view, in pixels.
func (l *layer) paint(dst *image.RGBA, v view.View) {
	if l == nil || l.image == nil {
		return
	}
	k := v.Scale / l.view.Scale
	at := v.Point(l.view.Design(geom.Vec{}))
	w, h := float64(l.image.Rect.Dx())*k, float64(l.image.Rect.Dy())*k
	const far = 1 << 20
	if !(k > 0) || math.Abs(at.X) > far || math.Abs(at.Y) > far || w > far || h > far {
		return
	}
	if math.Abs(k-1) < 1e-9 {
		p := image.Pt(int(math.Round(at.X)), int(math.Round(at.Y)))
		draw.Copy(dst, p, l.image, l.image.Rect, draw.Src, nil)
		return
	}
	to := image.Rect(int(math.Round(at.X)), int(math.Round(at.Y)), int(math.Round(at.X+w)), int(math.Round(at.Y+h)))
	// A drawing is there anew in a moment; a picture takes seconds.
	how := draw.Interpolator(draw.NearestNeighbor)
	if l.of.photo {
		how = draw.ApproxBiLinear
	}
	how.Scale(dst, to, l.image, l.image.Rect, draw.Src, nil)
}

// kept is layers that are shown again at once when they are wanted again, the latest
// first.
type kept struct {
	list  []*layer
	bytes int
}

// mostKept bounds what is kept, in bytes: at 2560 x 1440 nine side by side, or three
// over each other.
const mostKept = 40 << 20

// add keeps a layer in place of a lesser one of the same.
func (k *kept) add(l *layer) {
	k.drop(func(o *layer) bool { return o.of == l.of && o.view == l.view && o.grade <= l.grade })
	k.list = append([]*layer{l}, k.list...)
	k.bytes += len(l.image.Pix)
	for len(k.list) > 2 && k.bytes > mostKept {
		last := k.list[len(k.list)-1]
		k.drop(func(o *layer) bool { return o == last })
	}
}

func (k *kept) drop(gone func(*layer) bool) {
	left := k.list[:0]
	for _, l := range k.list {
		if gone(l) {
			k.bytes -= len(l.image.Pix)
		} else {
			left = append(left, l)
		}
	}
	clear(k.list[len(left):])
	k.list = left
}

// best is the best layer of a subject for a view; exact reports whether it was
// painted for that view. It is nil where there is none.
func (k *kept) best(of subject, v view.View) (l *layer, exact bool) {
	for _, o := range k.list {
		if o.of == of && o.view == v && (!exact || o.grade > l.grade) {
			l, exact = o, true
		}
	}
	if l != nil {
		return l, true
	}
	// Else the latest, which is the likeliest to look alike.
	for _, o := range k.list {
		if o.of == of {
			return o, false
		}
	}
	return nil, false
}

package board

import (
	"image"
	"math"

	"example.org/castwright/model/geom"
	"example.org/castwright/ui/tool"
	"example.org/castwright/ui/view"
)

// Sizes of what is shown over the top, in points.
const (
	lineWidth  = 2.0  // of a selection
	casing     = 1.25 // beyond a line on each side
	guideWidth = 1.25
	dimWidth   = 1.0
	cornerHalf = 4.0
	discRadius = 4.5
	ringRadius = 5.5
	chipRadius = 4.0
)

// overlay paints what the hand shows. It keeps its buffers between pictures.
type overlay struct {
	brush  brush
	text   lettering
	ink    ink
	v      view.View // in pixels
	px     float64   // pixels to the point
	labels []label   // of the last picture, for clicks on them
	taken  []geom.Box
	below  []geom.Box // pixels of the numbers of the drawing below
	keep   geom.Box   // pixels of the picture that something else covers
	pts    []geom.Vec
}

// draw paints o on img; v is the view in pixels, px of them to the point.
func (l *overlay) draw(img *image.RGBA, o tool.Overlay, v view.View, px float64) {
	l.begin(img, v, px)
	l.swaths(o.Swaths)
	l.lines(o.Ghost, lineWidth, l.ink.accent, true)
	l.lines(o.Hover, lineWidth, l.ink.faint, false)
	l.lines(o.Selected, lineWidth, l.ink.accent, true)
	l.links(o.Links)
	l.guides(o.Guides)
	l.stalks(o.Handles)
	for _, d := range o.Dims {
		l.dimension(d)
	}
	for _, h := range o.Handles {
		l.handle(h)
	}
	l.locks(o.Locks)
	l.writeLabels(o)
	l.selecting(o.Frame)
}

func (l *overlay) begin(img *image.RGBA, v view.View, px float64) {
	l.brush.on(img)
	l.text.set(textFont(), textSize()*px)
	l.v, l.px = v, px
	l.labels, l.taken = l.labels[:0], l.taken[:0]
}

// project is a polyline in pixels; the slice is reused by the next call.
func (l *overlay) project(line tool.Line) []geom.Vec {
	l.pts = l.pts[:0]
	for _, p := range line.Points {
		l.pts = append(l.pts, l.v.Point(p))
	}
	return l.pts
}

func (l *overlay) lines(lines []tool.Line, width float64, c tint, cased bool) {
	if len(lines) == 0 {
		return
	}
	if cased {
		for _, line := range lines {
			l.brush.stroke(l.project(line), line.Closed, (width+2*casing)*l.px)
		}
		l.brush.paint(l.ink.light)
	}
	for _, line := range lines {
		l.brush.stroke(l.project(line), line.Closed, width*l.px)
	}
	l.brush.paint(c)
}

// swaths paints what a brush has swept over, see-through.
func (l *overlay) swaths(swaths []tool.Swath) {
	for _, s := range swaths {
		width := s.Width * l.v.Scale
		pts := l.project(tool.Line{Points: s.Points})
		for i, p := range pts {
			l.brush.disc(p, width/2)
			if i > 0 {
				l.brush.bar(pts[i-1], p, width)
			}
		}
		l.brush.paint(l.ink.swath)
	}
}

func (l *overlay) guides(lines []tool.Line) {
	for _, pass := range [...]struct {
		more float64
		c    tint
	}{{2 * casing, l.ink.light}, {0, l.ink.accent}} {
		for _, line := range lines {
			pts := l.project(line)
			for i := 0; i+1 < len(pts); i++ {
				l.brush.dashes(pts[i], pts[i+1], (guideWidth+pass.more)*l.px, 6*l.px, 4*l.px)
			}
			if len(pts) > 0 {
				l.brush.disc(pts[0], (2.5+pass.more/2)*l.px)
			}
		}
		l.brush.paint(pass.c)
	}
}

func (l *overlay) stalks(hs []tool.Handle) {
	for _, pass := range [...]struct {
		more float64
		c    tint
	}{{2 * casing, l.ink.light}, {0, l.ink.dark}} {
		for _, h := range hs {
			if h.Kind == tool.HandleControl || h.Kind == tool.HandleRadius || h.Kind == tool.HandleTurn {
				l.brush.line(l.v.Point(h.Stalk), l.v.Point(h.At), (dimWidth+pass.more)*l.px)
			}
		}
		l.brush.paint(pass.c)
	}
}

// handle paints one handle: a light body with a dark rim reads on any top; the
// one in hand or under the mouse is filled with the accent.
func (l *overlay) handle(h tool.Handle) {
	at := l.v.Point(h.At)
	body := l.ink.light
	if h.Active {
		body = l.ink.accent
	}
	for _, pass := range [...]struct {
		more float64
		c    tint
	}{{1.5, l.ink.dark}, {0, body}} {
		l.shape(h, at, pass.more)
		l.brush.paint(pass.c)
	}
	if h.Kind == tool.HandleRadius || h.Kind == tool.HandleTurn {
		l.brush.disc(at, 2*l.px)
		l.brush.paint(l.ink.dark)
	}
}

// shape gathers a handle's shape, grown by some points.
func (l *overlay) shape(h tool.Handle, at geom.Vec, more float64) {
	square := func(half, turn float64) {
		half += more
		u := geom.Vec{X: half * l.px}.Turn(turn)
		w := u.Left()
		l.brush.convex(at.Add(u).Add(w), at.Sub(u).Add(w), at.Sub(u).Sub(w), at.Add(u).Sub(w))
	}
	switch h.Kind {
	case tool.HandleCorner:
		square(cornerHalf, 0)
	case tool.HandleBend:
		square(cornerHalf, math.Pi/4)
	case tool.HandleWidth:
		square(cornerHalf-1, math.Pi/4)
	case tool.HandleRadius, tool.HandleTurn:
		l.brush.disc(at, (ringRadius+more)*l.px)
	default:
		l.brush.disc(at, (discRadius+more)*l.px)
	}
}

// dimension paints the line of a dimension with a tick at each end.
func (l *overlay) dimension(d tool.Dim) {
	a, b := l.v.Point(d.From), l.v.Point(d.To)
	if d.Bare || a.Dist(b) < 2 {
		return
	}
	tick := b.Sub(a).Unit().Left().Mul(4 * l.px)
	c := l.ink.dark
	if d.Active {
		c = l.ink.accent
	}
	for _, pass := range [...]struct {
		more float64
		c    tint
	}{{2 * casing, l.ink.light}, {0, c}} {
		w := (dimWidth + pass.more) * l.px
		l.brush.line(a, b, w)
		l.brush.line(a.Sub(tick), a.Add(tick), w)
		l.brush.line(b.Sub(tick), b.Add(tick), w)
		l.brush.paint(pass.c)
	}
}

func (l *overlay) plate(box geom.Box, c tint) {
	l.brush.plate(box.Grow(1*l.px), (chipRadius+1)*l.px)
	l.brush.paint(l.ink.light)
	l.brush.plate(box, chipRadius*l.px)
	l.brush.paint(c)
}

// flash paints a ring about a place, at a phase from 0 to 1 of its spreading.
func (l *overlay) flash(at geom.Vec, phase float64) {
	c := l.v.Point(at)
	r := (8 + 22*phase) * l.px
	l.brush.circle(c, r, (3+2*casing)*l.px)
	l.brush.paint(l.ink.light)
	l.brush.circle(c, r, 3*l.px)
	l.brush.paint(l.ink.accent)
}

// frame shows that the board has the keyboard.
func (l *overlay) frame() {
	w, h, d := l.v.W, l.v.H, l.px
	l.brush.stroke([]geom.Vec{{X: d, Y: d}, {X: w - d, Y: d}, {X: w - d, Y: h - d}, {X: d, Y: h - d}}, true, 2*d)
	l.brush.paint(l.ink.accent)
}

// message writes lines in the middle of the picture, the first one as a title.
func (l *overlay) message(lines ...string) {
	step := textSize() * 1.7 * l.px
	width := 0.0
	for _, s := range lines {
		width = math.Max(width, l.text.width(s))
	}
	c := geom.Vec{X: l.v.W / 2, Y: l.v.H / 2}
	half := geom.Vec{X: width/2 + 20*l.px, Y: step*float64(len(lines))/2 + 14*l.px}
	l.plate(geom.Box{Min: c.Sub(half), Max: c.Add(half)}, l.ink.chip)
	for i, s := range lines {
		y := c.Y + (float64(i)-float64(len(lines)-1)/2)*step + l.text.up/2
		l.text.write(l.brush.img, geom.Vec{X: c.X - l.text.width(s)/2, Y: y}, s, l.ink.onChip)
	}
}

package board

import (
	"image"
	"math"

	"example.org/castwright/model/geom"
	"github.com/golang/freetype/raster"
	"golang.org/x/image/math/fixed"
)

// tint is a colour with premultiplied alpha, as [image.RGBA] holds it.
type tint struct{ r, g, b, a uint32 }

// brush paints smooth-edged shapes on a picture. Shapes are gathered first and
// painted together with [brush.paint]; where they overlap they are one.
type brush struct {
	img  *image.RGBA
	ras  *raster.Rasterizer
	w, h int
	now  tint
}

// on turns the brush to a picture.
func (b *brush) on(img *image.RGBA) {
	b.img = img
	if size := img.Rect.Size(); b.ras == nil || size.X != b.w || size.Y != b.h {
		b.w, b.h = size.X, size.Y
		b.ras = raster.NewRasterizer(b.w, b.h)
	}
	b.ras.UseNonZeroWinding = true
	b.ras.Clear()
}

// paint paints what has been gathered.
func (b *brush) paint(c tint) {
	b.now = c
	b.ras.Rasterize(b)
	b.ras.Clear()
}

// Paint lays the spans of one row, as the rasterizer hands them out.
func (b *brush) Paint(spans []raster.Span, _ bool) {
	for _, s := range spans {
		// Cells left and right of the picture are kept by the rasterizer.
		s.X0, s.X1 = max(s.X0, 0), min(s.X1, b.w)
		if s.X0 >= s.X1 {
			continue
		}
		alpha := s.Alpha
		r, g, bl, a := b.now.r*alpha/0xffff, b.now.g*alpha/0xffff, b.now.b*alpha/0xffff, b.now.a*alpha/0xffff
		row := b.img.Pix[s.Y*b.img.Stride+s.X0*4 : s.Y*b.img.Stride+s.X1*4]
		if a == 0xff {
			for i := 0; i+3 < len(row); i += 4 {
				row[i], row[i+1], row[i+2], row[i+3] = uint8(r), uint8(g), uint8(bl), 0xff
			}
			continue
		}
		keep := 0xff - a
		for i := 0; i+3 < len(row); i += 4 {
			row[i] = uint8(r + uint32(row[i])*keep/0xff)
			row[i+1] = uint8(g + uint32(row[i+1])*keep/0xff)
			row[i+2] = uint8(bl + uint32(row[i+2])*keep/0xff)
			row[i+3] = uint8(a + uint32(row[i+3])*keep/0xff)
		}
	}
}

// convex gathers a convex polygon, whichever way it runs. One that lies outside
// of the picture, or has a coordinate that is no number, is left out.
func (b *brush) convex(pts ...geom.Vec) {
	box := geom.EmptyBox()
	turn := 0.0
	for i, p := range pts {
		if !p.Finite() || math.Abs(p.X) > 1e5 || math.Abs(p.Y) > 1e5 {
			return
		}
		box = box.Include(p)
		turn += p.Cross(pts[(i+1)%len(pts)])
	}
	if box.Max.X < 0 || box.Max.Y < 0 || box.Min.X > float64(b.w) || box.Min.Y > float64(b.h) {
		return
	}
	at := func(i int) fixed.Point26_6 {
		if turn < 0 {
			i = len(pts) - 1 - i
		}
		return fixed.Point26_6{X: fixed.Int26_6(math.Round(pts[i].X * 64)), Y: fixed.Int26_6(math.Round(pts[i].Y * 64))}
	}
	b.ras.Start(at(0))
	for i := 1; i < len(pts); i++ {
		b.ras.Add1(at(i))
	}
	b.ras.Add1(at(0))
}

// line gathers a straight stroke with square ends that reach half its width
// beyond a and c, so that strokes that follow each other leave no gap.
func (b *brush) line(a, c geom.Vec, width float64) {
	a, c, ok := b.clip(a, c, width+2)
	if !ok {
		return
	}
	along := c.Sub(a).Unit().Mul(width / 2)
	side := along.Left()
	a, c = a.Sub(along), c.Add(along)
	b.convex(a.Add(side), c.Add(side), c.Sub(side), a.Sub(side))
}

// bar gathers a straight stroke that ends at a and c.
func (b *brush) bar(a, c geom.Vec, width float64) {
	side := c.Sub(a).Unit().Left().Mul(width / 2)
	b.convex(a.Add(side), c.Add(side), c.Sub(side), a.Sub(side))
}

// stroke gathers a polyline.
func (b *brush) stroke(pts []geom.Vec, closed bool, width float64) {
	n := len(pts)
	for i := range n {
		j := i + 1
		if j == n {
			if !closed {
				return
			}
			j = 0
		}
		b.line(pts[i], pts[j], width)
	}
}

// dashes gathers a straight dashed stroke.
func (b *brush) dashes(a, c geom.Vec, width, on, off float64) {
	a, c, ok := b.clip(a, c, width+2)
	if !ok {
		return
	}
	total := a.Dist(c)
	along := c.Sub(a).Unit()
	side := along.Left().Mul(width / 2)
	for t := 0.0; t < total; t += on + off {
		p, q := a.Add(along.Mul(t)), a.Add(along.Mul(math.Min(total, t+on)))
		b.convex(p.Add(side), q.Add(side), q.Sub(side), p.Sub(side))
	}
}

// disc gathers a filled circle.
func (b *brush) disc(c geom.Vec, r float64) {
	n := 12 + int(r)
	pts := make([]geom.Vec, n)
	for i := range pts {
		s, co := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		pts[i] = geom.Vec{X: c.X + r*co, Y: c.Y + r*s}
	}
	b.convex(pts...)
}

// circle gathers the line of a circle.
func (b *brush) circle(c geom.Vec, r, width float64) {
	n := 16 + int(2*r)
	at := func(i int) geom.Vec {
		s, co := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		return geom.Vec{X: c.X + r*co, Y: c.Y + r*s}
	}
	for i := range n {
		p, q := at(i), at(i+1)
		u, v := p.Sub(c).Unit().Mul(width/2), q.Sub(c).Unit().Mul(width/2)
		b.convex(p.Add(u), q.Add(v), q.Sub(v), p.Sub(u))
	}
}

// plate gathers a rectangle with rounded corners.
func (b *brush) plate(box geom.Box, r float64) {
	r = math.Min(r, math.Min(box.W(), box.H())/2)
	var pts []geom.Vec
	for q, c := range [...]geom.Vec{
		{X: box.Max.X - r, Y: box.Max.Y - r}, {X: box.Min.X + r, Y: box.Max.Y - r},
		{X: box.Min.X + r, Y: box.Min.Y + r}, {X: box.Max.X - r, Y: box.Min.Y + r},
	} {
		for k := range 5 {
			s, co := math.Sincos(math.Pi / 2 * (float64(q) + float64(k)/4))
			pts = append(pts, geom.Vec{X: c.X + r*co, Y: c.Y + r*s})
		}
	}
	b.convex(pts...)
}

// clip shortens a segment to what lies in the picture grown by margin (Liang
// and Barsky 1984). ok is false when nothing does.
func (b *brush) clip(p, q geom.Vec, margin float64) (geom.Vec, geom.Vec, bool) {
	if !p.Finite() || !q.Finite() {
		return p, q, false
	}
	d := q.Sub(p)
	lo, hi := 0.0, 1.0
	for _, e := range [...][2]float64{
		{-d.X, p.X + margin}, {d.X, float64(b.w) + margin - p.X},
		{-d.Y, p.Y + margin}, {d.Y, float64(b.h) + margin - p.Y},
	} {
		switch t := e[1] / e[0]; {
		case e[0] == 0 && e[1] < 0:
			return p, q, false
		case e[0] < 0:
			lo = math.Max(lo, t)
		case e[0] > 0:
			hi = math.Min(hi, t)
		}
	}
	if lo > hi {
		return p, q, false
	}
	return p.Add(d.Mul(lo)), p.Add(d.Mul(hi)), true
}

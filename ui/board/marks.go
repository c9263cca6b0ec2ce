package board

import (
	"example.org/castwright/model/geom"
	"example.org/castwright/ui/tool"
)

// Sizes of what marks relations and locks, in points.
const (
	linkRing  = 4.5 // radius of a link of the chain
	lockWidth = 13.0
)

// links paints relations: a fine dotted line from what is held to what it is held
// to, with two links of a chain on it and a foot at its end.
func (l *overlay) links(links []tool.Link) {
	if len(links) == 0 {
		return
	}
	for _, pass := range [...]struct {
		more float64
		c    tint
	}{{2 * casing, l.ink.light}, {0, l.ink.accent}} {
		for _, k := range links {
			a, b := l.v.Point(k.From), l.v.Point(k.To)
			long := a.Dist(b)
			if long < 2 {
				continue
			}
			u := b.Sub(a).Unit()
			foot := u.Left().Mul(5 * l.px)
			l.brush.line(b.Sub(foot), b.Add(foot), (dimWidth+pass.more)*l.px)
			middle := a.Lerp(b, 0.5)
			if long < 6*linkRing*l.px {
				l.brush.dashes(a, b, (dimWidth+pass.more)*l.px, 2*l.px, 3*l.px)
				continue
			}
			ring := u.Mul(2.4 * linkRing * l.px)
			l.brush.dashes(a, middle.Sub(ring), (dimWidth+pass.more)*l.px, 2*l.px, 3*l.px)
			l.brush.dashes(middle.Add(ring), b, (dimWidth+pass.more)*l.px, 2*l.px, 3*l.px)
			for _, side := range [...]float64{-0.7, 0.7} {
				l.brush.circle(middle.Add(u.Mul(side*linkRing*l.px)), linkRing*l.px, (1.6+pass.more)*l.px)
			}
		}
		l.brush.paint(pass.c)
	}
}

// locks paints a padlock at each place.
func (l *overlay) locks(places []geom.Vec) {
	for _, pass := range [...]struct {
		more float64
		c    tint
	}{{1.5, l.ink.light}, {0, l.ink.dark}} {
		for _, p := range places {
			c := l.v.Point(p)
			half := geom.Vec{X: lockWidth / 2 * l.px, Y: lockWidth * 0.4 * l.px}
			body := geom.Box{Min: c.Sub(half), Max: c.Add(half)}
			l.brush.circle(geom.Vec{X: c.X, Y: body.Min.Y}, lockWidth*0.3*l.px, (2+pass.more)*l.px)
			l.brush.plate(body.Grow(pass.more*l.px), 2*l.px)
		}
		l.brush.paint(pass.c)
	}
}

// selecting paints the frame that is drawn to select what lies inside.
func (l *overlay) selecting(frame *geom.Box) {
	if frame == nil {
		return
	}
	box := geom.EmptyBox().Include(l.v.Point(frame.Min)).Include(l.v.Point(frame.Max))
	c := [...]geom.Vec{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}}
	l.brush.convex(c[:]...)
	l.brush.paint(l.ink.veil)
	for _, pass := range [...]struct {
		more float64
		c    tint
	}{{2 * casing, l.ink.light}, {0, l.ink.accent}} {
		for i, p := range c {
			l.brush.dashes(p, c[(i+1)%len(c)], (guideWidth+pass.more)*l.px, 6*l.px, 4*l.px)
		}
		l.brush.paint(pass.c)
	}
}

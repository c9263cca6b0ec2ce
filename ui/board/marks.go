package board

import (
	"math"

	"example.org/castwright/model/geom"
	"example.org/castwright/ui/tool"
)

// Sizes of what marks relations and locks, in points.
const (
	linkRing    = 4.0  // radius of a link of the chain
	chainRadius = 10.0 // of the plate that a chain lies on
	lockWidth   = 11.0
	lockPlate   = 11.0 // radius
)

// links paints relations: a fine dotted line from what is held to what it is held
// to, with two links of a chain on it and a foot at its end. A chain that is beside
// its line has a stalk.
func (l *overlay) links(links []tool.Link) {
	for _, pass := range [...]struct {
		more float64
		c    tint
	}{{2 * casing, l.ink.light}, {0, l.ink.accent}} {
		width := (dimWidth + pass.more) * l.px
		for _, k := range links {
			a, b, c := l.v.Point(k.From), l.v.Point(k.To), l.v.Point(k.Chain)
			if long := a.Dist(b); long >= 2 {
				u := b.Sub(a).Unit()
				foot := u.Left().Mul(5 * l.px)
				l.brush.line(b.Sub(foot), b.Add(foot), width)
				l.brush.dashes(a, b, width, 2*l.px, 3*l.px)
			}
			if off := c.Sub(b); math.Abs(off.Cross(b.Sub(a).Unit())) > 1 || a.Dist(b) < 2 {
				l.brush.line(b, c.Sub(off.Unit().Mul(2*linkRing*l.px)), width)
				l.brush.disc(b, (2.5+pass.more/2)*l.px)
			}
		}
		l.brush.paint(pass.c)
	}
	for _, k := range links {
		l.chain(k)
	}
}

// chain paints the chain of a link on a plate that shows that it can be clicked; the
// plate of one that was taken is filled.
func (l *overlay) chain(k tool.Link) {
	c := l.v.Point(k.Chain)
	u := geom.Vec{X: k.Along.X, Y: -k.Along.Y} // the picture runs down
	rim, body, rings := l.ink.accent, l.ink.light, l.ink.accent
	if k.Armed {
		rim, body, rings = l.ink.light, l.ink.accent, l.ink.onChip
	}
	wide := 1.0
	if k.Armed || k.Hover {
		wide = 2.5
	}
	l.brush.disc(c, (chainRadius+wide)*l.px)
	l.brush.paint(rim)
	l.brush.disc(c, chainRadius*l.px)
	l.brush.paint(body)
	for _, side := range [...]float64{-0.62, 0.62} {
		l.brush.circle(c.Add(u.Mul(side*linkRing*l.px)), linkRing*l.px, 1.6*l.px)
	}
	l.brush.paint(rings)
}

// locks paints a padlock at each place, on a plate that stands off from whatever lies
// there.
func (l *overlay) locks(places []geom.Vec) {
	for _, p := range places {
		c := l.v.Point(p)
		l.brush.disc(c, (lockPlate+1)*l.px)
		l.brush.paint(l.ink.dark)
		l.brush.disc(c, lockPlate*l.px)
		l.brush.paint(l.ink.light)
		half := geom.Vec{X: lockWidth / 2 * l.px, Y: lockWidth * 0.36 * l.px}
		c.Y += lockWidth * 0.2 * l.px
		body := geom.Box{Min: c.Sub(half), Max: c.Add(half)}
		l.brush.circle(geom.Vec{X: c.X, Y: body.Min.Y}, lockWidth*0.3*l.px, 1.8*l.px)
		l.brush.plate(body, 1.5*l.px)
		l.brush.paint(l.ink.dark)
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

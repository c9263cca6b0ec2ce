package compare

import (
	"math"

	"example.org/castwright/model/geom"
	"example.org/castwright/ui/view"
)

// lock is how both sides are looked at together: what zooms or shifts one of them
// does the same to the other. It is a value; its methods give another. Sizes and
// places on the sides are in points.
type lock struct {
	views [2]view.View
	// tops are what each side shows whole, mm of the design with y toward the back.
	tops   [2]geom.Box
	rooms  [2]view.Edges // points around them
	fitted bool          // each side is as large as fits; else both have one scale
	// beside moves the second top onto the first, mm: what they are aligned by.
	beside geom.Vec
	moved  bool // is no longer the whole
}

// How far the zoom goes: the whole is never smaller than a quarter of the picture,
// and a millimetre never larger than this many points unless the whole is.
const (
	least   = 0.25
	nearest = 24.0
)

// newLock looks at two whole tops on sides of w by h points.
func newLock(w, h float64, tops [2]geom.Box, beside geom.Vec, rooms [2]view.Edges, fitted bool) lock {
	l := lock{tops: tops, beside: beside, rooms: rooms, fitted: fitted}
	for i := range l.views {
		l.views[i] = view.New(w, h)
	}
	return l.fit()
}

// whole is the box that a side shows when nothing has been moved.
func (l lock) whole(i int) geom.Box {
	if l.fitted {
		return l.tops[i]
	}
	box := geom.EmptyBox()
	for k, b := range l.tops {
		if !b.Empty() && b.Min.Finite() && b.Max.Finite() {
			by := l.shift(k).Sub(l.shift(i))
			box = box.Include(b.Min.Add(by)).Include(b.Max.Add(by))
		}
	}
	return box
}

// all is the view of the whole of a side.
func (l lock) all(i int) view.View { return l.views[i].FitWithin(l.whole(i), l.room(i)) }

// room is the points around a side's top. Sides of one scale have the same, so that they
// have one origin too.
func (l lock) room(i int) view.Edges {
	if l.fitted {
		return l.rooms[i]
	}
	return l.rooms[0].Furthest(l.rooms[1])
}

// shift is what is added to places of a side's design to lay it onto the first.
func (l lock) shift(i int) geom.Vec {
	if i == 1 {
		return l.beside
	}
	return geom.Vec{}
}

// fit shows the whole of both.
func (l lock) fit() lock {
	for i := range l.views {
		l.views[i] = l.all(i)
	}
	l.moved = false
	return l
}

// zoom scales both by a factor with the places under the point at held still.
func (l lock) zoom(at geom.Vec, factor float64) lock {
	if !(factor > 0) || math.IsInf(factor, 0) || !at.Finite() {
		return l
	}
	// Neither side may stop before the other.
	for i, v := range l.views {
		whole := l.all(i).Scale
		low, high := math.Max(view.MinScale, least*whole), math.Min(view.MaxScale, math.Max(nearest, whole))
		factor = math.Max(factor, math.Min(1, low/v.Scale))
		factor = math.Min(factor, math.Max(1, high/v.Scale))
	}
	for i := range l.views {
		l.views[i] = l.views[i].Zoom(at, factor)
	}
	l.moved = true
	return l.kept()
}

// pan shifts both pictures by d points.
func (l lock) pan(d geom.Vec) lock {
	if !d.Finite() {
		return l
	}
	for i := range l.views {
		l.views[i] = l.views[i].Pan(d)
	}
	l.moved = true
	return l.kept()
}

// middle is the middle of what the room around the tops leaves of the sides.
func (l lock) middle() geom.Vec {
	var m geom.Vec
	for i, v := range l.views {
		e := l.room(i)
		m = m.Add(geom.Vec{X: v.W + e.Left - e.Right, Y: v.H + e.Top - e.Bottom}.Mul(0.25))
	}
	return m
}

// kept is the lock shifted no more than it must so that the tops are not lost: the
// middle of the sides shows something of the box around them.
func (l lock) kept() lock {
	seen := geom.EmptyBox()
	for i, v := range l.views {
		if b := l.whole(i); !b.Empty() {
			seen = seen.Include(v.Point(b.Min)).Include(v.Point(b.Max))
		}
	}
	if seen.Empty() {
		return l
	}
	mid := l.middle()
	d := geom.Vec{X: mid.X - math.Max(seen.Min.X, math.Min(seen.Max.X, mid.X)), Y: mid.Y - math.Max(seen.Min.Y, math.Min(seen.Max.Y, mid.Y))}
	for i := range l.views {
		l.views[i] = l.views[i].Pan(d)
	}
	return l
}

// resize is the lock on sides of another size: the whole stays whole, else what was
// in the middle stays there, as near by as it was for the whole.
func (l lock) resize(w, h float64) lock {
	if l.views[0].W == w && l.views[0].H == h {
		if !l.moved {
			return l.fit()
		}
		return l
	}
	was := l
	for i := range l.views {
		l.views[i] = view.New(w, h)
	}
	l = l.fit()
	if !was.moved {
		return l
	}
	mid := geom.Vec{X: l.views[0].W / 2, Y: l.views[0].H / 2}
	l = l.zoom(mid, was.views[0].Scale/was.fit().views[0].Scale)
	for i, v := range was.views {
		at := v.Design(geom.Vec{X: v.W / 2, Y: v.H / 2})
		l.views[i] = l.views[i].Pan(mid.Sub(l.views[i].Point(at)))
	}
	l.moved = true
	return l.kept()
}

// centre brings a place of the first design and its like of the second into the
// middle of both sides, as large as fits up to four times the whole. Either may be
// empty; where both are, all is shown. Sides of one scale stay on one origin, so what
// was moved is seen moved.
func (l lock) centre(was, is geom.Box) lock {
	if was.Empty() {
		was = moved(is, l.beside)
	}
	if is.Empty() {
		is = moved(was, l.beside.Mul(-1))
	}
	if was.Empty() {
		return l.fit()
	}
	if !l.fitted {
		was = was.Union(moved(is, l.beside))
		is = moved(was, l.beside.Mul(-1))
	}
	const room = 0.30 // of the lesser side, around it
	n := l.fit()
	factor := math.Inf(1)
	for i, b := range [...]geom.Box{was.Grow(1), is.Grow(1)} {
		v := n.views[i]
		factor = math.Min(factor, v.Fit(b, room*math.Min(v.W, v.H)).Scale/v.Scale)
	}
	factor = math.Max(1, math.Min(4, factor))
	n = n.zoom(geom.Vec{X: n.views[0].W / 2, Y: n.views[0].H / 2}, factor)
	for i, b := range [...]geom.Box{was, is} {
		v := n.views[i]
		n.views[i] = v.Pan(geom.Vec{X: v.W / 2, Y: v.H / 2}.Sub(v.Point(b.Centre())))
	}
	n.moved = true
	return n.kept()
}

// scales are how many millimetres of each design a point is.
func (l lock) scales() (a, b float64) { return 1 / l.views[0].Scale, 1 / l.views[1].Scale }

func moved(b geom.Box, by geom.Vec) geom.Box {
	if b.Empty() {
		return b
	}
	return geom.Box{Min: b.Min.Add(by), Max: b.Max.Add(by)}
}

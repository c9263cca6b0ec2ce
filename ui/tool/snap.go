package tool

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// snap is what the snap holds: where, the guides to draw, and in words.
type snap struct {
	at     geom.Vec
	guides []Line
	words  string
}

// snapOff is said while the snap is suspended.
const snapOff = "The snap is off while Ctrl or Alt is held"

// snapper holds a moving place in line with marks, else on the grid.
type snapper struct {
	marks []mark
	nodes []design.Node // of the outline that the marks are taken from
	step  units.Length
	fine  units.Length // of a free hand: no finer than numbers are shown
	grid  string       // the step in words
	reach float64
	off   bool // suspended
}

// plane snaps a place that moves freely: each coordinate by itself.
func (s snapper) plane(p geom.Vec) snap {
	if s.off {
		return snap{at: gridPoint(p, s.fine), words: snapOff}
	}
	at := gridPoint(p, s.step)
	mx, okX := s.best(p, geom.Vec{X: 1})
	my, okY := s.best(p, geom.Vec{Y: 1})
	if okX {
		at.X = mx.at.X
	}
	if okY {
		at.Y = my.at.Y
	}
	out := snap{at: at}
	switch {
	case okX && okY && mx == my:
		out.words = "On " + s.name(mx)
	case okX && okY:
		out.words = "In line with " + s.name(mx) + " and " + s.name(my)
	case okX:
		out.words = "In line with " + s.name(mx)
	case okY:
		out.words = "In line with " + s.name(my)
	default:
		out.words = "On the grid of " + s.grid
	}
	if okX {
		out.guides = append(out.guides, Line{Points: []geom.Vec{mx.at, at}})
	}
	if okY && my != mx {
		out.guides = append(out.guides, Line{Points: []geom.Vec{my.at, at}})
	}
	return out
}

// along snaps a place that moves on the line through p along the unit vector u.
func (s snapper) along(p, u geom.Vec) snap {
	here := p.Dot(u)
	if s.off {
		return snap{at: p.Add(u.Mul(onGrid(here, s.fine) - here)), words: snapOff}
	}
	if m, ok := s.best(p, u); ok {
		at := p.Add(u.Mul(m.at.Dot(u) - here))
		return snap{at: at, guides: []Line{{Points: []geom.Vec{m.at, at}}}, words: "In line with " + s.name(m)}
	}
	return snap{at: p.Add(u.Mul(onGrid(here, s.step) - here)), words: "On the grid of " + s.grid}
}

func (s snapper) name(m mark) string { return m.name(s.nodes) }

// size snaps a measure such as a radius: to the grid step.
func (s snapper) size(x float64) (float64, string) {
	if s.off {
		return onGrid(x, s.fine), snapOff
	}
	return onGrid(x, s.step), "In steps of " + s.grid
}

// best is the mark nearest to p along u within reach; of equally near ones the
// one nearest across.
func (s snapper) best(p, u geom.Vec) (mark, bool) {
	var found mark
	ok := false
	along, across := s.reach, math.Inf(1)
	for _, m := range s.marks {
		d := m.at.Sub(p)
		a := math.Abs(d.Dot(u))
		if a > along+1e-9 {
			continue
		}
		c := math.Abs(d.Cross(u))
		if a < along-1e-9 || c < across {
			found, ok, along, across = m, true, math.Min(a, along), c
		}
	}
	return found, ok
}

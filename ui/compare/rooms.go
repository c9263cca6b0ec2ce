package compare

import (
	"example.org/castwright/model/draw"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	"example.org/castwright/ui/view"
)

// Room around a top, in points.
const (
	roomPlain = 40.0
	roomDims  = 76.0 // with dimension lines, before it is known how far they reach
	roomSpare = 10.0 // beyond them
	chipHigh  = 31.0 // of a side's name in its corner, with the room above it
)

// rooms is how many points each side keeps free around its top, so that no dimension
// is cut by the side's edge or covered by its name. How far they reach hangs on the
// scale, and the scale on that, so it is found in steps.
func (p *Page) rooms(w, h float64, tops [2]geom.Box, beside geom.Vec, fitted bool) (out [2]view.Edges) {
	same := func(n float64) view.Edges { return view.Edges{Left: n, Top: n, Right: n, Bottom: n} }
	if !p.Dimensions() {
		return [2]view.Edges{same(roomPlain), same(roomPlain)}
	}
	out = [2]view.Edges{same(roomDims), same(roomDims)}
	const steps = 4
	var below [2]float64 // what a name takes of the top of its side
	for n := range steps {
		l := newLock(w, h, tops, beside, out, fitted)
		for i, s := range p.of {
			if s.err != nil || tops[i].Empty() {
				continue
			}
			v := l.views[i]
			plan := draw.View{W: w, H: h, Scale: v.Scale, Point: 1, Show: shown(true), Units: p.s.Job().Units}
			b := draw.Reach(s.Option.Design, s.Report, plan)
			from, to := v.Point(tops[i].Min), v.Point(tops[i].Max)
			chip := p.nameBox(i, w)
			if from.X-b.Left < chip.Max.X+roomSpare && to.X+b.Right > chip.Min.X-roomSpare && to.Y-b.Back < chipHigh+roomSpare {
				below[i] = chipHigh
			}
			room := view.Edges{Left: b.Left + roomSpare, Top: b.Back + roomSpare + below[i], Right: b.Right + roomSpare, Bottom: b.Front + roomSpare}
			if n == steps-1 { // where two steps take turns, both have room
				room = room.Furthest(out[i])
			}
			out[i] = room
		}
	}
	return out
}

// shown is what a drawing shows.
func shown(dimensions bool) draw.Show {
	out := draw.Everything()
	out.Dimensions = dimensions
	out.ScaleBar = false // it would run into the dimensions, which say more
	return out
}

// Measures of a side's name in its corner, in points.
const (
	nameSize = 13.0
	namePad  = 8.0
)

// nameBox is where the name of a side stands on a pane so many points wide.
func (p *Page) nameBox(i int, w float64) geom.Box {
	t := scene.Text{Size: nameSize, Bold: true, Text: p.nameOf(i, w)}
	wide := t.Width() + 2*namePad
	at := geom.Vec{X: namePad, Y: namePad}
	if i == 1 {
		at.X = w - namePad - wide
	}
	return geom.Box{Min: at, Max: at.Add(geom.Vec{X: wide, Y: nameSize + namePad})}
}

func (p *Page) nameOf(i int, w float64) string {
	return scene.Fitted(called(p.of[0], p.of[1])[i], nameSize, true, w/3)
}

package draw

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/slab"
)

// Plan is the top as the client sees it, from above: [Base] with [Dimensions]
// over it.
func Plan(d design.Design, r report.Report, v View) scene.Page {
	p := Base(d, r, v)
	if v.Show.Dimensions {
		p.Items = append(p.Items, Dimensions(d, r, v).Items...)
	}
	return p
}

// Base is the plan without dimensions: ground, walls, supports and the top.
func Base(d design.Design, r report.Report, v View) scene.Page {
	p := v.page(v.Theme.Ground)
	if !v.usable() {
		return p
	}
	b := base{View: v, d: d, s: r.Solid}
	b.face = faceLoop(b.s)
	b.layGround()
	b.layFace()
	b.layGlass()
	b.layChannels()
	b.laySupports()
	b.layOpenings()
	b.layTaps()
	b.layScaleBar()
	p.Items = b.items
	return p
}

// base gathers the items of a plan, from the ground up.
type base struct {
	View
	d     design.Design
	s     slab.Solid
	face  geom.Loop // the outline as it is seen, rough edges broken
	items []scene.Item
}

func (b *base) add(items ...scene.Item) { b.items = append(b.items, items...) }

// fill adds a plain fill of loops in mm.
func (b *base) fill(c scene.Colour, loops ...geom.Loop) {
	b.add(scene.Fill{Loops: b.loops(loops), Paint: scene.Paint{Colour: c}})
}

// line adds a closed line of a width in points along loops in mm.
func (b *base) line(c scene.Colour, width float64, loops ...geom.Loop) {
	lines := make([][]geom.Vec, len(loops))
	for i, l := range b.loops(loops) {
		lines[i] = l
	}
	b.add(scene.Stroke{Lines: lines, Closed: true, Width: b.pt(width), Colour: c})
}

func (v View) page(ground scene.Colour) scene.Page {
	return scene.Page{W: v.W, H: v.H, PerMM: v.Scale, Origin: v.ToPage(geom.Vec{}), Ground: ground}
}

// loops are loops in mm on the page.
func (v View) loops(loops []geom.Loop) []geom.Loop {
	out := make([]geom.Loop, len(loops))
	for i, l := range loops {
		out[i] = v.path(l)
	}
	return out
}

// path is a polyline in mm on the page.
func (v View) path(l []geom.Vec) []geom.Vec {
	out := make([]geom.Vec, len(l))
	for i, p := range l {
		out[i] = v.ToPage(p)
	}
	return out
}

// grey is a neutral colour with alpha.
func grey(v, a uint8) scene.Colour { return scene.Colour{R: v, G: v, B: v, A: a} }

func white(a uint8) scene.Colour { return grey(0xff, a) }
func black(a uint8) scene.Colour { return grey(0, a) }

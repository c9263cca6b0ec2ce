package draw

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
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
	paint := scene.Paint{Colour: scene.Colour{R: d.Finish.Colour.R, G: d.Finish.Colour.G, B: d.Finish.Colour.B, A: 0xff}}
	s := r.Solid
	p.Items = append(p.Items, scene.Fill{Loops: []geom.Loop{v.loop(s.Outline)}, Paint: paint})
	for _, o := range s.Openings {
		p.Items = append(p.Items, scene.Fill{Loops: []geom.Loop{v.loop(o.Loop)},
			Paint: scene.Paint{Colour: scene.Colour{R: 0x30, G: 0x30, B: 0x30, A: 0xff}}})
	}
	return p
}

// Dimensions is the dimension lines alone, on a ground that is not painted, to
// be drawn over a base.
func Dimensions(d design.Design, r report.Report, v View) scene.Page {
	return v.page(scene.Colour{})
}

func (v View) page(ground scene.Colour) scene.Page {
	return scene.Page{W: v.W, H: v.H, PerMM: v.Scale, Origin: v.ToPage(geom.Vec{}), Ground: ground}
}

func (v View) loop(l geom.Loop) geom.Loop {
	out := make(geom.Loop, len(l))
	for i, p := range l {
		out[i] = v.ToPage(p)
	}
	return out
}

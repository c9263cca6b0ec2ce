package partsrow

import (
	"image"
	"math"

	"example.org/castwright/export/raster"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/slab"
)

// paintDesign draws a sample with the very writer that draws the board.
func paintDesign(d design.Design, below bool, w, h int) *image.RGBA {
	solid := slab.Resolve(d)
	v := draw.Fit(solid.Outline.Bounds(), float64(w), float64(h), float64(h)/12)
	v.Point = math.Max(1, float64(w)/140)
	v.Show = draw.Show{Textures: true, Supports: below}
	v.Theme.Ground = scene.Colour{}
	return raster.Image(draw.Base(d, report.Report{Solid: solid}, v))
}

// paintProfile draws the section of a seen edge in the concrete's colour.
func paintProfile(d design.Design, p design.Profile, w, h int) *image.RGBA {
	t := math.Max(d.Thickness.MM(), 10)
	scale := float64(h) * 0.66 / t
	right, top := float64(w)*0.72, float64(h)*0.17
	at := func(x, z float64) geom.Vec { return geom.Vec{X: right + x*scale, Y: top + (t-z)*scale} }
	var loop geom.Loop
	steps := 48
	if p.Kind == design.ProfileRough {
		steps = len(broken)
	}
	for i := range steps + 1 {
		// Crowded toward both faces, where a profile turns fastest.
		z := t * (1 - math.Cos(math.Pi*float64(i)/float64(steps))) / 2
		x := -slab.Inset(p, t, z)
		if p.Kind == design.ProfileRough {
			z = t * float64(i) / float64(steps)
			x += p.Size.MM() * 0.45 * broken[i%len(broken)]
		}
		loop = append(loop, at(x, z))
	}
	loop = append(loop, geom.Vec{Y: at(0, t).Y}, geom.Vec{Y: at(0, 0).Y})
	c := d.Finish.Colour
	rim := scene.Colour{R: c.R / 3, G: c.G / 3, B: c.B / 3, A: 0xff}
	return raster.Image(scene.Page{W: float64(w), H: float64(h), Items: []scene.Item{
		scene.Fill{Loops: []geom.Loop{loop}, Paint: scene.Paint{Colour: scene.Colour{R: c.R, G: c.G,
			B: c.B, A: 0xff}}},
		scene.Stroke{Lines: [][]geom.Vec{append([]geom.Vec{{Y: at(0, 0).Y}},
			append(loop[:steps+1:steps+1], geom.Vec{Y: at(0, t).Y})...)},
			Width: math.Max(1, float64(h)/60), Colour: rim},
	}})
}

// broken is how far a rough edge stands out or in, as a share of its liner.
var broken = []float64{-0.5, 0.1, 0.4, 0.9, 0.2, 0.5, -0.3, -0.8, -0.2, 0.6, 0.3, -0.1, -0.6, -0.9}

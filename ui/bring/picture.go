package bring

import (
	"image"
	"image/color"
	"math"

	"example.org/castwright/export/raster"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/template"
	"example.org/castwright/model/units"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// colours are those of the theme, taken on the main goroutine.
type colours struct{ ground, faint, line, body, words scene.Colour }

func coloursNow() colours {
	th, v := fyne.CurrentApp().Settings().Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	of := func(name fyne.ThemeColorName) scene.Colour {
		c, _ := color.NRGBAModel.Convert(th.Color(name, v)).(color.NRGBA)
		return scene.Colour{R: c.R, G: c.G, B: c.B, A: c.A}
	}
	return colours{of(theme.ColorNameInputBackground), of(look.Muted), of(theme.ColorNamePrimary),
		of(look.Selected), of(theme.ColorNameForeground)}
}

// paint draws all outlines of a drawing, one of them picked and measured.
func paint(d template.Drawing, picked int, turn units.Angle, mirrored bool, sys units.System, c colours, w, h int) *image.RGBA {
	page := scene.Page{W: float64(w), H: float64(h), Ground: c.ground}
	turned := func(l geom.Loop) geom.Loop {
		out := make(geom.Loop, len(l))
		for i, p := range l {
			if mirrored {
				p.X = -p.X
			}
			out[i] = p.Turn(turn.Radians())
		}
		return out
	}
	box := geom.EmptyBox()
	shapes := make([][]geom.Loop, len(d.Loops))
	for i, l := range d.Loops {
		shapes[i] = []geom.Loop{turned(flat(l.Nodes))}
		for _, hole := range l.Holes { // against the outline, so that they stay open
			shapes[i] = append(shapes[i], turned(flat(hole)).Reversed())
		}
		box = box.Union(shapes[i][0].Bounds())
	}
	px := math.Max(1, float64(h)/420)
	margin := 52 * px
	scale := math.Min((page.W-2*margin)/math.Max(box.W(), 1e-9), (page.H-2*margin)/math.Max(box.H(), 1e-9))
	middle := box.Centre()
	at := func(p geom.Vec) geom.Vec {
		return geom.Vec{X: page.W/2 + (p.X-middle.X)*scale, Y: page.H/2 - (p.Y-middle.Y)*scale}
	}
	lines := func(loops []geom.Loop) (out [][]geom.Vec) {
		for _, l := range loops {
			var pts []geom.Vec
			for _, p := range l {
				pts = append(pts, at(p))
			}
			out = append(out, pts)
		}
		return out
	}
	for i, s := range shapes {
		if i != picked {
			page.Items = append(page.Items, scene.Stroke{Lines: lines(s), Closed: true, Width: 1.2 * px, Colour: c.faint})
		}
	}
	if picked >= 0 && picked < len(shapes) {
		s := shapes[picked]
		var loops []geom.Loop
		for _, l := range lines(s) {
			loops = append(loops, l)
		}
		page.Items = append(page.Items, scene.Fill{Loops: loops, Paint: scene.Paint{Colour: c.body}},
			scene.Stroke{Lines: lines(s), Closed: true, Width: 2 * px, Colour: c.line})
		page.Items = append(page.Items, dimensions(s[0].Bounds(), at, px, sys, c)...)
	}
	return raster.Image(page)
}

// dimensions measure a box below it and at its left.
func dimensions(b geom.Box, at func(geom.Vec) geom.Vec, px float64, sys units.System, c colours) []scene.Item {
	lo, hi := at(b.Min), at(b.Max) // y runs down on the page
	y, x, tick := lo.Y+18*px, lo.X-18*px, 4*px
	v := func(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }
	length := func(mm float64) string { return units.Format(units.FromMM(mm), sys) }
	return []scene.Item{
		scene.Stroke{Width: px, Colour: c.words, Lines: [][]geom.Vec{
			{v(lo.X, y), v(hi.X, y)}, {v(lo.X, y-tick), v(lo.X, y+tick)}, {v(hi.X, y-tick), v(hi.X, y+tick)},
			{v(x, lo.Y), v(x, hi.Y)}, {v(x-tick, lo.Y), v(x+tick, lo.Y)}, {v(x-tick, hi.Y), v(x+tick, hi.Y)},
		}},
		scene.Text{At: v((lo.X+hi.X)/2, y+14*px), Size: 13 * px, Colour: c.words, Text: length(b.W())},
		scene.Text{At: v(x-14*px, (lo.Y+hi.Y)/2), Size: 13 * px, Angle: -math.Pi / 2, Colour: c.words, Text: length(b.H())},
	}
}

// flat is a chain as a polyline good enough to look at.
func flat(chain []design.Node) geom.Loop { return edit.FlatChain(chain) }

// bounds are those of an outline, turned and mirrored as it will be taken.
func bounds(l template.Loop, turn units.Angle, mirrored bool) geom.Box {
	r := edit.BroughtRegion(template.Loop{Nodes: l.Nodes}, turn, mirrored)
	return flat(r.Outer).Bounds()
}

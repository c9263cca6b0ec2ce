package draw

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edging"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/look"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// entry is one material of the key: a swatch and its words.
type entry struct {
	swatch      func(l *layout, v View, x, y, size float64)
	title, more string
}

// swatchMM is the breadth of material that a swatch shows, in mm.
const swatchMM = 64

// entries is the materials of a design, as a client asks for them.
func entries(d design.Design, s slab.Solid, sys units.System) []entry {
	var out []entry
	face, polish := FinishWords(d.Finish)
	out = append(out, entry{func(l *layout, v View, x, y, size float64) {
		l.swatch(v, x, y, size, concreteSwatch(d.Finish))
	}, face, polish})
	for i, e := range seenEdges(s) {
		if i == 2 {
			break
		}
		title := edging.ProfileWords(e.profile, sys)
		if e.profile.Kind == design.ProfileSquare {
			title = "Square edge"
		}
		more := e.sides
		if more == "" {
			more = "corners"
		}
		out = append(out, entry{func(l *layout, v View, x, y, size float64) {
			l.sectionSwatch(v, x, y, size, e.profile, d)
		}, title, more})
	}
	for i, c := range d.Channels {
		if i == 2 {
			break
		}
		title, more := fillWords(c, sys)
		out = append(out, entry{func(l *layout, v View, x, y, size float64) {
			l.resinSwatch(v, x, y, size, c, d.Finish)
		}, title, more})
	}
	for i, g := range d.Glass {
		if i == 2 {
			break
		}
		title, more := bedWords(g, sys)
		out = append(out, entry{func(l *layout, v View, x, y, size float64) {
			l.glassSwatch(v, x, y, size, g, d.Finish)
		}, title, more})
	}
	return out
}

func concreteSwatch(f design.Finish) scene.Rows { return look.NewConcrete(f, geom.EmptyBox()) }

// swatch fills a square of the sheet with materials, one over the other.
func (l *layout) swatch(v View, x, y, size float64, of ...scene.Rows) {
	box := l.box(x, y, size, size)
	loop := rounded(geom.Box{Min: box[0], Max: box[2]}, 0.8*l.unit)
	for _, m := range of {
		l.items = append(l.items, scene.Fill{Loops: []geom.Loop{loop}, Paint: scene.Paint{Texture: l.placed(v, x, y, size, m)}})
	}
	edge := l.theme.Ink
	edge.A = 0x48
	l.items = append(l.items, scene.Stroke{Lines: [][]geom.Vec{loop}, Closed: true, Width: 0.18 * l.unit, Colour: edge})
}

// placed is a material whose millimetres 0 to swatchMM fill a square of the sheet.
func (l *layout) placed(v View, x, y, size float64, m scene.Rows) scene.Rows {
	return look.Scaled{Of: m, Origin: v.ToDesign(l.at(x, y+size)), Factor: swatchMM / (size * l.unit / v.Scale)}
}

// perMM is the swatch's pixels to the millimetre of material.
func (l *layout) perMM(size float64) float64 { return size * l.unit * l.dots / swatchMM }

// resinSwatch shows a bend of the channel in its concrete.
func (l *layout) resinSwatch(v View, x, y, size float64, c design.Channel, f design.Finish) {
	var up, down geom.Loop
	for i := range 25 {
		at := -8 + float64(i)/24*(swatchMM+16)
		mid := 30 + 9*math.Sin(at/15)
		down = append(down, geom.Vec{X: at, Y: mid - 17})
		up = append(up, geom.Vec{X: at, Y: mid + 17})
	}
	loops := []geom.Loop{append(down, up.Reversed()...)}
	m := []scene.Rows{concreteSwatch(f)}
	l.swatch(v, x, y, size, m...)
	fill := scene.Paint{Colour: black(0x30)}
	if c.Fill.Resin {
		fill = scene.Paint{Texture: l.placed(v, x, y, size, look.Resin(loops, c.Depth.MM(), c.Fill, f.Colour, l.perMM(size)))}
	}
	page := make(geom.Loop, len(loops[0]))
	for i, p := range loops[0] {
		page[i] = l.at(x+p.X/swatchMM*size, y+size-p.Y/swatchMM*size)
	}
	l.items = append(l.items, scene.Fill{Loops: []geom.Loop{page}, Clip: []geom.Loop{l.box(x+0.1, y+0.1, size-0.2, size-0.2)}, Paint: fill})
}

// glassSwatch shows a bed's glass in its concrete.
func (l *layout) glassSwatch(v View, x, y, size float64, g design.GlassBed, f design.Finish) {
	bed := geom.Loop{{X: -20, Y: -20}, {X: swatchMM + 20, Y: -20}, {X: swatchMM + 20, Y: 0.8 * swatchMM}, {X: 0.6 * swatchMM, Y: swatchMM + 20}, {X: -20, Y: swatchMM + 20}}
	l.swatch(v, x, y, size, concreteSwatch(f),
		look.GlassBed([]geom.Loop{bed}, g.Grain.MM(), g.Coverage.Fraction(), g.Colour, l.perMM(size)))
}

// sectionSwatch shows an edge's section: the concrete cut through, its edge to
// the right.
func (l *layout) sectionSwatch(v View, x, y, size float64, p design.Profile, d design.Design) {
	l.swatch(v, x, y, size) // the frame alone
	t := d.Thickness.MM()
	if !(t > 1 && t < 400) {
		t = 40
	}
	scale := 0.52 * size / t // mm of paper to a mm of section
	if scale*t > 0.62*size {
		scale = 0.62 * size / t
	}
	edge := sectionEdge(p, t)
	loop := geom.Loop{l.at(x+0.1, y+size/2-scale*t/2), l.at(x+0.1, y+size/2+scale*t/2)}
	for _, q := range edge { // from the underside up: X inward from the edge, Y height
		loop = append(loop, l.at(x+0.80*size-q.X*scale, y+size/2+scale*t/2-q.Y*scale))
	}
	shade := look.Plain(d.Finish)
	l.items = append(l.items,
		scene.Fill{Loops: []geom.Loop{loop}, Paint: scene.Paint{Texture: l.placed(v, x, y, size, concreteSwatch(d.Finish)), Colour: shade}},
		scene.Stroke{Lines: [][]geom.Vec{loop[1:]}, Width: 0.3 * l.unit, Colour: l.theme.Ink},
		scene.Stroke{Lines: [][]geom.Vec{{loop[len(loop)-1], loop[0]}}, Width: 0.3 * l.unit, Colour: l.theme.Ink})
}

// sectionEdge is a profile in section from the underside up to the face: X is
// how far in from the outline, Y the height, mm.
func sectionEdge(p design.Profile, t float64) []geom.Vec {
	size := min(p.Size.MM(), t)
	quarter := func(r float64) []geom.Vec {
		out := []geom.Vec{{X: 0, Y: 0}, {X: 0, Y: t - r}}
		for i := 1; i <= 12; i++ {
			s, c := math.Sincos(math.Pi / 2 * float64(i) / 12)
			out = append(out, geom.Vec{X: r * (1 - c), Y: t - r + r*s})
		}
		return out
	}
	switch p.Kind {
	case design.ProfileEased, design.ProfileRounded:
		return quarter(size)
	case design.ProfileBevelled:
		return []geom.Vec{{X: 0, Y: 0}, {X: 0, Y: t - size}, {X: size, Y: t}}
	case design.ProfileHalfRound:
		if size <= 0 {
			size = t / 2
		}
		return quarter(size)
	case design.ProfileFullRound:
		var out []geom.Vec
		for i := range 25 {
			s, c := math.Sincos(math.Pi * (float64(i)/24 - 0.5))
			out = append(out, geom.Vec{X: t / 2 * (1 - c), Y: t / 2 * (1 + s)})
		}
		return out
	case design.ProfileRough:
		var out []geom.Vec
		for i, k := range [...]float64{0.1, 0.5, -0.3, 0.3, -0.4, 0.2, 0.6, -0.1, 0.4} {
			out = append(out, geom.Vec{X: 0.35 * min(size, 25) * (k + 0.2), Y: t * float64(i) / 8})
		}
		return out
	}
	return []geom.Vec{{X: 0, Y: 0}, {X: 0, Y: t}}
}

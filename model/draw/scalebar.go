package draw

import (
	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/units"
)

// barLengths are the lengths that a scale bar may have, in mm, with the parts
// that it is cut into.
func barLengths(sys units.System) []struct {
	mm    float64
	parts int
} {
	type bar = struct {
		mm    float64
		parts int
	}
	if sys == units.Imperial {
		const in = 25.4
		return []bar{{in / 4, 4}, {in, 4}, {3 * in, 3}, {6 * in, 3}, {12 * in, 4}, {24 * in, 4}, {48 * in, 4}, {120 * in, 5}, {240 * in, 4}}
	}
	return []bar{{2, 2}, {5, 5}, {10, 5}, {20, 4}, {50, 5}, {100, 5}, {200, 4}, {500, 5}, {1000, 5}, {2000, 4}, {5000, 5}, {10000, 5}}
}

// layScaleBar draws a scale bar in the left front corner of the page.
func (b *base) layScaleBar() {
	if b.Show.ScaleBar {
		b.add(scaleBar(b.View, geom.Vec{X: b.pt(18), Y: b.H - b.pt(20)}, b.pt(170))...)
	}
}

// scaleBar is a bar no longer than most page units, its left end at the place on
// the page, with its length to the right of it.
func scaleBar(v View, at geom.Vec, most float64) []scene.Item {
	bars := barLengths(v.Units)
	best := bars[0]
	for _, k := range bars {
		if k.mm*v.Scale <= most {
			best = k
		}
	}
	length := best.mm * v.Scale
	if length > 1.5*most || length < v.pt(8) {
		return nil
	}
	high := v.pt(4.5)
	rim := v.pt(0.9)
	rect := func(x0, x1, grow float64) geom.Loop {
		return geom.Loop{
			{X: x0, Y: at.Y - high/2 - grow}, {X: x1, Y: at.Y - high/2 - grow},
			{X: x1, Y: at.Y + high/2 + grow}, {X: x0, Y: at.Y + high/2 + grow},
		}
	}
	// From edge to edge it is as long as it says: the rim at its end lies within.
	items := []scene.Item{
		scene.Fill{Loops: []geom.Loop{rect(at.X, at.X+length, rim)}, Paint: scene.Paint{Colour: v.Theme.Ink}},
	}
	var gaps []geom.Loop
	part := length / float64(best.parts)
	for i := 1; i < best.parts; i += 2 {
		gaps = append(gaps, rect(at.X+float64(i)*part, min(at.X+float64(i+1)*part, at.X+length-rim), 0))
	}
	items = append(items, scene.Fill{Loops: gaps, Paint: scene.Paint{Colour: v.Theme.Halo}})
	return append(items, scene.Text{
		At: geom.Vec{X: at.X + length + v.pt(8), Y: at.Y}, Anchor: scene.AnchorStart, Size: v.pt(11),
		Colour: v.Theme.Ink, Text: units.Format(units.FromMM(best.mm), v.Units),
	})
}

package draw

import (
	"math"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
)

// Beyond is how far things reach out from a top's bounds at each side, page units.
type Beyond struct{ Front, Back, Left, Right float64 }

// Furthest is the larger of both at each side.
func (a Beyond) Furthest(b Beyond) Beyond {
	return Beyond{math.Max(a.Front, b.Front), math.Max(a.Back, b.Back), math.Max(a.Left, b.Left), math.Max(a.Right, b.Right)}
}

// Reach is how far the walls and dimensions of a plan, with their texts, reach out from
// the top at the scale of a view. It is zero where there is nothing to measure.
func Reach(d design.Design, r report.Report, v View) Beyond {
	bounds := r.Solid.Outline.Bounds()
	if !v.usable() || bounds.Empty() || !bounds.Min.Finite() || !bounds.Max.Finite() {
		return Beyond{}
	}
	v.Centre = bounds.Centre()
	top := geom.EmptyBox().Include(v.ToPage(bounds.Min)).Include(v.ToPage(bounds.Max))
	box := top
	if v.Show.Walls {
		for e, wall := range wallEdges(r.Solid, bounds) {
			if wall {
				w := v.pt(wallWidth)
				box = box.Union([...]geom.Box{front: {Min: top.Max, Max: top.Max.Add(geom.Vec{Y: w})}, back: {Min: top.Min.Sub(geom.Vec{Y: w}), Max: top.Min},
					left: {Min: top.Min.Sub(geom.Vec{X: w}), Max: top.Min}, right: {Min: top.Max, Max: top.Max.Add(geom.Vec{X: w})}}[e])
			}
		}
	}
	if v.Show.Dimensions {
		k := sketch{View: v}
		for _, it := range Dimensions(d, r, v).Items {
			switch it := it.(type) {
			case scene.Text:
				box = box.Union(k.extent(it))
			case scene.Stroke:
				for _, l := range it.Lines {
					for _, p := range l {
						box = box.Include(p)
					}
				}
			case scene.Fill:
				for _, l := range it.Loops {
					box = box.Union(l.Bounds())
				}
			}
		}
	}
	return Beyond{Front: box.Max.Y - top.Max.Y, Back: top.Min.Y - box.Min.Y, Left: top.Min.X - box.Min.X, Right: box.Max.X - top.Max.X}
}

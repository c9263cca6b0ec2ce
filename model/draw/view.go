package draw

import (
	"math"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
)

// View says how a plan lies on its page and what of it is shown. It is a value.
type View struct {
	W, H   float64  // page units
	Scale  float64  // page units in a millimetre of the top
	Centre geom.Vec // the place of the design, mm, in the middle of the page
	// Point is the page units in a point, the measure of line widths and type:
	// about a 96th of an inch as seen. 0 means 1.
	Point float64
	// Dots is the pixels to the page unit that textures are made for. 0 means
	// 1; a page in millimetres of paper has more.
	Dots float64
	// Draft bakes inlays and edges half as finely, for a picture that is gone
	// in a moment, such as while something is dragged.
	Draft bool
	Theme Theme
	Show  Show
	Units units.System
}

// Show says what a plan holds besides the top itself.
type Show struct {
	Textures   bool // of concrete, stone, resin and glass; else plain colours
	Dimensions bool
	Supports   bool // dashed below the top
	Walls      bool // hatched outside of wall edges
	Grid       bool
	Taps       bool // a generic tap over its holes
	ScaleBar   bool
}

// Everything shows all but the grid.
func Everything() Show {
	return Show{Textures: true, Dimensions: true, Supports: true, Walls: true, Taps: true, ScaleBar: true}
}

// Fit is the view of w by h page units that shows the whole of box, in
// millimetres of the design, in its middle with at least margin page units
// around it. It shows everything on the light ground.
func Fit(box geom.Box, w, h, margin float64) View {
	v := View{W: w, H: h, Scale: 1, Point: 1, Theme: Light(), Show: Everything()}
	if box.Empty() || !box.Min.Finite() || !box.Max.Finite() {
		return v
	}
	room := func(total float64) float64 { return math.Max(total-2*margin, total/4) }
	v.Scale = math.Min(room(w)/math.Max(box.W(), 1e-6), room(h)/math.Max(box.H(), 1e-6))
	v.Centre = box.Centre()
	return v
}

// ToPage is where a place of the design lies on the page.
func (v View) ToPage(p geom.Vec) geom.Vec {
	return geom.Vec{X: v.W/2 + (p.X-v.Centre.X)*v.Scale, Y: v.H/2 - (p.Y-v.Centre.Y)*v.Scale}
}

// ToDesign is the place of the design at a point of the page, in millimetres.
func (v View) ToDesign(q geom.Vec) geom.Vec {
	return geom.Vec{X: v.Centre.X + (q.X-v.W/2)/v.Scale, Y: v.Centre.Y - (q.Y-v.H/2)/v.Scale}
}

// pt is the page units of n points.
func (v View) pt(n float64) float64 {
	if v.Point > 0 {
		return n * v.Point
	}
	return n
}

// perMM is the pixels to the millimetre of the design that textures are made for.
func (v View) perMM() float64 {
	n := v.Scale
	if v.Dots > 0 {
		n *= v.Dots
	}
	if v.Draft {
		n /= 2
	}
	return n
}

// usable reports whether a plan can be drawn at all.
func (v View) usable() bool {
	return v.Scale > 0 && !math.IsInf(v.Scale, 0) && v.Centre.Finite() &&
		v.W > 0 && v.H > 0 && !math.IsInf(v.W, 0) && !math.IsInf(v.H, 0)
}

// box is the part of the design that the page shows.
func (v View) box() geom.Box {
	return geom.EmptyBox().Include(v.ToDesign(geom.Vec{})).Include(v.ToDesign(geom.Vec{X: v.W, Y: v.H}))
}

package draw

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
)

// Thumb is a small picture of w by h page units: the top alone, on no ground.
func Thumb(d design.Design, r report.Report, w, h float64) scene.Page {
	v := Fit(r.Solid.Outline.Bounds(), w, h, min(w, h)/12)
	v.Show = Show{Textures: true, Taps: true}
	v.Point = max(0.5, min(w, h)/160)
	v.Theme.Ground = scene.Colour{}
	return Base(d, r, v)
}

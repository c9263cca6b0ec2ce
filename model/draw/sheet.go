package draw

import (
	"example.org/castwright/model/design"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
)

// SheetOptions says how a sheet is made.
type SheetOptions struct {
	Width float64 // page units; the height follows
	Date  string  // as printed, "" for none
}

// Sheet is the picture that the client takes home: the plan to scale with its
// dimensions, title block, key to the materials, numbers and scale bar.
func Sheet(job design.Job, option design.Option, r report.Report, o SheetOptions) scene.Page {
	v := Fit(r.Solid.Outline.Bounds(), o.Width, o.Width/1.414, o.Width/10)
	v.Theme, v.Units = Paper(), job.Units
	return Plan(option.Design, r, v)
}

// Thumb is a small picture of w by h page units: the top alone on no ground.
func Thumb(d design.Design, r report.Report, w, h float64) scene.Page {
	v := Fit(r.Solid.Outline.Bounds(), w, h, w/16)
	v.Show = Show{Textures: true}
	v.Theme.Ground = scene.Colour{}
	return Base(d, r, v)
}

// Side is one of two options that are compared.
type Side struct {
	Option design.Option
	Report report.Report
}

// Compare is a sheet with two options side by side at the same scale, their
// numbers and the differences between them.
func Compare(job design.Job, a, b Side, o SheetOptions) scene.Page {
	return Sheet(job, a.Option, a.Report, o)
}

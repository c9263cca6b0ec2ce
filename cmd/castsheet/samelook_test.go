package main

import (
	"context"
	"image"
	"testing"

	"example.org/castwright/assets"
	"example.org/castwright/export/picture"
	"example.org/castwright/export/raster"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/store"
	"github.com/lucasb-eyer/go-colorful"
)

// Nothing changes its look between sketch and straight-down picture: for each
// material of each demo option the mean colours lie within 4 of each other by
// CIEDE2000 (CIE 142-2001; the formula is the module's). Less than 2 is hard to
// see side by side (common practice, no source).
func TestSketchAndPictureLookAlike(t *testing.T) {
	if testing.Short() {
		t.Skip("takes pictures")
	}
	for _, demo := range assets.Demos() {
		j, err := store.Decode(demo.Data)
		if err != nil {
			t.Fatal(err)
		}
		for _, o := range j.Options {
			t.Run(demo.Name+" "+o.Name, func(t *testing.T) { lookAlike(t, o.Design) })
		}
	}
}

func lookAlike(t *testing.T, d design.Design) {
	s := slab.Resolve(d)
	set := picture.Build(d, s, picture.SetOptions{NoTaps: true, Bare: true})
	const w = 900
	h := set.PlanHeight(w)
	k, mid := set.PlanScale(w, h)
	photo, err := picture.Render(context.Background(), set, picture.View{Kind: picture.Top}, picture.Good, w, h, nil)
	if err != nil {
		t.Fatal(err)
	}
	sketch := raster.Image(draw.Base(d, report.Derive(d, design.Materials{}, design.Site{}), draw.View{W: w, H: float64(h), Scale: 1 / k, Centre: mid,
		Theme: draw.Light(), Show: draw.Show{Textures: true}}))
	for _, m := range materials(s) {
		var a, b mean
		for y := 1; y < h; y += 3 {
			for x := 1; x < w; x += 3 {
				p := geom.Vec{X: mid.X + (float64(x)+0.5-w/2.0)*k, Y: mid.Y - (float64(y)+0.5-float64(h)/2)*k}
				if m.holds(p) {
					a.add(sketch, x, y)
					b.add(photo, x, y)
				}
			}
		}
		if a.n < 200 {
			t.Errorf("%s shows %g pixels", m.name, a.n)
			continue
		}
		ca, cb := a.colour(), b.colour()
		away := 100 * ca.DistanceCIEDE2000(cb)
		t.Logf("%-9s sketch %s, picture %s: %.1f apart", m.name, ca.Clamped().Hex(), cb.Clamped().Hex(), away)
		if away > 4 {
			t.Errorf("%s is %s in the sketch and %s in the picture: %.1f apart by CIEDE2000", m.name, ca.Clamped().Hex(), cb.Clamped().Hex(), away)
		}
	}
}

// region is where one material shows.
type region struct {
	name  string
	holds func(geom.Vec) bool
}

// materials is the face's regions, each a little away from its border.
func materials(s slab.Solid) []region {
	within := func(loops []geom.Loop, p geom.Vec) bool {
		in := false
		for _, l := range loops {
			if l.Contains(p) {
				in = !in
			}
		}
		return in
	}
	near := func(p geom.Vec, by float64, holds func(geom.Vec) bool) bool {
		for _, q := range [4]geom.Vec{{X: by}, {X: -by}, {Y: by}, {Y: -by}} {
			if holds(p.Add(q)) {
				return true
			}
		}
		return false
	}
	all := func(p geom.Vec, by float64, holds func(geom.Vec) bool) bool {
		return !near(p, by, func(q geom.Vec) bool { return !holds(q) })
	}
	other := func(p geom.Vec) bool {
		if !s.Outline.Contains(p) {
			return true
		}
		for _, o := range s.Openings {
			if o.Loop.Contains(p) {
				return true
			}
		}
		for _, o := range s.Bowls {
			if o.Loop.Contains(p) {
				return true
			}
		}
		for _, r := range s.Recesses {
			if within(r.Loops, p) {
				return true
			}
		}
		for _, b := range s.Beds {
			if within(b.Loops, p) {
				return true
			}
		}
		return false
	}
	out := []region{{"concrete", func(p geom.Vec) bool { return !other(p) && !near(p, 40, other) }}}
	for _, r := range s.Recesses {
		if r.Fill.Resin {
			out = append(out, region{"resin", func(p geom.Vec) bool {
				in := func(q geom.Vec) bool { return within(r.Loops, q) && s.Outline.Contains(q) }
				return in(p) && all(p, 5, in)
			}})
		}
	}
	for _, b := range s.Beds {
		out = append(out, region{"glass bed", func(p geom.Vec) bool {
			in := func(q geom.Vec) bool { return within(b.Loops, q) && s.Outline.Contains(q) }
			return in(p) && all(p, 20, in)
		}})
	}
	return out
}

// mean is the mean of pixels in linear light.
type mean struct{ r, g, b, n float64 }

func (m *mean) add(img image.Image, x, y int) {
	c, _ := colorful.MakeColor(img.At(x, y))
	r, g, b := c.LinearRgb()
	m.r, m.g, m.b, m.n = m.r+r, m.g+g, m.b+b, m.n+1
}

func (m *mean) colour() colorful.Color { return colorful.LinearRgb(m.r/m.n, m.g/m.n, m.b/m.n) }

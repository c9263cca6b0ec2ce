package draw_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/material"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/units"
)

func mm(x float64) units.Length { return units.FromMM(x) }

func pt(x, y float64) design.Point { return design.Point{X: mm(x), Y: mm(y)} }

// counter is an L with an off-centre sink, three tap holes, a river that leaves
// it, a glass bed, a drain and supports.
func counter() design.Design {
	d := design.Design{
		Outline:   edit.LShape(mm(1600), mm(560), mm(520), mm(1100), mm(80)),
		Thickness: mm(40),
		Sinks: []design.Sink{{ID: "sink-1", At: pt(1100, 820), Mount: design.MountUnder, BowlDepth: mm(140),
			Reveal: design.Reveal{Kind: design.RevealOverhang, Size: mm(3)},
			Shape:  design.Shape{Kind: design.ShapeD, Width: mm(460), Depth: mm(350), CornerRadius: mm(40), Bow: mm(80)}}},
		Taps: []design.TapSet{{ID: "taps-1", Sink: "sink-1", Pattern: design.TapThree8, Diameter: mm(35), SetBack: mm(60)}},
		Channels: []design.Channel{{ID: "channel-1", Depth: mm(12),
			Rivers: []design.River{{Nodes: []design.RiverNode{{At: pt(120, 950), Width: mm(40)}, {At: pt(260, 500), Width: mm(70)}, {At: pt(230, -40), Width: mm(90)}}, End: design.EndOpen}},
			Fill:   design.Fill{Resin: true, Colour: design.Colour{R: 31, G: 122, B: 114}, Opacity: 35 * units.Percent}}},
		Glass: []design.GlassBed{{ID: "glass-1", Grain: mm(8), Coverage: 45 * units.Percent, Depth: mm(8), Colour: design.Colour{R: 150, G: 200, B: 180},
			Region: design.Region{Outer: []design.Node{{At: pt(300, 900)}, {At: pt(700, 900)}, {At: pt(700, 1090)}, {At: pt(300, 1090)}}}}},
		Holes:    []design.Hole{{ID: "hole-1", At: pt(1450, 1000), Diameter: mm(60)}},
		Finish:   design.Finish{Colour: design.Colour{R: 165, G: 157, B: 144}, Exposure: design.ExposureCoarse, Polish: 3},
		Supports: []design.Support{{ID: "support-1", Kind: design.SupportGable, Line: []design.Point{pt(20, 50), pt(500, 50)}, Width: mm(19)}},
	}
	d.Outline.Nodes[0].Edge.Profile = design.Profile{Kind: design.ProfileHalfRound}
	d.Outline.Nodes[3].Edge.Profile = design.Profile{Kind: design.ProfileRough, Size: mm(12)}
	d.Outline.Nodes[1].Corner = design.Corner{Kind: design.CornerRounded, Size: mm(70)}
	return d
}

func derive(d design.Design) report.Report {
	return report.Derive(d, material.Defaults(), design.Site{})
}

func texts(p scene.Page) []scene.Text {
	var out []scene.Text
	for _, it := range p.Items {
		if t, ok := it.(scene.Text); ok {
			out = append(out, t)
		}
	}
	return out
}

// extent is the box of a text that lies level or upright.
func extent(t scene.Text) geom.Box {
	w, h := t.Width(), 0.74*t.Size // cap height of the Go fonts, and a little
	at := t.At
	switch t.Anchor {
	case scene.AnchorStart:
		at.X += w / 2
	case scene.AnchorEnd:
		at.X -= w / 2
	}
	half := geom.Vec{X: w / 2, Y: h / 2}
	if t.Angle != 0 {
		half = geom.Vec{X: h / 2, Y: w / 2}
	}
	return geom.Box{Min: at.Sub(half), Max: at.Add(half)}
}

func overlap(a, b geom.Box) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}

func TestViewRoundTrip(t *testing.T) {
	v := draw.Fit(geom.Box{Min: geom.Vec{X: -300, Y: 20}, Max: geom.Vec{X: 1250, Y: 700}}, 1400, 900, 80)
	for _, p := range []geom.Vec{{}, {X: 1250, Y: 700}, {X: -17.3, Y: 333}} {
		if q := v.ToDesign(v.ToPage(p)); q.Dist(p) > 1e-9 {
			t.Errorf("%v comes back as %v", p, q)
		}
	}
	// Fit: the box in the middle, its longer side 80 units from the rim.
	if a, b := v.ToPage(geom.Vec{X: -300, Y: 700}), v.ToPage(geom.Vec{X: 1250, Y: 20}); math.Abs(a.X-80) > 1e-9 || math.Abs(b.X-1320) > 1e-9 || math.Abs(a.Y+b.Y-900) > 1e-9 {
		t.Errorf("the box lies at %v to %v", a, b)
	}
}

// TestDimensionTexts holds that the plan says what the design measures, in the
// words of package units, in both systems.
func TestDimensionTexts(t *testing.T) {
	d := counter()
	r := derive(d)
	for _, sys := range []units.System{units.Metric, units.Imperial} {
		v := draw.Fit(r.Solid.Outline.Bounds(), 1400, 900, draw.Room)
		v.Units = sys
		got := map[string]int{}
		for _, x := range texts(draw.Dimensions(d, r, v)) {
			got[x.Text]++
		}
		f := func(x float64) string { return units.Format(mm(x), sys) }
		for _, want := range []struct{ what, text string }{
			{"width", f(1600)}, {"depth", f(1100)}, {"return's width", f(520)}, {"rest of the front", f(1080)},
			{"return's depth", f(540)}, {"counter's depth", f(560)},
			{"sink from the left", f(1100)}, {"hole from the sink", f(350)}, {"hole from the right", f(150)},
			{"tap line from the back", f(60)}, {"sink from the tap line", f(220)}, {"sink from the front", f(280)},
			{"spread", f(203.2)}, {"overhang", f(40.5)}, {"sink's size", f(460) + " × " + f(350)},
			{"inside corner", "R " + f(80)}, {"outer corner", "R " + f(70)},
		} {
			if got[want.text] == 0 {
				t.Errorf("%v: the %s, %q, is not on the plan: %v", sys, want.what, want.text, got)
			}
		}
	}
}

// TestDimensionsApart holds that no two texts of dimension lines overlap, at any
// usual size, and that all lie on a page with room for them.
func TestDimensionsApart(t *testing.T) {
	for name, d := range tops() {
		r := derive(d)
		for _, w := range []float64{500, 700, 1000, 1400, 2800} {
			v := draw.Fit(r.Solid.Outline.Bounds(), w, 0.66*w, draw.Room)
			list := texts(draw.Dimensions(d, r, v))
			if len(list) == 0 {
				t.Errorf("%s at %g: no dimensions", name, w)
			}
			for i, a := range list {
				box := extent(a)
				if box.Min.X < 0 || box.Min.Y < 0 || box.Max.X > v.W || box.Max.Y > v.H {
					t.Errorf("%s at %g: %q leaves the page: %v", name, w, a.Text, box)
				}
				for _, b := range list[i+1:] {
					if overlap(box, extent(b)) {
						t.Errorf("%s at %g: %q and %q overlap", name, w, a.Text, b.Text)
					}
				}
			}
		}
	}
}

// tops is designs of every starter.
func tops() map[string]design.Design {
	plain := func(o design.Outline) design.Design {
		return design.Design{Outline: o, Thickness: mm(38), Finish: design.Finish{Colour: design.Colour{R: 170, G: 168, B: 160}, Polish: 2}}
	}
	sink := func(d design.Design, x, y float64) design.Design {
		d.Sinks = append(d.Sinks, design.Sink{ID: design.ID(fmt.Sprintf("sink-%d", len(d.Sinks)+1)), At: pt(x, y), Mount: design.Mount(len(d.Sinks) % 3), Rim: mm(15), Drain: mm(45),
			Shape: design.Shape{Kind: design.ShapeEllipse, Width: mm(420), Depth: mm(320)}})
		return d
	}
	bowed := sink(plain(edit.BowedFront(mm(1250), mm(560), mm(60))), 500, 300)
	bowed.Taps = []design.TapSet{{ID: "taps-1", Sink: "sink-1", Pattern: design.TapThree4, Diameter: mm(35), SetBack: mm(60)}}
	return map[string]design.Design{
		"counter":   counter(),
		"rectangle": sink(sink(sink(plain(edit.Rectangle(mm(2400), mm(600))), 400, 300), 1200, 320), 2000, 280),
		"u":         sink(plain(edit.UShape(mm(2400), mm(600), mm(600), mm(650), mm(1500), mm(60))), 1200, 1200),
		"bowed":     bowed,
		"round":     plain(edit.Round(mm(900))),
		"oval":      plain(edit.Oval(mm(1300), mm(700))),
	}
}

// TestHostileDesigns draws what is no top: nothing panics, and every page is of
// the size that was asked for.
func TestHostileDesigns(t *testing.T) {
	huge := counter()
	huge.Outline = edit.Rectangle(units.MaxLength, units.MaxLength)
	flat := counter()
	flat.Thickness = -5
	flat.Outline = edit.Rectangle(mm(1000), 0)
	crossed := counter()
	crossed.Outline.Nodes[1], crossed.Outline.Nodes[3] = crossed.Outline.Nodes[3], crossed.Outline.Nodes[1]
	crossed.Sinks[0].Shape.Width = -mm(5)
	crossed.Sinks[0].Rotation = 123 * units.Degree
	crossed.Taps[0].Diameter = units.MaxLength
	crossed.Glass[0].Grain = -1
	crossed.Glass[0].Coverage = 40 * units.Whole
	crossed.Channels[0].Depth = units.MaxLength
	away := counter()
	away.Sinks[0].At = pt(1e6, -1e6)
	for name, d := range map[string]design.Design{
		"empty": {}, "one node": {Outline: design.Outline{Nodes: []design.Node{{At: pt(3, 4)}}}},
		"huge": huge, "flat": flat, "crossed": crossed, "away": away,
	} {
		r := derive(d)
		job := design.Job{Client: "Z", Options: []design.Option{{Name: "A", Design: d}}}
		for _, scale := range []float64{math.NaN(), math.Inf(1), 0, -1, 1e-9, 1, 1e9} {
			v := draw.Fit(r.Solid.Outline.Bounds(), 300, 200, 20)
			v.Scale = scale
			v.Show.Grid = true
			if p := draw.Plan(d, r, v); p.W != 300 || p.H != 200 {
				t.Errorf("%s: page of %g x %g", name, p.W, p.H)
			}
		}
		draw.Thumb(d, r, 80, 50)
		draw.Thumb(d, r, 0, math.NaN())
		draw.Sheet(job, job.Options[0], r, draw.SheetOptions{Width: 900})
		side := draw.Side{Option: job.Options[0], Report: r}
		draw.Compare(job, side, draw.Side{Option: design.Option{Name: "B", Design: counter()}, Report: derive(counter())}, draw.CompareOptions{SheetOptions: draw.SheetOptions{Width: 900}})
	}
}

// longJob has names that no sheet has room for.
func longJob(sys units.System) design.Job {
	long := strings.Repeat("An extraordinarily long name without end, ", 6)
	d := counter()
	return design.Job{Client: long + "Θεσσαλονίκη שלום \U0001f600", Units: sys, Materials: material.Defaults(),
		Options: []design.Option{{Name: "A", Title: long, Design: d}, {Name: "B with a long name of its own", Title: long + long, Design: tops()["rectangle"]}}}
}

// TestSheetInside holds that every text of a sheet lies within its margins, for
// whatever names, and that no two overlap.
func TestSheetInside(t *testing.T) {
	for _, sys := range []units.System{units.Metric, units.Imperial} {
		j := longJob(sys)
		a, b := derive(j.Options[0].Design), derive(j.Options[1].Design)
		for name, p := range map[string]scene.Page{
			"sheet A": draw.Sheet(j, j.Options[0], a, draw.SheetOptions{Width: 2000, Date: "14 March 2026"}),
			"sheet B": draw.Sheet(j, j.Options[1], b, draw.SheetOptions{Width: 1200}),
			"compare": draw.Compare(j, draw.Side{Option: j.Options[0], Report: a}, draw.Side{Option: j.Options[1], Report: b}, draw.CompareOptions{SheetOptions: draw.SheetOptions{Width: 2000}}),
			"print":   draw.Sheet(j, j.Options[0], a, draw.SheetOptions{}),
		} {
			rim := 0.02 * p.W
			list := texts(p)
			for i, x := range list {
				box := extent(x)
				if box.Min.X < rim || box.Min.Y < rim || box.Max.X > p.W-rim || box.Max.Y > p.H-rim {
					t.Errorf("%s: %q at %v leaves the page of %g x %g", name, x.Text, box, p.W, p.H)
				}
				for _, y := range list[i+1:] {
					if overlap(box, extent(y)) {
						t.Errorf("%s: %q and %q overlap", name, x.Text, y.Text)
					}
				}
			}
		}
	}
}

// TestSheetScale holds that the scale that a sheet states is the one that it is
// drawn to when it is printed at its size.
func TestSheetScale(t *testing.T) {
	for _, sys := range []units.System{units.Metric, units.Imperial} {
		for name, d := range tops() {
			j := design.Job{Units: sys, Options: []design.Option{{Name: "A", Design: d}}}
			p := draw.Sheet(j, j.Options[0], derive(d), draw.SheetOptions{Width: 1600})
			stated := 0.0
			for _, x := range texts(p) {
				if !strings.HasPrefix(x.Text, "Scale ") {
					continue
				}
				i := strings.LastIndex(x.Text, "1:")
				if _, err := fmt.Sscanf(x.Text[i:], "1:%g", &stated); err != nil {
					t.Fatalf("%s: %q: %v", name, x.Text, err)
				}
			}
			paper := map[units.System]float64{units.Metric: 297, units.Imperial: 279.4}[sys] // ISO 216 A4; ANSI A
			if math.Abs(p.Print-1600/paper) > 1e-9 {
				t.Errorf("%s: %g units to the mm of paper, want %g", name, p.Print, 1600/paper)
			}
			if one := p.Print / p.PerMM; math.Abs(one-stated) > 1e-9 {
				t.Errorf("%s: drawn to 1:%g, stated 1:%g", name, one, stated)
			}
		}
	}
}

// TestCompareScale holds that the two plans of a comparison are to one scale:
// both outlines have the very size that the page's scale gives them.
func TestCompareScale(t *testing.T) {
	a, b := counter(), tops()["round"]
	j := design.Job{}
	side := func(n string, d design.Design) draw.Side {
		return draw.Side{Option: design.Option{Name: n, Design: d}, Report: derive(d)}
	}
	p := draw.Compare(j, side("A", a), side("B", b), draw.CompareOptions{SheetOptions: draw.SheetOptions{Width: 2000}})
	var widths []float64
	for _, it := range p.Items {
		f, ok := it.(scene.Fill)
		if !ok || len(f.Loops) != 1 || f.Paint.Texture == nil || f.Paint.Colour.A == 0 {
			continue
		}
		widths = append(widths, f.Loops[0].Bounds().W()/p.PerMM)
	}
	for _, want := range []float64{1600, 900} {
		found := false
		for _, w := range widths {
			found = found || math.Abs(w-want) < 12 // a rough edge strays from its line
		}
		if !found {
			t.Errorf("no face is %g mm wide: %v", want, widths)
		}
	}
}

// TestPlanSame holds that the same design gives the same items.
func TestPlanSame(t *testing.T) {
	d := counter()
	r := derive(d)
	v := draw.Fit(r.Solid.Outline.Bounds(), 800, 600, draw.Room)
	a, b := fmt.Sprintf("%v", strip(draw.Plan(d, r, v))), fmt.Sprintf("%v", strip(draw.Plan(d, r, v)))
	if a != b {
		t.Error("two plans of one design differ")
	}
}

// strip leaves textures out, which are told apart by where they are kept.
func strip(p scene.Page) scene.Page {
	for i, it := range p.Items {
		if f, ok := it.(scene.Fill); ok {
			f.Paint.Texture = nil
			p.Items[i] = f
		}
	}
	return p
}

// TestGridStep holds the grid to whole steps of each system.
func TestGridStep(t *testing.T) {
	for _, c := range []struct {
		sys   units.System
		scale float64
		want  float64
	}{{units.Metric, 1, 50}, {units.Metric, 4, 5}, {units.Metric, 0.2, 100}, {units.Imperial, 1, 25.4}, {units.Imperial, 10, 25.4 / 16}, {units.Imperial, 0.1, 6 * 25.4}} {
		if got := draw.GridStep(c.sys, c.scale, 14); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v at %g: %g mm, want %g", c.sys, c.scale, got, c.want)
		}
	}
}

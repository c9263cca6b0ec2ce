package raster_test

import (
	"bytes"
	"image"
	"image/png"
	"math"
	"os"
	"testing"

	"example.org/castwright/assets"
	"example.org/castwright/export/raster"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
)

func mm(x float64) units.Length { return units.FromMM(x) }

// TestPlanFidelity holds that a top is painted where it lies: 1000 x 500 mm at one
// pixel to the millimetre, with a hole of 100 mm, to within a pixel.
func TestPlanFidelity(t *testing.T) {
	d := design.Design{
		Outline: edit.Rectangle(mm(1000), mm(500)), Thickness: mm(40),
		Finish: design.Finish{Colour: design.Colour{R: 240, G: 30, B: 30}, Polish: 1},
		Holes:  []design.Hole{{ID: "hole-1", At: design.Point{X: mm(300), Y: mm(200)}, Diameter: mm(100)}},
	}
	r := report.Derive(d, design.Materials{}, design.Site{})
	for _, textures := range []bool{false, true} {
		v := draw.View{W: 1200, H: 700, Scale: 1, Centre: geom.Vec{X: 500, Y: 250}, Theme: draw.Light(), Show: draw.Show{Textures: textures}}
		img := raster.Image(draw.Base(d, r, v))
		// The top is red, the ground grey, the hole near to black.
		red := func(x, y int) bool { c := img.RGBAAt(x, y); return int(c.R) > int(c.G)+60 }
		run := func(x0, y0, dx, dy, n int, want bool) int {
			for i := range n {
				if red(x0+i*dx, y0+i*dy) == want {
					return i
				}
			}
			return n
		}
		for _, c := range []struct {
			what           string
			x, y, dx, dy   int
			until          bool
			fromMM, wantMM float64
		}{
			{"left edge", 0, 350, 1, 0, true, 0, 100},
			{"right edge", 1199, 350, -1, 0, true, 0, 100},
			{"front edge", 600, 699, 0, -1, true, 0, 100},
			{"back edge", 600, 0, 0, 1, true, 0, 100},
			{"hole, to the left", 200, 400, 1, 0, false, 0, 150},
			{"hole, to the right", 1000, 400, -1, 0, false, 0, 550},
			{"hole, from the back", 400, 200, 0, 1, false, 0, 150},
		} {
			if got := float64(run(c.x, c.y, c.dx, c.dy, 1000, c.until)); math.Abs(got-c.wantMM) > 1.01 {
				t.Errorf("textures %v, %s: after %g pixels, want %g", textures, c.what, got, c.wantMM)
			}
		}
	}
}

// demo is an option of a demo job with its report.
func demo(t testing.TB, job, option int) (design.Job, design.Option, report.Report) {
	t.Helper()
	j, err := store.Decode(assets.Demos()[job].Data)
	if err != nil {
		t.Fatal(err)
	}
	o := j.Options[option]
	return j, o, report.Derive(o.Design, j.Materials, j.Site)
}

// TestSheetSameBytes holds that a sheet has the same bytes when it is made again,
// with all that was baked before or without.
func TestSheetSameBytes(t *testing.T) {
	j, o, r := demo(t, 0, 1)
	var first []byte
	for range 2 {
		var buf bytes.Buffer
		p := draw.Sheet(j, o, r, draw.SheetOptions{Width: 700, Date: "14 March 2026"})
		if err := raster.PNG(&buf, p, raster.Options{}); err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = buf.Bytes()
		} else if !bytes.Equal(first, buf.Bytes()) {
			t.Error("the sheet differs when it is made again")
		}
	}
}

// small are two tops for thumbnails: stone with a river and a basin below, cream
// with a broken edge, glass and a vessel.
func small() map[string]design.Design {
	at := func(x, y float64) design.Point { return design.Point{X: mm(x), Y: mm(y)} }
	stone := design.Design{
		Outline: edit.BowedFront(mm(1100), mm(560), mm(60)), Thickness: mm(40),
		Finish: design.Finish{Colour: design.Colour{R: 150, G: 148, B: 142}, Exposure: design.ExposureCoarse, Polish: 3},
		Sinks: []design.Sink{{ID: "sink-1", At: at(720, 310), Shape: design.Shape{Kind: design.ShapeRectangle,
			Width: mm(420), Depth: mm(300), CornerRadius: mm(50)}}},
		Taps: []design.TapSet{{ID: "taps-1", Sink: "sink-1", Diameter: mm(35), SetBack: mm(55)}},
		Channels: []design.Channel{{ID: "channel-1", Depth: mm(12),
			Fill: design.Fill{Resin: true, Colour: design.Colour{R: 24, G: 92, B: 150}, Opacity: 60 * units.Percent},
			Rivers: []design.River{{Start: design.EndOpen, End: design.EndOpen, Nodes: []design.RiverNode{
				{At: at(130, 600), Width: mm(70)}, {At: at(330, 330), Width: mm(110)}, {At: at(250, -20), Width: mm(80)}}}}}},
	}
	cream := design.Design{
		Outline: edit.Rectangle(mm(1100), mm(520)), Thickness: mm(40),
		Finish: design.Finish{Colour: design.Colour{R: 222, G: 214, B: 196}, Polish: 2},
		Sinks: []design.Sink{{ID: "sink-1", At: at(760, 250), Mount: design.MountVessel, Drain: mm(45),
			Shape: design.Shape{Kind: design.ShapeCircle, Width: mm(360)}}},
		Glass: []design.GlassBed{{ID: "glass-1", Grain: mm(12), Coverage: 50 * units.Percent, Colour: design.Colour{R: 120, G: 190, B: 170},
			Region: design.Region{Outer: []design.Node{{At: at(0, 150)}, {At: at(420, 520)}, {At: at(0, 520)}}}}},
	}
	cream.Outline.Nodes[0].Edge.Profile = design.Profile{Kind: design.ProfileRough, Size: mm(20)}
	return map[string]design.Design{"stone": stone, "cream": cream}
}

// TestThumbs compares thumbnails with pictures that a person has looked at, to 4
// of 255 in all but one pixel of a hundred. Run with UPDATE=1 to write them anew,
// then look at them.
func TestThumbs(t *testing.T) {
	for name, d := range small() {
		file := "testdata/thumb-" + name + ".png"
		page := draw.Thumb(d, report.Derive(d, design.Materials{}, design.Site{}), 88, 50)
		got := raster.Image(page)
		if os.Getenv("UPDATE") != "" {
			var buf bytes.Buffer
			if err := raster.PNG(&buf, page, raster.Options{}); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(file, buf.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		f, err := os.Open(file)
		if err != nil {
			t.Fatal(err)
		}
		want, err := png.Decode(f)
		f.Close()
		if err != nil {
			t.Fatal(err)
		}
		if got.Rect != want.Bounds() {
			t.Fatalf("%s: %v, want %v", file, got.Rect, want.Bounds())
		}
		wrong := 0
		for y := range got.Rect.Dy() {
			for x := range got.Rect.Dx() {
				r1, g1, b1, a1 := got.At(x, y).RGBA()
				r2, g2, b2, a2 := want.At(x, y).RGBA()
				for _, p := range [...][2]uint32{{r1, r2}, {g1, g2}, {b1, b2}, {a1, a2}} {
					if max(p[0], p[1])-min(p[0], p[1]) > 4*0x101 {
						wrong++
						break
					}
				}
			}
		}
		if wrong > got.Rect.Dx()*got.Rect.Dy()/100 {
			t.Errorf("%s: %d pixels differ", file, wrong)
		}
	}
}

// view is a demo's plan on a board of w by h pixels.
func view(r report.Report, j design.Job, w, h float64) draw.View {
	v := draw.Fit(r.Solid.Outline.Bounds(), w, h, draw.Room*h/900)
	v.Units, v.Point = j.Units, h/900
	return v
}

func benchmarkPlan(b *testing.B, w, h, option int) {
	j, o, r := demo(b, 0, option)
	v := view(r, j, float64(w), float64(h))
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	raster.Draw(img, draw.Plan(o.Design, r, v)) // bakes
	b.ReportAllocs()
	for b.Loop() {
		raster.Draw(img, draw.Plan(o.Design, r, v))
	}
}

func BenchmarkPlan1400x900Coarse(b *testing.B)  { benchmarkPlan(b, 1400, 900, 0) }
func BenchmarkPlan1400x900Cream(b *testing.B)   { benchmarkPlan(b, 1400, 900, 1) }
func BenchmarkPlan2880x1800Coarse(b *testing.B) { benchmarkPlan(b, 2880, 1800, 0) }
func BenchmarkPlan2880x1800Cream(b *testing.B)  { benchmarkPlan(b, 2880, 1800, 1) }

// BenchmarkDrag is a redraw for an outline that is another each time, as while a
// corner is dragged: what depends on the outline is baked anew.
func BenchmarkDrag(b *testing.B) {
	j, o, _ := demo(b, 0, 0)
	img := image.NewRGBA(image.Rect(0, 0, 1400, 900))
	reports := make([]report.Report, 64)
	designs := make([]design.Design, 64)
	for i := range reports {
		d := o.Design
		d.Outline.Nodes = append([]design.Node(nil), d.Outline.Nodes...)
		d.Outline.Nodes[1].At.X += units.Length(i) * units.Millimetre
		designs[i], reports[i] = d, report.Derive(d, j.Materials, j.Site)
	}
	v := view(reports[0], j, 1400, 900)
	v.Draft = true
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		k := i % 64
		raster.Draw(img, draw.Plan(designs[k], reports[k], v))
	}
}

func BenchmarkSheet(b *testing.B) {
	j, o, r := demo(b, 0, 0)
	for _, w := range []int{2000, 8192} {
		b.Run(map[int]string{2000: "2000", 8192: "8192"}[w], func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				var buf bytes.Buffer
				if err := raster.PNG(&buf, draw.Sheet(j, o, r, draw.SheetOptions{Width: float64(w)}), raster.Options{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

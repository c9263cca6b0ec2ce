package raster

import (
	"bytes"
	"image"
	"image/color"
	"math"
	"testing"
	"time"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/scene"
)

var (
	red   = scene.Colour{R: 0xff, A: 0xff}
	white = scene.Colour{R: 0xff, G: 0xff, B: 0xff, A: 0xff}
)

func box(x0, y0, x1, y1 float64) geom.Loop {
	return geom.Loop{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
}

// ramp is a texture whose colour tells the place.
type ramp struct{}

func (ramp) At(x, y, footprint float64) scene.Colour {
	return scene.Colour{R: uint8(math.Floor(x)), G: uint8(math.Floor(y)), B: uint8(math.Round(footprint * 10)), A: 0xff}
}

func TestDrawItems(t *testing.T) {
	page := func(items ...scene.Item) scene.Page {
		return scene.Page{W: 100, H: 80, Ground: white, Items: items}
	}
	for _, c := range []struct {
		name string
		page scene.Page
		at   image.Point
		want color.RGBA
	}{
		{"ground", page(), image.Pt(50, 40), color.RGBA{255, 255, 255, 255}},
		{"fill", page(scene.Fill{Loops: []geom.Loop{box(10, 10, 30, 30)}, Paint: scene.Paint{Colour: red}}), image.Pt(29, 29), color.RGBA{255, 0, 0, 255}},
		{"beside the fill", page(scene.Fill{Loops: []geom.Loop{box(10, 10, 30, 30)}, Paint: scene.Paint{Colour: red}}), image.Pt(30, 29), color.RGBA{255, 255, 255, 255}},
		{"half a pixel", page(scene.Fill{Loops: []geom.Loop{box(10, 10, 30.5, 30)}, Paint: scene.Paint{Colour: scene.Colour{A: 255}}}), image.Pt(30, 20), color.RGBA{127, 127, 127, 255}},
		{"hole", page(scene.Fill{Loops: []geom.Loop{box(10, 10, 50, 50), box(20, 20, 40, 40).Reversed()}, Paint: scene.Paint{Colour: red}}), image.Pt(30, 30), color.RGBA{255, 255, 255, 255}},
		{"alpha", page(scene.Fill{Loops: []geom.Loop{box(10, 10, 30, 30)}, Paint: scene.Paint{Colour: scene.Colour{A: 51}}}), image.Pt(20, 20), color.RGBA{204, 204, 204, 255}},
		{"clip, within", page(scene.Fill{Loops: []geom.Loop{box(10, 10, 50, 50)}, Clip: []geom.Loop{box(20, 0, 90, 90)}, Paint: scene.Paint{Colour: red}}), image.Pt(20, 20), color.RGBA{255, 0, 0, 255}},
		{"clip, beyond", page(scene.Fill{Loops: []geom.Loop{box(10, 10, 50, 50)}, Clip: []geom.Loop{box(20, 0, 90, 90)}, Paint: scene.Paint{Colour: red}}), image.Pt(19, 20), color.RGBA{255, 255, 255, 255}},
		{"clip of nothing", page(scene.Fill{Loops: []geom.Loop{box(10, 10, 50, 50)}, Clip: []geom.Loop{}, Paint: scene.Paint{Colour: red}}), image.Pt(30, 20), color.RGBA{255, 255, 255, 255}},
		{"clip ends with its fill", page(
			scene.Fill{Loops: []geom.Loop{box(10, 10, 50, 50)}, Clip: []geom.Loop{box(0, 0, 5, 5)}, Paint: scene.Paint{Colour: red}},
			scene.Fill{Loops: []geom.Loop{box(60, 10, 70, 50)}, Paint: scene.Paint{Colour: red}},
		), image.Pt(65, 20), color.RGBA{255, 0, 0, 255}},
		{"stroke", page(scene.Stroke{Lines: [][]geom.Vec{{{X: 10, Y: 20}, {X: 90, Y: 20}}}, Width: 4, Colour: red}), image.Pt(50, 21), color.RGBA{255, 0, 0, 255}},
		{"beside the stroke", page(scene.Stroke{Lines: [][]geom.Vec{{{X: 10, Y: 20}, {X: 90, Y: 20}}}, Width: 4, Colour: red}), image.Pt(50, 22), color.RGBA{255, 255, 255, 255}},
		{"closed stroke", page(scene.Stroke{Lines: [][]geom.Vec{box(10, 10, 50, 50)}, Closed: true, Width: 4, Colour: red}), image.Pt(10, 30), color.RGBA{255, 0, 0, 255}},
		{"dash", page(scene.Stroke{Lines: [][]geom.Vec{{{X: 10, Y: 20}, {X: 90, Y: 20}}}, Width: 2, Dash: []float64{20, 10}, Colour: red}), image.Pt(20, 20), color.RGBA{255, 0, 0, 255}},
		{"gap", page(scene.Stroke{Lines: [][]geom.Vec{{{X: 10, Y: 20}, {X: 90, Y: 20}}}, Width: 2, Dash: []float64{20, 10}, Colour: red}), image.Pt(35, 20), color.RGBA{255, 255, 255, 255}},
		{"second dash", page(scene.Stroke{Lines: [][]geom.Vec{{{X: 10, Y: 20}, {X: 90, Y: 20}}}, Width: 2, Dash: []float64{20, 10}, Colour: red}), image.Pt(50, 20), color.RGBA{255, 0, 0, 255}},
		{"dash begun far away", page(scene.Stroke{Lines: [][]geom.Vec{{{X: 10 - 3e6, Y: 20}, {X: 90, Y: 20}}}, Width: 2, Dash: []float64{20, 10}, Colour: red}), image.Pt(20, 20), color.RGBA{255, 0, 0, 255}},
		{"texture", func() scene.Page {
			p := page(scene.Fill{Loops: []geom.Loop{box(10, 10, 50, 50)}, Paint: scene.Paint{Texture: ramp{}}})
			p.PerMM, p.Origin = 2, geom.Vec{X: 10, Y: 70}
			return p
		}(), image.Pt(30, 40), color.RGBA{10, 14, 5, 255}},
		{"texture that can't be placed", page(scene.Fill{Loops: []geom.Loop{box(10, 10, 50, 50)}, Paint: scene.Paint{Colour: red, Texture: ramp{}}}), image.Pt(30, 40), color.RGBA{255, 0, 0, 255}},
		{"text", page(scene.Text{At: geom.Vec{X: 50, Y: 40}, Size: 100, Colour: red, Text: "■"}), image.Pt(50, 40), color.RGBA{255, 0, 0, 255}},
		{"turned text", page(scene.Text{At: geom.Vec{X: 50, Y: 40}, Size: 60, Angle: math.Pi / 2, Colour: red, Text: "▬▬"}), image.Pt(50, 15), color.RGBA{255, 0, 0, 255}},
	} {
		if got := Image(c.page).RGBAAt(c.at.X, c.at.Y); got != c.want {
			t.Errorf("%s: pixel %v is %v, want %v", c.name, c.at, got, c.want)
		}
	}
}

// TestDrawBands holds that a picture is the same however it is cut into bands,
// and when it is painted again.
func TestDrawBands(t *testing.T) {
	p := scene.Page{W: 300, H: 500, PerMM: 1.7, Origin: geom.Vec{X: 3, Y: 480}, Ground: white}
	for i := range 40 {
		x, y := float64(i*37%280), float64(i*91%480)
		p.Items = append(p.Items,
			scene.Fill{Loops: []geom.Loop{{{X: x, Y: y}, {X: x + 90.3, Y: y + 31.7}, {X: x + 11.1, Y: y + 77.9}}}, Paint: scene.Paint{Colour: scene.Colour{R: uint8(i * 6), G: 90, B: 160, A: 140}}},
			scene.Stroke{Lines: [][]geom.Vec{{{X: x, Y: y}, {X: 299 - x, Y: 480 - y}, {X: y, Y: x}}}, Width: 0.7 + float64(i%5), Dash: []float64{7, 3}, Colour: scene.Colour{A: 200}},
			scene.Text{At: geom.Vec{X: x, Y: y}, Size: 9 + float64(i%20), Angle: float64(i) / 7, Colour: scene.Colour{R: 200, A: 255}, Text: "25 1/2 in ×"},
			scene.Fill{Loops: []geom.Loop{box(x, y, x+60, y+60)}, Clip: []geom.Loop{box(x+20, y-5, x+45, y+33)}, Paint: scene.Paint{Texture: ramp{}}},
		)
	}
	want := Image(p)
	for _, rows := range []int{1, 7, 64, 500} {
		got := image.NewRGBA(want.Rect)
		for top := 0; top < 500; top += rows {
			drawBand(got.Pix[top*got.Stride:], got.Stride, 300, top, min(rows, 500-top), 500, p)
		}
		if !bytes.Equal(got.Pix, want.Pix) {
			t.Errorf("bands of %d rows give another picture", rows)
		}
	}
	if !bytes.Equal(Image(p).Pix, want.Pix) {
		t.Error("painted again, the picture is another")
	}
}

// TestDrawHostile holds that numbers which hang other rasterizers are drawn in a
// moment or left out.
func TestDrawHostile(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	bad := []float64{nan, inf, -inf, 1e7, -1e9, 1e12, -1e300, math.MaxFloat64, 5}
	p := scene.Page{W: 200, H: 200, PerMM: nan, Origin: geom.Vec{X: inf}, Ground: white}
	for _, x := range bad {
		for _, y := range bad {
			l := geom.Loop{{X: x, Y: y}, {X: y, Y: x}, {X: 20, Y: 30}, {X: 90, Y: 20}}
			p.Items = append(p.Items,
				scene.Fill{Loops: []geom.Loop{l}, Paint: scene.Paint{Colour: scene.Colour{A: 20}, Texture: ramp{}}},
				scene.Fill{Loops: []geom.Loop{box(0, 0, 9, 9)}, Clip: []geom.Loop{l}, Paint: scene.Paint{Colour: red}},
				scene.Stroke{Lines: [][]geom.Vec{l}, Closed: true, Width: 2, Dash: []float64{3, 2}, Colour: scene.Colour{A: 20}},
				scene.Stroke{Lines: [][]geom.Vec{l}, Width: x, Dash: []float64{x, y}, Colour: scene.Colour{A: 20}},
				scene.Text{At: geom.Vec{X: x, Y: y}, Size: y, Angle: x, Colour: red, Text: "a"},
				scene.Text{At: geom.Vec{X: 9, Y: 9}, Size: y, Angle: x, Colour: red, Text: "a\x00\xff\U0001f600\u202e"},
			)
		}
	}
	began := time.Now()
	Image(p)
	// Not a speed test: any of these would take minutes, or for ever, unclipped.
	if d := time.Since(began); d > 20*time.Second {
		t.Errorf("took %v", d)
	}
}

// TestImageLimits holds that a page that can't be painted gives an empty picture.
func TestImageLimits(t *testing.T) {
	for _, c := range []struct{ w, h float64 }{{0, 10}, {10, -1}, {math.NaN(), 10}, {MaxSide + 1, 10}, {10, math.Inf(1)}} {
		if got := Image(scene.Page{W: c.w, H: c.h}).Rect; !got.Empty() {
			t.Errorf("%g x %g: picture of %v", c.w, c.h, got)
		}
	}
}

package board

import (
	"fmt"
	"image"
	"testing"

	"example.org/castwright/model/geom"
	look "example.org/castwright/ui/theme"
	"example.org/castwright/ui/tool"
	"example.org/castwright/ui/view"
	"fyne.io/fyne/v2/test"
	"pgregory.net/rapid"
)

// Wherever measures, handles and the number being typed lie: no label covers
// another, a handle or the number, and all lie within the picture.
func TestLabelsKeepApart(t *testing.T) {
	test.NewTempApp(t)
	rapid.Check(t, func(t *rapid.T) {
		px := rapid.SampledFrom([]float64{1, 1.3, 2}).Draw(t, "px")
		w, h := 700*px, 500*px
		var l overlay
		l.ink = newInk()
		place := rapid.Custom(func(t *rapid.T) geom.Vec {
			return geom.Vec{X: rapid.Float64Range(-100, 900).Draw(t, "x"), Y: rapid.Float64Range(-100, 700).Draw(t, "y")}
		})
		var o tool.Overlay
		for i := range rapid.IntRange(0, 12).Draw(t, "dims") {
			d := tool.Dim{From: place.Draw(t, "from"), To: place.Draw(t, "to"), Field: fmt.Sprint("f", i),
				Text:   rapid.SampledFrom([]string{"3\"", "22 1/4\"", "2 1/4\", under 3\"", "R 1/2\"", "narrowest 1 7/8\", under 2\""}).Draw(t, "text"),
				Active: i == 0, Low: rapid.Bool().Draw(t, "low"), Bare: rapid.Bool().Draw(t, "bare")}
			switch rapid.IntRange(0, 3).Draw(t, "side") {
			case 0:
				d.Beside = d.To.Sub(d.From).Unit().Left()
			case 1:
				d.Beside = geom.Vec{X: 1}
			case 2:
				d.To = d.From
			}
			o.Dims = append(o.Dims, d)
		}
		for range rapid.IntRange(0, 20).Draw(t, "handles") {
			o.Handles = append(o.Handles, tool.Handle{At: place.Draw(t, "handle")})
		}
		if rapid.Bool().Draw(t, "typing") {
			o.Value = &tool.Value{At: place.Draw(t, "value"), Name: "Rail in front", Text: "12 1/2"}
		}
		v := view.View{Scale: px, W: w, H: h, Origin: geom.Vec{Y: h}}
		l.draw(image.NewRGBA(image.Rect(0, 0, int(w), int(h))), o, v, px)
		all := l.labels
		for i, a := range all {
			if a.box.Min.X < 0 || a.box.Min.Y < 0 || a.box.Max.X > w || a.box.Max.Y > h {
				t.Errorf("label %s lies at %v, outside the picture", a.field, a.box)
			}
			for _, b := range all[i+1:] {
				if a.box.Min.X < b.box.Max.X && b.box.Min.X < a.box.Max.X && a.box.Min.Y < b.box.Max.Y && b.box.Min.Y < a.box.Max.Y {
					t.Errorf("labels %s at %v and %s at %v overlap", a.field, a.box, b.field, b.box)
				}
			}
			for _, k := range o.Handles {
				if at := l.v.Point(k.At); a.box.Contains(at) {
					t.Errorf("label %s at %v covers the handle at %v", a.field, a.box, at)
				}
			}
		}
	})
}

// With a little room every measure of a usual gesture finds its label.
func TestLabelsFindRoom(t *testing.T) {
	test.NewTempApp(t)
	var l overlay
	l.ink = newInk()
	var o tool.Overlay
	for i := range 8 {
		from := geom.Vec{X: 300 + float64(i), Y: 250}
		o.Dims = append(o.Dims, tool.Dim{From: from, To: from.Add(geom.Vec{X: 60}), Text: "22 1/4\"", Field: fmt.Sprint(i), Beside: geom.Vec{Y: 1}})
	}
	v := view.View{Scale: 1, W: 700, H: 500, Origin: geom.Vec{Y: 500}}
	l.draw(image.NewRGBA(image.Rect(0, 0, 700, 500)), o, v, 1)
	if len(l.labels) != 8 {
		t.Errorf("%d of 8 labels are written", len(l.labels))
	}
}

// A label goes round a number of the drawing, and over it rather than nowhere.
func TestLabelsKeepOffNumbers(t *testing.T) {
	test.NewTempApp(t)
	v := view.View{Scale: 1, W: 700, H: 500, Origin: geom.Vec{Y: 500}}
	at := func(below ...geom.Box) geom.Box {
		t.Helper()
		l := overlay{ink: newInk(), below: below}
		o := tool.Overlay{Dims: []tool.Dim{{From: geom.Vec{X: 300, Y: 250}, To: geom.Vec{X: 380, Y: 250}, Text: "350 mm", Field: "depth", Beside: geom.Vec{Y: 1}}}}
		l.draw(image.NewRGBA(image.Rect(0, 0, 700, 500)), o, v, 1)
		if len(l.labels) != 1 {
			t.Fatalf("%d labels", len(l.labels))
		}
		return l.labels[0].box
	}
	free := at()
	if moved := at(free); moved.Touches(free) {
		t.Errorf("at %v the label covers the number at %v", moved, free)
	}
	if everywhere := (geom.Box{Max: geom.Vec{X: 700, Y: 500}}); at(everywhere) != free {
		t.Error("with numbers everywhere the label is not where it would be without")
	}
}

// The font has every sign that labels are written with; a sign that it lacks would
// show as an empty box.
func TestLabelsHaveTheirSigns(t *testing.T) {
	a := test.NewTempApp(t)
	a.Settings().SetTheme(look.New(look.Light))
	var l lettering
	l.set(textFont(), 13)
	for _, r := range `0123456789/"' mRØ°=!-.,±×` {
		if l.font.Index(r) == 0 {
			t.Errorf("the font has no %q", r)
		}
	}
}

package template_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/castwright/model/template"
)

// lines are LINE entities: x y x y.
func lines(v ...[4]float64) string {
	var b strings.Builder
	for _, l := range v {
		fmt.Fprintf(&b, "0 LINE 10 %g 20 %g 11 %g 21 %g ", l[0], l[1], l[2], l[3])
	}
	return b.String()
}

// box is a rectangle of four lines.
func box(x, y, w, h float64) [][4]float64 {
	return [][4]float64{{x, y, x + w, y}, {x + w, y + h, x + w, y}, {x + w, y + h, x, y + h}, {x, y, x, y + h}}
}

// What is drawn untidily: areas by hand.
func TestJoining(t *testing.T) {
	plate := box(0, 0, 100, 50)
	for _, c := range []struct {
		name, entities string
		areas          []float64
		note           string
	}{
		{"a tick at a corner", lines(append(plate, [4]float64{0, 0, -30, -30})...), []float64{5000}, "dropped 1 open line"},
		{"a diagonal", lines(append(plate, [4]float64{0, 0, 100, 50})...), []float64{5000}, "left out 1 line across"},
		{"a diagonal drawn first", lines(slices.Insert(slices.Clone(plate), 0, [4]float64{0, 0, 100, 50})...), []float64{5000}, "across"},
		{"a side drawn twice", lines(append(plate, [4]float64{100, 0, 0, 0})...), []float64{5000}, "dropped 1 piece drawn twice"},
		{"two with a side between them", lines(append(box(100, 0, 60, 50)[:3], plate...)...), []float64{8000}, "left out 1 line across"},
		{"two that touch in a corner", lines(append(box(100, 50, 20, 20), plate...)...), []float64{5000, 400}, ""},
		{"one in another's corner", lines(append([][4]float64{{0, 0, 30, 10}, {10, 30, 30, 10}, {0, 0, 10, 30}}, plate...)...),
			[]float64{4600}, ""},
		{"two and a line between", lines(append(append(box(200, 0, 20, 20), plate...), [4]float64{100, 0, 200, 0})...),
			[]float64{5000, 400}, "left out 1 line that leads"},
		{"two gaps of half a millimetre", lines([4]float64{0.5, 0, 100, 0}, [4]float64{100, 0, 100, 50},
			[4]float64{100, 50, 0.5, 50}, [4]float64{0, 50, 0, 0}), []float64{5000}, "closed 2 gaps"},
		{"ends off by a few hundredths", lines([4]float64{0.03, 0, 100, 0.02}, [4]float64{100, 0, 100, 50},
			[4]float64{100, 50, 0, 50}, [4]float64{0, 50.04, 0, 0}), []float64{5000}, "joined the ends of 1 outline"},
		{"an arc that nearly closes", "0 ARC 10 0 20 0 40 50 50 1 51 360", []float64{2500 * math.Pi}, "closed 1 gap"},
		{"two polylines side by side", "0 LWPOLYLINE 70 1 10 0 20 0 10 50 20 0 10 50 20 50 10 0 20 50 " +
			"0 LWPOLYLINE 70 1 10 50 20 0 10 90 20 0 10 90 20 50 10 50 20 50", []float64{2500, 2000}, ""},
		{"a circle drawn twice", "0 CIRCLE 10 5 20 5 40 20 0 CIRCLE 10 5 20 5 40 20", []float64{400 * math.Pi}, "drawn twice"},
		{"a bow tie", "0 LWPOLYLINE 70 1 10 0 20 0 10 40 20 40 10 40 20 0 10 0 20 40", []float64{400, 400}, "crosses itself"},
		{"a half disc of arc and line that touch it", "0 ARC 10 0 20 0 40 50 50 0 51 180 " + lines([4]float64{-50, 0, 50, 0}),
			[]float64{1250 * math.Pi}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, err := template.Read([]byte(dxfOf(4, c.entities)), template.UnitUnknown)
			if err != nil {
				t.Fatal(err)
			}
			var got []float64
			for _, l := range d.Loops {
				got = append(got, l.Area)
			}
			if len(got) != len(c.areas) {
				t.Fatalf("areas %v, want %v (%v)", got, c.areas, d.Notes)
			}
			for i := range got {
				near(t, "area", got[i], c.areas[i], 1.5e-3) // what a gap of 0.5 mm can change
			}
			if notes := strings.Join(d.Notes, "; "); !strings.Contains(notes, c.note) || c.note == "" && notes != "" {
				t.Errorf("notes %q, want %q", notes, c.note)
			}
		})
	}
}

// What a browser does with styles, sizes and frames (SVG 1.1, CSS 2.1): areas by
// hand.
func TestSVGReading(t *testing.T) {
	for _, c := range []struct {
		name, data string
		areas      []float64
	}{
		{"hidden by a class", svgOf(`<style>.a,.b{display:none}</style><rect width="9" height="9" class="x b"/><rect width="5" height="5"/>`), []float64{25}},
		{"an id goes before a class", svgOf(`<style>#k{display:inline} .a{display:none}</style><rect id="k" width="5" height="5" class="a"/>`), []float64{25}},
		{"seen in what is hidden", svgOf(`<g visibility="hidden"><rect width="9" height="9"/><rect width="5" height="5" visibility="visible"/></g>`), []float64{25}},
		{"percentages", svgOf(`<rect width="10%" height="20%"/>`), []float64{400}},
		{"a nested svg without a size", svgOf(`<svg viewBox="0 0 20 10"><rect width="2" height="1"/></svg>`), []float64{200}},
		{"a symbol without a size", svgOf(`<symbol id="s" viewBox="0 0 100 100"><rect width="10" height="10"/></symbol><use href="#s"/>`), []float64{100}},
		{"stretched", `<svg width="200mm" height="50mm" viewBox="0 0 100 100" preserveAspectRatio="none"><rect width="10" height="10"/></svg>`, []float64{100}},
		{"sliced", `<svg width="200mm" height="50mm" viewBox="0 0 100 100" preserveAspectRatio="xMinYMin slice"><rect width="10" height="10"/></svg>`, []float64{400}},
		{"height follows from width", `<svg width="200mm" viewBox="0 0 100 100"><rect width="10" height="10"/></svg>`, []float64{400}},
		{"open pieces that meet", svgOf(`<path d="M0 0H10V5"/><path d="M10 5H0V0"/>`), []float64{50}},
		{"a fill closes", svgOf(`<path d="M0 0H10V10"/>`), []float64{50}},
		{"a transform in the style", svgOf(`<rect width="10" height="10" style="transform: rotate(30deg) scale(2)"/>`), []float64{400}},
		{"a sub-path in the same direction is a hole", svgOf(`<path d="M0 0H20V20H0Z M5 5H15V15H5Z"/>`), []float64{300}},
	} {
		d, err := template.Read([]byte(c.data), template.UnitUnknown)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		var got []float64
		for _, l := range d.Loops {
			got = append(got, l.Area)
		}
		if len(got) != len(c.areas) {
			t.Errorf("%s: areas %v, want %v (%v)", c.name, got, c.areas, d.Notes)
			continue
		}
		for i := range got {
			near(t, c.name, got[i], c.areas[i], 1e-9)
		}
	}
}

// A unit that is said goes before the pixels of an SVG and a DXF's own, but not
// before a size in millimetres; UTF-16 and byte-order marks are read.
func TestUnitsAndEncodings(t *testing.T) {
	px := `<svg width="96px" height="96px"><rect width="10" height="10"/></svg>`
	mm := svgOf(`<rect width="10" height="10"/>`)
	var wide []byte
	for _, r := range "\ufeff" + mm {
		wide = append(wide, byte(r), byte(r>>8))
	}
	for _, c := range []struct {
		name, data string
		unit       template.Unit
		area       float64
	}{
		{"pixels", px, template.UnitUnknown, 100 * 25.4 * 25.4 / 96 / 96},
		{"pixels said to be inches", px, template.UnitInch, 64516},
		{"millimetres said to be inches", mm, template.UnitInch, 100},
		{"centimetres said to be inches", dxfOf(5, "0 CIRCLE 10 0 20 0 40 1"), template.UnitInch, math.Pi * 645.16},
		{"survey feet", dxfOf(21, "0 CIRCLE 10 0 20 0 40 1"), template.UnitUnknown, math.Pi * 304.8006096 * 304.8006096},
		{"UTF-16", string(wide), template.UnitUnknown, 100},
		{"a mark before a DXF", "\xef\xbb\xbf" + dxfOf(4, "0 CIRCLE 10 0 20 0 40 1"), template.UnitUnknown, math.Pi},
	} {
		d, err := template.Read([]byte(c.data), c.unit)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		near(t, c.name, d.Loops[0].Area, c.area, 1e-8)
	}
}

// Lines that run on past the corners, or end on the middle of another: 100 x 50
// with tails, a half disc on a line that is too long, a plate parted by a wall.
func TestLinesThatCross(t *testing.T) {
	line := func(x0, y0, x1, y1 float64) string {
		return fmt.Sprintf("0 LINE 10 %g 20 %g 11 %g 21 %g ", x0, y0, x1, y1)
	}
	hash := line(-10, 0, 110, 0) + line(100, -10, 100, 60) + line(110, 50, -10, 50) + line(0, 60, 0, -10)
	for _, c := range []struct {
		name, entities string
		area           float64
		note           string
	}{
		{"tails", hash, 5000, "cut 4 lines"},
		{"just short of a corner's line", line(-10, 0, 110, 0) + line(100, 0.05, 100, 49.95) + line(110, 50, -10, 50) + line(0, 49.95, 0, 0.05), 5000, "cut 2 lines"},
		{"a half disc", line(-30, 0, 30, 0) + "0 ARC 10 0 20 0 40 20 50 0 51 180 ", 200 * math.Pi, "cut 1 line"},
		{"an arc that runs on", line(-30, 0, 30, 0) + "0 ARC 10 0 20 0 40 20 50 340 51 200 ", 200 * math.Pi, "cut"},
	} {
		d, err := template.Read([]byte(dxfOf(4, c.entities)), template.UnitUnknown)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if len(d.Loops) != 1 {
			t.Errorf("%s: %d loops (%v)", c.name, len(d.Loops), d.Notes)
			continue
		}
		near(t, c.name, d.Loops[0].Area, c.area, 3e-3)
		if !strings.Contains(strings.Join(d.Notes, "; "), c.note) {
			t.Errorf("%s: notes %q", c.name, d.Notes)
		}
	}
	_, err := template.Read([]byte(dxfOf(4, line(0, 0, 100, 0)+line(50, -10, 50, 10))), template.UnitUnknown)
	if err == nil || !strings.Contains(err.Error(), "open line") || strings.Contains(err.Error(), "cut") {
		t.Errorf("a cross: error %v", err)
	}
}

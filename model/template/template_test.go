package template_test

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/castwright/model/template"
)

// svgOf wraps shapes into a drawing 200 mm x 100 mm whose unit is a millimetre.
func svgOf(body string) string {
	return `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100">` + body + `</svg>`
}

// dxfOf wraps entities; groups are separated by blanks: "0 LINE 10 0 ...".
func dxfOf(units int, entities string) string {
	head := fmt.Sprintf("0 SECTION 2 HEADER 9 $INSUNITS 70 %d 0 ENDSEC ", units)
	return strings.Join(strings.Fields(head+"0 SECTION 2 ENTITIES "+entities+" 0 ENDSEC 0 EOF"), "\n") + "\n"
}

// Areas, perimeters and centroids by closed forms (any mensuration handbook).
func TestShapesAgainstClosedForms(t *testing.T) {
	const kappa = 1e-5 // ellipses are cubics of 1/16 turn; circles stay arcs
	for _, c := range []struct {
		name            string
		data            string
		area, perimeter float64
		x, y            float64
		tol             float64 // relative
	}{
		{"svg rect", svgOf(`<rect x="10" y="20" width="60" height="22"/>`), 1320, 164, 40, -31, 1e-9},
		{"svg rounded rect", svgOf(`<rect x="10" y="20" width="60" height="22" rx="2"/>`),
			1316.566371, 160.566371, 40, -31, 1e-8},
		{"svg circle", svgOf(`<circle cx="30" cy="40" r="10"/>`), 100 * math.Pi, 20 * math.Pi, 30, -40, 1e-9},
		{"svg ellipse", svgOf(`<ellipse cx="30" cy="40" rx="8.5" ry="7"/>`), 186.924763, 48.8087624311, 30, -40, kappa},
		{"svg half circle arc", svgOf(`<path d="M20 50 A10 10 0 0 1 40 50 Z"/>`),
			50 * math.Pi, 10*math.Pi + 20, 30, -50 + 4.244132, 1e-6},
		{"svg flags without blanks", svgOf(`<path d="M20 50a10 10 0 0120 0z"/>`),
			50 * math.Pi, 10*math.Pi + 20, 30, -50 + 4.244132, 1e-6},
		{"svg smooth quadratics make a parabola", svgOf(`<path d="M0 0Q10 20 20 0Z"/>`), // area 2/3 b h, h = 10
			400.0 / 3, 0, 10, -4, 1e-9},
		{"svg transform", svgOf(`<g transform="translate(5,5) scale(2)"><rect width="10" height="5" transform="rotate(90)"/></g>`),
			200, 60, 0, -15, 1e-9},
		{"svg use of a symbol", svgOf(`<defs><symbol id="s" viewBox="0 0 10 10"><rect width="10" height="10"/></symbol></defs><use href="#s" x="20" width="40" height="20"/>`),
			400, 80, 40, -10, 1e-9},
		{"dxf inch square", dxfOf(1, `0 LWPOLYLINE 70 1 10 0 20 0 10 1 20 0 10 1 20 1 10 0 20 1`), 645.16, 101.6, 12.7, 12.7, 1e-9},
		{"dxf bulge", dxfOf(4, `0 LWPOLYLINE 70 1 10 0 20 0 42 0.5 10 10 20 0`), 17.472469, 0, 5, 0, 1e-7}, // check value: chord 10, b = 0.5
		{"dxf four lines", dxfOf(4, `0 LINE 10 0 20 0 11 60 21 0 0 LINE 10 60 20 22 11 60 21 0 0 LINE 10 60 20 22 11 0 21 22 0 LINE 10 0 20 22 11 0 21 0`),
			1320, 164, 30, 11, 1e-9},
		{"dxf circle seen from behind", dxfOf(4, `0 CIRCLE 10 -30 20 40 40 10 210 0 220 0 230 -1`), 100 * math.Pi, 20 * math.Pi, 30, 40, 1e-9},
		{"dxf ellipse", dxfOf(4, `0 ELLIPSE 10 30 20 10 11 8.5 21 0 40 0.823529411764706 41 0 42 6.283185307179586`),
			186.924763, 48.8087624311, 30, 10, kappa},
		{"dxf quadratic spline", dxfOf(4, `0 SPLINE 70 8 71 2 40 0 40 0 40 0 40 1 40 1 40 1 10 0 20 0 10 10 20 20 10 20 20 0 0 LINE 10 20 20 0 11 0 21 0`),
			400.0 / 3, 0, 10, 4, 1e-7},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, err := template.Read([]byte(c.data), template.UnitUnknown)
			if err != nil {
				t.Fatal(err)
			}
			if len(d.Loops) != 1 {
				t.Fatalf("%d loops, want 1; notes %v", len(d.Loops), d.Notes)
			}
			l := d.Loops[0]
			near(t, "area", l.Area, c.area, c.tol)
			if c.perimeter != 0 {
				near(t, "perimeter", l.Perimeter, c.perimeter, c.tol)
			}
			if c.name != "dxf bulge" {
				near(t, "x", l.Centroid.X, c.x, 1e-5)
				near(t, "y", l.Centroid.Y, c.y, 1e-5)
			}
		})
	}
}

func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > rel*math.Max(1, math.Abs(want)) {
		t.Errorf("%s = %.9g, want %.9g (relative %g)", what, got, want, rel)
	}
}

func TestHolesAndIslands(t *testing.T) {
	d, err := template.Read([]byte(svgOf(`<path d="M0 0H100V50H0Z M10 10H40V40H10Z"/><circle cx="25" cy="25" r="5"/>`)), template.UnitUnknown)
	if err != nil {
		t.Fatal(err)
	}
	if len(d.Loops) != 2 || len(d.Loops[0].Holes) != 1 {
		t.Fatalf("%d loops, %d holes; want the plate with its hole and the disc in it", len(d.Loops), len(d.Loops[0].Holes))
	}
	near(t, "area", d.Loops[0].Area, 5000-900, 1e-9)
	near(t, "x", d.Loops[0].Centroid.X, (5000*50-900*25)/4100.0, 1e-9)
}

func TestUnits(t *testing.T) {
	bare := strings.ReplaceAll(svgOf(`<rect width="10" height="10"/>`), "mm", "")
	for _, c := range []struct {
		name, data string
		unit       template.Unit
		area       float64
		err        string
	}{
		{"said by the file", svgOf(`<rect width="10" height="10"/>`), template.UnitUnknown, 100, ""},
		{"not said", bare, template.UnitUnknown, 0, "does not say its unit"},
		{"said by the maker", bare, template.UnitInch, 64516, ""},
		{"dxf without", dxfOf(0, `0 CIRCLE 10 0 20 0 40 1`), template.UnitUnknown, 0, "does not say its unit"},
		{"dxf in inches", dxfOf(0, `0 CIRCLE 10 0 20 0 40 1`), template.UnitInch, math.Pi * 645.16, ""},
		{"pixels", `<svg width="96px" height="96px"><rect width="96" height="96"/></svg>`, template.UnitUnknown, 645.16, ""},
	} {
		d, err := template.Read([]byte(c.data), c.unit)
		switch {
		case c.err != "":
			if err == nil || !strings.Contains(err.Error(), c.err) {
				t.Errorf("%s: error %v, want %q", c.name, err, c.err)
			}
		case err != nil:
			t.Errorf("%s: %v", c.name, err)
		default:
			near(t, c.name, d.Loops[0].Area, c.area, 1e-9)
		}
	}
}

// Ways to write one drawing: packed (RFC 1952), with the line ends of several
// systems, with a mark of byte order or of the end.
func TestWrappings(t *testing.T) {
	dxf := dxfOf(4, "0 CIRCLE 10 0 20 0 40 20")
	packed := func(data string) string {
		var b bytes.Buffer
		z := gzip.NewWriter(&b)
		io.WriteString(z, data)
		z.Close()
		return b.String()
	}
	for name, data := range map[string]string{
		"svgz": packed(svgOf(`<circle r="20"/>`)), "lf": dxf, "crlf": strings.ReplaceAll(dxf, "\n", "\r\n"),
		"cr": strings.ReplaceAll(dxf, "\n", "\r"), "mark": "\ufeff" + dxf, "end mark": dxf + "\x1a",
		"comment": "999\nmade by hand\n" + dxf,
	} {
		d, err := template.Read([]byte(data), template.UnitUnknown)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		near(t, name, d.Loops[0].Area, 400*math.Pi, 1e-9)
	}
	for name, data := range map[string]string{
		"cut short": packed(svgOf(`<circle r="20"/>`))[:40],
		"bomb":      packed(strings.Repeat(" ", 40<<20)),
	} {
		if _, err := template.Read([]byte(data), template.UnitUnknown); err == nil || !strings.Contains(err.Error(), "packed") {
			t.Errorf("%s: error %v, want one of a packed file", name, err)
		}
	}
}

// Hostile files must be refused with a reason, quickly.
func TestHostileFiles(t *testing.T) {
	blocks := "0 SECTION 2 BLOCKS "
	for i := range 20 { // each holds the next twice: a million squares
		blocks += fmt.Sprintf("0 BLOCK 2 B%d 10 0 20 0 0 INSERT 2 B%d 10 0 20 0 0 INSERT 2 B%d 10 1 20 0 0 ENDBLK ", i, i+1, i+1)
	}
	bomb := strings.Join(strings.Fields(blocks+"0 ENDSEC 0 SECTION 2 ENTITIES 0 INSERT 2 B0 0 ENDSEC 0 EOF"), "\n")
	self := strings.Join(strings.Fields("0 SECTION 2 BLOCKS 0 BLOCK 2 A 10 0 20 0 0 INSERT 2 A 10 0 20 0 0 ENDBLK 0 ENDSEC 0 SECTION 2 ENTITIES 0 INSERT 2 A 0 ENDSEC 0 EOF"), "\n")
	uses := `<g id="u0"><rect width="1" height="1"/></g>`
	for i := 1; i < 25; i++ {
		uses += fmt.Sprintf(`<g id="u%d"><use href="#u%d"/><use href="#u%d"/></g>`, i, i-1, i-1)
	}
	for _, c := range []struct{ name, data, want string }{
		{"empty", "", "empty"},
		{"text", "hello\nworld\n", "not an ASCII DXF"},
		{"truncated dxf", dxfOf(4, "0 CIRCLE 10 0 20 0 40 1")[:60], "in part"},
		{"truncated svg", svgOf(`<rect width="5" height="5"/>`)[:100], "in part"},
		{"nan", dxfOf(4, "0 CIRCLE 10 nan 20 0 40 1"), "not a number"},
		{"inf", dxfOf(4, "0 CIRCLE 10 0 20 0 40 1e400"), "not a number"},
		{"huge", dxfOf(4, "0 CIRCLE 10 0 20 0 40 1e9"), "larger than 100 m"},
		{"beyond reckoning", dxfOf(4, "0 CIRCLE 10 0 20 0 40 1e12"), "no closed outline"},
		{"negative radius", dxfOf(4, "0 CIRCLE 10 0 20 0 40 -4"), "above 0"},
		{"block bomb", bomb, "more than"},
		{"block in itself", self, "holds itself"},
		{"use bomb", svgOf(uses + `<use href="#u24"/>`), "more than"},
		{"use in itself", svgOf(`<g id="a"><use href="#a"/></g>`), "inside itself"},
		{"deep", svgOf(strings.Repeat("<g>", 100000)), "deep"},
		{"entities", `<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]>` + svgOf(`<rect width="&b;" height="5"/>`), "no closed outline"},
		{"bad path", svgOf(`<path d="M0 0 L10"/>`), "number is missing"},
		{"open line", svgOf(`<path fill="none" d="M0 0 L10 10 L50 0"/>`), "open line"},
	} {
		_, err := template.Read([]byte(c.data), template.UnitUnknown)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want one with %q", c.name, err, c.want)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(svgOf(`<path d="M0 0C10 0 10 10 0 10S-5 5 0 0Z"/>`)))
	f.Add([]byte(dxfOf(4, `0 SPLINE 70 8 71 2 40 0 40 0 40 0 40 1 40 1 40 1 10 0 20 0 10 10 20 20 10 20 20 0`)))
	f.Add([]byte(dxfOf(1, `0 POLYLINE 66 1 70 1 0 VERTEX 10 0 20 0 42 1 0 VERTEX 10 5 20 5 0 SEQEND`)))
	f.Fuzz(func(t *testing.T, data []byte) {
		d, err := template.Read(data, template.UnitMM)
		if err != nil {
			return
		}
		for _, l := range d.Loops {
			if math.IsNaN(l.Area) || math.IsInf(l.Perimeter, 0) || !l.Centroid.Finite() {
				t.Errorf("a loop measures %v, %v, %v", l.Area, l.Perimeter, l.Centroid)
			}
		}
	})
}

// Drawings made by an independent library; areas by closed forms or by its own
// flattening (testdata/template/make.py).
func TestDrawingsOfAnotherLibrary(t *testing.T) {
	dir := filepath.Join("..", "..", "testdata", "template")
	data, err := os.ReadFile(filepath.Join(dir, "expected.json"))
	if err != nil {
		t.Fatal(err)
	}
	var want map[string][]float64
	if err := json.Unmarshal(data, &want); err != nil {
		t.Fatal(err)
	}
	for name, areas := range want {
		file, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		unit := template.UnitUnknown
		if strings.Contains(name, "R12") {
			unit = template.UnitMM // R12 has no units
		}
		d, err := template.Read(file, unit)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		var got []float64
		for _, l := range d.Loops {
			got = append(got, l.Area)
		}
		slices.Sort(got)
		slices.Sort(areas)
		if len(got) != len(areas) {
			t.Errorf("%s: %d loops %v, want %v (%v)", name, len(got), got, areas, d.Notes)
			continue
		}
		for i := range got {
			near(t, name, got[i], areas[i], 1e-5)
		}
	}
}

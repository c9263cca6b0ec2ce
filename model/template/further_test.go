package template_test

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/template"
)

// wantLoop is a loop as the scripts in testdata/template/further measured it.
type wantLoop struct {
	Area, Perimeter float64
	Centroid        [2]float64
	Holes           []wantLoop
}

// Random drawings made and read by independent programs: DXF of every version by
// ezdxf, SVG by the specification and held against what librsvg paints
// (testdata/template/further). Curves there are cut into some thousand points,
// which is good to 1e-5 of an area.
func TestFurtherDrawings(t *testing.T) {
	const tol = 1e-5
	dir := filepath.Join("..", "..", "testdata", "template", "further")
	for _, kind := range []string{"dxf", "svg"} {
		data, err := os.ReadFile(filepath.Join(dir, kind+".json"))
		if err != nil {
			t.Fatal(err)
		}
		var all map[string][]wantLoop
		if err := json.Unmarshal(data, &all); err != nil {
			t.Fatal(err)
		}
		if len(all) < 20 {
			t.Fatalf("only %d drawings of %s", len(all), kind)
		}
		for name, want := range all {
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
			if len(d.Loops) != len(want) {
				t.Errorf("%s: %d loops, want %d (%v)", name, len(d.Loops), len(want), d.Notes)
				continue
			}
			for _, w := range want {
				at := geom.Vec{X: w.Centroid[0], Y: w.Centroid[1]}
				if kind == "svg" {
					at.Y = -at.Y
				}
				l := slices.MinFunc(d.Loops, func(a, b template.Loop) int {
					return compare(apart(a, w.Area, at), apart(b, w.Area, at))
				})
				near(t, name+": area", l.Area, w.Area, tol)
				near(t, name+": perimeter", l.Perimeter, w.Perimeter, tol)
				if d := l.Centroid.Dist(at); d > tol*math.Sqrt(w.Area) {
					t.Errorf("%s: centroid %v, want %v", name, l.Centroid, at)
				}
				compareHoles(t, name, l, w)
			}
		}
	}
}

func apart(l template.Loop, area float64, at geom.Vec) float64 {
	return math.Abs(l.Area-area)/area + l.Centroid.Dist(at)/100
}

func compare(a, b float64) int {
	if a < b {
		return -1
	}
	return 1
}

func compareHoles(t *testing.T, name string, l template.Loop, w wantLoop) {
	t.Helper()
	if len(l.Holes) != len(w.Holes) {
		t.Errorf("%s: %d holes, want %d", name, len(l.Holes), len(w.Holes))
		return
	}
	var got, want []float64
	for i := range l.Holes {
		area, _, _ := template.Measure(l.Holes[i])
		got, want = append(got, area), append(want, w.Holes[i].Area)
	}
	slices.Sort(got)
	slices.Sort(want)
	for i := range got {
		near(t, name+": hole", got[i], want[i], 1e-5)
	}
}

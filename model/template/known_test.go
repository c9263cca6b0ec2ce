package template_test

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/template"
)

// Drawings with known measures, by hand or by an independent library: see
// testdata/template/known.py, which also says where the measures are from.
func TestKnownDrawings(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "template", "known.json"))
	if err != nil {
		t.Fatal(err)
	}
	type loop struct {
		Area, Perimeter float64
		Centroid        []float64
		Holes           []float64
	}
	var all map[string]struct {
		Data, Unit, Error, Note string
		Tolerance               float64
		Loops                   []loop
	}
	if err := json.Unmarshal(data, &all); err != nil {
		t.Fatal(err)
	}
	if len(all) < 90 {
		t.Fatalf("only %d drawings", len(all))
	}
	for name, c := range all {
		t.Run(name, func(t *testing.T) {
			unit := template.UnitUnknown
			if c.Unit == "mm" {
				unit = template.UnitMM
			}
			d, err := template.Read([]byte(c.Data), unit)
			if c.Error != "" {
				if err == nil || !strings.Contains(err.Error(), c.Error) {
					t.Errorf("error %v, want one with %q", err, c.Error)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if notes := strings.Join(d.Notes, "; "); !regexp.MustCompile(c.Note).MatchString(notes) {
				t.Errorf("notes %q, want %q", notes, c.Note)
			}
			if len(d.Loops) != len(c.Loops) {
				t.Fatalf("%d loops, want %d (%v)", len(d.Loops), len(c.Loops), d.Notes)
			}
			slices.SortFunc(d.Loops, func(a, b template.Loop) int { return compare(a.Area, b.Area) })
			slices.SortFunc(c.Loops, func(a, b loop) int { return compare(a.Area, b.Area) })
			for i, w := range c.Loops {
				l := d.Loops[i]
				near(t, "area", l.Area, w.Area, c.Tolerance)
				if w.Perimeter > 0 {
					near(t, "perimeter", l.Perimeter, w.Perimeter, c.Tolerance)
				}
				if len(w.Centroid) == 2 {
					at := geom.Vec{X: w.Centroid[0], Y: w.Centroid[1]}
					if d.Source == "svg" {
						at.Y = -at.Y
					}
					if by := l.Centroid.Dist(at); by > c.Tolerance*math.Sqrt(w.Area) {
						t.Errorf("centroid %v, want %v", l.Centroid, at)
					}
				}
				var holes []float64
				for _, h := range l.Holes {
					area, _, _ := template.Measure(h)
					holes = append(holes, area)
				}
				if len(holes) != len(w.Holes) {
					t.Fatalf("%d holes, want %d", len(holes), len(w.Holes))
				}
				slices.Sort(holes)
				slices.Sort(w.Holes)
				for i := range holes {
					near(t, "hole", holes[i], w.Holes[i], 1e-6)
				}
			}
		})
	}
}

package geom_test

import (
	"encoding/json"
	"fmt"
	"os"
	"testing"

	"example.org/castwright/model/geom"
)

// Natural spline and monotone cubic against scipy's CubicSpline (bc_type
// "natural") and PchipInterpolator: testdata/splines/make.py.
func TestSplinesAgainstScipy(t *testing.T) {
	data, err := os.ReadFile("../../testdata/splines/splines.json")
	if err != nil {
		t.Fatal(err)
	}
	var rows []struct {
		Points            [][2]float64
		Widths, S         []float64
		Width, Slope      []float64
		At, First, Second [][2]float64
	}
	if err := json.Unmarshal(data, &rows); err != nil {
		t.Fatal(err)
	}
	if len(rows) < 40 {
		t.Fatalf("%d rows", len(rows))
	}
	for i, r := range rows {
		var p []geom.Vec
		s := []float64{0}
		for k, q := range r.Points {
			p = append(p, geom.Vec{X: q[0], Y: q[1]})
			if k > 0 {
				s = append(s, s[k-1]+p[k].Dist(p[k-1]))
			}
		}
		line, width := geom.NewNatural(s, p), geom.NewMonotone(s, r.Widths)
		for k, x := range r.S {
			name := fmt.Sprintf("row %d at %g", i, x)
			w, dw := width.At(x)
			near(t, name+" width", w, r.Width[k], 1e-10)
			near(t, name+" slope", dw, r.Slope[k], 1e-10)
			if len(p) < 3 {
				continue
			}
			q, d1, d2 := line.At(x)
			for c, v := range [3]geom.Vec{q, d1, d2} {
				want := [3][2]float64{r.At[k], r.First[k], r.Second[k]}[c]
				near(t, fmt.Sprint(name, " x derivative ", c), v.X, want[0], 1e-8)
				near(t, fmt.Sprint(name, " y derivative ", c), v.Y, want[1], 1e-8)
			}
		}
	}
}

package slab_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/store"
)

// reference is where the tops and their values by other programs lie, with the
// scripts that made them.
const reference = "../../testdata"

// cases reads the options of all job files that match a pattern.
func cases(t *testing.T, pattern string) map[string]design.Design {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(reference, pattern))
	if err != nil || len(files) == 0 {
		t.Fatalf("no job files %s: %v", pattern, err)
	}
	out := map[string]design.Design{}
	for _, f := range files {
		j, err := store.Load(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, o := range j.Options {
			out[o.Name] = o.Design
		}
	}
	return out
}

func expected(t *testing.T, file string, into any) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(reference, file))
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, into); err != nil {
		t.Fatal(err)
	}
}

// Areas of random tops against GEOS (testdata/geos/make.py: shapely over finely
// sampled curves, scipy's splines): outline, openings, channels, beds, and
// sections at three heights, to 1e-6 of the top's area. The reference's own
// sampling leaves about 1e-7. A flattened curve keeps its area as a whole; where a
// strip's back is cut within a step by another, up to half a step's segment stays
// out of balance, some 0.05 mm2 at each such place.
func TestAgainstGEOS(t *testing.T) {
	tops := cases(t, "geos/cases-*.json")
	var want map[string]struct {
		Plan      float64   `json:"plan_area_mm2"`
		Net       float64   `json:"net_area_mm2"`
		Perimeter float64   `json:"outline_perimeter_mm"`
		Channels  []float64 `json:"channel_area_mm2"`
		Lengths   []float64 `json:"channel_length_mm"`
		Beds      []float64 `json:"bed_area_mm2"`
		Sections  []struct {
			Z        float64    `json:"z_mm"`
			Area     float64    `json:"area_mm2"`
			Centroid [2]float64 `json:"centroid_mm"`
			Held     []float64  `json:"held_mm2"`
		} `json:"sections"`
	}
	expected(t, "geos/areas.json", &want)
	if len(want) != len(tops) || len(want) < 200 {
		t.Fatalf("%d expected values for %d tops", len(want), len(tops))
	}
	for name, w := range want {
		s := slab.Resolve(tops[name])
		for _, f := range s.Faults {
			if f.Rule == design.RuleCorner {
				t.Errorf("%s: %v", name, f)
			}
		}
		m := s.Measure(0)
		unit := w.Plan // what a share of the top's area is measured by
		about := func(what string, got, want float64) {
			t.Helper()
			near(t, name+" "+what, got, want, 1e-6*unit)
		}
		about("plan", m.PlanArea, w.Plan)
		about("net", m.NetArea, w.Net)
		same(t, name+" perimeter", m.OutlinePerimeter, w.Perimeter, 1e-9)
		for i, c := range w.Channels {
			about(fmt.Sprint("channel ", i), m.Channels[i].Area, c)
			same(t, fmt.Sprint(name, " length ", i), m.Channels[i].Length, w.Lengths[i], 1e-8)
		}
		for i, b := range w.Beds {
			about(fmt.Sprint("bed ", i), m.Beds[i].Area, b)
		}
		for _, c := range w.Sections {
			area, moment := 0.0, [2]float64{}
			for _, l := range s.Section(c.Z) {
				a, p := l.Area(), l.Centroid()
				area += a
				moment[0] += a * p.X
				moment[1] += a * p.Y
			}
			what := fmt.Sprintf("section at %g of %g", c.Z, s.Thickness)
			near(t, name+" "+what, area, c.Area, 1e-6*unit+0.2)
			near(t, name+" "+what+" x", moment[0]/area, c.Centroid[0], 1e-3)
			near(t, name+" "+what+" y", moment[1]/area, c.Centroid[1], 1e-3)
			held := 0.0
			for _, l := range s.Fillings(c.Z) {
				held += l.Area()
			}
			for _, h := range c.Held {
				held -= h
			}
			near(t, name+" "+what+" in channels", held, 0, 1e-6*unit+0.2)
		}
	}
}

package report_test

import (
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/material"
	"example.org/castwright/model/report"
	"example.org/castwright/model/units"
	"github.com/shopspring/decimal"
)

func slabOf(width, depth, thickness float64) report.Report {
	d := design.Design{
		Outline:   edit.Rectangle(units.FromMM(width), units.FromMM(depth)),
		Thickness: units.FromMM(thickness),
		Finish:    design.Finish{Polish: 1},
	}
	m := material.Defaults()
	m.Mix.BagPrice = decimal.RequireFromString("10.00")
	return report.Derive(d, m, design.Site{})
}

func TestDifferencesOfEqual(t *testing.T) {
	a := slabOf(1200, 500, 40)
	if got := report.Differences(a, a); len(got) != 0 {
		t.Errorf("a report differs from itself: %+v", got)
	}
}

// TestDifferences compares two plain slabs, whose sizes are reckoned by hand:
// 1.2 x 0.5 m against 1.5 x 0.5 m, 40 mm thick, at 2400 kg/m3.
func TestDifferences(t *testing.T) {
	got := map[string]report.Difference{}
	for _, d := range report.Differences(slabOf(1200, 500, 40), slabOf(1500, 500, 40)) {
		got[d.Key] = d
	}
	for _, c := range []struct{ key, a, b, change string }{
		{"width_mm", "1200 mm", "1500 mm", "+300 mm"},
		{"plan_area_mm2", "0.600 m²", "0.750 m²", "+0.150 m²"},
		{"weight_kg", "57.6 kg", "72.0 kg", "+14.4 kg"},
	} {
		d, ok := got[c.key]
		if !ok {
			t.Errorf("%s is not told", c.key)
			continue
		}
		a, b, change := d.Text(d.A, units.Metric, "€"), d.Text(d.B, units.Metric, "€"), d.Change(units.Metric, "€")
		if a != c.a || b != c.b || change != c.change {
			t.Errorf("%s: %q, %q, %q; want %q, %q, %q", c.key, a, b, change, c.a, c.b, c.change)
		}
	}
	for _, key := range []string{"depth_mm", "thickness_mm"} {
		if d, ok := got[key]; ok {
			t.Errorf("%s is told though it is equal: %+v", key, d)
		}
	}
	if d := got["cost"]; !strings.HasPrefix(d.Text(d.A, units.Metric, "€"), "€") || d.Change(units.Metric, "€")[0] != '+' {
		t.Errorf("cost: %+v", d)
	}
	if d := got["width_mm"]; d.Text(d.B, units.Imperial, "") != units.Format(1500*units.Millimetre, units.Imperial) {
		t.Errorf("in inches: %s", d.Text(d.B, units.Imperial, ""))
	}
}

// TestDifferencesTurned holds that the other way round every difference stands
// with its values exchanged.
func TestDifferencesTurned(t *testing.T) {
	a, b := slabOf(1200, 500, 40), slabOf(3900, 700, 20)
	there, back := report.Differences(a, b), report.Differences(b, a)
	if len(there) != len(back) || len(there) == 0 {
		t.Fatalf("%d there, %d back", len(there), len(back))
	}
	for i, d := range there {
		e := back[i]
		if d.Key != e.Key || d.A != e.B || d.B != e.A || d.WordsA != e.WordsB || d.WordsB != e.WordsA {
			t.Errorf("there %+v, back %+v", d, e)
		}
	}
	last := there[len(there)-1]
	if last.Key != "warnings" || last.WordsB == "" {
		t.Errorf("a slab of 3.9 m, 20 mm thick, brings no warnings: %+v", last)
	}
}

// A change is the difference of the two values as they stand beside it, by a pencil.
func TestChangeAddsUp(t *testing.T) {
	for _, c := range []struct {
		unit string
		a, b float64
		sys  units.System
		want string
	}{
		{"kg", 98.75, 86.71, units.Metric, "−12.1 kg"}, // 98.8 and 86.7
		{"mm2", 1.1864e6, 0.8034e6, units.Metric, "−0.39 m²"},
		{"mm2", 1.0543e6, 1.0461e6, units.Metric, "−0.008 m²"}, // both 1.05
		{"bag", 4, 3, units.Metric, "−1 bag"},
		{"count", 2, 5, units.Metric, "+3"},
		{"mm", 1580, 1500.5, units.Metric, "−79.5 mm"},
		{"money", 95.62, 56.81, units.Metric, "−€38.81"},
	} {
		d := report.Difference{Unit: c.unit, A: c.a, B: c.b}
		if got := d.Change(c.sys, "€"); got != c.want {
			t.Errorf("%g to %g %s: %q; want %q (%s, %s)", c.a, c.b, c.unit, got, c.want, d.Text(c.a, c.sys, "€"), d.Text(c.b, c.sys, "€"))
		}
	}
}

package material_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/material"
	"example.org/castwright/model/units"
)

// TestPipes checks ASTM D1785 Table 1, outside diameters in inches.
func TestPipes(t *testing.T) {
	want := []struct {
		nominal string
		outside float64
	}{
		{"1/2", 0.840}, {"3/4", 1.050}, {"1", 1.315}, {"1-1/4", 1.660}, {"1-1/2", 1.900},
		{"2", 2.375}, {"2-1/2", 2.875}, {"3", 3.500}, {"4", 4.500},
	}
	if len(material.Pipes) != len(want) {
		t.Fatalf("%d pipes, want %d", len(material.Pipes), len(want))
	}
	for i, p := range material.Pipes {
		if p.Nominal != want[i].nominal || math.Abs(p.Outside/25.4-want[i].outside) > 1e-12 {
			t.Errorf("pipe %s: %g in, want %v", p.Nominal, p.Outside/25.4, want[i])
		}
		if tol := p.Tolerance / 25.4; tol < 0.004-1e-12 || tol > 0.009+1e-12 {
			t.Errorf("pipe %s: tolerance %g in, want 0.004 to 0.009", p.Nominal, tol)
		}
	}
}

func TestNearestPipe(t *testing.T) {
	tests := []struct {
		hole float64 // in
		want string  // "" none
	}{
		{1.375, "1-1/4"}, // tap hole
		{1.315, "1"},     // exactly
		{1.3151, "1-1/4"},
		{1.75, "1-1/2"}, // drain of a vessel
		{0, "1/2"}, {4.5, "4"}, {4.51, ""},
	}
	for _, tt := range tests {
		p, ok := material.NearestPipe(tt.hole * 25.4)
		if p.Nominal != tt.want || ok != (tt.want != "") {
			t.Errorf("hole of %g in: pipe %q, %v; want %q", tt.hole, p.Nominal, ok, tt.want)
		}
	}
	if p, ok := material.NearestPipe(math.NaN()); ok {
		t.Errorf("no number: pipe %q", p.Nominal)
	}
}

// TestBagDensity: 60 lb with 9 % of water and 140 lb/ft3 yields 65.4/140 =
// 0.467143 ft3 (the method of ASTM C138).
func TestBagDensity(t *testing.T) {
	m := design.Mix{BagMass: 60 * units.PoundKG, BagWater: 5.4 * units.PoundKG,
		BagYield: 0.467143 * units.CubicFootL}
	if got := material.BagDensity(m) / units.PoundPerCubicFt; math.Abs(got-140) > 1e-3 {
		t.Errorf("got %g lb/ft3, want 140", got)
	}
	if got := material.BagDensity(design.Mix{BagMass: 25}); got != 0 {
		t.Errorf("without a yield: %g, want 0", got)
	}
}

// TestDefaults holds the stock figures to the ranges of their sources.
func TestDefaults(t *testing.T) {
	m := material.Defaults()
	if got := material.BagDensity(m.Mix); math.Abs(got-2135.7) > 0.1 { // 29.9 kg / 14 L
		t.Errorf("the mortar bag gives %g kg/m3, want 2135.7", got)
	}
	if got := material.BagDensity(material.OrdinaryMix()); math.Abs(got-2400) > 1e-9 {
		t.Errorf("the bag of ordinary mix gives %g kg/m3, want 2400", got)
	}
	// ACI 318-19 chapter 2: normal concrete 135 to 160 lb/ft3 (from memory).
	if d := m.Mix.CuredDensity / units.PoundPerCubicFt; d < 135 || d > 160 {
		t.Errorf("cured density %g lb/ft3, want 135 to 160", d)
	}
	// EN 1991-1-1 Table A.1: unhardened concrete 1 kN/m3 more (note from memory).
	if d := (m.Mix.FreshDensity - m.Mix.CuredDensity) * 9.80665 / 1000; math.Abs(d-1) > 0.05 {
		t.Errorf("fresh mix is %g kN/m3 heavier, want 1", d)
	}
	// 4.7 to 5.2 L of water to a bag: common practice, no source.
	if m.Mix.BagWater < 4.7 || m.Mix.BagWater > 5.2 {
		t.Errorf("%g L of water to a bag, want 4.7 to 5.2", m.Mix.BagWater)
	}
	// EN 572-1: 2500 kg/m3, which is 156.07 lb/ft3.
	if d := m.Glass.Density / units.PoundPerCubicFt; math.Abs(d-156.07) > 0.005 {
		t.Errorf("glass %g lb/ft3, want 156.07", d)
	}
	// 1.10 g/cm3 is 9.180 lb/gal.
	if d := m.Resin.Density / units.PoundPerGallon; math.Abs(d-9.180) > 0.0005 {
		t.Errorf("resin %g lb/gal, want 9.180", d)
	}
	deepest := 0.0
	for _, r := range material.Resins() {
		if r.MaxPour <= deepest || r.PartsA < 1 || r.PartsB < 1 || r.Name == "" {
			t.Errorf("resin out of order or without figures: %+v", r)
		}
		deepest = r.MaxPour
	}
}

// TestStrengthClasses checks ASTM C928 Table 1, MPa.
func TestStrengthClasses(t *testing.T) {
	want := []material.StrengthClass{
		{Name: "R1", ThreeHours: 3.5, OneDay: 14, SevenDays: 28},
		{Name: "R2", ThreeHours: 7, OneDay: 21, SevenDays: 28},
		{Name: "R3", ThreeHours: 21, OneDay: 35, SevenDays: 35},
	}
	for i, c := range material.StrengthClasses {
		if c != want[i] {
			t.Errorf("got %+v, want %+v", c, want[i])
		}
	}
}

// TestDensities: 24 kN/m3 is 2447.3 kg/m3 and 25 is 2549.3; 135 and 160 lb/ft3
// are 2162.5 and 2563.0 (NIST SP 811). What the program starts with lies within.
func TestDensities(t *testing.T) {
	low, high := map[string]float64{}, map[string]float64{}
	for _, d := range material.Densities {
		if d.Low <= 0 || d.High < d.Low || d.Source.String() == "" {
			t.Errorf("row out of order: %+v", d)
		}
		low[d.Name], high[d.Name] = d.Low, d.High
	}
	tests := []struct{ got, want float64 }{
		{low["Plain concrete, for loads"], 2447.3},
		{low["Reinforced or fresh concrete, for loads"], 2549.3},
		{low["Normal concrete"], 2162.5}, {high["Normal concrete"], 2563.0},
	}
	for _, tt := range tests {
		if math.Abs(tt.got-tt.want) > 0.06 {
			t.Errorf("got %.2f kg/m3, want %g", tt.got, tt.want)
		}
	}
	// The lighter weight that a bag of mortar gives itself is that of a mortar.
	own := material.BagDensity(material.RapidMortar())
	if own < low["Cement mortar, for loads"] || own > high["Cement mortar, for loads"] {
		t.Errorf("a bag of mortar gives %.0f kg/m3, beyond the source's range", own)
	}
}

func TestSource(t *testing.T) {
	tests := map[material.Source]string{
		{Work: "ASTM D1785 Table 1"}:                "ASTM D1785 Table 1",
		{Work: "EN 572-1", Status: material.Memory}: "EN 572-1 (from memory)",
		{Status: material.Practice}:                 "common practice, no source",
	}
	for s, want := range tests {
		if s.String() != want {
			t.Errorf("got %q, want %q", s, want)
		}
	}
}

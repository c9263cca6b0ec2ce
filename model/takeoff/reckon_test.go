package takeoff_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/material"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/takeoff"
	"example.org/castwright/model/units"
	"github.com/shopspring/decimal"
)

const (
	in   = 25.4        // mm
	in2  = in * in     // mm2
	in3  = in * in2    // mm3
	ft3  = 1728 * in3  // mm3
	lb   = 0.45359237  // kg
	pcf  = 16.01846337 // kg/m3
	tiny = 1e-9
)

// near reports whether two numbers agree within tol.
func near(got, want, tol float64) bool { return math.Abs(got-want) <= tol }

// TestTopExample: 60 x 22 x 1.5 in with an oval cut-out 17 x 14 in and a hole of
// 1-3/8 in has 1131.5903 in2 and 1697.3855 in3 = 27.8152 L; 142.431 lb at 145
// lb/ft3, 66.756 kg at 2400 kg/m3. The solid slab of 1980 in3 weighs 166.146 lb.
func TestTopExample(t *testing.T) {
	area := 60*22 - math.Pi*8.5*7 - math.Pi*1.375*1.375/4
	tests := []struct {
		name                string
		volume, density, kg float64
		tol                 float64
	}{
		{"metric", area * 1.5, 2400, 66.756, 5e-4},
		{"customary", area * 1.5, 145 * pcf, 142.431 * lb, 5e-4 * lb},
		{"solid", 1980, 145 * pcf, 166.146 * lb, 5e-4 * lb},
	}
	for _, tt := range tests {
		m := material.Defaults()
		m.Mix.CuredDensity = tt.density
		ms := slab.Measures{ConcreteVolume: tt.volume * in3}
		got := takeoff.Reckon(design.Design{}, m, slab.Solid{Thickness: 1.5 * in}, ms)
		if !near(got.WeightDry.Value, tt.kg, tt.tol) {
			t.Errorf("%s: %.4f kg, want %.4f", tt.name, got.WeightDry.Value, tt.kg)
		}
	}
	if !near(area, 1131.5903, 5e-5) || !near(area*1.5*in3/1e6, 27.8152, 5e-5) {
		t.Errorf("area %.4f in2, volume %.4f L", area, area*1.5*in3/1e6)
	}
}

// bag is the worked example's bag (arithmetic after ASTM C138 and C387): 60 lb
// with 9 % of water at 140 lb/ft3 yields 0.467143 ft3.
func bag() design.Mix {
	return design.Mix{BagMass: 60 * lb, BagWater: 5.4 * lb, BagYield: 65.4 / 140 * 28.316846592,
		Waste: 0.10, FreshDensity: 140 * pcf, CuredDensity: 140 * pcf}
}

// TestBagExample: 1.2 ft3 and 10 % is 1.32 ft3, 2.8257 bags, so 3, with 16.2 lb =
// 1.941 gal = 7.35 L of water.
func TestBagExample(t *testing.T) {
	m := design.Materials{Mix: bag()}
	got := takeoff.Reckon(design.Design{}, m, slab.Solid{Thickness: 38},
		slab.Measures{ConcreteVolume: 1.2 * ft3})
	if !near(got.MixVolume.Value*1e6/ft3, 1.32, 1e-6) {
		t.Errorf("mix %.6f ft3, want 1.32", got.MixVolume.Value*1e6/ft3)
	}
	if got.Bags.Value != 3 {
		t.Errorf("%g bags, want 3", got.Bags.Value)
	}
	if !near(got.Water.Value, 7.35, 0.005) || !near(got.Water.Value/3.785411784, 1.941, 0.0005) {
		t.Errorf("%.4f L of water, want 7.35", got.Water.Value)
	}
}

// TestLeastWaste: never less than a quarter of a bag (common practice, no source).
func TestLeastWaste(t *testing.T) {
	m := design.Materials{Mix: bag()}
	for _, tt := range []struct{ need, mix float64 }{ // in bags
		{0, 0}, {0.75, 1}, {1, 1.25}, {2.5, 2.75}, {4, 4.4},
	} {
		got := takeoff.Reckon(design.Design{}, m, slab.Solid{},
			slab.Measures{ConcreteVolume: tt.need * m.Mix.BagYield * 1e6})
		if !near(got.MixVolume.Value, tt.mix*m.Mix.BagYield, tiny) {
			t.Errorf("%g bags' worth: %g bags' worth mixed, want %g", tt.need,
				got.MixVolume.Value/m.Mix.BagYield, tt.mix)
		}
		if got.Bags.Value != math.Ceil(tt.mix) {
			t.Errorf("%g bags' worth: %g bags, want %g", tt.need, got.Bags.Value, math.Ceil(tt.mix))
		}
	}
}

// TestGlassExample: 100 in2 x 0.75 in at 55 % and 2500 kg/m3 is 3.7256 lb of glass
// (EN 572-1 for the density), in place of 0.55 x 75 in3 of mix; the voids are
// 33.75 in3 = 0.55306 L.
func TestGlassExample(t *testing.T) {
	s := slab.Solid{Thickness: 1.5 * in, Beds: []slab.Bed{{Depth: 0.75 * in, Coverage: 0.55}}}
	ms := slab.Measures{
		ConcreteVolume:   300 * in3,
		ConcreteCentroid: [3]float64{0, 0, 0.75 * in},
		Beds:             []slab.BedMeasure{{Area: 100 * in2, Centroid: geom.Vec{X: 50}}},
	}
	m := material.Defaults()
	got := takeoff.Reckon(design.Design{}, m, s, ms)
	if !near(got.GlassMass0.Value/lb, 3.7256, 5e-5) {
		t.Errorf("glass %.5f lb, want 3.7256", got.GlassMass0.Value/lb)
	}
	if !near(75*in3/1e6-got.Displaced.Value, 0.55306, 5e-6) {
		t.Errorf("voids %.6f L, want 0.55306", 75*in3/1e6-got.Displaced.Value)
	}
	if !near(got.GlassMass.Value, 1.1*got.GlassMass0.Value, tiny) {
		t.Errorf("glass to buy %g kg, want a tenth more than %g", got.GlassMass.Value,
			got.GlassMass0.Value)
	}
	glass := 41.25 * in3 / 1e9
	want := (300*in3/1e9-glass)*2400 + glass*2500
	if !near(got.WeightDry.Value, want, tiny) {
		t.Errorf("weight %g kg, want %g", got.WeightDry.Value, want)
	}
	// The glass is 100 kg/m3 heavier than the concrete that it displaces.
	if x := glass * 100 * 50 / want; !near(got.CentreX.Value, x, tiny) {
		t.Errorf("centre at x = %g, want %g", got.CentreX.Value, x)
	}
	if z := 0.75*in + glass*100*(0.375*in)/want; !near(got.CentreZ.Value, z, tiny) {
		t.Errorf("centre at z = %g, want %g", got.CentreZ.Value, z)
	}
}

// TestGrind: what grinding takes is mixed and carried in the form, but neither
// dry weight nor the glass that it grinds off stays.
func TestGrind(t *testing.T) {
	d := design.Design{Finish: design.Finish{Grind: 3 * units.Millimetre}}
	s := slab.Solid{Thickness: 40, Beds: []slab.Bed{{Depth: 8, Coverage: 0.5}}}
	ms := slab.Measures{ConcreteVolume: 40e6, GrindVolume: 3e6,
		Beds: []slab.BedMeasure{{Area: 1e5}}}
	m := material.Defaults()
	got := takeoff.Reckon(d, m, s, ms)
	for _, tt := range []struct {
		what      string
		got, want float64
	}{
		{"form", got.FormDepth.Value, 43},
		{"glass", got.GlassMass0.Value, 0.4 * 2.5},
		{"dry", got.WeightDry.Value, (40-0.25)*2.4 + 0.25*2.5},
		{"wet", got.WeightWet.Value, (43-0.4)*2.5 + 0.4*2.5},
		{"mix", got.MixVolume.Value, (43 - 0.4) * 1.1},
	} {
		if !near(tt.got, tt.want, tiny) {
			t.Errorf("%s: %g, want %g", tt.what, tt.got, tt.want)
		}
	}
}

// TestResinExample: a channel of 7.573631 in3 (0.5 in wide, 40 in long, round
// ends, 3/8 in deep) takes 124.11 mL, 136.52 g at 1.10 g/cm3.
func TestResinExample(t *testing.T) {
	area := 0.5*40 + math.Pi*0.25/4
	s := slab.Solid{Thickness: 38.1, Recesses: []slab.Recess{
		{Depth: 0.375 * in, Fill: design.Fill{Resin: true}}}}
	ms := slab.Measures{ResinVolume: area * 0.375 * in3,
		Channels: []slab.ChannelMeasure{{Area: area * in2, Volume: area * 0.375 * in3}}}
	m := material.Defaults()
	got := takeoff.Reckon(design.Design{}, m, s, ms)
	for _, tt := range []struct {
		what           string
		got, want, tol float64
	}{
		{"volume, in3", got.ResinVolume.Value / in3, 7.573631, 5e-7},
		{"mass, kg", got.ResinMass.Value, 0.13652, 5e-6},
		{"mix, L", got.ResinMix.Value, 0.12411 * 1.1, 1e-5},
		{"part A of 2:1, L", got.ResinA.Value, 0.12411 * 1.1 * 2 / 3, 1e-5},
		{"part B of 2:1, L", got.ResinB.Value, 0.12411 * 1.1 / 3, 1e-5},
		{"pours of 12.7 mm", got.Pours.Value, 1, 0},
		{"weight, kg", got.WeightDry.Value, 0.13652, 5e-6},
	} {
		if !near(tt.got, tt.want, tt.tol) {
			t.Errorf("%s: %g, want %g", tt.what, tt.got, tt.want)
		}
	}
}

// TestCoat: coverage by the paint identity, 1 gal covers 12.83 ft2 at 1/8 in
// without loss (1604.17 ft2 mil / 125 mil).
func TestCoat(t *testing.T) {
	area := 12.8333 * 144 * in2
	s := slab.Solid{Thickness: 38, Recesses: []slab.Recess{{Depth: 6,
		Fill: design.Fill{Resin: true, TopCoat: units.Inch / 8}}}}
	ms := slab.Measures{Channels: []slab.ChannelMeasure{{Area: area, Volume: area * 6}}}
	got := takeoff.Reckon(design.Design{}, material.Defaults(), s, ms)
	if gallons := got.TopCoat.Value / 3.785411784; !near(gallons, 1, 1e-4) {
		t.Errorf("%g gal of top coat, want 1", gallons)
	}
	if got.TopCoat.High != got.TopCoat.Value {
		t.Errorf("no open end, but the coat may need %g L", got.TopCoat.High)
	}
	s.Recesses[0].Open = []slab.OpenEnd{{Width: 120}}
	got = takeoff.Reckon(design.Design{}, material.Defaults(), s, ms)
	if !near(got.TopCoat.High, 1.3*got.TopCoat.Value, tiny) {
		t.Errorf("an open end: the coat may need %g L, want 30 %% more than %g",
			got.TopCoat.High, got.TopCoat.Value)
	}
	want := takeoff.Dam{End: slab.OpenEnd{Width: 120}, Length: 320, Height: 6 + 3.175 + 10}
	if len(got.Dams) != 1 || got.Dams[0] != want {
		t.Errorf("dams %+v, want %+v", got.Dams, want)
	}
}

func TestPours(t *testing.T) {
	tests := []struct {
		depth, most float64
		coat        units.Length
		want        float64
	}{
		{12.7, 12.7, 0, 1}, {12.8, 12.7, 0, 2}, {25.4, 12.7, 0, 2}, {9, 3, 0, 3},
		{9, 3, units.Millimetre, 4}, {0.3, 0.1, 0, 3}, {9, 0, 0, 0}, {0, 3, 0, 0},
	}
	for _, tt := range tests {
		m := material.Defaults()
		m.Resin.MaxPour = tt.most
		s := slab.Solid{Recesses: []slab.Recess{
			{Depth: 0.01, Fill: design.Fill{Resin: true}},
			{Depth: tt.depth, Fill: design.Fill{Resin: true, TopCoat: tt.coat}},
			{Depth: 100}, // stays empty
		}}
		if tt.depth == 0 || tt.most == 0 {
			s.Recesses = s.Recesses[1:]
		}
		ms := slab.Measures{Channels: make([]slab.ChannelMeasure, len(s.Recesses))}
		if got := takeoff.Reckon(design.Design{}, m, s, ms).Pours; got.Value != tt.want {
			t.Errorf("%g mm in pours of %g: %g (%s), want %g", tt.depth, tt.most, got.Value, got.How,
				tt.want)
		}
	}
}

// TestGlassInResin: a share of the space is glass and takes the place of resin.
func TestGlassInResin(t *testing.T) {
	s := slab.Solid{Thickness: 38, Recesses: []slab.Recess{{Depth: 10, Fill: design.Fill{
		Resin: true, Glass: &design.GlassFill{Share: 40 * units.Percent}}}}}
	ms := slab.Measures{ConcreteVolume: 10e6, ConcreteCentroid: [3]float64{100, 0, 19},
		ResinVolume: 1e6,
		Channels:    []slab.ChannelMeasure{{Area: 1e5, Volume: 1e6, Centroid: [3]float64{0, 50, 33}}}}
	got := takeoff.Reckon(design.Design{}, material.Defaults(), s, ms)
	const resin, glass, concrete = 0.6 * 1.1, 0.4 * 2.5, 10 * 2.4
	for _, tt := range []struct {
		what      string
		got, want float64
	}{
		{"resin", got.ResinVolume.Value, 0.6e6},
		{"resin mass", got.ResinMass.Value, resin},
		{"glass", got.GlassFill.Value, glass},
		{"glass to buy", got.GlassMass.Value, glass * 1.1},
		{"glass in beds", got.GlassMass0.Value, 0},
		{"weight", got.WeightDry.Value, resin + glass + concrete},
		{"centre x", got.CentreX.Value, 100 * concrete / (resin + glass + concrete)},
		{"centre y", got.CentreY.Value, 50 * (resin + glass) / (resin + glass + concrete)},
	} {
		if !near(tt.got, tt.want, 1e-6) {
			t.Errorf("%s: %g, want %g", tt.what, tt.got, tt.want)
		}
	}
}

// TestFullSink: a half ellipsoid bowl of semi-axes 8.5 and 7 in, 5 in deep, holds
// 2/3 pi a b c; its range spans a paraboloid and straight sides.
func TestFullSink(t *testing.T) {
	var loop geom.Loop
	for i := range 3600 {
		a := 2 * math.Pi * float64(i) / 3600
		loop = append(loop, geom.Vec{X: 8.5 * in * math.Cos(a), Y: 7 * in * math.Sin(a)})
	}
	sink := design.Sink{ID: "s1", Mount: design.MountUnder, BowlDepth: 5 * units.Inch, BowlMass: 6.5}
	over := design.Sink{ID: "s2", Mount: design.MountOver, BowlDepth: 5 * units.Inch}
	s := slab.Solid{
		Bowls: []slab.Bowl{{Part: "s1", Loop: loop}, {Part: "s2", Loop: append(loop, geom.Vec{Y: -1e6})}},
		Openings: []slab.Opening{
			{Part: "s2", Kind: slab.OpeningSink, Loop: loop},
		},
	}
	ms := slab.Measures{ConcreteVolume: 10e6}
	water := 2.0 / 3 * math.Pi * 8.5 * 7 * 5 * in3 / 1e6
	for _, tt := range []struct {
		name  string
		sinks []design.Sink
		want  float64
	}{
		{"under", []design.Sink{sink}, 24 + 6.5 + water},
		{"over, by its cut-out", []design.Sink{over}, 24 + water},
		{"both", []design.Sink{sink, over}, 24 + 6.5 + 2*water},
		{"none", nil, 24},
	} {
		got := takeoff.Reckon(design.Design{Sinks: tt.sinks}, material.Defaults(), s, ms).WeightFull
		if !near(got.Value, tt.want, 1e-4) {
			t.Errorf("%s: %g kg, want %g (%s)", tt.name, got.Value, tt.want, got.How)
		}
		if tt.sinks != nil && !(got.Low < got.Value && got.Value < got.High) {
			t.Errorf("%s: range %g to %g about %g", tt.name, got.Low, got.High, got.Value)
		}
	}
}

// TestCosts: cents are rounded once for each line, half to even.
func TestCosts(t *testing.T) {
	price := decimal.RequireFromString
	m := material.Defaults()
	m.Mix.BagPrice, m.Resin.LitrePrice, m.Glass.KgPrice = price("13.345"), price("42.125"), price("3.10")
	m.Resin.Waste, m.Glass.Waste = 0, 0
	s := slab.Solid{Thickness: 38,
		Recesses: []slab.Recess{{Depth: 10, Fill: design.Fill{Resin: true}}},
		Beds:     []slab.Bed{{Depth: 10, Coverage: 0.5}}}
	ms := slab.Measures{ConcreteVolume: 12e6,
		Channels: []slab.ChannelMeasure{{Volume: 0.2e6}}, Beds: []slab.BedMeasure{{Area: 1e5}}}
	got := takeoff.Reckon(design.Design{}, m, s, ms)
	want := []struct {
		amount float64
		total  string
	}{
		{2, "26.69"},   // (12 - 0.5) L + a quarter bag 3.5 L = 15 L of 14: 2 x 13.345
		{0.2, "8.42"},  // 0.2 x 42.125 = 8.425, a tie to even
		{1.25, "3.88"}, // 1.25 x 3.10 = 3.875, a tie to even
	}
	sum := decimal.Zero
	for i, c := range got.Costs {
		if c.Amount != want[i].amount || c.Total.StringFixed(2) != want[i].total {
			t.Errorf("%s: %g %s for %s, want %v", c.Label, c.Amount, c.Unit, c.Total, want[i])
		}
		sum = sum.Add(c.Total)
	}
	if len(got.Costs) != 3 || !got.Total.Equal(sum) || !got.Total.Equal(price("38.99")) {
		t.Errorf("total %s of %d lines, want 38.99 of 3", got.Total, len(got.Costs))
	}
	m.Mix.BagPrice = decimal.New(1, math.MaxInt32) // would never be multiplied out
	if got = takeoff.Reckon(design.Design{}, m, s, ms); !got.Costs[0].Total.IsZero() {
		t.Error("an absurd price was reckoned with")
	}
}

// TestRanges: low <= value <= high, and each figure says how and by whom.
func TestRanges(t *testing.T) {
	d := design.Design{
		Finish: design.Finish{Grind: 2 * units.Millimetre},
		Sinks:  []design.Sink{{ID: "s", BowlDepth: units.Inch * 5}},
	}
	s := slab.Solid{Thickness: 38,
		Recesses: []slab.Recess{{Depth: 10, Open: make([]slab.OpenEnd, 1),
			Fill: design.Fill{Resin: true, TopCoat: units.Millimetre,
				Glass: &design.GlassFill{Share: units.Percent * 10}}}},
		Beds: []slab.Bed{{Depth: 10, Coverage: 0.97}}}
	ms := slab.Measures{ConcreteVolume: 38e6, GrindVolume: 2e6,
		Channels: []slab.ChannelMeasure{{Area: 1e4, Volume: 1e5}},
		Beds:     []slab.BedMeasure{{Area: 1e5}}}
	got := takeoff.Reckon(d, material.Defaults(), s, ms)
	keys := map[string]bool{}
	for _, f := range got.Figures() {
		if !(f.Low <= f.Value && f.Value <= f.High) {
			t.Errorf("%s: %g to %g about %g", f.Key, f.Low, f.High, f.Value)
		}
		if f.Key == "" || f.Label == "" || f.Unit == "" || f.How == "" || f.Source == "" {
			t.Errorf("says too little: %+v", f)
		}
		if keys[f.Key] {
			t.Errorf("key %s is there twice", f.Key)
		}
		keys[f.Key] = true
	}
	// The mortar bag's own figures make the concrete as light as 2136 kg/m3.
	low := (38.0 - 1) / 38 * 38e6
	glass := 0.97e6 * 8 / 10
	want := (low - math.Min(1e5*8, glass*1.1)) * 29.9 / 14 / 1e6
	if !near(got.WeightConcrete.Low, want, 1e-6) {
		t.Errorf("concrete at least %g kg, want %g", got.WeightConcrete.Low, want)
	}
	for _, d := range takeoff.Doubts() {
		if d.What == "" || d.Source.String() == "" {
			t.Errorf("a doubt says too little: %+v", d)
		}
	}
}

// TestBadInputs: figures stay finite whatever comes in.
func TestBadInputs(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 0, 1e300, 1e-300} {
		m := design.Materials{
			Mix:   design.Mix{BagMass: x, BagYield: x, BagWater: x, FreshDensity: x, CuredDensity: x, Waste: x},
			Resin: design.Resin{PartsA: x, PartsB: x, Density: x, MaxPour: x, Waste: x},
			Glass: design.GlassStock{Density: x, Waste: x},
		}
		s := slab.Solid{Thickness: x,
			Recesses: []slab.Recess{{Depth: x, Open: []slab.OpenEnd{{Width: x}},
				Fill: design.Fill{Resin: true, TopCoat: 1, Glass: &design.GlassFill{Share: -5}}}, {}},
			Beds: []slab.Bed{{Depth: x, Coverage: x}, {}}}
		ms := slab.Measures{ConcreteVolume: x, GrindVolume: x, ResinVolume: x,
			ConcreteCentroid: [3]float64{x, x, x},
			Channels:         []slab.ChannelMeasure{{Area: x, Volume: x}},
			Beds:             []slab.BedMeasure{{Area: x, Centroid: geom.Vec{X: x}}}}
		d := design.Design{Finish: design.Finish{Grind: -1},
			Sinks: []design.Sink{{BowlMass: x, BowlDepth: -5}}}
		got := takeoff.Reckon(d, m, s, ms)
		for _, f := range got.Figures() {
			for _, v := range []float64{f.Value, f.Low, f.High} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("%g in: %s is %g", x, f.Key, v)
				}
			}
		}
		for _, dam := range got.Dams {
			if !(dam.Length >= 0 && dam.Length < math.MaxFloat64) || !(dam.Height >= 0) {
				t.Errorf("%g in: dam %+v", x, dam)
			}
		}
	}
}

func BenchmarkReckon(b *testing.B) {
	s := slab.Solid{Thickness: 38,
		Recesses: []slab.Recess{{Depth: 10, Fill: design.Fill{Resin: true, TopCoat: 1}}},
		Beds:     []slab.Bed{{Depth: 10, Coverage: 0.5}}}
	ms := slab.Measures{ConcreteVolume: 38e6, GrindVolume: 2e6,
		Channels: []slab.ChannelMeasure{{Area: 1e4, Volume: 1e5}},
		Beds:     []slab.BedMeasure{{Area: 1e5}}}
	m := material.Defaults()
	b.ReportAllocs()
	for b.Loop() {
		takeoff.Reckon(design.Design{}, m, s, ms)
	}
}

package report_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	sheet "example.org/castwright/export/report"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/material"
	"example.org/castwright/model/report"
	"example.org/castwright/model/units"
)

func asJSON(t *testing.T, j design.Job, o design.Option, r report.Report) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := sheet.JSON(&b, j, o, r); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestJSONGolden(t *testing.T) {
	j, o, r := sample(units.Metric)
	golden(t, "report.json", asJSON(t, j, o, r))
}

// TestJSONKeys: the keys that others rely on are there, with values of their kind.
func TestJSONKeys(t *testing.T) {
	j, o, r := sample(units.Imperial)
	var got map[string]any
	if err := json.Unmarshal(asJSON(t, j, o, r), &got); err != nil {
		t.Fatal(err)
	}
	if got["option"] != "A" {
		t.Errorf("option %v, want A", got["option"])
	}
	want := map[string]float64{
		"plan_area_mm2": r.Measures.PlanArea, "net_area_mm2": r.Measures.NetArea,
		"outline_perimeter_mm": r.Measures.OutlinePerimeter,
		"cutout_perimeter_mm":  r.Measures.CutoutPerimeter,
		"concrete_volume_mm3":  r.Measures.ConcreteVolume,
		"resin_volume_mm3":     r.Measures.ResinVolume,
		"glass_area_mm2":       50_000, "glass_mass_kg": 50_000 * 9 * 0.55 * 2500e-9,
		"weight_kg": r.Takeoff.WeightDry.Value, "bags": 3, "thickness_mm": 38.1,
	}
	for key, v := range want {
		if x, ok := got[key].(float64); !ok || math.Abs(x-v) > 1e-9*math.Abs(v) {
			t.Errorf("%s is %v, want %g", key, got[key], v)
		}
	}
	centre, _ := got["centre_of_gravity_mm"].([]any)
	if len(centre) != 3 || fmt.Sprintf("%.6f", centre[2]) != fmt.Sprintf("%.6f", r.Takeoff.CentreZ.Value) {
		t.Errorf("centre of gravity %v", got["centre_of_gravity_mm"])
	}
	warnings, _ := got["warnings"].([]any)
	if len(warnings) != len(r.Warnings) {
		t.Fatalf("%d warnings, want %d", len(warnings), len(r.Warnings))
	}
	for _, key := range []string{"code", "severity", "at_mm", "value", "limit", "unit", "source",
		"advice"} {
		if _, ok := warnings[0].(map[string]any)[key]; !ok {
			t.Errorf("a warning lacks %s", key)
		}
	}
	if w := warnings[1].(map[string]any); w["value"] != nil || w["limit"] != nil {
		t.Errorf("what is no number is %v and %v, want null (RFC 8259 has none)", w["value"], w["limit"])
	}
}

// TestJSONOrder: the same report is the same bytes, and lists are never null.
func TestJSONOrder(t *testing.T) {
	j, o, r := sample(units.Metric)
	if !bytes.Equal(asJSON(t, j, o, r), asJSON(t, j, o, r)) {
		t.Error("two writings differ")
	}
	empty := asJSON(t, design.Job{}, design.Option{}, report.Report{})
	for _, key := range []string{"dams", "lines", "faults", "warnings"} {
		if !strings.Contains(string(empty), `"`+key+`": []`) {
			t.Errorf("%s is not an empty list", key)
		}
	}
}

// TestJSONBadNumbers: whatever the numbers, the text is JSON.
func TestJSONBadNumbers(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64,
		-math.MaxFloat64, math.SmallestNonzeroFloat64, math.Copysign(0, -1), 1e-7, 1e21,
		123456789.123456789} {
		j, o, r := sample(units.Metric)
		r.Measures.PlanArea, r.Measures.NetArea = x, x
		r.Takeoff.WeightDry.Value, r.Takeoff.Pours.High = x, x
		r.Warnings[0].At.X = x
		b := asJSON(t, j, o, r)
		var got struct {
			Area *float64 `json:"plan_area_mm2"`
		}
		if err := json.Unmarshal(b, &got); err != nil {
			t.Fatalf("%g: %v", x, err)
		}
		switch {
		case math.IsNaN(x) || math.IsInf(x, 0):
			if got.Area != nil {
				t.Errorf("%g is written %g, want null", x, *got.Area)
			}
		case got.Area == nil || math.Abs(*got.Area-x) > 1e-9*math.Abs(x) && math.Abs(x) > 1e-300:
			t.Errorf("%g is written otherwise", x)
		}
	}
}

// TestTopExample derives a top of 60 x 22 x 1.5 in with an oval cut-out 17 x 14 in
// and a hole of 1-3/8 in: 1131.5903 in2, 1697.3855 in3 = 27.8152 L (geometry), 66.756
// kg at 2400 kg/m3; the ellipse's perimeter is 48.8087624311 in (Ramanujan 1914, II).
func TestTopExample(t *testing.T) {
	d := design.Design{
		Outline:   edit.Rectangle(60*in, 22*in),
		Thickness: in + in/2,
		Sinks: []design.Sink{{ID: "s", At: design.Point{X: 30 * in, Y: 10 * in},
			Shape: design.Shape{Kind: design.ShapeEllipse, Width: 17 * in, Depth: 14 * in}}},
		Holes: []design.Hole{{ID: "h", At: design.Point{X: 10 * in, Y: 18 * in},
			Diameter: in + in/8*3}},
	}
	m := material.Defaults()
	o := design.Option{Name: "B", Design: d}
	b := asJSON(t, design.Job{Materials: m}, o, report.Derive(d, m, design.Site{}))
	var got map[string]any
	if err := json.Unmarshal(b, &got); err != nil {
		t.Fatal(err)
	}
	const in2, in3 = 25.4 * 25.4, 25.4 * 25.4 * 25.4
	for _, tt := range []struct {
		key       string
		want, tol float64
	}{
		{"plan_area_mm2", 1320 * in2, 1e-6},
		{"net_area_mm2", 1131.5903 * in2, 1131.5903 * in2 * 1e-5},
		{"concrete_volume_mm3", 1697.3855 * in3, 1697.3855 * in3 * 1e-5},
		{"outline_perimeter_mm", 164 * 25.4, 1e-6},
		{"cutout_perimeter_mm", (48.8087624311 + math.Pi*1.375) * 25.4, 1e-3},
		{"weight_kg", 66.756, 1e-3},
	} {
		if x, _ := got[tt.key].(float64); math.Abs(x-tt.want) > tt.tol {
			t.Errorf("%s is %v, want %.4f", tt.key, got[tt.key], tt.want)
		}
	}
}

// TestJSONMoney: money is decimal text, never a binary fraction.
func TestJSONMoney(t *testing.T) {
	j, o, r := sample(units.Metric)
	var got struct {
		Costs struct {
			Lines []struct{ Price, Total string }
			Total string
		}
	}
	if err := json.Unmarshal(asJSON(t, j, o, r), &got); err != nil {
		t.Fatal(err)
	}
	sum := decimal.Zero
	for _, l := range got.Costs.Lines {
		sum = sum.Add(decimal.RequireFromString(l.Total))
	}
	if len(got.Costs.Lines) != 3 || !sum.Equal(decimal.RequireFromString(got.Costs.Total)) {
		t.Errorf("the lines make %s, the total is %s", sum, got.Costs.Total)
	}
	if a, b := got.Costs.Lines[0].Price, got.Costs.Lines[1].Price; a != "18.90" || b != "31.50" {
		t.Errorf("prices %s and %s, want 18.90 and 31.50", a, b)
	}
}

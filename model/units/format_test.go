package units_test

import (
	"testing"

	"example.org/castwright/model/units"
	"pgregory.net/rapid"
)

func TestFormat(t *testing.T) {
	const in, mm = units.Inch, units.Millimetre
	const metric, imperial = units.Metric, units.Imperial
	tests := []struct {
		got, want string
	}{
		{units.Format(25*in+in/2, imperial), `25 1/2"`},
		{units.Format(25*in+in/64, imperial), `25 1/64"`},
		{units.Format(3*in/4, imperial), `3/4"`},
		{units.Format(-(in + in/8), imperial), `-1 1/8"`},
		{units.Format(0, imperial), `0"`},
		{units.Format(650*mm, imperial), `25 9/16"`}, // 25.5906 in
		{units.Format(25*in+in/2, metric), "647.7 mm"},
		{units.Format(in/64, metric), "0.4 mm"},
		{units.Format(mm/20, metric), "0 mm"},     // 0.05, a tie, goes to even
		{units.Format(3*mm/20, metric), "0.2 mm"}, // 0.15
		{units.FormatStep(650*mm, imperial, in), `26"`},
		{units.FormatStep(652*mm, metric, 5*mm), "650 mm"},
		{units.FormatStep(652*mm, metric, 0), "652 mm"},
		{units.FormatExact(650*mm, imperial), "650 mm"},
		{units.FormatExact(198_437, imperial), `0.00781248"`},
		{units.FormatExact(in/3, imperial), `0.3333333"`}, // 8.466666 mm
		{units.FormatExact(1, metric), "0.000001 mm"},
	}
	for i, tt := range tests {
		if tt.got != tt.want {
			t.Errorf("row %d: got %s, want %s", i, tt.got, tt.want)
		}
	}
}

// lengths draws lengths of all sizes, and often such as people use.
func lengths() *rapid.Generator[units.Length] {
	most := int64(units.MaxLength)
	return rapid.OneOf(
		rapid.Map(rapid.Int64Range(-most, most), func(n int64) units.Length {
			return units.Length(n)
		}),
		rapid.Map(rapid.Int64Range(-20_000_000, 20_000_000), func(n int64) units.Length {
			return units.Length(n)
		}),
		rapid.Map(rapid.Int64Range(-251_000, 251_000), func(n int64) units.Length {
			return units.Length(n) * units.Inch / 64
		}),
		rapid.Map(rapid.Int64Range(-1_000_000, 1_000_000), func(n int64) units.Length {
			return units.Length(n) * units.Millimetre / 10
		}),
	)
}

func TestFormatExactIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := lengths().Draw(t, "length")
		for _, sys := range []units.System{units.Metric, units.Imperial} {
			text := units.FormatExact(l, sys)
			for _, reader := range []units.System{units.Metric, units.Imperial} {
				back, err := units.Parse(text, reader)
				if err != nil || back != l {
					t.Fatalf("%d is written %s, which reads as %d, %v", l, text, back, err)
				}
			}
		}
	})
}

func TestFormatIsNear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := lengths().Draw(t, "length")
		steps := map[units.System]units.Length{
			units.Metric: units.MetricStep, units.Imperial: units.ImperialStep,
		}
		for sys, step := range steps {
			text := units.Format(l, sys)
			back, err := units.Parse(text, sys)
			if l.Abs() < units.MaxLength-step && err != nil {
				t.Fatal(err)
			}
			if err == nil && (back-l).Abs() > step/2 {
				t.Fatalf("%d is shown as %s", l, text)
			}
		}
	})
}

// TestInchAndMetricAgree types the same length in inches and in millimetres:
// 64ths of an inch have at most six decimals in millimetres, 25.4/64 = 0.396875.
func TestInchAndMetricAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := units.Length(rapid.Int64Range(-251_000, 251_000).Draw(t, "64ths")) * units.Inch / 64
		imperial, err1 := units.Parse(units.FormatExact(l, units.Imperial), units.Imperial)
		metric, err2 := units.Parse(units.FormatExact(l, units.Metric), units.Metric)
		if err1 != nil || err2 != nil || imperial != metric {
			t.Fatalf("%v, %v, %v, %v", imperial, metric, err1, err2)
		}
	})
}

func TestDecimalIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := lengths().Draw(t, "length")
		back, err := units.ParseDecimalMM(units.DecimalMM(l))
		if err != nil || back != l {
			t.Fatalf("%d is written %s, which reads as %d, %v", l, units.DecimalMM(l), back, err)
		}
		a := units.Angle(rapid.Int64Range(-360_000e6, 360_000e6).Draw(t, "angle"))
		if got, err := units.ParseDecimalDegrees(units.DecimalDegrees(a)); err != nil || got != a {
			t.Fatalf("%d: %d, %v", a, got, err)
		}
		f := units.Share(rapid.Int64Range(-1e9, 1e9).Draw(t, "share"))
		if got, err := units.ParseDecimalFraction(units.DecimalFraction(f)); err != nil || got != f {
			t.Fatalf("%d: %d, %v", f, got, err)
		}
	})
}

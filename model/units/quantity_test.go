package units_test

import (
	"errors"
	"math"
	"testing"

	"example.org/castwright/model/units"
	"pgregory.net/rapid"
)

func TestParseAngle(t *testing.T) {
	good := map[string]units.Angle{
		"22.5": 22_500_000, "22,5°": 22_500_000, "90/4": 22_500_000, "-45 deg": -45_000_000,
		"180 - 2*30": 120_000_000, "100/3": 33_333_333, "22-1/2": 21_500_000, "22 1/2": 22_500_000,
		"360000": 360_000_000_000,
	}
	for text, want := range good {
		if got, err := units.ParseAngle(text); err != nil || got != want {
			t.Errorf("ParseAngle(%q) = %d, %v; want %d", text, got, err, want)
		}
	}
	for _, text := range []string{"", "22 mm", "30\"", "2°*3°", "360001", "NaN"} {
		var bad *units.ParseError
		if got, err := units.ParseAngle(text); !errors.As(err, &bad) {
			t.Errorf("ParseAngle(%q) = %d, %v; want an error", text, got, err)
		}
	}
}

func TestParseShare(t *testing.T) {
	good := map[string]units.Share{
		"55": 55 * units.Percent, "55 %": 55 * units.Percent, "5/8*100": 625_000, "0": 0,
		"100/3 %": 333_333, "55,5%": 555_000,
	}
	for text, want := range good {
		if got, err := units.ParseShare(text); err != nil || got != want {
			t.Errorf("ParseShare(%q) = %d, %v; want %d", text, got, err, want)
		}
	}
	if got, err := units.ParseShare("55 mm"); err == nil {
		t.Errorf("55 mm is a share of %d", got)
	}
}

// TestParseMass: NIST SP 811, pound 0.45359237 kg and ounce 28.349523125 g.
func TestParseMass(t *testing.T) {
	tests := []struct {
		text string
		sys  units.System
		want float64
	}{
		{"7", units.Metric, 7}, {"7", units.Imperial, 7 * 0.45359237},
		{"7.5 kg", units.Imperial, 7.5}, {"750 g", units.Metric, 0.75},
		{"15 1/2 lb", units.Metric, 15.5 * 0.45359237}, {"15-1/2 lb", units.Metric, 15.5 * 0.45359237},
		{"1 oz", units.Metric, 0.028349523125}, {"5 lb 3 oz", units.Metric, 5.1875 * 0.45359237},
	}
	for _, tt := range tests {
		got, err := units.ParseMass(tt.text, tt.sys)
		if err != nil || math.Abs(got-tt.want) > 1e-12 {
			t.Errorf("ParseMass(%q, %v) = %.12g, %v; want %.12g", tt.text, tt.sys, got, err, tt.want)
		}
	}
	for _, text := range []string{"7 mm", "3 oz 5 lb", "100001 kg", "5 kg 3 lb"} {
		if got, err := units.ParseMass(text, units.Metric); err == nil {
			t.Errorf("ParseMass(%q) = %g, want an error", text, got)
		}
	}
}

func TestAngleAndShareAreReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := units.Angle(rapid.Int64Range(-360_000e6, 360_000e6).Draw(t, "angle"))
		if got, err := units.ParseAngle(units.FormatAngle(a)); err != nil || got != a {
			t.Fatalf("%s: %d, %v", units.FormatAngle(a), got, err)
		}
		f := units.Share(rapid.Int64Range(-1e9, 1e9).Draw(t, "share"))
		if got, err := units.ParseShare(units.FormatShare(f)); err != nil || got != f {
			t.Fatalf("%s: %d, %v", units.FormatShare(f), got, err)
		}
	})
}

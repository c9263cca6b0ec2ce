package units_test

import (
	"strings"
	"testing"

	"example.org/castwright/model/units"
)

func TestDecimalMM(t *testing.T) {
	tests := map[units.Length]string{
		0: "0", 1: "0.000001", -1: "-0.000001", 38_100_000: "38.1", -650_000_000: "-650",
		units.MaxLength: "100000", units.Inch / 64: "0.396875",
	}
	for l, want := range tests {
		if got := units.DecimalMM(l); got != want {
			t.Errorf("DecimalMM(%d) = %s, want %s", l, got, want)
		}
	}
}

func TestParseDecimalMM(t *testing.T) {
	good := map[string]units.Length{
		"38.1": 38_100_000, "-0": 0, "0.000001": 1, "38.1000000": 38_100_000, "3.81e1": 38_100_000,
		"381E-1": 38_100_000, "1e+5": units.MaxLength, "0e99": 0, "0.0000000000000": 0,
		"100000.000000": units.MaxLength, "-100000": -units.MaxLength, "10000000e-6": 10_000_000,
	}
	for text, want := range good {
		if got, err := units.ParseDecimalMM(text); err != nil || got != want {
			t.Errorf("ParseDecimalMM(%q) = %d, %v; want %d", text, got, err, want)
		}
	}
	bad := map[string]string{ // and what the error has to say
		"38.1234567": "more than 6 decimals", "1e-7": "more than 6 decimals",
		"100000.000001": "at most 100000 mm", "1e6": "out of range", "1e99": "out of range",
		"1e1000000": "exponent", "1e-999999999999": "exponent", "-1e100": "exponent",
		strings.Repeat("9", 100): "characters",
		"":                       "not a number", "-": "not a number", ".5": "not a number",
		"5.": "not a number",
		"+5": "not a number", "0x10": "not a number", "1_000": "not a number", "01": "not a number",
		"NaN": "not a number", "Infinity": "not a number", "1e": "not a number", "1e+-2": "not a number",
		"1,5": "not a number", "5 ": "not a number", "٣": "not a number", "1e5.0": "not a number",
	}
	for text, want := range bad {
		if got, err := units.ParseDecimalMM(text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("ParseDecimalMM(%q) = %d, %v; want an error that says %q", text, got, err, want)
		}
	}
}

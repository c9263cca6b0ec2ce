package units_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.org/castwright/model/units"
	"pgregory.net/rapid"
)

func TestParse(t *testing.T) {
	const in, mm = units.Inch, units.Millimetre
	half := 25*in + in/2
	tests := []struct {
		text string
		sys  units.System
		want units.Length
	}{
		{`25 1/2"`, units.Metric, half},
		{`25-1/2`, units.Imperial, half},
		{`25-1/2`, units.Metric, 24*mm + mm/2},
		{`25 1/2 in`, units.Metric, half},
		{`25-1/2 in.`, units.Metric, half},
		{`25-1/2"`, units.Metric, half},
		{`25 - 1/2`, units.Imperial, 24*in + in/2},
		{`25−1/2`, units.Imperial, 24*in + in/2},
		{`2' 1-1/2`, units.Metric, half},
		{`2' 1-1/2`, units.Imperial, half},
		{`2' 1 1/2"`, units.Metric, half},
		{`2'-1 1/2"`, units.Metric, half},
		{`2'-1-1/2"`, units.Metric, half},
		{`2' - 3"`, units.Metric, 21 * in},
		{`2'-3`, units.Metric, 27 * in},
		{`2′ 1½″`, units.Metric, half},
		{`2’ 1 1⁄2”`, units.Metric, half},
		{`2ft 3in`, units.Metric, 27 * in},
		{`2FT3`, units.Metric, 27 * in},
		{`64.8 cm`, units.Imperial, 648 * mm},
		{`64,8 cm`, units.Imperial, 648 * mm},
		{`650`, units.Metric, 650 * mm},
		{`650mm`, units.Imperial, 650 * mm},
		{`0.65 m`, units.Imperial, 650 * mm},
		{`1 m 20 cm`, units.Imperial, 1200 * mm},
		{`1/16`, units.Imperial, in / 16},
		{`⅜`, units.Imperial, in / 8 * 3},
		{`25⅜`, units.Imperial, 25*in + in/8*3},
		{`25 ⅜`, units.Imperial, 25*in + in/8*3},
		{`25-⅜`, units.Imperial, 25*in + in/8*3},
		{`60 - 2*3/4`, units.Imperial, 58*in + in/2},
		{`60 - 2*3/4"`, units.Imperial, 58*in + in/2},
		{`(60 - 1/2)/2`, units.Imperial, 29*in + in/4*3},
		{`(60 - 1/2) in / 2`, units.Metric, 29*in + in/4*3},
		{`31 1/2" - 10mm`, units.Metric, 31*in + in/2 - 10*mm},
		{`31 1/2 - 10mm`, units.Imperial, 31*in + in/2 - 10*mm},
		{`-3/8`, units.Imperial, -in / 8 * 3},
		{`--1`, units.Metric, mm},
		{`−1`, units.Metric, -mm},
		{`10'-1/2"`, units.Metric, 120*in + in/2},
		{`.5`, units.Metric, mm / 2},
		{`1/3`, units.Imperial, 8_466_667},
		{`0.0000005`, units.Metric, 0},
		{`0.0000015`, units.Metric, 2},
		{`0,125`, units.Imperial, in / 8},
		{`100 m`, units.Metric, units.MaxLength},
		{`3 × 25.4`, units.Metric, 3 * in},
	}
	for _, tt := range tests {
		got, err := units.Parse(tt.text, tt.sys)
		if err != nil || got != tt.want {
			t.Errorf("Parse(%q, %v) = %d, %v; want %d", tt.text, tt.sys, got, err, tt.want)
		}
	}
}

// TestParseErrorOfNothing: where nothing was typed no character is at fault.
func TestParseErrorOfNothing(t *testing.T) {
	_, err := units.Parse(" ", units.Metric)
	if err == nil || err.Error() != "nothing is written: type for example 647.7 or 25 1/2\"" {
		t.Errorf("error %v", err)
	}
}

// TestParseError checks that an error says what is wrong, at which character, and
// gives an example.
func TestParseError(t *testing.T) {
	tests := []struct {
		text string
		sys  units.System
		at   int
		what string
	}{
		{"", units.Metric, 1, "nothing is written"},
		{"  \t", units.Metric, 1, "nothing is written"},
		{"650 mmm", units.Metric, 5, "not a unit"},
		{"1e1000000", units.Metric, 2, "not a unit"},
		{"0x10", units.Metric, 2, "write * for times"},
		{"1_000", units.Metric, 2, "can't be read"},
		{"1,250", units.Metric, 1, "could be 1.250 or 1250"},
		{"1,250.5", units.Metric, 6, "two decimal points"},
		{"1.250,5", units.Metric, 6, "two decimal points"},
		{"25 3/2", units.Imperial, 4, "less than one"},
		{"25 1/", units.Imperial, 6, "lacks its lower number"},
		{"25 1/0", units.Imperial, 6, "can't be zero"},
		{"4 / 0", units.Imperial, 3, "divides by zero"},
		{"4 / (1 - 1)", units.Imperial, 3, "divides by zero"},
		{"3 / 4\"", units.Imperial, 3, "divides by a length"},
		{"3\" * 4\"", units.Imperial, 4, "is no length"},
		{"60 -", units.Imperial, 5, "missing at the end"},
		{"60 * / 2", units.Imperial, 6, "missing before /"},
		{"(60 - 2", units.Imperial, 1, "never closed"},
		{"60 - 2)", units.Imperial, 7, "never opened"},
		{"mm", units.Metric, 1, "without a number"},
		{"12 12", units.Metric, 4, "a sign is missing"},
		{"2(3)", units.Metric, 2, "a sign is missing"},
		{"25\" 1/2", units.Imperial, 5, "a sign is missing"},
		{"10'-6mm", units.Imperial, 5, "can't follow"},
		{"(25 mm) mm", units.Metric, 9, "has a unit already"},
		{"100.000001 m", units.Metric, 1, "more than 100 m"},
		{"-100001", units.Metric, 1, "more than"},
		{strings.Repeat("9", 31), units.Metric, 1, "more than 30 digits"},
		{strings.Repeat("(", 100) + "1", units.Metric, 25, "nested"},
		{strings.Repeat("-", 100) + "1", units.Metric, 25, "nested"},
		{strings.Repeat("1", 201), units.Metric, 201, "longer than 200"},
		{"6\xff5", units.Metric, 1, "readable"},
		{"NaN", units.Metric, 1, "not a unit"},
		{"∞", units.Metric, 1, "can't be read"},
		{"64.8 см", units.Metric, 6, "not a unit"}, // Cyrillic letters
	}
	for _, tt := range tests {
		l, err := units.Parse(tt.text, tt.sys)
		var bad *units.ParseError
		if !errors.As(err, &bad) {
			t.Errorf("Parse(%q) = %d, %v; want an error", tt.text, l, err)
			continue
		}
		if bad.At != tt.at || !strings.Contains(bad.What, tt.what) {
			t.Errorf("Parse(%q): %v; want %q at %d", tt.text, err, tt.what, tt.at)
		}
		if _, err := units.Parse(strings.Split(bad.Example, " or ")[0], tt.sys); err != nil {
			t.Errorf("the example of %q is wrong itself: %v", tt.text, err)
		}
	}
}

// TestParseSums checks arithmetic against the same in integers of 64ths.
func TestParseSums(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Int64Range(0, 6400).Draw(t, "a")
		b := rapid.Int64Range(1, 63).Draw(t, "b")
		c := rapid.Int64Range(1, 20).Draw(t, "c")
		text := fmt.Sprintf("(%d/64 - %d/64) * %d", a, b, c)
		got, err := units.Parse(text, units.Imperial)
		if want := units.Length((a-b)*c) * units.Inch / 64; err != nil || got != want {
			t.Fatalf("%s = %d, %v; want %d", text, got, err, want)
		}
	})
}

// FuzzParse looks for panics, results out of range, errors without a place, and
// results that are not written back.
func FuzzParse(f *testing.F) {
	for _, s := range []string{`25 1/2"`, `2' 1-1/2`, "64.8 cm", "650", "60 - 2*3/4", "(1/3)/7 m",
		"1e1000000", "9/0", "½′ ⅟2", "- - -", "((((", "1,250", `31 1/2" - 10mm`, "\x00\xff"} {
		f.Add(s, false)
		f.Add(s, true)
	}
	f.Fuzz(func(t *testing.T, s string, imperial bool) {
		sys := units.Metric
		if imperial {
			sys = units.Imperial
		}
		l, err := units.Parse(s, sys)
		if err != nil {
			var bad *units.ParseError
			if !errors.As(err, &bad) || bad.At < 1 || bad.At > len(s)+2 || bad.What == "" {
				t.Fatalf("Parse(%q): error without a place: %v", s, err)
			}
			if len(err.Error()) > 600 {
				t.Fatalf("Parse(%q): an error of %d bytes", s, len(err.Error()))
			}
			return
		}
		if l.Abs() > units.MaxLength {
			t.Fatalf("Parse(%q) = %d is out of range", s, l)
		}
		if back, err := units.Parse(units.FormatExact(l, sys), sys); err != nil || back != l {
			t.Fatalf("Parse(%q) = %d is written back as %d, %v", s, l, back, err)
		}
	})
}

func BenchmarkParse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := units.Parse(`(60 - 1/2)/2 - 10mm`, units.Imperial); err != nil {
			b.Fatal(err)
		}
	}
}

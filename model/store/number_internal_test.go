package store

import (
	"math"
	"math/big"
	"testing"

	"example.org/castwright/model/units"
	"pgregory.net/rapid"
)

func TestFixed(t *testing.T) {
	for _, c := range []struct {
		in     int64
		places int
		want   string
	}{
		{0, 6, "0"}, {1, 6, "0.000001"}, {-1, 6, "-0.000001"}, {38_100_000, 6, "38.1"},
		{1_000_000, 6, "1"}, {int64(units.Inch / 64), 6, "0.396875"}, // 1/64 in, NIST SP 811 App. B.8
		{-650_000_000, 6, "-650"}, {500_000, 4, "50"}, {math.MinInt64, 6, "-9223372036854.775808"},
	} {
		if got := fixed(c.in, c.places); got != c.want {
			t.Errorf("fixed(%d, %d) = %q, want %q", c.in, c.places, got, c.want)
		}
	}
}

func TestParseFixed(t *testing.T) {
	const bound = int64(units.MaxLength)
	for _, c := range []struct {
		in   string
		want int64
	}{
		{"38.1", 38_100_000}, {"0.396875", 396_875}, {"-0", 0}, {"-1e-6", -1}, {"1E2", 100_000_000},
		{"0.0000005", 0}, {"0.0000015", 2}, {"0.00000051", 1}, {"-0.0000025", -2}, {"0.0000004999", 0},
		{"2.54e+1", 25_400_000}, {"100000", bound}, {"1e-300", 0}, {"0e300", 0}, {"123.4567894999999", 123_456_789},
	} {
		if got, err := parseFixed(c.in, 6, bound); err != nil || got != c.want {
			t.Errorf("parseFixed(%q) = %d, %v, want %d", c.in, got, err, c.want)
		}
	}
	for _, in := range []string{"100000.000001", "-100001", "1e300", "99999999999999999999", "1e18"} {
		if got, err := parseFixed(in, 6, bound); err == nil {
			t.Errorf("parseFixed(%q) = %d, want an error", in, got)
		}
	}
}

// parseFixed agrees with exact rational arithmetic, and undoes fixed.
func TestParseFixedAgainstRationals(t *testing.T) {
	const bound = int64(units.MaxLength)
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`-?(0|[1-9][0-9]{0,7})(\.[0-9]{1,20})?([eE][+-]?[0-9]{1,2})?`).Draw(t, "number")
		exact, ok := new(big.Rat).SetString(text)
		if !ok {
			t.Fatal(text)
		}
		exact.Mul(exact, big.NewRat(1_000_000, 1))
		got, err := parseFixed(text, 6, bound)
		off := new(big.Rat).Sub(exact, new(big.Rat).SetInt64(got))
		switch half := big.NewRat(1, 2); {
		case err != nil:
			if exact.Abs(exact).Cmp(new(big.Rat).SetInt64(bound)) <= 0 {
				t.Fatalf("%s: %v", text, err)
			}
		case off.Abs(off).Cmp(half) > 0, off.Cmp(half) == 0 && got%2 != 0:
			t.Fatalf("parseFixed(%s) = %d, exactly %s", text, got, exact.FloatString(3))
		default:
			if again, err := parseFixed(fixed(got, 6), 6, bound); err != nil || again != got {
				t.Fatalf("%d is written as %s and read as %d, %v", got, fixed(got, 6), again, err)
			}
		}
	})
}

func TestFloat(t *testing.T) {
	for _, c := range []struct {
		in    float64
		shift int
		want  string
	}{
		{0, 0, "0"}, {25, 0, "25"}, {13.9, 0, "13.9"}, {0.1, 2, "10"}, {0.07, 2, "7"}, {0.125, 2, "12.5"},
		{2400, 0, "2400"}, {1e15, 0, "1000000000000000"}, {1e16, 0, "1e16"}, {-0.000001, 0, "-0.000001"},
		{1.5e-9, 0, "1.5e-9"}, {1e-320, 2, "1e-318"}, {1.25e30, 2, "1.25e32"},
	} {
		got, ok := float(c.in, c.shift)
		if !ok || got != c.want {
			t.Errorf("float(%g, %d) = %q, want %q", c.in, c.shift, got, c.want)
		}
	}
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got, ok := float(x, 0); ok {
			t.Errorf("float(%g) = %q, want a refusal", x, got)
		}
	}
}

// What float writes, parseFloat reads back bit for bit, and any float is a
// number that JSON knows.
func TestFloatRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := math.Float64frombits(rapid.Uint64().Draw(t, "bits"))
		shift := rapid.SampledFrom([]int{0, 2}).Draw(t, "shift")
		text, ok := float(x, shift)
		if !ok || math.Abs(x) > 1e300 {
			return
		}
		got, err := parseFloat(text, -shift)
		if err != nil || got != x {
			t.Fatalf("%g is written as %s and read as %g, %v", x, text, got, err)
		}
		if _, fail := parse([]byte(text)); fail != nil && math.Abs(x) > 1e-300 {
			t.Fatalf("%s: %v", text, fail)
		}
	})
}

// RFC 6901, section 5: the examples of escaped names.
func TestPlacesEscapeAsPointersDo(t *testing.T) {
	for in, want := range map[string]string{"a/b": "a~1b", "m~n": "m~0n", "": "", "c%d": "c%d", " ": " ", "~1": "~01"} {
		if got := escape(in); got != want || unescape(got) != in {
			t.Errorf("escape(%q) = %q and back %q, want %q", in, got, unescape(got), want)
		}
	}
}

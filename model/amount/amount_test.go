package amount

import (
	"testing"

	"example.org/castwright/model/takeoff"
	"example.org/castwright/model/units"
	"github.com/shopspring/decimal"
)

// What a value is in the other system is from NIST SP 811, appendix B: an inch is
// 25.4 mm, a pound 0.453 592 37 kg; how it is written is ours.
func TestOf(t *testing.T) {
	for _, c := range []struct {
		x    float64
		unit string
		sys  units.System
		want string
	}{
		{650, "mm", units.Metric, "650 mm"},
		{647.7, "mm", units.Imperial, `25 1/2"`},
		{45.359237, "kg", units.Imperial, "100.0 lb"},
		{1, "bag", units.Metric, "1 bag"},
		{4, "bag", units.Imperial, "4 bags"},
		{0, "pour", units.Metric, "0 pours"},
		{3, "count", units.Metric, "3"},
		{0.123456, "m/s", units.Metric, "0.123 m/s"},
	} {
		if got := Of(c.x, c.unit, c.sys); got != c.want {
			t.Errorf("Of(%v, %q) = %q, want %q", c.x, c.unit, got, c.want)
		}
	}
}

func TestMoney(t *testing.T) {
	for _, c := range []struct{ currency, amount, want string }{
		{"€", "16.8", "€16.80"},
		{"EUR", "16.8", "EUR 16.80"},
		{"", "-3", "-3.00"},
		{"$", "0.125", "$0.125"},
	} {
		if got := Money(c.currency, decimal.RequireFromString(c.amount)); got != c.want {
			t.Errorf("Money(%q, %s) = %q, want %q", c.currency, c.amount, got, c.want)
		}
	}
}

func TestRange(t *testing.T) {
	f := takeoff.Figure{Unit: "kg", Value: 10, Low: 9, High: 12}
	if got, want := Range(f, units.Metric), "9.00 kg to 12.0 kg"; got != want {
		t.Errorf("Range = %q, want %q", got, want)
	}
	f.Low, f.High = 10, 10
	if got := Range(f, units.Metric); got != "" {
		t.Errorf("Range of an exact figure = %q", got)
	}
}

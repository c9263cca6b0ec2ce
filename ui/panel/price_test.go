package panel_test

import (
	"testing"

	"example.org/castwright/ui/panel"
)

func TestReadPrice(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"14.50", "14.5"}, {" 1450,00 ", "1450"}, {"", "0"}, {"0", "0"},
		{"1e9", ""}, {"-1", ""}, {"1.0000001", ""}, {"10000000000", ""}, {"one", ""}, {"1,2,3", ""},
	} {
		got, err := panel.ReadPrice(c.in, "Price")
		if (err != nil) != (c.want == "") || err == nil && got.String() != c.want {
			t.Errorf("%q: %v, %v; want %q", c.in, got, err, c.want)
		}
	}
}

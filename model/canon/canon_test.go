package canon

import (
	"math"
	"strings"
	"testing"
)

// The texts of RFC 8785, sections 3.2.2 and 3.2.3, from memory.
func TestJSON(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{
			"3.2.2",
			`{"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
			  "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/", "literals": [null, true, false]}`,
			`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],` +
				`"string":"€$\u000f\nA'B\"\\\\\"/"}`,
		},
		{
			"3.2.3",
			`{"\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh",
			  "1": "One", "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control",
			  "\u00f6": "Latin Small Letter O With Diaeresis"}`,
			"{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\",\"ö\":\"Latin Small Letter O With Diaeresis\"," +
				"\"€\":\"Euro Sign\",\"😀\":\"Emoji: Grinning Face\",\"\ufb33\":\"Hebrew Letter Dalet With Dagesh\"}",
		},
		{"white space", " [ 1 , { } , [ ] ] ", `[1,{},[]]`},
	} {
		got, err := JSON([]byte(c.in))
		if err != nil || string(got) != c.want {
			t.Errorf("%s: %v\n got %s\nwant %s", c.name, err, got, c.want)
		}
	}
}

// Number samples of RFC 8785, appendix B, from memory: IEEE 754 bits and text.
func TestNumber(t *testing.T) {
	for _, c := range []struct {
		bits uint64
		want string
	}{
		{0x0000000000000000, "0"},
		{0x8000000000000000, "0"},
		{0x0000000000000001, "5e-324"},
		{0x8000000000000001, "-5e-324"},
		{0x7fefffffffffffff, "1.7976931348623157e+308"},
		{0x4340000000000000, "9007199254740992"},
		{0x4430000000000000, "295147905179352830000"},
		{0x44b52d02c7e14af5, "9.999999999999997e+22"},
		{0x44b52d02c7e14af6, "1e+23"},
		{0x444b1ae4d6e2ef4e, "999999999999999700000"},
		{0x444b1ae4d6e2ef50, "1e+21"},
		{0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7"},
		{0x3eb0c6f7a0b5ed8d, "0.000001"},
		{0x41b3de4355555553, "333333333.3333332"},
		{0xbecbf647612f3696, "-0.0000033333333333333333"},
		{0x43143ff3c1cb0959, "1424953923781206.2"},
	} {
		got, err := number(nil, math.Float64frombits(c.bits))
		if err != nil || string(got) != c.want {
			t.Errorf("%016x: %s, %v; want %s", c.bits, got, err, c.want)
		}
	}
	for _, x := range []float64{math.NaN(), math.Inf(1)} {
		if _, err := number(nil, x); err == nil {
			t.Errorf("%v has no canonical form, but was written", x)
		}
	}
}

func TestRefused(t *testing.T) {
	for _, in := range []string{"", "{", `{"a":1} 2`, "1e999", "\"\xff\"", strings.Repeat("[", 5000) + strings.Repeat("]", 5000)} {
		if got, err := JSON([]byte(in)); err == nil {
			t.Errorf("%.20q was written as %.20q", in, got)
		}
	}
}

// The canonical form of a canonical form is itself.
func FuzzJSON(f *testing.F) {
	for _, s := range []string{`{"a":[1,2.50,"\u00e9"]}`, `-0`, `"\ud800"`, `[1e-7,1e21]`} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		one, err := JSON([]byte(s))
		if err != nil {
			return
		}
		two, err := JSON(one)
		if err != nil || string(one) != string(two) {
			t.Fatalf("%q became %q and then %q, %v", s, one, two, err)
		}
	})
}

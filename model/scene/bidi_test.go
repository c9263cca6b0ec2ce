package scene

import (
	"encoding/json"
	"os"
	"strings"
	"testing"
)

// standIn is a line of the standard's examples, where capitals stand for letters from
// right to left: Hebrew ones here.
func standIn(line string) []rune {
	return []rune(strings.Map(func(r rune) rune {
		if r >= 'A' && r <= 'Z' {
			return 0x05d0 + r - 'A'
		}
		return r
	}, line))
}

// The examples of Unicode Standard Annex 9, sections 3.3 to 3.5: those of the rules that
// say how a line is seen, and those of N0 for brackets.
func TestStandardExamples(t *testing.T) {
	for _, tt := range []struct {
		rule     string
		base     uint8
		in, want string
	}{
		{"L2", 0, "car means CAR.", "car means RAC."},
		{"L2", 1, "car MEANS CAR.", ".RAC SNAEM car"},
		{"N0, first example", 1, "AB(CD[&ef]!)gh", "gh(![ef&]DC)BA"},
		{"N0, second example", 1, "smith (fabrikam ARABIC) HEBREW", "WERBEH (CIBARA fabrikam) smith"},
		{"N0, third example", 1, "ARABIC book(s)", "book(s) CIBARA"},
		// From the rules, worked out by hand.
		{"N0 b, numbers count as right to left", 0, "AB(12)", "(12)BA"},
		{"N0 b, before it left to right", 0, "ab (AB) cd", "ab (BA) cd"},
		{"N0 c 1", 0, "AB (AB) cd", "(BA) BA cd"},
		{"N0 c, an empty pair", 0, "ab () AB", "ab () BA"},
		{"N0 d, not paired", 0, "AB (CD", "DC) BA"},
		{"W2, W7", 0, "AB 12, ab 34", "12 BA, ab 34"},
		{"W4", 0, "AB 1,234.5", "1,234.5 BA"},
		{"W5", 0, "AB 20%, AB €30", "€30 BA ,20% BA"},
		{"W6", 0, "AB 7-CD", "DC-7 BA"},
		{"L1", 1, "ab AB  ", "  BA ab"},
		{"L4", 0, "AB <CD> EF", "FE <DC> BA"},
		{"L4", 0, "AB «CD» EF", "FE «DC» BA"},
		{"L4, not left to right", 0, "ab <cd> AB", "ab <cd> BA"},
	} {
		want := tt.want
		if got := string(ordered(standIn(tt.in), tt.base)); got != string(standIn(want)) {
			t.Errorf("%s: %q is seen as %q, want %q", tt.rule, tt.in, got, string(standIn(want)))
		}
	}
}

// Random lines are seen as ICU and FriBidi have them seen (testdata/bidi/make.py): rules W1 to L4, at
// both base levels.
func TestAgainstOthers(t *testing.T) {
	data, err := os.ReadFile("../../testdata/bidi/cases.json")
	if err != nil {
		t.Fatal(err)
	}
	var cases []struct {
		Base       uint8
		Text, Seen string
	}
	if err := json.Unmarshal(data, &cases); err != nil || len(cases) < 500 {
		t.Fatalf("%d cases, %v", len(cases), err)
	}
	bad := 0
	for _, c := range cases {
		if got := string(ordered([]rune(c.Text), c.Base)); got != c.Seen {
			if bad++; bad < 10 {
				t.Errorf("base %d: %+q is seen as\n%+q, want\n%+q", c.Base, c.Text, got, c.Seen)
			}
		}
	}
	if bad > 0 {
		t.Errorf("%d of %d lines", bad, len(cases))
	}
}

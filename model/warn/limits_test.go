package warn_test

import (
	"math"
	"strings"
	"testing"

	"example.org/castwright/model/warn"
)

func TestLimits(t *testing.T) {
	rows := warn.Limits()
	seen := map[string]bool{}
	for _, l := range rows {
		name := string(l.Code) + ": " + l.What
		if seen[name] {
			t.Errorf("%s stands twice", name)
		}
		seen[name] = true
		if l.Code == "" || l.What == "" || l.String() == "" || len(l.Steps) == 0 {
			t.Errorf("%s: the row lacks something: %+v", name, l)
		}
		if strings.ToLower(string(l.Code)) != string(l.Code) || strings.ContainsAny(string(l.Code), " _") {
			t.Errorf("%s: the code is not in kebab case", name)
		}
		if l.Status != warn.Practice && l.Source == "" {
			t.Errorf("%s: %s, but by whom?", name, l.Status)
		}
		for i, s := range l.Steps {
			if math.IsNaN(s.Value) || math.IsInf(s.Value, 0) {
				t.Errorf("%s: figure %g", name, s.Value)
			}
			if i > 0 && s.Severity <= l.Steps[i-1].Severity {
				t.Errorf("%s: the steps do not rise", name)
			}
		}
	}
	rows[0].Steps[0].Value = -1
	if warn.Limits()[0].Steps[0].Value == -1 {
		t.Error("a caller can change the table")
	}
}

// The source of a warning tells published figures from those quoted from memory
// and from practice.
func TestLimitSource(t *testing.T) {
	for _, c := range []struct {
		limit warn.Limit
		want  string
	}{
		{warn.Limit{Source: "ACI 318-19 14.5", Status: warn.Published}, "ACI 318-19 14.5"},
		{warn.Limit{Source: "ACI 318-19 14.5", Status: warn.Memory}, "ACI 318-19 14.5 (from memory)"},
		{warn.Limit{Status: warn.Practice}, "common practice, no source"},
		{warn.Limit{Source: "the site", Status: warn.Given}, "the site"},
	} {
		if got := c.limit.String(); got != c.want {
			t.Errorf("%+v: %q, want %q", c.limit, got, c.want)
		}
	}
}

package report_test

import (
	"bytes"
	"strings"
	"testing"

	sheet "example.org/castwright/export/report"
	"example.org/castwright/model/units"
)

// A check says nothing that the whole report does not say.
func TestCheckIsPartOfText(t *testing.T) {
	j, o, r := sample(units.Imperial)
	whole := string(text(t, j, o, r))
	var b bytes.Buffer
	if err := sheet.Check(&b, j, o, r); err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(b.String()) {
		if !strings.Contains(whole, line) {
			t.Errorf("the report lacks the check's line %q", line)
		}
	}
	for _, w := range r.Warnings {
		if !strings.Contains(b.String(), "Code: "+string(w.Code)+".") {
			t.Errorf("the check lacks the warning %s", w.Code)
		}
	}
	if len(r.Warnings) == 0 {
		t.Fatal("the sample has no warning to look for")
	}
}

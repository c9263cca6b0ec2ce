package edit_test

import (
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"github.com/shopspring/decimal"
)

func TestSetTermsAndPrice(t *testing.T) {
	j := design.Job{Options: []design.Option{{Name: "A"}, {Name: "B"}}}
	out, err := edit.SetTerms(design.Terms{Care: "Wipe it."}).Apply(j)
	if err != nil || out.Terms.Care != "Wipe it." || j.Terms.Care != "" {
		t.Errorf("%v, %+v", err, out.Terms)
	}
	price := design.Price{Amount: decimal.New(125050, -2), Note: "with tax"}
	out, err = edit.SetPrice("B", price).Apply(j)
	if err != nil || !out.Options[1].Price.Amount.Equal(price.Amount) || !j.Options[1].Price.Amount.IsZero() {
		t.Errorf("%v, %+v", err, out.Options)
	}
	for name, e := range map[string]edit.JobEdit{
		"below zero":       edit.SetPrice("A", design.Price{Amount: decimal.New(-1, 0)}),
		"more than a file": edit.SetPrice("A", design.Price{Amount: decimal.New(1, 12)}),
		"too fine":         edit.SetPrice("A", design.Price{Amount: decimal.New(1, -9)}),
		"no such option":   edit.SetPrice("C", price),
		"a book":           edit.SetTerms(design.Terms{Included: strings.Repeat("x", 30_000)}),
	} {
		if _, err := e.Apply(j); err == nil {
			t.Errorf("%s: taken", name)
		}
	}
}

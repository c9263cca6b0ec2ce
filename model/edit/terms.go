package edit

import (
	"fmt"

	"example.org/castwright/model/design"
	"github.com/shopspring/decimal"
)

// maxTerms bounds each text of a job's terms, in bytes: some pages.
const maxTerms = 20_000

// SetTerms says what the client's sheets say beside the design.
func SetTerms(t design.Terms) JobEdit {
	return JobEdit{"Change the sheet's words", func(j design.Job) (design.Job, error) {
		for _, text := range [...]string{t.Included, t.NotIncluded, t.Care} {
			if len(text) > maxTerms {
				return j, fmt.Errorf("a text of %d characters is more than a sheet holds: keep it below %d", len(text), maxTerms)
			}
		}
		j.Terms = t
		return j, nil
	}}
}

// SetPrice says what the client pays for an option.
func SetPrice(option string, p design.Price) JobEdit {
	return optionEdit("Change price", option, func(j *design.Job, i int) error {
		a := p.Amount
		if a.IsNegative() || a.GreaterThan(decimal.NewFromInt(design.MaxQuantity)) || a.Exponent() < -6 {
			return fmt.Errorf("%s is no price: give an amount such as 1450.00", a)
		}
		if len(p.Note) > maxTerms {
			return fmt.Errorf("the words beside the price are too long: keep them to a line")
		}
		j.Options[i].Price = p
		return nil
	})
}

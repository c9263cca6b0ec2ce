package edit

import (
	"fmt"

	"example.org/castwright/model/design"
	"github.com/shopspring/decimal"
)

// priceDecimals is how finely a price may be given.
const priceDecimals = 6

// checkPrice refuses a price that is negative, absurd or finer than a file
// keeps. The exponent is looked at first: comparing a number of a million
// digits would take for ever.
func checkPrice(what string, p decimal.Decimal) error {
	if p.Exponent() > 9 || p.Exponent() < -priceDecimals {
		return fmt.Errorf("%s has too many digits: give at most %d decimals", what, priceDecimals)
	}
	if p.IsNegative() || p.GreaterThan(decimal.NewFromInt(design.MaxQuantity)) {
		return fmt.Errorf("%s is %s: give 0 or more", what, p)
	}
	return nil
}

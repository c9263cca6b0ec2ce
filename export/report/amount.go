package report

import (
	"strconv"

	"github.com/shopspring/decimal"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/units"
)

// counted writes a bought amount as it is reckoned, to all its decimals.
func counted(x float64, unit string) string {
	if unit == "bag" || unit == "pour" {
		return amount.Of(x, unit, units.Metric)
	}
	return strconv.FormatFloat(x, 'f', -1, 64) + " " + unit
}

// reading writes a value of a warning in the maker's units, not to be broken over
// two lines.
func reading(x float64, unit string, sys units.System) string {
	return unbroken(amount.Of(x, unit, sys))
}

// money writes an amount of money in characters that every terminal has.
func money(currency string, d decimal.Decimal) string {
	return amount.Money(plain(currency), d)
}

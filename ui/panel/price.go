package panel

import (
	"fmt"
	"strings"

	"example.org/castwright/model/design"
	"github.com/shopspring/decimal"
)

// ReadPrice reads an amount of money with a decimal point or comma; nothing is none.
// what says what it is for, in an error.
func ReadPrice(s, what string) (decimal.Decimal, error) {
	plain := strings.Replace(strings.TrimSpace(s), ",", ".", 1)
	if plain == "" {
		return decimal.Decimal{}, nil
	}
	d, err := decimal.NewFromString(plain)
	// No exponents: a large one would take all memory. The file keeps six decimals.
	if err != nil || strings.ContainsAny(plain, "eE") || d.Exponent() < -6 || d.IsNegative() ||
		d.Abs().GreaterThan(decimal.NewFromInt(design.MaxQuantity)) {
		return decimal.Decimal{}, fmt.Errorf("%s: %q is no price: type a number such as 14.50", what, s)
	}
	return d, nil
}

// PriceOf is the price of a unit that is size of those whose price is given, such as
// of a quart by that of a litre: in whole cents where it is that but for what the way
// there and back has rounded off.
func PriceOf(one decimal.Decimal, size float64) decimal.Decimal {
	d := one.Mul(decimal.NewFromFloat(size))
	if r := d.Round(2); d.Sub(r).Abs().LessThan(decimal.New(5, -4)) {
		return r
	}
	return d.Round(4)
}

package store

import (
	"fmt"
	"strconv"
	"strings"
)

// fixed writes a whole number of 10^-places as a decimal, exactly and without
// idle zeros: fixed(38_100_000, 6) is "38.1".
func fixed(n int64, places int) string {
	digits := strconv.FormatUint(magnitude(n), 10)
	if pad := places + 1 - len(digits); pad > 0 {
		digits = strings.Repeat("0", pad) + digits
	}
	whole, part := digits[:len(digits)-places], strings.TrimRight(digits[len(digits)-places:], "0")
	if part != "" {
		whole += "." + part
	}
	if n < 0 {
		return "-" + whole
	}
	return whole
}

func magnitude(n int64) uint64 {
	if n < 0 {
		return -uint64(n)
	}
	return uint64(n)
}

// errTooLarge says that a number is beyond its bound.
type errTooLarge struct{ bound string }

func (e errTooLarge) Error() string { return "beyond " + e.bound }

// parseFixed reads a JSON number as a whole number of 10^-places, at most
// bound of either sign. Finer digits are rounded to the nearest, half to even.
func parseFixed(text string, places int, bound int64) (int64, error) {
	mantissa, power := splitPower(text)
	negative := strings.HasPrefix(mantissa, "-")
	whole, part, _ := strings.Cut(strings.TrimPrefix(mantissa, "-"), ".")
	digits := whole + part
	// The number is digits with the point before index point.
	point := len(whole) + power + places
	first := strings.IndexFunc(digits, func(r rune) bool { return r != '0' })
	if first < 0 || point < first {
		return 0, nil // less than a tenth of the last place
	}
	digits, point = digits[first:], point-first
	if point > 18 {
		return 0, errTooLarge{fixed(bound, places)}
	}
	if pad := point - len(digits); pad > 0 {
		digits += strings.Repeat("0", pad)
	}
	n, _ := strconv.ParseInt("0"+digits[:point], 10, 64)
	rest := digits[point:]
	if roundsUp(rest, n) {
		n++
	}
	if n > bound {
		return 0, errTooLarge{fixed(bound, places)}
	}
	if negative {
		n = -n
	}
	return n, nil
}

// roundsUp reports whether the digits after the last place lift it.
func roundsUp(rest string, n int64) bool {
	if rest == "" || rest[0] != '5' {
		return rest != "" && rest[0] > '5'
	}
	return strings.Trim(rest[1:], "0") != "" || n%2 == 1
}

// splitPower parts a JSON number into mantissa and power of ten. The parser
// has bounded the power.
func splitPower(text string) (mantissa string, power int) {
	i := strings.IndexAny(text, "eE")
	if i < 0 {
		return text, 0
	}
	power, _ = strconv.Atoi(text[i+1:])
	return text[:i], power
}

// float writes x times 10^shift exactly as short as it reads back to x, in
// plain digits where these are few. It gives false for NaN and infinities.
func float(x float64, shift int) (string, bool) {
	if x-x != 0 {
		return "", false
	}
	if x == 0 {
		return "0", true
	}
	text := strconv.FormatFloat(x, 'e', -1, 64)
	mantissa, power := splitPower(text)
	power += shift
	sign := ""
	if strings.HasPrefix(mantissa, "-") {
		sign, mantissa = "-", mantissa[1:]
	}
	digits := strings.Replace(mantissa, ".", "", 1)
	switch {
	case power < -7 || power > 15:
		if len(digits) > 1 {
			digits = digits[:1] + "." + digits[1:]
		}
		return fmt.Sprintf("%s%se%d", sign, digits, power), true
	case power < 0:
		return sign + "0." + strings.Repeat("0", -power-1) + digits, true
	case len(digits) <= power+1:
		return sign + digits + strings.Repeat("0", power+1-len(digits)), true
	}
	return sign + digits[:power+1] + "." + digits[power+1:], true
}

// parseFloat reads a JSON number times 10^shift, correctly rounded.
func parseFloat(text string, shift int) (float64, error) {
	mantissa, power := splitPower(text)
	x, err := strconv.ParseFloat(mantissa+"e"+strconv.Itoa(power+shift), 64)
	if err != nil {
		return 0, err
	}
	if x == 0 {
		return 0, nil // no negative zero
	}
	return x, nil
}

package units

import (
	"fmt"
	"strconv"
	"strings"
)

// DecimalMM is the length in millimetres as the shortest exact decimal, such as
// "38.1", "-0.000001" or "650". It is a JSON number.
func DecimalMM(l Length) string { return micro(int64(l)) }

// ParseDecimalMM reads a JSON number of millimetres exactly. It refuses what is
// finer than a nanometre, larger than [MaxLength], or not a number.
func ParseDecimalMM(s string) (Length, error) {
	n, err := parseMicro(s, int64(MaxLength), "mm")
	return Length(n), err
}

// DecimalDegrees is the angle in degrees as the shortest exact decimal.
func DecimalDegrees(a Angle) string { return micro(int64(a)) }

// ParseDecimalDegrees reads a JSON number of degrees exactly: at most six
// decimals and 360 000 degrees.
func ParseDecimalDegrees(s string) (Angle, error) {
	n, err := parseMicro(s, 360_000*int64(Degree), "degrees")
	return Angle(n), err
}

// DecimalFraction is the share as the shortest exact decimal, "1" for the whole.
func DecimalFraction(f Share) string { return micro(int64(f)) }

// ParseDecimalFraction reads a JSON number as a share, 1 for the whole, exactly:
// at most six decimals and a thousand wholes.
func ParseDecimalFraction(s string) (Share, error) {
	n, err := parseMicro(s, 1000*int64(Whole), "")
	return Share(n), err
}

// micro writes n millionths as a decimal.
func micro(n int64) string {
	sign := ""
	u := uint64(n)
	if n < 0 {
		sign, u = "-", -u
	}
	whole, part := u/1_000_000, u%1_000_000
	text := sign + strconv.FormatUint(whole, 10)
	if part == 0 {
		return text
	}
	return text + "." + strings.TrimRight(fmt.Sprintf("%06d", part), "0")
}

// maxDecimal bounds the text of a JSON number: digits enough for any length with
// zeros to spare.
const maxDecimal = 60

// parseMicro reads a JSON number (RFC 8259, section 6) as whole millionths
// within ±bound of the unit.
func parseMicro(s string, bound int64, unit string) (int64, error) {
	if len(s) > maxDecimal {
		return 0, fmt.Errorf("the number has %d characters; give at most %d", len(s), maxDecimal)
	}
	negative, digits, exponent, err := cutNumber(s)
	if err != nil {
		return 0, err
	}
	digits = strings.TrimLeft(digits, "0")
	if digits == "" {
		return 0, nil
	}
	for strings.HasSuffix(digits, "0") {
		digits = digits[:len(digits)-1]
		exponent++
	}
	if exponent < -6 {
		return 0, fmt.Errorf("%s has more than 6 decimals; round it to 6", s)
	}
	tooLarge := fmt.Errorf("%s is out of range; give at most %s", s,
		strings.TrimSpace(micro(bound)+" "+unit))
	if len(digits)+exponent > 13 {
		return 0, tooLarge
	}
	n, err := strconv.ParseInt(digits+strings.Repeat("0", exponent+6), 10, 64)
	if err != nil || n > bound {
		return 0, tooLarge
	}
	if negative {
		n = -n
	}
	return n, nil
}

// cutNumber takes a JSON number apart: its digits without the point, and the
// power of ten that its last digit counts.
func cutNumber(s string) (negative bool, digits string, exponent int, err error) {
	bad := fmt.Errorf("%q is not a number; write one such as 38.1", s)
	rest, negative := strings.CutPrefix(s, "-")
	mantissa, power, has := cutAny(rest, "eE")
	whole, part, point := strings.Cut(mantissa, ".")
	if !allDigits(whole) || point && !allDigits(part) || len(whole) > 1 && whole[0] == '0' {
		return false, "", 0, bad
	}
	if has {
		unsigned := strings.TrimPrefix(strings.TrimPrefix(power, "+"), "-")
		if !allDigits(unsigned) || len(power)-len(unsigned) > 1 {
			return false, "", 0, bad
		}
		if len(strings.TrimLeft(unsigned, "0")) > 2 {
			return false, "", 0, fmt.Errorf("%s has an exponent out of range; write it without one", s)
		}
		exponent, _ = strconv.Atoi(power)
	}
	return negative, whole + part, exponent - len(part), nil
}

func cutAny(s, chars string) (before, after string, found bool) {
	if i := strings.IndexAny(s, chars); i >= 0 {
		return s[:i], s[i+1:], true
	}
	return s, "", false
}

func allDigits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}

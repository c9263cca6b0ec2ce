package report

import (
	"math"
	"strconv"
)

// number is a float64 in JSON: ten significant digits, so that all machines write
// the same, and null for what RFC 8259 has no number for.
type number float64

// MarshalJSON writes the number.
func (n number) MarshalJSON() ([]byte, error) {
	x := float64(n)
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return []byte("null"), nil
	}
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 10, 64), 64)
	if err != nil { // rounded up beyond the largest number
		rounded = x
	}
	if rounded == 0 {
		return []byte("0"), nil
	}
	format := byte('f')
	if size := math.Abs(rounded); size < 1e-6 || size >= 1e21 {
		format = 'e'
	}
	return strconv.AppendFloat(nil, rounded, format, -1, 64), nil
}

// length is an exact length in JSON: decimal millimetres.
type length string

// MarshalJSON writes the number.
func (l length) MarshalJSON() ([]byte, error) { return []byte(l), nil }

package units

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"
)

// sixtyFourth is the finest fraction of an inch that is written as one.
const sixtyFourth = Inch / 64

// Default steps of [Format].
const (
	MetricStep   = Millimetre / 10
	ImperialStep = Inch / 16
)

// Format writes a length for reading: to the nearest 0.1 mm, or to the nearest
// 1/16 in; whole 64ths of an inch are shown as they are. What it leaves off it
// leaves off silently; use [FormatExact] for a value that can be typed again.
func Format(l Length, sys System) string {
	if sys == Imperial {
		if l%sixtyFourth == 0 {
			return inches(l)
		}
		return FormatStep(l, sys, ImperialStep)
	}
	return FormatStep(l, sys, MetricStep)
}

// FormatStep writes a length to the nearest whole step, ties to even. A step of
// zero or less leaves it exact.
func FormatStep(l Length, sys System, step Length) string {
	if step > 0 {
		n, _ := roundRat(big.NewRat(int64(l), int64(step)))
		l = Length(n) * step
	}
	return FormatExact(l, sys)
}

// FormatExact writes a length so that [Parse] in the same system gives it back
// to the nanometre. Metric is decimal millimetres. Imperial is inches with a
// fraction where it is whole 64ths, millimetres where it is whole tenths of a
// millimetre (it was given so), and else decimal inches.
func FormatExact(l Length, sys System) string {
	switch {
	case sys != Imperial:
		return DecimalMM(l) + " mm"
	case l%sixtyFourth == 0:
		return inches(l)
	case l%MetricStep == 0:
		return DecimalMM(l) + " mm"
	}
	return decimalInches(l) + `"`
}

// inches writes whole 64ths of an inch.
func inches(l Length) string {
	sign := ""
	if l < 0 {
		sign, l = "-", -l
	}
	whole, part := l/Inch, l%Inch/sixtyFourth
	below := Length(64)
	for part > 0 && part%2 == 0 {
		part, below = part/2, below/2
	}
	switch {
	case part == 0:
		return fmt.Sprintf(`%s%d"`, sign, whole)
	case whole == 0:
		return fmt.Sprintf(`%s%d/%d"`, sign, part, below)
	}
	return fmt.Sprintf(`%s%d %d/%d"`, sign, whole, part, below)
}

// decimalInches writes a length in inches with the fewest decimals that round
// back to it; eight are always enough, because 1e-8 in is 0.254 nm.
func decimalInches(l Length) string {
	exact := big.NewRat(int64(l), int64(Inch))
	for decimals := 1; ; decimals++ {
		text := exact.FloatString(decimals)
		back, _ := new(big.Rat).SetString(text)
		got, _ := roundRat(lengthUnits["in"].of(back))
		if Length(got) == l || decimals == 9 {
			return text
		}
	}
}

// trim cuts the zeros off the end of a decimal.
func trim(s string) string {
	if !strings.Contains(s, ".") {
		return s
	}
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

// FormatAngle writes an angle in degrees, exactly.
func FormatAngle(a Angle) string { return DecimalDegrees(a) + "°" }

// FormatShare writes a share in per cent, exactly.
func FormatShare(f Share) string {
	return trim(strconv.FormatFloat(float64(f)/float64(Percent), 'f', 4, 64)) + " %"
}

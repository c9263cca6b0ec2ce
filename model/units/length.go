// Package units holds the exact quantities of a design and reads and writes
// them as people do: lengths as whole nanometres, angles as whole
// micro-degrees, shares as whole parts per million. Inches with fractions and
// metric are equals.
package units

import "math"

// Length is an exact length in whole nanometres, shaped like time.Duration:
// every 1/64 in and every 0.000001 mm is representable and == means equal.
// The zero value is no length. Never multiply two Lengths: areas come from
// package geom.
type Length int64

// Units of length. The inch is 25.4 mm exactly (NIST SP 811, App. B.8).
const (
	Nanometre  Length = 1
	Micrometre        = 1000 * Nanometre
	Millimetre        = 1000 * Micrometre
	Centimetre        = 10 * Millimetre
	Metre             = 1000 * Millimetre
	Inch              = 25_400_000 * Nanometre
	Foot              = 12 * Inch
)

// MaxLength bounds every length that is read from a person or a file: 100 m.
// Nothing that is cast in a workshop is larger, and drawing stays safe.
const MaxLength = 100 * Metre

// MM is the length in millimetres, as the engine computes with.
func (l Length) MM() float64 { return float64(l) / float64(Millimetre) }

// Inches is the length in inches.
func (l Length) Inches() float64 { return float64(l) / float64(Inch) }

// FromMM is the length nearest to x millimetres. It is for values that the
// engine has computed; what a person or a file says goes through [Parse] or
// the store, which refuse bad numbers. NaN gives 0, and anything beyond
// [MaxLength] gives that bound.
func FromMM(x float64) Length {
	n := math.RoundToEven(x * float64(Millimetre))
	switch {
	case n != n:
		return 0
	case n > float64(MaxLength):
		return MaxLength
	case n < -float64(MaxLength):
		return -MaxLength
	}
	return Length(n)
}

// Abs is the length without its sign.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}

// System is how a maker reads and writes lengths.
type System uint8

// The two systems are equals; the job's choice shows everywhere.
const (
	Metric System = iota
	Imperial
)

func (s System) String() string {
	if s == Imperial {
		return "imperial"
	}
	return "metric"
}

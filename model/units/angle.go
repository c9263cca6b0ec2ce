package units

import "math"

// Angle is an exact angle in whole micro-degrees, counter-clockwise positive.
type Angle int64

// Degree is one degree of arc.
const Degree Angle = 1_000_000

// Degrees is the angle in degrees.
func (a Angle) Degrees() float64 { return float64(a) / float64(Degree) }

// Radians is the angle in radians.
func (a Angle) Radians() float64 { return a.Degrees() * math.Pi / 180 }

// FromDegrees is the angle nearest to x degrees; NaN gives 0, and anything
// beyond 360 000 degrees gives that bound.
func FromDegrees(x float64) Angle {
	if x != x {
		return 0
	}
	const bound = 360_000
	return Angle(math.RoundToEven(math.Max(-bound, math.Min(bound, x)) * float64(Degree)))
}

// Share is an exact fraction of a whole in parts per million.
type Share int64

// Percent is one hundredth of a whole; Whole is all of it.
const (
	Percent Share = 10_000
	Whole   Share = 100 * Percent
)

// Fraction is the share as a number, 1 for the whole.
func (s Share) Fraction() float64 { return float64(s) / float64(Whole) }

// FromFraction is the share nearest to x (1 is the whole); NaN gives 0, and
// anything beyond a thousand wholes gives that bound.
func FromFraction(x float64) Share {
	if x != x {
		return 0
	}
	const bound = 1000
	return Share(math.RoundToEven(math.Max(-bound, math.Min(bound, x)) * float64(Whole)))
}

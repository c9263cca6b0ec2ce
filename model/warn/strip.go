package warn

import "math"

// # How far a top may reach, and why
//
// No guidance for overhangs and spans is written for cast concrete. Two views
// of it are taken, and a top is judged by both:
//
//   - Stone. The Dimension Stone Design Manual carries tops of natural stone
//     24 in and lets them overhang 6 in at 3/4 in of thickness, 36 in and 10 in
//     at 1-1/4 in, and never lets them overhang more than a third of their
//     width. Between the two thicknesses we go in proportion, below in
//     proportion to nothing, and above we allow no more.
//   - Strength. A strip 12 in wide, of the top's thickness, carries its own
//     weight and a person of 300 lb at the worst place (the figure of IBC
//     Table 1607.1 for a stair tread, as the like of someone who sits or climbs
//     on the top). It cracks where its stress reaches the modulus of rupture,
//     7.5 root f'c (ACI 318-19 19.2.3.1). Plain concrete may be counted on for
//     0.60 x 5 root f'c (ACI 318-19 14.5.2.1, Table 21.2.1); beyond it the top
//     is carried by its steel or fibre alone. A plate spreads a load wider than 12 in, so
//     this view is on the safe side. Loads are as they are, without load
//     factors: this is a warning, not a design.
//
// The rule: a note beyond what plain concrete may be counted on for; a caution
// beyond the shorter of cracking length and stone's length; severe beyond the
// longer of the two. The bending of the whole plate comes with the strength
// work; until then these figures stand in for it.

const (
	psi          = 0.006894757293168 // MPa, NIST SP 811
	gravity      = 9.80665           // m/s2, NIST SP 811
	person       = 1334.4664845      // N, 300 lbf
	stripWidth   = 12 * inch
	assumedFc    = 4000.0  // psi, cylinder strength at 28 days
	usualDensity = 2322.68 // kg/m3, 145 lb/ft3, when the materials give none

	plainFlexure   = 5.0 // root f'c in psi, ACI 318-19 14.5.2.1a, normal weight
	phiPlain       = 0.60
	ruptureFlexure = 7.5 // root f'c in psi, ACI 318-19 19.2.3.1
)

// usableStress is what plain concrete may be counted on for in bending, MPa.
func usableStress(fc float64) float64 { return phiPlain * plainFlexure * math.Sqrt(fc) * psi }

// ruptureStress is the modulus of rupture of concrete of fc psi, MPa.
func ruptureStress(fc float64) float64 { return ruptureFlexure * math.Sqrt(fc) * psi }

// strip is 12 in of a slab's width.
type strip struct {
	thickness float64 // mm
	density   float64 // kg/m3
}

// section is the section modulus, mm3.
func (s strip) section() float64 { return stripWidth * s.thickness * s.thickness / 6 }

// weight is the strip's own weight, N/mm.
func (s strip) weight() float64 {
	return s.density * 1e-9 * gravity * stripWidth * s.thickness
}

// cantilever is the stress at the root of a cantilever, MPa, with a load in N
// at its tip: M = P c + w c^2/2 (AISC Manual Table 3-23).
func (s strip) cantilever(length, load float64) float64 {
	return (load*length + s.weight()*length*length/2) / s.section()
}

// span is the stress in the middle of a simple span, MPa, with a load in N
// there: M = P L/4 + w L^2/8 (AISC Manual Table 3-23).
func (s strip) span(length, load float64) float64 {
	return (load*length/4 + s.weight()*length*length/8) / s.section()
}

// cantileverFor is the length in mm at which cantilever reaches stress.
func (s strip) cantileverFor(stress, load float64) float64 {
	return positiveRoot(s.weight()/2, load, stress*s.section())
}

// spanFor is the length in mm at which span reaches stress.
func (s strip) spanFor(stress, load float64) float64 {
	return positiveRoot(s.weight()/8, load/4, stress*s.section())
}

// positiveRoot solves a x^2 + b x = c for a, c >= 0 and b > 0, in the form that
// loses no digits when a is small.
func positiveRoot(a, b, c float64) float64 {
	return 2 * c / (b + math.Sqrt(b*b+4*a*c))
}

// stone reads a length from the two thicknesses of the stone manual.
func stone(thin, thick Limit, thickness float64) float64 {
	const t0, t1 = 0.75 * inch, 1.25 * inch
	l0, l1 := thin.Steps[0].Value, thick.Steps[0].Value
	switch {
	case thickness <= t0:
		return l0 * thickness / t0
	case thickness >= t1:
		return l1
	}
	return l0 + (l1-l0)*(thickness-t0)/(t1-t0)
}

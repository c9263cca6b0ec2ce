package slab

import (
	"math"

	"example.org/castwright/model/design"
)

// Inset is how far, in millimetres, a profile draws an edge in at the height z
// above the underside of a slab of the given thickness. With r for the size and
// h for the height above the profile's start:
//
//	square, rough        0
//	eased, rounded       r - sqrt(r² - h²), h = z - (thickness - r)
//	half round           the same; without a size r is half the thickness
//	bevelled             h
//	full round           r - sqrt(r² - h²), r half the thickness, h = |z - r|
//
// A size larger than the thickness is cut off at the underside. The outline of
// a rough edge is the mean of its broken face.
func Inset(p design.Profile, thickness, z float64) float64 {
	z = clamp(z, 0, thickness)
	r, start := profileSpan(p, thickness)
	if !(r > 0) {
		return 0
	}
	h := z - start
	switch p.Kind {
	case design.ProfileFullRound:
		h = math.Abs(z - r)
	case design.ProfileBevelled:
		return math.Max(0, h)
	}
	if h <= 0 {
		return 0
	}
	return r - math.Sqrt(math.Max(0, r*r-h*h))
}

// profileSpan gives the size of a profile as it is cut, 0 for one that draws
// nothing in, and the height at which it starts, which may lie below 0.
func profileSpan(p design.Profile, thickness float64) (size, start float64) {
	size = clamp(p.Size.MM(), 0, reach)
	switch p.Kind {
	case design.ProfileEased, design.ProfileRounded, design.ProfileBevelled:
	case design.ProfileHalfRound:
		if size == 0 {
			size = thickness / 2
		}
	case design.ProfileFullRound:
		return thickness / 2, 0
	default:
		return 0, thickness
	}
	return size, thickness - size
}

// insetIntegral is the integral of Inset over the height from 0 to z.
func insetIntegral(p design.Profile, thickness, z float64) float64 {
	z = clamp(z, 0, thickness)
	r, start := profileSpan(p, thickness)
	if !(r > 0) {
		return 0
	}
	quarter := func(h float64) float64 {
		if h <= 0 {
			return 0
		}
		return r*h - (h*math.Sqrt(math.Max(0, r*r-h*h))+r*r*math.Asin(math.Min(1, h/r)))/2
	}
	switch p.Kind {
	case design.ProfileFullRound:
		return quarter(r) + math.Copysign(quarter(math.Abs(z-r)), z-r)
	case design.ProfileBevelled:
		part := func(h float64) float64 { return math.Max(0, h) * math.Max(0, h) / 2 }
		return part(z-start) - part(-start)
	}
	return quarter(z-start) - quarter(-start)
}

// sameInset reports whether two profiles draw in alike at every height.
func sameInset(a, b design.Profile, thickness float64) bool {
	ra, _ := profileSpan(a, thickness)
	rb, _ := profileSpan(b, thickness)
	if ra != rb {
		return false
	}
	return ra == 0 || profileForm(a.Kind) == profileForm(b.Kind)
}

// profileForm lumps the kinds that share a formula.
func profileForm(k design.ProfileKind) design.ProfileKind {
	switch k {
	case design.ProfileEased, design.ProfileHalfRound:
		return design.ProfileRounded
	}
	return k
}

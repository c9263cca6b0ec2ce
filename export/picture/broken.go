package picture

import "math"

// The broken face lies within brokenReach of the outline, which is its mean:
// brokenMean is the mean of brokenInset.
const (
	brokenReach = 16.0 // mm
	brokenMean  = 6.0  // mm
)

// brokenInset is how far a broken edge lies behind its furthest points, in
// millimetres: hollows of conchoidal breaks, larger ones with smaller ones in
// them, cut off here and there by a plane, and grain. Breaks are larger where
// the stone came away in one piece, so that no stretch repeats another.
func brokenInset(p v3, t float64) float64 {
	calm := noise3(p.mul(1.0 / 140).add(v3{3.1, 7.7, 1.3}))
	patch := noise3(p.mul(1.0 / 26).add(v3{1.7, 2.1, 9.3}))
	a := hollows(p, 31, 0) * (8 + 4*calm)
	b := hollows(p, 11, 1) * (3.2 - 1.6*calm)
	// Grain comes and goes: a clean break beside a crumbled one.
	grain := (noise3(p.mul(1.0/2.3))*0.55 + noise3(p.mul(1.0/0.8))*0.22) * (0.55 + 0.75*patch)
	lip := max(0, p.Z-t+9) / 9 // the upper arris spalls
	spall := noise3(p.mul(1.0 / 15))
	return a + b + grain + 3.2*lip*lip*max(0, spall+0.2)
}

// hollows is 0 on the ridges and up to 1 in the hollows of a break whose
// hollows are about size wide: the lower envelope of tilted bowls.
func hollows(p v3, size float64, seed uint32) float64 {
	q := p.mul(1 / size)
	q.Z *= 0.8
	ci, cj, ck := int(math.Floor(q.X)), int(math.Floor(q.Y)), int(math.Floor(q.Z))
	best := 2.0
	for k := ck - 1; k <= ck+1; k++ {
		for j := cj - 1; j <= cj+1; j++ {
			for i := ci - 1; i <= ci+1; i++ {
				h := hash4(uint32(i), uint32(j), uint32(k), seed)
				c := v3{float64(i) + unit01(h), float64(j) + unit01(h*0x9e3779b1+7), float64(k) + unit01(h*0x85ebca6b+3)}
				d := q.sub(c)
				tilt := v3{unit01(h*0xc2b2ae35+1) - 0.5, unit01(h*0x27d4eb2f+9) - 0.5, unit01(h*0x165667b1+5) - 0.5}
				bowl := d.dot(d)*(0.7+0.6*unit01(h*0x2545f491+2)) + 0.9*d.dot(tilt) + 0.35*unit01(h+11)
				best = min(best, bowl)
			}
		}
	}
	return 1 - max(0, min(1, best+0.15))
}

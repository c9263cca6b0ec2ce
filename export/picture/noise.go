package picture

import "math"

// hash4 mixes four numbers into one (the finaliser of MurmurHash3 over a
// running product).
func hash4(a, b, c, d uint32) uint32 {
	h := a*0x9e3779b1 ^ b*0x85ebca6b ^ c*0xc2b2ae35 ^ d*0x27d4eb2f
	h ^= h >> 16
	h *= 0x85ebca6b
	h ^= h >> 13
	h *= 0xc2b2ae35
	return h ^ h>>16
}

// rehash draws the k-th number from a hash.
func rehash(h, k uint32) uint32 {
	h += k * 0x9e3779b9
	h ^= h >> 15
	h *= 0x2c1b3c6d
	h ^= h >> 12
	h *= 0x297a2d39
	return h ^ h>>15
}

// unit01 maps a hash to [0, 1).
func unit01(h uint32) float64 {
	h ^= h >> 15
	h *= 0x2c1b3c6d
	h ^= h >> 12
	return float64(h>>8) / (1 << 24)
}

// draw is the k-th number of a hash in [0, 1).
func draw(h, k uint32) float64 { return float64(rehash(h, k)>>8) / (1 << 24) }

// lattice holds the random heights of the noises, in [-1, 1].
var lattice = func() *[256 * 256]float32 {
	var t [256 * 256]float32
	for i := range t {
		t[i] = float32(2*unit01(hash4(uint32(i), 71, 5, 3)) - 1)
	}
	return &t
}()

// noise2 is smooth value noise in [-1, 1] with cells of size 1; it repeats
// after 256 cells. Each layer is another noise.
func noise2(x, y float64, layer int) float64 {
	fx, fy := math.Floor(x), math.Floor(y)
	i, j := int(fx)+layer*89, int(fy)+layer*57
	u, v := fade(x-fx), fade(y-fy)
	r0, r1 := (j&255)<<8, ((j+1)&255)<<8
	i0, i1 := i&255, (i+1)&255
	a, b := float64(lattice[r0|i0]), float64(lattice[r0|i1])
	c, d := float64(lattice[r1|i0]), float64(lattice[r1|i1])
	a += (b - a) * u
	c += (d - c) * u
	return a + (c-a)*v
}

// noise3 is noise2 in space.
func noise3(p v3) float64 {
	fz := math.Floor(p.Z)
	k := int(fz)
	a, b := noise2(p.X, p.Y, 3*k), noise2(p.X, p.Y, 3*k+3)
	return a + (b-a)*fade(p.Z-fz)
}

func fade(t float64) float64 { return t * t * t * (t*(t*6-15) + 10) }

// clamp01 holds x within 0..1.
func clamp01(x float64) float64 { return max(0, min(1, x)) }

// smooth runs from 0 at a to 1 at b with level ends.
func smooth(a, b, x float64) float64 {
	x = clamp01((x - a) / (b - a))
	return x * x * (3 - 2*x)
}

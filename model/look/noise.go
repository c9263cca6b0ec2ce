package look

import (
	"math"
	"sync"
)

// mixed hashes a seed and two whole numbers (the finaliser of MurmurHash3).
func mixed(seed, x, y uint32) uint32 {
	h := seed ^ x*0x9e3779b1 ^ y*0x85ebca77
	h ^= h >> 16
	h *= 0x85ebca6b
	h ^= h >> 13
	h *= 0xc2b2ae35
	return h ^ h>>16
}

// dice gives numbers in [0, 1) that depend on its seed alone.
type dice struct{ seed, n uint32 }

func diceOf(seed uint32, x, y int) *dice { return &dice{seed: mixed(seed, uint32(x), uint32(y))} }

func (d *dice) roll() float32 {
	d.n++
	return float32(mixed(d.seed, d.n, 0x51ed27)>>8) / (1 << 24)
}

// between is a number from lo to hi.
func (d *dice) between(lo, hi float32) float32 { return lo + (hi-lo)*d.roll() }

// field is a square of n x n values, n a power of two, that repeats in both
// directions without a seam.
type field struct {
	n int
	v []float32
}

func newField(n int) field { return field{n, make([]float32, n*n)} }

// add lays smooth noise over the field: cellsX x cellsY random heights, joined
// by cubic B-splines, of standard deviation amp. Each row is moved by shear
// texels against the one before, which turns stretched cells into slanting
// streaks; whole numbers keep the seam closed.
func (f field) add(cellsX, cellsY int, amp float32, shear int, seed uint32) {
	f.addRows(0, f.n, cellsX, cellsY, amp, shear, seed)
}

// addRows is add for the rows from lo to hi alone.
func (f field) addRows(lo, hi, cellsX, cellsY int, amp float32, shear int, seed uint32) {
	n, mask := f.n, f.n-1
	type tap struct {
		i [4]int
		w [4]float32
	}
	taps := func(cells int) []tap {
		t := make([]tap, n)
		for x := range t {
			at := (float64(x) + 0.5) / float64(n) * float64(cells)
			i := int(at)
			u := float32(at - float64(i))
			t[x].w = spline(u)
			for k := range 4 {
				t[x].i[k] = (i + k - 1 + cells) % cells
			}
		}
		return t
	}
	tx, ty := taps(cellsX), taps(cellsY)
	lattice := make([]float32, cellsX*cellsY)
	// A cubic B-spline of uniform numbers in (-1, 1) has the mean deviation
	// 0.577 x 0.479, averaged over the cell.
	scale := amp / 0.277
	for i := range lattice {
		lattice[i] = scale * (2*float32(mixed(seed, uint32(i), 0x2f1b)>>8)/(1<<24) - 1)
	}
	line := make([]float32, cellsX)
	for y := lo; y < hi; y++ {
		w, r := ty[y].w, ty[y].i
		a, b := lattice[r[0]*cellsX:][:cellsX], lattice[r[1]*cellsX:][:cellsX]
		c, d := lattice[r[2]*cellsX:][:cellsX], lattice[r[3]*cellsX:][:cellsX]
		for i := range line {
			line[i] = w[0]*a[i] + w[1]*b[i] + w[2]*c[i] + w[3]*d[i]
		}
		row := f.v[y*n:][:n]
		for x := range tx {
			t := &tx[x]
			row[(x+shear*y)&mask] += t.w[0]*line[t.i[0]] + t.w[1]*line[t.i[1]] + t.w[2]*line[t.i[2]] + t.w[3]*line[t.i[3]]
		}
	}
}

// spline is the weights of a uniform cubic B-spline.
func spline(u float32) [4]float32 {
	v := 1 - u
	return [4]float32{
		v * v * v / 6,
		(3*u*u*u - 6*u*u + 4) / 6,
		(3*v*v*v - 6*v*v + 4) / 6,
		u * u * u / 6,
	}
}

// at is the value at (x, y) texels, between texels by straight lines.
func (f field) at(x, y float32) float32 {
	fx, fy := float32(math.Floor(float64(x))), float32(math.Floor(float64(y)))
	mask := f.n - 1
	i, j := int(fx)&mask, int(fy)&mask
	i1, j1 := (i+1)&mask, (j+1)&mask
	u, v := x-fx, y-fy
	a, b := f.v[j*f.n+i], f.v[j*f.n+i1]
	c, d := f.v[j1*f.n+i], f.v[j1*f.n+i1]
	a += (b - a) * u
	c += (d - c) * u
	return a + (c-a)*v
}

// clouds is noise of three octaves and deviation 1, whose largest shapes are a
// sixteenth of its 256 texels.
var clouds = sync.OnceValue(func() field {
	f := newField(256)
	f.add(16, 16, 0.78, 0, 101)
	f.add(37, 37, 0.5, 0, 102)
	f.add(83, 83, 0.3, 0, 103)
	return f
})

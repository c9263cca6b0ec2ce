package picture

import (
	"math"
	"sync"
)

// Refractive indices: of the coat (F0 = 0.04) and of cast resin.
const (
	coatIndex  = 1.5
	resinIndex = 1.53
)

// fresnel is the unpolarized reflectance of a smooth surface between media; eta
// is the index beyond over the index before, cos the cosine on the near side.
func fresnel(cos, eta float64) float64 {
	cos = min(1, math.Abs(cos))
	s2 := (1 - cos*cos) / (eta * eta)
	if s2 >= 1 {
		return 1
	}
	ct := math.Sqrt(1 - s2)
	a := (eta*cos - ct) / (eta*cos + ct)
	b := (cos - eta*ct) / (cos + eta*ct)
	return (a*a + b*b) / 2
}

// refracted is direction d (toward the surface) bent by a surface of normal n
// on d's side; ok is false at total reflection.
func refracted(d, n v3, eta float64) (v3, bool) {
	c := -d.dot(n)
	k := 1 - (1-c*c)/(eta*eta)
	if k <= 0 {
		return v3{}, false
	}
	return d.mul(1 / eta).add(n.mul(c/eta - math.Sqrt(k))).unit(), true
}

// tint is the Fresnel reflectance of a metal or coat by Schlick (1994).
func schlick(f0 v3, cos float64) v3 {
	k := math.Pow(1-max(0, min(1, cos)), 5)
	return f0.add(v3{1, 1, 1}.sub(f0).mul(k))
}

// visibleNormal draws a microfacet normal of the GGX distribution as seen from
// w, in the frame where the surface's normal is z (Dupuy and Benyoub, Sampling
// Visible GGX Normals with Spherical Caps, 2023).
func visibleNormal(w v3, a, u1, u2 float64) v3 {
	s := v3{w.X * a, w.Y * a, w.Z}.unit()
	phi := 2 * math.Pi * u1
	z := (1-u2)*(1+s.Z) - s.Z
	r := math.Sqrt(max(0, 1-z*z))
	sin, cos := math.Sincos(phi)
	h := v3{r*cos + s.X, r*sin + s.Y, z + s.Z}
	return v3{h.X * a, h.Y * a, max(0, h.Z)}.unit()
}

// masking is Smith's G1 of the GGX distribution.
func masking(cos, a float64) float64 {
	if cos <= 0 {
		return 0
	}
	t2 := (1 - cos*cos) / (cos * cos)
	return 2 / (1 + math.Sqrt(1+a*a*t2))
}

// lobe draws a direction in which a rough coat mirrors a ray of direction d, by
// its visible normals, and the weight G1 of that direction; the Fresnel factor
// is the facet's.
func lobe(d, n v3, a, u1, u2 float64) (out v3, facet, weight float64) {
	u, v := frame(n)
	w := v3{-d.dot(u), -d.dot(v), max(-d.dot(n), 1e-4)}.unit()
	h := visibleNormal(w, a, u1, u2)
	l := h.mul(2 * w.dot(h)).sub(w)
	return u.mul(l.X).add(v.mul(l.Y)).add(n.mul(l.Z)), w.dot(h), masking(l.Z, a)
}

// cosineDir draws a direction about n by the cosine.
func cosineDir(n v3, u1, u2 float64) v3 {
	u, v := frame(n)
	r := math.Sqrt(u1)
	s, c := math.Sincos(2 * math.Pi * u2)
	return u.mul(r * c).add(v.mul(r * s)).add(n.mul(math.Sqrt(max(0, 1-u1))))
}

// coatTable holds the share of light that a coat of index 1.5 mirrors, by
// roughness and direction: E; and its mean over a hemisphere.
type coatTable struct {
	e   [coatRough][coatAngle]float64
	avg [coatRough]float64
}

const (
	coatRough = 20
	coatAngle = 32
)

var coats = sync.OnceValue(func() *coatTable {
	t := &coatTable{}
	const n = 12
	for i := range coatRough {
		a := max(0.001, float64(i)/(coatRough-1))
		for j := range coatAngle {
			mu := angleOf(j)
			sin := math.Sqrt(1 - mu*mu)
			d := v3{-sin, 0, -mu}
			sum := 0.0
			for k := range n * n {
				_, f, w := lobe(d, v3{Z: 1}, a, (float64(k%n)+0.5)/n, (float64(k/n)+0.5)/n)
				sum += fresnel(f, coatIndex) * w
			}
			t.e[i][j] = sum / (n * n)
		}
		// The mean weighted by the cosine: 2 E mu dmu, by fine steps.
		const m = 200
		for k := range m {
			mu := (float64(k) + 0.5) / m
			t.avg[i] += 2 * mu * t.row(i, mu) / m
		}
	}
	return t
})

// angleOf is the cosine of a column; columns crowd toward grazing.
func angleOf(j int) float64 {
	x := float64(j) / (coatAngle - 1)
	return max(1e-3, x*x)
}

func (t *coatTable) row(i int, mu float64) float64 {
	x := math.Sqrt(max(0, min(1, mu))) * (coatAngle - 1)
	j := min(int(x), coatAngle-2)
	f := x - float64(j)
	return t.e[i][j]*(1-f) + t.e[i][j+1]*f
}

// at is E for roughness a at the cosine mu.
func (t *coatTable) at(a, mu float64) float64 {
	x := max(0, min(1, a)) * (coatRough - 1)
	i := min(int(x), coatRough-2)
	f := x - float64(i)
	return t.row(i, mu)*(1-f) + t.row(i+1, mu)*f
}

// mean is E over the hemisphere.
func (t *coatTable) mean(a float64) float64 {
	x := max(0, min(1, a)) * (coatRough - 1)
	i := min(int(x), coatRough-2)
	f := x - float64(i)
	return t.avg[i]*(1-f) + t.avg[i+1]*f
}

package picture

import (
	"fmt"
	"math"
	"testing"
)

func TestArcOverSine(t *testing.T) {
	for x := -0.999; x < 0.9995; x += 0.001 {
		near(t, fmt.Sprintf("arc over sine of the cosine %.3f, of itself", x), arcOverSine(x)/(math.Acos(x)/math.Sqrt(1-x*x)), 1, 1e-8)
	}
	near(t, "arc over sine of 0 degrees", arcOverSine(1), 1, 1e-8)
}

// What a coat mirrors of a light, in closed form, against the sum of GGX over the
// light's face by fine steps: for faces that are level, upright and aslant, seen
// from high and low, within 15 % and 0.0005.
func TestShine(t *testing.T) {
	rig := built(poured(), SetOptions{Draft: true}).room().rig
	p := v3{600, 300, 45}
	for _, n := range []v3{{Z: 1}, {Y: -1}, v3{-0.6, -0.6, 0.5}.unit(), v3{0.3, -0.8, 0.5}.unit()} {
		for _, o := range []v3{v3{-0.2, -0.8, 0.56}.unit(), v3{0.5, -0.8, 0.2}.unit()} {
			for _, a := range []float64{0.03, 0.08, 0.16, 0.45} {
				for i := range rig.lights {
					l := &rig.lights[i]
					got, _ := l.shine(p, n, o, a)
					want := 0.0
					const m = 400
					for j := range m * m {
						q := l.point((float64(j%m)+0.5)/m, (float64(j/m)+0.5)/m).sub(p)
						r2 := q.dot(q)
						d := q.mul(1 / math.Sqrt(r2))
						cl, co := d.dot(n), o.dot(n)
						if cl <= 0 || co <= 0 || -d.dot(l.n) <= 0 {
							continue
						}
						h := d.add(o).unit()
						c2 := h.dot(n) * h.dot(n)
						k := c2*(a*a-1) + 1
						ggx := a * a / (math.Pi * k * k)
						want += ggx * masking(cl, a) * masking(co, a) / (4 * co) * -d.dot(l.n) / r2 * l.area() / (m * m)
					}
					if !(math.Abs(got-want) <= 0.15*want+0.0005) {
						t.Errorf("n %.1f, eye %.1f, roughness %g, light %d: %.4f of it is mirrored, want %.4f", n, o, a, i, got, want)
					}
				}
			}
		}
	}
}

package picture

import (
	"math"
	"sync"
)

// softbox is a rectangular light that shines from one side with an even
// radiance.
type softbox struct {
	c      v3 // centre
	u, v   v3 // unit vectors along the sides
	n      v3 // the way it shines
	hu, hv float64
	l      v3 // radiance
}

// newSoftbox aims a light of w x h millimetres at a place.
func newSoftbox(c, target v3, w, h float64, l v3) softbox {
	n := target.sub(c).unit()
	u := v3{Z: 1}.cross(n)
	if u.norm() < 1e-6 {
		u = v3{X: 1}
	}
	u = u.unit()
	return softbox{c: c, u: u, v: n.cross(u), n: n, hu: w / 2, hv: h / 2, l: l}
}

// point is a place on the light; a and b run from 0 to 1.
func (s *softbox) point(a, b float64) v3 {
	return s.c.along(s.u, (2*a-1)*s.hu).along(s.v, (2*b-1)*s.hv)
}

func (s *softbox) area() float64 { return 4 * s.hu * s.hv }

// meets finds where a ray meets the light's plane from its bright side.
func (s *softbox) meets(r ray) (t, a, b float64, ok bool) {
	k := r.d.dot(s.n)
	if k >= -1e-9 {
		return 0, 0, 0, false
	}
	q := s.c.sub(r.o)
	if t = q.dot(s.n) / k; t <= 0 {
		return 0, 0, 0, false
	}
	q = r.d.mul(t).sub(q)
	return t, q.dot(s.u), q.dot(s.v), true
}

// hit reports whether a ray meets the light itself, and how far away.
func (s *softbox) hit(r ray) (float64, bool) {
	t, a, b, ok := s.meets(r)
	return t, ok && math.Abs(a) <= s.hu && math.Abs(b) <= s.hv
}

// share is the irradiance at p of normal n over pi times the radiance: the
// light's form factor by Lambert's sum over the sides of the polygon, cut off at
// the horizon.
func (s *softbox) share(p, n v3) float64 {
	if s.n.dot(p.sub(s.c)) <= 0 {
		return 0
	}
	var quad, cut [8]v3
	quad[0], quad[1] = s.point(0, 0).sub(p), s.point(0, 1).sub(p)
	quad[2], quad[3] = s.point(1, 1).sub(p), s.point(1, 0).sub(p)
	m := 0
	for i := range 4 {
		a, b := quad[i], quad[(i+1)&3]
		da, db := a.dot(n), b.dot(n)
		if da > 0 {
			cut[m] = a
			m++
		}
		if (da > 0) != (db > 0) {
			cut[m] = a.mix(b, da/(da-db))
			m++
		}
	}
	if m < 3 {
		return 0
	}
	sum := 0.0
	prev := cut[m-1].unit()
	for i := range m {
		next := cut[i].unit()
		sum += arcOverSine(prev.dot(next)) * prev.cross(next).dot(n)
		prev = next
	}
	return math.Abs(sum) / (2 * math.Pi)
}

// arcOverSine is an angle over its sine, by its cosine x: to 3e-9 by the Chebyshev
// series for cosines from 0 to 1, written as a polynomial.
func arcOverSine(x float64) float64 {
	y := math.Abs(x)
	v := 1.57079632399 + y*(-0.999999294863+y*(0.785368621376+y*(-0.666178024056+y*(0.584830376092+
		y*(-0.511528251446+y*(0.417678983431+y*(-0.288407422498+y*(0.148879918317+
			y*(-0.0489340116925+y*0.00749278336414)))))))))
	if x < 0 {
		return math.Pi/math.Sqrt(max(1-x*x, 1e-12)) - v
	}
	return v
}

// sheen is how much of the light a coat of roughness a mirrors along r: the
// light's rectangle blurred by the lobe's width where it meets the light's
// plane. Against sampled GGX, for lights about the mirror ray at all angles, the
// rms error is 0.03 to 0.05 of the radiance for a of 0.08 to 0.3.
func (s *softbox) sheen(r ray, a float64) (float64, float64) {
	t, u, v, ok := s.meets(r)
	if !ok {
		return 0, 0
	}
	sigma := 1.6*a*t + 0.0015*t
	k := math.Sqrt2 * sigma
	if math.Abs(u) > s.hu+3.5*sigma || math.Abs(v) > s.hv+3.5*sigma {
		return 0, t
	}
	return 0.25 * (math.Erf((s.hu-u)/k) + math.Erf((s.hu+u)/k)) *
		(math.Erf((s.hv-v)/k) + math.Erf((s.hv+v)/k)), t
}

// rig is the light of one kind of view.
type rig struct {
	lights   []softbox
	low, top float64 // radiance of the studio below and overhead
	tilt     float64 // how much darker it is behind the viewer
	glow     float64 // of a window there, in parts of top
	cast     v3      // how far the studio's colour is from white
}

// window is the direction of a soft window behind the viewer, low, so that
// rounded edges and falls catch a line of light.
var window = v3{-0.35, -0.9, 0.27}.unit()

// Cosines of the angles from its middle at which the window is dark and bright.
const windowRim, windowFull = 0.93, 0.985

// windowPlace is a direction toward a place of the window and how bright it is
// there; the places of a square of numbers fill the window evenly.
func windowPlace(u, v float64) (d v3, bright float64) {
	c := windowRim + (1-windowRim)*u
	sin, cos := math.Sincos(2 * math.Pi * v)
	x, y := frame(window)
	r := math.Sqrt(max(0, 1-c*c))
	return x.mul(r*cos).add(y.mul(r*sin)).along(window, c), smooth(windowRim, windowFull, c)
}

// windowShare is the irradiance over pi from a window of radiance 1, by the
// cosine between its middle and the normal, from -1 to 1.
var windowShare = sync.OnceValue(func() *[129]float64 {
	t := new([129]float64)
	const nc, na = 24, 48
	for i := range nc {
		for j := range na {
			c := windowRim + (1-windowRim)*(float64(i)+0.5)/nc
			b := smooth(windowRim, windowFull, c) * (1 - windowRim) * 2 / (nc * na)
			r := math.Sqrt(1-c*c) * math.Cos(2*math.Pi*(float64(j)+0.5)/na)
			for k := range t {
				n := float64(k)/64 - 1
				t[k] += b * max(0, c*n+r*math.Sqrt(max(0, 1-n*n)))
			}
		}
	}
	return t
})

// windowLight is the irradiance over pi from the window with nothing in the way.
func (g *rig) windowLight(n v3) v3 {
	if g.glow <= 0 {
		return v3{}
	}
	x := (n.dot(window) + 1) * 64
	i := max(0, min(127, int(x)))
	t := windowShare()
	k := t[i] + (t[i+1]-t[i])*(x-float64(i))
	return g.coloured(k * g.glow * g.top)
}

func (g *rig) coloured(k float64) v3 { return v3{k + k*g.cast.X, k + k*g.cast.Y, k + k*g.cast.Z} }

// backdrop is the studio without its window.
func (g *rig) backdrop(d v3) v3 {
	return g.coloured((g.low + (g.top-g.low)*(0.5+0.5*d.Z)) * (1 + g.tilt*d.Y))
}

// studio is the radiance that comes from direction d where nothing stands.
func (g *rig) studio(d v3) v3 {
	k := g.backdrop(d)
	if c := d.dot(window); g.glow > 0 && c > windowRim {
		k = k.add(g.coloured(g.glow * g.top * smooth(windowRim, windowFull, c)))
	}
	return k
}

// even is the irradiance over pi from the studio without its window, through a
// coat, with nothing in the way. The studio is a polynomial of the direction, so
// it takes the moments of the cosine alone: with m the means of 1, c and c² by
// 2 c pass(c), the mean direction is m1 n, and that of the product of two of its
// parts (m0 - m2)/2 off the diagonal, and (3 m2 - m0)/2 times those of n.
func (g *rig) even(n v3, p pass) v3 {
	m := moments(p.a)
	mid, up := (g.low+g.top)/2, (g.top-g.low)/2
	k := mid*(m[0]+g.tilt*n.Y*m[1]) + up*(n.Z*m[1]+g.tilt*n.Y*n.Z*(3*m[2]-m[0])/2)
	return g.coloured(k)
}

// moments are the means of 1, c and c² over a hemisphere by the cosine, with the
// pass of a coat of roughness a.
func moments(a float64) [3]float64 {
	if a < 0 {
		return [3]float64{1, 2.0 / 3, 1.0 / 2}
	}
	t := passMoments()
	x := min(1, a) * (coatRough - 1)
	i := min(int(x), coatRough-2)
	x -= float64(i)
	var m [3]float64
	for k := range m {
		m[k] = t[i][k] + (t[i+1][k]-t[i][k])*x
	}
	return m
}

var passMoments = sync.OnceValue(func() *[coatRough][3]float64 {
	t := new([coatRough][3]float64)
	const n = 200
	for i := range t {
		p := passing(float64(i) / (coatRough - 1))
		for j := range n {
			c := (float64(j) + 0.5) / n
			w := 2 * c * p.at(c) / n
			t[i][0] += w
			t[i][1] += w * c
			t[i][2] += w * c * c
		}
	}
	return t
})

// brightGleam bounds what is seen of a light in a small mirror.
const brightGleam = 4.0

// sky is what a ray meets above: a light or the studio.
func (g *rig) sky(r ray) v3 {
	for i := range g.lights {
		if _, on := g.lights[i].hit(r); on {
			l := g.lights[i].l
			return l.mul(min(1, brightGleam/l.most()))
		}
	}
	return g.studio(r.d)
}

// open is the irradiance over pi at p of normal n with nothing in the way.
func (g *rig) open(p, n v3) v3 {
	sum := g.even(n, pass{-1, 0}).add(g.windowLight(n))
	for i := range g.lights {
		sum = sum.add(g.lights[i].l.mul(g.lights[i].share(p, n)))
	}
	return sum
}

// scale makes all light k times as bright.
func (g *rig) scale(k float64) {
	for i := range g.lights {
		g.lights[i].l = g.lights[i].l.mul(k)
	}
	g.low, g.top = g.low*k, g.top*k
}

// tint multiplies all light by a colour.
func (g *rig) tint(c v3) {
	for i := range g.lights {
		g.lights[i].l = g.lights[i].l.times(c)
	}
	g.cast = v3{(1+g.cast.X)*c.X - 1, (1+g.cast.Y)*c.Y - 1, (1+g.cast.Z)*c.Z - 1}
}

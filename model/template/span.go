package template

import (
	"math"

	"example.org/castwright/model/geom"
)

// kind is the shape of a span.
type kind uint8

const (
	line kind = iota
	arc
	cubic
)

// span is one piece of a chain. Lengths are in the unit of the file until
// [Read] scales them to millimetres.
type span struct {
	kind   kind
	a, b   geom.Vec // start and end
	c1, c2 geom.Vec // control points of a cubic
	// bulge of an arc is the tangent of a quarter of its angle, positive when
	// it runs counter-clockwise from a to b (so it lies right of the chord).
	bulge float64
}

// reversed is the span run the other way.
func (s span) reversed() span {
	return span{s.kind, s.b, s.a, s.c2, s.c1, -s.bulge}
}

// between is the span with its ends moved a little: an arc still passes its
// middle, a cubic keeps its directions.
func (s span) between(a, b geom.Vec) span {
	switch s.kind {
	case arc:
		middle, chord := s.at(0.5), b.Sub(a)
		if n := chord.Norm(); n > 0 {
			rise := middle.Sub(a.Lerp(b, 0.5)).Dot(chord.Unit().Left().Mul(-1))
			s.bulge = 2 * rise / n
		}
	case cubic:
		s.c1, s.c2 = s.c1.Add(a.Sub(s.a)), s.c2.Add(b.Sub(s.b))
	}
	s.a, s.b = a, b
	return s
}

// affine is the map x' = a x + c y + e, y' = b x + d y + f, as SVG writes it.
type affine struct{ a, b, c, d, e, f float64 }

var identity = affine{a: 1, d: 1}

// then is the map that does m first and n after it.
func (m affine) then(n affine) affine {
	return affine{
		n.a*m.a + n.c*m.b, n.b*m.a + n.d*m.b,
		n.a*m.c + n.c*m.d, n.b*m.c + n.d*m.d,
		n.a*m.e + n.c*m.f + n.e, n.b*m.e + n.d*m.f + n.f,
	}
}

func (m affine) apply(p geom.Vec) geom.Vec {
	return geom.Vec{X: m.a*p.X + m.c*p.Y + m.e, Y: m.b*p.X + m.d*p.Y + m.f}
}

// similar reports whether m keeps circles circles, and whether it mirrors.
func (m affine) similar() (yes, mirrored bool) {
	size := math.Hypot(m.a, m.b)
	tol := 1e-9 * (size + math.Hypot(m.c, m.d))
	switch {
	case math.Abs(m.a-m.d) <= tol && math.Abs(m.b+m.c) <= tol:
		return true, false
	case math.Abs(m.a+m.d) <= tol && math.Abs(m.b-m.c) <= tol:
		return true, true
	}
	return false, false
}

// transform is the span under m; an arc that would not stay circular becomes
// cubics.
func (s span) transform(m affine, out []span) []span {
	if s.kind == arc {
		similar, mirrored := m.similar()
		if !similar {
			for _, c := range s.cubics() {
				out = c.transform(m, out)
			}
			return out
		}
		if mirrored {
			s.bulge = -s.bulge
		}
	}
	s.a, s.b, s.c1, s.c2 = m.apply(s.a), m.apply(s.b), m.apply(s.c1), m.apply(s.c2)
	return append(out, s)
}

// circle gives an arc's centre, radius, start angle and signed sweep.
func (s span) circle() (centre geom.Vec, r, start, sweep float64) {
	chord := s.b.Sub(s.a)
	sweep = 4 * math.Atan(s.bulge)
	// The centre lies left of the chord's middle for a small positive bulge.
	h := (1 - s.bulge*s.bulge) / (4 * s.bulge)
	centre = s.a.Lerp(s.b, 0.5).Add(chord.Left().Mul(h))
	from := s.a.Sub(centre)
	return centre, from.Norm(), math.Atan2(from.Y, from.X), sweep
}

// cubics is an arc as cubics of at most a sixteenth of a circle each; the
// radial error is below 1e-7 of the radius.
func (s span) cubics() []span {
	centre, r, start, sweep := s.circle()
	n := max(1, int(math.Ceil(math.Abs(sweep)/(math.Pi/8)-1e-9)))
	return ellipseCubics(centre, geom.Vec{X: r}, geom.Vec{Y: r}, start, sweep, n)
}

// ellipseCubics draws centre + u cos t + v sin t over the sweep in n cubics.
func ellipseCubics(centre, u, v geom.Vec, start, sweep float64, n int) []span {
	at := func(t float64) geom.Vec {
		sin, cos := math.Sincos(t)
		return centre.Add(u.Mul(cos)).Add(v.Mul(sin))
	}
	slope := func(t float64) geom.Vec {
		sin, cos := math.Sincos(t)
		return v.Mul(cos).Sub(u.Mul(sin))
	}
	step := sweep / float64(n)
	k := 4.0 / 3 * math.Tan(step/4)
	out := make([]span, n)
	for i := range out {
		t0, t1 := start+step*float64(i), start+step*float64(i+1)
		p, q := at(t0), at(t1)
		out[i] = span{kind: cubic, a: p, b: q, c1: p.Add(slope(t0).Mul(k)), c2: q.Sub(slope(t1).Mul(k))}
	}
	return out
}

// fullCircle is a circle as two arcs, counter-clockwise.
func fullCircle(c geom.Vec, r float64) []span {
	p, q := geom.Vec{X: c.X + r, Y: c.Y}, geom.Vec{X: c.X - r, Y: c.Y}
	return []span{{kind: arc, a: p, b: q, bulge: 1}, {kind: arc, a: q, b: p, bulge: 1}}
}

// finite reports whether every number of the span can be drawn.
func (s span) finite() bool {
	for _, p := range [...]geom.Vec{s.a, s.b, s.c1, s.c2} {
		if !p.Finite() || math.Abs(p.X) > maxCoordinate || math.Abs(p.Y) > maxCoordinate {
			return false
		}
	}
	return !math.IsNaN(s.bulge-s.bulge) && math.Abs(s.bulge) < 1e6
}

// at is the point at t in [0, 1].
func (s span) at(t float64) geom.Vec {
	switch s.kind {
	case arc:
		centre, r, start, sweep := s.circle()
		sin, cos := math.Sincos(start + sweep*t)
		return geom.Vec{X: centre.X + r*cos, Y: centre.Y + r*sin}
	case cubic:
		m := 1 - t
		return s.a.Mul(m * m * m).Add(s.c1.Mul(3 * m * m * t)).Add(s.c2.Mul(3 * m * t * t)).Add(s.b.Mul(t * t * t))
	}
	return s.a.Lerp(s.b, t)
}

// moments are the area, first moments of area and length that a span adds to
// the chain it belongs to, by Green's theorem about an origin: the area is the
// integral of x dy - y dx over 2.
func (s span) moments(origin geom.Vec) (area float64, first geom.Vec, length float64) {
	if s.kind == line {
		a, b := s.a.Sub(origin), s.b.Sub(origin)
		cross := a.Cross(b)
		return cross / 2, a.Add(b).Mul(cross / 6), s.a.Dist(s.b)
	}
	s.walk(func(p, d geom.Vec, w float64) {
		p = p.Sub(origin)
		area += w * p.Cross(d) / 2
		first = first.Add(p.Mul(w * p.Cross(d) / 3))
		length += w * d.Norm()
	})
	return area, first, length
}

// area is the same area alone, without ado: a segment of a circle has a closed form
// (any mensuration handbook), and six points of Gauss are exact for a cubic's.
func (s span) area(origin geom.Vec) float64 {
	sum := s.a.Sub(origin).Cross(s.b.Sub(origin)) / 2
	switch s.kind {
	case arc:
		sweep := 4 * math.Atan(s.bulge)
		r := s.a.Dist(s.b) * (1 + s.bulge*s.bulge) / (4 * math.Abs(s.bulge))
		sum += r * r / 2 * (sweep - math.Sin(sweep))
	case cubic:
		sum = 0
		for g, x := range gaussX {
			sum += gaussW[g] * s.at(x).Sub(origin).Cross(s.slope(x)) / 2
		}
	}
	return sum
}

// length is the span's own.
func (s span) length() float64 {
	switch s.kind {
	case line:
		return s.a.Dist(s.b)
	case arc:
		_, r, _, sweep := s.circle()
		return r * math.Abs(sweep)
	}
	sum := 0.0
	s.walk(func(_, d geom.Vec, w float64) { sum += w * d.Norm() })
	return sum
}

// walk gives points of a curve with the derivative by the parameter and the
// weight there. Gauss-Legendre on sub-spans is exact for a cubic's area and
// moments, and to rounding for an arc of at most 1/16 turn.
func (s span) walk(f func(p, d geom.Vec, w float64)) {
	n := 8
	if s.kind == arc {
		n = 2 + int(math.Abs(4*math.Atan(s.bulge))/(math.Pi/8))
	}
	for i := range n {
		t0, dt := float64(i)/float64(n), 1/float64(n)
		for g, x := range gaussX {
			t := t0 + dt*x
			f(s.at(t), s.slope(t), gaussW[g]*dt)
		}
	}
}

// slope is the derivative by t.
func (s span) slope(t float64) geom.Vec {
	switch s.kind {
	case arc:
		centre, _, _, sweep := s.circle()
		return s.at(t).Sub(centre).Left().Mul(sweep)
	case cubic:
		m := 1 - t
		return s.c1.Sub(s.a).Mul(3 * m * m).Add(s.c2.Sub(s.c1).Mul(6 * m * t)).Add(s.b.Sub(s.c2).Mul(3 * t * t))
	}
	return s.b.Sub(s.a)
}

// gaussX and gaussW are the six-point Gauss-Legendre rule on [0, 1]
// (Abramowitz and Stegun, Table 25.4, from memory; a test integrates x^10).
var (
	gaussX = [...]float64{
		0.033765242898423975, 0.16939530676686776, 0.38069040695840156,
		0.61930959304159844, 0.83060469323313224, 0.96623475710157603,
	}
	gaussW = [...]float64{
		0.085662246189585178, 0.18038078652406930, 0.23395696728634552,
		0.23395696728634552, 0.18038078652406930, 0.085662246189585178,
	}
)

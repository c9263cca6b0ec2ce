package slab_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
)

// Inner and outer parallel bodies by Steiner's formula (R. Schneider, Convex
// Bodies): drawn in by d, a polygon of area A and perimeter P loses P d, gets
// back d² tan(turn/2) for every outer corner, where the strips overlap, and loses
// d² turn/2 for every inner one, where the cut goes round.

// insetPowers are the integrals over the height of the inset and of its square.
func insetPowers(p design.Profile, t float64) (d1, d2 float64) {
	quarter := func(r float64) (float64, float64) {
		return r * r * (1 - math.Pi/4), r * r * r * (5./3 - math.Pi/2)
	}
	r := p.Size.MM()
	switch p.Kind {
	case design.ProfileEased, design.ProfileRounded:
		return quarter(r)
	case design.ProfileBevelled:
		return r * r / 2, r * r * r / 3
	case design.ProfileHalfRound:
		if r == 0 {
			r = t / 2
		}
		return quarter(r)
	case design.ProfileFullRound:
		d1, d2 = quarter(t / 2)
		return 2 * d1, 2 * d2
	}
	return 0, 0
}

var everyProfile = []struct {
	name string
	p    design.Profile
}{
	{"square", profile(design.ProfileSquare, 0)},
	{"eased", profile(design.ProfileEased, 2)},
	{"rounded", profile(design.ProfileRounded, 12.7)},
	{"bevelled", profile(design.ProfileBevelled, 9)},
	{"half round by size", profile(design.ProfileHalfRound, 15)},
	{"half round by thickness", profile(design.ProfileHalfRound, 0)},
	{"full round", profile(design.ProfileFullRound, 0)},
	{"rough", profile(design.ProfileRough, 12)},
}

func TestStraightEdges(t *testing.T) {
	const thick = 38.1
	for _, c := range everyProfile {
		d1, d2 := insetPowers(c.p, thick)
		for _, s := range []struct {
			name      string
			nodes     []design.Node
			a, p, fix float64 // area, perimeter, factor of d²
		}{
			{"rectangle", rectangle(1524, 558.8), 1524 * 558.8, 2 * (1524 + 558.8), 4},
			// The handbook's triangle 3-4-5, a hundred times as large.
			{"triangle", nodes(0, 0, 400, 0, 0, 300), 60000, 1200,
				1 + 1/math.Tan(math.Atan2(3, 4)/2) + 1/math.Tan(math.Atan2(4, 3)/2)},
			// The handbook's L, ten times as large: five outer corners, one inner.
			{"L", nodes(0, 0, 600, 0, 600, 220, 400, 220, 400, 400, 0, 400), 204000, 2000, 5 - math.Pi/4},
			{"hexagon", polar(0, 0, 6, 300), 1.5 * math.Sqrt(3) * 300 * 300, 1800, 6 * math.Tan(math.Pi/6)},
		} {
			m := slab.Resolve(top(thick, c.p, s.nodes)).Measure(2)
			name := c.name + " " + s.name
			same(t, name, m.ConcreteVolume, s.a*thick-s.p*d1+s.fix*d2, 1e-8)
			same(t, name+" plan", m.PlanArea, s.a, 1e-8)
			same(t, name+" perimeter", m.OutlinePerimeter, s.p, 1e-8)
			r := slab.Inset(c.p, thick, thick)
			same(t, name+" ground face", m.GrindVolume, 2*(s.a-s.p*r+s.fix*r*r), 1e-8)
		}
	}
}

// A top with rounded corners whose radius exceeds the inset is a parallel body
// itself: drawn in, the corner's radius shrinks.
func TestRoundedCorners(t *testing.T) {
	const thick, w, h, r = 38.1, 1200, 600, 40
	for _, c := range everyProfile {
		d1, d2 := insetPowers(c.p, thick)
		n := rectangle(w, h)
		for i := range n {
			n[i].Corner = design.Corner{Kind: design.CornerRounded, Size: mm(r)}
		}
		m := slab.Resolve(top(thick, c.p, n)).Measure(0)
		// Rounded rectangle: A = LW - (4 - pi) r², P = 2 (L + W) - (8 - 2 pi) r.
		a, p := w*h-(4-math.Pi)*r*r, 2*(w+h)-(8-2*math.Pi)*r
		same(t, c.name+" plan", m.PlanArea, a, 1e-10)
		same(t, c.name+" perimeter", m.OutlinePerimeter, p, 1e-12)
		same(t, c.name, m.ConcreteVolume, a*thick-p*d1+math.Pi*d2, 1e-9)
	}
}

// The handbook's rounded rectangle, 60 by 22 with radius 2, in inches, and the
// same as the top of the worked example, 1.5 in thick.
func TestHandbookTop(t *testing.T) {
	const inch = 25.4
	n := rectangle(60*inch, 22*inch)
	for i := range n {
		n[i].Corner = design.Corner{Kind: design.CornerRounded, Size: mm(2 * inch)}
	}
	m := slab.Resolve(top(1.5*inch, design.Profile{}, n)).Measure(0)
	same(t, "area", m.PlanArea/inch/inch, 1316.566371, 1e-9)
	same(t, "perimeter", m.OutlinePerimeter/inch, 160.566371, 1e-8)

	// The edge round of radius 0.5 over the perimeter of 164 of the square top
	// takes (1 - pi/4) r² P = 8.798675, less what the corners share.
	m = slab.Resolve(top(1.5*inch, profile(design.ProfileRounded, 0.5*inch), rectangle(60*inch, 22*inch))).Measure(0)
	lost := 60*22*1.5 - m.ConcreteVolume/inch/inch/inch
	_, d2 := insetPowers(profile(design.ProfileRounded, 0.5*inch), 1.5*inch)
	near(t, "edge round", lost, 8.798675-4*d2/(inch*inch*inch), 1e-6)

	// Plate with an elliptic hole, 60 by 22 with 17 by 14 at (30, 10).
	for _, c := range []struct{ x, y, cx, cy float64 }{
		{30, 10, 30, 11.164971}, {30, 12, 30, 10.835029}, {20, 11, 31.649712, 11},
	} {
		d := top(1.5*inch, design.Profile{}, rectangle(60*inch, 22*inch))
		d.Sinks = []design.Sink{{ID: "s", At: pt(c.x*inch, c.y*inch), Shape: sinkShape(design.ShapeEllipse, 17*inch, 14*inch)}}
		m = slab.Resolve(d).Measure(0)
		same(t, "plate with hole", m.NetArea/inch/inch, 1133.075237, 1e-9)
		near(t, "plate with hole x", m.ConcreteCentroid[0]/inch, c.cx, 1e-6)
		near(t, "plate with hole y", m.ConcreteCentroid[1]/inch, c.cy, 1e-6)
		near(t, "plate with hole perimeter", m.CutoutPerimeter/inch, 48.8087624311, 1e-9)
	}
}

// Stadium: A = 2 r L + pi r², P = 2 L + 2 pi r; drawn in it stays a stadium.
func TestStadium(t *testing.T) {
	const l, r, thick = 1000, 300, 38
	for _, c := range everyProfile {
		n := nodes(0, 0, l, 0, l, 2*r, 0, 2*r)
		n[1].Edge = design.Edge{Curve: design.CurveArc, Rise: mm(r)}
		n[3].Edge = n[1].Edge
		d1, d2 := insetPowers(c.p, thick)
		m := slab.Resolve(top(thick, c.p, n)).Measure(0)
		a, p := 2.*r*l+math.Pi*r*r, 2*l+2*math.Pi*r
		same(t, c.name+" area", m.PlanArea, a, 1e-10)
		same(t, c.name, m.ConcreteVolume, a*thick-p*d1+math.Pi*d2, 1e-9)
	}
}

// Circle segments by the rise of an arc over its chord (area, chord, sagitta and
// centroid of the segment from the handbook's table for r = 10, in centimetres).
func TestSegments(t *testing.T) {
	for _, c := range []struct{ area, chord, rise, centroid float64 }{
		{9.058607, 10, 1.339746, 9.199354},
		{28.539816, 14.142136, 2.928932, 8.258717},
		{61.418485, 17.320508, 5, 7.050202},
		{157.079633, 20, 10, 4.244132},
	} {
		half := 10 * c.chord / 2
		n := nodes(-half, 0, half, 0)
		n[1].Edge = design.Edge{Curve: design.CurveArc, Rise: mm(10 * c.rise)}
		m := slab.Resolve(top(30, design.Profile{}, n)).Measure(0)
		near(t, "segment area", m.PlanArea, 100*c.area, 1e-4)
		// The flattened arc keeps the area exactly; its moments carry the tolerance.
		near(t, "segment centroid", m.ConcreteCentroid[1], 10*(c.centroid-(10-c.rise)), 5e-4)
	}
}

// A half disc bitten out of the front: a concave edge that meets straight ones
// at right angles. Drawn in by d the bite grows to radius r + d; the strip along
// the front and the ring share, at either side, what lies between the two circles
// below the height d.
func TestConcaveEdge(t *testing.T) {
	const w, h, r, thick = 1000, 600, 150, 38.
	for _, c := range everyProfile {
		n := nodes(0, 0, w/2-r, 0, w/2+r, 0, w, 0, w, h, 0, h)
		n[1].Edge = design.Edge{Curve: design.CurveArc, Rise: mm(-r)}
		area := func(z float64) float64 {
			d := slab.Inset(c.p, thick, z)
			under := func(r float64) float64 { // of the circle from 0 to the height d
				return (d*math.Sqrt(r*r-d*d) + r*r*math.Asin(d/r)) / 2
			}
			front := (w-2*d)*d - 2*(under(r+d))
			return (w-2*d)*(h-d) - math.Pi*(r+d)*(r+d)/2 - front
		}
		want := simpson(area, thick, c.p)
		m := slab.Resolve(top(thick, c.p, n)).Measure(0)
		same(t, c.name, m.ConcreteVolume, want, 2e-7)
	}
}

// simpson integrates over the height with the square root at the face, or at
// both faces, taken out; it knows nothing of the rule that the code uses.
func simpson(f func(z float64) float64, thick float64, p design.Profile) float64 {
	r := p.Size.MM()
	if p.Kind == design.ProfileFullRound || p.Kind == design.ProfileHalfRound && r == 0 {
		r = thick / 2
	}
	lo := thick - r
	total := 0.0
	part := func(g func(u float64) float64, a, b float64) {
		const n = 2000
		sum := g(a) + g(b)
		for i := 1; i < n; i++ {
			sum += g(a+(b-a)*float64(i)/n) * float64(2+2*(i%2))
		}
		total += sum * (b - a) / (3 * n)
	}
	part(func(u float64) float64 { return 2 * u * f(thick-u*u) }, 0, math.Sqrt(r))
	if p.Kind == design.ProfileFullRound {
		part(func(u float64) float64 { return 2 * u * f(u*u) }, 0, math.Sqrt(lo))
		return total
	}
	return total + lo*f(lo/2)
}

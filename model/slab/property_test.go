package slab_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
	"gonum.org/v1/gonum/integrate/quad"
)

// sane makes sensible tops at random: star-shaped outlines with any curves,
// corners and profiles, and, when asked, openings and channels anywhere.
func sane(r *rand.Rand, furnished bool) design.Design {
	n := polarRandom(r, 3+r.IntN(8))
	for i := range n {
		n[i].Edge.Profile = everyProfile[r.IntN(len(everyProfile))].p
		next := n[(i+1)%len(n)]
		chord := math.Hypot((next.At.X - n[i].At.X).MM(), (next.At.Y - n[i].At.Y).MM())
		switch r.IntN(4) {
		case 0:
			n[i].Edge.Curve = design.CurveArc
			n[i].Edge.Rise = mm(chord * (0.35*r.Float64() - 0.12))
		case 1:
			d := geom.Vec{X: (next.At.X - n[i].At.X).MM(), Y: (next.At.Y - n[i].At.Y).MM()}
			side := d.Left().Mul(0.3*r.Float64() - 0.2)
			a := geom.Vec{X: n[i].At.X.MM(), Y: n[i].At.Y.MM()}
			c1, c2 := a.Add(d.Mul(0.3)).Add(side), a.Add(d.Mul(0.7)).Add(side)
			n[i].Edge.Curve, n[i].Edge.C1, n[i].Edge.C2 = design.CurveSpline, pt(c1.X, c1.Y), pt(c2.X, c2.Y)
		}
		if r.IntN(3) == 0 {
			n[i].Corner = design.Corner{Kind: design.CornerKind(1 + r.IntN(2)), Size: mm(5 + 40*r.Float64())}
		}
	}
	d := design.Design{Outline: design.Outline{Nodes: n}, Thickness: mm(25 + 15*r.Float64()),
		Finish: design.Finish{Polish: 2}}
	if !furnished {
		return d
	}
	at := func() design.Point { return pt(600*(r.Float64()-0.5), 300*(r.Float64()-0.5)) }
	for i := range r.IntN(3) {
		k := design.Sink{ID: design.ID(fmt.Sprint("sink-", i)), At: at(), Rotation: units.FromDegrees(360 * r.Float64()),
			Shape: design.Shape{Kind: design.ShapeKind(r.IntN(4)), Width: mm(150 + 200*r.Float64()), Depth: mm(120 + 150*r.Float64()),
				CornerRadius: mm(30), Bow: mm(50)},
			Reveal:  design.Reveal{Kind: design.RevealKind(r.IntN(3)), Size: mm(6 * r.Float64())},
			Profile: profile(design.ProfileRounded, 1+9*r.Float64())}
		d.Sinks = append(d.Sinks, k)
		d.Taps = append(d.Taps, design.TapSet{ID: design.ID(fmt.Sprint("taps-", i)), Pattern: design.TapPattern(r.IntN(3)),
			Diameter: mm(35), Sink: k.ID, SetBack: mm(55), Offset: mm(20)})
	}
	for i := range r.IntN(4) {
		d.Holes = append(d.Holes, design.Hole{ID: design.ID(fmt.Sprint("hole-", i)), At: at(), Diameter: mm(20 + 60*r.Float64())})
	}
	for i := range r.IntN(3) {
		c := design.Channel{ID: design.ID(fmt.Sprint("river-", i)), Depth: mm(3 + 12*r.Float64()), Fill: design.Fill{Resin: r.IntN(2) == 0}}
		for range 1 + r.IntN(2) {
			v := design.River{Start: design.RiverEnd(r.IntN(3)), End: design.RiverEnd(r.IntN(3))}
			for k := range 2 + r.IntN(4) {
				v.Nodes = append(v.Nodes, design.RiverNode{At: pt(-400+220*float64(k)+80*r.Float64(), 250*(r.Float64()-0.5)), Width: mm(10 + 60*r.Float64())})
			}
			c.Rivers = append(c.Rivers, v)
		}
		d.Channels = append(d.Channels, c)
	}
	return d
}

func polarRandom(r *rand.Rand, count int) []design.Node {
	var xy []float64
	for i := range count {
		s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.5*r.Float64()) / float64(count))
		f := 0.6 + 0.4*r.Float64()
		xy = append(xy, 700*f*c, 380*f*s)
	}
	return nodes(xy...)
}

// A point is gone when it lies nearer to an edge than that edge's inset: sections
// against that sentence itself, at random points.
func TestDrawnInByDistance(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 1))
	for i := range 150 {
		s := slab.Resolve(sane(r, false))
		z := s.Thickness * (1 - 0.3*r.Float64()*r.Float64())
		whole := geom.NewFence(s.Outline)
		section := geom.NewFence(s.Section(z)...)
		box := s.Outline.Bounds()
		for range 400 {
			p := geom.Vec{X: box.Min.X + box.W()*r.Float64(), Y: box.Min.Y + box.H()*r.Float64()}
			if r.IntN(2) == 0 { // near the edge, where it matters
				side := s.Sides[r.IntN(len(s.Sides))]
				p = side.Points[r.IntN(len(side.Points))].Add(geom.Vec{X: 40 * (r.Float64() - 0.5), Y: 40 * (r.Float64() - 0.5)})
			}
			if !whole.Contains(p) {
				continue
			}
			spare := math.Inf(1) // how far p is from being gone
			for _, side := range s.Sides {
				if x := slab.Inset(side.Profile, s.Thickness, z); x > 0 {
					_, d, _ := geom.NearestOnLine(p, side.Points)
					spare = math.Min(spare, d-x)
				}
			}
			if math.Abs(spare) < 2*slab.Tolerance {
				continue
			}
			if section.Contains(p) != (spare > 0) {
				t.Fatalf("top %d, z %g of %g: %v is %g from being gone, but section says %v", i, z, s.Thickness, p, spare, spare < 0)
			}
		}
	}
}

// The loops of a section and the volume's sweep are two readings of one region:
// the volume is the integral of the loops' area.
func TestSectionsMakeVolume(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 1))
	for i := range 6 {
		d := sane(r, true)
		s := slab.Resolve(d)
		area := func(z float64) float64 {
			a := 0.0
			for _, l := range s.Section(z) {
				a += l.Area()
			}
			return a
		}
		cuts := []float64{0, s.Thickness / 2, s.Thickness}
		for _, c := range d.Channels {
			cuts = append(cuts, s.Thickness-c.Depth.MM())
		}
		for _, side := range s.Sides {
			cuts = append(cuts, s.Thickness-side.Profile.Size.MM())
		}
		for _, k := range d.Sinks {
			cuts = append(cuts, s.Thickness-k.Profile.Size.MM())
		}
		slices.Sort(cuts)
		want := 0.0
		for k := 1; k < len(cuts); k++ {
			lo, hi := math.Max(0, cuts[k-1]), math.Min(s.Thickness, cuts[k])
			if hi <= lo {
				continue
			}
			// z = mid - half cos(angle) takes out the roots at both ends.
			want += quad.Fixed(func(a float64) float64 {
				return area((lo+hi)/2-(hi-lo)/2*math.Cos(a)) * (hi - lo) / 2 * math.Sin(a)
			}, 0, math.Pi, 24, quad.Legendre{}, 0)
		}
		m := s.Measure(0)
		same(t, fmt.Sprint("top ", i), m.ConcreteVolume, want, 1e-6)
	}
}

// compareMeasures holds two sets of measures to each other after a change that
// ought not to matter: volumes by factor³, areas by factor², lengths by factor.
func compareMeasures(t *testing.T, name string, got, want slab.Measures, factor, rel float64) {
	t.Helper()
	f2, f3 := factor*factor, factor*factor*factor
	part := func(what string, got, want, whole float64) {
		t.Helper()
		near(t, name+" "+what, got, want, rel*whole)
	}
	part("plan", got.PlanArea, want.PlanArea*f2, want.PlanArea*f2)
	part("net", got.NetArea, want.NetArea*f2, want.PlanArea*f2)
	part("perimeter", got.OutlinePerimeter, want.OutlinePerimeter*factor, want.OutlinePerimeter*factor)
	part("seen", got.SeenLength, want.SeenLength*factor, want.OutlinePerimeter*factor)
	part("cut-outs", got.CutoutPerimeter, want.CutoutPerimeter*factor, want.OutlinePerimeter*factor)
	part("volume", got.ConcreteVolume, want.ConcreteVolume*f3, want.ConcreteVolume*f3)
	part("resin", got.ResinVolume, want.ResinVolume*f3, want.ConcreteVolume*f3)
	part("empty", got.EmptyVolume, want.EmptyVolume*f3, want.ConcreteVolume*f3)
	for i := range got.Channels {
		part(fmt.Sprint("channel ", i), got.Channels[i].Volume, want.Channels[i].Volume*f3, want.ConcreteVolume*f3)
	}
}

// mirrored is a design seen in a mirror on x = 0.
func mirrored(d design.Design) design.Design {
	flip := func(p design.Point) design.Point { return design.Point{X: -p.X, Y: p.Y} }
	chain := func(n []design.Node) []design.Node {
		out := make([]design.Node, len(n))
		for i := range n {
			from := n[len(n)-1-i] // its edge runs the other way from the node before
			e := n[(2*len(n)-2-i)%len(n)].Edge
			e.C1, e.C2 = flip(e.C2), flip(e.C1)
			out[i] = design.Node{At: flip(from.At), Corner: from.Corner, Edge: e}
		}
		return out
	}
	d.Outline.Nodes = chain(d.Outline.Nodes)
	d.Sinks, d.Taps, d.Holes = slices.Clone(d.Sinks), slices.Clone(d.Taps), slices.Clone(d.Holes)
	for i := range d.Sinks {
		k := &d.Sinks[i]
		k.At, k.Rotation, k.Shape.Path = flip(k.At), -k.Rotation, chain(k.Shape.Path)
	}
	for i := range d.Taps {
		d.Taps[i].Offset = -d.Taps[i].Offset
	}
	for i := range d.Holes {
		d.Holes[i].At = flip(d.Holes[i].At)
	}
	d.Channels = slices.Clone(d.Channels)
	for i := range d.Channels {
		c := &d.Channels[i]
		c.Rivers = slices.Clone(c.Rivers)
		for k := range c.Rivers {
			c.Rivers[k].Nodes = slices.Clone(c.Rivers[k].Nodes)
			for j := range c.Rivers[k].Nodes {
				c.Rivers[k].Nodes[j].At = flip(c.Rivers[k].Nodes[j].At)
			}
		}
	}
	return d
}

func TestMirrored(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 1))
	for i := range 40 {
		d := sane(r, true)
		a, b := slab.Resolve(d).Measure(1), slab.Resolve(mirrored(d)).Measure(1)
		name := fmt.Sprint("top ", i)
		compareMeasures(t, name, b, a, 1, 1e-8)
		near(t, name+" x", b.ConcreteCentroid[0], -a.ConcreteCentroid[0], 1e-5)
		near(t, name+" y", b.ConcreteCentroid[1], a.ConcreteCentroid[1], 1e-5)
		near(t, name+" z", b.ConcreteCentroid[2], a.ConcreteCentroid[2], 1e-6)
	}
}

// transformed is a design with every point and length put through f and size; it
// leaves out what only mirrored needs.
func transformed(d design.Design, turn units.Angle, factor float64) design.Design {
	p := func(q design.Point) design.Point {
		v := geom.Vec{X: q.X.MM(), Y: q.Y.MM()}.Turn(turn.Radians()).Mul(factor)
		return pt(v.X, v.Y)
	}
	l := func(x units.Length) units.Length { return mm(x.MM() * factor) }
	d.Outline.Nodes = slices.Clone(d.Outline.Nodes)
	for i := range d.Outline.Nodes {
		n := &d.Outline.Nodes[i]
		n.At, n.Corner.Size, n.Edge.Rise = p(n.At), l(n.Corner.Size), l(n.Edge.Rise)
		n.Edge.C1, n.Edge.C2, n.Edge.Profile.Size = p(n.Edge.C1), p(n.Edge.C2), l(n.Edge.Profile.Size)
	}
	d.Thickness = l(d.Thickness)
	d.Sinks, d.Taps, d.Holes, d.Channels = slices.Clone(d.Sinks), nil, slices.Clone(d.Holes), slices.Clone(d.Channels)
	for i := range d.Sinks {
		k := &d.Sinks[i]
		k.At, k.Rotation = p(k.At), k.Rotation+turn
		k.Shape.Width, k.Shape.Depth, k.Shape.CornerRadius = l(k.Shape.Width), l(k.Shape.Depth), l(k.Shape.CornerRadius)
		k.Shape.Bow, k.Reveal.Size, k.Profile.Size = l(k.Shape.Bow), l(k.Reveal.Size), l(k.Profile.Size)
	}
	for i := range d.Holes {
		d.Holes[i].At, d.Holes[i].Diameter = p(d.Holes[i].At), l(d.Holes[i].Diameter)
	}
	for i := range d.Channels {
		c := &d.Channels[i]
		c.Depth, c.Rivers = l(c.Depth), slices.Clone(c.Rivers)
		for k := range c.Rivers {
			c.Rivers[k].Nodes = slices.Clone(c.Rivers[k].Nodes)
			for j := range c.Rivers[k].Nodes {
				n := &c.Rivers[k].Nodes[j]
				n.At, n.Width = p(n.At), l(n.Width)
			}
		}
	}
	return d
}

// Turned and scaled tops measure alike; what is left is the nanometre to which
// points are rounded and, scaled, the tolerance, which does not scale.
func TestTurnedAndScaled(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 1))
	for i := range 25 {
		d := sane(r, true)
		d.Taps = nil
		a := slab.Resolve(d).Measure(0)
		for _, turn := range []units.Angle{90 * units.Degree, 33 * units.Degree} {
			b := slab.Resolve(transformed(d, turn, 1)).Measure(0)
			compareMeasures(t, fmt.Sprint("top ", i, " turned"), b, a, 1, 1e-7)
		}
		b := slab.Resolve(transformed(d, 0, 2)).Measure(0)
		compareMeasures(t, fmt.Sprint("top ", i, " scaled"), b, a, 2, 1e-6)
	}
}

// Sawn in two along a straight line, with square sides at the cut, a top's halves
// hold together what the whole does.
func TestAdditive(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 1))
	for i := range 40 {
		d := sane(r, true)
		p, q := everyProfile[r.IntN(8)].p, everyProfile[r.IntN(8)].p
		half := func(x0, x1 float64, left, right design.Profile) slab.Measures {
			n := nodes(x0, -300, x1, -320, x1, 300, x0, 280)
			for k, e := range []design.Profile{p, right, q, left} {
				n[k].Edge.Profile = e
			}
			// The front and the back run straight through the cut.
			slope := 20. / 1200
			n[0].At, n[1].At = pt(x0, -300-slope*(x0+600)), pt(x1, -300-slope*(x1+600))
			n[2].At, n[3].At = pt(x1, 300), pt(x0, 300)
			d.Outline.Nodes = n
			return slab.Resolve(d).Measure(1)
		}
		d.Taps = nil
		for k := range d.Channels { // open ends would run to another edge
			for j := range d.Channels[k].Rivers {
				d.Channels[k].Rivers[j].Start, d.Channels[k].Rivers[j].End = design.EndRound, design.EndFlat
			}
		}
		cut := -200 + 400*r.Float64()
		ends := everyProfile[r.IntN(8)].p
		whole := half(-600, 600, ends, ends)
		a, b := half(-600, cut, ends, design.Profile{}), half(cut, 600, design.Profile{}, ends)
		name := fmt.Sprint("top ", i)
		near(t, name+" volume", a.ConcreteVolume+b.ConcreteVolume, whole.ConcreteVolume, 2e-6*whole.ConcreteVolume)
		near(t, name+" net", a.NetArea+b.NetArea, whole.NetArea, 5e-8*whole.PlanArea) // the halves are flattened more finely
		near(t, name+" resin", a.ResinVolume+b.ResinVolume, whole.ResinVolume, 1e-6*whole.ConcreteVolume)
		near(t, name+" ground", a.GrindVolume+b.GrindVolume, whole.GrindVolume, 1e-6*whole.GrindVolume)
		near(t, name+" moment", a.ConcreteVolume*a.ConcreteCentroid[0]+b.ConcreteVolume*b.ConcreteCentroid[0],
			whole.ConcreteVolume*whole.ConcreteCentroid[0], 2e-6*whole.ConcreteVolume*600)
	}
}

// Moved about inside the top, clear of all else, a cut-out takes the same volume.
func TestMovedInside(t *testing.T) {
	r := rand.New(rand.NewPCG(16, 1))
	var first float64
	for i := range 60 {
		d := top(38, profile(design.ProfileRounded, 10), rectangle(1500, 600))
		d.Sinks = []design.Sink{{ID: "s", At: pt(300+900*r.Float64(), 260+80*r.Float64()), Rotation: units.FromDegrees(360 * r.Float64()),
			Shape:   design.Shape{Kind: design.ShapeD, Width: mm(300), Depth: mm(250), Bow: mm(40), CornerRadius: mm(30)},
			Reveal:  design.Reveal{Kind: design.RevealOverhang, Size: mm(3)},
			Profile: profile(design.ProfileRounded, 6)}}
		m := slab.Resolve(d).Measure(0)
		if i == 0 {
			first = m.ConcreteVolume
		}
		same(t, "moved", m.ConcreteVolume, first, 1e-9)
	}
}

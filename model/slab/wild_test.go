package slab_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
)

// wild makes designs of any values at all: sensible ones, zero, negative, huge,
// kinds that do not exist, and lists that are empty.
type wild struct{ *rand.Rand }

func (w wild) length() units.Length {
	switch w.IntN(12) {
	case 0:
		return 0
	case 1:
		return units.Length(w.Int64()) - math.MaxInt64/2
	case 2:
		return math.MinInt64
	case 3:
		return math.MaxInt64
	case 4:
		return units.Length(w.IntN(5)) - 2
	case 5:
		return units.Length(w.IntN(200)-100) * units.Metre
	}
	return units.Length(w.IntN(2000)-700) * units.Millimetre
}

func (w wild) size() units.Length {
	if w.IntN(4) == 0 {
		return w.length()
	}
	return units.Length(w.IntN(300_000_000))
}

func (w wild) point() design.Point {
	if w.IntN(6) == 0 {
		return design.Point{X: w.length(), Y: w.length()}
	}
	return design.Point{X: units.Length(w.IntN(40)) * 40 * units.Millimetre, Y: units.Length(w.IntN(20)) * 30 * units.Millimetre}
}

func (w wild) kind(n int) uint8 {
	if w.IntN(20) == 0 {
		return uint8(w.IntN(256))
	}
	return uint8(w.IntN(n))
}

func (w wild) count(most int) int {
	if w.IntN(30) == 0 {
		return 10 * most
	}
	return w.IntN(most + 1)
}

func (w wild) profile() design.Profile {
	return design.Profile{Kind: design.ProfileKind(w.kind(7)), Size: w.size() / 8}
}

func (w wild) nodes() []design.Node {
	n := make([]design.Node, w.count(12))
	for i := range n {
		n[i] = design.Node{At: w.point(),
			Corner: design.Corner{Kind: design.CornerKind(w.kind(3)), Size: w.size() / 4},
			Edge: design.Edge{Curve: design.CurveKind(w.kind(3)), Rise: w.length(), C1: w.point(), C2: w.point(),
				Side: design.Side(w.kind(2)), Profile: w.profile()}}
		if i > 0 && w.IntN(15) == 0 {
			n[i].At = n[w.IntN(i)].At
		}
	}
	return n
}

func (w wild) region() design.Region {
	r := design.Region{Outer: w.nodes()}
	for range w.count(2) {
		r.Islands = append(r.Islands, w.nodes())
	}
	return r
}

func (w wild) shape() design.Shape {
	return design.Shape{Kind: design.ShapeKind(w.kind(5)), Width: w.size(), Depth: w.size(), CornerRadius: w.size() / 4,
		Bow: w.size() / 4, Path: w.nodes()}
}

func (w wild) design() design.Design {
	d := design.Design{Outline: design.Outline{Nodes: w.nodes()}, Thickness: w.size() / 6}
	id := func() design.ID { return design.ID([]string{"", "a", "b", "c", "d"}[w.IntN(5)]) }
	for range w.count(3) {
		d.Sinks = append(d.Sinks, design.Sink{ID: id(), At: w.point(), Rotation: units.Angle(w.Int64()), Shape: w.shape(),
			Mount: design.Mount(w.kind(3)), Reveal: design.Reveal{Kind: design.RevealKind(w.kind(3)), Size: w.size() / 8},
			Rim: w.size(), Drain: w.size(), Profile: w.profile(), BowlDepth: w.size(), BowlMass: math.NaN()})
	}
	for range w.count(3) {
		t := design.TapSet{ID: id(), Pattern: design.TapPattern(w.kind(4)), Diameter: w.size() / 4, Sink: id(),
			Offset: w.length(), SetBack: w.length(), At: w.point(), Rotation: units.Angle(w.Int64())}
		for range w.count(4) {
			t.Holes = append(t.Holes, w.point())
		}
		d.Taps = append(d.Taps, t)
	}
	for range w.count(3) {
		d.Holes = append(d.Holes, design.Hole{ID: id(), Kind: design.HoleKind(w.kind(4)), At: w.point(), Diameter: w.size()})
	}
	for range w.count(3) {
		c := design.Channel{ID: id(), Depth: w.size() / 6, Fill: design.Fill{Resin: w.IntN(2) == 0}}
		for range w.count(3) {
			v := design.River{Start: design.RiverEnd(w.kind(3)), End: design.RiverEnd(w.kind(3))}
			for range w.count(6) {
				v.Nodes = append(v.Nodes, design.RiverNode{At: w.point(), Width: w.size()})
			}
			c.Rivers = append(c.Rivers, v)
		}
		for range w.count(2) {
			c.Regions = append(c.Regions, w.region())
		}
		d.Channels = append(d.Channels, c)
	}
	for range w.count(2) {
		d.Glass = append(d.Glass, design.GlassBed{ID: id(), Region: w.region(), Grain: w.size(), Depth: w.size(),
			Coverage: units.Share(w.Int64())})
	}
	for range w.count(3) {
		s := design.Support{ID: id(), Kind: design.SupportKind(w.kind(5)), Width: w.size(), Patch: w.IntN(2) == 0}
		for range w.count(4) {
			s.Line = append(s.Line, w.point())
		}
		d.Supports = append(d.Supports, s)
	}
	return d
}

// checkWild resolves, measures and validates a design: no panic, no endless loop,
// no number that is not finite, no volume beyond the block it is cut from.
func checkWild(t *testing.T, d design.Design) {
	t.Helper()
	s := slab.Resolve(d)
	m := s.Measure(1)
	slab.Validate(d)
	block := m.PlanArea*s.Thickness*(1+1e-9) + 1e-6
	for name, v := range map[string]float64{
		"plan": m.PlanArea, "net": m.NetArea, "perimeter": m.OutlinePerimeter, "cut-outs": m.CutoutPerimeter,
		"volume": m.ConcreteVolume, "resin": m.ResinVolume, "empty": m.EmptyVolume, "grind": m.GrindVolume,
		"x": m.ConcreteCentroid[0], "y": m.ConcreteCentroid[1], "z": m.ConcreteCentroid[2],
		"box": m.Bounds.W() + m.Bounds.H(),
	} {
		if math.IsNaN(v - v) {
			t.Errorf("%s is %g", name, v)
		}
	}
	if sum := m.ConcreteVolume + m.ResinVolume + m.EmptyVolume; m.ConcreteVolume < 0 || sum > block {
		t.Errorf("concrete %g, resin %g and empty %g of a block of %g", m.ConcreteVolume, m.ResinVolume, m.EmptyVolume, block)
	}
	for _, z := range []float64{0, s.Thickness / 2, s.Thickness, -1, math.NaN()} {
		s.Section(z)
	}
}

func TestWild(t *testing.T) {
	n := 15
	if testing.Short() {
		n = 5
	}
	for seed := range n {
		d := wild{rand.New(rand.NewPCG(uint64(seed), 1))}.design()
		checkWild(t, d)
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
}

func FuzzWild(f *testing.F) {
	f.Add(uint64(1), uint64(2))
	f.Add(uint64(40), uint64(2)) // a union that gives up, and another after it
	f.Fuzz(func(t *testing.T, a, b uint64) {
		checkWild(t, wild{rand.New(rand.NewPCG(a, b))}.design())
	})
}

package warn_test

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
	"example.org/castwright/model/warn"
)

// A design may hold anything: sizes that are negative or absurd, parts off the
// top, chains that cross themselves or hold too few nodes. None is too broken to
// be looked at.
func TestCheckOfWildDesigns(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	codes := map[warn.Code]int{}
	for trial := range 150 {
		x := &top{}
		x.design, x.materials, x.site = wildDesign(r)
		x.solid = slab.Resolve(x.design)
		x.weigh(200*r.Float64(), x.solid.Outline.Centroid())
		got := x.check()
		sound(t, trial, got)
		for _, w := range got {
			codes[w.Code]++
		}
		if again := x.check(); !reflect.DeepEqual(got, again) {
			t.Fatalf("trial %d: not the same again", trial)
		}
	}
	if len(codes) < 15 {
		t.Errorf("only %d kinds of warning came up: %v", len(codes), codes)
	}
}

func wildDesign(r *rand.Rand) (design.Design, design.Materials, design.Site) {
	size := func(most float64) units.Length {
		switch r.IntN(200) {
		case 0:
			return 0
		case 1:
			return -mm(most)
		case 2:
			return units.MaxLength
		}
		return mm(most * r.Float64())
	}
	place := func() design.Point { return at(size(1800), size(900)) }
	id := func(kind string) design.ID { return design.ID(fmt.Sprintf("%s-%d", kind, r.IntN(3))) }
	node := func() design.Node {
		return design.Node{At: place(), Corner: design.Corner{Kind: design.CornerKind(r.IntN(3)), Size: size(60)},
			Edge: design.Edge{Curve: design.CurveKind(r.IntN(3)), Rise: size(80), C1: place(), C2: place(),
				Side:    design.Side(r.IntN(2)),
				Profile: design.Profile{Kind: design.ProfileKind(r.IntN(7)), Size: size(20)}}}
	}
	chain := func() []design.Node {
		nodes := make([]design.Node, r.IntN(6))
		for i := range nodes {
			nodes[i] = node()
		}
		return nodes
	}
	d := design.Design{Thickness: size(60), Outline: design.Outline{Nodes: chain()}}
	if r.IntN(3) > 0 {
		d.Outline.Nodes = []design.Node{{}, {At: at(mm(1600), 0)}, {At: at(mm(1600), mm(600))}, {At: at(0, mm(600))}}
		for i := range d.Outline.Nodes {
			d.Outline.Nodes[i].Corner = node().Corner
		}
	}
	for range r.IntN(3) {
		d.Sinks = append(d.Sinks, design.Sink{ID: id("sink"), At: place(), Rotation: units.Angle(r.IntN(360_000_000)),
			Mount: design.Mount(r.IntN(3)), Rim: size(30), Drain: size(60), BowlDepth: size(200),
			Reveal: design.Reveal{Kind: design.RevealKind(r.IntN(3)), Size: size(10)},
			Shape: design.Shape{Kind: design.ShapeKind(r.IntN(5)), Width: size(600), Depth: size(400),
				CornerRadius: size(60), Bow: size(80), Path: chain()}})
	}
	for range r.IntN(3) {
		d.Taps = append(d.Taps, design.TapSet{ID: id("taps"), Pattern: design.TapPattern(r.IntN(4)),
			Holes: []design.Point{place()}, Diameter: size(50), Sink: id("sink"), SetBack: size(150), At: place()})
		d.Holes = append(d.Holes, design.Hole{ID: id("hole"), Kind: design.HoleKind(r.IntN(4)), At: place(), Diameter: size(80)})
	}
	for range r.IntN(3) {
		c := design.Channel{ID: id("channel"), Depth: size(30), Fill: design.Fill{Resin: r.IntN(2) == 0, TopCoat: size(4)}}
		if r.IntN(2) == 0 {
			c.Fill.Glass = &design.GlassFill{Grain: size(12), Share: units.Share(r.IntN(1_000_000))}
		}
		for range r.IntN(3) {
			river := design.River{Start: design.RiverEnd(r.IntN(3)), End: design.RiverEnd(r.IntN(3))}
			for range r.IntN(5) {
				river.Nodes = append(river.Nodes, design.RiverNode{At: place(), Width: size(80)})
			}
			c.Rivers = append(c.Rivers, river)
		}
		if r.IntN(2) == 0 {
			c.Regions = []design.Region{{Outer: chain(), Islands: [][]design.Node{chain()}}}
		}
		d.Channels = append(d.Channels, c)
		d.Glass = append(d.Glass, design.GlassBed{ID: id("glass"), Region: design.Region{Outer: chain()},
			Grain: size(12), Depth: size(15), Coverage: units.Share(r.IntN(1_000_000))})
	}
	for range r.IntN(5) {
		d.Supports = append(d.Supports, design.Support{ID: id("support"), Kind: design.SupportKind(r.IntN(5)),
			Line: []design.Point{place(), place(), place()}[:r.IntN(4)], Width: size(60), Patch: r.IntN(2) == 0})
	}
	d.Finish.Grind = size(6)
	m := design.Materials{
		Mix: design.Mix{BagMass: 25, BagYield: 14, BagWater: 5, FreshDensity: 2300,
			CuredDensity: 2500 * r.Float64(), Waste: 0.1},
		Resin: design.Resin{PartsA: 2, PartsB: 1, Density: 1100, MaxPour: 20 * r.Float64()},
		Glass: design.GlassStock{Density: 2500},
	}
	site := design.Site{DoorWidth: size(900), DoorHeight: size(2000), StairWidth: size(900), StairTurn: size(1500),
		Helpers: r.IntN(6) - 1}
	return d, m, site
}

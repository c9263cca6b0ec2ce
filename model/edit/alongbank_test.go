package edit_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// keepsToBank holds a bed to its definition: no point of its rim is nearer to the
// channel than the offset, none farther than offset and width, and both are met.
// The distances are those to the channel's own rims as package slab resolves them;
// the tolerance is that of the strip and of the flattening, 0.15 mm together.
func keepsToBank(t failing, d design.Design, bed design.ID, offset, width float64) {
	t.Helper()
	fence := geom.NewFence()
	for _, r := range slab.Resolve(d).Recesses {
		fence = geom.NewFence(r.Loops...)
	}
	near, far := math.Inf(1), 0.0
	for _, g := range d.Glass {
		if g.ID != bed {
			continue
		}
		for _, chain := range append([][]design.Node{g.Region.Outer}, g.Region.Islands...) {
			for _, n := range chain {
				_, dist := fence.Nearest(geom.Vec{X: n.At.X.MM(), Y: n.At.Y.MM()})
				near, far = math.Min(near, dist), math.Max(far, dist)
			}
		}
	}
	if math.Abs(near-offset) > 0.15 || math.Abs(far-offset-width) > 0.15 {
		t.Errorf("%s lies %g to %g mm from the bank, want %g to %g", bed, near, far, offset, offset+width)
	}
}

// pond is a top with a closed channel in its middle, a bed of glass all round it
// 5 mm away and 40 mm wide, and a bed that lies anywhere.
func pond(t failing) design.Design {
	t.Helper()
	d := design.Design{Outline: edit.Rectangle(mm(1500), mm(700)), Thickness: mm(40)}
	bed := design.GlassBed{Grain: mm(6), Coverage: 60 * units.Percent, Depth: mm(9)}
	loose := bed
	loose.Region = design.Region{Outer: []design.Node{{At: at(100, 500)}, {At: at(200, 500)}, {At: at(200, 600)}}}
	for _, e := range []edit.Edit{
		edit.AddChannel(design.Channel{Depth: mm(12), Rivers: []design.River{{Nodes: []design.RiverNode{
			{At: at(500, 300), Width: mm(60)}, {At: at(700, 350), Width: mm(80)}, {At: at(900, 300), Width: mm(50)}}}}}),
		edit.BankGlass("channel-1", edit.BothBanks, mm(5), mm(40), bed),
		edit.AddGlass(loose),
	} {
		d = apply(t, d, e)
	}
	keepsToBank(t, d, "glass-1", 5, 40)
	return d
}

// TestGlassFollowsItsBank: whatever is done to the channel, the glass along its bank
// goes along, and no other.
func TestGlassFollowsItsBank(t *testing.T) {
	d := pond(t)
	rapid.Check(t, func(t *rapid.T) {
		e := rapid.SampledFrom([]edit.Edit{
			edit.MovePart("channel-1", at(rapid.Float64Range(-200, 300).Draw(t, "x"), rapid.Float64Range(-100, 150).Draw(t, "y"))),
			edit.MoveParts([]design.ID{"channel-1", "glass-1"}, at(rapid.Float64Range(-200, 300).Draw(t, "x"), 40)),
			edit.MoveRiverNode("channel-1", 0, 1, at(rapid.Float64Range(620, 780).Draw(t, "x"), rapid.Float64Range(250, 450).Draw(t, "y"))),
			edit.SetRiverWidth("channel-1", 0, 1, mm(rapid.Float64Range(30, 140).Draw(t, "w"))),
		}).Draw(t, "edit")
		out := apply(t, d, e)
		keepsToBank(t, out, "glass-1", 5, 40)
		if diff := cmp.Diff(d.Glass[1], out.Glass[1]); diff != "" {
			t.Errorf("%s changes a bed that lies along no bank: %s", e.Name, diff)
		}
		if len(out.Relations) != 1 {
			t.Errorf("%s leaves %d relations", e.Name, len(out.Relations))
		}
	})
}

// TestGlassIsCutFromItsBank: a bed that is moved or shaped by hand stays where it
// was put, then and later; one whose look changes goes on following.
func TestGlassIsCutFromItsBank(t *testing.T) {
	d := pond(t)
	moved := apply(t, d, edit.MovePart("glass-1", at(0, 60)))
	if len(moved.Relations) != 0 {
		t.Errorf("moved by hand it keeps %d relations", len(moved.Relations))
	}
	later := apply(t, moved, edit.MovePart("channel-1", at(50, 0)))
	if diff := cmp.Diff(moved.Glass, later.Glass); diff != "" {
		t.Errorf("cut, it still follows: %s", diff)
	}
	g := d.Glass[0]
	g.Colour = design.Colour{R: 200}
	keepsToBank(t, apply(t, apply(t, d, edit.SetGlass(g)), edit.MovePart("channel-1", at(60, 0))), "glass-1", 5, 40)
	cut := apply(t, d, edit.CutRelation(0))
	if diff := cmp.Diff(d.Glass, apply(t, cut, edit.MovePart("channel-1", at(50, 0))).Glass); diff != "" {
		t.Errorf("cut by the maker, it still follows: %s", diff)
	}
	if gone := apply(t, d, edit.RemoveParts([]design.ID{"channel-1"})); len(gone.Relations) != 0 || len(gone.Glass) != 2 {
		t.Errorf("without its channel: %d relations, %d beds", len(gone.Relations), len(gone.Glass))
	}
}

// TestBankGlassTurnedOver: mirrored, the left bank is the right one, and the bed
// keeps to it; mirrored twice, the design is what it was.
func TestBankGlassTurnedOver(t *testing.T) {
	d := pond(t)
	d.Glass, d.Relations = nil, nil
	d = apply(t, d, edit.BankGlass("channel-1", edit.LeftBank, 0, mm(30), design.GlassBed{Grain: mm(6), Depth: mm(9)}))
	once := apply(t, d, edit.Mirror())
	if r := once.Relations[0]; r.Bank != design.RightBank {
		t.Errorf("mirrored it lies along %s", r.Bank)
	}
	keepsToBank(t, once, "glass-1", 0, 30)
	keepsToBank(t, apply(t, once, edit.MovePart("channel-1", at(33, 12))), "glass-1", 0, 30)
	wide := apply(t, d, edit.Resize(mm(1800), mm(700)))
	keepsToBank(t, wide, "glass-1", 0, 30)
}

// TestTwoStripsOfOneBank: a river from edge to edge has two strips along its banks;
// each bed keeps to its own when the river is moved.
func TestTwoStripsOfOneBank(t *testing.T) {
	d := design.Design{Outline: edit.Rectangle(mm(1000), mm(600)), Thickness: mm(40)}
	d = apply(t, d, edit.AddChannel(design.Channel{Depth: mm(12), Rivers: []design.River{{Start: design.EndOpen, End: design.EndOpen,
		Nodes: []design.RiverNode{{At: at(0, 300), Width: mm(60)}, {At: at(1000, 300), Width: mm(60)}}}}}))
	d = apply(t, d, edit.BankGlass("channel-1", edit.BothBanks, 0, mm(30), design.GlassBed{Grain: mm(6), Depth: mm(9)}))
	if len(d.Glass) != 2 {
		t.Fatalf("%d beds, want 2", len(d.Glass))
	}
	middle := func(g design.GlassBed) float64 {
		box := geom.EmptyBox()
		for _, n := range g.Region.Outer {
			box = box.Include(geom.Vec{X: n.At.X.MM(), Y: n.At.Y.MM()})
		}
		return box.Centre().Y
	}
	out := apply(t, d, edit.MovePart("channel-1", at(0, 80)))
	for i := range 2 {
		if by := middle(out.Glass[i]) - middle(d.Glass[i]); math.Abs(by-80) > 0.1 {
			t.Errorf("bed %d goes %g mm with a river that goes 80", i+1, by)
		}
	}
}

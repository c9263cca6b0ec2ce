package tool_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/tool"
)

// lopsided is a region that no turn or mirroring gives back: 300 x 100 with a
// step, and an island.
func lopsided() design.Region {
	return design.Region{
		Outer:   []design.Node{{At: at(0, 0)}, {At: at(300, 0)}, {At: at(300, 60)}, {At: at(100, 60)}, {At: at(100, 100)}, {At: at(0, 100)}},
		Islands: [][]design.Node{{{At: at(20, 20)}, {At: at(60, 20)}, {At: at(60, 40)}}}}
}

// TestTurnInHand turns and mirrors a part before it is set down; places by hand.
func TestTurnInHand(t *testing.T) {
	r := newRig(t, units.Metric, empty())
	bed := design.GlassBed{Grain: 8 * mm, Depth: 10 * mm, Region: lopsided()}
	r.h.Put(tool.Put{Glass: &bed, Brought: true})
	r.move(600, 250)
	r.hintHas("R, T turn it")
	r.type_("R") // a quarter counter-clockwise
	r.click(600, 250)
	got := r.s.Design().Glass[0].Region.Outer
	// 300 long now from front to back: (0, 0) about the middle (150, 50) is at
	// (-150, -50), turned (50, -150).
	if want := at(650, 100); got[0].At != want {
		t.Errorf("turned by a quarter the first corner lies at %v, want %v", got[0].At, want)
	}
	r.wantOneStep("Bring in glass bed")
	r.s.Undo()
	r.h.Put(tool.Put{Glass: &bed})
	r.move(600, 250)
	r.type_("m")
	r.click(600, 250)
	if got := r.s.Design().Glass[0].Region.Outer[0].At; got != at(750, 200) {
		t.Errorf("mirrored the first corner lies at %v", got)
	}
	r.s.Undo()
	r.h.Put(tool.Put{Glass: &bed})
	r.move(600, 250)
	for range 18 {
		r.type_("t") // a quarter the other way in all
	}
	r.click(600, 250)
	if d := r.s.Design().Glass[0].Region.Outer[0].At.Sub(at(550, 400)); d.X.Abs() > 1000 || d.Y.Abs() > 1000 {
		t.Errorf("turned by 18 small steps the first corner is %v off", d)
	}
	if bed.Region.Outer[0].At != at(0, 0) {
		t.Error("what was taken in hand has changed")
	}
	r.h.Put(tool.Put{Hole: &design.Hole{Diameter: 35 * mm}})
	r.move(600, 250)
	r.type_("r")
	r.hintHas("can't be turned")
}

// TestOutlineInHand sets an outline down from a file: its edges are at the wall
// or seen as the old ones that face the same way, its hole is a cut-out.
func TestOutlineInHand(t *testing.T) {
	d := empty()
	r := newRig(t, units.Metric, d)
	region := lopsided()
	r.h.Put(tool.Put{Outline: &region, Brought: true})
	r.move(600, 250)
	r.hintHas("Click sets the outline down")
	r.click(600, 250)
	moved := edit.PlaceTop(shifted(region, 450, 200))
	r.want(moved)
	r.wantOneStep("Bring in outline")
	r.wantSelected(session.Pick{Node: -1})
	now := r.s.Design()
	if len(now.Sinks) != 1 || now.Sinks[0].Shape.Kind != design.ShapePath || now.Sinks[0].At != at(490, 230) {
		t.Errorf("the hole became %+v", now.Sinks)
	}
	sides := map[int]design.Side{0: design.SideSeen, 2: design.SideWall, 4: design.SideWall}
	for i, want := range sides { // front and the two that look back
		if got := now.Outline.Nodes[i].Edge.Side; got != want {
			t.Errorf("edge %d is %v, want %v", i, got, want)
		}
	}
	// Esc backs out, and Enter sets the first outline down where there is none.
	bare := newRig(t, units.Metric, design.Design{Thickness: 40 * mm})
	bare.h.Put(tool.Put{Outline: &region})
	bare.keys(tool.KeyEscape)
	bare.wantNoTrace()
	bare.h.Put(tool.Put{Outline: &region})
	bare.keys(tool.KeyEnter)
	if n := bare.s.Design().Outline.Nodes; len(n) != 6 || n[0].At != at(-150, -50) {
		t.Errorf("the first outline is %v", n)
	}
}

func shifted(r design.Region, x, y float64) design.Region {
	move := func(nodes []design.Node) []design.Node {
		out := append([]design.Node(nil), nodes...)
		for i := range out {
			out[i].At = out[i].At.Add(at(x, y))
		}
		return out
	}
	out := design.Region{Outer: move(r.Outer)}
	for _, i := range r.Islands {
		out.Islands = append(out.Islands, move(i))
	}
	return out
}

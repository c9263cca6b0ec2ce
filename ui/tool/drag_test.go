package tool_test

import (
	"math"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/tool"
)

func TestDragCorner(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.drag(1200, 500, 1303, 561) // the grid of 5 mm holds 1305, 560
	r.want(edit.MoveNode(2, at(1305, 560)))
	r.wantOneStep("Move corner")
	r.wantSelected(session.Pick{Node: 2})
}

// The grab point does not jump: taken 4 mm beside the corner, the corner moves
// as far as the mouse does.
func TestDragKeepsTheGrabPoint(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.drag(1204, 496, 1254, 446)
	r.want(edit.MoveNode(2, at(1250, 450)))
}

func TestDragEdgeMovesParallel(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.drag(300, 0, 310, -48) // the front edge, off its middle
	r.want(edit.MoveEdge(0, at(0, -50)))
	r.wantOneStep("Move edge")
	r.wantSelected(session.Pick{Node: 0, Edge: true})
}

func TestBendEdgeByItsMiddle(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.click(300, 0) // select the front edge: its middle offers a diamond
	r.drag(600, 0, 600, -43)
	r.want(edit.BendEdge(0, 45*mm)) // outward is toward the front
	r.wantOneStep("Bend edge")
}

func TestRoundCornerByItsHandle(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.click(1200, 500)
	ring, ok := handle(r.h.Overlay(), tool.HandleRadius)
	if !ok {
		t.Fatal("a selected corner offers no ring")
	}
	// At a right angle the centre of the arc lies r*sqrt(2) inside the corner:
	// moving the ring by that rounds by r.
	by := 60 * math.Sqrt2 / math.Sqrt2
	r.drag(ring.At.X, ring.At.Y, ring.At.X-by, ring.At.Y-by)
	r.want(edit.SetCorner(2, design.Corner{Kind: design.CornerRounded, Size: 60 * mm}))
	r.wantOneStep("Round corner")

	// Dragged back beyond the corner it is square again.
	ring, _ = handle(r.h.Overlay(), tool.HandleRadius)
	r.drag(ring.At.X, ring.At.Y, ring.At.X+200, ring.At.Y+200)
	r.want()
}

func TestShapeSpline(t *testing.T) {
	r := newRig(t, units.Metric, apply(t, plain(), edit.SetEdgeCurve(0, design.CurveSpline)))
	r.click(300, 0)
	r.drag(400, 0, 400, -60) // its first control point lies at a third
	r.want(edit.SetSpline(0, at(400, -60), at(800, 0)))
	r.wantOneStep("Shape spline")
}

func TestDragSink(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.drag(420, 260, 523, 214)
	r.want(edit.MovePart("sink-1", at(105, -45)))
	r.wantOneStep("Move sink")
	r.wantSelected(session.Pick{Part: "sink-1", Node: -1})
}

func TestSnapHoldsTheMiddleAndSaysSo(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.down(400, 250)
	r.move(500, 250)
	r.move(597, 303)
	hint, guides := r.h.Hint(), len(r.h.Overlay().Guides)
	r.up(597, 303)
	// The grid alone would give 595.
	r.want(edit.MovePart("sink-1", at(200, 55)))
	if !strings.Contains(hint, "On the centreline of the top") || guides != 1 {
		t.Errorf("hint %q with %d guides: want it to name the centreline, with one guide", hint, guides)
	}
}

func TestSnapSuspended(t *testing.T) {
	for _, mod := range []tool.Mod{tool.Alt, tool.Control} {
		r := newRig(t, units.Metric, plain())
		r.down(400, 250)
		r.mod = mod
		r.move(597.31, 303.48) // a free hand goes by tenths
		r.up(597.31, 303.48)
		r.want(edit.MovePart("sink-1", at(197.3, 53.5)))
	}
}

func TestGridFollowsZoomAndUnits(t *testing.T) {
	for _, tt := range []struct {
		name  string
		sys   units.System
		perMM float64
		want  units.Length
	}{
		{"metric far", units.Metric, 0.1, 50 * mm},
		{"metric middle", units.Metric, 1, 5 * mm},
		{"metric, a counter in the window", units.Metric, 0.38, 10 * mm},
		{"metric near", units.Metric, 6, mm},
		{"inch far", units.Imperial, 0.25, units.Inch},
		{"inch middle", units.Imperial, 1, units.Inch / 4},
		{"inch near", units.Imperial, 6, units.Inch / 16},
	} {
		if got := tool.Step(tt.sys, tt.perMM); got != tt.want {
			t.Errorf("%s: step %v, want %v", tt.name, got, tt.want)
		}
	}
	r := newRig(t, units.Imperial, design.Design{Outline: edit.Rectangle(48*units.Inch, 22*units.Inch)})
	r.drag(48*25.4, 22*25.4, 50.1*25.4, 22*25.4)
	r.want(edit.MoveNode(2, design.Point{X: 50 * units.Inch, Y: 22 * units.Inch}))
}

func TestEscapeLeavesNoTrace(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	for name, press := range map[string][2]float64{
		"corner": {1200, 500}, "edge": {300, 0}, "sink": {400, 250},
	} {
		r.down(press[0], press[1])
		r.move(press[0]+80, press[1]+70)
		if r.s.UndoName() == "" {
			t.Errorf("%s: the drag changed nothing", name)
		}
		r.keys(tool.KeyEscape)
		r.move(press[0]+90, press[1]+90)
		r.up(press[0]+90, press[1]+90)
		r.wantNoTrace()
	}
}

// Dragged back to where it was, a thing has not been moved.
func TestDragBackLeavesNoTrace(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.down(400, 250)
	r.move(500, 300)
	r.move(401, 249)
	r.up(401, 249)
	r.wantNoTrace()
}

func TestAShakyClickMovesNothing(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.down(400, 250)
	r.move(402, 251)
	r.up(402, 251)
	r.wantNoTrace()
	r.wantSelected(session.Pick{Part: "sink-1", Node: -1})
}

func TestSeveralMoveTogether(t *testing.T) {
	d := plain()
	d.Holes = []design.Hole{{ID: "hole-1", At: at(900, 250), Diameter: 45 * mm}}
	d.Taps = []design.TapSet{{ID: "taps-1", Sink: "sink-1", SetBack: 60 * mm, Diameter: 35 * mm}}
	r := newRig(t, units.Metric, d)
	r.click(400, 250)
	r.mod = tool.Shift
	r.click(900, 250)
	r.click(400, 440) // the taps, which go with the sink by themselves
	r.mod = 0
	r.drag(400, 250, 440, 220)
	r.want(edit.MovePart("sink-1", at(40, -30)), edit.MovePart("hole-1", at(40, -30)))
	r.wantOneStep("Move 3 parts")
}

func TestTapsKeepToTheCentreline(t *testing.T) {
	d := plain()
	d.Taps = []design.TapSet{{ID: "taps-1", Sink: "sink-1", SetBack: 60 * mm, Diameter: 35 * mm}}
	r := newRig(t, units.Metric, d)
	r.drag(400, 440, 404, 427) // along the centreline: it holds
	taps := d.Taps[0]
	taps.SetBack = 75 * mm
	r.want(edit.SetTaps(taps))
	r.wantOneStep("Move tap holes")
	r.drag(400, 425, 433, 425) // off it
	taps.Offset = 35 * mm
	r.want(edit.SetTaps(taps))
}

func TestRiverNodesAndWidths(t *testing.T) {
	d := plain()
	d.Sinks = nil
	d.Channels = []design.Channel{{ID: "channel-1", Depth: 12 * mm, Rivers: []design.River{{Nodes: []design.RiverNode{
		{At: at(200, 200), Width: 60 * mm}, {At: at(600, 200), Width: 60 * mm}, {At: at(1000, 200), Width: 60 * mm},
	}}}}}
	r := newRig(t, units.Metric, d)
	r.click(300, 200)
	r.wantSelected(session.Pick{Part: "channel-1", Node: -1})
	r.drag(600, 200, 602, 262)
	moved := edit.MoveRiverNode("channel-1", 0, 1, at(600, 260))
	r.want(moved)
	r.wantOneStep("Move river")

	r.drag(200, 170, 200, 158) // no: the bank is where the river points
	bars := 0
	for _, h := range r.h.Overlay().Handles {
		if h.Kind == tool.HandleWidth {
			bars++
		}
	}
	if bars != 6 {
		t.Errorf("%d width bars, want two at each of three nodes", bars)
	}
}

func TestRiverWidthHandle(t *testing.T) {
	d := plain()
	d.Sinks = nil
	d.Channels = []design.Channel{{ID: "channel-1", Depth: 12 * mm, Rivers: []design.River{{Nodes: []design.RiverNode{
		{At: at(200, 200), Width: 60 * mm}, {At: at(1000, 200), Width: 60 * mm},
	}}}}}
	r := newRig(t, units.Metric, d)
	r.click(500, 200)
	r.drag(200, 230, 200, 248) // the left bank 18 mm out: 36 mm wider, 95 on the grid
	r.want(edit.SetRiverWidth("channel-1", 0, 0, 95*mm))
	r.wantOneStep("Change river width")
}

func TestRegionAndSupportPoints(t *testing.T) {
	d := plain()
	d.Sinks = nil
	d.Glass = []design.GlassBed{{ID: "glass-1", Grain: 8 * mm, Coverage: 50 * units.Percent, Depth: 10 * mm,
		Region: design.Region{Outer: edit.Rectangle(200*mm, 100*mm).Nodes}}}
	d.Glass[0].Region.Outer[2].At = at(220, 150)
	d.Supports = []design.Support{{ID: "support-1", Kind: design.SupportGable, Width: 18 * mm,
		Line: []design.Point{at(800, 50), at(800, 450)}}}
	r := newRig(t, units.Metric, d)
	r.click(100, 60)
	r.drag(220, 150, 250, 170)
	r.want(edit.MoveRegionNode("glass-1", 0, 0, 2, at(250, 170)))

	r = newRig(t, units.Metric, d)
	r.click(800, 300)
	r.wantSelected(session.Pick{Part: "support-1", Node: -1})
	r.drag(800, 450, 822, 400)
	r.want(edit.MoveSupportPoint("support-1", 1, at(820, 400)))
	r.drag(800, 250, 780, 250)
	r.want(edit.MoveSupportPoint("support-1", 1, at(820, 400)), edit.MovePart("support-1", at(-20, 0)))
}

// handle is the first handle of a kind.
func handle(o tool.Overlay, k tool.HandleKind) (tool.Handle, bool) {
	for _, h := range o.Handles {
		if h.Kind == k {
			return h, true
		}
	}
	return tool.Handle{}, false
}

func apply(t *testing.T, d design.Design, edits ...edit.Edit) design.Design {
	t.Helper()
	for _, e := range edits {
		var err error
		if d, err = e.Apply(d); err != nil {
			t.Fatalf("%s: %v", e.Name, err)
		}
	}
	return d
}

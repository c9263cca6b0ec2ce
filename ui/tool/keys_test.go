package tool_test

import (
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/tool"
)

// A number typed in a drag goes to the edge that the movement changes most.
func TestTypeWhileDraggingACorner(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.down(1200, 500)
	r.move(1260, 503)
	r.type_("1351.5")
	if v := r.h.Overlay().Value; v == nil || v.Text != "1351.5" || v.Name != "Back edge" {
		t.Fatalf("value %+v, want 1351.5 for the back edge", v)
	}
	r.move(900, 300) // the mouse no longer matters
	r.keys(tool.KeyEnter)
	r.move(800, 200)
	r.up(800, 200)
	r.want(edit.MoveNode(2, at(1351.5, 500))) // in line with the back left corner
	r.wantOneStep("Move corner")
}

func TestTypeInchesForASelectedEdge(t *testing.T) {
	r := newRig(t, units.Imperial, design.Design{Outline: edit.Rectangle(48*units.Inch, 22*units.Inch), Thickness: units.Inch})
	r.click(48*25.4, 11*25.4) // the right edge
	r.type_(`61 1/2"`)
	r.keys(tool.KeyEnter)
	r.want(edit.MoveEdge(1, design.Point{X: 13*units.Inch + units.Inch/2}))
	r.wantOneStep("Move edge")
}

func TestTypeARadius(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.click(1200, 500)
	ring, _ := handle(r.h.Overlay(), tool.HandleRadius)
	r.down(ring.At.X, ring.At.Y)
	r.move(ring.At.X-30, ring.At.Y-30)
	r.type_("12.7")
	r.keys(tool.KeyEnter)
	r.up(0, 0)
	r.want(edit.SetCorner(2, design.Corner{Kind: design.CornerRounded, Size: units.Inch / 2}))
}

// The radius of a selected corner can be typed without taking its ring.
func TestTypeTheRadiusOfASelectedCorner(t *testing.T) {
	r := newRig(t, units.Imperial, plain())
	r.click(1200, 500)
	if !r.h.TakeField("Radius") {
		t.Fatal("the radius can't be typed")
	}
	r.type_(`1/2"`)
	r.keys(tool.KeyEnter)
	r.want(edit.SetCorner(2, design.Corner{Kind: design.CornerRounded, Size: units.Inch / 2}))
	r.wantOneStep("Round corner")
}

func TestTypeTheRailOfASink(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.click(400, 250)
	if !r.h.TakeField("Rail in front") {
		t.Fatal("the rail in front can't be typed")
	}
	r.type_("76.2") // it was 250 - 150 = 100
	r.keys(tool.KeyEnter)
	r.want(edit.MovePart("sink-1", at(0, -23.8)))
	r.wantOneStep("Move sink")
}

func TestTabGoesToTheNextMeasure(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.down(400, 250)
	r.move(300, 250)
	if !r.h.WantsTab() {
		t.Fatal("Tab is not wanted in a drag")
	}
	r.keys(tool.KeyTab, tool.KeyTab)
	r.type_("80")
	if v := r.h.Overlay().Value; v == nil || v.Name != "Rail in front" {
		t.Fatalf("value %+v, want the rail in front", v)
	}
	r.keys(tool.KeyEnter)
	r.up(300, 250)
	r.want(edit.MovePart("sink-1", at(-100, -20)))
}

func TestBadNumberStaysAsTyped(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.click(400, 250)
	r.type_("12 bananas")
	r.keys(tool.KeyEnter)
	v := r.h.Overlay().Value
	if v == nil || v.Text != "12 bananas" || !v.Bad {
		t.Fatalf("value %+v, want it kept and marked bad", v)
	}
	if !strings.Contains(r.h.Hint(), "Mend the number") {
		t.Errorf("hint %q does not say what to do", r.h.Hint())
	}
	r.keys(tool.KeyEscape)
	r.wantNoTrace()
}

func TestEscapeInANumberGoesBackToTheDrag(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.down(400, 250)
	r.move(450, 250)
	r.type_("99")
	r.keys(tool.KeyEscape)
	r.move(500, 280)
	r.up(500, 280)
	r.want(edit.MovePart("sink-1", at(100, 30)))
	r.wantOneStep("Move sink")
}

// The eye goes elsewhere: a number that can be used is kept, no other is.
func TestANumberIsKeptWhenTheHandTurnsAway(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.click(400, 250)
	r.h.TakeField("To the left")
	r.type_("300")
	r.click(1000, 400)
	r.want(edit.MovePart("sink-1", at(50, 0)))
	r.wantOneStep("Move sink")
	r.click(450, 250)
	r.type_("5 bananas")
	r.h.Settle()
	r.want(edit.MovePart("sink-1", at(50, 0)))
}

// A number that is still being typed when the button is let go can be entered or
// dropped; the drag stays.
func TestANumberOutlivesTheButton(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.down(400, 250)
	r.move(450, 250)
	r.type_("3")
	r.up(450, 250)
	r.type_("00")
	r.keys(tool.KeyEnter)
	r.want(edit.MovePart("sink-1", at(50, 0)), edit.MovePart("sink-1", at(0, 0))) // to the left 300, as it was
	r.wantOneStep("Move sink")

	r = newRig(t, units.Metric, plain())
	r.down(400, 250)
	r.move(450, 250)
	r.type_("bad")
	r.type_("3x")
	r.up(450, 250)
	r.keys(tool.KeyEnter, tool.KeyEscape)
	r.want(edit.MovePart("sink-1", at(50, 0)))
	r.wantOneStep("Move sink")
	if r.h.Busy() {
		t.Error("the hand still holds the number")
	}
}

func TestBackspaceInANumber(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.click(400, 250)
	r.h.TakeField("To the left")
	r.type_("3005")
	r.keys(tool.KeyBackspace)
	r.keys(tool.KeyEnter)
	r.want(edit.MovePart("sink-1", at(50, 0))) // from 250 to 300
	r.click(450, 250)
	r.type_("7")
	r.keys(tool.KeyBackspace, tool.KeyBackspace)
	r.want(edit.MovePart("sink-1", at(50, 0)))
}

func TestArrowsNudgeByTheGrid(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.click(400, 250)
	r.keys(tool.KeyRight, tool.KeyRight, tool.KeyUp)
	r.mod = tool.Shift
	r.keys(tool.KeyDown)
	r.want(edit.MovePart("sink-1", at(10, 5-50)))
	r.wantOneStep("Move sink")
}

// An edge is nudged along its normal only, and a run of nudges ends where the
// next press begins.
func TestNudgeRunsAreSteps(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.click(300, 0)
	r.keys(tool.KeyDown, tool.KeyLeft, tool.KeyDown)
	r.want(edit.MoveEdge(0, at(0, -10)))
	r.click(400, 250)
	r.keys(tool.KeyLeft)
	r.s.Undo()
	r.want(edit.MoveEdge(0, at(0, -10)))
	r.keys(tool.KeyLeft)
	r.want(edit.MoveEdge(0, at(0, -10)), edit.MovePart("sink-1", at(-5, 0)))
}

func TestDelete(t *testing.T) {
	d := plain()
	d.Outline = edit.LShape(1200*mm, 500*mm, 400*mm, 900*mm, 0)
	r := newRig(t, units.Metric, d)
	r.click(400, 250)
	r.keys(tool.KeyDelete)
	r.want(edit.RemovePart("sink-1"))
	r.wantSelected()
	r.wantOneStep("Remove sink")

	r.s.Undo()
	r.click(400, 400) // the inside corner
	r.mod = tool.Shift
	r.click(1200, 400)
	r.mod = 0
	r.keys(tool.KeyDelete)
	r.want(edit.RemoveNode(3), edit.RemoveNode(2))
	r.wantOneStep("Remove 2 things")
}

func TestDeleteOfAnEdgeSaysWhyNot(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.click(300, 0)
	r.keys(tool.KeyDelete)
	r.wantNoTrace()
	if !strings.Contains(r.h.Hint(), "remove one of its corners") {
		t.Errorf("hint %q", r.h.Hint())
	}
}

func TestDoubleClickInsertsACorner(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.double(303, 0)
	r.want(edit.InsertNode(0, at(305, 0)))
	r.wantOneStep("Add corner")
	r.wantSelected(session.Pick{Node: 1})
}

func TestClickAgainReachesWhatIsUnder(t *testing.T) {
	d := plain()
	d.Holes = []design.Hole{{ID: "hole-1", At: at(400, 250), Diameter: 50 * mm}}
	d.Supports = []design.Support{{ID: "support-1", Kind: design.SupportRail, Width: 400 * mm,
		Line: []design.Point{at(100, 250), at(1100, 250)}}}
	r := newRig(t, units.Metric, d)
	for _, want := range []session.Pick{
		{Part: "hole-1", Node: -1}, {Part: "sink-1", Node: -1},
		{Node: -1}, {Part: "support-1", Node: -1}, {Part: "hole-1", Node: -1},
	} {
		r.click(405, 262)
		r.wantSelected(want)
	}
	// What was reached is dragged from under the rest.
	r.click(405, 262)
	r.drag(405, 262, 455, 262)
	r.want(edit.MovePart("sink-1", at(50, 0)))
}

func TestEscapeBacksOutOfOneThingAtATime(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.h.SetTool(tool.River)
	r.click(100, 100)
	r.click(300, 100)
	r.type_("12")
	for i, want := range []tool.Tool{tool.River, tool.River, tool.Select} {
		if !r.h.Cancel() || r.h.Tool() != want {
			t.Errorf("Esc %d: tool %v, want %v", i+1, r.h.Tool(), want)
		}
	}
	r.click(400, 250)
	if !r.h.Cancel() || len(r.s.Selection()) != 0 {
		t.Error("Esc does not let go of the selection")
	}
	if r.h.Cancel() {
		t.Error("Esc with nothing in hand says that it did something")
	}
	r.wantNoTrace()
}

// A change made elsewhere in a drag (undo by a menu) ends the drag.
func TestAChangeElsewhereEndsTheDrag(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.down(400, 250)
	r.move(500, 250)
	r.s.Undo()
	r.move(600, 250)
	r.up(600, 250)
	r.want()
	if r.h.Busy() {
		t.Error("the hand still holds something")
	}
}

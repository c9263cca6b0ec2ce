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
	"github.com/google/go-cmp/cmp"
)

// stroke presses, goes along f(0) to f(1) in many steps, and lets go.
func (r *rig) stroke(f func(t float64) (x, y float64)) {
	const n = 80
	r.down(f(0))
	for i := 1; i <= n; i++ {
		r.move(f(float64(i) / n))
	}
	r.up(f(1))
}

func straight(x0, y0, x1, y1 float64) func(float64) (float64, float64) {
	return func(t float64) (float64, float64) { return x0 + (x1-x0)*t, y0 + (y1-y0)*t }
}

func round(x, y, a, b float64) func(float64) (float64, float64) {
	return func(t float64) (float64, float64) {
		sin, cos := math.Sincos(2 * math.Pi * t)
		return x + a*cos, y + b*sin
	}
}

// empty is a top of 1200 x 500 mm with nothing on it.
func empty() design.Design {
	return design.Design{Outline: edit.Rectangle(1200*mm, 500*mm), Thickness: 40 * mm}
}

// hintHas checks what the hint line says.
func (r *rig) hintHas(words string) {
	r.Helper()
	if got := r.h.Hint(); !strings.Contains(got, words) {
		r.Errorf("the hint says %q, want %q in it", got, words)
	}
}

func TestRiverFreehand(t *testing.T) {
	r := newRig(t, units.Metric, empty())
	r.h.SetTool(tool.Freehand)
	r.hintHas("one stroke")
	r.type_("80")
	r.keys(tool.KeyEnter)
	// From beyond the left edge, waving, to well within the top.
	r.stroke(func(t float64) (float64, float64) { return -30 + 700*t, 200 + 60*math.Sin(5*t) })
	d := r.s.Design()
	if len(d.Channels) != 1 || len(d.Channels[0].Rivers) != 1 {
		t.Fatalf("channels %+v", d.Channels)
	}
	river := d.Channels[0].Rivers[0]
	if n := len(river.Nodes); n < 3 || n > 8 {
		t.Errorf("%d nodes", n)
	}
	first := river.Nodes[0]
	if river.Start != design.EndOpen || river.End != design.EndRound || first.At.X != 0 || first.Width != 80*mm {
		t.Errorf("ends %v and %v, first node %+v", river.Start, river.End, first)
	}
	if len(d.Relations) != 1 || d.Relations[0].Kind != design.RelationEdge {
		t.Errorf("the open end is not tied to its edge: %v", d.Relations)
	}
	r.hintHas("Fitted with ")
	r.hintHas(" points, within ")
	if r.h.Tool() != tool.Freehand {
		t.Error("the tool was put down after one stroke")
	}
	r.wantSelected(session.Pick{Part: "channel-1", Node: -1})
	r.wantOneStep("Draw river")
	// A branch starts in the river and leaves over the back edge.
	r.stroke(straight(350, 215, 500, 540))
	d = r.s.Design()
	if len(d.Channels) != 1 || len(d.Channels[0].Rivers) != 2 {
		t.Fatalf("after the branch: %d channels, %d rivers", len(d.Channels), len(d.Channels[0].Rivers))
	}
	branch := d.Channels[0].Rivers[1]
	last := branch.Nodes[len(branch.Nodes)-1]
	if branch.Start != design.EndRound || branch.End != design.EndOpen || last.At.Y != 500*mm {
		t.Errorf("the branch ends %v and %v at %v", branch.Start, branch.End, last.At)
	}
	r.hintHas("a branch of the channel")
	if r.s.UndoName() != "Add branch" {
		t.Errorf("undo would take back %q", r.s.UndoName())
	}
	r.keys(tool.KeyEscape)
	if r.h.Tool() != tool.Select {
		t.Error("Esc did not lead back")
	}
	r.wantSelected(session.Pick{Part: "channel-1", Node: -1})
}

func TestPoolAndIsland(t *testing.T) {
	r := newRig(t, units.Metric, empty())
	r.h.SetTool(tool.Freehand)
	r.stroke(round(500, 250, 220, 140))
	d := r.s.Design()
	if len(d.Channels) != 1 || len(d.Channels[0].Regions) != 1 || len(d.Channels[0].Rivers) != 0 {
		t.Fatalf("channels %+v", d.Channels)
	}
	r.hintHas("a pool")
	r.wantOneStep("Draw pool")
	r.stroke(round(480, 250, 60, 40))
	c := r.s.Design().Channels
	if len(c) != 1 || len(c[0].Regions) != 1 || len(c[0].Regions[0].Islands) != 1 {
		t.Fatalf("after the island: %+v", c)
	}
	r.hintHas("an island in the channel")
	// One that starts in the pool and goes beyond it widens it.
	r.stroke(round(730, 250, 60, 50))
	if c := r.s.Design().Channels; len(c) != 1 || len(c[0].Regions) != 2 {
		t.Fatalf("after widening: %+v", c)
	}
}

func TestStrokesBackOut(t *testing.T) {
	for _, which := range []tool.Tool{tool.Freehand, tool.Brush, tool.Eraser, tool.Bank, tool.Flood} {
		r := newRig(t, units.Metric, empty())
		r.h.SetTool(which)
		r.down(200, 200)
		r.move(300, 260)
		if !r.h.Busy() {
			t.Errorf("%v: not busy in a stroke", which)
		}
		r.keys(tool.KeyEscape)
		r.move(400, 300)
		r.up(400, 300)
		r.wantNoTrace()
		if r.h.Tool() != which {
			t.Errorf("%v: Esc in a stroke put the tool down", which)
		}
		r.keys(tool.KeyEscape)
		if r.h.Tool() != tool.Select || r.h.Key(tool.KeyEscape, 0) {
			t.Errorf("%v: the second Esc did not lead back to selecting", which)
		}
		// Taken up again and backed out of by another's hand, as before undo.
		r.h.SetTool(which)
		r.down(200, 200)
		r.move(300, 260)
		r.h.BackOut()
		r.up(300, 260)
		r.wantNoTrace()
	}
	r := newRig(t, units.Metric, empty())
	r.h.SetTool(tool.Freehand)
	r.click(300, 300)
	r.hintHas("draws nothing")
	r.stroke(straight(-300, 700, 900, 800))
	r.hintHas("beyond the top")
	r.wantNoTrace()
}

func TestBrush(t *testing.T) {
	r := newRig(t, units.Metric, empty())
	r.h.SetTool(tool.Brush)
	r.type_("9") // less than a brush can be, with the rest not typed yet
	r.type_("0")
	r.keys(tool.KeyEnter)
	r.stroke(straight(300, 250, 600, 250))
	line := []design.Point{at(300, 250), at(600, 250)}
	area := func() (sum float64) {
		for _, b := range r.s.Report().Solid.Beds {
			for _, l := range b.Loops {
				sum += l.Area()
			}
		}
		return sum
	}
	// A stadium: L w + pi w2/4.
	if got, want := area(), 300*90+math.Pi*45*45; math.Abs(got-want) > 300 {
		t.Errorf("painted %g mm2, want %g (%v)", got, want, line)
	}
	r.wantOneStep("Paint glass")
	r.h.Rune(']') // the next size up
	r.stroke(straight(600, 250, 600, 400))
	if n := len(r.s.Design().Glass); n != 1 {
		t.Errorf("%d beds after a stroke that touches the first", n)
	}
	// Upward from the middle of the first stroke's end, 100 wide: 105 x 100 and a
	// half disc beyond it, and to its right what the wider brush has more.
	if got, least := area(), 300*90+math.Pi*45*45+105*100+math.Pi*50*50/2-1200; got < least || got > least+4000 {
		t.Errorf("painted on to %g mm2, about %g wanted", got, least)
	}
	r.stroke(straight(1000, 100, 1100, 100))
	if n := len(r.s.Design().Glass); n != 2 {
		t.Errorf("%d beds after a stroke apart", n)
	}
	r.h.SetTool(tool.Eraser)
	r.type_("20")
	r.keys(tool.KeyEnter)
	r.stroke(straight(450, 150, 450, 350))
	if n := len(r.s.Design().Glass); n != 3 {
		t.Errorf("%d beds after one was cut through", n)
	}
	if r.s.UndoName() != "Erase glass" {
		t.Errorf("undo would take back %q", r.s.UndoName())
	}
	r.stroke(straight(450, 20, 470, 20))
	r.hintHas("no glass there")
}

// TestBrushSizes: what can't be used is said and stays as typed; brackets step
// through round figures of the maker's system.
func TestBrushSizes(t *testing.T) {
	r := newRig(t, units.Imperial, empty())
	r.perMM = 1
	r.h.SetTool(tool.Brush)
	r.move(300, 200)
	r.type_("1 1/2x")
	r.keys(tool.KeyEnter)
	if v := r.h.Overlay().Value; v == nil || v.Text != "1 1/2x" || !v.Bad {
		t.Errorf("the number is %+v", v)
	}
	r.keys(tool.KeyBackspace, tool.KeyEnter)
	dim := func() string { return r.h.Overlay().Dims[0].Text }
	for _, step := range []struct {
		key  rune
		want string
	}{{0, "brush 1 1/2 in"}, {']', "brush 2 in"}, {'[', "brush 1 1/2 in"}, {'[', "brush 1 1/4 in"}} {
		if step.key != 0 {
			r.h.Rune(step.key)
		}
		if got := dim(); got != step.want && got != strings.ReplaceAll(step.want, " in", "\"") {
			t.Errorf("the brush says %q, want %q", got, step.want)
		}
	}
	r.type_("0")
	r.keys(tool.KeyEnter)
	r.hintHas("at least")
	r.keys(tool.KeyEscape)
	r.type_("100")
	r.keys(tool.KeyEnter)
	r.hintHas("at most")
}

func TestBankTool(t *testing.T) {
	d := empty()
	d.Channels = []design.Channel{{ID: "channel-1", Depth: 10 * mm, Rivers: []design.River{{Nodes: []design.RiverNode{
		{At: at(200, 250), Width: 80 * mm}, {At: at(900, 250), Width: 80 * mm}}}}}}
	r := newRig(t, units.Metric, d)
	r.h.SetTool(tool.Bank)
	r.move(550, 100)
	r.hintHas("Move to the bank")
	r.move(550, 295)
	r.hintHas("along this bank")
	if len(r.h.Overlay().Ghost) == 0 {
		t.Error("the strip is not shown before the click")
	}
	bed := tool.StockOf(units.Metric).Glass
	r.drag(550, 292, 550, 340) // 50 mm beyond the bank at y = 290
	r.want(edit.BankGlass("channel-1", edit.LeftBank, 0, 50*mm, bed))
	r.wantOneStep("Line bank with glass")
	r.s.Undo()
	// On the other side, by numbers: 25 wide, 5 away.
	r.move(550, 208)
	r.type_("25")
	r.keys(tool.KeyTab)
	r.type_("5")
	r.keys(tool.KeyEnter)
	r.click(550, 208)
	r.want(edit.BankGlass("channel-1", edit.RightBank, 5*mm, 25*mm, bed))
	r.s.Undo()
	r.mod = tool.Shift
	r.click(550, 292)
	r.want(edit.BankGlass("channel-1", edit.BothBanks, 5*mm, 25*mm, bed))
	if r.s.UndoName() != "Line bank with glass" {
		t.Errorf("undo would take back %q", r.s.UndoName())
	}
}

// TestFlood fills what a river leaves of the top behind it; areas by hand.
func TestFlood(t *testing.T) {
	d := empty()
	d.Channels = []design.Channel{{ID: "channel-1", Depth: 10 * mm, Rivers: []design.River{{Start: design.EndOpen, End: design.EndOpen,
		Nodes: []design.RiverNode{{At: at(0, 250), Width: 100 * mm}, {At: at(1200, 250), Width: 100 * mm}}}}}}
	d.Holes = []design.Hole{{ID: "hole-1", At: at(600, 400), Diameter: 40 * mm}}
	r := newRig(t, units.Metric, d)
	r.h.SetTool(tool.Flood)
	r.move(300, 400)
	r.hintHas("A click fills")
	r.click(300, 400)
	bed := r.s.Report().Solid.Beds[0]
	sum := 0.0
	for _, l := range bed.Loops {
		sum += l.Area()
	}
	if want := 1200*200 - math.Pi*400; math.Abs(sum-want) > 80 {
		t.Errorf("filled %g mm2, want %g", sum, want)
	}
	r.wantOneStep("Fill with glass")
	r.click(320, 410)
	r.hintHas("glass here already")
	r.click(600, 400)
	r.hintHas("nothing to fill")
	r.click(600, 250) // the river itself
	if n := len(r.s.Design().Glass); n != 2 {
		t.Errorf("%d beds after filling the river", n)
	}
}

// TestGlassFollowsADraggedRiver: a bed laid along a bank with the tool keeps to it
// while the channel is dragged, and one undo takes both back.
func TestGlassFollowsADraggedRiver(t *testing.T) {
	d := empty()
	d.Channels = []design.Channel{{ID: "channel-1", Depth: 10 * mm, Rivers: []design.River{{Nodes: []design.RiverNode{
		{At: at(300, 250), Width: 60 * mm}, {At: at(600, 250), Width: 60 * mm}, {At: at(800, 250), Width: 60 * mm}}}}}}
	r := newRig(t, units.Metric, d)
	r.h.SetTool(tool.Bank)
	r.click(500, 281)
	r.keys(tool.KeyEscape)
	if n := len(r.s.Design().Glass); n != 1 {
		t.Fatalf("%d beds along the bank: %s", n, r.h.Hint())
	}
	laid := r.s.Design()
	r.s.Select()
	r.drag(500, 250, 500, 290)
	moved := edit.MovePart("channel-1", at(0, 40))
	want, err := moved.Apply(laid)
	if err != nil {
		t.Fatal(err)
	}
	got := r.s.Design()
	if diff := cmp.Diff(want.Glass, got.Glass); diff != "" {
		t.Errorf("the glass after the drag (-by the edit +by hand):\n%s", diff)
	}
	if cmp.Equal(laid.Glass, got.Glass) {
		t.Error("the glass stays")
	}
	r.s.Undo()
	if diff := cmp.Diff(laid, r.s.Design()); diff != "" {
		t.Errorf("one undo leaves (-before +after):\n%s", diff)
	}
}

// TestHintFollowsTheToolAway: what a tool leaves behind is told of by where the
// mouse is then, not by where it was when the tool was taken.
func TestHintFollowsTheToolAway(t *testing.T) {
	d := empty()
	d.Sinks = []design.Sink{{ID: "sink-1", At: at(600, 250),
		Shape: design.Shape{Kind: design.ShapeRectangle, Width: 400 * mm, Depth: 300 * mm}}}
	for name, use := range map[string]func(r *rig){
		"a tool":         func(r *rig) { r.h.SetTool(tool.Freehand) },
		"a part in hand": func(r *rig) { r.h.Put(tool.Put{Hole: &design.Hole{Diameter: 35 * mm}}) },
	} {
		t.Run(name, func(t *testing.T) {
			r := newRig(t, units.Metric, d)
			r.move(600, 250)
			r.hintHas("selects the sink")
			use(r)
			r.move(100, 100)
			r.keys(tool.KeyEscape)
			r.hintHas("selects the top")
			use(r)
			r.move(600, 250)
			r.keys(tool.KeyEscape)
			r.hintHas("selects the sink")
		})
	}
}

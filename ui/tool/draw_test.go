package tool_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
	"example.org/castwright/ui/tool"
)

func TestDrawOutline(t *testing.T) {
	r := newRig(t, units.Metric, design.Design{Thickness: 40 * mm})
	r.h.SetTool(tool.Outline)
	// Clockwise, with one point taken back; the first is clicked again to close.
	for _, p := range [][2]float64{{0, 0}, {2, 501}, {700, 700}, {898, 499}} {
		r.click(p[0], p[1])
		if p[1] == 700 {
			r.keys(tool.KeyBackspace)
		}
	}
	r.click(902, 4)
	r.click(3, 2)
	r.want(edit.SetOutline(design.Outline{Nodes: []design.Node{
		{At: at(900, 0)}, {At: at(900, 500)}, {At: at(0, 500)}, {At: at(0, 0)},
	}}))
	r.wantOneStep("Draw outline")
	if r.h.Tool() != tool.Select {
		t.Errorf("the tool is %v after the outline was closed", r.h.Tool())
	}
}

func TestDrawWithTypedLengths(t *testing.T) {
	r := newRig(t, units.Imperial, design.Design{})
	r.h.SetTool(tool.Outline)
	r.click(0, 0)
	r.move(800, 1)
	r.type_(`61 1/2`)
	r.keys(tool.KeyEnter)
	r.move(61.5*25.4, 200)
	r.type_(`22 1/4`)
	r.keys(tool.KeyEnter)
	r.click(0, 22.25*25.4)
	r.keys(tool.KeyEnter)
	r.want(edit.SetOutline(edit.Rectangle(123*units.Inch/2, 89*units.Inch/4)), seen(2))
}

// seen makes an edge that the starter puts against the wall a seen one.
func seen(i int) edit.Edit { return edit.SetSide(i, design.SideSeen) }

func TestDrawRiver(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.h.SetTool(tool.River)
	r.click(-40, 100) // outside: it runs over the left edge
	r.click(100, 60)
	r.double(700, 90)
	stock := tool.StockOf(units.Metric)
	want := stock.Channel
	want.Rivers = []design.River{{Start: design.EndOpen, End: design.EndRound, Nodes: []design.RiverNode{
		{At: at(-40, 100), Width: stock.Width}, {At: at(100, 60), Width: stock.Width}, {At: at(700, 90), Width: stock.Width},
	}}}
	r.want(edit.AddChannel(want))
	r.wantOneStep("Add channel")
	r.wantSelected(session.Pick{Part: "channel-1", Node: -1})
}

func TestDrawGlassRegionAndSupport(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	corners := [][2]float64{{800, 100}, {1100, 100}, {1100, 300}}
	nodes := []design.Node{{At: at(800, 100)}, {At: at(1100, 100)}, {At: at(1100, 300)}}
	r.h.SetTool(tool.Glass)
	for _, p := range corners {
		r.click(p[0], p[1])
	}
	r.keys(tool.KeyEnter)
	bed := tool.StockOf(units.Metric).Glass
	bed.Region.Outer = nodes
	r.want(edit.AddGlass(bed))

	r.h.SetTool(tool.Region)
	for _, p := range corners {
		r.click(p[0], p[1])
	}
	r.click(corners[0][0], corners[0][1])
	pool := tool.StockOf(units.Metric).Channel
	pool.Regions = []design.Region{{Outer: nodes}}
	r.want(edit.AddGlass(bed), edit.AddChannel(pool))

	r.h.SetTool(tool.Support)
	r.click(50, 50)
	r.click(50, 450)
	gable := tool.StockOf(units.Metric).Support
	gable.Line = []design.Point{at(50, 50), at(50, 450)}
	r.want(edit.AddGlass(bed), edit.AddChannel(pool), edit.AddSupport(gable))
}

func TestTooFewPointsSaySo(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.h.SetTool(tool.Glass)
	r.click(800, 100)
	r.keys(tool.KeyEnter)
	if got := r.h.Hint(); got != "This needs at least three points." {
		t.Errorf("hint %q", got)
	}
	r.wantNoTrace()
}

func TestPutSink(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	bowl := design.Sink{Shape: design.Shape{Kind: design.ShapeRectangle, Width: 400 * mm, Depth: 300 * mm}}
	r.h.Put(tool.Put{Sink: &bowl})
	r.move(850, 240)
	if o := r.h.Overlay(); len(o.Ghost) == 0 || len(o.Dims) == 0 {
		t.Errorf("the sink in hand shows %d lines and %d dimensions", len(o.Ghost), len(o.Dims))
	}
	r.wantNoTrace()
	r.click(851, 242)
	bowl.At = at(850, 240)
	r.want(edit.AddSink(bowl))
	r.wantOneStep("Add sink")
	r.wantSelected(session.Pick{Part: "sink-2", Node: -1})
}

func TestPutTapsOnACentreline(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	set := design.TapSet{Pattern: design.TapThree8, Diameter: 35 * mm}
	r.h.Put(tool.Put{Taps: &set})
	r.click(411, 438) // near the sink's centreline, 62 mm from the back
	set.Sink, set.SetBack = "sink-1", 60*mm
	r.want(edit.AddTaps(set))
}

func TestPutTapsAlone(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	set := design.TapSet{Diameter: 35 * mm}
	r.h.Put(tool.Put{Taps: &set})
	r.move(410, 440)
	r.click(1001, 432)
	set.At = at(1000, 430)
	r.want(edit.AddTaps(set))
}

func TestPutTheOtherParts(t *testing.T) {
	hole := design.Hole{Diameter: 45 * mm}
	river := design.Channel{Depth: 12 * mm, Rivers: []design.River{{Nodes: []design.RiverNode{
		{At: at(-100, 0), Width: 50 * mm}, {At: at(100, 0), Width: 50 * mm},
	}}}}
	bed := design.GlassBed{Grain: 8 * mm, Coverage: 50 * units.Percent, Depth: 9 * mm,
		Region: design.Region{Outer: edit.Rectangle(200*mm, 100*mm).Nodes}}
	leg := design.Support{Kind: design.SupportLeg, Patch: true, Line: []design.Point{at(0, 0), at(60, 0), at(60, 60), at(0, 60)}}
	for _, tt := range []struct {
		name string
		put  tool.Put
		want []edit.Edit
	}{
		{"hole", tool.Put{Hole: &hole}, []edit.Edit{edit.AddHole(hole), edit.MovePart("hole-1", at(900, 200))}},
		{"river", tool.Put{Channel: &river}, []edit.Edit{edit.AddChannel(river), edit.MovePart("channel-1", at(900, 200))}},
		{"glass", tool.Put{Glass: &bed}, []edit.Edit{edit.AddGlass(bed), edit.MovePart("glass-1", at(800, 150))}},
		{"leg", tool.Put{Support: &leg}, []edit.Edit{edit.AddSupport(leg), edit.MovePart("support-1", at(870, 170))}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := newRig(t, units.Metric, plain())
			r.h.Put(tt.put)
			r.click(901, 199)
			r.want(tt.want...)
		})
	}
}

// Without a mouse Enter sets a part down in the middle of the top.
func TestPutByEnter(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	hole := design.Hole{Diameter: 45 * mm}
	r.h.Put(tool.Put{Hole: &hole})
	r.keys(tool.KeyEnter)
	hole.At = at(600, 250)
	r.want(edit.AddHole(hole))
}

func TestPutIsPutBack(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.h.Put(tool.Put{Hole: &design.Hole{Diameter: 45 * mm}})
	r.move(900, 200)
	r.keys(tool.KeyEscape)
	r.click(900, 200)
	r.wantNoTrace()
	r.wantSelected(session.Pick{Node: -1})
}

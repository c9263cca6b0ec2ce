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

// river is a channel of three nodes on the plain top without its sink.
func river() design.Design {
	d := plain()
	d.Sinks = nil
	d.Channels = []design.Channel{{ID: "channel-1", Depth: 12 * mm, Rivers: []design.River{{Nodes: []design.RiverNode{
		{At: at(200, 200), Width: 60 * mm}, {At: at(600, 200), Width: 60 * mm}, {At: at(1000, 200), Width: 60 * mm},
	}}}}}
	return d
}

func bed() design.Design {
	d := plain()
	d.Sinks = nil
	d.Glass = []design.GlassBed{{ID: "glass-1", Grain: 8 * mm, Coverage: 50 * units.Percent, Depth: 10 * mm,
		Region: design.Region{Outer: []design.Node{{At: at(100, 100)}, {At: at(300, 100)}, {At: at(300, 200)}}}}}
	return d
}

func gable() design.Design {
	d := plain()
	d.Sinks = nil
	d.Supports = []design.Support{{ID: "support-1", Kind: design.SupportGable, Width: 18 * mm,
		Line: []design.Point{at(800, 50), at(800, 450)}}}
	return d
}

// Whatever is being dragged takes a number while it is dragged; Tab sets it and
// goes on to the next measure, Enter ends it.
func TestTypeWhileDraggingAnything(t *testing.T) {
	holed := plain()
	holed.Holes = []design.Hole{{ID: "hole-1", At: at(900, 250), Diameter: 50 * mm}}
	tapped := plain()
	tapped.Taps = []design.TapSet{{ID: "taps-1", Sink: "sink-1", SetBack: 60 * mm, Diameter: 35 * mm}}
	oval := plain()
	oval.Sinks[0].At = at(600, 250)
	oval.Sinks[0].Shape = design.Shape{Kind: design.ShapeEllipse, Width: 400 * mm, Depth: 300 * mm}
	setSink := func(d design.Design, change func(*design.Sink)) edit.Edit {
		k := d.Sinks[0]
		change(&k)
		return edit.SetSink(k)
	}
	curved := apply(t, plain(), edit.SetEdgeCurve(0, design.CurveSpline))
	for _, tt := range []struct {
		name     string
		d        design.Design
		clicks   [][2]float64
		from, to [2]float64
		typed    string // a Tab where there is a tab character
		want     []edit.Edit
	}{
		{"corner", plain(), nil, [2]float64{1200, 500}, [2]float64{1260, 503}, "1351.5",
			[]edit.Edit{edit.MoveNode(2, at(1351.5, 500))}},
		{"corner, a length and its round", plain(), nil, [2]float64{1200, 500}, [2]float64{1260, 500}, "1260\t\t\t40",
			[]edit.Edit{edit.MoveNode(2, at(1260, 500)), edit.SetCorner(2, design.Corner{Kind: design.CornerRounded, Size: 40 * mm})}},
		{"edge", plain(), nil, [2]float64{300, 0}, [2]float64{300, -40}, "565.2",
			[]edit.Edit{edit.MoveEdge(0, at(0, 500-565.2))}},
		{"edge, its length carries the next one", plain(), nil, [2]float64{300, 0}, [2]float64{300, -40}, "550\t1300",
			[]edit.Edit{edit.MoveEdge(0, at(0, -50)), edit.MoveEdge(1, at(100, 0))}},
		{"bend", plain(), [][2]float64{{300, 0}}, [2]float64{600, 0}, [2]float64{600, -40}, "31.75",
			[]edit.Edit{edit.BendEdge(0, units.FromMM(31.75))}},
		// r = (600² + 45²)/90 over a rise of 45: to 2000 is a rise of
		// 2000 - sqrt(2000² - 600²).
		{"bend to a radius", plain(), [][2]float64{{300, 0}}, [2]float64{600, 0}, [2]float64{600, -40}, "\t2 m",
			[]edit.Edit{edit.BendEdge(0, units.FromMM(2000-math.Sqrt(2000*2000-600*600)))}},
		{"control point", curved, [][2]float64{{600, 0}}, [2]float64{400, 0}, [2]float64{430, 0}, "45 cm",
			[]edit.Edit{edit.SetSpline(0, at(450, 0), at(800, 0))}},
		{"sink, two gaps", plain(), nil, [2]float64{400, 250}, [2]float64{300, 250}, "180\t3 in",
			[]edit.Edit{edit.MovePart("sink-1", at(180+150-400, 76.2+150-250))}},
		{"sink, a gap and its size: the gap stays", oval, nil, [2]float64{600, 250}, [2]float64{560, 250}, "300\t\t\t500",
			[]edit.Edit{edit.MovePart("sink-1", at(300+250-600, 0)), setSink(oval, func(k *design.Sink) {
				k.At, k.Shape.Width = at(550, 250), 500*mm
			})}},
		{"sink's width by its handle", oval, [][2]float64{{600, 250}}, [2]float64{800, 250}, [2]float64{822, 250}, "18 in",
			[]edit.Edit{setSink(oval, func(k *design.Sink) { k.Shape.Width = 18 * units.Inch })}},
		{"sink's depth by its handle", oval, [][2]float64{{600, 250}}, [2]float64{600, 100}, [2]float64{600, 80}, "31 cm",
			[]edit.Edit{setSink(oval, func(k *design.Sink) { k.Shape.Depth = 310 * mm })}},
		{"taps", tapped, nil, [2]float64{400, 440}, [2]float64{402, 420}, "2 1/4\"\t-12",
			[]edit.Edit{edit.SetTaps(design.TapSet{ID: "taps-1", Sink: "sink-1", SetBack: units.FromMM(57.15), Offset: -12 * mm, Diameter: 35 * mm})}},
		{"hole", holed, nil, [2]float64{900, 250}, [2]float64{960, 250}, "200-2*7.5",
			[]edit.Edit{edit.MovePart("hole-1", at(1200-185-25-900, 0))}},
		{"river node", river(), [][2]float64{{300, 200}}, [2]float64{600, 200}, [2]float64{640, 230}, "612.5\t222.25\t45",
			[]edit.Edit{edit.MoveRiverNode("channel-1", 0, 1, at(612.5, 222.25)), edit.SetRiverWidth("channel-1", 0, 1, 45*mm)}},
		{"river width", river(), [][2]float64{{300, 200}}, [2]float64{600, 230}, [2]float64{600, 250}, "2 1/2\"",
			[]edit.Edit{edit.SetRiverWidth("channel-1", 0, 1, units.FromMM(63.5))}},
		{"glass node", bed(), [][2]float64{{250, 120}}, [2]float64{300, 200}, [2]float64{300, 240}, "\t\t333\t55.5",
			[]edit.Edit{edit.MoveRegionNode("glass-1", 0, 0, 2, at(333, 55.5))}},
		{"support's end", gable(), [][2]float64{{800, 300}}, [2]float64{800, 450}, [2]float64{800, 400}, "380",
			[]edit.Edit{edit.MoveSupportPoint("support-1", 1, at(800, 430))}},
		{"support", gable(), nil, [2]float64{800, 300}, [2]float64{760, 300}, "400\t\t\t390",
			[]edit.Edit{edit.MovePart("support-1", at(791-800, 0)), edit.MoveSupportPoint("support-1", 0, at(791, 55)),
				edit.MoveSupportPoint("support-1", 1, at(791, 445))}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := newRig(t, units.Metric, tt.d)
			for _, c := range tt.clicks {
				r.click(c[0], c[1])
			}
			r.down(tt.from[0], tt.from[1])
			r.move((tt.from[0]+tt.to[0])/2, (tt.from[1]+tt.to[1])/2)
			r.move(tt.to[0], tt.to[1])
			for _, c := range tt.typed {
				if c == '\t' {
					r.keys(tool.KeyTab)
				} else if !r.h.Rune(c) {
					t.Fatalf("%q does not go into a number", c)
				}
			}
			if v := r.h.Overlay().Value; v == nil || v.Bad {
				t.Fatalf("value %+v, hint %q", v, r.h.Hint())
			}
			r.keys(tool.KeyEnter)
			r.up(tt.to[0], tt.to[1])
			if r.h.Busy() {
				t.Fatalf("the hand still holds something: %q", r.h.Hint())
			}
			r.want(tt.want...)
			name := r.s.UndoName()
			r.wantOneStep(name)
		})
	}
}

// Both edges at a corner by their lengths: the corner lies where two circles
// cross. From the back left corner at (0, 500) and the front right one at
// (1200, 0), 1503.3296378 and 500 long, they cross at (1500, 400): 1500² + 100²
// and 300² + 400² (the triangle of 3, 4 and 5).
func TestTypeBothLengthsAtACorner(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.down(1200, 500)
	r.move(1300, 470)
	r.type_("1503.3296378")
	r.keys(tool.KeyTab)
	r.type_("500")
	r.keys(tool.KeyEnter)
	r.up(1300, 470)
	got := r.s.Design().Outline.Nodes[2].At
	if off := got.Sub(at(1500, 400)); off.X.Abs() > 100 || off.Y.Abs() > 100 {
		t.Errorf("the corner lies at %v, want (1500, 400)", got)
	}
	r.click(1500, 400)
	r.type_("1000")
	r.keys(tool.KeyTab)
	r.type_("100") // the two corners lie 1300 apart
	r.keys(tool.KeyEnter)
	if v := r.h.Overlay().Value; v == nil || !v.Bad || v.Text != "100" || !strings.Contains(r.h.Hint(), "can't be so while") {
		t.Errorf("value %+v, hint %q: want it refused with the reason", v, r.h.Hint())
	}
}

// Every measure that a grip offers can be typed wrongly: the number stays as it
// was typed, is marked, and the hint says why; Esc leaves no trace.
func TestWrongNumbersStay(t *testing.T) {
	oval := plain()
	oval.Sinks[0].Shape = design.Shape{Kind: design.ShapeEllipse, Width: 400 * mm, Depth: 300 * mm}
	for _, tt := range []struct {
		name   string
		d      design.Design
		clicks [][2]float64
		field  string
		text   string
		says   string
	}{
		{"no number", oval, [][2]float64{{400, 250}}, "To the left", "12 bananas", "bananas"},
		{"a length in a square", oval, [][2]float64{{400, 250}}, "Rail in front", "3in*2in", ""},
		{"no end of a sum", oval, [][2]float64{{400, 250}}, "Rail in front", "60 -", ""},
		{"a bowl of nothing", oval, [][2]float64{{400, 250}}, "Width", "0", "must be more than nothing"},
		{"too far", oval, [][2]float64{{400, 250}}, "To the left", "101 m", ""},
		{"a radius below half the chord", apply(t, plain(), edit.BendEdge(0, 45*mm)), [][2]float64{{300, -30}},
			"Radius", "599", "half the chord"},
		{"two units for an angle", oval, [][2]float64{{400, 250}}, "Turned", "22 mm", ""},
		{"a top of no width", plain(), [][2]float64{{900, 250}}, "Width", "0", "more than nothing"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := newRig(t, units.Metric, tt.d)
			for _, c := range tt.clicks {
				r.click(c[0], c[1])
			}
			if !r.h.TakeField(tt.field) {
				t.Fatalf("%q can't be typed", tt.field)
			}
			r.type_(tt.text)
			for range 2 { // Tab refuses as Enter does
				r.keys(tool.KeyTab)
				v := r.h.Overlay().Value
				if v == nil || v.Text != tt.text || !v.Bad || v.Name != tt.field {
					t.Fatalf("value %+v, want %q kept for %q and marked", v, tt.text, tt.field)
				}
				r.keys(tool.KeyEnter)
			}
			if got := r.h.Hint(); !strings.Contains(got, tt.says) || !strings.Contains(got, "Mend the number") {
				t.Errorf("hint %q, want it to say %q and what to do", got, tt.says)
			}
			r.keys(tool.KeyEscape)
			r.wantNoTrace()
		})
	}
}

// With several things in hand a number is how far they go.
func TestTypeForSeveral(t *testing.T) {
	d := plain()
	d.Holes = []design.Hole{{ID: "hole-1", At: at(900, 250), Diameter: 50 * mm}}
	r := newRig(t, units.Metric, d)
	r.click(400, 250)
	r.mod = tool.Shift
	r.click(900, 250)
	r.mod = 0
	r.down(400, 250)
	r.move(450, 250)
	r.type_("38.1")
	r.keys(tool.KeyTab)
	r.type_("-1/2\"")
	r.keys(tool.KeyEnter)
	r.up(450, 250)
	r.want(edit.MovePart("sink-1", at(38.1, -12.7)), edit.MovePart("hole-1", at(38.1, -12.7)))
}

// The top itself takes its width and depth over all.
func TestTypeTheTopsSize(t *testing.T) {
	d := apply(t, plain(), edit.BendEdge(0, 45*mm))
	r := newRig(t, units.Metric, d)
	r.click(900, 250)
	r.wantSelected(session.Pick{Node: -1})
	r.type_(`61 1/2"`)
	r.keys(tool.KeyTab)
	r.type_(`22 1/4"`)
	r.keys(tool.KeyEnter)
	r.want(edit.Resize(61*units.Inch+units.Inch/2, 545*mm), edit.Resize(61*units.Inch+units.Inch/2, 22*units.Inch+units.Inch/4))
	r.wantOneStep("Resize top")
}

// Enter opens the measures of what is selected; Tab walks through them.
func TestEnterOpensTheMeasures(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.click(300, 0)
	r.keys(tool.KeyEnter)
	var names []string
	for range 4 {
		names = append(names, r.h.Overlay().Value.Name)
		r.keys(tool.KeyTab)
	}
	if got, want := strings.Join(names, ", "), "Depth, Front edge, Rise, Depth"; got != want {
		t.Errorf("Tab walks through %s, want %s", got, want)
	}
	r.keys(tool.KeyEscape)
	r.wantNoTrace()
}

// A part in hand takes numbers for its place before it is set down.
func TestTypeForAPartInHand(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	bowl := design.Sink{Shape: design.Shape{Kind: design.ShapeEllipse, Width: 300 * mm, Depth: 200 * mm}}
	r.h.Put(tool.Put{Sink: &bowl})
	r.move(850, 240)
	r.keys(tool.KeyTab) // from the first, to the left
	r.keys(tool.KeyTab)
	if v := r.h.Overlay().Value; v == nil || v.Name != "To the right" {
		t.Fatalf("value %+v, want to the right", v)
	}
	r.type_("88.9")
	r.keys(tool.KeyTab)
	r.type_("2 in x")
	r.keys(tool.KeyEnter)
	if v := r.h.Overlay().Value; v == nil || !v.Bad || v.Text != "2 in x" {
		t.Fatalf("value %+v, want it kept and marked", v)
	}
	r.keys(tool.KeyBackspace, tool.KeyBackspace, tool.KeyEnter)
	r.move(700, 330) // the mouse no longer matters
	r.wantNoTrace()
	r.keys(tool.KeyEnter)
	bowl.At = at(1200-88.9-150, 50.8+100)
	// What was typed is kept when the top grows.
	r.want(edit.AddSink(bowl), edit.KeepDistance("sink-2", design.SideRight), edit.KeepDistance("sink-2", design.SideFront))
}

// A sink set down on the centreline of its cabinet stays on it, one put on that
// of the top on that.
func TestASinkStaysWhereItWasMeant(t *testing.T) {
	for _, tt := range []struct {
		name  string
		gable bool
		says  string
		want  edit.Edit
	}{
		{"cabinet", true, "to stay on the centreline of the cabinet", edit.AddRelation(design.Relation{
			Kind: design.RelationBetween, Part: "sink-1", Other: "support-1", Second: "support-2"})},
		{"top", false, "to stay on the centreline of the top", edit.AddRelation(design.Relation{Kind: design.RelationTop, Part: "sink-1"})},
	} {
		d := plain()
		d.Sinks = nil
		x := 600.0
		if tt.gable {
			x = 550
			for i, gx := range []float64{100, 1000} {
				d.Supports = append(d.Supports, design.Support{ID: []design.ID{"support-1", "support-2"}[i], Kind: design.SupportGable,
					Width: 18 * mm, Line: []design.Point{at(gx, 60), at(gx, 480)}})
			}
		}
		r := newRig(t, units.Metric, d)
		bowl := design.Sink{Shape: design.Shape{Kind: design.ShapeEllipse, Width: 400 * mm, Depth: 300 * mm}}
		r.h.Put(tool.Put{Sink: &bowl})
		r.move(x+4, 235)
		if !strings.Contains(r.h.Hint(), tt.says) {
			t.Errorf("%s: hint %q does not say %q", tt.name, r.h.Hint(), tt.says)
		}
		r.click(x+4, 235)
		bowl.At = at(x, 235)
		r.want(edit.AddSink(bowl), tt.want)
		if rs := r.s.Design().Relations; len(rs) != 1 {
			t.Errorf("%s: relations %+v", tt.name, rs)
		}
		r.wantOneStep("Add sink")
	}
}

func TestTypeForTapsInHand(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	set := design.TapSet{Pattern: design.TapThree8, Diameter: 35 * mm}
	r.h.Put(tool.Put{Taps: &set})
	r.move(404, 430)
	r.type_("2 1/4\"")
	r.keys(tool.KeyEnter)
	r.click(404, 420)
	set.Sink, set.SetBack = "sink-1", units.FromMM(57.15)
	r.want(edit.AddTaps(set))
}

// A drawing takes the place of its next point by numbers alone, from the left
// and the front of the top, and a river its widths.
func TestDrawByNumbers(t *testing.T) {
	d := plain()
	d.Sinks = nil
	r := newRig(t, units.Metric, d)
	r.h.SetTool(tool.River)
	r.move(300, 300)
	for _, p := range [][3]string{{"0", "152.4", "63.5"}, {"6 in", "8 1/2\"", "50.8"}, {"11 in", "7 in", "2 in - 1/2 in"}} {
		r.type_(p[0])
		if v := r.h.Overlay().Value; v == nil || v.Name != "From the left" {
			t.Fatalf("value %+v, want from the left as for the point before", v)
		}
		r.keys(tool.KeyTab)
		r.type_(p[1])
		r.keys(tool.KeyTab)
		r.type_(p[2])
		r.keys(tool.KeyEnter)
	}
	r.keys(tool.KeyEnter)
	got := r.s.Design().Channels
	if len(got) != 1 || len(got[0].Rivers[0].Nodes) != 3 {
		t.Fatalf("channels %+v, hint %q", got, r.h.Hint())
	}
	want := []design.RiverNode{{At: at(0, 152.4), Width: units.FromMM(63.5)}, {At: at(152.4, 215.9), Width: units.FromMM(50.8)},
		{At: at(279.4, 177.8), Width: units.FromMM(38.1)}}
	if e := got[0].Rivers[0]; e.Start != design.EndOpen || e.End != design.EndRound {
		t.Errorf("the river's ends are %v and %v, want it to run over the edge that it starts on", e.Start, e.End)
	}
	// It stays where it starts: on the left edge, which runs down from (0, 500).
	tie := design.Relation{Kind: design.RelationEdge, Part: "channel-1", Edge: 3, Along: (500 - 152.4) / 500}
	if rs := r.s.Design().Relations; len(rs) != 1 || math.Abs(rs[0].Along-tie.Along) > 1e-9 {
		t.Errorf("relations %+v, want %+v", rs, tie)
	} else if rs[0].Along = tie.Along; rs[0] != tie {
		t.Errorf("relation %+v, want %+v", rs[0], tie)
	}
	for i, n := range got[0].Rivers[0].Nodes {
		if n != want[i] {
			t.Errorf("node %d is %+v, want %+v", i, n, want[i])
		}
	}
}

// A length and a direction, or a length and one coordinate.
func TestDrawByLengthAndDirection(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.h.SetTool(tool.Support)
	r.click(100, 100)
	r.move(180, 140)
	r.type_("500")
	r.keys(tool.KeyTab)
	r.type_("30")
	r.keys(tool.KeyEnter)
	sin, cos := math.Sincos(math.Pi / 6)
	if got, want := r.s.Design().Supports[0].Line[1], at(100+500*cos, 100+500*sin); got != want {
		t.Errorf("30 degrees: the line ends at %v, want %v", got, want)
	}
	r.h.SetTool(tool.Support)
	r.click(100, 100)
	r.move(180, 140)
	r.type_("500")
	r.keys(tool.KeyTab, tool.KeyTab)
	r.type_("400") // 300 to the right: 400 up, 3-4-5
	r.keys(tool.KeyEnter)
	if got, want := r.s.Design().Supports[1].Line[1], at(400, 500); got != want {
		t.Errorf("length and place: the line ends at %v, want %v", got, want)
	}
}

// A rail under the limit of the warnings' table says so in words: 3 in wanted,
// 2 in least.
func TestNarrowRailsAreWorded(t *testing.T) {
	d := plain()
	for _, tt := range []struct {
		y      float64
		text   string
		severe bool
	}{{150 + 80, "80 mm", false}, {150 + 60, "60 mm, under 76.2 mm", false}, {150 + 40, "40 mm, under 50.8 mm", true},
		{150 - 10, "10 mm over the edge", true}} {
		d.Sinks[0].At = at(400, tt.y)
		r := newRig(t, units.Metric, d)
		r.click(400, tt.y)
		found := false
		for _, m := range r.h.Overlay().Dims {
			if m.Field == "Rail in front" {
				found = true
				if m.Text != tt.text || m.Severe != tt.severe || m.Low != (tt.text != "80 mm") {
					t.Errorf("rail of %g: %+v, want %q", tt.y-150, m, tt.text)
				}
			}
		}
		if !found {
			t.Errorf("no rail in front at %g", tt.y)
		}
	}
}

// The knob turns a sink: by 15 degrees it holds.
func TestTurnASink(t *testing.T) {
	d := plain()
	d.Sinks[0].At = at(600, 250)
	d.Sinks[0].Shape = design.Shape{Kind: design.ShapeEllipse, Width: 400 * mm, Depth: 300 * mm}
	r := newRig(t, units.Metric, d)
	r.click(600, 250)
	k, ok := handle(r.h.Overlay(), tool.HandleTurn)
	if !ok {
		t.Fatal("a selected sink has no knob to turn it")
	}
	arm := k.At.Sub(vec(600, 250)).Turn(29 * math.Pi / 180)
	r.drag(k.At.X, k.At.Y, 600+arm.X, 250+arm.Y)
	turned := d.Sinks[0]
	turned.Rotation = 30 * units.Degree
	r.want(edit.SetSink(turned))
	r.wantOneStep("Turn sink")
	r.h.TakeField("Turned")
	r.type_("90/4")
	r.keys(tool.KeyEnter)
	turned.Rotation = 22_500_000
	r.want(edit.SetSink(turned))
}

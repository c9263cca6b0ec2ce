package tool_test

import (
	"math"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/tool"
)

// Each thing that the snap can hold, with the words that say so. The places are
// worked out by hand beside each row; the grid of 5 mm alone would give others.
func TestWhatTheSnapHolds(t *testing.T) {
	// A second sink, and two holes in a row with it.
	two := plain()
	two.Sinks[0].At = at(250, 250)
	two.Sinks = append(two.Sinks, design.Sink{ID: "sink-2", At: at(850, 222.2),
		Shape: design.Shape{Kind: design.ShapeRectangle, Width: 300 * mm, Depth: 200 * mm}})
	row := plain()
	row.Sinks = nil
	row.Holes = []design.Hole{
		{ID: "hole-1", At: at(103, 100), Diameter: 30 * mm},
		{ID: "hole-2", At: at(257.4, 100), Diameter: 40 * mm},
		{ID: "hole-3", At: at(700, 100), Diameter: 30 * mm},
	}
	cut := plain()
	cut.Sinks = nil
	cut.Supports = []design.Support{{ID: "support-1", Kind: design.SupportRail, Width: 18 * mm,
		Line: []design.Point{at(300, 200), at(700, 300)}}}
	bowed := apply(t, cut, edit.BendEdge(0, 50*mm))
	for _, tt := range []struct {
		name     string
		d        design.Design
		select_  [2]float64 // clicked first, unless zero
		from, to [2]float64
		want     edit.Edit
		says     string
	}{
		{"corner", cut, [2]float64{400, 225}, [2]float64{300, 200}, [2]float64{4, -3},
			edit.MoveSupportPoint("support-1", 0, at(0, 0)), "On the front left corner"},
		{"mid-point", cut, [2]float64{400, 225}, [2]float64{300, 200}, [2]float64{597, 3},
			edit.MoveSupportPoint("support-1", 0, at(600, 0)), "On the middle of the front edge"},
		{"edge", cut, [2]float64{400, 225}, [2]float64{300, 200}, [2]float64{-4, 333},
			edit.MoveSupportPoint("support-1", 0, at(0, 335)), "On the left edge"},
		{"mid-point of a bow", bowed, [2]float64{400, 225}, [2]float64{300, 200}, [2]float64{597, -47},
			edit.MoveSupportPoint("support-1", 0, at(600, -50)), "On the middle of the front edge"},
		{"centreline of the other sink", two, [2]float64{}, [2]float64{850, 222.2}, [2]float64{850, 246},
			edit.MovePart("sink-2", at(0, 27.8)), "centreline of the"},
		// Sink 1 reaches to 400, the right edge lies at 1200, sink 2 is 300 wide.
		{"equal gaps", two, [2]float64{}, [2]float64{850, 222.2}, [2]float64{797, 322.2},
			edit.MovePart("sink-2", at(-50, 97.8)), "Equal gaps left and right, 250 mm"},
		// Between holes 1 and 2: 257.4 - 20 - (103 + 15) = 119.4; the third lies
		// as far beyond 257.4 + 20 + 119.4 + 15.
		{"gap equal to another", row, [2]float64{}, [2]float64{700, 100}, [2]float64{414, 100},
			edit.MovePart("hole-3", at(411.8-700, 0)), "Gap equal to that between the drain hole 1 and the drain hole 2, 119.4 mm"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := newRig(t, units.Metric, tt.d)
			if tt.select_ != [2]float64{} {
				r.click(tt.select_[0], tt.select_[1])
			}
			r.down(tt.from[0], tt.from[1])
			r.move((tt.from[0]+tt.to[0])/2, (tt.from[1]+tt.to[1])/2)
			r.move(tt.to[0], tt.to[1])
			hint := r.h.Hint()
			r.up(tt.to[0], tt.to[1])
			r.want(tt.want)
			if !strings.Contains(hint, tt.says) {
				t.Errorf("hint %q does not say %q", hint, tt.says)
			}
		})
	}
}

// Where a sink's centreline meets a bowed edge. The arc of 50 mm over a chord of
// 1200 mm has r = (600² + 50²)/100 = 3625 about (600, 3575), so at x = 400 it
// lies at 3575 - sqrt(3625² - 200²).
func TestSnapToACrossing(t *testing.T) {
	d := apply(t, plain(), edit.BendEdge(0, 50*mm))
	d.Supports = []design.Support{{ID: "support-1", Kind: design.SupportRail, Width: 18 * mm,
		Line: []design.Point{at(700, 200), at(1100, 300)}}}
	r := newRig(t, units.Metric, d)
	r.click(900, 250)
	y := 3575 - math.Sqrt(3625*3625-200*200)
	r.down(700, 200)
	r.move(500, 100)
	r.move(403, y+4)
	hint := r.h.Hint()
	r.up(403, y+4)
	r.want(edit.MoveSupportPoint("support-1", 0, at(400, y)))
	if !strings.Contains(hint, "Where the front edge meets the centreline of the sink") &&
		!strings.Contains(hint, "Where the centreline of the sink meets the front edge") {
		t.Errorf("hint %q", hint)
	}
}

// An edge drawn to a round hole touches it: by the right triangle of centre,
// start and point of contact (Euclid III.18), 300 mm away and 50 mm of radius.
func TestSnapTangentToAHole(t *testing.T) {
	d := plain()
	d.Sinks = nil
	d.Holes = []design.Hole{{ID: "hole-1", At: at(700, 200), Diameter: 100 * mm}}
	r := newRig(t, units.Metric, d)
	r.h.SetTool(tool.Support)
	r.click(403, 197) // in line with the hole? no: on the grid
	r.h.SetTool(tool.Support)
	r.click(400, 200)
	// sin(a) = 50/300: the contact lies at centre + 50 (-sin a, cos a).
	sin := 50.0 / 300
	x, y := 700-50*sin, 200+50*math.Sqrt(1-sin*sin)
	r.move(x+3, y+2)
	if got := r.h.Hint(); !strings.Contains(got, "Tangent to the drain hole") {
		t.Errorf("hint %q", got)
	}
	r.click(x+3, y+2)
	made := r.s.Design().Supports
	if len(made) != 1 {
		t.Fatalf("%d supports", len(made))
	}
	if got := made[0].Line[1]; got.Sub(at(x, y)).X.Abs() > 10 || got.Sub(at(x, y)).Y.Abs() > 10 {
		t.Errorf("it ends at %v, want the point of contact %v", got, at(x, y))
	}
}

// A front bent until it runs on from the sides is a half circle: its rise is
// half of its chord.
func TestBendSnapsToTangent(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	r.click(300, 0)
	r.down(600, 0)
	r.move(600, -200)
	r.move(600, -597)
	hint := r.h.Hint()
	r.up(600, -597)
	r.want(edit.BendEdge(0, 600*mm))
	if !strings.Contains(hint, "Tangent to the") {
		t.Errorf("hint %q", hint)
	}
}

func TestRadiusSnapsToThatOfAnotherCorner(t *testing.T) {
	d := plain()
	d.Outline.Nodes[0].Corner = design.Corner{Kind: design.CornerRounded, Size: units.FromMM(63.7)}
	r := newRig(t, units.Metric, d)
	r.click(1200, 500)
	ring, _ := handle(r.h.Overlay(), tool.HandleRadius)
	r.down(ring.At.X, ring.At.Y)
	r.move(ring.At.X-30, ring.At.Y-30)
	r.move(ring.At.X-61, ring.At.Y-61) // 61 along both: at a right angle the radius
	hint := r.h.Hint()
	r.up(ring.At.X-61, ring.At.Y-61)
	r.want(edit.SetCorner(2, design.Corner{Kind: design.CornerRounded, Size: units.FromMM(63.7)}))
	if !strings.Contains(hint, "Equal to that of the front left corner, 63.7 mm") {
		t.Errorf("hint %q", hint)
	}
}

// A corner drawn in until the right edge is as long as another: of an L whose
// return is 397.3 wide.
func TestLengthSnapsToThatOfAnotherEdge(t *testing.T) {
	d := plain()
	d.Sinks = nil
	d.Outline = design.Outline{Nodes: []design.Node{{At: at(0, 0)}, {At: at(397.3, 0)}, {At: at(397.3, 400)},
		{At: at(1200, 400)}, {At: at(1200, 900)}, {At: at(0, 900)}}}
	r := newRig(t, units.Metric, d)
	r.down(900, 400) // the inner front edge, off its middle
	r.move(900, 450)
	r.move(900, 499) // the right edge is then 401 long, the return 397.3
	hint := r.h.Hint()
	r.up(900, 499)
	r.want(edit.MoveEdge(2, at(0, 900-397.3-400)))
	if !strings.Contains(hint, "The right edge 2 as long as the front edge 1, 397.3 mm") {
		t.Errorf("hint %q", hint)
	}
}

// A spline's control point on the line of the edge beside it goes on smoothly.
func TestControlSnapsToSmooth(t *testing.T) {
	d := plain()
	d.Sinks = nil
	d.Outline.Nodes[0].At = at(100, 40) // the left edge runs aslant
	d = apply(t, d, edit.SetEdgeCurve(0, design.CurveSpline))
	r := newRig(t, units.Metric, d)
	r.click(100+1100.0/2, 20)
	c := d.Outline.Nodes[0].Edge.C1
	r.down(c.X.MM(), c.Y.MM())
	// The left edge comes from (0, 500) to (100, 40): one going on from there.
	to := [2]float64{100 + 0.3*100 + 2, 40 - 0.3*460}
	r.move(to[0]+40, to[1]+40)
	r.move(to[0], to[1])
	hint := r.h.Hint()
	r.up(to[0], to[1])
	got := r.s.Design().Outline.Nodes[0].Edge.C1
	cross := (got.X.MM()-100)*(-460) - (got.Y.MM()-40)*100
	if math.Abs(cross)/math.Hypot(100, 460) > 1e-4 {
		t.Errorf("the control point lies %.4f mm off the line of the left edge", cross/math.Hypot(100, 460))
	}
	if !strings.Contains(hint, "Smooth with the left edge") {
		t.Errorf("hint %q", hint)
	}
}

func TestFixedRounding(t *testing.T) {
	for _, tt := range []struct {
		sys  units.System
		r    tool.Rounding
		want units.Length
	}{
		{units.Imperial, 1, units.Inch / 16}, {units.Imperial, 5, units.Inch},
		{units.Metric, 1, mm}, {units.Metric, 4, 10 * mm}, {units.Metric, 5, 50 * mm},
		{units.Metric, tool.ByZoom, 5 * mm}, {units.Metric, 77, 5 * mm},
	} {
		r := newRig(t, tt.sys, plain())
		r.h.SetRounding(tt.r)
		r.h.SetScale(1)
		if tt.r == 77 && r.h.Rounding() != tool.ByZoom {
			t.Error("an unknown step is taken")
		}
		if got := r.h.StepNow(); tt.sys == units.Metric && got != tt.want || tt.sys == units.Imperial && got != tt.want {
			t.Errorf("%v %d: step %v, want %v", tt.sys, tt.r, got, tt.want)
		}
	}
	r := newRig(t, units.Metric, plain())
	r.h.SetRounding(5)
	r.drag(400, 250, 533, 283) // 50 mm steps
	r.want(edit.MovePart("sink-1", at(150, 50)))
}

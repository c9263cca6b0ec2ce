package tool_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/tool"
	"github.com/google/go-cmp/cmp"
)

// full is a top with one of everything.
func full() design.Design {
	d := plain()
	d.Outline = edit.LShape(1800*mm, 600*mm, 600*mm, 1500*mm, 80*mm)
	d.Outline.Nodes[0].Edge = design.Edge{Curve: design.CurveArc, Rise: 40 * mm}
	d.Outline.Nodes[3].Edge = design.Edge{Curve: design.CurveSpline, C1: at(1850, 1000), C2: at(1750, 1300)}
	d.Sinks[0].At = at(900, 1200)
	d.Taps = []design.TapSet{{ID: "taps-1", Pattern: design.TapThree8, Sink: "sink-1", SetBack: 60 * mm, Diameter: 35 * mm}}
	d.Holes = []design.Hole{{ID: "hole-1", At: at(1300, 1200), Diameter: 45 * mm}}
	d.Channels = []design.Channel{{ID: "channel-1", Depth: 12 * mm, Rivers: []design.River{{Nodes: []design.RiverNode{
		{At: at(100, 100), Width: 60 * mm}, {At: at(300, 600), Width: 40 * mm}, {At: at(200, 1400), Width: 80 * mm}},
		Start: design.EndOpen}}}}
	d.Glass = []design.GlassBed{{ID: "glass-1", Grain: 8 * mm, Coverage: 50 * units.Percent, Depth: 9 * mm,
		Region: design.Region{Outer: []design.Node{{At: at(1400, 1000)}, {At: at(1700, 1000)}, {At: at(1700, 1400)}}}}}
	d.Supports = []design.Support{{ID: "support-1", Kind: design.SupportGable, Width: 18 * mm,
		Line: []design.Point{at(700, 950), at(700, 1500)}}}
	return d
}

// Whatever is done, in whatever order, nothing panics, undo gives back the
// start, and backing out ends idle.
func TestRandomHands(t *testing.T) {
	runes := []rune("0123456789./-'\" mx(*é\x00")
	for seed := range uint64(12) {
		rnd := rand.New(rand.NewPCG(1, seed))
		start := full()
		if seed%10 == 0 {
			start = design.Design{}
		}
		r := newRig(t, units.System(seed%2), start)
		place := func() (float64, float64) {
			if n := start.Outline.Nodes; len(n) > 0 && rnd.IntN(3) == 0 {
				p := n[rnd.IntN(len(n))].At
				return p.X.MM() + 5*rnd.NormFloat64(), p.Y.MM() + 5*rnd.NormFloat64()
			}
			if o := r.h.Overlay(); len(o.Handles) > 0 && rnd.IntN(2) == 0 {
				h := o.Handles[rnd.IntN(len(o.Handles))]
				return h.At.X, h.At.Y
			}
			if rnd.IntN(50) == 0 {
				return math.NaN(), math.Inf(1)
			}
			return 2200*rnd.Float64() - 200, 1900*rnd.Float64() - 200
		}
		for range 150 {
			x, y := place()
			r.mod = tool.Mod(rnd.IntN(8) & rnd.IntN(8))
			switch rnd.IntN(18) {
			case 0, 1, 2:
				r.down(x, y)
			case 3, 4, 5:
				r.move(x, y)
			case 6, 7, 8:
				r.up(x, y)
			case 9:
				r.double(x, y)
			case 10:
				r.h.Key(tool.Key(rnd.IntN(11)), r.mod)
			case 11:
				r.h.Rune(runes[rnd.IntN(len(runes))])
			case 12:
				r.h.SetTool(tool.Tool(rnd.IntN(int(tool.Flood) + 1)))
			case 13:
				parts := full()
				r.h.Put([]tool.Put{{Hole: &design.Hole{Diameter: 40 * mm}}, {Sink: &parts.Sinks[0]}, {Taps: &parts.Taps[0]},
					{Channel: &parts.Channels[0]}, {Glass: &parts.Glass[0]}, {Support: &parts.Supports[0]}, {}}[rnd.IntN(7)])
			case 14:
				if o := r.h.Overlay(); len(o.Dims) > 0 {
					r.h.TakeField(o.Dims[rnd.IntN(len(o.Dims))].Field)
				}
			case 16, 17:
				// A number or two for whatever is in hand.
				for range 1 + rnd.IntN(3) {
					r.type_([]string{"", "0", "12", "-40", "1/2", "300", "1e9", "900 - 7*3", "3 in", "45", "5000"}[rnd.IntN(11)])
					r.keys([]tool.Key{tool.KeyTab, tool.KeyTab, tool.KeyEnter}[rnd.IntN(3)])
				}
			case 15:
				r.drag(x, y, x+100*rnd.NormFloat64(), y+100*rnd.NormFloat64())
			}
			_, _, _ = r.h.Overlay(), r.h.Hint(), r.h.Cursor()
		}
		for i := 0; r.h.Cancel(); i++ {
			if i > 20 {
				t.Fatalf("seed %d: Esc never ends", seed)
			}
		}
		if r.h.Busy() || r.h.Tool() != tool.Select {
			t.Errorf("seed %d: after backing out busy %v, tool %v", seed, r.h.Busy(), r.h.Tool())
		}
		for r.s.UndoName() != "" {
			r.s.Undo()
		}
		if diff := cmp.Diff(start, r.s.Design()); diff != "" {
			t.Fatalf("seed %d: undo of everything (-want +got):\n%s", seed, diff)
		}
	}
}

func TestBadPointersAreIgnored(t *testing.T) {
	r := newRig(t, units.Metric, plain())
	for _, v := range []geom.Vec{{X: math.NaN()}, {Y: math.Inf(1)}, {X: 1e300, Y: 1e300}} {
		p := tool.Pointer{At: v, PerMM: 1}
		r.h.Down(p)
		r.h.Move(p)
		r.h.Up(p)
	}
	r.down(400, 250)
	r.h.Move(tool.Pointer{At: geom.Vec{X: math.NaN()}, PerMM: 1})
	r.h.Move(tool.Pointer{At: geom.Vec{X: 500, Y: 250}, PerMM: math.NaN()})
	r.keys(tool.KeyEscape)
	r.wantNoTrace()
}

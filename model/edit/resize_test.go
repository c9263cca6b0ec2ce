package edit_test

import (
	"math"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/geom"
	"pgregory.net/rapid"
)

// The starters that have straight sides are stretched to just what the same
// starter gives at the new size.
func TestResizeStretches(t *testing.T) {
	for _, c := range []struct {
		name        string
		before      design.Outline
		after       design.Outline
		w, d        float64
		front, back float64 // depth before and after, to align the back edges
	}{
		{"rectangle", edit.Rectangle(mm(1500), mm(560)), edit.Rectangle(mm(1800), mm(500)), 1800, 500, 560, 500},
		{"bow keeps its rise", edit.BowedFront(mm(1500), mm(560), mm(60)), edit.BowedFront(mm(1200), mm(600), mm(60)),
			1200, 600, 560, 600},
		{"L keeps return and depth", edit.LShape(mm(1600), mm(520), mm(560), mm(1200), mm(80)),
			edit.LShape(mm(1900), mm(520), mm(560), mm(1400), mm(80)), 1900, 1400, 1200, 1400},
		{"U keeps its sides", edit.UShape(mm(2400), mm(600), mm(600), mm(500), mm(1500), 0),
			edit.UShape(mm(2000), mm(600), mm(600), mm(500), mm(1400), 0), 2000, 1400, 1500, 1400},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := apply(t, design.Design{Outline: c.before}, edit.Resize(mm(c.w), mm(c.d)))
			for i, n := range d.Outline.Nodes {
				want := c.after.Nodes[i]
				want.At.Y += mm(c.front - c.back)
				if n != want {
					t.Errorf("corner %d is %+v, want %+v", i+1, n, want)
				}
			}
		})
	}
}

func TestResizeScalesWhatIsRound(t *testing.T) {
	d := design.Design{Outline: edit.Round(mm(900))}
	oval := apply(t, d, edit.Resize(mm(1200), mm(700)))
	near(t, "area of the oval", area(oval.Outline.Nodes), math.Pi*600*350, math.Pi*600*350*1e-5)
	round := apply(t, d, edit.Resize(mm(1200), mm(1200)))
	near(t, "area of the larger disc", area(round.Outline.Nodes), math.Pi*600*600, 1)
	if len(round.Outline.Nodes) != 4 || round.Outline.Nodes[0].Edge.Curve != design.CurveArc {
		t.Errorf("a disc scaled evenly is %v", round.Outline.Nodes)
	}
}

func TestResizeMovesParts(t *testing.T) {
	d := counter(t)
	out := apply(t, d, edit.Resize(mm(1700), mm(500)))
	// The middle goes 100 mm right and 30 mm back; right of it all goes 200 mm
	// right, in front of it 60 mm back.
	if got, want := out.Sinks[0].At, at(600, 330); got != want {
		t.Errorf("sink at %v, want %v", got, want)
	}
	if got, want := out.Channels[0].Rivers[0].Nodes[0].At, at(1100, 110); got != want {
		t.Errorf("river from %v, want %v", got, want)
	}
	if out.Taps[0].SetBack != d.Taps[0].SetBack || out.Taps[0].Offset != d.Taps[0].Offset {
		t.Errorf("taps %+v", out.Taps[0])
	}
	if got, want := out.Supports[0].Line[0], at(20, 60); got != want {
		t.Errorf("gable from %v, want %v", got, want)
	}
	if got, want := out.Supports[1].Line[2], at(1660, 140); got != want {
		t.Errorf("leg at %v, want %v", got, want)
	}
}

// Whatever the outline, the size is met and the left back corner stays.
func TestResizeMeetsTheSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := counter(t)
		d.Outline = rapid.SampledFrom([]design.Outline{
			edit.Rectangle(mm(1500), mm(560)), edit.LShape(mm(1600), mm(520), mm(560), mm(1200), mm(80)),
			edit.BowedFront(mm(1500), mm(560), mm(60)), edit.Round(mm(900)), edit.Oval(mm(1200), mm(600)),
			edit.UShape(mm(2400), mm(600), mm(600), mm(500), mm(1500), mm(60)),
		}).Draw(t, "outline")
		for range rapid.IntRange(0, 6).Draw(t, "edits") {
			if out, err := drawEdit(t, d).Apply(d); err == nil {
				d = out
			}
		}
		old := boxOf(d.Outline.Nodes)
		w, depth := rapid.Float64Range(100, 4000).Draw(t, "w"), rapid.Float64Range(100, 4000).Draw(t, "d")
		out, err := edit.Resize(mm(w), mm(depth)).Apply(d)
		if err != nil {
			t.Skip(err) // the edits have left no size, or reach too far
		}
		box := boxOf(out.Outline.Nodes)
		// A micrometre, and the rounding to nanometres made so many times larger.
		tol := 0.001 + 5e-6*math.Max(1, math.Max(w/old.W(), depth/old.H()))
		near(t, "width", box.W(), w, tol)
		near(t, "depth", box.H(), depth, tol)
		was, is := geom.Vec{X: old.Min.X, Y: old.Max.Y}, geom.Vec{X: box.Min.X, Y: box.Max.Y}
		near(t, "left back corner's move", is.Dist(was), 0, tol)
	})
}

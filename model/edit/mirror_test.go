package edit_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestMirror(t *testing.T) {
	d := counter(t)
	d = apply(t, d, edit.SetSpline(2, at(1000, 590), at(600, 530)))
	m := apply(t, d, edit.Mirror())
	whole := area(d.Outline.Nodes)
	near(t, "area, still counter-clockwise", area(m.Outline.Nodes), whole, 1e-6)
	if got, want := boxOf(m.Outline.Nodes), boxOf(d.Outline.Nodes); got.Min.Dist(want.Min) > 1e-6 ||
		got.Max.Dist(want.Max) > 1e-6 {
		t.Errorf("bounds %v, want %v", got, want)
	}
	if got := m.Sinks[0].At; got != at(1000, 300) {
		t.Errorf("sink at %v", got)
	}
	if got := m.Channels[0].Rivers[0]; got.Nodes[2].At != at(50, 300) || got.End != design.EndOpen {
		t.Errorf("river %v", got)
	}
	// The middle of every edge of the mirrored outline lies where the mirrored
	// middle of an edge of the first one does: the curves bow the right way.
	was, is := curvesOf(d.Outline.Nodes), curvesOf(m.Outline.Nodes)
	for i, c := range is {
		p, q := c.At(0.5), was[(2*len(was)-i-1)%len(was)].At(0.5)
		near(t, "middle x", p.X, 1500-q.X, 1e-6)
		near(t, "middle y", p.Y, q.Y, 1e-6)
	}
}

func TestMirrorTurnsWhatHasASide(t *testing.T) {
	d := counter(t)
	sink := d.Sinks[0]
	sink.Rotation = 12 * units.Degree
	sink.Shape = design.Shape{Kind: design.ShapePath, Path: []design.Node{
		{At: at(-200, -100)}, {At: at(200, -100)}, {At: at(-200, 150)}}}
	d = apply(t, d, edit.SetSink(sink))
	d = apply(t, d, edit.AddTaps(design.TapSet{Pattern: design.TapOwn, Holes: []design.Point{at(-30, 0), at(70, 5)},
		Sink: "sink-1", Offset: mm(40), Rotation: 3 * units.Degree}))
	m := apply(t, d, edit.Mirror())
	if got := m.Sinks[0].Rotation; got != -12*units.Degree {
		t.Errorf("sink turned by %v", got)
	}
	want := []design.Node{{At: at(200, -100)}, {At: at(200, 150)}, {At: at(-200, -100)}}
	if diff := cmp.Diff(want, m.Sinks[0].Shape.Path); diff != "" {
		t.Errorf("path (-want +got):\n%s", diff)
	}
	taps := m.Taps[1]
	if taps.Offset != mm(-40) || taps.Rotation != -3*units.Degree || taps.Holes[1] != at(-70, 5) {
		t.Errorf("taps %+v", taps)
	}
}

// Mirroring twice is the identity, whatever has been done to the top.
func TestMirrorTwice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := counter(t)
		for range rapid.IntRange(0, 12).Draw(t, "edits") {
			if out, err := drawEdit(t, d).Apply(d); err == nil {
				d = out
			}
		}
		once := apply(t, d, edit.Mirror())
		twice := apply(t, once, edit.Mirror())
		if diff := cmp.Diff(d, twice); diff != "" {
			t.Fatalf("mirrored twice (-want +got):\n%s", diff)
		}
	})
}

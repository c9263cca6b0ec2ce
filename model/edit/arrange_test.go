package edit_test

import (
	"math"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func hole(x, y, diameter float64) design.Hole {
	return design.Hole{Kind: design.HoleOther, At: at(x, y), Diameter: mm(diameter)}
}

// row is three holes of unlike sizes: they take up x from 80 to 120, 290 to
// 310 and 570 to 630, and y from 80 to 120, 190 to 210 and 70 to 130.
func row(t failing) (design.Design, []design.ID) {
	d := design.Design{Outline: edit.Rectangle(mm(1000), mm(500)), Thickness: mm(40)}
	for _, h := range []design.Hole{hole(100, 100, 40), hole(300, 200, 20), hole(600, 100, 60)} {
		d = apply(t, d, edit.AddHole(h))
	}
	return d, []design.ID{"hole-1", "hole-2", "hole-3"}
}

func places(d design.Design) []design.Point {
	var out []design.Point
	for _, h := range d.Holes {
		out = append(out, h.At)
	}
	return out
}

func TestAlignAndDistribute(t *testing.T) {
	d, ids := row(t)
	for _, c := range []struct {
		name string
		edit edit.Edit
		want []design.Point
	}{
		{"left", edit.Align(ids, edit.AlignLeft), []design.Point{at(100, 100), at(90, 200), at(110, 100)}},
		{"centre", edit.Align(ids, edit.AlignCentre), []design.Point{at(355, 100), at(355, 200), at(355, 100)}},
		{"right", edit.Align(ids, edit.AlignRight), []design.Point{at(610, 100), at(620, 200), at(600, 100)}},
		{"front", edit.Align(ids, edit.AlignFront), []design.Point{at(100, 90), at(300, 80), at(600, 100)}},
		{"middle", edit.Align(ids, edit.AlignMiddle), []design.Point{at(100, 140), at(300, 140), at(600, 140)}},
		{"back", edit.Align(ids, edit.AlignBack), []design.Point{at(100, 190), at(300, 200), at(600, 180)}},
		// From 120 to 570 are 450, less the middle one's 20: two gaps of 215.
		{"gaps along x", edit.Distribute(ids, design.AxisX), []design.Point{at(100, 100), at(345, 200), at(600, 100)}},
		// Along y the order is 1, 3, 2: from 120 to 190 are 70, less 60: two of 5.
		{"gaps along y", edit.Distribute(ids, design.AxisY), []design.Point{at(100, 100), at(300, 200), at(600, 155)}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if diff := cmp.Diff(c.want, places(apply(t, d, c.edit))); diff != "" {
				t.Errorf("places (-want +got):\n%s", diff)
			}
		})
	}
	for _, e := range []edit.Edit{edit.Align(nil, edit.AlignLeft), edit.Align(ids[:1], edit.AlignLeft),
		edit.Align(ids, 9), edit.Distribute(ids[:2], design.AxisX), edit.Distribute(ids, 2),
		edit.Align([]design.ID{"hole-1", "hole-9"}, edit.AlignLeft),
		edit.Align([]design.ID{"hole-1", "hole-1"}, edit.AlignLeft)} {
		if _, err := e.Apply(d); err == nil {
			t.Errorf("%s was done", e.Name)
		}
	}
}

// Whatever is aligned has its side where the side of the box was, and the same
// again changes nothing.
func TestAlignAnything(t *testing.T) {
	ids := []design.ID{"sink-1", "taps-1", "hole-1", "channel-1", "glass-1", "support-1", "support-2"}
	rapid.Check(t, func(t *rapid.T) {
		d := counter(t)
		d = apply(t, d, edit.RotatePart("sink-1", units.FromDegrees(rapid.Float64Range(-180, 180).Draw(t, "turn"))))
		how := edit.Alignment(rapid.IntRange(0, 5).Draw(t, "how"))
		picked := rapid.SliceOfNDistinct(rapid.SampledFrom(ids), 3, 7, rapid.ID[design.ID]).Draw(t, "ids")
		once := apply(t, d, edit.Align(picked, how))
		twice := apply(t, once, edit.Align(picked, how))
		for _, id := range picked {
			a, _, _ := edit.Extent(once, id)
			b, _, _ := edit.Extent(twice, id)
			near(t, string(id)+" moved again", math.Hypot(a.Sub(b).X.MM(), a.Sub(b).Y.MM()), 0, 0.001)
		}
	})
}

func TestMirrorAndTurnParts(t *testing.T) {
	d := counter(t)
	ids := []design.ID{"sink-1", "taps-1", "hole-1", "channel-1", "glass-1", "support-1", "support-2"}
	twice := apply(t, apply(t, d, edit.MirrorParts(ids)), edit.MirrorParts(ids))
	if diff := cmp.Diff(d, twice); diff != "" {
		t.Errorf("mirrored twice (-want +got):\n%s", diff)
	}
	holes, ids := row(t)
	want := []design.Point{at(610, 100), at(410, 200), at(110, 100)}
	if diff := cmp.Diff(want, places(apply(t, holes, edit.MirrorParts(ids)))); diff != "" {
		t.Errorf("mirrored holes (-want +got):\n%s", diff)
	}
	for _, id := range []design.ID{"sink-1", "channel-1", "glass-1", "support-2"} {
		turned := d
		for range 4 {
			turned = apply(t, turned, edit.RotatePart(id, 90*units.Degree))
		}
		a, b, _ := edit.Extent(d, id)
		p, q, _ := edit.Extent(turned, id)
		near(t, string(id)+" turned once round", a.Sub(p).X.MM()+a.Sub(p).Y.MM()+b.Sub(q).X.MM()+b.Sub(q).Y.MM(), 0, 1e-5)
	}
	if got := apply(t, d, edit.RotatePart("sink-1", 270*units.Degree)).Sinks[0].Rotation; got != -90*units.Degree {
		t.Errorf("three quarters left are %v, want a quarter right", got)
	}
	for _, id := range []design.ID{"hole-1", "taps-1", "nobody"} {
		if _, err := edit.RotatePart(id, units.Degree).Apply(d); err == nil {
			t.Errorf("%s was turned", id)
		}
	}
}

// A turned rectangle, ellipse and D reach as far as analytic geometry has it:
// w cos + d sin for the rectangle, sqrt(w2 cos2 + d2 sin2) for the ellipse.
func TestExtent(t *testing.T) {
	turn := 30 * units.Degree
	for _, c := range []struct {
		shape design.Shape
		w, d  float64
	}{
		{design.Shape{Kind: design.ShapeRectangle, Width: mm(400), Depth: mm(200)},
			400*math.Sqrt(3)/2 + 100, 200 + 200*math.Sqrt(3)/2},
		{design.Shape{Kind: design.ShapeEllipse, Width: mm(400), Depth: mm(200)},
			math.Sqrt(400*400*0.75 + 200*200*0.25), math.Sqrt(400*400*0.25 + 200*200*0.75)},
		{design.Shape{Kind: design.ShapeCircle, Width: mm(400)}, 400, 400},
		// A D of no bow is its rectangle.
		{design.Shape{Kind: design.ShapeD, Width: mm(400), Depth: mm(200)},
			400*math.Sqrt(3)/2 + 100, 200 + 200*math.Sqrt(3)/2},
		{design.Shape{Kind: design.ShapePath, Path: edit.Rectangle(mm(400), mm(200)).Nodes},
			400*math.Sqrt(3)/2 + 100, 200 + 200*math.Sqrt(3)/2},
	} {
		d := design.Design{Sinks: []design.Sink{{ID: "s", At: at(7, 9), Rotation: turn, Shape: c.shape}}}
		a, b, ok := edit.Extent(d, "s")
		near(t, "width", b.Sub(a).X.MM(), c.w, 1e-5)
		near(t, "depth", b.Sub(a).Y.MM(), c.d, 1e-5)
		if !ok {
			t.Error("no extent")
		}
	}
}

func TestCopyAndPaste(t *testing.T) {
	d := vanity(t)
	d = apply(t, d, edit.AddRelation(inLine("hole-1", "taps-1", design.AxisY)))
	d = apply(t, d, edit.AddRelation(onTop("sink-1", design.AxisX)))
	clip, err := edit.CopyParts(d, []design.ID{"sink-1", "hole-1"})
	if err != nil {
		t.Fatal(err)
	}
	other := design.Design{Outline: edit.Rectangle(mm(2000), mm(700)), Thickness: mm(40)}
	other = apply(t, other, edit.AddSink(design.Sink{At: at(300, 300), Shape: d.Sinks[0].Shape}))
	// The clip's box is as wide as the sink, so its middle is the sink's x.
	out := apply(t, other, edit.PasteParts(clip, at(1500, 350)))
	if diff := cmp.Diff([]design.ID{"sink-2", "taps-1", "hole-1"}, edit.NewParts(other, out)); diff != "" {
		t.Errorf("new parts (-want +got):\n%s", diff)
	}
	if out.Taps[0].Sink != "sink-2" || out.Sinks[1].At.X != mm(1500) {
		t.Errorf("taps %+v, sink at %v", out.Taps[0], out.Sinks[1].At)
	}
	want := []design.Relation{inLine("hole-1", "taps-1", design.AxisY)}
	if diff := cmp.Diff(want, out.Relations); diff != "" {
		t.Errorf("relations (-want +got):\n%s", diff)
	}
	if out.Holes[0].At.Y != mm(640) {
		t.Errorf("the hole is at %v, want in line with the tap, 60 from the back", out.Holes[0].At)
	}
	// Pasted where it was, nothing moves.
	same := apply(t, d, edit.PasteParts(clip, clip.At))
	if same.Sinks[1].At != d.Sinks[0].At || same.Holes[1].At != d.Holes[0].At {
		t.Errorf("pasted at %v and %v", same.Sinks[1].At, same.Holes[1].At)
	}
	loose, err := edit.CopyParts(d, []design.ID{"taps-1"})
	if err != nil {
		t.Fatal(err)
	}
	if got := loose.Parts.Taps[0]; got.Sink != "" || got.At != at(750, 500) {
		t.Errorf("taps without their sink: %+v", got)
	}
	if _, err := edit.PasteParts(edit.Clip{}, at(0, 0)).Apply(d); err == nil {
		t.Error("an empty clip was pasted")
	}
	if _, err := edit.CopyParts(d, []design.ID{"nobody"}); err == nil {
		t.Error("a part that is not there was copied")
	}
	double := apply(t, d, edit.DuplicateParts([]design.ID{"hole-1", "support-1"}, at(10, 0)))
	if double.Holes[1].At != d.Holes[0].At.Add(at(10, 0)) || double.Supports[2].Line[0] != at(110, 0) {
		t.Errorf("duplicates at %v and %v", double.Holes[1].At, double.Supports[2].Line)
	}
	if e := edit.RemoveParts([]design.ID{"hole-1", "sink-1"}); !strings.Contains(e.Name, "2 parts") {
		t.Errorf("named %q", e.Name)
	} else if got := apply(t, d, e); len(got.Sinks) != 0 || len(got.Relations) != 0 || got.Taps[0].Sink != "" {
		t.Errorf("after removing: %+v", got)
	}
}

package edit_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
)

func TestNewPartsGetTheNextFreeName(t *testing.T) {
	d := counter(t)
	d = apply(t, d, edit.AddSink(design.Sink{At: at(1000, 300)}))
	d = apply(t, d, edit.AddSink(design.Sink{At: at(1200, 300)}))
	d = apply(t, d, edit.RemovePart("sink-2"))
	d = apply(t, d, edit.AddSink(design.Sink{}))
	var ids []design.ID
	for _, s := range d.Sinks {
		ids = append(ids, s.ID)
	}
	if want := []design.ID{"sink-1", "sink-3", "sink-2"}; !slices.Equal(ids, want) {
		t.Errorf("sinks %v, want %v", ids, want)
	}
	if _, err := edit.AddHole(design.Hole{ID: "sink-1"}).Apply(d); err == nil {
		t.Error("a hole took the name of a sink")
	}
}

func TestMovePart(t *testing.T) {
	d := counter(t)
	by := at(20, -10)
	for _, c := range []struct {
		id   design.ID
		name string
		at   func(design.Design) design.Point
		want design.Point
	}{
		{"sink-1", "Move sink", func(d design.Design) design.Point { return d.Sinks[0].At }, at(520, 290)},
		{"hole-1", "Move hole", func(d design.Design) design.Point { return d.Holes[0].At }, at(1320, 470)},
		{"channel-1", "Move channel", func(d design.Design) design.Point {
			return d.Channels[0].Rivers[0].Nodes[1].At
		}, at(1220, 240)},
		{"glass-1", "Move glass bed", func(d design.Design) design.Point {
			return d.Glass[0].Region.Islands[0][0].At
		}, at(40, -10)},
		{"support-1", "Move support", func(d design.Design) design.Point { return d.Supports[0].Line[1] }, at(40, 490)},
	} {
		e := edit.MovePart(c.id, by)
		if got := c.at(apply(t, d, e)); got != c.want || e.Name != c.name {
			t.Errorf("%s %s: at %v, want %v", e.Name, c.id, got, c.want)
		}
	}
}

// Tap holes on a turned sink's centreline move along its own axes: turned by
// 90 degrees counter-clockwise, its right is the top's back.
func TestMoveTapsOnACentreline(t *testing.T) {
	d := counter(t)
	sink := d.Sinks[0]
	sink.Rotation = 90 * units.Degree
	d = apply(t, d, edit.SetSink(sink))
	d = apply(t, d, edit.MovePart("taps-1", at(5, 30)))
	if taps := d.Taps[0]; taps.Offset != mm(30) || taps.SetBack != mm(65) || taps.Sink != "sink-1" {
		t.Errorf("offset %v, set-back %v of %q", taps.Offset.MM(), taps.SetBack.MM(), taps.Sink)
	}
}

// Taps that lose their sink stay where they were: 60 mm from the back edge, on
// the sink's centreline, 25 mm to its right.
func TestTapsStayWhenTheirSinkGoes(t *testing.T) {
	d := counter(t)
	d = apply(t, d, edit.MovePart("taps-1", at(25, 0)))
	for _, e := range []edit.Edit{edit.RemovePart("sink-1"), edit.FreeTaps("taps-1")} {
		taps := apply(t, d, e).Taps[0]
		if taps.Sink != "" || taps.At != at(525, 500) || taps.Offset != 0 || taps.SetBack != 0 {
			t.Errorf("%s: %+v", e.Name, taps)
		}
	}
}

func TestDuplicatePart(t *testing.T) {
	d := counter(t)
	out := apply(t, d, edit.DuplicatePart("sink-1", at(500, 0)))
	if len(out.Sinks) != 2 || out.Sinks[1].ID != "sink-2" || out.Sinks[1].At != at(1000, 300) {
		t.Errorf("sinks %+v", out.Sinks)
	}
	if len(out.Taps) != 2 || out.Taps[1].Sink != "sink-2" || out.Taps[1].ID != "taps-2" {
		t.Errorf("the sink's taps did not come along: %+v", out.Taps)
	}
	out = apply(t, out, edit.DuplicatePart("channel-1", at(0, 40)))
	want := d.Channels[0].Rivers[0].Nodes[0].At.Add(at(0, 40))
	if got := out.Channels[1].Rivers[0].Nodes[0].At; got != want {
		t.Errorf("copied river starts at %v, want %v", got, want)
	}
}

// What a newer version says of a part goes with the part, so that a new one of
// the same name does not inherit it.
func TestRemovePartTakesItsUnknownMembers(t *testing.T) {
	d := counter(t)
	d.Extra = design.Extra{"/sinks/@sink-1/maker": `"x"`, "/sinks/@sink-1/shape/lip": "3",
		"/sinks/@sink-11/maker": `"y"`, "/mood": `"calm"`}
	out := apply(t, d, edit.RemovePart("sink-1"))
	want := design.Extra{"/sinks/@sink-11/maker": `"y"`, "/mood": `"calm"`}
	if diff := cmp.Diff(want, out.Extra); diff != "" {
		t.Errorf("unknown members (-want +got):\n%s", diff)
	}
	if len(d.Extra) != 4 {
		t.Errorf("the old design's were written into: %v", d.Extra)
	}
}

func TestErrorsSayWhatWhereAndWhatToDo(t *testing.T) {
	d := counter(t)
	for _, c := range []struct {
		e    edit.Edit
		want []string
	}{
		{edit.MoveNode(7, at(0, 0)), []string{"corner 8", "1 to 4"}},
		{edit.SetCorner(1, design.Corner{Kind: design.CornerRounded, Size: mm(-2)}), []string{"corner 2", "-2 mm", "0 or more"}},
		{edit.SetThickness(0), []string{"thickness", "0 mm", "above zero"}},
		{edit.BendEdge(-1, mm(5)), []string{"edge 0", "1 to 4"}},
		{edit.SetFinish(design.Finish{Polish: 9}), []string{"polish level 9", "1 (flat) to 4"}},
		{edit.SetSink(design.Sink{ID: "sink-9"}), []string{`"sink-9"`, "pick one"}},
		{edit.MovePart("nothing", at(1, 1)), []string{`"nothing"`, "pick one"}},
		{edit.AddTaps(design.TapSet{Sink: "sink-9"}), []string{"taps-2", `"sink-9"`}},
		{edit.SetRiverWidth("channel-1", 0, 5, mm(40)), []string{"channel-1", "river 1", "node 6", "3 nodes"}},
		{edit.MoveRiverNode("channel-1", 2, 0, at(0, 0)), []string{"river 3", "1 rivers"}},
		{edit.MoveRegionNode("glass-1", 0, 4, 0, at(0, 0)), []string{"island 4", "1 islands"}},
		{edit.Resize(0, mm(500)), []string{"width", "at least 1 mm"}},
		{edit.MovePart("sink-1", design.Point{X: units.MaxLength}), []string{"sink-1", "100500", "100000 mm"}},
	} {
		out, err := c.e.Apply(d)
		if err == nil {
			t.Errorf("%s went through", c.e.Name)
			continue
		}
		for _, w := range c.want {
			if !strings.Contains(err.Error(), w) {
				t.Errorf("%s: %q does not say %q", c.e.Name, err, w)
			}
		}
		if diff := cmp.Diff(d, out); diff != "" {
			t.Errorf("%s failed and changed the design (-want +got):\n%s", c.e.Name, diff)
		}
	}
}

func TestADesignHoldsNoMoreThanAFile(t *testing.T) {
	nodes := make([]design.Node, design.MaxPoints)
	for i := range nodes {
		nodes[i].At = at(float64(i), 0)
	}
	d := apply(t, design.Design{}, edit.SetOutline(design.Outline{Nodes: nodes}))
	if _, err := edit.InsertNode(0, at(0.5, 0)).Apply(d); err == nil || !strings.Contains(err.Error(), "20000") {
		t.Errorf("error %v, want one that names the bound", err)
	}
}

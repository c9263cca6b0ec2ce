package edit_test

import (
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
)

// A wall 1200 mm long that bellies 6 mm away in the middle and stands 4 mm
// proud at its far end; the back edge runs right to left, out is up.
func TestScribeEdge(t *testing.T) {
	mm := units.Millimetre
	d := design.Design{Outline: edit.Rectangle(1200*mm, 560*mm)}
	back := -1
	for i, n := range d.Outline.Nodes {
		if n.Edge.Side == design.SideWall {
			back = i
		}
	}
	if back < 0 {
		t.Fatal("the rectangle has no wall edge")
	}
	top := d.Outline.Nodes[back].At.Y
	start := d.Outline.Nodes[back].At.X
	got, err := edit.ScribeEdge(back, []edit.Offset{{300 * mm, 2 * mm}, {600 * mm, 6 * mm}, {1200 * mm, -4 * mm}}).Apply(d)
	if err != nil {
		t.Fatal(err)
	}
	n := got.Outline.Nodes
	if len(n) != 6 {
		t.Fatalf("%d corners, want 6", len(n))
	}
	want := []design.Point{
		{X: start, Y: top}, {X: start - 300*mm, Y: top + 2*mm}, {X: start - 600*mm, Y: top + 6*mm},
		{X: start - 1200*mm, Y: top - 4*mm},
	}
	for k, w := range want {
		node := n[(back+k)%len(n)]
		if node.At != w {
			t.Errorf("corner %d is at %v, want %v", back+k, node.At, w)
		}
		if k < 3 && node.Edge.Side != design.SideWall {
			t.Errorf("piece %d of the scribed edge is not a wall edge", k)
		}
	}
	if len(d.Outline.Nodes) != 4 || d.Outline.Nodes[(back+1)%4].At.Y != top {
		t.Error("the design that was given has changed")
	}
	for _, bad := range []struct {
		offsets []edit.Offset
		want    string
	}{
		{[]edit.Offset{{600 * mm, 0}, {300 * mm, 0}}, "in order"},
		{[]edit.Offset{{1300 * mm, 0}}, "mm long"},
		{[]edit.Offset{{100 * mm, 9000 * mm}}, "check it"},
	} {
		if _, err := edit.ScribeEdge(back, bad.offsets).Apply(d); err == nil || !strings.Contains(err.Error(), bad.want) {
			t.Errorf("%v: error %v, want one with %q", bad.offsets, err, bad.want)
		}
	}
}

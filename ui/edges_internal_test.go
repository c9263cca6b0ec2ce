package ui

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/session"
	"github.com/google/go-cmp/cmp"
)

// What is done to the selected edge or corner is the edit of the same name, and
// waits for one to be selected.
func TestEdgeActions(t *testing.T) {
	edge := func(i int) session.Pick { return session.Pick{Node: i, Edge: true} }
	corner := func(i int) session.Pick { return session.Pick{Node: i} }
	for _, c := range []struct {
		id       keys.ID
		pick     session.Pick
		want     func(design.Design) edit.Edit
		selected session.Pick
	}{
		{keys.EdgeSpline, edge(0), func(design.Design) edit.Edit { return edit.SetEdgeCurve(0, design.CurveSpline) }, edge(0)},
		{keys.EdgeCorner, edge(3), func(d design.Design) edit.Edit {
			at, _ := edit.OnEdge(d, 3, 0.5)
			return edit.InsertNode(3, at)
		}, corner(4)},
		{keys.EdgeJoin, corner(1), func(design.Design) edit.Edit { return edit.JoinEdges(0) }, edge(0)},
		{keys.EdgeJoin, edge(3), func(design.Design) edit.Edit { return edit.JoinEdges(3) }, edge(2)},
		{keys.CornerSmooth, corner(2), func(design.Design) edit.Edit { return edit.SmoothCorner(2) }, corner(2)},
	} {
		w := newRig(t)
		w.keys.Run(keys.NewJob)
		w.session.Select()
		before := w.session.Design()
		if w.keys.Enabled(c.id) {
			t.Errorf("%s: offered with nothing selected", c.id)
		}
		w.keys.Run(c.id)
		if diff := cmp.Diff(before, w.session.Design()); diff != "" {
			t.Errorf("%s did something with nothing selected", c.id)
		}
		w.session.Select(c.pick)
		w.keys.Run(c.id)
		want, err := c.want(before).Apply(before)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(want, w.session.Design()); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.id, diff)
		}
		if got := w.session.Selection(); len(got) != 1 || got[0] != c.selected {
			t.Errorf("%s: selected %v, want %v", c.id, got, c.selected)
		}
	}
	w := newRig(t)
	w.keys.Run(keys.NewJob)
	w.session.Select(edge(2))
	w.keys.Run(keys.ScribeEdge)
	if !w.frame.Busy() {
		t.Error("no table opens")
	}
}

package tool_test

import (
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/tool"
)

// held is a bench whose first hole is centred on the top and whose river starts on
// the left edge.
func held() design.Design {
	d := bench()
	d.Holes[0].At = at(600, 100)
	d.Channels[0].Rivers[0].Nodes[0].At = at(0, 130)
	d.Relations = []design.Relation{{Kind: design.RelationTop, Part: "hole-1"},
		{Kind: design.RelationEdge, Part: "channel-1", Edge: 3, Along: 0.74}}
	return d
}

// chain is where the chain of a relation lies.
func (r *rig) chain(words string) geom.Vec {
	r.T.Helper()
	for _, l := range r.h.Overlay().Links {
		if strings.Contains(l.Words, words) {
			return l.Chain
		}
	}
	r.T.Fatalf("no relation %q is shown among %v", words, r.h.Overlay().Links)
	return geom.Vec{}
}

// A relation is cut on the drawing by two clicks on its chain, or by one and Delete;
// one click alone, and Esc, leave it.
func TestCutOnTheDrawing(t *testing.T) {
	for _, c := range []struct {
		name, part, words string
		do                func(r *rig, at geom.Vec)
		left              int // relations
		undo              string
	}{
		{"two clicks", "hole-1", "centred on the top", func(r *rig, p geom.Vec) { r.click(p.X, p.Y); r.click(p.X, p.Y) }, 1, "Cut relation"},
		{"a click and Delete", "hole-1", "centred on the top", func(r *rig, p geom.Vec) { r.click(p.X, p.Y); r.keys(tool.KeyDelete) }, 1, "Cut relation"},
		{"one click", "hole-1", "centred on the top", func(r *rig, p geom.Vec) { r.click(p.X, p.Y) }, 2, ""},
		{"a click and Esc, then a click", "hole-1", "centred on the top", func(r *rig, p geom.Vec) {
			r.click(p.X, p.Y)
			r.keys(tool.KeyEscape)
			r.click(p.X, p.Y)
		}, 2, ""},
		{"dragged", "hole-1", "centred on the top", func(r *rig, p geom.Vec) { r.drag(p.X, p.Y, p.X+60, p.Y+30) }, 2, ""},
		{"a river's end, whose line has no length", "channel-1", "stays on the left edge",
			func(r *rig, p geom.Vec) { r.click(p.X, p.Y); r.click(p.X, p.Y) }, 1, "Cut relation"},
		{"tap holes from their sink", "sink-1", "centreline", func(r *rig, p geom.Vec) { r.click(p.X, p.Y); r.click(p.X, p.Y) }, 2, "Free tap holes"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := newRig(t, units.Metric, held())
			r.s.Select(pick(design.ID(c.part))...)
			p := r.chain(c.words)
			r.move(p.X, p.Y)
			if hint := r.h.Hint(); !strings.Contains(hint, c.words) || !strings.Contains(hint, "click") {
				t.Errorf("over the chain the hint is %q", hint)
			}
			c.do(r, p)
			d := r.s.Design()
			if len(d.Relations) != c.left || r.s.UndoName() != c.undo {
				t.Errorf("%d relations are left and undo is %q; want %d and %q", len(d.Relations), r.s.UndoName(), c.left, c.undo)
			}
			if c.undo == "Free tap holes" && d.Taps[0].Sink != "" {
				t.Error("the tap holes still keep to their sink")
			}
			r.wantSelected(pick(design.ID(c.part))...) // a click on a chain takes nothing else
			if got := r.s.Design().Holes[0].At; got != at(600, 100) {
				t.Errorf("the hole went to %v", got)
			}
		})
	}
}

// Chains keep off each other and off handles, so that each can be clicked.
func TestChainsKeepApart(t *testing.T) {
	d := held()
	d.Relations = append(d.Relations, design.Relation{Kind: design.RelationTop, Part: "sink-1", Axis: design.AxisY},
		design.Relation{Kind: design.RelationSide, Part: "sink-1", Distance: 400 * mm})
	r := newRig(t, units.Metric, d)
	r.s.Select(pick("sink-1")...)
	o := r.h.Overlay()
	if len(o.Links) != 4 { // front, back, left, taps
		t.Fatalf("%d links are shown", len(o.Links))
	}
	for i, l := range o.Links {
		for _, k := range o.Links[:i] {
			if l.Chain.Dist(k.Chain) < 24 {
				t.Errorf("the chains of %q and %q lie %.0f apart", l.Words, k.Words, l.Chain.Dist(k.Chain))
			}
		}
		for _, k := range o.Handles {
			if l.Chain.Dist(k.At) < 24 {
				t.Errorf("the chain of %q lies %.0f from a handle", l.Words, l.Chain.Dist(k.At))
			}
		}
	}
}

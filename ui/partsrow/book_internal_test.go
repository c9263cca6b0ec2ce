package partsrow

import (
	"testing"

	"example.org/castwright/model/book"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
	"example.org/castwright/ui/session"
)

// TestKeptStarters: what was kept can be used on a plain top, and its picture has
// no faults.
func TestKeptStarters(t *testing.T) {
	mm := units.Millimetre
	path := []design.Node{{At: design.Point{X: -200 * mm, Y: -150 * mm}}, {At: design.Point{X: 200 * mm, Y: -150 * mm}}, {At: design.Point{Y: 150 * mm}}}
	sink := func(s design.Shape) book.Entry {
		return book.Entry{Kind: book.KindSink, Sink: design.Sink{ID: "sink-4", Shape: s},
			Taps: []design.TapSet{{ID: "taps-3", Sink: "sink-4", Pattern: design.TapThree8, Diameter: 35 * mm, SetBack: 60 * mm}}}
	}
	entries := []book.Entry{
		sink(design.Shape{Kind: design.ShapeEllipse, Width: 430 * mm, Depth: 350 * mm}),
		sink(design.Shape{Kind: design.ShapeCircle, Width: 400 * mm}),
		sink(design.Shape{Kind: design.ShapePath, Path: path}),
		{Kind: book.KindTaps, Taps: []design.TapSet{{ID: "taps-1", Pattern: design.TapSingle, Diameter: 35 * mm}}},
		{Kind: book.KindProfile, Profile: design.Profile{Kind: design.ProfileRounded, Size: 8 * mm}},
		{Kind: book.KindFinish, Finish: design.Finish{Polish: 3}},
	}
	d := session.Plain(units.Metric)
	k := kit{units.Metric, d, edit.Bounds(d.Outline)}
	for i, e := range entries {
		s := k.kept(e, -1)
		if n := given(s.put != nil, s.edit != nil); n != 1 {
			t.Errorf("entry %d does %d things", i, n)
		}
		if s.profile == nil {
			if f := slab.Validate(s.sample); len(f) > 0 {
				t.Errorf("entry %d: its picture shows %v", i, f)
			}
		}
		change := s.edit
		if s.put != nil {
			added := add(*s.put)
			change = &added
			if e.Kind == book.KindSink && len(s.put.With) != 1 {
				t.Errorf("entry %d brings %d sets of taps", i, len(s.put.With))
			}
			if id := e.Sink.ID; id != "" && s.put.Sink.ID != id {
				continue
			}
		}
		if _, err := change.Apply(d); err != nil {
			t.Errorf("entry %d: %v", i, err)
		}
	}
}

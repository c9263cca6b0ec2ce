package design_test

import (
	"testing"

	"example.org/castwright/model/design"
)

func TestFind(t *testing.T) {
	d := design.Design{
		Sinks: []design.Sink{{ID: "s-1"}, {ID: "s-2"}}, Taps: []design.TapSet{{ID: "t"}}, Holes: []design.Hole{{ID: "h-1"}, {ID: "h-2"}, {ID: "h-3"}},
		Channels: []design.Channel{{ID: "c"}}, Glass: []design.GlassBed{{ID: "g"}}, Supports: []design.Support{{ID: "p-1"}, {ID: "p-2"}},
	}
	for id, want := range map[design.ID]struct {
		kind design.PartKind
		i    int
	}{
		"s-2": {design.PartSink, 1}, "t": {design.PartTaps, 0}, "h-3": {design.PartHole, 2}, "c": {design.PartChannel, 0},
		"g": {design.PartGlass, 0}, "p-2": {design.PartSupport, 1}, "x": {design.NoPart, -1}, "": {design.NoPart, -1},
	} {
		if kind, i := d.Find(id); kind != want.kind || i != want.i {
			t.Errorf("%q is number %d of kind %d, want %d of %d", id, i, kind, want.i, want.kind)
		}
	}
}

package edit_test

import (
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
)

func TestBeside(t *testing.T) {
	top := design.Design{Outline: edit.Rectangle(mm(1000), mm(500)), Thickness: mm(40)}
	for _, c := range []struct {
		name  string
		holes []design.Hole // the first one is copied
		want  design.Point
	}{
		{"to the right", []design.Hole{hole(500, 250, 100)}, at(120, 0)},
		{"at the right edge", []design.Hole{hole(940, 250, 100)}, at(-120, 0)},
		{"something to the right", []design.Hole{hole(500, 250, 100), hole(620, 250, 60)}, at(-120, 0)},
		{"right and left taken", []design.Hole{hole(500, 250, 100), hole(620, 250, 60), hole(380, 250, 60)}, at(0, -120)},
		{"only behind", []design.Hole{hole(500, 60, 100), hole(620, 60, 60), hole(380, 60, 60)}, at(0, 120)},
		// 500 to the right its box would end at 1240.
		{"nowhere", []design.Hole{hole(500, 250, 480)}, at(20, -20)},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := top
			for _, h := range c.holes {
				d = apply(t, d, edit.AddHole(h))
			}
			got := edit.Beside(d, []design.ID{"hole-1"}, mm(20))
			if got != c.want {
				t.Errorf("moved by %v, want %v", got, c.want)
			}
		})
	}
}

// Turned together by a quarter, three things in a row stand in a column.
func TestRotateParts(t *testing.T) {
	d, ids := row(t) // its box goes from (80, 70) to (630, 210): the middle is (355, 140)
	got := apply(t, d, edit.RotateParts(ids, 90*units.Degree))
	// (x, y) goes to (355 - (y - 140), 140 + (x - 355)).
	want := []design.Point{at(395, -115), at(295, 85), at(395, 385)}
	if diff := cmp.Diff(want, places(got)); diff != "" {
		t.Errorf("places (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff(d, apply(t, got, edit.RotateParts(ids, -90*units.Degree))); diff != "" {
		t.Errorf("turned back by a quarter (-want +got):\n%s", diff)
	}
	j := basin(t)
	turned := apply(t, j.Options[0].Design, edit.RotateParts([]design.ID{"sink-1", "taps-1"}, 30*units.Degree))
	if r := turned.Sinks[0].Rotation; r != 30*units.Degree {
		t.Errorf("a sink with its own taps turns to %v", r)
	}
	if turned.Sinks[0].At != j.Options[0].Design.Sinks[0].At {
		t.Error("a sink turned with its own taps has moved")
	}
	if _, err := edit.RotateParts([]design.ID{"hole-1"}, units.Degree).Apply(j.Options[0].Design); err == nil {
		t.Error("a round hole alone is turned")
	}
}
